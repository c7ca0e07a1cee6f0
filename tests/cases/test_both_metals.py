"""A bond holds two metals: the weaker of them counts in its strength, the slower in its wait."""

from pathlib import Path

import pytest

from shops import shop
from tailtrue.advise import Advice, advise

_BAR = r'(\[\[stock\.bars\]\].*?material = ")[^"]*'
_COLLARS = r'(\[\[stock\.collar_bars\]\].*?material = ")[^"]*'


def _job(folder: Path, bar: str, collars: str, activator: str = "false") -> Advice:
    return advise(
        shop(
            folder, "fernhill",
            ("stock", _BAR, rf"\g<1>{bar}"), ("stock", _COLLARS, rf"\g<1>{collars}"),
            ("crib", "activator = false", f"activator = {activator}"),
        )
    )  # fmt: skip


def _stops(judged: Advice) -> set[str]:
    return {found.id for found in judged.refused}


@pytest.mark.parametrize(
    ("bar", "collars"),
    [
        ("steel-low-carbon-cold-drawn", "aluminium-6082-t6"),
        ("stainless-304", "brass-free-cutting"),
        ("stainless-304", "iron-grey"),
        ("stainless-303", "bronze-bearing"),
    ],
)
def test_one_metal_that_halves_the_bond_halves_it_whichever_it_is(tmp_path: Path, bar: str, collars: str) -> None:
    """Reckoned strength of stainless and aluminium: half of that on steel (memory)."""
    plain = _job(tmp_path / "plain", "steel-low-carbon-cold-drawn", "iron-grey").case.value("joint.shear")
    assert _job(tmp_path / "other", bar, collars).case.value("joint.shear") == pytest.approx(plain / 2)


def test_iron_collars_on_a_stainless_bar_are_refused_where_a_catch_would_turn_them(tmp_path: Path) -> None:
    judged = _job(tmp_path, "stainless-304", "iron-grey")
    assert judged.case.value("joint.retaining_compound.catch_margin") < 1
    assert judged.case.value("joint.method") != "retaining-compound"
    assert "bond-too-weak" in _stops(judged)


def test_a_metal_that_slows_the_cure_doubles_the_wait_and_an_activator_does_not(tmp_path: Path) -> None:
    """Common practice: an activator, or twice the time."""
    hours = {
        name: _job(tmp_path / name, bar, "brass-free-cutting", activator).case.value("joint.cure_wait") / 3600
        for name, bar, activator in (
            ("plain", "steel-low-carbon-cold-drawn", "false"),
            ("stainless", "stainless-304", "false"),
            ("primed", "stainless-304", "true"),
        )
    }
    assert hours == {"plain": 24, "stainless": 48, "primed": 24}


def test_two_metals_that_do_not_start_the_cure_ask_for_an_activator(tmp_path: Path) -> None:
    """Common practice: where neither metal is active, a primer starts the cure."""
    assert "nothing-starts-the-cure" in _stops(_job(tmp_path / "bare", "stainless-304", "aluminium-6082-t6"))
    assert "nothing-starts-the-cure" not in _stops(_job(tmp_path / "primed", "stainless-304", "aluminium-6082-t6", "true"))
    assert "nothing-starts-the-cure" not in _stops(
        _job(tmp_path / "plain", "steel-low-carbon-cold-drawn", "aluminium-6082-t6")
    )
