"""Papers of an earlier run that stay in the folder are named, after a refusal and after a success; none is deleted."""

import json
import shutil
from pathlib import Path

import pytest

from shops import EXAMPLES, tailtrue


@pytest.fixture
def shop(tmp_path: Path) -> Path:
    """A shop with its papers made."""
    shutil.copytree(EXAMPLES / "quarry-road", tmp_path / "shop")
    done = tailtrue("make", tmp_path / "shop" / "job.toml", "--out", tmp_path / "out")
    assert done.returncode == 0
    assert "earlier run" not in done.stdout
    return tmp_path / "shop"


def changed(path: Path, old: str, new: str) -> None:
    text = path.read_text(encoding="utf-8")
    assert old in text
    path.write_text(text.replace(old, new, 1), encoding="utf-8")


def checksum(out: Path) -> str:
    return str(json.loads((out / "procedure.json").read_text(encoding="utf-8"))["title"]["checksum"])


def test_a_refusal_names_the_papers_that_still_lie_there(shop: Path, tmp_path: Path) -> None:
    out = tmp_path / "out"
    before = sorted(path.name for path in out.iterdir())
    changed(shop / "job.toml", "minor = false", "minor = true")
    done = tailtrue("make", shop / "job.toml", "--out", out)
    assert done.returncode == 5
    assert f"{out} still holds papers of an earlier run, checksum {checksum(out)}: procedure.html" in done.stderr
    assert "Do not use them." in done.stderr
    assert sorted(path.name for path in out.iterdir()) == before


def test_facts_that_are_wrong_name_them_too(shop: Path, tmp_path: Path) -> None:
    changed(shop / "job.toml", "minor = false", "minor = perhaps")
    done = tailtrue("make", shop / "job.toml", "--out", tmp_path / "out")
    assert done.returncode == 4
    assert "papers of an earlier run" in done.stderr


def test_pages_that_were_not_made_again_are_named_after_a_success(shop: Path, tmp_path: Path) -> None:
    out = tmp_path / "out"
    old = checksum(out)
    changed(shop / "job.toml", 'accuracy = "general"', 'accuracy = "good"')
    done = tailtrue("make", shop / "job.toml", "--out", out, "--only", "card", "--format", "md")
    assert done.returncode == 0, done.stderr
    told = next(line for line in done.stdout.splitlines() if "earlier run" in line)
    assert f"checksum {old}: procedure.html" in told
    assert "card.html" in told
    assert "card.md" not in told


def test_papers_of_the_same_job_in_another_format_are_no_earlier_run(shop: Path, tmp_path: Path) -> None:
    done = tailtrue("make", shop / "job.toml", "--out", tmp_path / "out", "--only", "card", "--format", "md")
    assert "earlier run" not in done.stdout


def test_an_empty_folder_is_not_spoken_of(tmp_path: Path) -> None:
    shutil.copytree(EXAMPLES / "quarry-road", tmp_path / "shop")
    changed(tmp_path / "shop" / "job.toml", "minor = false", "minor = true")
    done = tailtrue("make", tmp_path / "shop" / "job.toml", "--out", tmp_path / "out")
    assert done.returncode == 5
    assert "earlier" not in done.stderr
