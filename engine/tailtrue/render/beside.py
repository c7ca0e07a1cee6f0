"""Whether the reason and the tools of a step stand beside what is done: where that is shorter, reckoned by letters."""

from math import ceil

from tailtrue.procedure import Step
from tailtrue.render.words import say

# Letters in a line: of what is done over the whole width, beside tools, beside checks; of the small print there.
_WIDE, _BY_TOOLS, _BY_CHECKS = 95, 62, 50
_SMALL_WIDE, _SMALL_BY_TOOLS, _SMALL_BY_CHECKS = 110, 36, 46
# Heights in mm: a line of what is done, of the small print, of a check; a place to write; the frame of a check.
_DONE, _SMALL, _CHECK, _PLACE, _FRAME = 4.2, 3.6, 4.3, 7.5, 2.5
_CHECK_LETTERS = 40
_GAIN = 1.0


def reasons_beside(step: Step, tools: str) -> bool:
    """Whether a step is shorter with its reason and tools, said in `tools`, on the right."""
    lines = [say(line, "metric") for line in step.text]
    small = say(step.why, "metric") + tools
    if step.checks:
        done = _DONE * _lines(lines, _BY_CHECKS)
        said = [say(one.text, "metric") for one in step.checks]
        places = sum(bool(one.blanks) for one in step.checks)
        checks = _FRAME * len(said) + _CHECK * _lines(said, _CHECK_LETTERS) + _PLACE * places
        below = max(done, checks) + _SMALL * _lines([small], _SMALL_WIDE)
        beside = max(done, checks + _SMALL * _lines([small], _SMALL_BY_CHECKS))
    else:
        below = _DONE * _lines(lines, _WIDE) + _SMALL * _lines([small], _SMALL_WIDE)
        beside = max(_DONE * _lines(lines, _BY_TOOLS), _SMALL * _lines([small], _SMALL_BY_TOOLS))
    return beside + _GAIN < below


def _lines(texts: list[str], letters: int) -> int:
    return sum(ceil(len(text) / letters) for text in texts)
