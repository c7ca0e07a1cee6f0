"""A drill whose taper is smaller than that of the quill needs a sleeve, and a crib that has none cannot hold it."""

import pytest

from tailtrue.computed.drills import Drill, fits_tailstock, needs_sleeve


@pytest.mark.parametrize(
    ("shank", "sleeves", "held"),
    [("MT2", True, True), ("MT2", None, True), ("MT2", False, False), ("MT3", False, True), ("MT4", True, False)],
)
def test_the_quill_holds_its_own_taper_and_a_smaller_one_in_a_sleeve(shank: str, sleeves: bool | None, held: bool) -> None:
    assert fits_tailstock(Drill(23.0, "23 mm", shank), 13.0, "MT3", sleeves) is held


def test_only_a_smaller_taper_needs_a_sleeve() -> None:
    found = {shank: needs_sleeve(shank, "MT3") for shank in ("MT2", "MT3", "MT4", "straight", "reduced")}
    assert found == {"MT2": True, "MT3": False, "MT4": False, "straight": False, "reduced": False}
