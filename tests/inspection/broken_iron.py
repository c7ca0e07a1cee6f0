"""Sheets for collars of iron on which nothing draws the dust off where it forms."""

from functools import cache

from shops import EXAMPLES
from tailtrue.advise import advise, make_procedure, shop_for
from tailtrue.procedure import Step

from .broken import breaks
from .changed import Job, on_step, place_of


@cache
def _job() -> Job:
    path = EXAMPLES / "ropewalk" / "job-iron.toml"
    return make_procedure(path), shop_for(advise(path))


@breaks("V623", place_of(_job(), "face-blank"))
def iron_faced_in_the_chuck_and_the_nozzle_on_the_shelf() -> Job:
    def shelf(one: Step) -> Step:
        return one.model_copy(update={"text": (("Hang the hose up.",),)})

    return on_step(_job(), "draw-off-dust", shelf)
