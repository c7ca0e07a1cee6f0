"""A sheet that makes nothing asks for no stock: a bar that exists is all that its stock file must name."""

from pathlib import Path

import pytest

from shops import shop
from tailtrue.advise import make_procedure
from tailtrue.errors import FactsWrong

NO_COLLARS = ("stock", r"\[\[stock\.collar_bars\]\].*?\n\n", "")
NO_BARS = ("stock", r"\[\[stock\.bars\]\].*?\n\n", "")
NAMED = 'bar_on_hand = "test bar 2, rack A"\n'


def _asked(job: Path) -> set[str]:
    with pytest.raises(FactsWrong) as wrong:
        make_procedure(job)
    return {one.said for one in wrong.value.problems}


@pytest.mark.parametrize("job", ["use-bar", "use-bar-by-indicator", "re-certify", "taper-and-return", "height-and-droop"])
def test_a_bar_that_exists_needs_no_other_stock(tmp_path: Path, job: str) -> None:
    sheet = make_procedure(shop(tmp_path, "fernhill", NO_BARS, NO_COLLARS).with_name(f"{job}.toml"))
    assert not {one.id for one in sheet.needs} & {"bar-stock", "collar-stock"}


def test_a_bar_put_right_needs_no_other_stock(tmp_path: Path) -> None:
    other = ("rework", r"\A.*\Z", (
        '[job]\ndo = "rework"\nrework_of = "use-bar"\nrework_sheet = "FM-L2-006"\nfound = "centre-bruised"\nfound_collars_on = true\nshop = "Fernhill Makerspace"\ndate = 2026-11-24\nnumber = "FM-L2-030"\n'
        'revision = "1"\nauthor = "lathe steward"\nlathe = "lathe.toml"\ncrib = "crib.toml"\nstock = "stock.toml"\nplace = "shared"\n'
        'operator = "trained"\nminor = false\nalone = false\nsupervised = true\naccuracy = "good"\n' + NAMED))  # fmt: skip
    assert make_procedure(shop(tmp_path, "fernhill", NO_BARS, NO_COLLARS, other).with_name("rework.toml")).phases


def test_nothing_is_cut_for_the_height_and_no_stock_file_is_asked_for(tmp_path: Path) -> None:
    bare = ("height-and-droop", 'stock = "stock.toml"\n', "")
    assert make_procedure(shop(tmp_path, "fernhill", bare).with_name("height-and-droop.toml")).phases


def test_the_test_of_the_headstock_asks_for_a_bar_and_for_no_collars(tmp_path: Path) -> None:
    no_collars = ("test-pieces", r"\[\[stock\.collar_bars\]\].*", "")
    assert make_procedure(shop(tmp_path / "a", "fernhill", no_collars).with_name("chucked-bar-test.toml")).phases
    none = ("test-pieces", r"\[\[stock\.bars\]\].*?\n\n", "")
    assert "bars" in _asked(shop(tmp_path / "b", "fernhill", none).with_name("chucked-bar-test.toml"))


@pytest.mark.parametrize("job", ["job", "make-bar"])
def test_a_sheet_that_makes_a_bar_asks_for_both(tmp_path: Path, job: str) -> None:
    asked = _asked(shop(tmp_path, "fernhill", NO_BARS, NO_COLLARS).with_name(f"{job}.toml"))
    assert {"bars", "stock for the collars"} <= asked


def test_a_bar_that_is_used_and_not_named_is_taken_as_this_job_would_make_it(tmp_path: Path) -> None:
    unnamed = ("use-bar", 'bar_on_hand = "test bar 2, rack A"', "")
    asked = _asked(shop(tmp_path, "fernhill", NO_BARS, NO_COLLARS, unnamed).with_name("use-bar.toml"))
    assert {"bars", "stock for the collars"} <= asked
