"""Example shops copied to a folder and changed there, for tests that run whole jobs."""

import re
import shutil
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).parents[1]
EXAMPLES = ROOT / "docs" / "examples"


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


def tailtrue(*words: object) -> subprocess.CompletedProcess[str]:
    """The command as its user runs it, in a process of its own."""
    return subprocess.run(
        [sys.executable, "-m", "tailtrue", *map(str, words)], capture_output=True, text=True, check=False, cwd=ROOT
    )
