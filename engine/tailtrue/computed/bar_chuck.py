"""Which chuck grips the bar for facing, and which chuck is on the spindle before and after that."""

from collections.abc import Mapping, Sequence
from typing import Any

from tailtrue.computed.chuck_facts import hole_fact, jaws_fact, name_fact, speed_fact, usual_chucks
from tailtrue.computed.registry import Limited, computed, taken
from tailtrue.tables import Row, Table

Record = Mapping[str, Any]
_HOLDINGS, _KINDS = "machines/holdings", "machines/chuck_kinds"


def _of_bar(holdings: Table, hold: str | None) -> Row | None:
    """What is known of a way to hold the bar; None where nothing holds it."""
    return None if hold is None else holdings.one(decision="bar.hold", hold=hold)


def _takes(chuck: Record, diameter: float, bore: float, clearance: float) -> bool:
    """Whether a chuck grips the bar and lets it through; a hole that nobody measured is none."""
    return bool(
        diameter <= chuck["grips_to"] and diameter + clearance <= min(bore, chuck.get("through_bore") or 0.0)
    )  # fmt: skip


@computed(
    "bar.four_jaw",
    label="four-jaw chuck for the bar",
    kind="record",
    needs=("lathe.chucks", "bar.diameter", "lathe.spindle_bore", "limit.bore_clearance", "blank.chuck?"),
    tables=(_KINDS,),
    how="of the independent chucks of four jaws one that takes the bar; of those that of the blanks, or else the smallest",
)
def four_jaw(
    chucks: Sequence[Record], diameter: float, bore: float, clearance: float, of_blanks: Record | None, kinds: Table
) -> Limited:  # fmt: skip
    four = usual_chucks(chucks, kinds, self_centring=False)
    if not four:
        return Limited(None, "there is no four-jaw independent chuck on the list")
    label = of_blanks["label"] if of_blanks is not None else None
    best = min(
        four, key=lambda one: (not _takes(one, diameter, bore, clearance), one["label"] != label, one["body"])
    )  # fmt: skip
    return Limited(best, "of the four-jaw chucks that take the bar, or else of all")


@computed(
    "bar.four_jaw_takes",
    label="a four-jaw chuck takes the bar",
    kind="yes-no",
    needs=("bar.four_jaw?", "bar.diameter", "lathe.spindle_bore", "limit.bore_clearance"),
    how="diameter against what an independent chuck of four jaws grips, and with clearance against its hole and the bore "
    "of the spindle; a hole that nobody measured is none",
)
def four_jaw_takes(chuck: Record | None, diameter: float, bore: float, clearance: float) -> bool:
    return chuck is not None and _takes(chuck, diameter, bore, clearance)


@computed(
    "bar.chuck",
    label="chuck that grips the bar",
    kind="record",
    needs=("bar.hold?", "chuck.used", "bar.four_jaw?"),
    tables=(_HOLDINGS,),
    how="the four-jaw chuck where the bar is set true in four jaws; else the chuck used",
)
def chuck(hold: str | None, used: Record, four: Record | None, holdings: Table) -> Limited:
    held = _of_bar(holdings, hold)
    if held is not None and held.yes("own_chuck") and four is not None:
        return Limited(four, "each of its jaws is set by itself")
    return Limited(used, "the chuck used")


name_fact("bar.chuck_label", "bar.chuck", "chuck that grips the bar")
jaws_fact("bar.chuck_jaw_depth", "bar.chuck", "depth of the jaws that grip the bar")
hole_fact("bar.chuck_hole", "bar.chuck", "hole through the chuck that grips the bar")
speed_fact("bar.chuck_speed_limit", "bar.chuck", "speed limit of the chuck that grips the bar")


@computed(
    "bar.chuck_change",
    label="another chuck is fitted for the bar",
    kind="yes-no",
    needs=("bar.chuck", "chuck.used"),
    how="whether the chuck that grips the bar is not the chuck used",
)
def chuck_change(of_bar: Record, used: Record) -> bool:
    return bool(of_bar["label"] != used["label"])


@computed(
    "blank.chuck_stays",
    label="the chuck of the blanks is on the spindle already",
    kind="yes-no",
    needs=("bar.hold?", "bar.chuck_label", "blank.chuck_label?"),
    tables=(_HOLDINGS,),
    how="whether what gripped the bar is the chuck of the blanks",
)
def chuck_stays(hold: str | None, of_bar: str, of_blanks: str | None, holdings: Table) -> bool:
    held = _of_bar(holdings, hold)
    return not (held is not None and held.yes("collet_chuck")) and of_bar == of_blanks


@computed(
    "bar.hold_speed_limit",
    label="speed limit of what grips the bar",
    unit="1/min",
    rounding="speed",
    bound="most",
    needs=(
        "bar.hold?", "bar.chuck_change", "blank.chuck_stays", "chuck.speed_limit", "crib.collet_speed?",
        "bar.chuck_speed_limit?", "blank.chuck_speed_limit?",
    ),
    tables=(_HOLDINGS,),
    how="the speed marked on the collet chuck where a collet holds the bar, that of the four-jaw chuck where one is fitted "
    "for it; else that of the chuck",
)  # fmt: skip
def hold_speed_limit(
    hold: str | None, other: bool, stays: bool, used: float, collet: float | None, of_bar: float | None,
    of_blanks: float | None, holdings: Table,
) -> Limited | None:  # fmt: skip
    held = _of_bar(holdings, hold)
    if held is not None and held.yes("collet_chuck"):
        return None if collet is None else taken(collet, "the speed marked on the collet chuck", as_said=True)
    if not other:
        return taken(used, "the limit of the chuck")
    # One chuck for bar and blanks has one limit, by hand too.
    limit = of_blanks if stays else of_bar
    return None if limit is None else taken(limit, "the limit of the four-jaw chuck")
