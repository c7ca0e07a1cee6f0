"""Two ends in a text, "least to most": where inward rounding would cross them they get more digits, in each system."""

from collections.abc import Iterator
from itertools import repeat

from tailtrue.parts import Dials, Figure, Text
from tailtrue.render.numbers import NOT_FINER, Finer, crossing_places

_SYSTEMS: tuple[Dials, Dials] = ("metric", "inch")
_APART = 2  # two ends have a word between them
_BETWEEN = frozenset({"to", "and"})
_MOST_DIGITS = 3  # two ends that cross with these too are one number, and printed as one


def pieces(text: Text) -> Iterator[tuple[str | Figure, Finer]]:
    """Each piece of a text, and with how many digits more than its kind has it is printed, metric and inch.

    >>> low = Figure(fact="fit.least", value=0.0397, unit="mm", rounding="fit", bound="least")
    >>> high = low.model_copy(update={"value": 0.0403, "bound": "most"})
    >>> [finer for _, finer in pieces((low, " to ", high))]
    [(0, 1), (0, 0), (0, 1)]
    """
    # Most texts are words alone, or hold one figure.
    more = (
        _more(text) if len(text) > _APART and any(isinstance(one, str) and one.strip() in _BETWEEN for one in text) else {}
    )
    if not more:
        return zip(text, repeat(NOT_FINER))
    return (more.get(place, (piece, NOT_FINER)) for place, piece in enumerate(text))


def _more(text: Text) -> dict[int, tuple[Figure, Finer]]:
    more = {}
    for place in range(len(text) - 2):
        low, between, high = text[place : place + 3]
        if isinstance(low, str) or isinstance(high, str) or not isinstance(between, str):
            continue
        if between.strip() in _BETWEEN and _inward(low, high):
            metric, inch = (crossing_places(low, high, dials) for dials in _SYSTEMS)
            one = max(metric, inch) > _MOST_DIGITS
            for at, end in ((place, low), (place + 2, high)):
                as_one = (end.model_copy(update={"bound": "nearest"}), NOT_FINER)
                more[at] = as_one if one else (end, (metric, inch))
    return more


def _inward(low: Figure, high: Figure) -> bool:
    return (low.bound, high.bound, low.unit) == ("least", "most", high.unit) and low.rounding == high.rounding
