"""The independent chuck in which a collar that left its chuck is set true by its bore, and how the collar sits in it."""

from collections.abc import Mapping, Sequence
from typing import Any

from tailtrue.calc.steps import step_down
from tailtrue.computed.chuck_facts import chuck_limit, hole_fact, name_fact, speed_fact
from tailtrue.computed.registry import Limited, computed
from tailtrue.tables import Table

Record = Mapping[str, Any]
_SEAT = ("collar.width", "bore.nominal", "limit.face_clearance", "limit.boring_clearance", "limit.grip_least")


def _grip(chuck: Record, width: float, bore: float, clearance: float, behind: float, least: float) -> float | None:
    """How much of the collar the jaws hold, or None where its face or the boring bar would be in the way."""
    jaws, most = chuck.get("jaw_depth"), width - clearance
    passes = (chuck.get("through_bore") or 0.0) > bore
    if jaws is not None:
        grip = min(most, jaws if passes else jaws - behind)
    elif passes:
        grip = min(most, least)  # jaws that nobody measured are taken for no deeper than the least grip
    else:
        return None
    return grip if grip >= least else None


@computed(
    "rework.chuck",
    label="independent chuck for a collar that left its chuck",
    kind="record",
    needs=("lathe.chucks", "collar.blank_diameter", "collar.bore_finish.speed", *_SEAT),
    tables=("machines/chuck_limits", "machines/chuck_kinds"),
    how="the smallest independent chuck that opens to the blank, may run at the speed of the last cuts, and leaves the "
    "face clear in front and the boring bar room behind",
)
def chuck(
    owned: Sequence[Record], blank: float, speed: float, width: float, bore: float, clearance: float, behind: float,
    least: float, limits: Table, kinds: Table,
) -> Limited:  # fmt: skip
    serving = [
        one
        for one in owned
        if not kinds.one(kind=one["kind"]).yes("self_centring") and one["grips_to"] >= blank
        if (limit := chuck_limit(one, limits)) is not None and limit.value >= speed
        if _grip(one, width, bore, clearance, behind, least) is not None
    ]
    if not serving:
        return Limited(None, "no independent chuck of the list takes the collar so")
    return Limited(min(serving, key=lambda one: one["body"]), "the smallest that serves")


@computed("rework.independent_chuck", label="independent chuck that takes the collar at its boring speed", kind="yes-no",
          needs=("rework.chuck?", "collar.blank_diameter"), how="whether the lathe has one")  # fmt: skip
def independent_chuck(found: Record | None, _blank: float) -> bool:
    return found is not None


name_fact("rework.chuck_label", "rework.chuck", "chuck for the collar")
hole_fact("rework.chuck_hole", "rework.chuck", "hole through the chuck for the collar")
speed_fact("rework.chuck_speed_limit", "rework.chuck", "speed limit of the chuck for the collar")


@computed(
    "rework.grip",
    label="grip on a collar that is set true by its bore",
    unit="mm",
    rounding="length",
    bound="most",
    needs=("rework.chuck", *_SEAT, "lathe.size_step"),
    how="what leaves the face clear in front of the jaws, and behind the collar what the boring bar is longer than it",
)
def grip(
    found: Record, width: float, bore: float, clearance: float, behind: float, least: float, step: float
) -> float | None:
    held = _grip(found, width, bore, clearance, behind, least)
    return None if held is None else max(least, step_down(held, step))


@computed("rework.stands_out", label="collar standing out of the jaws", unit="mm", rounding="length",
          needs=("collar.width", "rework.grip"), how="width of the collar less the grip")  # fmt: skip
def stands_out(width: float, held: float) -> float:
    return width - held


@computed("rework.room_behind", label="room behind the collar", unit="mm", rounding="length", bound="most",
          needs=("rework.chuck", "rework.grip"), how="depth of the jaws as measured, less the grip")  # fmt: skip
def room_behind(found: Record, held: float) -> Limited:
    jaws = found.get("jaw_depth")
    if jaws is None:
        return Limited(None, "how deep the jaws are was not measured")
    return Limited(jaws - held, "the depth of the jaws")
