"""The sheet a small drawing is made on: its numbers, the rows of words below it, hatching, the frame."""

from collections.abc import Sequence

from tailtrue.parts import Dials
from tailtrue.procedure import Drawing
from tailtrue.render.drawing import described
from tailtrue.render.ink import LINE_HEIGHT, TEXT_HEIGHT, Ink, text_width, wrap
from tailtrue.render.numbers import read
from tailtrue.render.words import unit_words

WIDTH = 84.0  # mm on paper
FIRST_ROW = 4.0  # foot of the first line of words
LEVEL = 6.0  # between two dimension lines, with a number between them
_HATCH = 2.0
_SAMPLE = 7.0
_INDENT, _BELOW = 2.0, 1.0  # where a leader leaves its words


class Plate:
    """One small drawing in the making."""

    def __init__(self, drawing: Drawing, dials: Dials) -> None:
        self.ink = Ink()
        self._drawing = drawing
        self._dials = dials

    def has(self, name: str) -> bool:
        """Whether the drawing has a dimension."""
        return name in self._drawing.dimensions

    def names(self, start: str) -> list[str]:
        """The dimensions whose names start so, in order."""
        return [name for name in self._drawing.dimensions if name.startswith(start)]

    def size(self, name: str) -> float:
        """A dimension in mm. Raises ValueError when it is not there."""
        if not self.has(name):
            raise ValueError(f"the drawing {self._drawing.id} lacks its dimension {name}")
        return self._drawing.dimensions[name].value

    def number(self, name: str) -> str:
        """A dimension as it is written on the drawing."""
        self.size(name)
        return read(self._drawing.dimensions[name], self._dials).number

    def label(self, name: str) -> str:
        """A label, empty when the drawing has none of that name."""
        return self._drawing.labels.get(name, "")

    def upright(self, x: float, top: float, bottom: float, text: str, part: float, left: bool = False) -> None:
        """A dimension beside the part, with lines that lead to it from the part's edge at `part`."""
        way = -1 if left else 1
        for y in (top, bottom):
            self.ink.line(part + way, y, x + way, y)
        self.ink.line(x, top, x, bottom)
        self.ink.arrow(x, top, "up")
        self.ink.arrow(x, bottom, "down")
        self.ink.words(x + 1.5 * way, (top + bottom) / 2 + TEXT_HEIGHT / 3, (text,), "end" if left else "start", "size")

    def hatch(self, left: float, top: float, width: float, height: float) -> None:
        """A rectangle that is cut through: its edge, and narrow lines at 45 degrees."""
        self.ink.box(left, top, width, height, "edge")
        run = _HATCH
        while run < width + height:
            x1, y1 = left + max(0.0, run - height), top + min(run, height)
            x2, y2 = left + min(run, width), top + max(0.0, run - width)
            self.ink.line(x1, y1, x2, y2, "cut")
            run += _HATCH

    def leader(self, x1: float, y1: float, x2: float, y2: float) -> None:
        """A line from words to the part, with a dot on the part."""
        self.ink.line(x1, y1, x2, y2)
        self.ink.circle(x2, y2, 0.5, "solid")

    def pointed(self, left: float, words: str, x: float, y: float) -> None:
        """Words above the part and a line from below them to what they name."""
        self.ink.words(left, FIRST_ROW, (words,))
        start = min(max(x, left + _INDENT), left + text_width(words) - _INDENT)
        self.leader(start, FIRST_ROW + _BELOW, x, y)

    def finish(self, foot: float, scale: str, rows: Sequence[str] = (), samples: Sequence[tuple[str, str]] = ()) -> str:
        """The whole drawing: below `foot` samples of lines, rows of words, then the unit of the numbers and the scale."""
        y = foot + LINE_HEIGHT + 0.8
        abreast = all(text_width(words) <= WIDTH / 2 - _SAMPLE - 3 for _, words in samples)
        for place, (kind, words) in enumerate(samples, start=1):
            left = WIDTH / 2 if abreast and place % 2 == 0 else 0.0
            self.ink.line(left, y - TEXT_HEIGHT / 3, left + _SAMPLE, y - TEXT_HEIGHT / 3, kind)
            lines = wrap(words, WIDTH - _SAMPLE - 2)
            self.ink.words(left + _SAMPLE + 2, y, lines)
            if not abreast or place % 2 == 0 or place == len(samples):
                y += len(lines) * LINE_HEIGHT
        sizes = f"{unit_words(self._dials)}, " if self._drawing.dimensions else ""
        for words in (*rows, f"{sizes}{scale}"):
            lines = wrap(words, WIDTH)
            self.ink.words(0, y, lines)
            y += len(lines) * LINE_HEIGHT
        drawing = self._drawing
        height = y - LINE_HEIGHT + 1.2
        return self.ink.svg(
            f"drawing-{drawing.id}", WIDTH, height, drawing.title, described(drawing, self._dials), "ink small"
        )
