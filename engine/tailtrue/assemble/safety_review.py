"""The safety review of a job, from the same facts and cautions as its procedure."""

from collections.abc import Iterable, Iterator

from tailtrue.assemble.filling import Filler
from tailtrue.assemble.rating import HIERARCHY, WEAK, rated_after, rating
from tailtrue.case import Gap
from tailtrue.parts import Blank, Caution, Text
from tailtrue.procedure import Need, Phase, Step
from tailtrue.review import (
    CheckLine,
    CheckList,
    Chemical,
    Control,
    Elimination,
    Held,
    Matrix,
    NearMissLine,
    Rating,
    ReviewedHazard,
    ReviewLine,
    RiskClass,
    SafetyReview,
    Signature,
    WearState,
    WorkPart,
)
from tailtrue.store.knowledge import Caution as CautionRule
from tailtrue.store.safety import ControlText, ReviewLineText, SafetyText
from tailtrue.store.safety_models import MatrixFile, WearFile
from tailtrue.truth import Truth


def safety_review(
    filler: Filler,
    phases: tuple[Phase, ...],
    needs: tuple[Need, ...],
    job_cautions: tuple[Caution, ...],
    near: tuple[NearMissLine, ...],
) -> SafetyReview:
    """The whole review of a planned job; `near` are the rules that nearly held."""
    known = filler.case.knowledge.safety
    steps = [step for phase in phases for step in phase.steps]
    work = _work(known, steps)
    return SafetyReview(
        title=known.review.title,
        lead=tuple(filler.text(line) for line in known.lead),
        head=_lines(filler, known, "head"),
        work=work,
        usual_person=known.review.usual_person,
        hazards=tuple(_hazards(filler, work, steps, _shown(phases, job_cautions))),
        matrix=_matrix(known.matrix),
        people=_lines(filler, known, "people"),
        alone=_lines(filler, known, "alone"),
        wear=tuple(_wear(filler, known, steps)),
        checks=_checks(filler, known, "on" if any(step.machine != "isolated" for step in steps) else "off"),
        isolation=_lines(filler, known, "isolation"),
        chemicals=_chemicals(known, needs),
        emergency=_lines(filler, known, "emergency"),
        near_misses=near,
        eliminations=tuple(_eliminations(filler, known)),
        accepts=_signatures(filler, known, "accepts")[0],
        signatures=_signatures(filler, known, "sign"),
        sources=_sources(known),
    )


def _shown(phases: Iterable[Phase], job_cautions: Iterable[Caution]) -> dict[str, Caution]:
    """Every caution of the sheet, each once."""
    shown = {caution.id: caution for caution in job_cautions}
    for phase in phases:
        for caution in (*phase.cautions, *(one for step in phase.steps for one in step.cautions)):
            shown.setdefault(caution.id, caution)
    return shown


def _work(known: SafetyText, steps: Iterable[Step]) -> tuple[WorkPart, ...]:
    made = []
    for part in known.parts:
        answers = set(part.answers)
        here = [step for step in steps if not answers.isdisjoint(step.activities)]
        if here:
            met = {activity for step in here for activity in step.activities}
            made.append(
                WorkPart(
                    id=part.id,
                    title=part.title,
                    activities=tuple(one for one in part.answers if one in met),
                    used_at=tuple(step.number for step in here),
                    machine=tuple(dict.fromkeys(step.machine for step in here)),
                )
            )
    return tuple(made)


def _hazards(
    filler: Filler, work: tuple[WorkPart, ...], steps: list[Step], shown: dict[str, Caution]
) -> Iterator[ReviewedHazard]:
    """Every hazard once, under the first activity that meets it, worst first."""
    rules = {rule.file.id: rule for rule in filler.case.knowledge.cautions}
    met = {name: tuple(part.id for part in work if set(part.activities) & set(one.answers)) for name, one in shown.items()}
    for part in work:
        here = [shown[name] for name, parts in met.items() if parts and parts[0] == part.id]
        for place, caution in enumerate(sorted(here, key=_rank), start=1):
            yield _hazard(filler, f"{part.id}{place}", caution, rules[caution.id], met[caution.id], steps)


def _rank(caution: Caution) -> tuple[bool, int, int, str]:
    return (caution.signal != "danger", -caution.severity, -caution.likelihood, caution.id)


def _hazard(
    filler: Filler, number: str, caution: Caution, rule: CautionRule, parts: tuple[str, ...], steps: list[Step]
) -> ReviewedHazard:
    known = filler.case.knowledge.safety
    controls = tuple(sorted((_control(filler, one) for one in rule.controls), key=lambda one: HIERARCHY.index(one.level)))
    before = rating(known.matrix, caution.severity, caution.likelihood)
    after = rated_after(known.matrix, before, controls)
    return ReviewedHazard(
        number=number,
        caution=caution.id,
        signal=caution.signal,
        hazard=caution.hazard,
        harm=caution.harm,
        who=rule.file.who or known.review.usual_person,
        shop_rule=caution.shop_rule,
        parts=parts,
        before=before,
        controls=controls,
        after=after,
        held=_held(rule, controls, after, steps),
    )


def _control(filler: Filler, control: ControlText) -> Control:
    """A control counts when the sheet does it or the files say that it is there; not knowing never counts."""
    file = control.file
    if control.when is not None:
        truth = filler.case.judge(control.when).truth
        state = {Truth.YES: "counted", Truth.NO: "not-here", Truth.UNKNOWN: "to-see"}[truth]
    elif file.by == "level":
        state = "counted" if file.level == "eliminate" or file.level in WEAK else "to-see"
    else:
        state = "counted" if file.by == "sheet" else "to-see"
    return Control(level=file.level, text=file.text, state=state)


def _held(rule: CautionRule, controls: tuple[Control, ...], after: Rating, steps: list[Step]) -> Held | None:
    if after.band not in ("high", "extreme"):
        return None
    if any(control.state == "counted" and control.level not in WEAK for control in controls):
        return Held(by="control")
    hold = next((step.number for step in steps if step.hold is not None and step.id == rule.file.held_at), None)
    return Held(by="hold", hold_step=hold) if hold else Held(by="acceptance")


def _matrix(file: MatrixFile) -> Matrix:
    scale = range(1, 6)
    return Matrix(
        severities=tuple((words,) for words in file.severities),
        likelihoods=tuple((words,) for words in file.likelihoods),
        cells=tuple(tuple(rating(file, severity, likelihood).band for severity in scale) for likelihood in scale),
        classes=tuple(RiskClass(band=one.id, low=one.low, high=one.high, action=(one.action,)) for one in file.class_),
        lowers={level: file.lowers[level] for level in HIERARCHY},
        weak_from_severity=file.weak_from_severity,
        weak_least_likelihood=file.weak_least_likelihood,
        rules=tuple((rule,) for rule in file.rules),
        sources=tuple(file.sources),
    )


def _lines(filler: Filler, known: SafetyText, part: str) -> tuple[ReviewLine, ...]:
    return tuple(
        ReviewLine(
            id=line.file.id,
            text=filler.text(line.text),
            answer=_answer(filler, line),
            blanks=filler.blanks(line.file.blanks),
            must=line.file.must,
        )
        for line in known.lines
        if line.file.part == part and filler.case.judge(line.when).truth is not Truth.NO
    )


def _answer(filler: Filler, line: ReviewLineText) -> Text | None:
    if line.answer is None:
        return None
    try:
        return filler.text(line.answer)
    except Gap:
        return None


def _wear(filler: Filler, known: SafetyText, steps: list[Step]) -> Iterator[WearState]:
    """The states that occur, those that may among them; a step of a state that stands alone is in no general one."""
    taken = {step.number for state in known.wear if state.file.alone for step in steps if _belongs(state.file, step)}
    for state in known.wear:
        file = state.file
        here = [step.number for step in steps if _belongs(file, step) and (file.answers or step.number not in taken)]
        if here and filler.case.judge(state.when).truth is not Truth.NO:
            yield WearState(
                id=file.id,
                title=file.title,
                used_at=tuple(here),
                spindle_can_turn=file.spindle_can_turn,
                wear=tuple(filler.text(one) for one in state.wear),
                never=tuple(filler.text(one) for one in state.never),
            )


def _belongs(state: WearFile, step: Step) -> bool:
    return step.machine in state.machine and (not state.answers or bool(set(state.answers) & set(step.activities)))


def _checks(filler: Filler, known: SafetyText, power: str) -> tuple[CheckList, ...]:
    """The lists of the check; nothing of a start where power stays away from the first line to the last."""
    lists: dict[str, list[CheckLine]] = {}
    for check in known.checks:
        file = check.file
        if file.power not in ("", power) or filler.case.judge(check.when).truth is Truth.NO:
            continue
        line = CheckLine(
            id=file.id,
            item=filler.text(check.item),
            passes=filler.text(check.passes),
            otherwise=filler.text(check.otherwise),
            blanks=filler.blanks(file.blanks),
            killer=file.killer,
            not_applicable=file.not_applicable,
        )
        lists.setdefault(file.in_list, []).append(line)
    ends_with = known.review.ends_with
    return tuple(CheckList(title=title, lines=tuple(lines), ends_with=ends_with) for title, lines in lists.items())


def _chemicals(known: SafetyText, needs: tuple[Need, ...]) -> tuple[Chemical, ...]:
    substances = {file.id for file in known.chemicals}
    blanks = tuple(Blank(label=label) for label in known.review.chemical_blanks)
    return tuple(
        Chemical(need=need.id, name=need.name, used_at=need.used_at, blanks=blanks)
        for need in needs
        if need.id in substances
    )


def _eliminations(filler: Filler, known: SafetyText) -> Iterator[Elimination]:
    for way in known.eliminations:
        if filler.case.judge(way.when).truth is Truth.NO:
            continue
        taken = filler.case.judge(way.taken).truth is Truth.YES
        reason = filler.text(way.because if taken else way.declined)
        yield Elimination(
            id=way.file.id,
            hazard=way.file.hazard,
            way=way.file.way,
            verdict="taken" if taken else "declined",
            because=reason,
            sources=tuple(way.file.sources),
        )


def _signatures(filler: Filler, known: SafetyText, part: str) -> tuple[Signature, ...]:
    return tuple(
        Signature(id=one.file.id, role=one.file.role, text=filler.text(one.text))
        for one in known.signatures
        if one.file.part == part and filler.case.judge(one.when).truth is Truth.YES
    )


def _sources(known: SafetyText) -> tuple[str, ...]:
    return tuple(dict.fromkeys(key for _, _, written in known.sourced() for key in written))
