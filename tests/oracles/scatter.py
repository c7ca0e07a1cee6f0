"""Doubts, scatter and verdicts: propagation, moments of distributions, least squares, tails of Student's distribution."""

from collections.abc import Sequence
from itertools import pairwise
from math import inf, sqrt
from typing import Any

import mpmath
import numpy as np
from numpy.polynomial.hermite_e import hermegauss
from scipy import stats
from scipy.integrate import quad
from uncertainties import correlated_values_norm, ufloat

from oracles.registry import oracle

_SPREAD = "uncertainties: propagation"
_BOUNDS = "scipy: standard deviations of distributions; uncertainties: propagation"
_LEAST = "numpy: least squares"


def _bounds(half_width: float) -> Any:
    """A value of nought that is surely within so much."""
    return _normal(stats.uniform(-half_width, 2 * half_width).std()) if half_width else 0.0


def _normal(deviation: float) -> Any:
    return ufloat(0, deviation) if deviation else 0.0


def _sum_of(*parts: Any) -> float:
    return _deviation(sum(parts))


def _deviation(value: Any) -> float:
    return float(getattr(value, "std_dev", 0.0))  # what nothing unsure went into is a plain number


@oracle("budget.standard_uncertainty", "scipy: standard deviations of distributions")
def standard_uncertainty(half_width_mm: float, shape: str, coverage: float = 2.0) -> float:
    whole = {"loc": -half_width_mm, "scale": 2 * half_width_mm}
    if shape == "normal":
        return half_width_mm / coverage
    distribution = {"rectangular": stats.uniform, "triangular": stats.triang, "U-shaped": stats.arcsine}[shape]
    return float(distribution(*([0.5] if shape == "triangular" else []), **whole).std())


@oracle("budget.combined_uncertainty", _SPREAD, relative=1e-6)
def combined(components: Sequence[Sequence[Any]], correlations: Sequence[Any] = ()) -> float:
    names = [name for name, *_ in components]
    together = np.eye(len(names))
    for first, second, coefficient in correlations:
        one, other = names.index(first), names.index(second)
        together[one, other] = together[other, one] = coefficient
    variables = correlated_values_norm([(0.0, unsure) for _, unsure, *_ in components], together)
    return _deviation(sum(row[2] * variable for row, variable in zip(components, variables, strict=True)))


@oracle("budget.shares", "uncertainties: variance of each component")
def shares(components: Sequence[Sequence[Any]], correlations: Sequence[Any] = ()) -> list[float]:
    assert not correlations
    variables = [_normal(unsure) for _name, unsure, *_ in components]
    whole = sum((row[2] * variable for row, variable in zip(components, variables, strict=True)))
    parts = whole.error_components()
    return [float(parts.get(variable, 0) ** 2 / whole.std_dev**2) if variable else 0.0 for variable in variables]


@oracle("budget.carried_uncertainty", _SPREAD)
def carried(unsure_mm: float, sensitivity: float) -> float:
    return _deviation(sensitivity * _normal(unsure_mm))


@oracle("doubts.both_together", _SPREAD)
def both(first_mm: float, second_mm: float) -> float:
    return _sum_of(_normal(first_mm), _normal(second_mm))


@oracle("doubts.all_together", _SPREAD)
def every(parts_mm: Sequence[float]) -> float:
    return _sum_of(*map(_normal, parts_mm))


@oracle("uncertainty.difference_uncertainty", _BOUNDS)
def difference(
    repeatability_mm: float, readings: int, resolution_mm: float, local_error_mm: float, form_mm: float,
    temperature_mm: float, wear_mm: float, deflection_mm: float,
) -> float:  # fmt: skip
    collars = [
        sum(_normal(repeatability_mm) for _ in range(readings)) / readings
        + _bounds(resolution_mm / 2) + _bounds(form_mm)
        for _ in range(2)
    ]  # fmt: skip
    common = (_bounds(half) for half in (local_error_mm, temperature_mm, wear_mm, deflection_mm))
    return _sum_of(collars[1] - collars[0], *common)


@oracle("difference_budget.difference_parts", _BOUNDS)
def parts(
    repeatability_mm: float, readings: int, resolution_mm: float, local_error_mm: float, form_mm: float,
    temperature_mm: float, wear_mm: float, deflection_mm: float,
) -> list[float]:  # fmt: skip
    nothing = dict.fromkeys(
        ("repeatability_mm", "resolution_mm", "local_error_mm", "form_mm", "temperature_mm", "wear_mm", "deflection_mm"), 0.0
    )
    alone = {
        "repeatability_mm": repeatability_mm, "resolution_mm": resolution_mm, "local_error_mm": local_error_mm,
        "form_mm": form_mm, "temperature_mm": temperature_mm, "wear_mm": wear_mm, "deflection_mm": deflection_mm,
    }  # fmt: skip
    return [difference(readings=readings, **nothing | {name: value}) for name, value in alone.items()]


@oracle("difference_budget.two_instruments", _BOUNDS)
def two_instruments(one_instrument_mm: float, first_limit_mm: float, second_limit_mm: float) -> float:
    return _sum_of(_normal(one_instrument_mm), _bounds(first_limit_mm), _bounds(second_limit_mm))


@oracle("difference_budget.correlated_difference", "numpy: drawn apart by the eigenvalues of the covariance", relative=1e-6)
def correlated(headstock_mm: float, tailstock_mm: float, correlation: float) -> float:
    shared = correlation * headstock_mm * tailstock_mm
    values, vectors = np.linalg.eigh([[headstock_mm**2, shared], [shared, tailstock_mm**2]])
    along = np.array([-1, 1]) @ vectors
    return float(np.sqrt(max(0.0, float((along**2 * values).sum()))))


@oracle("difference_budget.temperature_uncertainty", "numpy: integral over both normal distributions")
def of_temperature(
    length_mm: float,
    expansion_per_k: float,
    expansion_unsure_per_k: float,
    temperature_change_k: float,
    unsure_change_k: float,
) -> float:
    """Second moment of what alpha and dT make together, both in units of their own doubt."""

    places, weights = hermegauss(8)
    x, y = np.meshgrid(places, places)
    growth = length_mm * (
        (expansion_per_k + expansion_unsure_per_k * x) * (temperature_change_k + unsure_change_k * y)
        - expansion_per_k * temperature_change_k
    )
    return float(np.sqrt((growth**2 * np.outer(weights, weights)).sum() / (2 * np.pi)))


@oracle("difference_budget.move_uncertainty", _SPREAD)
def of_move(
    difference_mm: float, span_mm: float, first_station_mm: float, second_station_mm: float, difference_unsure_mm: float,
    span_unsure_mm: float, first_unsure_mm: float, second_unsure_mm: float,
) -> float:  # fmt: skip
    first, second = ufloat(first_station_mm, first_unsure_mm), ufloat(second_station_mm, second_unsure_mm)
    move = ufloat(difference_mm, difference_unsure_mm) / 2 * ufloat(span_mm, span_unsure_mm) / (second - first)
    return _deviation(move)


@oracle("tapers.correction_doubt", _SPREAD)
def of_correction(
    large_unsure_mm: float, small_unsure_mm: float, apart_mm: float, span_mm: float, setting_unsure_mm: float
) -> float:
    correction = (_normal(large_unsure_mm) - _normal(small_unsure_mm)) / 2 * span_mm / apart_mm
    return _sum_of(correction, _normal(setting_unsure_mm))


@oracle("lathe_geometry.bow_doubt", "uncertainties: propagation through a straight line")
def of_bow(
    difference_unsure_mm: float, first_station_mm: float, middle_station_mm: float, second_station_mm: float
) -> float:
    head, middle, tail = (_normal(difference_unsure_mm / sqrt(2)) for _ in range(3))
    along = (middle_station_mm - first_station_mm) / (second_station_mm - first_station_mm)
    return _deviation(middle - (head + (tail - head) * along))


@oracle("bore_gauging.bore_reading_uncertainty", _BOUNDS)
def of_bore(
    instrument_mm: float, reading_mm: float, feel_mm: float, readings: int, temperature_mm: float, form_mm: float
) -> float:
    felt = sum(_normal(feel_mm) for _ in range(readings)) / readings
    return _sum_of(felt, *map(_bounds, (instrument_mm, reading_mm, temperature_mm, form_mm)))


@oracle("fresh_skims.skims_uncertainty", _BOUNDS)
def of_skims(parts_mm: Sequence[float], guidance_mm: float, height_mm: float) -> float:
    return _sum_of(*map(_normal, parts_mm), _bounds(guidance_mm), _bounds(height_mm))


@oracle("fresh_skims.guidance_parts", "scipy: standard deviations of distributions")
def of_guidance(guidance_mm: float, height_mm: float) -> list[float]:
    return [_deviation(_bounds(half)) for half in (guidance_mm, height_mm)]


@oracle("clamping.repeat_scatter", _BOUNDS)
def of_repeats(coverage: float, deviation_mm: float, step_mm: float) -> float:
    return coverage * _sum_of(_normal(deviation_mm), _bounds(step_mm / 2))


@oracle("clamping.mean_shift_doubt", _BOUNDS)
def of_mean_shift(coverage: float, shift_deviation_mm: float, step_mm: float, cycles: int) -> float:
    shifts = (_normal(shift_deviation_mm) + _bounds(step_mm / 2) - _bounds(step_mm / 2) for _ in range(cycles))
    return coverage * _deviation(sum(shifts) / cycles)


@oracle("clamping.clamping_scatter", "scipy: deviation and error of a mean", part=lambda found: list(found)[:3])
def of_clamping(released_mm: Sequence[float], clamped_mm: Sequence[float]) -> list[float]:
    shifts = np.subtract(clamped_mm, released_mm)
    return [float(shifts.mean()), float(np.std(clamped_mm, ddof=1)), float(shifts.std(ddof=1))]


@oracle("readings.reading_summary", "scipy: error of a mean", part=lambda found: list(found)[:4])
def summary(readings_mm: Sequence[float]) -> list[float]:
    values = np.asarray(readings_mm)
    return [float(values.mean()), float(values.std(ddof=1)), len(values) - 1, float(stats.sem(values))]


def _shared_slope(groups: Sequence[tuple[Sequence[float], Sequence[float]]]) -> list[float]:
    """Slope, its standard uncertainty and the degrees of freedom: one slope, a level for each group."""
    rows = [
        [float(at), *(float(number == here) for here in range(len(groups)))]
        for number, (places, _) in enumerate(groups) for at in places
    ]  # fmt: skip
    design, values = np.array(rows), np.array([value for _, read in groups for value in read])
    found = np.linalg.lstsq(design, values, rcond=None)[0]
    freedom = len(values) - design.shape[1]
    left = float(((values - design @ found) ** 2).sum())
    covariance = np.linalg.inv(design.T @ design) * left / freedom
    return [float(found[0]), float(np.sqrt(covariance[0, 0])), freedom]


@oracle("readings.pooled_deviation", _LEAST)
def pooled(groups_mm: Sequence[Sequence[float]]) -> list[float]:
    levels = np.array([[float(number == here) for here in range(len(groups_mm))]
                       for number, group in enumerate(groups_mm) for _ in group])  # fmt: skip
    values = np.array([value for group in groups_mm for value in group])
    values = values - values.mean()
    freedom = len(values) - len(groups_mm)
    left = values - levels @ np.linalg.lstsq(levels, values, rcond=None)[0]
    return [float(np.sqrt((left**2).sum() / freedom)), freedom]


@oracle("readings.drift_per_step", _LEAST, relative=1e-6, part=lambda found: list(found)[:3])
def drift(readings_mm: Sequence[float], order: str, **_: float) -> list[float]:
    groups = []
    for letter in "HT":
        places = [place for place, here in enumerate(order) if here == letter]
        groups.append((places, [readings_mm[place] - 50 for place in places]))
    return _shared_slope(groups)


@oracle("control_chart.trend_slope", "scipy: linear regression", relative=1e-6, part=lambda found: list(found)[:3])
def trend(uses: Sequence[float], values_mm: Sequence[float], **_: float) -> list[float]:
    line = stats.linregress(uses, values_mm)
    return [float(line.slope), float(line.stderr), len(uses) - 2]


@oracle("trend.common_slope", _LEAST, relative=1e-6, part=lambda found: list(found)[:3])
def common(times: Sequence[Sequence[float]], values_mm: Sequence[Sequence[float]], **_: float) -> list[float]:
    return _shared_slope(list(zip(times, values_mm, strict=True)))


@oracle("readings.order_bias", "numpy: mean places")
def order_bias(order: str) -> float:
    letters = np.array(list(order))
    return float(np.flatnonzero(letters == "T").mean() - np.flatnonzero(letters == "H").mean())


@oracle("readings.difference_from_order", "numpy: means")
def difference_from_order(readings_mm: Sequence[float], order: str) -> list[float]:
    letters, values = np.array(list(order)), np.array(readings_mm)
    return [float(values[letters == "T"].mean() - values[letters == "H"].mean()), order_bias(order)]


@oracle("control_chart.individuals_chart", "scipy: mean and deviation of the range of two", relative=1e-6)
def individuals(values_mm: Sequence[float]) -> list[float]:
    values = np.array(values_mm)
    ranges = float(np.mean([abs(late - early) for early, late in pairwise(values)]))
    apart = stats.foldnorm(0, scale=sqrt(2))  # difference of two of one normal distribution, without its sign
    sigma = ranges / apart.mean()
    middle = float(values.mean())
    upper = ranges * (1 + 3 * apart.std() / apart.mean())
    return [middle, ranges, sigma, middle + 3 * sigma, middle - 3 * sigma, upper]


def _below(value: float, freedom: float) -> float:
    """Share of Student's distribution below a value, by the incomplete beta function to thirty digits."""
    mpmath.mp.dps = 30
    if freedom == inf:
        return float(mpmath.ncdf(value))
    tail = mpmath.betainc(freedom / 2, 0.5, 0, freedom / (freedom + mpmath.mpf(value) ** 2), regularized=True) / 2
    return float(1 - tail if value > 0 else tail)


@oracle("student.probability_below", "mpmath: incomplete beta function")
def probability_below(value: float, degrees_of_freedom: float = inf) -> float:
    return _below(value, degrees_of_freedom)


@oracle("student.one_sided_factor", "mpmath: incomplete beta function", part=lambda found: found)
def one_sided(probability: float, degrees_of_freedom: float = inf) -> float:
    return float(mpmath.findroot(lambda k: _below(float(k), degrees_of_freedom) - probability, (0.5, 3.0), solver="anderson",
                                 tol=1e-13, maxsteps=200))  # fmt: skip


@oracle("student.two_sided_factor", "mpmath: incomplete beta function")
def two_sided(probability: float, degrees_of_freedom: float = inf) -> float:
    return one_sided((1 + probability) / 2, degrees_of_freedom)


@oracle("conformity.conformity_probability", "scipy: integral of the density", relative=1e-6)
def conforming(
    difference_mm: float, standard_uncertainty_mm: float, limit_mm: float, degrees_of_freedom: float = inf
) -> float:
    density = stats.norm.pdf if degrees_of_freedom == inf else stats.t(degrees_of_freedom).pdf
    low, high = ((side * limit_mm - difference_mm) / standard_uncertainty_mm for side in (-1, 1))
    return float(quad(density, low, high, epsabs=1e-12, limit=200)[0])


@oracle("conformity.pass_rate", "scipy: integral of the density", relative=1e-6)
def passing(true_difference_mm: float, standard_uncertainty_mm: float, limit_mm: float, coverage: float = 2.0) -> float:
    allowed = limit_mm - coverage * standard_uncertainty_mm
    if allowed <= 0:
        return 0.0
    low, high = ((side * allowed - true_difference_mm) / standard_uncertainty_mm for side in (-1, 1))
    return float(quad(stats.norm.pdf, low, high, epsabs=1e-13, limit=200)[0])


@oracle("conformity.verdict_at_probability", "scipy: integral of the density")
def verdict(
    difference_mm: float, standard_uncertainty_mm: float, limit_mm: float, probability: float = 0.95,
    degrees_of_freedom: float = inf,
) -> str:  # fmt: skip
    within = conforming(difference_mm, standard_uncertainty_mm, limit_mm, degrees_of_freedom)
    if within >= probability:
        return "inside"
    density = stats.norm.pdf if degrees_of_freedom == inf else stats.t(degrees_of_freedom).pdf
    beyond = quad(density, (limit_mm - abs(difference_mm)) / standard_uncertainty_mm, inf)[0]
    return "outside" if beyond >= probability else "too close to say"


@oracle("adequacy.readings_for_target", "uncertainties: one reading more until it is enough")
def readings_for_target(target_mm: float, repeatability_mm: float, other_mm: float, most_readings: int) -> int:
    for readings in range(1, most_readings + 1):
        means = [sum(_normal(repeatability_mm) for _ in range(readings)) / readings for _ in range(2)]
        if _sum_of(means[1] - means[0], _normal(other_mm)) <= target_mm * (1 + 1e-9):
            return readings
    return 0


@oracle("adequacy.readings_to_settle", "uncertainties: one reading more until the verdict stands")
def readings_to_settle(
    difference_mm: float,
    limit_mm: float,
    repeatability_mm: float,
    other_mm: float,
    most_readings: int,
    coverage: float = 2.0,
) -> int:
    for readings in range(1, min(most_readings, 40) + 1):
        means = [sum(_normal(repeatability_mm) for _ in range(readings)) / readings for _ in range(2)]
        expanded = coverage * _sum_of(means[1] - means[0], _normal(other_mm))
        if abs(difference_mm) + expanded <= limit_mm or abs(difference_mm) - expanded > limit_mm:
            return readings
    return 0
