"""How sure a difference of two diameters is, and what may be said of it."""

from math import hypot
from typing import Literal

from tailtrue.calc.difference_budget import difference_parts
from tailtrue.calc.validity import at_least, finite, positive

Verdict = Literal["inside", "outside", "too close to say"]


def difference_uncertainty(
    repeatability_mm: float,
    readings: int,
    resolution_mm: float,
    local_error_mm: float,
    form_mm: float,
    temperature_mm: float,
    wear_mm: float,
    deflection_mm: float,
) -> float:
    """Standard uncertainty of the difference of two diameters read with one instrument.

    u^2 = 2 s^2 / n + 2 r^2 / 12 + (l^2 + 2 f^2 + t^2 + w^2 + b^2) / 3

    Parameters
    ----------
    repeatability_mm : Standard deviation s of one reading. [mm]
    readings : Readings n taken on each collar. [1]
    resolution_mm : Smallest step r that is read. [mm]
    local_error_mm : Half width l of the change of screw error between the two diameters. [mm]
    form_mm : Half width f from out-of-round and finish, of each collar. [mm]
    temperature_mm : Half width t from one collar being warmer, on diameter. [mm]
    wear_mm : Half width w from wear of the tool between the collars, on diameter. [mm]
    deflection_mm : Half width b from bending that is left, on diameter. [mm]

    Returns
    -------
    Standard uncertainty u of the difference on diameter. [mm]

    Valid for
    ---------
    All 0 or more, at least one reading. The common error of the instrument cancels only when both collars
    are read with it and differ by less than about 0.1 mm.

    Source
    ------
    JCGM 100 (the GUM), clauses 4.2, 4.3.7, 5.1.2 and F.2.2.1, numbers of the clauses from memory.

    >>> u = difference_uncertainty(0.0015, 3, 0.001, 0.0005, 0.001, 0.000826, 0.001, 0.001)
    >>> round(u, 6), round(expanded(u, coverage=2), 6)
    (0.00182, 0.003639)
    """
    return hypot(
        *difference_parts(
            repeatability_mm,
            readings,
            resolution_mm,
            local_error_mm,
            form_mm,
            temperature_mm,
            wear_mm,
            deflection_mm,
        )
    )


def expanded(standard_uncertainty_mm: float, coverage: float) -> float:
    """Expanded uncertainty, the half width of the range in which the true value is expected.

    U = k u

    Parameters
    ----------
    standard_uncertainty_mm : Standard uncertainty u. [mm]
    coverage : Coverage factor k; 2 covers about 95 %. [1]

    Returns
    -------
    Expanded uncertainty U. [mm]

    Valid for
    ---------
    Uncertainty 0 or more, factor more than 0.

    Source
    ------
    JCGM 100 (the GUM), chapter 6 (number from memory).

    >>> expanded(0.002, coverage=2)
    0.004
    """
    at_least(standard_uncertainty_mm, 0, "standard uncertainty", "mm")
    positive(coverage, "coverage factor")
    return coverage * standard_uncertainty_mm


def verdict(difference_mm: float, expanded_mm: float, limit_mm: float) -> Verdict:
    """What may be said of a measured difference against a limit.

    inside: |D| + U <= T; outside: |D| - U > T; between the two: too close to say

    Parameters
    ----------
    difference_mm : Measured difference D, of either sign. [mm]
    expanded_mm : Expanded uncertainty U of it. [mm]
    limit_mm : Limit T on its size. [mm]

    Returns
    -------
    One of the words inside, outside, too close to say. [1]

    Valid for
    ---------
    Uncertainty 0 or more, limit more than 0.

    Source
    ------
    ISO 14253-1, decision rule as summarised on public pages; the standard itself was not read.

    >>> verdict(0.0055, 0.00364, 0.010), verdict(0.007, 0.00364, 0.010), verdict(-0.015, 0.00364, 0.010)
    ('inside', 'too close to say', 'outside')
    """
    finite(difference_mm, "difference", "mm")
    at_least(expanded_mm, 0, "expanded uncertainty", "mm")
    positive(limit_mm, "limit", "mm")
    if abs(difference_mm) + expanded_mm <= limit_mm:
        return "inside"
    if abs(difference_mm) - expanded_mm > limit_mm:
        return "outside"
    return "too close to say"
