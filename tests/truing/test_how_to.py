"""The how-to at the lathe: its example can be used, its options are there."""

import re
from pathlib import Path

from typer.main import get_command

from tailtrue.cli import app
from tailtrue.log.typed import read_typed
from tailtrue.truing.keep import judged_record

from .rounds import METRIC

PAGE = (Path(__file__).parents[2] / "docs" / "at-the-lathe.md").read_text(encoding="utf-8")


def test_the_visit_file_of_the_how_to_makes_a_record(tmp_path: Path) -> None:
    (example,) = re.findall(r"```toml\n(.*?)```", PAGE, re.DOTALL)
    path = tmp_path / "visit.toml"
    path.write_text(example, encoding="utf-8")
    assert judged_record(METRIC, read_typed(path, system=""), "2026-03-02").judgement.verdict == "outside"


def test_every_option_of_the_how_to_is_one_of_its_commands() -> None:
    commands = get_command(app).commands  # type: ignore[attr-defined]
    told = [commands[name] for name in ("correct", "true", "clamp-test", "reverse-test")]
    told.append(commands["log"].commands["list"])
    known = {word for command in told for one in command.params for word in one.opts}
    assert set(re.findall(r"--[a-z-]+", PAGE.replace("| --- ", ""))) - {"---"} <= known
