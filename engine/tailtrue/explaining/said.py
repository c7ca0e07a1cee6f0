"""What an explanation is: lines of text under headings, in words and in data."""

from dataclasses import dataclass, field
from functools import cached_property
from typing import Any, Literal

from tailtrue.case import Case
from tailtrue.errors import Problem
from tailtrue.explaining.standing import Placed, places
from tailtrue.given.read import Given
from tailtrue.parts import Dials, Text
from tailtrue.procedure import Procedure
from tailtrue.render.words import say
from tailtrue.store.knowledge import Route

Kind = Literal[
    "fact", "decision", "choice", "limit", "step", "caution", "stop", "note", "material", "phase", "setting", "check"
]


@dataclass(frozen=True)
class Side:
    """A job to be explained: its case, what was said, its route; its procedure, or why none is printed."""

    case: Case
    given: Given
    route: Route
    trouble: tuple[Problem, ...] = ()
    procedure: Procedure | None = None

    @cached_property
    def places(self) -> tuple[Placed, ...]:
        """Every step of the route at every place, whether it belongs or not."""
        return places(self.case, self.route)


@dataclass(frozen=True)
class Line:
    """One line; deeper ones belong to the one above."""

    text: Text
    depth: int = 0


@dataclass(frozen=True)
class Part:
    """Lines under a heading."""

    title: str
    lines: tuple[Line, ...]


@dataclass(frozen=True)
class Explanation:
    """The rule, what it met here, and what more there is to say; `data` is the same for a program."""

    kind: Kind
    name: str
    label: str
    rule: Text
    met: Text
    parts: tuple[Part, ...]
    data: dict[str, Any] = field(default_factory=dict)

    def as_data(self, dials: Dials) -> dict[str, Any]:
        """Everything in plain words and values."""
        return {
            "kind": self.kind,
            "name": self.name,
            "label": self.label,
            "rule": say(self.rule, dials),
            "met": say(self.met, dials),
            "parts": [
                {"title": part.title, "lines": [{"text": say(line.text, dials), "depth": line.depth} for line in part.lines]}
                for part in self.parts
            ],
            **self.data,
        }


def parts_of(*parts: tuple[str, tuple[Line, ...] | list[Line]]) -> tuple[Part, ...]:
    """Those parts that have something to say."""
    return tuple(Part(title, tuple(lines)) for title, lines in parts if lines)
