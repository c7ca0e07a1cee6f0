"""The ways back on a sheet: each hold that is not released, and each sentence that sends back, with where it lands."""

import re
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache

from tailtrue.inspection.sheet import Placed
from tailtrue.inspection.spelt import STEP_NAMED, words_of

_RESTORES = re.compile(r"\b(?:restore power|bring power back)\b", re.IGNORECASE)
_BACK = re.compile(r"\bgo back to (?:[^.]|\.(?=\d))*|\bcooling step again\b(?:[^.]|\.(?=\d))*", re.IGNORECASE)
# A way back to another sheet is held against that sheet.
_ELSEWHERE = re.compile(r"\byour sheet\b", re.IGNORECASE)


@dataclass(frozen=True)
class Way:
    """One way back: where from, to which place among the steps, and the sentence that sends; none for a hold."""

    where: str
    said: str
    to: int | None
    sentence: str | None


def ways(steps: Sequence[Placed], place: int) -> Iterator[Way]:
    """Every way back that begins at this place."""
    placed = steps[place]
    step = placed.step
    if step.hold is not None and step.hold.go_back_to is not None:
        target = step.hold.go_back_to
        named = [index for index, one in enumerate(steps) if target in (one.step.id, one.step.number)]
        nearest = [index for index in named if index <= place][-1:] or named[:1]
        yield Way(placed.where, f"not released: go back to step {target}", next(iter(nearest), None), None)
    texts = [*step.text, *(line.reason for line in step.settings), *(check.text for check in step.checks)]
    for text in texts:
        for said, sentence in _sent_back(words_of(text)):
            yield Way(placed.where, said, _target(said, steps, place), sentence)


@lru_cache(maxsize=8192)
def _sent_back(words: str) -> tuple[tuple[str, str], ...]:
    """What sends back in a text, with its whole sentence."""
    sentences = ((_BACK.search(sentence), sentence) for sentence in words.split(". "))
    return tuple((found[0], sentence) for found, sentence in sentences if found and not _ELSEWHERE.search(sentence))


def restores(placed: Placed) -> bool:
    """Whether a step has power come back."""
    return placed.step.machine != "isolated" and any(_RESTORES.search(words_of(text)) for text in placed.step.text)


def _target(said: str, steps: Sequence[Placed], place: int) -> int | None:
    """The place of the step that a way back names by its number, or in words."""
    if number := STEP_NAMED.search(said):
        return next((index for index, one in enumerate(steps) if one.step.number == number[1]), None)
    for pattern, find in _NAMED:
        if pattern.search(said):
            return find(steps, place)
    return None


def _last(steps: Sequence[Placed], before: int, wanted: Callable[[Placed], bool]) -> int | None:
    return next((index for index in range(before - 1, -1, -1) if wanted(steps[index])), None)


def _does(activity: str) -> Callable[[Placed], bool]:
    return lambda placed: activity in placed.step.activities


def _power(steps: Sequence[Placed], place: int) -> int | None:
    return _last(steps, place, lambda one: one.step.machine == "stopped" and restores(one))


def _check(steps: Sequence[Placed], place: int) -> int | None:
    return _last(steps, place, _does("start-check"))


def _cooling(steps: Sequence[Placed], place: int) -> int | None:
    return _last(steps, place, lambda one: one.step.machine == "isolated" and "thermometer" in one.step.tools)


# In this order: what is named last in a sentence is where one stands then.
_NAMED: tuple[tuple[re.Pattern[str], Callable[[Sequence[Placed], int], int | None]], ...] = tuple(
    (re.compile(pattern, re.IGNORECASE), find)
    for pattern, find in (
        (r"cooling step again, then the start check", _check),
        (r"cooling step again", _cooling),
        (r"power\b", _power),
        (r"start check", _check),
    )
)  # fmt: skip
