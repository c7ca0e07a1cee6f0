"""Sizes of the log in the units of the shop's dials, and directions in words."""

from tailtrue.parts import Dials, Figure
from tailtrue.render.numbers import MINUS, NBSP, show_one

TOWARD = "toward the tool"
AWAY = "away from the tool"
_INCH_MM = 25.4


def size(value_mm: float, dials: Dials) -> str:
    """A small length as the dials show it.

    >>> size(0.0127, "inch")
    '0.0005 in'
    """
    shown = show_one(Figure(fact="log.size", value=value_mm, unit="mm", rounding="difference"), dials)
    return plain(shown)


def doubt(value_mm: float, dials: Dials) -> str:
    """A doubt as the dials show it, never less than it is.

    >>> doubt(0.0023, "metric")
    '0.003 mm'
    """
    figure = Figure(fact="log.doubt", value=value_mm, unit="mm", rounding="difference", bound="least")
    return plain(show_one(figure, dials))


def plain(shown: str) -> str:
    """A figure for a terminal: plain spaces, and a minus that can be copied."""
    return shown.replace(NBSP, " ").replace(MINUS, "-")


def offset(value_mm: float, dials: Dials) -> str:
    """Where the tailstock centre stands, in words.

    >>> offset(-0.015, "metric"), offset(0.0, "metric")
    ('0.015 mm away from the tool', '0.000 mm, in line')
    """
    if value_mm == 0:
        return f"{size(0.0, dials)}, in line"
    return f"{size(abs(value_mm), dials)} {TOWARD if value_mm > 0 else AWAY}"


def unit_mm(dials: Dials) -> tuple[str, float]:
    """The unit of the dials and how many mm it has."""
    return ("mm", 1.0) if dials == "metric" else ("in", _INCH_MM)
