"""The sheet as the inspection reads it: every figure, text and word with the place where it stands."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from functools import cached_property
from typing import NamedTuple

from tailtrue.inspection.shop import Shop
from tailtrue.parts import Caution, Figure, Node, Setting, Text
from tailtrue.procedure import (
    Choice,
    Cut,
    Derivation,
    Drawing,
    LookUp,
    Need,
    Phase,
    Procedure,
    Source,
    Span,
    Step,
    TitleBlock,
)

# Lists of names and labels: tuples of words that are no running text.
_NAMES = frozenset(
    {
        "activities", "sources", "tools", "each", "boxes", "answers", "protective_equipment", "signs", "read", "used_at",
        "parts", "machine", "own_sources",
    }
)  # fmt: skip


# What a running text is made of. Kept, for making the pair anew at each of ten thousand pieces costs more than asking.
_PIECES = (str, Figure)

# Follows the name of a field for a text that is one of several in it.
LINE = " line"


class FoundFigure(NamedTuple):
    """A number on the sheet."""

    where: str
    figure: Figure


class FoundText(NamedTuple):
    """A running text on the sheet, by the field that holds it."""

    where: str
    field: str
    text: Text


class FoundWord(NamedTuple):
    """A single word or label on the sheet."""

    where: str
    field: str
    word: str


class SetFigure(NamedTuple):
    """A number at a step, with the line of the settings table it stands in, if it stands in one."""

    placed: "Placed"
    line: Setting | None
    figure: Figure


class Placed(NamedTuple):
    """A step, its phase, and its place among the steps of that phase."""

    phase: Phase
    place: int
    step: Step

    @property
    def where(self) -> str:
        """The place in words."""
        return at(self.step)


def at(step: Step) -> str:
    """Where a step stands, in words."""
    return f"step {step.number}"


def figures_in(part: object) -> list[Figure]:
    """Every figure in a part of the tree."""
    found: list[Figure] = []
    _figures_in(part, found)
    return found


def _figures_in(part: object, found: list[Figure]) -> None:
    if isinstance(part, Figure):
        found.append(part)
        return
    inside: Iterable[object] = ()
    if isinstance(part, tuple):
        inside = part
    elif isinstance(part, Node):
        inside = vars(part).values()
    for value in inside:
        # The most of a tree is words: they are passed over without a call.
        if value is not None and not isinstance(value, str):
            _figures_in(value, found)


@dataclass(frozen=True)
class Sheet:
    """A procedure with its givens, walked once for all rules."""

    procedure: Procedure
    shop: Shop
    figures: list[FoundFigure] = field(default_factory=list)
    texts: list[FoundText] = field(default_factory=list)
    words: list[FoundWord] = field(default_factory=list)

    def __post_init__(self) -> None:
        """Walk the whole tree."""
        for name, part in vars(self.procedure).items():
            self._walk(part, name.replace("_", " "), name)

    @property
    def steps(self) -> Iterator[Placed]:
        """Every step in the order of the page."""
        for phase in self.procedure.phases:
            for place, step in enumerate(phase.steps):
                yield Placed(phase, place, step)

    @cached_property
    def at_steps(self) -> tuple[SetFigure, ...]:
        """Every number that stands anywhere at a step."""
        found: list[SetFigure] = []
        for placed in self.steps:
            for line in placed.step.settings:
                found += [SetFigure(placed, line, figure) for figure in figures_in(line)]
            rest = placed.step.model_copy(update={"settings": ()})
            found += [SetFigure(placed, None, figure) for figure in figures_in(rest)]
        return tuple(found)

    @property
    def worked(self) -> Iterator[Placed]:
        """Every step in the order of the work: a phase done piece by piece comes round again."""
        for phase in self.procedure.phases:
            for _ in phase.each[:2] or ("once",):
                for place, step in enumerate(phase.steps):
                    yield Placed(phase, place, step)

    @property
    def cautions(self) -> Iterator[tuple[str, Caution]]:
        """Every safety message with its place."""
        for caution in self.procedure.job_cautions:
            yield _place(caution, "front"), caution
        for phase in self.procedure.phases:
            for caution in phase.cautions:
                yield _place(caution, f"phase {phase.number}"), caution
            for step in phase.steps:
                for caution in step.cautions:
                    yield _place(caution, at(step)), caution

    def _walk(self, part: object, where: str, name: str) -> None:
        if isinstance(part, str):
            self.words.append(FoundWord(where, name, part))
        elif part is None:
            return
        elif isinstance(part, tuple):
            self._walk_tuple(part, where, name)
        elif isinstance(part, Figure):
            self.figures.append(FoundFigure(where, part))
            self.words.append(FoundWord(where, "fact", part.fact))
            if part.marked is not None:
                self.words.append(FoundWord(where, "marked", part.marked))
        elif isinstance(part, Node):
            place = _place(part, where)
            for inner, value in vars(part).items():
                if isinstance(value, str):
                    self.words.append(FoundWord(place, inner, value))
                elif value is not None:
                    self._walk(value, place, inner)
        elif isinstance(part, dict):
            for key, value in part.items():
                self._walk(value, where, str(key))

    def _walk_tuple(self, part: tuple[object, ...], where: str, name: str) -> None:
        if not part and name not in _NAMES:
            self.texts.append(FoundText(where, name, ()))
            return
        pieces = tuple([piece for piece in part if isinstance(piece, _PIECES)])
        if name in _NAMES or len(pieces) < len(part):
            for value in part:
                self._walk(value, where, name + LINE if isinstance(value, tuple) else name)
            return
        self.texts.append(FoundText(where, name, pieces))
        for piece in pieces:
            if isinstance(piece, Figure):
                self._walk(piece, where, name)


def _place(part: Node, where: str) -> str:
    match part:
        case Step():
            return at(part)
        case Phase():
            return f"phase {part.number}"
        case Span():
            return f"{where}, time"
        case Caution():
            return f"{where}, caution {part.id}"
        case Need():
            return f"need {part.id}"
        case Cut():
            return f"cut list, {part.piece}"
        case Choice():
            return f"choice {part.id}"
        case Derivation():
            return f"derivation of {part.fact}"
        case Source():
            return f"source {part.id}"
        case LookUp():
            return "look-up table"
        case Drawing():
            return "drawing" if part.id == "bar" else f"drawing {part.id}"
        case TitleBlock():
            return "title block"
        case _:
            return where
