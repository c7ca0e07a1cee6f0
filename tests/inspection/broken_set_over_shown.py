"""Sheets whose set-over nobody could read: too many divisions, too short a plunger, or nothing that shows it."""

from dataclasses import replace

from shops import EXAMPLES
from tailtrue.parts import Figure, Setting
from tailtrue.procedure import Step

from .broken import breaks
from .changed import Job, on_step, place_of, sheet_of


def _job(shop: str) -> Job:
    return sheet_of(EXAMPLES / shop / "taper-and-return.toml")


def _counted(fact: str, value: float) -> Job:
    def figure(piece: str | Figure) -> str | Figure:
        return piece.model_copy(update={"value": value}) if isinstance(piece, Figure) and piece.fact == fact else piece

    def line(one: Setting) -> Setting:
        return one.model_copy(update={"value": tuple(map(figure, one.value))})

    def changed(one: Step) -> Step:
        return one.model_copy(update={"settings": tuple(map(line, one.settings))})

    return on_step(_job("quarry-road"), "set-over", changed)


@breaks("V543", place_of(_job("quarry-road"), "set-over"))
def more_divisions_than_a_turn_has() -> Job:
    return _counted("setover.divisions_over", 120.0)


@breaks("V543", place_of(_job("quarry-road"), "set-over"))
def turns_that_come_to_twice_the_set_over() -> Job:
    return _counted("setover.turns", 2.0)


@breaks("V543", place_of(_job("quarry-road"), "set-back"))
def plunger_that_does_not_travel_so_far() -> Job:
    tree, shop = _job("quarry-road")
    return tree, replace(shop, indicator_travel_mm=1.0)


@breaks("V543", place_of(_job("fernhill"), "set-over"), also="V15")
def set_over_that_nothing_shows() -> Job:
    return on_step(_job("fernhill"), "set-over", lambda one: one.model_copy(update={"tools": ("indicator", "hand-tools")}))
