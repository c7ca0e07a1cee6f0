"""The safety signs of a paper: the words and the shape of each code."""

from collections.abc import Iterable
from typing import Any

from tailtrue.shop_sheet import Sign
from tailtrue.store.knowledge import Knowledge

SIGNS = "safety/signs"


def signs_of(knowledge: Knowledge, codes: Iterable[str]) -> tuple[Sign, ...]:
    """Each sign once, in the order of the codes."""
    table = knowledge.tables[SIGNS]
    return tuple(_sign(code, table.one(code=code)) for code in dict.fromkeys(codes))


def _sign(code: str, row: Any) -> Sign:
    # A sign refuses a shape that is none.
    return Sign(code=code, words=row.text("name"), shape=row.text("shape"))
