"""Sheets that send somebody to screws that the tailstock does not have."""

from dataclasses import replace
from typing import Any

from .broken import breaks
from .changed import Job, with_look_up, with_sheet
from .sample import procedure, shop


def _fixed(**changes: Any) -> Job:
    """The sample on a lathe whose tailstock cannot be set over, its table and record told rightly."""
    ways = {
        "can_move": False,
        "larger_at_tailstock": "Tailstock end LARGER: its centre stands off the line away from you.",
        "smaller_at_tailstock": "Tailstock end SMALLER: its centre stands off the line toward you.",
    }
    tree = procedure()
    record = tree.record
    assert record is not None
    blocks = tuple(block for block in record.blocks if block.id != "correction")
    fixed: dict[str, Any] = {
        "look_up": tree.look_up.model_copy(update=ways),
        "record": record.model_copy(update={**ways, "blocks": blocks}),
        "drawings": (),
    }
    changed, _ = with_sheet(**{**fixed, **changes})
    return changed, replace(shop(), set_over="none")


@breaks("V300", "look-up table")
def a_table_without_its_move() -> Job:
    larger, smaller = procedure().look_up.larger_at_tailstock, procedure().look_up.smaller_at_tailstock
    turned = {"larger_at_tailstock": smaller.replace("SMALLER", "LARGER"), "smaller_at_tailstock": larger}
    return with_look_up(can_move=False, **turned)


@breaks("V300", "record")
def a_record_of_another_tailstock() -> Job:
    record = procedure().record
    assert record is not None
    return _fixed(record=record.model_copy(update={"can_move": True}))


@breaks("V300", "step 5.2")
def a_step_that_asks_for_the_move() -> Job:
    return _fixed()
