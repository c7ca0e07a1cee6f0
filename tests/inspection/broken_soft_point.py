"""Sheets on which a soft centre carries work without being turned, or the top slide stays where the point needed it."""

from functools import cache

from shops import EXAMPLES
from tailtrue.advise import advise, shop_for, tree_of
from tailtrue.procedure import Step

from .broken import breaks
from .changed import Job, changed_step, valued


@cache
def _soft() -> Job:
    advice = advise(EXAMPLES / "fernhill" / "use-bar.toml", instead={"crib.headstock_centre": "soft"})
    return tree_of(advice), shop_for(advice)


def _left_over(step: Step) -> Step:
    text = tuple(line for line in step.text if "back in line with the bed" not in "".join(map(str, line)))
    assert len(text) < len(step.text)
    return step.model_copy(update={"text": text})


@breaks("V680", "step 3.2", also="V90 V290")
def point_that_is_not_turned() -> Job:
    return changed_step(_soft(), "turn-point", lambda step: step.model_copy(update={"activities": ("turning",)}))


@breaks("V681", "step 3.6", also="V80")
def slide_at_the_whole_angle() -> Job:
    return changed_step(_soft(), "set-slide-to-point", valued("point.slide_angle", 60.0))


@breaks("V681", "step 3.6")
def slide_left_over_for_the_skim() -> Job:
    return changed_step(_soft(), "finish-point", _left_over)
