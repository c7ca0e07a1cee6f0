"""Worked examples of the GUM (JCGM 100), and the budget of two collars by simulation after JCGM 101.

Figures of the GUM are from memory: clause 4.4.3, examples H.1 (end gauge) and H.2 (resistance and reactance).
"""

from math import cos, hypot, sin, sqrt

import numpy as np
import pytest

from tailtrue.calc.budget import (
    Component,
    Correlation,
    combined_uncertainty,
    doubt_freedom,
    effective_freedom,
    expanded_uncertainty,
    standard_uncertainty,
)
from tailtrue.calc.conformity import acceptance_limit, rejection_limit
from tailtrue.calc.difference_budget import difference_parts, move_uncertainty
from tailtrue.calc.readings import Scatter, pooled_deviation, reading_summary, repeatability
from tailtrue.calc.student import two_sided_factor
from tailtrue.calc.uncertainty import expanded

_LENGTH_MM = 50.0
_EXPANSION_PER_K = 11.5e-6
_NM = 1e6  # in a mm


def _end_gauge() -> list[Component]:
    """Table H.1, from the data of H.1.2 and H.1.3, in nm."""
    comparator = [
        Component("mean of five", 13 / sqrt(5), 1, 24),
        Component("random", 10 / two_sided_factor(0.95, 5), 1, 5),
        Component("systematic", standard_uncertainty(20, "normal", 3), 1, doubt_freedom(0.25)),
    ]
    apart = standard_uncertainty(1e-6, "rectangular")
    warmer = standard_uncertainty(0.05, "rectangular")
    return [
        Component("reference", standard_uncertainty(75, "normal", 3), 1, 18),
        Component("comparator", combined_uncertainty(comparator), 1, effective_freedom(comparator)),
        Component("difference of expansion", apart, _LENGTH_MM * _NM * -0.1, doubt_freedom(0.1)),
        Component("difference of temperature", warmer, -_LENGTH_MM * _NM * _EXPANSION_PER_K, doubt_freedom(0.5)),
    ]


def test_end_gauge_components_as_printed_in_table_h1() -> None:
    found = {part.name: abs(part.sensitivity) * part.standard_uncertainty_mm for part in _end_gauge()}
    printed = {"reference": 25, "comparator": 9.7, "difference of expansion": 2.9, "difference of temperature": 16.6}
    assert found == pytest.approx(printed, abs=0.05)


def test_end_gauge_as_printed_in_h1_4_to_h1_6() -> None:
    found = expanded_uncertainty(_end_gauge(), 0.99)
    assert found.standard_uncertainty_mm == pytest.approx(32, abs=0.5)
    assert found.standard_uncertainty_mm**2 == pytest.approx(1002, abs=3)
    assert found.degrees_of_freedom == pytest.approx(16.7, abs=0.1)
    assert found.coverage_factor == pytest.approx(2.92, abs=0.005)
    assert found.expanded_mm == pytest.approx(93, abs=0.6)


def test_end_gauge_with_the_terms_of_second_order_of_h1_7() -> None:
    warm = hypot(0.2, standard_uncertainty(0.5, "U-shaped"))  # mean of the room, and its swing
    expansion = _LENGTH_MM * _NM * standard_uncertainty(1e-6, "rectangular") * warm
    coefficient = _LENGTH_MM * _NM * standard_uncertainty(2e-6, "rectangular") * standard_uncertainty(0.05, "rectangular")
    assert (expansion, coefficient) == pytest.approx((11.7, 1.7), abs=0.05)
    whole = [*_end_gauge(), Component("second order, expansion", expansion), Component("second order, room", coefficient)]
    assert combined_uncertainty(whole) == pytest.approx(34, abs=0.5)


_VOLTS = [5.007, 4.994, 5.005, 4.990, 4.999]
_AMPERES = [0.019663, 0.019639, 0.019640, 0.019685, 0.019678]
_RADIANS = [1.0456, 1.0438, 1.0468, 1.0428, 1.0433]


@pytest.mark.parametrize(
    ("quantity", "value", "unsure"),
    [("resistance", 127.732, 0.071), ("reactance", 219.847, 0.295), ("impedance", 254.260, 0.236)],
)
def test_correlated_readings_as_printed_in_example_h2(quantity: str, value: float, unsure: float) -> None:
    volts, amperes, angle = (reading_summary(row) for row in (_VOLTS, _AMPERES, _RADIANS))
    v, i, p = volts.mean_mm, amperes.mean_mm, angle.mean_mm
    found, turned = {"resistance": (cos(p), -sin(p)), "reactance": (sin(p), cos(p)), "impedance": (1.0, 0.0)}[quantity]
    parts = [
        Component("volts", volts.standard_uncertainty_mm, found / i),
        Component("amperes", amperes.standard_uncertainty_mm, -v * found / i**2),
        Component("angle", angle.standard_uncertainty_mm, v / i * turned),
    ]
    together = np.corrcoef([_VOLTS, _AMPERES, _RADIANS])
    assert [together[0, 1], together[0, 2], together[1, 2]] == pytest.approx([-0.36, 0.86, -0.65], abs=0.006)
    pairs = [
        Correlation("volts", "amperes", float(together[0, 1])),
        Correlation("volts", "angle", float(together[0, 2])),
        Correlation("amperes", "angle", float(together[1, 2])),
    ]
    assert v / i * found == pytest.approx(value, abs=0.0006)
    assert combined_uncertainty(parts, pairs) == pytest.approx(unsure, abs=0.0007)


# The budget of the reference case: three readings on each collar of 70 mm, L = 300, a = 30, b = 270 mm.
_PARTS = difference_parts(0.0015, 3, 0.001, 0.0005, 0.001, 0.000826, 0.001, 0.001)
_LENGTHS = (300.0, 30.0, 270.0)
_LENGTHS_UNSURE = (1 / sqrt(3), 0.5 / sqrt(3), 0.5 / sqrt(3))
_TRIALS = 200_000


def _simulated_differences(random: np.random.Generator, true_mm: float) -> np.ndarray:
    """Both collars from their own causes: nothing of the budget is used."""

    def collar() -> np.ndarray:
        readings = random.normal(0, 0.0015, (_TRIALS, 3)).mean(axis=1)
        return readings + random.uniform(-0.0005, 0.0005, _TRIALS) + random.uniform(-0.001, 0.001, _TRIALS)

    common = random.normal(0, 0.004, _TRIALS)  # of the one micrometer: it must cancel
    once = [random.uniform(-half, half, _TRIALS) for half in (0.0005, 70 * 23.6e-6 * 0.5, 0.001, 0.001)]
    head, tail = collar() + common, true_mm + collar() + common
    return tail - head + np.sum(once, axis=0)


def test_budget_of_two_collars_is_what_a_simulation_finds() -> None:
    found = _simulated_differences(np.random.default_rng(20240101), 0.024)
    unsure = hypot(*_PARTS)
    assert float(found.mean()) == pytest.approx(0.024, abs=2e-5)
    assert float(found.std()) == pytest.approx(unsure, rel=5e-3)
    covered = float((np.abs(found - 0.024) <= expanded(unsure, coverage=2)).mean())
    assert 0.95 < covered < 0.965


def test_move_is_what_a_simulation_finds_and_what_two_million_trials_found() -> None:
    random = np.random.default_rng(20240101)
    difference = _simulated_differences(random, 0.024)
    span, first, second = (
        random.uniform(middle - half, middle + half, _TRIALS) for middle, half in zip(_LENGTHS, (1, 0.5, 0.5), strict=True)
    )
    moves = difference / 2 * span / (second - first)
    unsure = move_uncertainty(0.024, *_LENGTHS, hypot(*_PARTS), *_LENGTHS_UNSURE)
    assert float(moves.std()) == pytest.approx(unsure, rel=5e-3)
    # Simulation of the same case, two million trials: 15.00, 1.1385 and 12.772 to 17.226 um, good to 0.02 um.
    low, high = np.quantile(moves, [0.025, 0.975])
    assert (float(moves.mean()), float(low), float(high)) == pytest.approx((0.015, 0.012772, 0.017226), abs=2e-5)
    assert float(moves.std()) == pytest.approx(0.001138487, abs=1e-5)
    assert unsure == pytest.approx(0.001138487, abs=1e-5)


@pytest.mark.parametrize("factor", [2.0, 1.645])
@pytest.mark.parametrize("true", [0.010, 0.011, -0.010])
def test_lathe_outside_its_limit_is_passed_at_most_once_in_twenty(factor: float, true: float) -> None:
    found = np.abs(_simulated_differences(np.random.default_rng(7), true))
    unsure = hypot(*_PARTS)
    assert float((found <= acceptance_limit(0.010, unsure, factor)).mean()) <= 0.0505
    inside = np.abs(_simulated_differences(np.random.default_rng(8), 0.010))
    assert float((inside > rejection_limit(0.010, unsure, factor)).mean()) <= 0.0505


@pytest.mark.parametrize("readings", [2, 3, 5])
def test_expanded_uncertainty_from_raw_readings_covers_at_least_what_it_says(readings: int) -> None:
    """Each trial takes the scatter of its own readings, or the known one where that is larger."""
    random = np.random.default_rng(20240101)
    trials, covered, covered_by_readings_alone = 1500, 0, 0
    for _ in range(trials):
        head, tail = random.normal(70, 0.0015, (2, readings))
        error = abs(float(tail.mean() - head.mean() + random.uniform(-0.001, 0.001)))
        groups = [head.tolist(), tail.tolist()]
        covered += error <= _expanded(repeatability(groups, 0.0015), readings)
        covered_by_readings_alone += error <= _expanded(pooled_deviation(groups), readings)
    assert covered / trials > 0.95
    assert 0.91 < covered_by_readings_alone / trials < 0.97


def _expanded(scatter: Scatter, readings: int) -> float:
    parts = difference_parts(scatter.standard_deviation_mm, readings, 0, 0.001, 0, 0, 0, 0)
    return expanded_uncertainty(parts.components(scatter.degrees_of_freedom), probability=0.95).expanded_mm
