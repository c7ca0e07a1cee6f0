"""Example shops copied to a folder and changed there, for tests that run whole jobs."""

import re
import shutil
import subprocess
import sys
from pathlib import Path

from warm import warm

ROOT = Path(__file__).parents[1]
EXAMPLES = ROOT / "docs" / "examples"
_NO_FOUR_JAW = ("lathe", r'\[\[lathe.chucks\]\]\nlabel = "200 mm four-jaw chuck".*?condition = "good"\n', "")
_LONG_BAR = ("crib", 'reach = "65 mm"', 'reach = "90 mm"')
FACEPLATE = {
    "stub_metal": '"steel"', "stub_diameter": '"34 mm"', "stub_least": '"20 mm"', "stub_length": '"40 mm"',
    "faceplate_diameter": '"200 mm"', "faceplate_slots": "4", "strap_count": "4", "strap_screw": '"M10"',
    "strap_to_work": '"18 mm"', "strap_to_heel": '"30 mm"', "strap_height": '"25 mm"', "packing_height": '"20 mm"',
}  # fmt: skip


def shop(folder: Path, name: str, *changes: tuple[str, str, str]) -> Path:
    """A copy of an example shop with changes (file, pattern, replacement); the job file of it.

    A pattern that is not found is a fault of the test.
    """
    copy = folder / name
    shutil.copytree(EXAMPLES / name, copy)
    for file, pattern, replacement in changes:
        path = copy / f"{file}.toml"
        text, count = re.subn(pattern, replacement, path.read_text(encoding="utf-8"), flags=re.MULTILINE | re.DOTALL)
        assert count, f"{pattern!r} is not in {file}.toml"
        path.write_text(text, encoding="utf-8")
    return copy / "job.toml"


def kept_bores(folder: Path, *changes: tuple[str, str, str]) -> Path:
    """A job with ready-bored blanks whose bores fit the bar as they are, and a stub mandrel in the crib."""
    blanks = (
        '[[stock.bored_blanks]]\nlabel = "bored blanks"\nmaterial = "aluminium-6082-t6"\ndiameter = "70 mm"\n'
        'bore = "25.06 mm"\nwidth = "30 mm"\ncount = 2\n'
    )
    return shop(folder, "tannery-lane", ("stock", r"\[\[stock\.collar_bars\]\].*", blanks), *changes).with_name(
        "job-stub.toml"
    )


def clamped(folder: Path, source: str, *changes: tuple[str, str, str], left_out: str = "", **other: str) -> Path:
    """A job without an independent chuck, with a faceplate, straps, packing and a stub mandrel in the crib."""
    said = "\n".join(
        f"{name} = {value}" for name, value in (FACEPLATE | other).items() if not name.startswith(left_out or "-")
    )
    crib = ("crib", "compressed_air = true", f"compressed_air = true\n{said}")
    return shop(folder, "fernhill", _NO_FOUR_JAW, _LONG_BAR, crib, *changes).with_name(f"job-{source}.toml")


def tailtrue(*words: object) -> subprocess.CompletedProcess[str]:
    """The command as its user runs it, in a process of its own."""
    return warm().run(tuple(map(str, words)), ROOT)


def cold(*words: object) -> subprocess.CompletedProcess[str]:
    """The same with a Python of its own, as the first command of a day is."""
    return subprocess.run(
        [sys.executable, "-m", "tailtrue", *map(str, words)], capture_output=True, text=True, check=False, cwd=ROOT
    )
