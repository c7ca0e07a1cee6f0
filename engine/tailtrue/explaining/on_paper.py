"""What is asked for as it is printed: the number of a step or of a phase, the label of a setting, the text of a check."""

import re
from collections.abc import Iterator
from dataclasses import dataclass

from tailtrue.assemble.filling import Filler
from tailtrue.case import Gap
from tailtrue.conditions import Condition
from tailtrue.errors import Problem, UsageError
from tailtrue.explaining.conditions_said import condition_lines
from tailtrue.explaining.naming import Named, choose, find, plain
from tailtrue.explaining.said import Explanation, Kind, Line, Side, parts_of
from tailtrue.explaining.sources_said import source_data, source_lines
from tailtrue.explaining.standing import Placed, done
from tailtrue.explaining.wording import dials_of, met_of
from tailtrue.parts import Text
from tailtrue.render.words import say
from tailtrue.truth import Truth
from tailtrue.wording import Wording

_NUMBER = re.compile(r"(?:step\s+|phase\s+)?(\d+)(?:\.(\d+)(?:\s+(\S.*))?)?", re.IGNORECASE)


@dataclass(frozen=True)
class Printed:
    """A line of a step as the sheet has it: its label, what stands beside it, the facts that it tells."""

    kind: Kind
    at: Placed
    label: str
    beside: Text
    why: Text
    facts: tuple[str, ...]
    when: Condition


def meant(side: Side, asked: str) -> Named | Explanation:
    """The thing that `asked` names, by its name or as it is printed: `skim.speed`, `5.10`, `phase 5`, `5.10 speed`, `speed`.

    A phase and a line of a step are told at once; a setting that tells one fact alone leads to that fact. Raises UsageError
    when nothing has this name, or several things have.
    """
    found = _NUMBER.fullmatch(asked.strip())
    if found is None:
        try:
            return find(side.case.knowledge, asked)
        except UsageError:
            # A name goes before what is printed: it means the same in every job.
            same = [one for at in done(side.places) for one in _lines(side, at) if plain(one.label) == plain(asked)]
            if not same:
                raise
            return _one_line(side, asked, same)
    if found[2] is None:
        return _phase(side, asked, int(found[1]))
    at = _step(side, asked, f"{int(found[1])}.{int(found[2])}")
    if found[3] is None:
        return Named("step", at.step.file.id)
    there = list(_lines(side, at))
    same = [one for one in there if plain(one.label) == plain(found[3])]
    if not same:
        labels = "; ".join(dict.fromkeys(one.label for one in there))
        do = f"its lines are: {labels}" if labels else "it has neither settings nor checks"
        raise UsageError((Problem(asked, "", f"step {at.number} has no line of this label", do),))
    return _one_line(side, asked, same)


def _one_line(side: Side, asked: str, same: list[Printed]) -> Named | Explanation:
    """Lines of one label, where all of them say the same."""
    if len({(one.facts, one.beside) for one in same}) > 1:
        dials = dials_of(side.case)
        rest = "write the number of the step before the label"
        raise UsageError((choose(asked, [(_typed(one), say(one.beside, dials)) for one in same], rest),))
    if same[0].kind == "setting" and len(same[0].facts) == 1:
        return find(side.case.knowledge, same[0].facts[0])
    return _line(side, same)


def _typed(line: Printed) -> str:
    """What to type to mean this line and no other."""
    return f"'{line.at.number} {line.label}'"


def _step(side: Side, asked: str, number: str) -> Placed:
    steps = done(side.places)
    for one in steps:
        if one.number == number:
            return one
    phase = number.partition(".")[0]
    there = [one.number for one in steps if _phase_of(one) == phase]
    do = f"phase {phase} has steps {there[0]} to {there[-1]}" if there else _phases(steps)
    raise UsageError((Problem(asked, "", "no step of this job has this number", do),))


def _phase_of(at: Placed) -> str:
    return at.number.partition(".")[0]


def _phases(steps: tuple[Placed, ...]) -> str:
    return f"the phases are 1 to {_phase_of(steps[-1])}" if steps else "no step is sure to belong to this job"


def _phase(side: Side, asked: str, number: int) -> Explanation:
    steps = [one for one in done(side.places) if _phase_of(one) == str(number)]
    if not steps:
        raise UsageError((Problem(asked, "", "no phase of this job has this number", _phases(done(side.places))),))
    phase, case = steps[0].phase, side.case
    sources = tuple(dict.fromkeys(key for one in steps for key in one.step.file.sources))
    always = "for every job" if not phase.when.names() else "when its conditions hold"
    return Explanation(
        kind="phase",
        name=phase.file.id,
        label=phase.file.title,
        rule=(f"It stands in the route '{side.route.file.title}' {always}.",),
        met=_text(side, phase.purpose) or (f"Here it has {len(steps)} steps.",),
        parts=parts_of(
            ("Conditions", condition_lines(case, phase.when)),
            ("Its steps", [Line((f"{one.number} {one.step.file.title} ({one.step.file.id})",)) for one in steps]),
            ("Sources", source_lines(case.knowledge, sources)),
        ),
        data={
            "numbers": [one.number for one in steps],
            "steps": [one.step.file.id for one in steps],
            "sources": source_data(case.knowledge, sources),
        },
    )


def _line(side: Side, same: list[Printed]) -> Explanation:
    """A line of a step; where several steps print the same one, all of them are named."""
    case, first = side.case, same[0]
    sources = first.at.step.file.sources
    what = "sets" if first.kind == "setting" else "checks"
    return Explanation(
        kind=first.kind,
        name=f"{first.at.number} {first.label}",
        label=first.label,
        rule=(f"It is a line of what a step {what}.",),
        met=("Here: ", *first.beside, ".") if first.beside else (),
        parts=parts_of(
            ("Because", [Line(first.why)] if first.why else []),
            ("Conditions", condition_lines(case, first.when)),
            ("Made from", [_fact(side, name) for name in first.facts]),
            ("Printed at", [_place(one.at) for one in same]),
            ("Sources", source_lines(case.knowledge, sources)),
        ),
        data={
            "numbers": [one.at.number for one in same],
            "facts": list(first.facts),
            "sources": source_data(case.knowledge, sources),
        },
    )  # fmt: skip


def _place(at: Placed) -> Line:
    return Line((f"step {at.number}, {at.step.file.title} ({at.step.file.id})",))


def _fact(side: Side, name: str) -> Line:
    return Line((f"{side.case.knowledge.catalogue[name].label}: ", *met_of(side.case, name), f" ({name})"))


def _lines(side: Side, at: Placed) -> Iterator[Printed]:
    """The lines of a step that hold here and are known."""
    case, step = side.case, at.step
    filler, dials = Filler(case), dials_of(case)
    for setting in step.settings:
        label, value = _text(side, setting.label), _text(side, setting.value)
        if label and value and case.judge(setting.when).truth is Truth.YES:
            facts = tuple(place.name for place in setting.value.places())
            yield Printed("setting", at, say(label, dials), value, _text(side, setting.reason), facts, setting.when)
    if (rows := step.settings_from) is not None and case.value(rows.records) is not None:
        for row in case.value(rows.records):
            label, value, why = (filler.text(one, row, rows.records) for one in (rows.label, rows.value, rows.reason))
            yield Printed("setting", at, say(label, dials), value, why, (rows.records,), step.when)
    for check in step.checks:
        text = _text(side, check.text)
        if text and case.judge(check.when).truth is Truth.YES:
            named = (check.low, check.high, check.resolution, check.uncertainty)
            facts = tuple(dict.fromkeys((*(place.name for place in check.text.places()), *filter(None, named))))
            yield Printed("check", at, say(text, dials), (), (), facts, check.when)


def _text(side: Side, wording: Wording) -> Text:
    """A text whose facts are all known; else nothing."""
    try:
        return Filler(side.case).text(wording)
    except Gap:
        return ()
