"""Why a step is in the plan, a caution on the sheet, a stop or a note in force - or not."""

from collections.abc import Iterable, Iterator

from tailtrue.assemble.filling import Filler
from tailtrue.case import Gap
from tailtrue.conditions import Condition
from tailtrue.explaining.conditions_said import condition_lines
from tailtrue.explaining.said import Explanation, Kind, Line, Part, Side, parts_of
from tailtrue.explaining.sources_said import source_data, source_lines
from tailtrue.explaining.standing import Placed, answering, done
from tailtrue.parts import Text
from tailtrue.plan import EACH, EVERY
from tailtrue.render.words import listed, sentence
from tailtrue.store.knowledge import Caution, Note, Stop
from tailtrue.truth import Truth
from tailtrue.wording import Wording

_MOST_TITLES = 4


def step(side: Side, name: str) -> Explanation:
    """A step: where it stands, why, what it needs and makes, and what needs it later."""
    case = side.case
    about = case.knowledge.steps[name]
    every = side.places
    here = [one for one in every if one.step.file.id == name]
    numbers = [one.number for one in here if one.number]
    sources = about.file.sources
    return Explanation(
        kind="step",
        name=name,
        label=about.file.title,
        rule=(f"It is done {_when(about.when, here)}.",),
        met=(_standing(side, numbers, here),),
        parts=parts_of(
            ("Conditions", _step_conditions(side, here)),
            ("Why it is done so", _filled(side, (about.why,))),
            ("Needs", [Line((_made_by(side, need, every),)) for need in about.file.needs]),
            ("Makes", [Line((_needed_by(side, made, every, here),)) for made in about.file.makes]),
            ("Ends", [Line((_state(ended),)) for ended in about.file.ends]),
            ("Sources", source_lines(case.knowledge, sources)),
        ),
        data={
            "holds": bool(numbers),
            "numbers": numbers,
            "needs": list(about.file.needs),
            "makes": list(about.file.makes),
            "sources": source_data(case.knowledge, sources),
        },
    )


def _when(when: Condition, here: list[Placed]) -> str:
    phases = listed(f"'{one.phase.file.title}'" for one in here) if here else "in no phase of this route"
    always = not when.names() and not any(one.phase.when.names() for one in here)
    where = f"in {phases}" if here else phases
    return f"{where}, for every job" if always else f"{where}, when its conditions hold"


def _standing(side: Side, numbers: list[str], here: list[Placed]) -> str:
    if numbers:
        word = "step" if len(numbers) == 1 else "steps"
        return f"Here it is {word} {listed(numbers)} of the plan{_unprinted(side)}."
    if any(one.belongs is Truth.UNKNOWN for one in here):
        return "Here it is not known whether it belongs in the plan."
    return "Here it is left out of the plan."


def _unprinted(side: Side) -> str:
    return ", which is not printed as things stand" if side.trouble else ""


def _step_conditions(side: Side, here: list[Placed]) -> tuple[Line, ...]:
    if not here:
        return ()
    lines = list(condition_lines(side.case, here[0].step.when))
    for one in here:
        if one.phase.when.names():
            lines.append(Line((f"and of the phase '{one.phase.file.title}':",)))
            lines += [Line(line.text, line.depth + 1) for line in condition_lines(side.case, one.phase.when)]
    return tuple(lines)


def _made_by(side: Side, need: str, every: tuple[Placed, ...]) -> str:
    makers = [one for one in done(every) if need.replace(EVERY, EACH) in one.step.file.makes]
    if makers:
        return f"{_state(need)}, made by {_named(makers)}"
    if need in side.route.file.starts_with:
        return f"{_state(need)}, there from the start"
    return f"{_state(need)}, which nothing in this plan makes"


def _needed_by(side: Side, made: str, every: tuple[Placed, ...], here: list[Placed]) -> str:
    first = next((at for at, one in enumerate(every) if one in here), 0)
    users = [one for at, one in enumerate(every) if at > first and one.belongs is Truth.YES and made in one.step.file.needs]
    if users:
        return f"{_state(made)}, needed by {_named(users)}"
    if made in side.route.file.must_reach:
        return f"{_state(made)}, what the whole job must reach"
    return f"{_state(made)}, which no later step asks for"


def _named(steps: Iterable[Placed]) -> str:
    return listed(dict.fromkeys(f"{one.number} {one.step.file.title}" for one in steps))


def _state(name: str) -> str:
    return name.replace(EACH, "each piece").replace(EVERY, "every piece").replace("-", " ").replace(":", " of ")


def caution(side: Side, about: Caution) -> Explanation:
    """A caution: when it is printed, what it met here, at which steps, what to do."""
    file = about.file
    at = answering(about, side.places)
    truth = side.case.judge(about.when).truth
    activities = listed(one.replace("-", " ") for one in file.answers)
    scope = "up front" if file.scope == "job" else "above the step"
    rule = f"It is printed {scope} where the work is one of these: {activities}"
    return Explanation(
        kind="caution",
        name=file.id,
        label=f"{file.hazard}: {_small(file.harm)}",
        rule=(f"{rule}{'' if about.when.names() else '; nothing else is asked'}.",),
        met=(_caution_met(side, truth, at),),
        parts=parts_of(
            ("Conditions", condition_lines(side.case, about.when)),
            ("It answers", _steps_said(at)),
            ("What to do", _filled(side, about.avoid)),
            ("Sources", source_lines(side.case.knowledge, file.sources)),
        ),
        data={
            "holds": truth is not Truth.NO and bool(at),
            "truth": truth.value,
            "signal": file.signal,
            "severity": file.severity,
            "steps": [one.number for one in at],
            "sources": source_data(side.case.knowledge, file.sources),
        },
    )


def _steps_said(at: tuple[Placed, ...]) -> tuple[Line, ...]:
    """Each step with its title, or the numbers alone where there are many."""
    if len(at) <= _MOST_TITLES:
        return tuple(Line((f"step {one.number}, {one.step.file.title}",)) for one in at)
    return (Line((f"steps {listed(one.number for one in at)}",)),)


def _small(text: str) -> str:
    return text[:1].lower() + text[1:]


def _caution_met(side: Side, truth: Truth, at: tuple[Placed, ...]) -> str:
    if truth is Truth.NO:
        return "Here it is not printed: its condition does not hold."
    if not at:
        return "Here it is not printed: no step of this plan does such work."
    open_word = (
        "Not everything it asks is known, so it is printed all the same" if truth is Truth.UNKNOWN else "It holds here"
    )
    return f"{open_word}{_unprinted(side).replace(', which', ', though the sheet')}."


def stop(side: Side, about: Stop) -> Explanation:
    """A stop: when no procedure is printed, whether it holds here, and the ways out."""
    file = about.file
    truth = side.case.judge(about.when).truth
    return _rule_with_text(
        side, "stop", file.id, file.title, "No procedure is printed when its conditions hold.",
        _stop_met(truth, file.if_unknown), about.when, (about.text,), about.way_out, file.sources,
        truth is Truth.YES or (truth is Truth.UNKNOWN and file.if_unknown == "refuse"),
    )  # fmt: skip


def _stop_met(truth: Truth, if_unknown: str) -> str:
    if truth is Truth.YES:
        return "It holds here: this job is refused."
    if truth is Truth.NO:
        return "It does not hold here."
    if if_unknown == "refuse":
        return "Not everything it asks is known, and that is enough to refuse."
    return "Not everything it asks is known; another stop answers for that."


def note(side: Side, about: Note) -> Explanation:
    """A note: when it is said, and whether it is said here."""
    truth = side.case.judge(about.when).truth
    met = {Truth.YES: "It is said here.", Truth.NO: "It is not said here."}.get(truth, "It is not said here: not known.")
    return _rule_with_text(
        side, "note", about.file.id, about.file.id.replace("-", " "), "It is said on the sheet when its conditions hold.",
        met, about.when, (about.text,), (), about.file.sources, truth is Truth.YES,
    )  # fmt: skip


def _rule_with_text(
    side: Side, kind: Kind, name: str, label: str, rule: str, met: str, when: Condition, texts: tuple[Wording, ...],
    way_out: tuple[Wording, ...], sources: list[str], holds: bool,
) -> Explanation:  # fmt: skip
    ways = _filled(side, way_out)
    parts: tuple[Part, ...] = parts_of(
        ("Conditions", condition_lines(side.case, when)),
        ("What it says", _filled(side, texts)),
        ("Ways out", ways),
        ("Sources", source_lines(side.case.knowledge, sources)),
    )
    data = {
        "holds": holds,
        "truth": side.case.judge(when).truth.value,
        "sources": source_data(side.case.knowledge, sources),
    }
    return Explanation(kind, name, label, (rule,), (met,), parts, data)


def _filled(side: Side, wordings: Iterable[Wording]) -> tuple[Line, ...]:
    """The texts whose facts are all known."""
    return tuple(Line(text) for text in _texts(side, wordings) if text)


def _texts(side: Side, wordings: Iterable[Wording]) -> Iterator[Text]:
    filler = Filler(side.case)
    for wording in wordings:
        try:
            filled = filler.text(wording)
        except Gap:
            continue
        yield tuple((sentence(piece.strip()) if isinstance(piece, str) and len(filled) == 1 else piece) for piece in filled)
