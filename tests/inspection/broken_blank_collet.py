"""Sheets that hold blanks in a collet, with one thing wrong."""

from collections.abc import Callable
from dataclasses import replace

from shops import EXAMPLES
from tailtrue.procedure import Drawing, Step

from .broken import breaks
from .changed import Job, on_step, place_of, sheet_of, with_told

_HOLD, _AGAIN = "hold-blank-collet", "reseat-collet"


def _job() -> Job:
    return sheet_of(EXAMPLES / "tannery-lane" / "job-large-collet.toml")


def _where(step: str) -> str:
    return place_of(_job(), step)


def _with(step: str, change: Callable[[Step], Step]) -> Job:
    return on_step(_job(), step, change)


def _figures(step: str, fact: str, value: float) -> Job:
    return with_told(_job(), step, fact, value)


@breaks("V413", _where(_AGAIN))
def blank_that_hardly_sits_in_the_collet() -> Job:
    return _figures(_AGAIN, "collar.grip", 8.0)


@breaks("V413", _where(_HOLD))
def collet_longer_than_the_sheet_thinks() -> Job:
    tree, shop = _job()
    return tree, replace(shop, collet_mm=60.0)


@breaks("V413", _where(_HOLD), also="V15")
def collet_with_no_key_to_close_it() -> Job:
    return _with(_HOLD, lambda one: one.model_copy(update={"tools": tuple(t for t in one.tools if t != "collet-key")}))


@breaks("V413", _where(_HOLD), also="V86")
def face_too_near_to_the_collet() -> Job:
    return _figures(_HOLD, "collar.held_out", 2.0)


@breaks("V413", _where("drill-blank"))
def drill_that_does_not_go_into_the_collet_chuck() -> Job:
    return _figures("drill-blank", "crib.collet_hole", 10.0)


@breaks("V134", _where(_HOLD))
def blank_of_another_size_than_the_collet() -> Job:
    tree, shop = _job()
    return tree, replace(shop, takes={**shop.takes, "collet": (50.0, 58.0)})


@breaks("V87", "drawing blank-in-collet", also="V86")
def blank_drawn_deeper_than_the_collet() -> Job:
    tree, shop = _job()

    def shorter(one: Drawing) -> Drawing:
        if one.kind != "blank-in-collet":
            return one
        length = one.dimensions["collet_length"].model_copy(update={"value": 15.0})
        return one.model_copy(update={"dimensions": {**one.dimensions, "collet_length": length}})

    return tree.model_copy(update={"drawings": tuple(map(shorter, tree.drawings))}), shop
