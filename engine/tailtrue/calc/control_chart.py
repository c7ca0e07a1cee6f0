"""Is this lathe still the same? Single values over time: limits from their own scatter, runs, drift."""

from collections.abc import Sequence
from itertools import groupby, pairwise
from math import fsum, pi, sqrt
from typing import NamedTuple

from tailtrue.calc.trend import Trend, common_slope
from tailtrue.calc.validity import at_least, each_finite, finite

# Of the range of two values from one normal distribution, in its standard deviations.
_MEAN_RANGE = 2 / sqrt(pi)  # d2
_RANGE_SCATTER = sqrt(2 - 4 / pi)  # d3
_LIMIT_SIGMAS = 3
_VALUE = "value no. {} of the row"


class IndividualsChart(NamedTuple):
    """Lines of a chart of single values and of their moving range, all in mm."""

    mean: float
    moving_range_mean: float
    sigma: float
    upper: float
    lower: float
    upper_moving_range: float


def individuals_chart(values_mm: Sequence[float]) -> IndividualsChart:
    """Lines of a control chart for single values, from the steps between neighbours.

    R = mean of |x_i - x_(i-1)|, sigma = R / d2, limits = mean +- 3 sigma, limit of range = (1 + 3 d3 / d2) R

    Parameters
    ----------
    values_mm : Values in the order of time, of one lathe, bar and state. [mm]

    Returns
    -------
    Mean, mean moving range, sigma, upper and lower limit, upper limit of the moving range. [mm]

    Valid for
    ---------
    At least two values; believe the limits from about eight on. d2 = 2 / sqrt(pi) = 1.1284 and
    d3 = sqrt(2 - 4 / pi) = 0.8525 belong to two neighbours of a normal distribution.

    Source
    ------
    NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.2 (from memory); d2 and d3 derived.

    >>> chart = individuals_chart([0.004, -0.002, 0.006, 0.001, -0.005, 0.003, 0.008, 0.0, -0.003, 0.005, 0.002, -0.001])
    >>> round(chart.mean, 6), round(chart.upper, 4), round(chart.lower, 4)
    (0.0015, 0.0167, -0.0137)
    """
    at_least(len(values_mm), 2, "number of values on the chart")
    each_finite(values_mm, _VALUE, "mm")
    mean = fsum(values_mm) / len(values_mm)
    steps = [abs(after - before) for before, after in pairwise(values_mm)]
    step = fsum(steps) / len(steps)
    sigma = step / _MEAN_RANGE
    reach = _LIMIT_SIGMAS * sigma
    upper_range = (1 + _LIMIT_SIGMAS * _RANGE_SCATTER / _MEAN_RANGE) * step
    return IndividualsChart(mean, step, sigma, mean + reach, mean - reach, upper_range)


def points_beyond(values_mm: Sequence[float], lower_mm: float, upper_mm: float) -> tuple[int, ...]:
    """Points of a chart that lie outside its limits.

    i: x_i < lower or x_i > upper

    Parameters
    ----------
    values_mm : Values in the order of time. [mm]
    lower_mm : Lower limit. [mm]
    upper_mm : Upper limit. [mm]

    Returns
    -------
    Places of the points in the row, from 0; a point on a limit is inside. [1]

    Valid for
    ---------
    Lower limit not above the upper.

    Source
    ------
    NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.2 (from memory).

    >>> points_beyond([0.004, 0.018, -0.002, -0.016], -0.0137, 0.0167)
    (1, 3)
    """
    each_finite(values_mm, _VALUE, "mm")
    finite(lower_mm, "lower limit", "mm")
    at_least(upper_mm, lower_mm, "upper limit", "mm")
    return tuple(place for place, value in enumerate(values_mm) if not lower_mm <= value <= upper_mm)


def runs_on_one_side(values_mm: Sequence[float], centre_mm: float, run_length: int) -> tuple[int, ...]:
    """Points of a chart at which so many in a row lie on one side of its centre.

    i: x_(i-n+1) ... x_i all above, or all below

    Parameters
    ----------
    values_mm : Values in the order of time. [mm]
    centre_mm : Centre line. [mm]
    run_length : Length n of a run that counts. [1]

    Returns
    -------
    Places in the row, from 0, of the point that completes a run and of each that prolongs it. [1]

    Valid for
    ---------
    Runs of at least two; a point on the centre ends a run.

    Source
    ------
    Common practice in charting (eight in a row on one side).

    >>> runs_on_one_side([1, 2, -1, -2, -1, -3, 0, 1], 0, 3)
    (4, 5)
    """
    each_finite(values_mm, _VALUE, "mm")
    finite(centre_mm, "centre line", "mm")
    at_least(run_length, 2, "length of a run")
    found: list[int] = []
    start = 0
    for side, run in groupby(values_mm, key=lambda value: (value > centre_mm) - (value < centre_mm)):
        end = start + len(list(run))
        if side:
            found += range(start + run_length - 1, end)
        start = end
    return tuple(found)


def trend_slope(uses: Sequence[float], values_mm: Sequence[float], probability: float) -> Trend:
    """Drift of a lathe for one use, its standard uncertainty, and whether it is more than scatter.

    b = sum (x - x0)(y - y0) / S, S = sum (x - x0)^2, u^2 = sum r^2 / ((n - 2) S), drift: |b| > t u

    Parameters
    ----------
    uses : When each value was found: number of the use, or days since the first. [1]
    values_mm : Values found. [mm]
    probability : Probability with which pure scatter is not called a drift. [1]

    Returns
    -------
    Slope b for one use (or day), its standard uncertainty, degrees of freedom n - 2, and yes when it is
    more than scatter. [mm, mm, 1, 1]

    Valid for
    ---------
    At least three values, not all at the same time; scatter alike throughout and independent.

    Source
    ------
    JCGM 100 (the GUM), example H.3 (number from memory), with Student's t.

    >>> drift = trend_slope([1, 2, 3, 4, 5], [0.001, 0.003, 0.004, 0.007, 0.009], probability=0.95)
    >>> round(drift.slope_mm, 6), round(drift.standard_uncertainty_mm, 6), drift.differs_from_noise
    (0.002, 0.000163, True)
    """
    return common_slope([uses], [values_mm], probability)
