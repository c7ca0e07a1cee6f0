"""What is told of a chuck alike, whatever it is used for: its name, jaws, hole, body, opening and speed."""

from collections.abc import Mapping, Sequence
from typing import Any

from tailtrue.computed.registry import Limited, computed, taken
from tailtrue.tables import Table

Record = Mapping[str, Any]


def chuck_limit(chuck: Record, limits: Table) -> Limited | None:
    """The speed a chuck may run at and why; None when nobody looked for its mark."""
    said = chuck.get("marked_speed")
    if said is None:
        return None
    if said != "unmarked":
        return taken(said, "the speed marked on the chuck", as_said=True)
    row = limits.within(chuck["body"], "body_over_mm", "body_upto_mm")
    return taken(
        row.number("unmarked_limit_per_min"),
        "the chuck is not marked",
        "a cautious figure for its size: the chuck is not marked",
    )


def jaws_of(chuck: Record, assumed: float) -> Limited:
    """The depth of the jaws of a chuck."""
    said = chuck.get("jaw_depth")
    if said is not None:
        return taken(said, "as measured", as_said=True)
    return taken(assumed, "not given; measure it", "a usual depth; not given: measure it")


def usual_chucks(chucks: Sequence[Record], kinds: Table, *, self_centring: bool) -> list[Record]:
    """Those whose jaws close together, or each by itself, with as many jaws as such a chuck has here."""
    known = [(one, kinds.one(kind=one["kind"])) for one in chucks]
    return [one for one, row in known if row.yes("self_centring") is self_centring and row.number("jaws") == one["jaws"]]


def name_fact(name: str, of: str, label: str) -> None:
    """The fact that holds the name of a chuck."""

    @computed(name, label=label, kind="text", needs=(of,), how="its name on the list")
    def _name(chuck: Record) -> Any:
        return chuck["label"]


def opening_fact(name: str, of: str, label: str) -> None:
    """The fact that holds the largest diameter that a chuck grips."""

    @computed(
        name,
        label=label,
        unit="mm",
        rounding="length",
        bound="most",
        needs=(of,),
        how="as given for the chuck",
        as_said=True,
    )
    def _opening(chuck: Record) -> Any:
        return chuck["grips_to"]


def body_fact(name: str, of: str, label: str) -> None:
    """The fact that holds the diameter of the body of a chuck."""

    @computed(name, label=label, unit="mm", rounding="length", needs=(of,), how="as given for the chuck", as_said=True)
    def _body(chuck: Record) -> Any:
        return chuck["body"]


def jaws_fact(name: str, of: str, label: str) -> None:
    """The fact that holds the depth of the jaws of a chuck."""

    @computed(name, label=label, unit="mm", rounding="length", needs=(of, "limit.jaw_depth_assumed"),
              how="as given for the chuck; when it was not given, a usual depth")  # fmt: skip
    def _jaws(chuck: Record, assumed: float) -> Limited:
        return jaws_of(chuck, assumed)


def hole_fact(name: str, of: str, label: str) -> None:
    """The fact that holds the hole through a chuck; unknown where nobody measured it."""

    @computed(name, label=label, unit="mm", rounding="length", bound="most", needs=(of,), how="as measured on the chuck")
    def _hole(chuck: Record) -> float | None:
        return chuck.get("through_bore")


def speed_fact(name: str, of: str, label: str) -> None:
    """The fact that holds the speed a chuck may run at."""

    @computed(name, label=label, unit="1/min", rounding="speed", bound="most", needs=(of,),
              tables=("machines/chuck_limits",),
              how="the speed marked on the chuck; for an unmarked chuck the cautious figure for its size")  # fmt: skip
    def _speed(chuck: Record, limits: Table) -> Limited | None:
        return chuck_limit(chuck, limits)
