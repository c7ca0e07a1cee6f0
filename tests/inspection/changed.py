"""Small changes to the sample: one thing is made otherwise, the rest stays."""

from collections.abc import Callable
from dataclasses import replace
from functools import cache
from pathlib import Path
from typing import Any

from review_sample import review
from tailtrue.advise import advise, shop_for, tree_of
from tailtrue.inspection import Shop
from tailtrue.parts import Caution, Check, Figure, Setting
from tailtrue.procedure import Phase, Procedure, StartLine, StartList, Step

from .sample import STATES, card_of, procedure, shop
from .sample_pieces import written_for_each
from .sample_sop import sop_of
from .sample_time import plan, timed

Job = tuple[Procedure, Shop]


@cache
def sheet_of(path: Path) -> Job:
    """The sheet of a job file and what the files say of the shop."""
    advice = advise(path)
    return tree_of(advice), shop_for(advice)


def reviewed_anew(job: Job) -> Job:
    """The same sheet with its safety review made for it."""
    tree, givens = job
    return tree.model_copy(update={"safety_review": review(tree.phases, tree.job_cautions, tree.needs)}), givens


def with_shop(**changes: Any) -> Job:
    """The sample in another shop."""
    return procedure(), replace(shop(), **changes)


def with_sheet(**changes: Any) -> Job:
    """The sample with other parts."""
    changed = procedure().model_copy(update=changes)
    return changed.model_copy(update={"sop": changes.get("sop", sop_of(changed))}), shop()


def with_list_of_press(job: Job) -> Job:
    """The same sheet, its card with the list that a drill press asks for."""
    tree, givens = job
    assert tree.card is not None
    items = ("key", "gloves", "sleeves, hair", "work", "guard", "chuck by hand")
    press = StartList(
        title="Before the press starts",
        lines=tuple(StartLine(item=item, state="as said") for item in items),
        ends_with="Done",
    )
    return tree.model_copy(update={"card": tree.card.model_copy(update={"besides": (press,)})}), givens


def with_title(**changes: Any) -> Job:
    """The sample with another title block."""
    return with_sheet(title=procedure().title.model_copy(update=changes))


def with_look_up(**changes: Any) -> Job:
    """The sample with another look-up table."""
    return with_sheet(look_up=procedure().look_up.model_copy(update=changes))


def with_dimension(name: str, value: float | None) -> Job:
    """The sample with one dimension of its drawing changed, or left out."""
    drawing = procedure().drawing
    dimensions = dict(drawing.dimensions)
    if value is None:
        del dimensions[name]
    else:
        dimensions[name] = figure_of(dimensions[name], value=value)
    return with_sheet(drawing=drawing.model_copy(update={"dimensions": dimensions}))


def with_phases(change: Callable[[Phase], Phase]) -> Job:
    """The sample with every phase changed."""
    phases = written_for_each(timed(tuple(change(phase) for phase in procedure().phases)))
    return with_sheet(phases=phases, time=plan(phases), card=card_of(phases))


def with_step_time(number: str, **changes: Any) -> Job:
    """The sample with the time of one step changed, and no sum made anew."""

    def changed(step: Step) -> Step:
        assert step.time is not None
        return step.model_copy(update={"time": step.time.model_copy(update=changes)})

    phases = tuple(
        phase.model_copy(update={"steps": tuple(changed(one) if one.number == number else one for one in phase.steps)})
        for phase in procedure().phases
    )
    return with_sheet(phases=phases)


def with_phase(number: str, /, **changes: Any) -> Job:
    """The sample with one phase changed."""
    return with_phases(lambda phase: phase.model_copy(update=changes) if phase.number == number else phase)


def with_steps(change: Callable[[Step], Step]) -> Job:
    """The sample with every step changed."""
    return with_phases(lambda phase: phase.model_copy(update={"steps": tuple(change(step) for step in phase.steps)}))


def with_step(number: str, /, **changes: Any) -> Job:
    """The sample with one step changed."""
    return with_steps(lambda step: step.model_copy(update=changes) if step.number == number else step)


def step(number: str) -> Step:
    """A step of the sample."""
    return next(step for phase in procedure().phases for step in phase.steps if step.number == number)


def in_order(phase_number: str, *order: str) -> Job:
    """The sample with the steps of a phase put in another order, or some left out, and numbered anew."""
    steps = tuple(
        step(number).model_copy(update={"number": f"{phase_number}.{place}"}) for place, number in enumerate(order, start=1)
    )
    changed, givens = with_phase(phase_number, steps=steps)
    used: dict[str, list[str]] = {}
    for phase in changed.phases:
        for one in phase.steps:
            for tool in one.tools:
                used.setdefault(tool, []).append(one.number)
    needs = tuple(need.model_copy(update={"used_at": tuple(used[need.id])}) for need in changed.needs if need.id in used)
    return changed.model_copy(update={"needs": needs}), givens


def figure_of(figure: Figure, **changes: Any) -> Figure:
    """A figure, changed."""
    return figure.model_copy(update=changes)


def with_card_line(changed: str, **changes: Any) -> Job:
    """The sample with the line of one fact on its card changed, at its step or not."""
    groups = tuple(
        group.model_copy(
            update={
                "lines": tuple(
                    line.model_copy(update=changes) if line.value.fact == changed else line for line in group.lines
                )
            }
        )
        for group in procedure().card.groups
    )
    return with_sheet(card=procedure().card.model_copy(update={"groups": groups}))


def card_figure(fact: str) -> Figure:
    """A number on the card of the sample."""
    return next(line.value for group in procedure().card.groups for line in group.lines if line.value.fact == fact)


def with_setting(number: str, line: int, **changes: Any) -> Job:
    """The sample with the figure that one line of a settings table sets changed."""
    settings = list(step(number).settings)
    figure = settings[line].value[0]
    assert isinstance(figure, Figure)
    settings[line] = settings[line].model_copy(update={"value": (figure_of(figure, **changes),)})
    return with_step(number, settings=tuple(settings))


def with_line(number: str, line: Setting) -> Job:
    """The sample with one more line in a settings table."""
    return with_step(number, settings=(*step(number).settings, line))


def with_check(number: str, **changes: Any) -> Job:
    """The sample with the first check of a step changed."""
    first, *rest = step(number).checks
    return with_step(number, checks=(first.model_copy(update=changes), *rest))


def check(number: str) -> Check:
    """The first check of a step of the sample."""
    return step(number).checks[0]


def with_caution(number: str, **changes: Any) -> Job:
    """The sample with the first caution of a step changed."""
    first, *rest = step(number).cautions
    return with_step(number, cautions=(first.model_copy(update=changes), *rest))


def without_caution(number: str) -> Job:
    """The sample with the cautions of a step left out."""
    return with_step(number, cautions=())


def job_caution(**changes: Any) -> tuple[Caution, ...]:
    """The job cautions of the sample, the last of them changed."""
    *rest, last = procedure().job_cautions
    return (*rest, last.model_copy(update=changes))


def on_step(job: Job, wanted: str, change: Callable[[Step], Step]) -> Job:
    """A sheet on which the steps of that name are made otherwise."""
    tree, givens = job
    phases = tuple(
        phase.model_copy(update={"steps": tuple(change(one) if one.id == wanted else one for one in phase.steps)})
        for phase in tree.phases
    )
    assert phases != tree.phases
    return tree.model_copy(update={"phases": phases}), givens


def with_told(job: Job, wanted: str, fact: str, value: float) -> Job:
    """A sheet on which the settings of a step tell another value of a fact."""

    def figure(piece: str | Figure) -> str | Figure:
        return piece.model_copy(update={"value": value}) if isinstance(piece, Figure) and piece.fact == fact else piece

    def line(one: Setting) -> Setting:
        return one.model_copy(update={"value": tuple(map(figure, one.value)), "reason": tuple(map(figure, one.reason))})

    return on_step(job, wanted, lambda one: one.model_copy(update={"settings": tuple(map(line, one.settings))}))


def place_of(job: Job, wanted: str) -> str:
    """Where the first step of that name stands, as the inspection says it."""
    return next(f"step {one.number}" for phase in job[0].phases for one in phase.steps if one.id == wanted)


def allowed_anywhere(job: Job) -> Job:
    """The same sheet in a shop whose list allows every activity in every state of the machine."""
    changed, givens = job
    every = frozenset({"isolated", "stopped", "turning"})
    return changed, replace(givens, states=dict.fromkeys(STATES, every))


def with_card_figure(tree: Procedure, fact: str, value: float) -> Procedure:
    """The sheet whose card says another value too, so that both are wrong alike."""
    assert tree.card is not None
    groups = tuple(
        group.model_copy(
            update={
                "lines": tuple(
                    line.model_copy(update={"value": figure_of(line.value, value=value)})
                    if line.value.fact == fact
                    else line
                    for line in group.lines
                )
            }
        )
        for group in tree.card.groups
    )
    return tree.model_copy(update={"card": tree.card.model_copy(update={"groups": groups})})


def changed_step(job: Job, wanted: str, change: Callable[[Step], Step]) -> Job:
    """A job with one of its steps changed."""
    tree, given = job
    phases = tuple(
        phase.model_copy(update={"steps": tuple(change(step) if step.id == wanted else step for step in phase.steps)})
        for phase in tree.phases
    )
    return tree.model_copy(update={"phases": phases}), given


def valued(fact: str, value: float) -> Callable[[Step], Step]:
    """A change of a step: a figure of its settings has another value."""

    def other(line: Setting) -> Setting:
        told = tuple(
            one.model_copy(update={"value": value}) if isinstance(one, Figure) and one.fact == fact else one
            for one in line.value
        )
        return line.model_copy(update={"value": told})

    return lambda step: step.model_copy(update={"settings": tuple(other(line) for line in step.settings)})
