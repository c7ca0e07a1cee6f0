"""The sheet as the inspection reads it: every figure, text and word with the place where it stands."""

import re
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from functools import cached_property
from typing import Any, NamedTuple

from tailtrue.inspection.shop import Shop
from tailtrue.inspection.spelt import words_of_step
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
    StepTime,
    TitleBlock,
)

# Lists of names and labels: tuples of words that are no running text.
_NAMES = frozenset(
    {
        "activities", "sources", "tools", "each", "boxes", "answers", "protective_equipment", "signs", "read", "used_at",
        "never_signs", "parts", "machine", "own_sources", "messages",
    }
)  # fmt: skip


# What a running text is made of.
_PIECES = frozenset({str, Figure})
_STRINGS = frozenset({str})
_NUMBERS = frozenset({int, float, bool, type(None)})

# Stands for a figure where a text is read as one string: neither digit nor letter.
FIGURE = "\u25a1"
# Follows the name of a field for a text that is one of several in it.
LINE = " line"
# Ten thousand words are found on a sheet: each is made without the call that only names its parts.
_made: Any = tuple.__new__


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


class FoundNames(NamedTuple):
    """A list of names on the sheet."""

    where: str
    field: str
    names: tuple[str, ...]


class SetFigure(NamedTuple):
    """A number at a step, with the line of the settings table it stands in, if it stands in one."""

    placed: "Placed"
    line: Setting | None
    figure: Figure


@dataclass(frozen=True, eq=False)
class Placed:
    """A step, its phase, and its place among the steps of that phase; what rules ask of it is looked for once."""

    phase: Phase
    place: int
    step: Step

    @cached_property
    def where(self) -> str:
        """The place in words."""
        return at(self.step)

    @cached_property
    def words(self) -> str:
        """The words of all lines of the step, with a mark for each number."""
        return words_of_step(self.step, "#")

    @cached_property
    def words_alone(self) -> str:
        """The words of all lines of the step, nothing in the place of numbers."""
        return words_of_step(self.step)

    @cached_property
    def figures(self) -> tuple[Figure, ...]:
        """Every number at the step."""
        return tuple(figures_in(self.step))

    @cached_property
    def told(self) -> Mapping[str, float]:
        """The value of each fact that the step tells; of one told twice, the last."""
        return {figure.fact: figure.value for figure in self.figures}

    @cached_property
    def set_there(self) -> tuple[tuple[Setting, tuple[Figure, ...]], ...]:
        """Each line of the settings table with its numbers."""
        return tuple((line, tuple(figures_in(line))) for line in self.step.settings)


def at(step: Step) -> str:
    """Where a step stands, in words."""
    return f"step {step.number}"


def figures_in(part: object) -> list[Figure]:
    """Every figure in a part of the tree."""
    found: list[Figure] = []
    _figures_in((part,), found)
    return found


def _figures_in(inside: Iterable[object], found: list[Figure]) -> None:
    for value in inside:
        # The most of a tree is words: they are passed over without a call.
        kind = value.__class__
        if kind is str:
            continue
        if kind is Figure:
            found.append(value)  # type: ignore[arg-type]
        elif isinstance(value, tuple):
            _figures_in(value, found)
        elif Node in kind.__mro__:
            _figures_in(vars(value).values(), found)


def _typed(text: Text) -> str:
    # The most of all texts is one string.
    if len(text) == 1 and isinstance(text[0], str):
        return text[0]
    return "".join([piece if isinstance(piece, str) else FIGURE for piece in text])


@dataclass(frozen=True)
class Sheet:
    """A procedure with its givens, walked once for all rules."""

    procedure: Procedure
    shop: Shop
    figures: list[FoundFigure] = field(default_factory=list)
    texts: list[FoundText] = field(default_factory=list)
    words: list[FoundWord] = field(default_factory=list)
    names: list[FoundNames] = field(default_factory=list)
    # The value of each fact where it is printed first; what stands by a name, as in a drawing, apart.
    first: dict[str, float] = field(default_factory=dict)

    def __post_init__(self) -> None:
        """Walk the whole tree."""
        walk = _Walk(self)
        for name, part in vars(self.procedure).items():
            walk.part(part, name.replace("_", " "), name)

    @cached_property
    def typed(self) -> tuple[str, ...]:
        """Each running text as one string: a figure keeps its place with a mark that is neither digit nor letter."""
        return tuple([_typed(found.text) for found in self.texts])

    @cached_property
    def lines(self) -> frozenset[str]:
        """Each running text as it is typed, once, however often it stands on the sheet."""
        return frozenset(self.typed)

    def said(self, pattern: re.Pattern[str]) -> list[FoundText]:
        """The running texts in which a pattern is found; each line is looked at once, however often it stands there."""
        lines = {line for line in self.lines if pattern.search(line)}
        return [found for found, line in zip(self.texts, self.typed, strict=True) if line in lines] if lines else []

    @cached_property
    def by_phase(self) -> tuple[tuple[Phase, tuple[Placed, ...]], ...]:
        """Every phase with its steps."""
        return tuple(
            (phase, tuple(Placed(phase, place, step) for place, step in enumerate(phase.steps)))
            for phase in self.procedure.phases
        )

    @cached_property
    def steps(self) -> tuple[Placed, ...]:
        """Every step in the order of the page."""
        return tuple(placed for _, steps in self.by_phase for placed in steps)

    @cached_property
    def at_steps(self) -> tuple[SetFigure, ...]:
        """Every number that stands anywhere at a step."""
        found: list[SetFigure] = []
        for placed in self.steps:
            for line, figures in placed.set_there:
                found += [SetFigure(placed, line, figure) for figure in figures]
            rest = [value for name, value in vars(placed.step).items() if name != "settings"]
            found += [SetFigure(placed, None, figure) for figure in figures_in(tuple(rest))]
        return tuple(found)

    @property
    def worked(self) -> Iterator[Placed]:
        """Every step in the order of the work: a phase done piece by piece comes round again."""
        for phase, steps in self.by_phase:
            for _ in phase.each[:2] or ("once",):
                yield from steps

    @cached_property
    def cautions(self) -> tuple[tuple[str, Caution], ...]:
        """Every safety message with its place."""
        return tuple(self._cautions())

    def _cautions(self) -> Iterator[tuple[str, Caution]]:
        for caution in self.procedure.job_cautions:
            yield _place(caution, "front"), caution
        for phase in self.procedure.phases:
            for caution in phase.cautions:
                yield _place(caution, f"phase {phase.number}"), caution
            for step in phase.steps:
                for caution in step.cautions:
                    yield _place(caution, at(step)), caution


class _Walk:
    """One walk of a tree, that tells of every figure, text and word as it comes to it."""

    def __init__(self, sheet: Sheet) -> None:
        self.figure, self.text, self.word = sheet.figures.append, sheet.texts.append, sheet.words.append
        self.names = sheet.names.append
        self.first, self.by_name = sheet.first.setdefault, 0

    def part(self, part: Any, where: str, name: str) -> None:
        """A part of the tree, and all that is in it."""
        if isinstance(part, str):
            self.word(FoundWord(where, name, part))
        elif isinstance(part, tuple):
            self._tuple(part, where, name)
        elif isinstance(part, Figure):
            self._figure(part, where)
        elif isinstance(part, Node):
            self._node(part, where)
        elif isinstance(part, dict):
            self.by_name += 1
            for key, value in part.items():
                self.part(value, where, str(key))
            self.by_name -= 1

    def _node(self, part: Node, where: str) -> None:
        named, word = _PLACES.get(part.__class__), self.word
        place = where if named is None else named(part, where)
        for inner, value in part.__dict__.items():
            kind = value.__class__
            if kind is str:
                word(_made(FoundWord, (place, inner, value)))
            elif kind is tuple:
                self._tuple(value, place, inner)
            elif kind is Figure:
                self._figure(value, place)
            elif Node in kind.__mro__:
                self._node(value, place)
            elif kind not in _NUMBERS:
                self.part(value, place, inner)

    def _figure(self, part: Figure, where: str) -> None:
        self.figure(_made(FoundFigure, (where, part)))
        if not self.by_name:
            self.first(part.fact, part.value)
        self.word(_made(FoundWord, (where, "fact", part.fact)))
        if part.marked is not None:
            self.word(_made(FoundWord, (where, "marked", part.marked)))

    def _tuple(self, part: tuple[Any, ...], where: str, name: str) -> None:
        if name in _NAMES:
            if _STRINGS.issuperset(map(type, part)):
                self.names(_made(FoundNames, (where, name, part)))
                return
            for value in part:
                self.part(value, where, name + LINE if isinstance(value, tuple) else name)
            return
        for value in part:
            if value.__class__ not in _PIECES:
                break
        else:
            self.text(_made(FoundText, (where, name, part)))
            for value in part:
                if value.__class__ is Figure:
                    self._figure(value, where)
            return
        line = name + LINE
        for value in part:
            if value.__class__ is tuple:
                self._tuple(value, where, line)
            else:
                self.part(value, where, name)


def _place(part: Node, where: str) -> str:
    named = _PLACES.get(part.__class__)
    return where if named is None else named(part, where)


# Where the parts of a part stand, in words; the parts of any other class stand where it stands itself.
_PLACES: Mapping[type, Callable[[Any, str], str]] = {
    Step: lambda part, _: at(part),
    Phase: lambda part, _: f"phase {part.number}",
    Span: lambda _, where: f"{where}, time",
    StepTime: lambda _, where: f"{where}, time",
    Caution: lambda part, where: f"{where}, caution {part.id}",
    Need: lambda part, _: f"need {part.id}",
    Cut: lambda part, _: f"cut list, {part.piece}",
    Choice: lambda part, _: f"choice {part.id}",
    Derivation: lambda part, _: f"derivation of {part.fact}",
    Source: lambda part, _: f"source {part.id}",
    LookUp: lambda _part, _where: "look-up table",
    Drawing: lambda part, _: "drawing" if part.id == "bar" else f"drawing {part.id}",
    TitleBlock: lambda _part, _where: "title block",
}
