"""What a mark on a paper means, said on every paper on which the mark stands."""

from collections.abc import Iterator

from tailtrue.parts import Figure, Node
from tailtrue.render.words import BY_HAND_MEANS


def legend(*parts: object) -> str:
    """What the mark of a number set by hand means; empty where no such number stands in the parts of a paper."""
    return BY_HAND_MEANS if any(figure.set_by is not None for figure in _figures(parts)) else ""


def _figures(part: object) -> Iterator[Figure]:
    if isinstance(part, Figure):
        yield part
    elif isinstance(part, Node):
        for value in vars(part).values():
            yield from _figures(value)
    elif isinstance(part, dict):
        for value in part.values():
            yield from _figures(value)
    elif isinstance(part, tuple):
        for value in part:
            yield from _figures(value)
