"""Sheets of rework with one thing wrong."""

from collections.abc import Callable
from dataclasses import replace

from shops import EXAMPLES
from tailtrue.parts import Figure, Setting, Text
from tailtrue.procedure import GoesOn, Hold, Step

from .broken import breaks
from .changed import Job, sheet_of


def _job(shop: str) -> Job:
    return sheet_of(EXAMPLES / shop / "rework.toml")


def _changed(shop: str, wanted: str, change: Callable[[Step], Step]) -> Job:
    tree, given = _job(shop)
    phases = tuple(
        phase.model_copy(update={"steps": tuple(change(step) if step.id == wanted else step for step in phase.steps)})
        for phase in tree.phases
    )
    return tree.model_copy(update={"phases": phases}), given


def _going_on(**changes: str) -> Job:
    def change(step: Step) -> Step:
        assert step.hold is not None
        first, *others = step.hold.goes_on
        on: GoesOn = first.model_copy(update=changes)
        hold: Hold = step.hold.model_copy(update={"goes_on": (on, *others)})
        return step.model_copy(update={"hold": hold})

    return _changed("fernhill", "go-back", change)


def _figure(text: Text, fact: str, value: float) -> Text:
    return tuple(
        one.model_copy(update={"value": value}) if isinstance(one, Figure) and one.fact == fact else one for one in text
    )


def _line(line: Setting, fact: str, value: float) -> Setting:
    return Setting(
        label=_figure(line.label, fact, value),
        value=_figure(line.value, fact, value),
        reason=_figure(line.reason, fact, value),
    )


def _told(shop: str, step: str, **values: float) -> Job:
    def change(one: Step) -> Step:
        lines = one.settings
        for name, value in values.items():
            lines = tuple(_line(line, f"rework.{name.replace('__', '.')}", value) for line in lines)
        return one.model_copy(update={"settings": lines})

    return _changed(shop, step, change)


@breaks("V170", "step 4.1")
def back_to_a_step_that_is_not_there() -> Job:
    return _going_on(number="9.99")


@breaks("V170", "step 4.1")
def back_to_another_step_than_is_named() -> Job:
    return _going_on(title="Bond the collars")


@breaks("V170", "whole sheet", also="V190")
def rework_that_leads_nowhere() -> Job:
    def change(step: Step) -> Step:
        assert step.hold is not None
        return step.model_copy(update={"hold": step.hold.model_copy(update={"goes_on": ()})})

    return _changed("fernhill", "go-back", change)


@breaks("V170", "step 4.1")
def going_on_with_a_sheet_that_nobody_left() -> Job:
    tree, shop = _job("fernhill")
    return tree, replace(shop, rework=None)


@breaks("V171", "step 3.4")
def bore_that_is_not_gauged_after_the_cut() -> Job:
    return _changed("fernhill", "rework-gauge-again", lambda step: step.model_copy(update={"hold": None}))


@breaks("V172", "step 3.4", also="V60 V80 V81")
def cut_past_the_largest_bore() -> Job:
    return _told("fernhill", "rework-bore", cuts__depth=0.09, cuts__least_after=25.106, cuts__largest_after=25.111)


@breaks("V172", "step 3.4", also="V80 V81")
def radius_told_as_diameter() -> Job:
    return _told("fernhill", "rework-bore", cuts__depth=0.1)


@breaks("V172", "step 3.4", also="V80 V442")
def beginning_that_lets_the_cuts_end_past_the_window() -> Job:
    return _told("fernhill", "rework-bore", begin_most=24.97)


@breaks("V172", "step 3.4")
def limits_that_the_bar_at_this_seat_does_not_allow() -> Job:
    tree, shop = _job("fernhill")
    return tree, replace(shop, measured={**shop.measured, "head": tuple(one - 0.1 for one in shop.measured["head"])})


@breaks("V173", "step 2.1", also="V80")
def more_tries_than_the_collars_are_worth() -> Job:
    return _told("quarry-road", "change-one-thing", tries=9.0)


@breaks("V173", "step 2.1", also="V80")
def repeat_without_a_most() -> Job:
    def change(step: Step) -> Step:
        lines = tuple(
            line
            for line in step.settings
            if not any(isinstance(one, Figure) and one.fact == "rework.tries" for one in line.value)
        )
        return step.model_copy(update={"settings": lines})

    return _changed("quarry-road", "change-one-thing", change)


@breaks("V170", "step 4.1")
def sheet_left_with_a_lathe_that_can_start() -> Job:
    return _changed("fernhill", "go-back", lambda step: step.model_copy(update={"machine": "stopped"}))
