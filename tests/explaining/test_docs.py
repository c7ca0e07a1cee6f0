"""The runs shown in the documentation are those of the program."""

import re
import shlex
from collections.abc import Iterator

import pytest
from typer.testing import CliRunner

from shops import ROOT
from tailtrue.cli import app

PAGE = (ROOT / "docs" / "explaining.md").read_text(encoding="utf-8")
RUNS = re.findall(r"^```\n\$ tailtrue ([^\n]+)\n(.*?)^```$", PAGE, flags=re.MULTILINE | re.DOTALL)
CUT = "[...]"


def pieces(shown: str) -> Iterator[str]:
    return (piece.strip("\n") for piece in shown.split(CUT) if piece.strip("\n"))


def test_the_page_shows_each_command() -> None:
    assert {command.split()[0] for command, _ in RUNS} == {"why", "why-not", "compare"}


@pytest.mark.parametrize(("command", "shown"), RUNS, ids=[command for command, _ in RUNS])
def test_a_run_of_the_page_is_real(command: str, shown: str, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(ROOT)
    done = CliRunner().invoke(app, shlex.split(command))
    assert done.exit_code == 0
    printed = done.stdout.replace("\xa0", " ")
    at = 0
    for piece in pieces(shown):
        at = printed.find(piece, at)
        assert at >= 0, piece
        at += len(piece)
    if CUT not in shown:
        assert printed.strip() == shown.strip()
