"""Text with places for facts: ``{{ bar.length }}`` for a value, ``{{ why bar.length }}`` for what limited it."""

import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass

from tailtrue.parts import Figure, Text

_PLACE = re.compile(r"\{\{\s*(why\s+)?([a-z][a-z0-9_]*(?:\.[a-z][a-z0-9_]*)+)\s*\}\}")
_LEFT_OVER = re.compile(r"\{\{|\}\}")


@dataclass(frozen=True)
class Place:
    """A place in a text that a fact fills."""

    name: str
    wants: str  # "value" or "why"


@dataclass(frozen=True)
class Wording:
    """A text as authored, its places found."""

    parts: tuple[str | Place, ...]

    def places(self) -> Iterator[Place]:
        """The places to be filled."""
        return (part for part in self.parts if isinstance(part, Place))

    @property
    def words(self) -> str:
        """The text with each place as one word: for counting words and looking for typed numbers."""
        return "".join(part if isinstance(part, str) else "X" for part in self.parts)

    def fill(self, value: Callable[[Place], Text]) -> Text:
        """The text with every place filled."""
        if len(self.parts) < 2 and not any(self.places()):
            return self.parts  # type: ignore[return-value]
        pieces: list[str | Figure] = []
        for part in self.parts:
            for piece in (part,) if isinstance(part, str) else value(part):
                if isinstance(piece, str) and pieces and isinstance(pieces[-1], str):
                    pieces[-1] += piece
                elif piece != "":
                    pieces.append(piece)
        return tuple(pieces)


def read_wording(text: str) -> Wording:
    """Find the places in an authored text.

    Raises ValueError for a brace that is no place.

    >>> [place.name for place in read_wording("Set {{ skim.speed }}.").places()]
    ['skim.speed']
    """
    parts: list[str | Place] = []
    at = 0
    for match in _PLACE.finditer(text):
        parts.append(text[at : match.start()])
        parts.append(Place(match[2], "why" if match[1] else "value"))
        at = match.end()
    parts.append(text[at:])
    for part in parts:
        if isinstance(part, str) and _LEFT_OVER.search(part):
            raise ValueError(f"'{text.strip()}' holds a brace that is not a place for a fact, such as {{{{ bar.length }}}}")
    return Wording(tuple(part for part in parts if part != ""))
