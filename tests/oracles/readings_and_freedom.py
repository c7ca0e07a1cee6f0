"""Degrees of freedom, shares of a doubt between collars, choices from a row: moments, propagation, sorted search."""

from collections.abc import Sequence
from decimal import ROUND_HALF_EVEN, Decimal
from math import inf
from typing import Any

import numpy as np
from scipy import stats
from scipy.integrate import quad
from uncertainties import ufloat

from oracles.registry import oracle
from oracles.scatter import combined, two_sided


def _square(unsure: float, freedom: float) -> tuple[float, float]:
    """Mean and variance of an estimated square of an uncertainty: a multiple of chi-squared."""
    if freedom == inf or not unsure:
        return unsure**2, 0.0
    return float(unsure**2 * stats.chi2(freedom).mean() / freedom), float(unsure**4 * stats.chi2(freedom).var() / freedom**2)


@oracle("budget.effective_freedom", "scipy: the chi-squared that has the mean and variance of the sum")
def effective_freedom(components: Sequence[Sequence[Any]]) -> float:
    squares = [_square(unsure * sensitivity, freedom) for _name, unsure, sensitivity, freedom in components]
    mean, variance = (sum(part) for part in zip(*squares, strict=True))
    return 2 * mean**2 / variance if variance else inf


@oracle("budget.expanded_uncertainty", "uncertainties: propagation; mpmath: incomplete beta function", relative=1e-7)
def expanded(components: Sequence[Sequence[Any]], probability: float = 0.95) -> list[float]:
    freedom = effective_freedom(components)
    factor = two_sided(probability, np.floor(freedom) if freedom < inf else inf)
    return [combined(components), freedom, factor, factor * combined(components)]


@oracle("doubts.of_one_collar", "uncertainties: two alike make the difference")
def of_one_collar(difference_unsure_mm: float) -> float:
    whole = (ufloat(0, 1.0) - ufloat(0, 1.0)).std_dev
    return float(difference_unsure_mm / whole)


def _of_means(deviation: float, first: int, second: int) -> float:
    means = (sum(ufloat(0, deviation) for _ in range(count)) / count for count in (first, second))
    return float((next(means) - next(means)).std_dev)


@oracle("doubts.as_read_once", "uncertainties: means of so many readings")
def as_read_once(deviation_mm: float, first_readings: int, second_readings: int) -> float:
    return of_one_collar(_of_means(deviation_mm, first_readings, second_readings))


@oracle("doubts.without_scatter", "uncertainties: means of so many readings")
def without_scatter(standard_mm: float, deviation_mm: float, first_readings: int, second_readings: int) -> float:
    left = standard_mm**2 - _of_means(deviation_mm, first_readings, second_readings) ** 2
    return float(np.sqrt(np.clip(left, 0, None)))


@oracle("steps.nearest_steps", "decimal: exact arithmetic")
def nearest_steps(value_mm: float, step_mm: float, parts: int = 1) -> float:
    whole = parts * Decimal(repr(value_mm)) / Decimal(repr(step_mm))
    return float(whole.to_integral_value(rounding=ROUND_HALF_EVEN)) / parts


@oracle("spindle.choose_speed", "numpy: search in a sorted row")
def choose_speed(available: Sequence[float], wanted_per_min: float, cap_per_min: float) -> float:
    row = np.sort(available)
    return float(row[max(0, int(np.searchsorted(row, min(wanted_per_min, cap_per_min), side="right")) - 1)])


@oracle("control_chart.points_beyond", "numpy: search in the values")
def points_beyond(values_mm: Sequence[float], lower_mm: float, upper_mm: float) -> list[int]:
    values = np.array(values_mm)
    return [int(place) for place in np.flatnonzero(np.clip(values, lower_mm, upper_mm) != values)]


@oracle("fit_temperature.size_at_20", "scipy: growth of work and gauge summed degree by degree")
def size_at_20(reading_mm: float, work_per_k: float, work_degc: float, gauge_per_k: float, gauge_degc: float) -> float:
    of_gauge = quad(lambda _: reading_mm * gauge_per_k, 20, gauge_degc)[0]
    return float(reading_mm + of_gauge - quad(lambda _: reading_mm * work_per_k, 20, work_degc)[0])


@oracle("fit_temperature.clearance_at", "scipy: growth of both parts summed degree by degree")
def clearance_at(
    clearance_at_20_mm: float, diameter_mm: float, bore_per_k: float, bore_degc: float, shaft_per_k: float, shaft_degc: float
) -> float:
    bore, shaft = (
        quad(lambda _, rate=rate: diameter_mm * rate, 20, degc)[0]
        for rate, degc in ((bore_per_k, bore_degc), (shaft_per_k, shaft_degc))
    )
    return float(clearance_at_20_mm + bore - shaft)
