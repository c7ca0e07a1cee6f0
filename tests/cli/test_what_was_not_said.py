"""A fact that keeps somebody from harm and that nobody said is told; it is not passed over in silence."""

import json
import shutil
from pathlib import Path

import pytest

from shops import EXAMPLES, tailtrue

ASKED = "Supply cut by its switch while turning"


def shop_that_says(tmp_path: Path, shop: str, line: str) -> Path:
    """The example with another line, or none, in place of what is said of the no-volt release."""
    shutil.copytree(EXAMPLES / shop, tmp_path / shop)
    lathe = tmp_path / shop / "lathe.toml"
    lines = lathe.read_text(encoding="utf-8").splitlines()
    kept = [line if one.startswith("no_volt_release") else one for one in lines]
    assert any(one.startswith("no_volt_release") for one in lines)
    lathe.write_text("\n".join(kept) + "\n", encoding="utf-8")
    return tmp_path / shop / "job.toml"


@pytest.mark.parametrize("shop", ["fernhill", "quarry-road"])
def test_check_names_what_was_not_said_and_what_asks_for_it(tmp_path: Path, shop: str) -> None:
    done = tailtrue("check", shop_that_says(tmp_path, shop, ""))
    assert done.returncode == 0
    said = next(line for line in done.stdout.splitlines() if "Not said" in line)
    assert "attention" in said
    assert "no-volt release" in said
    assert "no_volt_release in the lathe file" in said
    assert ASKED in said


def test_make_tells_it_and_prints_it_on_the_sheet(tmp_path: Path) -> None:
    job = shop_that_says(tmp_path, "quarry-road", "")
    done = tailtrue("make", job, "--out", tmp_path / "out", "--format", "md", "--only", "procedure,safety")
    assert done.returncode == 0
    assert "attention: Not said: no-volt release" in done.stdout
    assert "Not said: no-volt release" in (tmp_path / "out" / "procedure.md").read_text(encoding="utf-8")
    assert ASKED in (tmp_path / "out" / "safety.md").read_text(encoding="utf-8")


def test_an_answer_is_no_silence(tmp_path: Path) -> None:
    done = tailtrue("check", shop_that_says(tmp_path / "yes", "fernhill", "no_volt_release = true"), "--json")
    assert done.returncode == 0
    assert [one for one in json.loads(done.stdout)["findings"] if "Not said" in one["text"]] == []
    done = tailtrue("check", shop_that_says(tmp_path / "no", "fernhill", "no_volt_release = false"))
    assert done.returncode == 5
    assert "Not said" not in done.stderr
