"""A straight drift through readings, by least squares, and whether it is more than their scatter."""

from collections.abc import Sequence
from math import fsum, sqrt
from typing import NamedTuple

from tailtrue.calc.student import two_sided_factor
from tailtrue.calc.validity import OutOfRange, each_finite


class Trend(NamedTuple):
    """Slope of a straight line, for one step of time, and what may be said of it."""

    slope_mm: float
    standard_uncertainty_mm: float
    degrees_of_freedom: int
    differs_from_noise: bool


def common_slope(times: Sequence[Sequence[float]], values_mm: Sequence[Sequence[float]], probability: float) -> Trend:
    """Slope that several groups of values share, each group with a level of its own.

    b = sum (x - x_g)(y - y_g) / S, S = sum (x - x_g)^2, u^2 = sum r^2 / (f S), f = n - g - 1, drift: |b| > t u

    Parameters
    ----------
    times : Times of the values, one row for each group. [1]
    values_mm : Values, in the same rows. [mm]
    probability : Probability with which pure scatter is not called a drift. [1]

    Returns
    -------
    Slope b for one step of time, its standard uncertainty, degrees of freedom f, and yes when it is more
    than scatter. [mm, mm, 1, 1]

    Valid for
    ---------
    At least two values more than groups, not all of a group at one time; scatter alike and independent.

    Source
    ------
    Least squares as in JCGM 100 (the GUM), example H.3 (number from memory), with Student's t.

    >>> warming = common_slope([[0, 3], [1, 2]], [[50.001, 50.007], [50.023, 50.025]], probability=0.95)
    >>> round(warming.slope_mm, 6), warming.degrees_of_freedom, warming.differs_from_noise
    (0.002, 1, True)
    """
    if [len(row) for row in times] != [len(row) for row in values_mm]:
        said = " and ".join(_counts(rows) for rows in (values_mm, times))
        raise OutOfRange(f"the numbers of values and of times are {said}; every value needs its time")
    free = sum(len(row) for row in times) - len(times) - 1
    if free < 1:
        raise OutOfRange(
            f"the values of a trend are {_counts(values_mm)} in number; there must be at least {len(times) + 2} in all"
        )
    steps = [step for row in times for step in _from_mean(row, "time", "")]
    values = [value for row in values_mm for value in _from_mean(row, "value", "mm")]
    spread = fsum(step**2 for step in steps)
    if spread == 0:
        raise OutOfRange("all values were found at the same time; a drift shows only between different times")
    slope = fsum(step * value for step, value in zip(steps, values, strict=True)) / spread
    rest = fsum((value - slope * step) ** 2 for step, value in zip(steps, values, strict=True))
    unsure = sqrt(rest / free / spread)
    return Trend(slope, unsure, free, abs(slope) > two_sided_factor(probability, free) * unsure)


def _from_mean(row: Sequence[float], name: str, unit: str) -> list[float]:
    """Deviations from the mean; exactly 0 for equal values."""
    each_finite(row, f"{name} no. {{}} of the row", unit)
    if not row:
        return []
    steps = [value - row[0] for value in row]
    mean = fsum(steps) / len(steps)
    return [step - mean for step in steps]


def _counts(rows: Sequence[Sequence[float]]) -> str:
    return " + ".join(str(len(row)) for row in rows) or "0"
