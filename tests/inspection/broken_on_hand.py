"""Sheets for a bar on hand in whose collars steel lies, and which cut down to it or let nobody feel for it."""

from dataclasses import replace
from functools import cache
from typing import Any

from shops import EXAMPLES
from tailtrue.advise import advise, shop_for, tree_of
from tailtrue.parts import Check
from tailtrue.procedure import Step

from .broken import breaks
from .changed import Job

_WORN_OUT_MM = 58.0


@cache
def _job(fixed_by: str = "set-screws") -> Job:
    bar = {
        "label": "test bar 2, rack A", "material": "steel-low-carbon-cold-drawn", "diameter": "25 mm", "length": "340 mm",
        "cone": "6.6 mm", "pilot": "3.15 mm", "collar_material": "aluminium-6082-t6", "collar_diameter": "67.4 mm",
        "collar_width": "25 mm", "station": "48 mm", "fixed_by": fixed_by, "worn_out_at": f"{_WORN_OUT_MM} mm",
    }  # fmt: skip
    advice = advise(EXAMPLES / "fernhill" / "use-bar.toml", instead={"stock.test_bars": [bar]})
    return tree_of(advice), shop_for(advice)


def _felt(**changes: Any) -> Job:
    """The step that feels the rims is made otherwise."""
    tree, shop = _job()

    def otherwise(step: Step) -> Step:
        return step.model_copy(update=changes) if step.id == "feel-rims" else step

    phases = tuple(phase.model_copy(update={"steps": tuple(map(otherwise, phase.steps))}) for phase in tree.phases)
    return tree.model_copy(update={"phases": phases}), shop


@breaks("V630", "sheet")
def collars_cut_below_what_was_told_of_them() -> Job:
    tree, shop = _job()
    return tree, replace(shop, worn_out_mm=_WORN_OUT_MM + 2)


@breaks("V630", "sheet")
def screws_in_the_collars_and_nobody_told_how_deep() -> Job:
    tree, shop = _job()
    return tree, replace(shop, worn_out_mm=None)


@breaks("V630", "sheet", also="V90 V290")
def rims_that_nobody_feels() -> Job:
    no_checks: tuple[Check, ...] = ()
    return _felt(activities=("handle-stock",), checks=no_checks)
