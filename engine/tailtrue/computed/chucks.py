"""Which chuck holds the blanks: every chuck of the lathe weighed, with what each would hold them by."""

from collections.abc import Mapping, Sequence
from typing import Any

from tailtrue.computed.chuck_facts import jaws_of
from tailtrue.computed.collar_source import chucks_of_kind, kind_held_in
from tailtrue.computed.registry import Limited, computed, field
from tailtrue.tables import Table

Record = Mapping[str, Any]


@computed(
    "blank.chuck_offers",
    label="chucks that the blanks may be held in",
    kind="records",
    fields=(
        field("label", kind="text"),
        field("body", "mm", "length"),
        field("verdict", kind="text"),
        field("reason", kind="text"),
    ),
    needs=(
        "lathe.chucks", "collar.made_from", "collar.gripped_diameter", "collar.banded", "collar.saw_width?",
        "collar.wall_share?", "limit.jaw_depth_assumed", "limit.face_clearance", "limit.thin_wall", "softjaw.fits",
        "crib.soft_jaws_chuck?", "bar.diameter", "collar.plated",
    ),
    tables=("materials/collar_sources",),
    how="each chuck of the lathe: whether it is of the kind for this stock, opens to the blank, leaves the face clear of "
    "its jaws, and has soft jaws that take the blank; of those that hold it best the smallest; of a blank that is bored on "
    "the faceplate the stub mandrel that holds it after",
)  # fmt: skip
def chuck_offers(
    chucks: Sequence[Record], source: str, size: float, banded: bool, width: float | None, wall: float | None,
    jaws: float, clearance: float, thin_wall: float, soft: bool, belongs: str | None, bar: float, plated: bool,
    sources: Table,
) -> tuple[Record, ...]:  # fmt: skip
    kind = chucks_of_kind(chucks, sources.one(collar_source=source), banded)
    thin = wall is not None and wall <= thin_wall

    def weighed(chuck: Record) -> tuple[int | None, str]:
        """Its rank among those that serve, the lower the better, and why."""
        if chuck not in kind:
            return None, "not the kind that this blank is held in"
        if chuck["grips_to"] < size:
            return None, "does not open to the blank with its jaws inside the body"
        if plated:
            return 0, "opens to the stub mandrel"
        if banded or width is None:
            return 0, "opens to the blank"
        clear = width - float(jaws_of(chuck, jaws).value) >= clearance
        if soft and chuck["label"] == belongs and (thin or not clear):
            return (0 if thin else 1), "its soft jaws take the blank"
        words = "its jaws leave the face clear" if clear else "the blank sits behind its jaws"
        if clear and (chuck.get("through_bore") or 0.0) <= bar:
            clear, words = False, "its jaws leave the face clear, but its hole is not known to pass drill and boring bar"
        return (0 if clear and not thin else 1 if clear else 2), f"{words}; a thin ring springs in them" if thin else words

    judged = [(chuck, *weighed(chuck)) for chuck in chucks]
    serving = [(rank, chuck["body"], place) for place, (chuck, rank, _) in enumerate(judged) if rank is not None]
    chosen = min(serving)[2] if serving else None
    return tuple(
        {"label": chuck["label"], "body": chuck["body"], "verdict": "chosen" if place == chosen else "left", "reason": why}
        for place, (chuck, _, why) in enumerate(judged)
    )


@computed(
    "blank.chuck",
    label="chuck for the blanks",
    kind="record",
    needs=("lathe.chucks", "collar.made_from", "collar.banded", "blank.chuck_offers"),
    tables=("materials/collar_sources",),
    how="of all chucks of the lathe the one that holds the blank best, and of those alike the smallest; where none opens "
    "to it the largest of the kind",
)
def blank_chuck(
    chucks: Sequence[Record], source: str, banded: bool, offers: Sequence[Record], sources: Table
) -> Limited:  # fmt: skip
    row = sources.one(collar_source=source)
    of_kind = chucks_of_kind(chucks, row, banded)
    if not of_kind:
        jaws, kind = kind_held_in(row, banded)
        return Limited(None, f"there is no {kind} chuck with {jaws:g} jaws on the list")
    for chuck, offer in zip(chucks, offers, strict=True):
        if offer["verdict"] == "chosen":
            return Limited(chuck, f"of the chucks that grip the blank: {offer['reason']}")
    return Limited(max(of_kind, key=lambda chuck: chuck["grips_to"]), "the largest there is")


@computed("blank.chuck_choice", label="chucks of the kind that the blanks are held in", kind="count", rounding="count",
          needs=("lathe.chucks", "collar.made_from", "collar.banded"), tables=("materials/collar_sources",),
          how="counted")  # fmt: skip
def chuck_choice(chucks: Sequence[Record], source: str, banded: bool, sources: Table) -> int:
    return len(chucks_of_kind(chucks, sources.one(collar_source=source), banded))
