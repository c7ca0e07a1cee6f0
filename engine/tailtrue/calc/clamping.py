"""Where the tailstock goes when it is clamped, and what a round of adjusting achieved."""

from collections.abc import Sequence
from typing import NamedTuple

from tailtrue.calc.readings import reading_summary
from tailtrue.calc.validity import OutOfRange, finite

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
