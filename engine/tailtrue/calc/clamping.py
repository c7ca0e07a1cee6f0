"""Where the tailstock goes when it is clamped, and what a round of adjusting achieved."""

from collections.abc import Sequence
from math import hypot, sqrt
from typing import NamedTuple

from tailtrue.calc.readings import reading_summary
from tailtrue.calc.validity import OutOfRange, at_least, finite, positive

_FEWEST_CYCLES = 2


class ClampingScatter(NamedTuple):
    """What repeated clamping and releasing shows."""

    mean_shift_mm: float
    shift_deviation_mm: float
    clamped_deviation_mm: float
    degrees_of_freedom: int


def clamping_scatter(released_mm: Sequence[float], clamped_mm: Sequence[float]) -> ClampingScatter:
    """Shift of the tailstock on clamping, and how well it repeats.

    shift_i = c_i - r_i; s = sqrt(sum (x_i - mean)^2 / (n - 1))

    Parameters
    ----------
    released_mm : Readings r_i of the indicator on the quill, released, one for each cycle. [mm]
    clamped_mm : Readings c_i, clamped, in the same order. [mm]

    Returns
    -------
    Mean shift, standard deviation of the shift, standard deviation of the clamped position, degrees of freedom
    n - 1 of both deviations. [mm, mm, mm, 1]

    Valid for
    ---------
    Two cycles or more, as many readings released as clamped, the indicator not touched in between.

    Source
    ------
    Definition of the experimental standard deviation (JCGM 100:2008).

    >>> found = clamping_scatter([0, 0.001, 0.0], [0.010, 0.012, 0.011])
    >>> [round(value, 6) for value in found]
    [0.010667, 0.000577, 0.001, 2]
    """
    for value in (*released_mm, *clamped_mm):
        finite(value, "reading of the indicator", "mm")
    cycles = len(clamped_mm)
    if len(released_mm) != cycles:
        raise OutOfRange(f"{len(released_mm)} readings released and {cycles} clamped; each cycle needs one of both")
    if cycles < _FEWEST_CYCLES:
        raise OutOfRange(f"cycles of clamping are {cycles}; a scatter needs {_FEWEST_CYCLES} or more")
    shifts = [clamped - released for released, clamped in zip(released_mm, clamped_mm, strict=True)]
    mean, deviation, freedom, _ = reading_summary(shifts)
    return ClampingScatter(mean, deviation, reading_summary(clamped_mm).standard_deviation_mm, freedom)


def aim_before_clamping(move_mm: float, mean_shift_mm: float) -> float:
    """Move to make with the clamp released, so that clamping brings the centre to where it is wanted.

    m' = m - shift

    Parameters
    ----------
    move_mm : Move m that is wanted with the tailstock clamped. [mm]
    mean_shift_mm : Mean shift on clamping, counted the same way. [mm]

    Returns
    -------
    Move m' to make before clamping, counted the same way. [mm]

    Valid for
    ---------
    A shift that repeats: its scatter well below the shift itself.

    Source
    ------
    Arithmetic.

    >>> round(aim_before_clamping(0.015, 0.004), 6)
    0.011
    """
    finite(move_mm, "move", "mm")
    finite(mean_shift_mm, "mean shift", "mm")
    return move_mm - mean_shift_mm


def achieved_share(before_mm: float, after_mm: float) -> float:
    """Share of the wanted correction that one round of adjusting achieved.

    q = 1 - d_after / d_before

    Parameters
    ----------
    before_mm : Difference of the collars before the move. [mm]
    after_mm : Difference of the collars after the move and a fresh skim. [mm]

    Returns
    -------
    Share q: 1 is on the mark, more is past it, less than 0 is the wrong way. [1]

    Valid for
    ---------
    A difference before that is not 0; the same bar, span and stations both times.

    Source
    ------
    Definition.

    >>> round(achieved_share(0.024, 0.0048), 6)
    0.8
    """
    finite(before_mm, "difference before", "mm")
    finite(after_mm, "difference after", "mm")
    if before_mm == 0:
        raise OutOfRange("difference before is 0 mm; there was nothing to correct")
    return 1 - after_mm / before_mm


def repeat_scatter(coverage: float, deviation_mm: float, step_mm: float) -> float:
    """Scatter of the centre from one clamping to the next.

    U = t sqrt(s^2 + r^2 / 12)

    Parameters
    ----------
    coverage : Factor t after Student. [1]
    deviation_mm : Standard deviation s of the clamped position; 0 for the least that can be shown. [mm]
    step_mm : Step r of the indicator. [mm]

    Returns
    -------
    Scatter U. [mm]

    Valid for
    ---------
    Factor and step more than 0, deviation 0 or more.

    Source
    ------
    JCGM 100 (the GUM), clauses 4.3.7 and 6.2 (memory).

    >>> round(repeat_scatter(2, 0.003, 0.002), 6)
    0.00611
    """
    positive(coverage, "factor")
    at_least(deviation_mm, 0, "standard deviation", "mm")
    positive(step_mm, "step of the indicator", "mm")
    return coverage * hypot(deviation_mm, step_mm / sqrt(12))


def mean_shift_doubt(coverage: float, shift_deviation_mm: float, step_mm: float, cycles: int) -> float:
    """Doubt of the mean shift on clamping.

    U = t sqrt((s^2 + 2 r^2 / 12) / n)

    Parameters
    ----------
    coverage : Factor t after Student. [1]
    shift_deviation_mm : Standard deviation s of the shift. [mm]
    step_mm : Step r of the indicator, which is read twice for a shift. [mm]
    cycles : Number n of cycles. [1]

    Returns
    -------
    Doubt U. [mm]

    Valid for
    ---------
    Factor and step more than 0, deviation 0 or more, at least two cycles.

    Source
    ------
    JCGM 100 (the GUM), clauses 4.2.3 and 4.3.7 (memory).

    >>> round(mean_shift_doubt(2.776, 0.003, 0.002, 5), 6)
    0.00386
    """
    positive(coverage, "factor")
    at_least(shift_deviation_mm, 0, "standard deviation", "mm")
    positive(step_mm, "step of the indicator", "mm")
    at_least(cycles, 2, "number of cycles")
    return coverage * hypot(shift_deviation_mm, sqrt(2) * step_mm / sqrt(12)) / sqrt(cycles)


def difference_left(difference_mm: float, achieved_percent: float) -> float:
    """What is left of a difference when a move achieves so many hundredths of what it aims at.

    d_left = d (1 - q / 100)

    Parameters
    ----------
    difference_mm : Difference d now. [mm]
    achieved_percent : Hundredths q that a move achieves. [1]

    Returns
    -------
    Difference that is left; of the other sign when a move goes past. [mm]

    Valid for
    ---------
    Both finite.

    Source
    ------
    Arithmetic.

    >>> round(difference_left(0.024, 75), 6)
    0.006
    """
    finite(difference_mm, "difference", "mm")
    finite(achieved_percent, "hundredths achieved")
    return difference_mm * (1 - achieved_percent / 100)
