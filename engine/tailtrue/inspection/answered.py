"""Choices are told of work that this sheet does: nothing is claimed of a bar that somebody else made."""

from collections.abc import Iterator

from tailtrue.inspection.activities import RELEASED_BY
from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet

_MAKES_A_BORE = frozenset({"bore", "ream-by-hand", "gauge-bore"})
# A question, and the activities of which a sheet does one at least where it answers it.
_ANSWERED_WHERE = {
    "joint.method": frozenset(RELEASED_BY),
    "bar.hold": frozenset({"centre-drill", "facing"}),
    "bar.cut_wet": frozenset({"centre-drill", "facing", "free-end"}),
    **dict.fromkeys(
        ("bar.seats", "bore.fine_feed", "bore.gauge", "bore.make", "collar.hold", "collar.metal", "collar.second_face_hold",
         "collar.source", "hole.holder", "hole.way", "saw.who"),
        _MAKES_A_BORE,
    ),
}  # fmt: skip


def of_this_work(sheet: Sheet) -> Iterator[Fault]:
    """A question of the making is answered on the sheet that makes; on any other, nobody said it."""
    done = {activity for placed in sheet.steps for activity in placed.step.activities}
    for choice in sheet.procedure.choices:
        if done.isdisjoint(_ANSWERED_WHERE.get(choice.id, done)) and choice.id in _ANSWERED_WHERE:
            yield Fault(f"choice {choice.id}", f'"{choice.question}" is answered, and no step of this sheet does that work')
