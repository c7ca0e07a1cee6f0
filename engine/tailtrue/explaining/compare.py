"""Two sides laid beside each other: choices, numbers, steps, cautions, time, what is noticed, what is refused."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from typing import Any, NamedTuple

from tailtrue.assemble.filling import Filler
from tailtrue.case import Case, Gap
from tailtrue.explaining.said import Side
from tailtrue.explaining.standing import done, facts_of_step, shown
from tailtrue.explaining.wording import NOT_KNOWN, dials_of, met_of, record_of
from tailtrue.facts import Fact
from tailtrue.parts import Dials, Text
from tailtrue.procedure import Procedure, Span
from tailtrue.render.numbers import show_one
from tailtrue.render.times import attended, waiting
from tailtrue.render.words import say
from tailtrue.truth import Truth

_NO_TIME = "not done"


@dataclass(frozen=True)
class Changed:
    """One thing that differs: its name, what it is called, both values in words."""

    name: str
    label: str
    before: str
    after: str


@dataclass(frozen=True)
class InOut:
    """What is there on one side only."""

    gone: tuple[tuple[str, str], ...] = ()
    come: tuple[tuple[str, str], ...] = ()


@dataclass(frozen=True)
class Difference:
    """All that differs between two sides. `numbers` stand by phase, in the order of the work."""

    said: tuple[Changed, ...] = ()
    choices: tuple[Changed, ...] = ()
    numbers: tuple[tuple[str, tuple[Changed, ...]], ...] = ()
    behind: tuple[Changed, ...] = ()
    steps: InOut = field(default_factory=InOut)
    cautions: InOut = field(default_factory=InOut)
    findings: InOut = field(default_factory=InOut)
    refusals: InOut = field(default_factory=InOut)
    times: tuple[Changed, ...] = ()

    @property
    def nothing(self) -> bool:
        """Whether both sides are the same."""
        return self == Difference()

    def as_data(self) -> dict[str, Any]:
        """The same for a program."""

        def rows(changed: Iterable[Changed]) -> list[dict[str, str]]:
            return [{"name": one.name, "label": one.label, "before": one.before, "after": one.after} for one in changed]

        def both(one: InOut) -> dict[str, list[dict[str, str]]]:
            named = {"gone": one.gone, "come": one.come}
            return {key: [{"id": name, "title": title} for name, title in found] for key, found in named.items()}

        return {
            "said": rows(self.said),
            "choices": rows(self.choices),
            "numbers": [{"phase": phase, "facts": rows(changed)} for phase, changed in self.numbers],
            "behind": rows(self.behind),
            "steps": both(self.steps),
            "cautions": both(self.cautions),
            "findings": both(self.findings),
            "refusals": both(self.refusals),
            "times": rows(self.times),
        }


def compare(before: Side, after: Side) -> Difference:
    """All that differs, both sides set in the system of the first."""
    dials = dials_of(before.case)
    knowledge = before.case.knowledge
    printed = _printed(before, after)
    on_sheet = {name for _, names in printed for name in names}
    numbers = tuple((phase, changed) for phase, names in printed if (changed := _changed(before, after, names, dials)))
    behind = [name for name in knowledge.computed if name not in on_sheet]
    return Difference(
        said=_changed(before, after, dict.fromkeys((*before.given.values, *after.given.values)), dials),
        choices=tuple(_choices(before, after)),
        numbers=numbers,
        behind=_changed(before, after, behind, dials),
        steps=_in_out(_steps(before), _steps(after)),
        cautions=_in_out(_cautions(before), _cautions(after)),
        findings=_in_out(_findings(before.case), _findings(after.case)),
        refusals=_in_out(_refusals(before), _refusals(after)),
        times=tuple(_times(before, after, dials)),
    )


def _printed(before: Side, after: Side) -> list[tuple[str, list[str]]]:
    """The facts of the sheet that are no words of the user, each under the phase that prints it first."""
    catalogue = before.case.knowledge.catalogue
    found: dict[str, dict[str, None]] = {"The whole job": {}}
    here = (line for line in before.case.knowledge.page.facts
            if before.route.has_to_do_with(line.concerns) or after.route.has_to_do_with(line.concerns))  # fmt: skip
    for wording in (line.value for line in here):
        found["The whole job"].update(dict.fromkeys(place.name for place in wording.places()))
    steps = [*done(before.places), *done(after.places)]
    for phase in before.route.phases:
        its_own = found.setdefault(phase.file.title, {})
        for placed in steps:
            if placed.phase.file.id == phase.file.id:
                its_own.update(dict.fromkeys(facts_of_step(placed.step)))
    seen: set[str] = set()
    rows = []
    for title, names in found.items():
        new = [name for name in names if name not in seen and catalogue[name].comes == "computed"]
        seen.update(new)
        rows.append((title, new))
    return rows


def _changed(before: Side, after: Side, names: Iterable[str], dials: Dials) -> tuple[Changed, ...]:
    catalogue = before.case.knowledge.catalogue
    return tuple(
        Changed(name, catalogue[name].label, was.whole, now.whole)
        for name in names
        if (was := _shown(before.case, name, dials)).leading != (now := _shown(after.case, name, dials)).leading
    )


class _Shown(NamedTuple):
    """A value as the page has it, and its words in the system of the dials alone: the digits that somebody sets by."""

    whole: str
    leading: str


def _shown(case: Case, name: str, dials: Dials) -> _Shown:
    found = case.get(name)
    if not isinstance(found, Fact):
        return _Shown(NOT_KNOWN, NOT_KNOWN)
    if found.spec.kind == "records":
        texts = [record_of(found.spec, row) for row in found.value]
        return _Shown(
            "; ".join(say(text, dials) for text in texts) or "none", "; ".join(_lead(text, dials) for text in texts)
        )
    text = met_of(case, name)
    return _Shown(say(text, dials), _lead(text, dials))


def _lead(text: Text, dials: Dials) -> str:
    return "".join(piece if isinstance(piece, str) else show_one(piece, dials) for piece in text)


def _choices(before: Side, after: Side) -> Iterator[Changed]:
    for name, decision in before.case.knowledge.decisions.items():
        was, now = (_chosen(side.case, name) for side in (before, after))
        if was != now:
            yield Changed(name, decision.spec.label, was, now)


def _chosen(case: Case, name: str) -> str:
    return next((row.row.name for row in case.outcome(name).rows if row.chosen), NOT_KNOWN)


def _times(before: Side, after: Side, dials: Dials) -> Iterator[Changed]:
    """The whole job first, then the phases and the steps that either side has, where both are printed."""
    if before.procedure is None or after.procedure is None:
        return
    was, now = (
        {name: (label, span) for name, label, span in _spans(side.procedure)} for side in (before, after) if side.procedure
    )
    for name in dict.fromkeys((*was, *now)):
        label = (was.get(name) or now[name])[0]
        told = [_spent(side[name][1], dials) if name in side else _NO_TIME for side in (was, now)]
        if told[0] != told[1]:
            yield Changed(name, label, *told)


def _spans(procedure: Procedure) -> Iterator[tuple[str, str, Span]]:
    if procedure.time is not None:
        yield "job", "the whole job", procedure.time.total
    for phase in procedure.phases:
        if phase.time is not None:
            yield phase.id, phase.title, phase.time
        for step in phase.steps:
            if step.time is not None:
                yield f"{phase.id}/{step.id}", f"{step.title}, in '{phase.title}'", step.time


def _spent(span: Span, dials: Dials) -> str:
    waits = waiting(span, dials)
    return attended(span, dials) + (f", and a wait of {waits}" if waits else "")


def _in_out(before: dict[str, str], after: dict[str, str]) -> InOut:
    return InOut(
        tuple((name, title) for name, title in before.items() if name not in after),
        tuple((name, title) for name, title in after.items() if name not in before),
    )


def _steps(side: Side) -> dict[str, str]:
    """Steps by phase and name: one may stand in several phases."""
    return {
        f"{one.phase.file.id}/{one.step.file.id}": f"{one.step.file.title}, in '{one.phase.file.title}'"
        for one in done(side.places)
    }


def _cautions(side: Side) -> dict[str, str]:
    return {one.file.id: one.file.hazard for one in shown(side.case, side.places)}


def _findings(case: Case) -> dict[str, str]:
    filler = Filler(case)
    found = {}
    for note in case.knowledge.notes:
        if case.judge(note.when).truth is Truth.YES:
            try:
                found[note.file.id] = say(filler.text(note.text), dials_of(case))
            except Gap:
                found[note.file.id] = note.file.id.replace("-", " ")
    return found


def _refusals(side: Side) -> dict[str, str]:
    """Reasons by rule; one rule may give several."""
    found: dict[str, str] = {}
    for one in side.trouble:
        reason = ": ".join(part for part in (one.said, one.wrong) if part)
        found[one.where] = f"{found[one.where]}; {reason}" if one.where in found else reason
    return found
