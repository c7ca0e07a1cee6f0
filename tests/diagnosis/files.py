"""Files of tests written out, read and diagnosed on the plain lathe of these tests."""

from pathlib import Path
from typing import Any

from diagnosis.planted import setup
from tailtrue.diagnosis.answer import Diagnosis, answer
from tailtrue.diagnosis.knowing import known
from tailtrue.diagnosis.saying import Teller
from tailtrue.diagnosis.tests_file import TestsWrong, read_tests
from tailtrue.render.words import say

CENTRES = """
[between_centres]
head = ["{head} mm", "{head} mm"]
tail = ["{tail} mm", "{tail} mm"]
"""
CHUCKED = """
[chucked_bar]
stations = ["20 mm", "120 mm"]
diameters = ["40.000 mm", "{free} mm"]
stick_out = "{out} mm"
bar_diameter = "60 mm"
"""
LEVEL = """
[level]
stations = ["0 mm", "500 mm"]
readings = ["0.00 mm/m", "{far} mm/m"]
plus_is = "{plus}"
"""
SWEEP = """
[sweep]
front = "0 mm"
top = "{top} mm"
rear = "{rear} mm"
bottom = "{bottom} mm"
sag = "0.006 mm"
where = "outside"
"""


def centres(head: str = "69.600", tail: str = "69.600") -> str:
    return CENTRES.format(head=head, tail=tail)


def chucked(free: str = "40.000", out: int = 130) -> str:
    return CHUCKED.format(free=free, out=out)


def level(far: str = "0.00", plus: str = "front low") -> str:
    return LEVEL.format(far=far, plus=plus)


def sweep(top: str = "0.006", rear: str = "0.000", bottom: str = "-0.006") -> str:
    return SWEEP.format(top=top, rear=rear, bottom=bottom)


def diagnosed(folder: Path, text: str, side: str = "front", **changes: Any) -> Diagnosis:
    path = folder / "tests.toml"
    path.write_text(text, encoding="utf-8")
    return answer(read_tests(path, known()), setup(side, **changes), known())


def told(found: Diagnosis, part: str = "") -> str:
    """What is said, in one line a sentence group; non-breaking blanks as plain ones."""
    lines = (line for line in Teller(found).lines() if part in ("", line.part))
    return "\n".join(say(line.text, found.setup.dials) for line in lines).replace("\u00a0", " ")


def faults(folder: Path, text: str, **changes: Any) -> list[str]:
    """Everything that is wrong with a file, as one reads it."""
    try:
        diagnosed(folder, text, **changes)
    except TestsWrong as wrong:
        return [f"{one.where}: {one.said}: {one.wrong}: {one.do}" for one in wrong.problems]
    return []


def again(kind: str, tail: str, head: str = "69.600") -> str:
    return f'[{kind}]\nhead = ["{head} mm", "{head} mm"]\ntail = ["{tail} mm", "{tail} mm"]\n'


THREE = centres(tail="{tail}").rstrip() + '\nmiddle = ["{middle} mm", "{middle} mm"]\nmiddle_station = "150 mm"\n'
CLAMPED = """
[clamping]
released = ["0 mm", "0 mm", "0 mm", "0 mm", "0 mm"]
clamped = [{clamped}]
"""
