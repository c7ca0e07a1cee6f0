"""A list in two columns, parted where the taller of them is shortest, reckoned by letters."""

from collections.abc import Callable, Iterable, Sequence
from math import ceil
from typing import TypeVar

from tailtrue.render.letters import width

_Thing = TypeVar("_Thing")

# Things that keep together on a page, and the ems of a line in a column.
_BATCH = 8
_LINE = 24.5
# A box to tick is higher than a line of small print.
_BOX = 1.4


def lines_of(name: str, rest: str) -> float:
    """About how many lines a thing takes: its name in bold, and what is said of it.

    >>> lines_of("rule", "step 2.1")
    1.4
    """
    return max(_BOX, float(ceil((width(name, bold=True) + width(rest)) / _LINE)))


def halves(
    things: Sequence[_Thing], lines: Callable[[_Thing], float]
) -> Iterable[tuple[Sequence[_Thing], Sequence[_Thing]]]:
    """Batches of things that keep together, each in two columns.

    >>> list(halves(["a", "b", "c"], {"a": 1.0, "b": 1.0, "c": 2.0}.__getitem__))
    [(['a', 'b'], ['c'])]
    """
    for start in range(0, len(things), _BATCH):
        batch = things[start : start + _BATCH]
        high = [lines(one) for one in batch]
        at = min(range(1, len(batch) + 1), key=lambda cut: max(sum(high[:cut]), sum(high[cut:])))
        yield batch[:at], batch[at:]
