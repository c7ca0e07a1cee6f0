"""Phases and steps of the tree, in the order of the plan."""

from collections.abc import Mapping, Sequence
from typing import Any

from tailtrue.assemble.cautions import CautionDealer, Few, Place, few_up_front, for_the_job, worst_first
from tailtrue.assemble.filling import Filler
from tailtrue.assemble.going_on import goes_on, void
from tailtrue.assemble.supervising import released_by, who_does
from tailtrue.assemble.times import phase_time, step_time
from tailtrue.conditions import Condition
from tailtrue.parts import Caution as CautionNode
from tailtrue.parts import Check, Limits, Setting, Text
from tailtrue.plan import Plan, PlannedPhase
from tailtrue.procedure import Hold, Phase, Step
from tailtrue.store.knowledge import Caution, CheckText, SettingsFrom, StepText
from tailtrue.store.page_texts import SettingText
from tailtrue.truth import Truth
from tailtrue.wording import Wording

_FEW = ("limit.messages_at_step", "limit.messages_at_phase", "limit.told_again_from")


def phases(
    filler: Filler, plan: Plan, held: Sequence[tuple[Caution, CautionNode]]
) -> tuple[tuple[Phase, ...], tuple[CautionNode, ...]]:
    """Every phase of a plan, numbered, its steps with their share of the cautions that hold; and the cautions up front."""
    activities = {name for planned in plan.phases for step in planned.steps for name in step.file.activities}
    job = for_the_job(held, activities)
    deal = CautionDealer(held, Few(*(int(filler.case.knowledge.limits[name].value) for name in _FEW)), job)
    numbers = {
        f"{first}.{second}": step.file.id
        for first, planned in enumerate(plan.phases, start=1)
        for second, step in enumerate(planned.steps, start=1)
    }
    made = tuple(_phase(filler, planned, str(number), deal, numbers) for number, planned in enumerate(plan.phases, start=1))
    tell_all = {step.file.id for planned in plan.phases for step in planned.steps if step.file.checks_tell_all}
    most = int(filler.case.knowledge.limits["limit.messages_up_front"].value)
    return _shortened(made, tell_all), few_up_front(worst_first((*job, *deal.up_front)), most)


def _phase(
    filler: Filler, planned: PlannedPhase, number: str, deal: CautionDealer, numbers: Mapping[str, str]
) -> Phase:  # fmt: skip
    each = planned.each
    places = tuple(
        Place(f"{number}.{index}", step.file.machine, tuple(step.file.activities))
        for index, step in enumerate(planned.steps, start=1)
    )
    dealt = deal.phase(number, places)
    steps = tuple(
        _step(filler.at(numbers, place.number), step, place.number, each, cautions, frozenset(numbers.values()))
        for step, place, cautions in zip(planned.steps, places, dealt.steps, strict=True)
    )
    return Phase(
        id=planned.phase.file.id,
        number=number,
        title=planned.phase.file.title,
        purpose=_purpose(filler, planned),
        each=each,
        cautions=dealt.opening,
        steps=steps,
        time=phase_time(filler, steps, len(each) or 1),
    )


def _purpose(filler: Filler, planned: PlannedPhase) -> Text:
    said = filler.text(planned.phase.purpose)
    for one in planned.also:
        said = (*said, " ", *filler.text(one.purpose))
    return said


def _step(
    filler: Filler, step: StepText, number: str, each: tuple[str, ...], cautions: tuple[CautionNode, ...],
    on_sheet: frozenset[str],
) -> Step:  # fmt: skip
    file = step.file
    hold = step.hold
    return Step(
        id=file.id,
        number=number,
        title=file.title,
        who=who_does(filler, file),
        machine=file.machine,
        activities=tuple(file.activities),
        cautions=cautions,
        hold=Hold(
            text=filler.text(hold.text),
            releases=released_by(filler, hold.file),
            go_back_to=next((name for name in hold.file.ways_back if name in on_sheet), None),
            goes_on=goes_on(filler, step, hold),
            void=void(filler, hold),
        )
        if hold
        else None,
        text=tuple(filler.text(sentence) for sentence in step.sentences if _stands(filler, step, sentence)),
        settings=(*_settings_of_records(filler, step.settings_from), *settings(filler, step.settings)),
        checks=tuple(_check(filler, check, each) for check in step.checks if _holds(filler, check.when)),
        why=filler.text(step.why),
        tools=tuple(tool for tool in file.tools if tool not in step.without or not _holds(filler, step.without[tool])),
        boxes=each or ("",),
        shop_rule=filler.case.knowledge.shop.mark("step", file.id),
        of_shop=filler.case.knowledge.shop.own_lines("step", file.id),
        time=step_time(filler, file.time),
    )


def _shortened(made: tuple[Phase, ...], tell_all: set[str]) -> tuple[Phase, ...]:
    """The phases, each step whose checks tell all naming the earlier one that it is word for word."""
    first: dict[tuple[object, ...], str] = {}

    def shortened(step: Step) -> Step:
        if step.id not in tell_all:
            return step
        before = first.setdefault((step.text, tuple(map(_for_one, step.checks))), step.number)
        return step if before == step.number else step.model_copy(update={"again": before})

    return tuple(phase.model_copy(update={"steps": tuple(map(shortened, phase.steps))}) for phase in made)


def _for_one(check: Check) -> Check:
    """A check as it is for one piece: how many pieces it is written for does not change what is done."""
    return check.model_copy(update={"blanks": tuple(one.model_copy(update={"each": ()}) for one in check.blanks)})


def _holds(filler: Filler, when: Condition) -> bool:
    return filler.case.judge(when).truth is Truth.YES


def _stands(filler: Filler, step: StepText, sentence: Wording) -> bool:
    """Whether a line belongs to this job; not knowing is enough to print it."""
    when = step.only.get(sentence.words)
    return when is None or filler.case.judge(when).truth is not Truth.NO


def settings(filler: Filler, rows: Sequence[SettingText]) -> tuple[Setting, ...]:
    """Settings lines that hold in this case."""
    return tuple(
        Setting(label=filler.text(row.label), value=filler.text(row.value), reason=filler.text(row.reason))
        for row in rows
        if _holds(filler, row.when)
    )


def _settings_of_records(filler: Filler, rows: SettingsFrom | None) -> tuple[Setting, ...]:
    if rows is None:
        return ()

    def text(wording: Wording, row: Mapping[str, Any]) -> Text:
        return filler.text(wording, row, rows.records)

    return tuple(
        Setting(label=text(rows.label, row), value=text(rows.value, row), reason=text(rows.reason, row))
        for row in filler.fact(rows.records).value
    )


def _check(filler: Filler, check: CheckText, each: tuple[str, ...]) -> Check:
    limits = None
    if check.low or check.high:
        limits = Limits(
            low=filler.figure(check.low) if check.low else None,
            high=filler.figure(check.high) if check.high else None,
        )
    text = filler.text(check.text)
    # What names its piece is written for that one alone.
    named = " ".join((*(piece for piece in text if isinstance(piece, str)), *(one.label for one in check.blanks)))
    return Check(
        text=text,
        limits=limits,
        instrument=check.instrument,
        resolution=filler.figure(check.resolution) if check.resolution else None,
        uncertainty=filler.figure(check.uncertainty) if check.uncertainty else None,
        blanks=filler.blanks(check.blanks, () if any(piece in named for piece in each) else each),
    )
