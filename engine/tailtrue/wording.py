"""Text with places for facts: ``{{ bar.length }}`` for a value, ``{{ why bar.length }}`` for what limited it.

And for the numbers of steps: ``{{ step read-collars }}``, and ``{{ opens read-collars }}`` for the first step of its phase.
``{{ step restore-power before turn-stub }}`` is the one that leads to another step.
"""

import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass

from tailtrue.parts import Figure, Text

_PLACE = re.compile(r"\{\{\s*(why\s+)?([a-z][a-z0-9_]*(?:\.[a-z][a-z0-9_]*)+)\s*\}\}")
_POINTER = re.compile(r"\{\{\s*(step|opens)((?:\s+[a-z]+(?:-[a-z]+)*)+?)(?:\s+before\s+([a-z]+(?:-[a-z]+)*))?\s*\}\}")
_ANY = re.compile(f"{_PLACE.pattern}|{_POINTER.pattern}")
_LEFT_OVER = re.compile(r"\{\{|\}\}")


@dataclass(frozen=True)
class Place:
    """A place in a text that a fact fills."""

    name: str
    wants: str  # "value" or "why"


@dataclass(frozen=True)
class Pointer:
    """A place in a text for the number of a step: of the first of these names that the sheet has."""

    steps: tuple[str, ...]
    opens: bool  # the first step of its phase is meant
    before: str = ""  # the last one that stands before this step is meant


@dataclass(frozen=True)
class Wording:
    """A text as authored, its places found."""

    parts: tuple[str | Place | Pointer, ...]

    def places(self) -> Iterator[Place]:
        """The places that facts fill."""
        return (part for part in self.parts if isinstance(part, Place))

    def pointers(self) -> Iterator[Pointer]:
        """The places that the numbers of steps fill."""
        return (part for part in self.parts if isinstance(part, Pointer))

    @property
    def words(self) -> str:
        """The text with each place as one word: for counting words and looking for typed numbers."""
        return "".join(part if isinstance(part, str) else "X" for part in self.parts)

    def fill(self, value: Callable[[Place], Text], number: Callable[[Pointer], str] | None = None) -> Text:
        """The text with every place filled. Raises ValueError for a pointer where no sheet numbers its steps."""
        if len(self.parts) < 2 and all(isinstance(part, str) for part in self.parts):
            return self.parts  # type: ignore[return-value]
        pieces: list[str | Figure] = []
        for part in self.parts:
            if isinstance(part, Pointer):
                if number is None:
                    raise ValueError(f"no sheet gives step {' or '.join(part.steps)} a number here")
                part = number(part)
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
    >>> list(read_wording("Go back to step {{ opens decide }}.").pointers())
    [Pointer(steps=('decide',), opens=True, before='')]
    """
    parts: list[str | Place | Pointer] = []
    at = 0
    for match in _ANY.finditer(text):
        parts.append(text[at : match.start()])
        parts.append(_place(match[0]))
        at = match.end()
    parts.append(text[at:])
    for part in parts:
        if isinstance(part, str) and _LEFT_OVER.search(part):
            raise ValueError(f"'{text.strip()}' holds a brace that is not a place for a fact, such as {{{{ bar.length }}}}")
    return Wording(tuple(part for part in parts if part != ""))


def _place(text: str) -> Place | Pointer:
    if found := _POINTER.fullmatch(text):
        return Pointer(tuple(found[2].split()), found[1] == "opens", found[3] or "")
    found = _PLACE.fullmatch(text)
    assert found is not None  # one of the two was found
    return Place(found[2], "why" if found[1] else "value")
