"""Drills of a set that is told as first, step and last: every one of them, marked as it is stamped."""

from fractions import Fraction

import pytest

from tailtrue.advise import knowledge
from tailtrue.computed.drills import drills_of
from tailtrue.shop import _sizes_of

SETS = knowledge().tables["tools/drill_sets"]


def _marked(name: str) -> dict[str, float]:
    return {drill.marked: drill.size_mm for drill in drills_of([{"set": name, "shank": "straight"}], SETS)}


@pytest.mark.parametrize(("name", "first", "last"), [("metric-1-13-by-0.5", 1, 13), ("metric-13.5-25-by-0.5", 13.5, 25)])
def test_a_metric_set_goes_up_by_halves(name: str, first: float, last: float) -> None:
    sizes = [half / 2 for half in range(round(2 * first), round(2 * last) + 1)]
    assert _marked(name) == {f"{size:g} mm": size for size in sizes}


@pytest.mark.parametrize(("name", "first", "last"), [("inch-1/64-1/2", 1, 32), ("inch-33/64-1", 33, 64)])
def test_an_inch_set_goes_up_by_sixty_fourths_in_lowest_terms(name: str, first: int, last: int) -> None:
    sizes = {f"{Fraction(part, 64)} in": part * 25.4 / 64 for part in range(first, last + 1)}
    found = _marked(name)
    assert list(found) == list(sizes)
    for marked, size in sizes.items():
        assert found[marked] == pytest.approx(size, abs=6e-5), marked


def test_the_inspection_reads_the_same_sizes_for_itself() -> None:
    for name in {row.text("set") for row in SETS.rows}:
        assert set(_sizes_of(knowledge(), name)) == set(_marked(name).values()), name
