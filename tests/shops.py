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


def tailtrue(*words: object) -> subprocess.CompletedProcess[str]:
    """The command as its user runs it, in a process of its own."""
    return subprocess.run(
        [sys.executable, "-m", "tailtrue", *map(str, words)], capture_output=True, text=True, check=False, cwd=ROOT
    )
