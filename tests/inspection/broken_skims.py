"""Sheets that read fresh skims with an indicator, with one thing wrong."""

from collections.abc import Callable
from typing import Any

from shops import EXAMPLES
from tailtrue.parts import Figure
from tailtrue.procedure import Step

from .broken import breaks
from .changed import Job, sheet_of

_READ = "indicate-collars"


def _job() -> Job:
    return sheet_of(EXAMPLES / "fernhill" / "use-bar-by-indicator.toml")


def _with(name: str, change: Callable[[Step], Step]) -> Job:
    tree, shop = _job()
    phases = tuple(
        phase.model_copy(update={"steps": tuple(change(step) if step.id == name else step for step in phase.steps)})
        for phase in tree.phases
    )
    return tree.model_copy(update={"phases": phases}), shop


def _words(text: Any, one: str, other: str) -> Any:
    if isinstance(text, str):
        return text.replace(one, other)
    return tuple(_words(piece, one, other) for piece in text) if isinstance(text, tuple) else text


def _doubt(value: float) -> Job:
    def changed(step: Step) -> Step:
        lines = tuple(
            line.model_copy(
                update={
                    "value": tuple(
                        piece.model_copy(update={"value": value})
                        if isinstance(piece, Figure) and piece.fact == "align.uncertainty"
                        else piece
                        for piece in line.value
                    )
                }
            )
            for line in step.settings
        )
        return step.model_copy(update={"settings": lines})

    return _with(_READ, changed)


@breaks("V200", "step 4.8")
def plunger_on_the_side_of_the_tool() -> Job:
    def changed(step: Step) -> Step:
        lines = tuple(
            line.model_copy(update={"value": _words(line.value, "rear, away from you and the tool", "front your side")})
            for line in step.settings
        )
        return step.model_copy(update={"settings": lines})

    return _with(_READ, changed)


@breaks("V200", "step 4.8")
def stand_on_the_cross_slide() -> Job:
    return _with(
        _READ, lambda step: step.model_copy(update={"text": _words(step.text, "on the saddle", "on the tool post")})
    )


@breaks("V201", "step 4.8", also="V160 V161 V290 V340")
def tailstock_touched_between_the_skim_and_the_reading() -> Job:
    return _with(
        "stop-and-cool",
        lambda step: step.model_copy(update={"activities": (*step.activities, "mount-between-centres")}),
    )


@breaks("V201", "step 4.8")
def skims_of_another_day() -> Job:
    return _with("skim-collars", lambda step: step.model_copy(update={"activities": ("turning",)}))


@breaks("V202", "step 4.8", also="V116")
def doubt_less_than_the_divisions_leave() -> Job:
    return _doubt(0.001)


@breaks("V202", "step 4.8", also="V116")
def verdict_with_a_doubt_that_fills_the_limit() -> Job:
    return _doubt(0.012)


@breaks("V202", "step 4.8")
def doubt_left_out() -> Job:
    return _with(
        _READ,
        lambda step: step.model_copy(
            update={"settings": tuple(line for line in step.settings if line.label != ("doubt of the difference",))}
        ),
    )
