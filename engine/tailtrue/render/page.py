"""What the templates may ask of a procedure beyond its fields: texts in a system, names, links."""

import re
from collections.abc import Iterable, Sequence
from functools import cached_property, lru_cache

from markupsafe import Markup, escape

from tailtrue.parts import COMMON_PRACTICE, Blank, Caution, Check, Figure, Limits, Setting, Text
from tailtrue.procedure import (
    TOLD_BY_VERDICT,
    Alternative,
    Choice,
    Derivation,
    Drawing,
    LookUp,
    Need,
    Phase,
    Procedure,
    Source,
    Span,
    Step,
)
from tailtrue.render.back import near_ways, short_label, together, was_weighed, worked_out
from tailtrue.render.beside import reasons_beside
from tailtrue.render.by_drawing import ByDrawing, by_drawing
from tailtrue.render.figures.speed_plate import lever_of, settings_of
from tailtrue.render.halves import halves, lines_of
from tailtrue.render.look_up import look_up_columns
from tailtrue.render.numbers import Column, Finer, limits_apart, limits_ends, show, show_one, unit_name
from tailtrue.render.pairs import pieces
from tailtrue.render.plain_code import marked
from tailtrue.render.symbols import SYMBOLS
from tailtrue.render.templates import escaped
from tailtrue.render.times import attended, phase_clause, step_clause, waiting
from tailtrue.render.told import Told, fetched, repeated
from tailtrue.render.values import ValueLine, value_line
from tailtrue.render.words import KINDS, ORIGINS, listed, say, sentence

_NOT_IN_AN_ANCHOR = re.compile(r"[^A-Za-z0-9_.-]+")
_DRAWN = frozenset(code for code, symbol in SYMBOLS.items() if any(symbol))
_STEPS_TOLD = 1
_PLACES_BESIDE = 2
# So many bands with their instruments are shorter over the whole width.
_BANDS_UNDER = 2


class Index:
    """Names and numbers by id, for every format."""

    def __init__(self, procedure: Procedure) -> None:
        self._numbers: dict[str, list[str]] = {}
        self._order = [(step.id, step.number) for phase in procedure.phases for step in phase.steps]
        for phase in procedure.phases:
            for step in phase.steps:
                self._numbers.setdefault(step.id, []).append(step.number)
        self._needs = {need.id: need for need in procedure.needs}
        self.derivations = {derivation.fact: derivation for derivation in procedure.derivations}
        self.sources = {source.id: number for number, source in enumerate(procedure.sources, start=1)}

    def back_from(self, step: Step) -> str:
        """The number of the step that a failed hold goes back to: the last one of that name up to the hold."""
        wanted = step.hold.go_back_to if step.hold else None
        if wanted is None:
            return ""
        up_to = self._order[: self._order.index((step.id, step.number)) + 1]
        return next((number for name, number in reversed(up_to) if name == wanted), wanted)

    def step_numbers(self, ids: Iterable[str]) -> str:
        """The numbers of steps named by id (or already by number), in a row."""
        numbers = dict.fromkeys(number for step in ids for number in self._numbers.get(step, [step]))
        return ", ".join(numbers)

    def first_steps(self, ids: Iterable[str]) -> str:
        """The first few of those numbers, in words: enough to find the place, the rest is told by the steps."""
        numbers = self.step_numbers(ids).split(", ", _STEPS_TOLD)
        row = ", ".join(numbers[:_STEPS_TOLD])
        return f"step {row}{' ...' if len(numbers) > _STEPS_TOLD else ''}"

    def need_name(self, need: str) -> Text:
        """The name of a tool or an instrument by its id."""
        return self._needs[need].name if need in self._needs else (need.replace("-", " "),)

    def label_of(self, fact: str) -> str:
        """A fact in words, if the sheet tells how it came about."""
        return self.derivations[fact].label if fact in self.derivations else fact


class Page:
    """One procedure as the HTML templates see it."""

    def __init__(self, procedure: Procedure) -> None:
        self._procedure = procedure
        self._dials = procedure.title.dials
        self._index = Index(procedure)
        self._repeated = repeated(procedure)
        self._fetched = fetched(procedure)
        self.worked_out = worked_out(procedure)
        self.told = Told(procedure)
        self._levers = settings_of(procedure.drawings)
        self._told = {one.fact for group in self.worked_out for one in group}
        self._cited: dict[str, Markup] = {}
        self.up_front = [caution for caution in procedure.job_cautions if not caution.at_back]
        self.at_back = [caution for caution in procedure.job_cautions if caution.at_back]
        self.worn = dict.fromkeys(piece for caution in procedure.job_cautions for piece in caution.protective_equipment)

    def text(self, text: Text) -> Markup:
        """A text with its figures in bold, each leading to how it came about."""
        if len(text) == 1 and isinstance(text[0], str):
            return _in_words(text[0])
        return marked("".join([self._piece(piece, finer) for piece, finer in pieces(text)]))

    def plain(self, text: Text) -> str:
        """A text without any markup."""
        return say(text, self._dials)

    def value(self, text: Text) -> ValueLine | None:
        """The columns of a value, or None when it is words."""
        return value_line(text, self._dials)

    def lever(self, setting: Setting) -> str:
        """How lever or belt stands for the speed that is set, where the plate of the lathe says it; else nothing."""
        return lever_of(setting.value, self._levers)

    def one(self, figure: Figure) -> str:
        """A figure in the system of the dials alone."""
        return show_one(figure, self._dials)

    def accept(self, limits: Limits) -> tuple[str, str]:
        """The band that is accepted, and the same in the other system, which may be empty."""
        return limits_apart(limits, self._dials)

    def ends(self, check: Check) -> list[tuple[str, str]]:
        """The printed limits that a reading typed on a screen is held against: each side with its digits.

        None where something else than the limited size is written down, or in another unit: then nothing is judged.
        """
        if check.limits is None:
            return []
        sides = zip(("low", "high"), limits_ends(check.limits, self._dials), strict=True)
        known = [(side, end) for side, end in sides if end is not None]
        units = {unit_name(blank.unit) for blank in check.blanks}
        return [(side, end.number) for side, end in known] if units == {end.unit for _, end in known} else []

    def differences(self, look_up: LookUp) -> Column:
        """The column of the differences read."""
        return look_up_columns(look_up, self._dials)[0]

    def moves(self, look_up: LookUp) -> Column:
        """The column of the moves of the tailstock."""
        return look_up_columns(look_up, self._dials)[1]

    def needs(self, kind: str) -> tuple[Need, ...]:
        """The needs of one kind, in order."""
        return tuple(need for need in self._procedure.needs if need.kind == kind)

    def need_halves(self, kind: str) -> Iterable[tuple[Sequence[Need], Sequence[Need]]]:
        """The needs of one kind in two columns, some at a time."""
        return halves(self.needs(kind), self._lines_of_need)

    def _lines_of_need(self, need: Need) -> float:
        rest = ", ".join(self.plain(part) for part in (need.amount, need.detail) if part)
        return lines_of(self.plain(need.name), f", {rest} {self.first_steps(need.used_at)}")

    def kinds(self) -> tuple[str, ...]:
        """The kinds of need that occur, in the order they are gathered."""
        return tuple(kind for kind in KINDS if self.needs(kind))

    def names(self, needs: Iterable[str]) -> Markup:
        """The names of tools by their ids."""
        return marked(", ".join([self.instrument(need) for need in needs]))

    def instrument(self, need: str) -> Markup:
        """The name of an instrument by its id."""
        return self.text(self._index.need_name(need))

    def first_steps(self, ids: Iterable[str]) -> str:
        """The first few step numbers by the ids of the steps."""
        return self._index.first_steps(ids)

    def actions(self, step: Step) -> list[tuple[bool, Text]]:
        """The actions of a step in order, each with whether it is the shop's own: those are its last."""
        ours = len(step.text) - step.of_shop
        return [(place >= ours, line) for place, line in enumerate(step.text)]

    def readings_and_others(self, blanks: Iterable[Blank]) -> tuple[list[Blank], list[Blank]]:
        """Places to write in: those of a table of readings, and the rest."""
        read: list[Blank] = []
        rest: list[Blank] = []
        for blank in blanks:
            (rest if blank.abreast == 1 else read).append(blank)
        return read, rest

    def said_before(self, step: Step) -> str:
        """The number of the earlier step that gives the same actions, line by line, or nothing."""
        return self._repeated.get(step.number, "")

    def tools_to_fetch(self, step: Step) -> tuple[str, ...]:
        """The tools of a step that no earlier one of its phase has named; what is worn is named at every step."""
        return self._fetched[step.number]

    def fits_beside(self, checks: tuple[Check, ...]) -> bool:
        """Whether the checks are small enough to stand beside what is done rather than under it."""
        few = all(
            sum(blank.places for blank in check.blanks) <= _PLACES_BESIDE and not any(blank.each for blank in check.blanks)
            for check in checks
        )
        return few and sum(check.limits is not None for check in checks) < _BANDS_UNDER

    def by_drawing(self, step: Step, drawings: Iterable[tuple[Drawing, str]]) -> ByDrawing:
        """What of a step stands beside its drawings; one thing written more often than fits there needs the whole width."""
        in_a_row = any(blank.count > _PLACES_BESIDE for check in step.checks for blank in check.blanks)
        small = self.plain(step.why) + self._tools_in_words(step)
        return by_drawing(step, drawings, small, self._dials, in_a_row=in_a_row)

    def reasons_beside(self, step: Step) -> bool:
        """Whether the reason and the tools of a step stand on the right of what is done."""
        return self.fits_beside(step.checks) and reasons_beside(step, self._tools_in_words(step))

    def _tools_in_words(self, step: Step) -> str:
        return ", ".join(self.plain(self._index.need_name(tool)) for tool in self.tools_to_fetch(step))

    def wear_besides(self, caution: Caution) -> tuple[str, ...]:
        """What a caution asks to wear beyond what the cautions for the whole job ask already."""
        return tuple([piece for piece in caution.protective_equipment if piece not in self.worn])

    def codes_told(self, caution: Caution) -> tuple[str, ...]:
        """The codes of the signs whose drawing is a bare shape: the key of the sheet has their words."""
        return tuple([code for code in caution.signs if code not in _DRAWN])

    def cautions(self) -> tuple[Caution, ...]:
        """Every caution of the sheet once, in the order of the page."""
        steps = (step for phase in self._procedure.phases for step in phase.steps)
        opening = (caution for phase in self._procedure.phases for caution in phase.cautions)
        all_of_them = (*self._procedure.job_cautions, *opening, *(caution for step in steps for caution in step.cautions))
        return tuple({caution.id: caution for caution in all_of_them}.values())

    def sources_of_limits(self) -> tuple[str, ...]:
        """The sources of all limits of the sheet, in order."""
        return tuple(key for limit in self._procedure.limits for key in limit.sources)

    @cached_property
    def open_choices(self) -> list[Choice]:
        """The choices that a step does not account for: no step gives the reason, or another way came near."""
        chosen = ((one, next(way for way in one.alternatives if way.verdict == "chosen")) for one in self._procedure.choices)
        return [one for one, way in chosen if way.figures or not self.told.why_at(way) or near_ways(one)]

    def other_ways(self, choice: Choice) -> Iterable[tuple[list[str], Alternative]]:
        """The ways that came near and were not chosen; those of which the same is said stand together, by their names."""
        return together(way for way in near_ways(choice) if not was_weighed(way, choice))

    def alone(self, text: Text) -> str:
        """A text of the back, its figures in the system of the dials alone: the other stands where the number is used."""
        return "".join([piece if isinstance(piece, str) else show_one(piece, self._dials) for piece in text])

    def short_label(self, one: Derivation, first: Derivation) -> str:
        """What a number is called beside the first of its group."""
        return short_label(one, first)

    def rows_of(self, group: tuple[Derivation, ...]) -> Iterable[tuple[Derivation, bool, bool]]:
        """The numbers that one rule made; of each whether it says anew what limits it, and anew where it is from."""
        before: Derivation | None = None
        for one in group:
            limit = bool(one.limited_by) and not self.told.limit_at_a_step(one)
            cites = (one.own_sources, one.weakest)
            yield (
                one,
                limit and (before is None or before.limited_by != one.limited_by),
                (before is None or (before.own_sources, before.weakest) != cites),
            )
            before = one

    def reason_of(self, way: Alternative) -> str:
        """Why an alternative was chosen or not, where that says more than its verdict."""
        return "" if way.reason in TOLD_BY_VERDICT else sentence(way.reason)

    def weighed_ways(self, choice: Choice) -> list[Alternative]:
        """The ways whose sizes were held against the one that binds: their names and sizes say all."""
        return [way for way in near_ways(choice) if was_weighed(way, choice)]

    def sources_by_place(self) -> Iterable[tuple[str, Markup]]:
        """Where cautions stand in full, and the sources of each there, in the order of the page; the front has no number."""
        places: list[tuple[str, Sequence[Caution]]] = [("", self.up_front), ("", self.at_back)]
        for phase in self._procedure.phases:
            places += [(phase.number, phase.cautions), *((step.number, step.cautions) for step in phase.steps)]
        seen: set[str] = set()
        for number, cautions in places:
            new = [caution for caution in cautions if caution.id not in seen]
            seen.update(caution.id for caution in new)
            if new:
                yield number, marked("; ".join([self.sources(caution.sources) for caution in new]))

    def unit(self, unit: str) -> str:
        """A unit as it is written beside a blank."""
        return unit_name(unit)

    def back_from(self, step: Step) -> str:
        """The number of the step that the failed hold of a step goes back to."""
        return self._index.back_from(step)

    def pieces(self, phase: Phase) -> str:
        """What a phase is done for."""
        return listed(phase.each)

    def phase_time(self, phase: Phase) -> str:
        """How long a phase takes, for its heading."""
        return phase_clause(phase, self._dials)

    def step_time(self, step: Step) -> str:
        """How long a step takes, for its head; empty where that is not known."""
        return step_clause(step, self._dials)

    def kept_together(self, phase: Phase) -> list[tuple[Step, ...]]:
        """The steps of a phase by what stands on one page: what makes ready for a start goes with the step that starts.

        A step with a drawing is too high to be kept with another: half a page would stay white before the two.
        """
        drawn = {drawing.place for drawing in self._procedure.drawings}
        kept: list[tuple[Step, ...]] = []
        for step in phase.steps:
            starts = step.machine == "turning" and step.number not in drawn and kept and kept[-1][-1].machine != "turning"
            kept[-1:] = [(*kept[-1], step)] if starts else [*kept[-1:], (step,)]
        return kept

    def attended(self, span: Span) -> str:
        """From how long to how long somebody is at it."""
        return attended(span, self._dials)

    def waiting(self, span: Span) -> str:
        """What runs by itself meanwhile."""
        return waiting(span, self._dials)

    def sources(self, keys: Iterable[str]) -> Markup:
        """Sources by their numbers in the list of sources, each once and leading to its line; other origins in words.

        The place inside a source is left to the other formats: on paper it would cost a line at every caution.
        """
        return marked(", ".join(map(self._source, dict.fromkeys([key.partition(":")[0] for key in keys]))))

    def texts_of(self, way: Alternative) -> Markup:
        """The sources of a way, but for common practice alone, which the head of the choices tells."""
        return marked("") if set(way.sources) == {COMMON_PRACTICE} else self.sources(way.sources)

    def named_sources(self) -> tuple[Source, ...]:
        """The sources that this paper names; those of the other papers keep their numbers for themselves."""
        keys = set(self.sources_of_limits())
        keys.update(*[one.own_sources for group in self.worked_out for one in group])
        keys.update(*[way.sources for choice in self.open_choices for way in choice.alternatives if way.verdict == "chosen"])
        keys.update(*[finding.sources for finding in self._procedure.findings])
        keys.update(*[caution.sources for caution in self.cautions()])
        named = {key.partition(":")[0] for key in keys}
        return tuple(source for source in self._procedure.sources if source.id in named)

    def source_number(self, source: Source) -> int:
        """The number of a source on this sheet."""
        return self._index.sources[source.id]

    def anchor(self, name: str) -> str:
        """A name that may stand in an id."""
        return anchor(name)

    def _piece(self, piece: str | Figure, finer: Finer) -> str:
        # Pieces are escaped one by one and joined as plain strings: a sheet has some thousand of them.
        if isinstance(piece, str):
            return escaped(piece)
        shown = escaped(show(piece, self._dials, finer))
        if piece.fact in self._told:
            return f'<a class="figure" href="#number-{anchor(piece.fact)}">{shown}</a>'
        return f'<b class="figure">{shown}</b>'

    def _source(self, key: str) -> Markup:
        # A few sources are cited some thousand times on a sheet.
        if key not in self._cited:
            self._cited[key] = self._link(key)
        return self._cited[key]

    def _link(self, key: str) -> Markup:
        if key not in self._index.sources:
            return escape(ORIGINS.get(key, key))
        return Markup(f'<a href="#source-{anchor(key)}" title="{escape(key)}">{self._index.sources[key]}</a>')


@lru_cache(maxsize=4096)
def _in_words(words: str) -> Markup:
    """A text without a figure, as the most are."""
    return marked(escaped(words))


@lru_cache(maxsize=4096)
def anchor(name: str) -> str:
    """A name that may stand in an id.

    >>> anchor("bar length*")
    'bar-length-'
    """
    return _NOT_IN_AN_ANCHOR.sub("-", name)
