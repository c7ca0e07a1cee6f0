"""Steps that paper gives in short: the earlier step is the same word for word, and the checks tell every state of it."""

import re
from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet
from tailtrue.inspection.spelt import words_of, words_of_step
from tailtrue.procedure import Step

# A state that protects: how the actions ask for it, and how a check tells it.
_STATES = (
    ("gloves", re.compile(r"\bgloves?\b"), re.compile(r"\bgloves? off\b")),
    ("sleeves and hair", re.compile(r"\bsleeves\b|\bhair\b"), re.compile(r"\bsleeves and hair close\b")),
    ("rear of the spindle", re.compile(r"\brear of the spindle\b"), re.compile(r"\brear of the spindle clear\b")),
    ("keys", re.compile(r"\bkeys?\b"), re.compile(r"\bkeys?\b")),
    ("gauges", re.compile(r"\bgauges?\b"), re.compile(r"\bgauges?\b")),
    ("hands", re.compile(r"\bhands\b"), re.compile(r"\bhands\b")),
    ("what is gripped", re.compile(r"\bwhat is gripped\b"), re.compile(r"\bwork\b[^.]*\btight\b")),
    ("tool post", re.compile(r"\btool post\b"), re.compile(r"\btool post\b[^.]*\btight\b")),
    ("tailstock clamp", re.compile(r"\btailstock clamp\b"), re.compile(r"\btailstock clamp\b[^.]*\btight\b")),
    ("speed", re.compile(r"\bspeed\b"), re.compile(r"\bspeed\b")),
    ("neutral", re.compile(r"\bneutral\b"), re.compile(r"\bin neutral\b")),
    ("power", re.compile(r"\bpower\b"), re.compile(r"\bpower\b")),
    ("turn by hand", re.compile(r"\bby hand\b"), re.compile(r"\bby hand: clear\b")),
    ("guard", re.compile(r"\bguard\b"), re.compile(r"\bguard closed\b")),
    ("covers", re.compile(r"\bcovers\b"), re.compile(r"\bcovers closed\b")),
    ("first turns", re.compile(r"\bfirst turns\b"), re.compile(r"\bfirst turns\b[^.]*\bsteady\b")),
    ("out of line", re.compile(r"\bin line\b"), re.compile(r"\bin line\b")),
)


def checks_tell_all(sheet: Sheet) -> Iterator[Fault]:
    """A step in short stands for an earlier one, has a place to write, and its checks name what the actions ask for."""
    earlier: dict[str, Step] = {}
    # A step in short stands in many phases: its words are compared once.
    lacking: dict[tuple[str, str], tuple[str, ...]] = {}
    for placed in sheet.steps:
        step = placed.step
        if step.again:
            full = earlier.get(step.again)
            if full is None or full.text != step.text or full.again:
                yield Fault(placed.where, f'"{step.again}" is no earlier step that says the same in full')
            if not any(check.blanks for check in step.checks):
                yield Fault(placed.where, "a step in short has no place to write what was found")
            asked = words_of_step(step, "X").lower()
            places = " ".join(blank.label for check in step.checks for blank in check.blanks)
            told = " ".join([*(words_of(check.text, "X") for check in step.checks), places]).lower()
            if (asked, told) not in lacking:
                lacking[asked, told] = _untold(asked, told)
            yield from (Fault(placed.where, f"in short this step does not tell: {name}") for name in lacking[asked, told])
        earlier[step.number] = step


def _untold(asked: str, told: str) -> tuple[str, ...]:
    return tuple(name for name, wanted, said in _STATES if wanted.search(asked) and not said.search(told))
