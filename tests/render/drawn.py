"""What the tests read off a drawing: its texts with the room they take, its numbers, its tones."""

import re
from collections.abc import Iterator
from itertools import combinations
from typing import NamedTuple

from tailtrue.render.ink import TEXT_HEIGHT, text_width

from .reading import Element, read_page

_CAPITALS, _BELOW = 0.72 * TEXT_HEIGHT, 0.2 * TEXT_HEIGHT
_TOUCH = 0.15  # mm that two boxes may share without touching in print


class Box(NamedTuple):
    """The room that a text takes, in mm on paper."""

    words: str
    left: float
    top: float
    right: float
    bottom: float


def text_boxes(page: Element) -> Iterator[Box]:
    """Every text of a drawing with its room."""
    for one in page.all("text"):
        if not one.words:
            continue
        x, y, wide = float(one.attributes["x"]), float(one.attributes["y"]), text_width(one.words)
        left = {"start": x, "middle": x - wide / 2, "end": x - wide}[one.attributes["text-anchor"]]
        yield Box(one.words, left, y - _CAPITALS, left + wide, y + _BELOW)


def frame(svg: str) -> tuple[float, float]:
    """Width and height of the drawing."""
    found = re.search(r'viewBox="0 0 ([\d.]+) ([\d.]+)"', svg)
    assert found
    return float(found[1]), float(found[2])


def faults(svg: str) -> list[str]:
    """Texts that touch each other or leave the drawing, and strokes that leave it."""
    wide, high = frame(svg)
    page = read_page(svg)
    boxes = list(text_boxes(page))
    found = [
        f"{one.words!r} and {two.words!r} touch"
        for one, two in combinations(boxes, 2)
        if min(one.right, two.right) - max(one.left, two.left) > _TOUCH
        and min(one.bottom, two.bottom) - max(one.top, two.top) > _TOUCH
    ]
    found += [
        f"{box.words!r} leaves the drawing"
        for box in boxes
        if box.left < -_TOUCH or box.right > wide + _TOUCH or box.top < 0 or box.bottom > high
    ]
    found += [
        f"a stroke leaves the drawing at {x:g} {y:g}" for x, y in points(page) if not (0 <= x <= wide and 0 <= y <= high)
    ]
    return found


def points(page: Element) -> Iterator[tuple[float, float]]:
    """The ends of every stroke, the corners of every rectangle, the sides of every circle."""
    for path in page.all("path"):
        for x, y in re.findall(r"[ML](-?[\d.]+) (-?[\d.]+)", path.attributes["d"]):
            yield float(x), float(y)
    for box in page.all("rect"):
        x, y, wide, high = (float(box.attributes[name]) for name in ("x", "y", "width", "height"))
        yield from ((x, y), (x + wide, y + high))
    for ring in page.all("circle"):
        x, y, radius = (float(ring.attributes[name]) for name in ("cx", "cy", "r"))
        yield from ((x - radius, y - radius), (x + radius, y + radius))
