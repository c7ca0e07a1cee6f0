"""Shops that no example covers, made from an example by a word or two: what they ask for is printed."""

import re
from pathlib import Path

import pytest

from shops import EXAMPLES, tailtrue


def a_shop(where: Path, example: str, changes: dict[str, tuple[str, str]]) -> Path:
    """The files of an example, one place of each named file said in other words."""
    for path in (EXAMPLES / example).glob("*.toml"):
        text = path.read_text(encoding="utf-8")
        if path.name in changes:
            pattern, said = changes[path.name]
            text, count = re.subn(pattern, said, text)
            assert count == 1, path.name
        (where / path.name).write_text(text, encoding="utf-8")
    return where


@pytest.mark.parametrize("job", ["height-and-droop", "re-certify", "use-bar"])
def test_a_tailstock_that_cannot_be_set_over_has_its_papers(tmp_path: Path, job: str) -> None:
    shop = a_shop(tmp_path, "fernhill", {"lathe.toml": (r'(?m)^set_over = ".*"$', 'set_over = "none"')})
    done = tailtrue("check", shop / f"{job}.toml")
    assert done.returncode == 0, done.stderr


def test_a_shrunk_bar_is_measured_cool_in_an_inch_shop_too(tmp_path: Path) -> None:
    shop = a_shop(
        tmp_path, "quarry-road", {
            "stock.toml": (r'(?m)^fixed_by = ".*"$', 'fixed_by = "shrink-fit"'),
            "crib.toml": (r"(?m)^\[crib\]$", "[crib]\ncontact_thermometer = true"),
        },
    )  # fmt: skip
    done = tailtrue("make", shop / "use-bar.toml", "--out", tmp_path / "out", "--only", "procedure,sop", "--format", "md")
    assert done.returncode == 0, done.stderr
    sop = (tmp_path / "out" / "sop.md").read_text(encoding="utf-8")
    assert re.search(r"Warmth of bar and collars at a cut.*as cool as the shop", sop)


@pytest.mark.parametrize(("job", "status"), [("height-and-droop", 0), ("chucked-bar-test", 5)])
def test_a_lathe_that_starts_by_itself_may_be_read_standing_and_not_turned(tmp_path: Path, job: str, status: int) -> None:
    shop = a_shop(tmp_path, "fernhill", {"lathe.toml": (r"(?m)^no_volt_release = true$", "no_volt_release = false")})
    done = tailtrue("check", shop / f"{job}.toml")
    assert done.returncode == status, done.stderr


def test_a_bar_that_was_measured_gets_no_sheet_with_two_tables_of_moves(tmp_path: Path) -> None:
    said = '[job]\nbar_between_points = "327 mm"\nhead_from_point = "41.6 mm"\ntail_from_point = "285.8 mm"'
    shop = a_shop(tmp_path, "fernhill", {"use-bar.toml": (r"(?m)^\[job\]$", said)})
    refused = tailtrue("check", shop / "use-bar.toml")
    assert refused.returncode == 5
    assert "bar-measured-and-drawn-as-planned" in refused.stderr
    paper = tailtrue("record", shop / "use-bar.toml", "--out", tmp_path / "out")
    assert paper.returncode == 0, paper.stderr
