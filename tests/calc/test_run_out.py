"""Run-out and clean-up: bounds, and an uneven cut followed pass by pass."""

from collections.abc import Callable
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from uncertainties import ufloat

from spoilt import each_is_refused, spoilt
from tailtrue.calc.run_out import cleanup_stock, collar_eccentricity, copied_eccentricity, eccentricity
from tailtrue.calc.validity import OutOfRange

_GOOD: dict[Callable[..., Any], dict[str, Any]] = {
    eccentricity: {"run_out_mm": 0.1},
    collar_eccentricity: {"bore_run_out_mm": 0.1, "diametral_clearance_mm": 0.1, "centre_eccentricity_mm": 0.025},
    cleanup_stock: {"eccentricity_mm": 0.125, "least_depth_mm": 0.1},
    copied_eccentricity: {"eccentricity_mm": 0.125, "cut_n_per_mm": 62, "machine_n_per_mm": 10000, "passes": 2},
}


@pytest.mark.parametrize(("formula", "calls"), spoilt(_GOOD))
def test_what_is_no_number_is_refused(formula: Callable[..., Any], calls: list[dict[str, Any]]) -> None:
    each_is_refused(formula, calls)


@pytest.mark.parametrize(
    ("formula", "change", "says"),
    [
        (eccentricity, {"run_out_mm": -0.1}, "run-out is -0.1 mm"),
        (collar_eccentricity, {"bore_run_out_mm": -0.1}, "run-out is -0.1 mm"),
        (collar_eccentricity, {"diametral_clearance_mm": -0.1}, "diametral clearance is -0.1 mm"),
        (collar_eccentricity, {"centre_eccentricity_mm": -0.1}, "eccentricity of the centre holes is -0.1 mm"),
        (cleanup_stock, {"eccentricity_mm": -0.1}, "eccentricity is -0.1 mm"),
        (cleanup_stock, {"least_depth_mm": 0}, "least depth per side is 0 mm"),
        (copied_eccentricity, {"eccentricity_mm": -0.1}, "eccentricity is -0.1 mm"),
        (copied_eccentricity, {"cut_n_per_mm": 0}, "stiffness of the cut is 0 N/mm"),
        (copied_eccentricity, {"machine_n_per_mm": 0}, "stiffness of the machine is 0 N/mm"),
        (copied_eccentricity, {"cut_n_per_mm": 100400}, "stiffness of the cut over that of the machine is 10.04"),
        (copied_eccentricity, {"passes": 0}, "number of passes is 0"),
        (copied_eccentricity, {"passes": 1.5}, "number of passes is 1.5; it must be a whole number"),
    ],
)
def test_beyond_its_bounds_it_refuses_and_says_what_was_read(
    formula: Callable[..., Any], change: dict[str, Any], says: str
) -> None:
    with pytest.raises(OutOfRange) as refused:
        formula(**(_GOOD[formula] | change))
    assert says in str(refused.value)


def test_true_work_needs_no_more_than_the_chip() -> None:
    assert eccentricity(0) == collar_eccentricity(0, 0, 0) == 0
    assert cleanup_stock(0, 0.1) == pytest.approx(0.2)
    assert copied_eccentricity(0, 62, 10000, 1) == 0


def test_each_part_of_the_eccentricity_counts_once() -> None:
    run_out, gap, centre = ufloat(0.1, 0.01), ufloat(0.1, 0.01), ufloat(0.025, 0.01)
    whole = run_out / 2 + gap / 2 + centre
    assert collar_eccentricity(0.1, 0.1, 0.025) == pytest.approx(whole.nominal_value)
    assert [whole.derivatives[part] for part in (run_out, gap, centre)] == [0.5, 0.5, 1]
    for name, slope in (("bore_run_out_mm", 0.5), ("diametral_clearance_mm", 0.5), ("centre_eccentricity_mm", 1)):
        moved = _GOOD[collar_eccentricity] | {name: _GOOD[collar_eccentricity][name] + 1e-3}
        assert (collar_eccentricity(**moved) - 0.125) / 1e-3 == pytest.approx(slope)


@given(error=st.floats(0.001, 1), cut=st.floats(10, 5000), machine=st.floats(1000, 50000), passes=st.integers(1, 4))
def test_each_pass_balances_the_push_of_the_cut_against_the_give_of_the_machine(
    error: float, cut: float, machine: float, passes: int
) -> None:
    """The tool is pushed off by y where the depth is error - y too much: cut (error - y) = machine y."""
    left = error
    for _ in range(passes):
        left = cut * left / (machine + cut)
    assert copied_eccentricity(error, cut, machine, passes) == pytest.approx(left)
    assert copied_eccentricity(error, cut, machine, passes + 1) < left
