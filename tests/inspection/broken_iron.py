"""Sheets for collars of iron on which nothing draws the dust off where it forms."""

from shops import EXAMPLES
from tailtrue.parts import Figure
from tailtrue.procedure import Step

from .broken import breaks
from .changed import Job, on_step, place_of, sheet_of


def _job() -> Job:
    return sheet_of(EXAMPLES / "ropewalk" / "job-iron.toml")


@breaks("V623", place_of(_job(), "face-blank"))
def iron_faced_in_the_chuck_and_the_nozzle_on_the_shelf() -> Job:
    def shelf(one: Step) -> Step:
        return one.model_copy(update={"text": (("Hang the hose up.",),)})

    return on_step(_job(), "draw-off-dust", shelf)


def _first_cut(deep: float) -> Job:
    def cut(piece: str | Figure) -> str | Figure:
        depth = isinstance(piece, Figure) and piece.fact == "collar.first_depth"
        return piece.model_copy(update={"value": deep}) if depth and isinstance(piece, Figure) else piece

    def otherwise(one: Step) -> Step:
        lines = tuple(line.model_copy(update={"value": tuple(map(cut, line.value))}) for line in one.settings)
        return one.model_copy(update={"settings": lines})

    return on_step(_job(), "face-blank", otherwise)


@breaks("V624", place_of(_job(), "face-blank"), also="V233")
def first_side_with_cuts_that_take_off_too_little() -> Job:
    return _first_cut(0.5)


@breaks("V624", place_of(_job(), "face-blank"), also="V233")
def first_side_with_cuts_that_take_the_light_one_too() -> Job:
    return _first_cut(1.25)
