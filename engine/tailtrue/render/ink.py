"""Strokes and letters of a line drawing in SVG. Units are millimetres on paper; grey tones only."""

from collections.abc import Sequence
from dataclasses import dataclass, field
from functools import lru_cache
from html import escape
from typing import Literal

TEXT_HEIGHT = 3.4  # mm on paper, 9.6 pt
LINE_HEIGHT = 4.2
_LETTER_WIDTH = 0.62  # of the text height: a broad sans serif
_ARROW = 2.4
_ARROW_HALF = 0.8

# Strokes of one kind after each other are one shape, drawn at once; a shape that hides what is under it stands alone.
_AS_ONE = frozenset({"thin", "cut", "hidden", "chain", "solid"})
_ENDED = '"/>'

Anchor = Literal["start", "middle", "end"]
Way = Literal["left", "right", "up", "down"]
_AHEAD: dict[Way, tuple[int, int]] = {"left": (-1, 0), "right": (1, 0), "up": (0, -1), "down": (0, 1)}


@lru_cache(maxsize=8192)  # a coordinate stands in many strokes
def number(value: float) -> str:
    """A coordinate, short.

    >>> number(12.50), number(-0.001)
    ('12.5', '0')
    """
    text = f"{value:.2f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def text_width(text: str) -> float:
    """About how wide a line of text is.

    >>> round(text_width("Ø60"), 2)
    6.32
    """
    return len(text) * TEXT_HEIGHT * _LETTER_WIDTH


def wrap(text: str, width: float) -> tuple[str, ...]:
    """Lines that fit a width; a word longer than the width keeps its line.

    >>> wrap("centre hole, both ends", 30.0)
    ('centre hole,', 'both ends')
    """
    lines: list[str] = []
    for word in text.split(" "):
        if lines and text_width(f"{lines[-1]} {word}") <= width:
            lines[-1] = f"{lines[-1]} {word}"
        else:
            lines.append(word)
    return tuple(line for line in lines if line)


@dataclass
class Ink:
    """A drawing in the making."""

    parts: list[str] = field(default_factory=list)

    def outline(self, points: Sequence[tuple[float, float]], kind: str = "edge", closed: bool = True) -> None:
        """A run of straight lines."""
        self._stroke(f"M{' L'.join([f'{number(x)} {number(y)}' for x, y in points])}{' Z' if closed else ''}", kind)

    def _stroke(self, run: str, kind: str) -> None:
        begun = f'<path class="{kind}" d="'
        if kind in _AS_ONE and self.parts and self.parts[-1].startswith(begun):
            self.parts[-1] = f"{self.parts[-1].removesuffix(_ENDED)} {run}{_ENDED}"
        else:
            self.parts.append(f"{begun}{run}{_ENDED}")

    def box(self, left: float, top: float, width: float, height: float, kind: str = "edge") -> None:
        """A rectangle."""
        self.parts.append(
            f'<rect class="{kind}" x="{number(left)}" y="{number(top)}" width="{number(width)}" height="{number(height)}"/>'
        )

    def circle(self, x: float, y: float, radius: float, kind: str) -> None:
        """A circle round x, y."""
        self.parts.append(f'<circle class="{kind}" cx="{number(x)}" cy="{number(y)}" r="{number(radius)}"/>')

    def line(self, x1: float, y1: float, x2: float, y2: float, kind: str = "thin") -> None:
        """One straight line."""
        self._stroke(f"M{number(x1)} {number(y1)} L{number(x2)} {number(y2)}", kind)

    def arrow(self, x: float, y: float, way: Way, size: float = 1.0) -> None:
        """A filled arrow head with its point at x, y."""
        ahead_x, ahead_y = _AHEAD[way]
        back_x, back_y = x - ahead_x * _ARROW * size, y - ahead_y * _ARROW * size
        side_x, side_y = ahead_y * _ARROW_HALF * size, ahead_x * _ARROW_HALF * size
        self.outline(((x, y), (back_x + side_x, back_y + side_y), (back_x - side_x, back_y - side_y)), kind="solid")

    def words(self, x: float, y: float, lines: Sequence[str], anchor: Anchor = "start", kind: str = "") -> None:
        """Lines of text, the first with its foot at y."""
        for row, line in enumerate(lines):
            style = f' class="{kind}"' if kind else ""
            self.parts.append(
                f'<text{style} x="{number(x)}" y="{number(y + row * LINE_HEIGHT)}" '
                f'text-anchor="{anchor}">{escape(line)}</text>'
            )

    def words_over(self, x: float, y: float, lines: Sequence[str], anchor: Anchor, kind: str = "") -> None:
        """Lines of text over other lines: white paper is laid under them, which every printer shows."""
        width = max(text_width(line) for line in lines)
        left = {"start": x, "middle": x - width / 2, "end": x - width}[anchor]
        self.box(left, y - TEXT_HEIGHT, width, TEXT_HEIGHT + (len(lines) - 1) * LINE_HEIGHT, "paper")
        self.words(x, y, lines, anchor, kind)

    def between(self, left: float, right: float, y: float) -> None:
        """A dimension line without its number, the arrows outside where there is no room for them."""
        if right - left > 3 * _ARROW:
            self.line(left, y, right, y)
            self.arrow(left, y, "left")
            self.arrow(right, y, "right")
        else:
            self.line(left - 2 * _ARROW, y, right + 2 * _ARROW, y)
            self.arrow(left, y, "right")
            self.arrow(right, y, "left")

    def across(self, left: float, right: float, y: float, text: str) -> None:
        """A dimension from left to right with its number above the line, whatever the room."""
        self.between(left, right, y)
        if right - left >= text_width(text):
            self.words((left + right) / 2, y - 1, (text,), "middle", "size")
        else:
            self.words_over((left + right) / 2, y - 1.4, (text,), "middle", "size")

    def upright(self, x: float, top: float, bottom: float, text: str) -> None:
        """A dimension from top to bottom with its number to the right of the line."""
        self.line(x, top, x, bottom)
        self.arrow(x, top, "up")
        self.arrow(x, bottom, "down")
        self.words(x + 1.5, (top + bottom) / 2 + TEXT_HEIGHT / 3, (text,), "start", "size")

    def svg(self, name: str, width: float, height: float, title: str, description: str, kind: str = "ink") -> str:
        """The whole drawing, with its text for those who cannot see it."""
        return (
            f'<svg class="{kind}" viewBox="0 0 {number(width)} {number(height)}" role="img" '
            f'aria-labelledby="{name}-title {name}-description">'
            f'<title id="{name}-title">{escape(title)}</title>'
            f'<desc id="{name}-description">{escape(description)}</desc>{"".join(self.parts)}</svg>'
        )
