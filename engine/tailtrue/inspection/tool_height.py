"""What shows a tool the height of the centres is there to be seen, is trusted in height, and lifts as this post lifts."""

import re
from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Placed, Sheet

_SHOWN = re.compile(r"\bcentre height, shown by ([^.]+)\.|\bTake that height from ([^.]+)\.", re.IGNORECASE)
_LIFTED = re.compile(r"\bLift it by ([^.]+)\.", re.IGNORECASE)
_BETWEEN = re.compile(r"\bbar between the centres\b|\bMount the work\b", re.IGNORECASE)
_POST = {"screw": "quick-change", "packing": "block", "rocker": "rocker"}


def shown_by_what_is_right(sheet: Sheet) -> Iterator[Fault]:
    """By the tailstock centre only where its height was found right, by a height gauge only where there is one."""
    for placed in sheet.steps:
        for shown in _said(_SHOWN, placed):
            if "tailstock" in shown and not sheet.shop.tailstock_height_right:
                yield Fault(placed.where, "a tool is set by the tailstock centre, and nobody found the height of that right")
            if "height gauge" in shown and not sheet.shop.height_gauge:
                yield Fault(placed.where, "a tool is set by a height gauge, and the shop has none")


def shown_by_what_is_seen(sheet: Sheet) -> Iterator[Fault]:
    """A point hides in the bar once that is mounted; a middle is cut only in a blank that is drilled later."""
    for phase in sheet.procedure.phases:
        mounted = False
        drilled = any("drill" in step.activities for step in phase.steps)
        for placed in (one for one in sheet.steps if one.phase is phase):
            mounted = mounted or _BETWEEN.search(placed.words) is not None
            for shown in _said(_SHOWN, placed):
                if "point" in shown and mounted:
                    yield Fault(placed.where, "a tool is set by a point that the mounted bar hides")
                if "trial face" in shown and not drilled:
                    yield Fault(placed.where, "a tool is set by the middle of a face, and the blank has a hole there")


def lifted_as_the_post_lifts(sheet: Sheet) -> Iterator[Fault]:
    """Where the post was named, its own way of lifting a tool is told; a rocker is never taken for granted."""
    post = sheet.shop.tool_post
    for placed in sheet.steps:
        for way in _said(_LIFTED, placed):
            told = {kind for word, kind in _POST.items() if word in way}
            if (post and told != {post}) or (not post and "rocker" in told):
                yield Fault(placed.where, f"a tool is lifted by {way}, and the post is {post or 'not named'}")


def _said(wanted: re.Pattern[str], placed: Placed) -> list[str]:
    return [next(words for words in found.groups() if words).lower() for found in wanted.finditer(placed.words)]
