"""The runs shown where the documentation tells of errors are those of the program."""

import re
from pathlib import Path

import pytest
from typer.testing import CliRunner

from shops import ROOT, shop
from tailtrue.cli import app

PAGE = (ROOT / "docs" / "when-it-refuses.md").read_text(encoding="utf-8")
RUNS = re.findall(
    r"^```\n\$ sed -i 's/(.+?[^\\])/(.+?[^\\])/' (\w+\.toml)\n\$ tailtrue check job\.toml\n(.*?)^```$", PAGE,
    flags=re.MULTILINE | re.DOTALL,
)  # fmt: skip


def test_the_page_shows_a_wrong_fact_and_a_refusal() -> None:
    assert len(RUNS) == PAGE.count("$ tailtrue") == 2


@pytest.mark.parametrize(("old", "new", "file", "shown"), RUNS, ids=[run[2] for run in RUNS])
def test_a_run_of_the_page_is_real(old: str, new: str, file: str, shown: str, tmp_path: Path) -> None:
    job = shop(tmp_path, "quarry-road")
    path = job.with_name(file)
    text = path.read_text(encoding="utf-8")
    changed, count = re.subn(old.replace("\\/", "/"), new.replace("\\/", "/"), text, flags=re.MULTILINE)
    assert count == 1
    path.write_text(changed, encoding="utf-8")
    done = CliRunner().invoke(app, ["check", str(job)])
    assert done.exit_code in (4, 5)
    assert done.stderr.replace("\xa0", " ").strip() == shown.strip()
