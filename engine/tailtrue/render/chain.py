"""Dimensions in a row with their total: one of them follows from the others, and is no dimension of its own (ISO 129-1)."""

import re
from collections.abc import Sequence
from decimal import Decimal

_DECIMAL = re.compile(r"\d+(\.\d+)?")
Drawn = tuple[float, float, str]  # from, to, on paper; the number


def reference(left: float, right: float, number: str, others: Sequence[Drawn]) -> str:
    """How the number is written that other dimensions of a drawing may give: in parentheses where they do.

    Empty where their printed numbers give another, each being rounded alone: who adds them up finds no second size.

    >>> parts = [(0, 20, "0.62"), (20, 28, "0.24")]
    >>> reference(0, 28, "0.86", parts), reference(0, 28, "0.87", parts), reference(0, 40, "1.20", parts)
    ('(0.86)', '', '1.20')
    """
    if not _DECIMAL.fullmatch(number):  # the name of a size, as it is marked on a tool
        return number
    given = _given(left, right, [one for one in others if _DECIMAL.fullmatch(one[2])])
    if given is None:
        return number
    return f"({number})" if given == Decimal(number) else ""


def _given(left: float, right: float, others: Sequence[Drawn]) -> Decimal | None:
    """What the others make of the length from one end to the other; nothing where they leave it open."""
    at = {left: Decimal(0)}
    for _ in others:
        for start, end, number in others:
            if start in at:
                at.setdefault(end, at[start] + Decimal(number))
            elif end in at:
                at.setdefault(start, at[end] - Decimal(number))
    return at.get(right)
