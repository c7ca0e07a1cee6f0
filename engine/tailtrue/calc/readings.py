"""What raw readings say: mean, scatter, the bias of the order they were taken in, and a thimble turned too far."""

from collections.abc import Sequence
from math import fsum, inf, sqrt
from typing import NamedTuple

from tailtrue.calc.trend import Trend, common_slope
from tailtrue.calc.validity import OutOfRange, at_least, between, each_finite, finite, positive

_READING = "reading no. {}"
_LARGEST_MM = 1000.0  # of the sizes that a micrometer reads
_PITCHES_MM = (0.1, 5.0)  # of the screws of micrometers, with room to spare


class Summary(NamedTuple):
    """Readings of one size in four numbers."""

    mean_mm: float
    standard_deviation_mm: float
    degrees_of_freedom: int
    standard_uncertainty_mm: float


class Scatter(NamedTuple):
    """Standard deviation of a single reading, and how well it is known."""

    standard_deviation_mm: float
    degrees_of_freedom: float


class OrderedDifference(NamedTuple):
    """Difference of two collars, and how many steps of drift its order leaves in it."""

    difference_mm: float
    bias_steps: float


def reading_summary(readings_mm: Sequence[float]) -> Summary:
    """Mean of repeated readings, their scatter, and the standard uncertainty of the mean from it.

    s^2 = sum (x - mean)^2 / (n - 1), u = s / sqrt(n)

    Parameters
    ----------
    readings_mm : Readings of one size with one instrument. [mm]

    Returns
    -------
    Mean, standard deviation s of one reading, degrees of freedom n - 1, standard uncertainty u of the
    mean. [mm, mm, 1, mm]

    Valid for
    ---------
    At least two readings; one says nothing of scatter.

    Source
    ------
    JCGM 100 (the GUM), clauses 4.2.1 to 4.2.3 (numbers from memory).

    >>> found = reading_summary([69.842, 69.841, 69.844])
    >>> round(found.mean_mm, 4), round(found.standard_deviation_mm, 5), round(found.standard_uncertainty_mm, 5)
    (69.8423, 0.00153, 0.00088)
    """
    at_least(len(readings_mm), 2, "number of readings of one size")
    mean, squares = _mean_and_squares(readings_mm)
    freedom = len(readings_mm) - 1
    deviation = sqrt(squares / freedom)
    return Summary(mean, deviation, freedom, deviation / sqrt(len(readings_mm)))


def pooled_deviation(groups_mm: Sequence[Sequence[float]]) -> Scatter:
    """Scatter of one reading from several sizes, each read a few times with the same instrument.

    s^2 = sum of all (x - mean of its group)^2 / f, f = sum (n - 1)

    Parameters
    ----------
    groups_mm : Readings, one row for each size, such as each collar. [mm]

    Returns
    -------
    Standard deviation s of one reading, degrees of freedom f. [mm, 1]

    Valid for
    ---------
    No empty row, at least one size read twice; the same hand and instrument throughout.

    Source
    ------
    JCGM 100 (the GUM), clause 4.2.4 (number from memory).

    >>> scatter = pooled_deviation([[69.842, 69.841, 69.844], [69.866, 69.867, 69.864]])
    >>> round(scatter.standard_deviation_mm, 5), scatter.degrees_of_freedom
    (0.00153, 4)
    """
    freedom = sum(len(row) - 1 for row in groups_mm)
    if any(not row for row in groups_mm) or freedom < 1:
        counts = ", ".join(str(len(row)) for row in groups_mm) or "0"
        raise OutOfRange(f"the sizes were read {counts} times; read each at least once, and one of them twice or more")
    squares = fsum(_mean_and_squares(row)[1] for row in groups_mm)
    return Scatter(sqrt(squares / freedom), freedom)


def repeatability(groups_mm: Sequence[Sequence[float]], known_mm: float, known_degrees_of_freedom: float = inf) -> Scatter:
    """Scatter of one reading to count with: that of these readings, or the known one where it is larger.

    s = larger of the pooled s and the known s; the known s when nothing was read twice

    Parameters
    ----------
    groups_mm : Readings, one row for each size; a row may hold a single reading. [mm]
    known_mm : Scatter of one reading known before, of this hand and instrument. [mm]
    known_degrees_of_freedom : How well that is known; endless when it is taken for granted. [1]

    Returns
    -------
    Standard deviation s of one reading, degrees of freedom of the one that was taken. [mm, 1]

    Valid for
    ---------
    No empty row; known scatter more than 0. A few readings often agree by luck, so they never lower what is
    known; to lower it, pool the readings of many uses and hand that in as known.

    Source
    ------
    Common practice (the larger of the two counts).

    >>> repeatability([[69.842, 69.842], [69.866, 69.866]], 0.0015)
    Scatter(standard_deviation_mm=0.0015, degrees_of_freedom=inf)
    """
    positive(known_mm, "known scatter of one reading", "mm")
    between(known_degrees_of_freedom, 1, inf, "number of degrees of freedom")
    known = Scatter(known_mm, known_degrees_of_freedom)
    if groups_mm and all(len(row) == 1 for row in groups_mm):
        each_finite([reading for row in groups_mm for reading in row], _READING, "mm")
        return known
    read = pooled_deviation(groups_mm)
    return read if read.standard_deviation_mm > known_mm else known


def order_bias(order: str) -> float:
    """Steps of a steady drift that the order of reading leaves in the difference of two collars.

    bias = mean place of T in the row - mean place of H

    Parameters
    ----------
    order : Row of H (headstock collar), T (tailstock collar) and M (a middle collar), as they were read. [1]

    Returns
    -------
    Bias of the tailstock mean less the headstock mean, in steps of drift from one reading to the next. [1]

    Valid for
    ---------
    Letters H, T and M, at least one H and one T; readings at even intervals.

    Source
    ------
    Derived.

    >>> order_bias("HTTH"), order_bias("HTHTHT"), order_bias("HHHTTT")
    (0.0, 1.0, 3.0)
    """
    wrong = sorted(set(order) - set("HTM"))
    if wrong or "H" not in order or "T" not in order:
        raise OutOfRange(
            f"order of reading is '{order}'; write H and T, and M for a middle collar, with at least one H and T"
        )
    head, tail = ([place for place, letter in enumerate(order) if letter == end] for end in "HT")
    return fsum(tail) / len(tail) - fsum(head) / len(head)


def difference_from_order(readings_mm: Sequence[float], order: str) -> OrderedDifference:
    """Difference of two collars from readings as they were taken, and the bias of their order.

    D_t - D_h = mean of the readings at T - mean of those at H

    Parameters
    ----------
    readings_mm : Readings in the order they were taken. [mm]
    order : Row of H, T and M, one letter for each reading. [1]

    Returns
    -------
    Tailstock mean less headstock mean, steps of drift left in it by the order. [mm, 1]

    Valid for
    ---------
    As `order_bias`; as many letters as readings.

    Source
    ------
    Derived.

    >>> found = difference_from_order([69.842, 69.866, 69.867, 69.843], "HTTH")
    >>> round(found.difference_mm, 6), found.bias_steps
    (0.024, 0.0)
    """
    bias = order_bias(order)
    places = _places(readings_mm, order)
    head, tail = ([readings_mm[place] for place in places[end]] for end in "HT")
    return OrderedDifference(_mean_and_squares(tail)[0] - _mean_and_squares(head)[0], bias)


def drift_per_step(readings_mm: Sequence[float], order: str, probability: float) -> Trend:
    """Drift from one reading to the next that the collars share, by least squares.

    b: reading at place i = size of its collar + b i

    Parameters
    ----------
    readings_mm : Readings in the order they were taken. [mm]
    order : Row of H, T and M, one letter for each reading. [1]
    probability : Probability with which pure scatter is not called a drift. [1]

    Returns
    -------
    Drift b for one step, its standard uncertainty, degrees of freedom, and yes when it is more than
    scatter. [mm, mm, 1, 1]

    Valid for
    ---------
    As `difference_from_order`; at least two readings more than collars.

    Source
    ------
    Derived; least squares as in JCGM 100 (the GUM), example H.3 (number from memory).

    >>> drift = drift_per_step([69.842, 69.866, 69.868, 69.848], "HTTH", probability=0.95)
    >>> round(drift.slope_mm, 6), drift.differs_from_noise
    (0.002, True)
    """
    order_bias(order)
    places = _places(readings_mm, order)
    return common_slope(
        list(places.values()), [[readings_mm[place] for place in row] for row in places.values()], probability
    )


def thread_slip(difference_mm: float, pitch_mm: float, tolerance_mm: float) -> float:
    """Turns of a micrometer screw that a difference is near to, in half turns: a thimble read one turn off.

    k = nearest half number to D / p, and 0 when |D - k p| > tolerance

    Parameters
    ----------
    difference_mm : Difference D of two readings that ought to agree. [mm]
    pitch_mm : Pitch p of the screw of the micrometer. [mm]
    tolerance_mm : How far from a whole or half turn still counts as near. [mm]

    Returns
    -------
    Whole or half turns k with the sign of the difference; 0 when it is near to none, or is small. [1]

    Valid for
    ---------
    Difference within 1000 mm, pitch from 0.1 to 5 mm, tolerance more than 0 and less than a quarter of the
    pitch (half turns must stay apart).

    Source
    ------
    Derived; a thimble read one turn off is a common slip (common practice).

    >>> thread_slip(0.498, 0.5, 0.02), thread_slip(-0.252, 0.5, 0.02), thread_slip(0.31, 0.5, 0.02)
    (1.0, -0.5, 0.0)
    """
    between(difference_mm, -_LARGEST_MM, _LARGEST_MM, "difference of two readings", "mm")
    between(pitch_mm, *_PITCHES_MM, "pitch of the screw", "mm")
    positive(tolerance_mm, "tolerance", "mm")
    if tolerance_mm >= pitch_mm / 4:
        raise OutOfRange(
            f"tolerance is {tolerance_mm:g} mm; it must be less than a quarter of the pitch, here {pitch_mm / 4:g} mm"
        )
    turns = round(2 * difference_mm / pitch_mm) / 2
    return turns if abs(difference_mm - turns * pitch_mm) <= tolerance_mm else 0.0


def drift_over(slope_mm: float, readings: int) -> float:
    """Drift over a whole row of readings.

    d = b (n - 1)

    Parameters
    ----------
    slope_mm : Drift b from one reading to the next. [mm]
    readings : Readings n in the row. [1]

    Returns
    -------
    Drift d. [mm]

    Valid for
    ---------
    Slope finite, at least one reading; readings at even intervals.

    Source
    ------
    Arithmetic.

    >>> drift_over(0.001, 7)
    0.006
    """
    finite(slope_mm, "drift from one reading to the next", "mm")
    at_least(readings, 1, "number of readings")
    return slope_mm * (readings - 1)


def _places(readings_mm: Sequence[float], order: str) -> dict[str, list[int]]:
    if len(readings_mm) != len(order):
        raise OutOfRange(
            f"there are {len(readings_mm)} readings and {len(order)} letters of their order; write one for each"
        )
    each_finite(readings_mm, _READING, "mm")
    return {letter: [place for place, other in enumerate(order) if other == letter] for letter in sorted(set(order))}


def _mean_and_squares(readings_mm: Sequence[float]) -> tuple[float, float]:
    """Mean, and sum of the squares of the deviations; exactly 0 for equal readings."""
    each_finite(readings_mm, _READING, "mm")
    steps = [value - readings_mm[0] for value in readings_mm]
    mean = fsum(steps) / len(steps)
    return readings_mm[0] + mean, fsum((step - mean) ** 2 for step in steps)
