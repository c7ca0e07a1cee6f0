"""How sure a verdict is: guard bands, the probability of keeping a limit, and of passing wrongly."""

from math import hypot, inf

from tailtrue.calc.student import probability_below
from tailtrue.calc.uncertainty import Verdict
from tailtrue.calc.validity import OutOfRange, at_least, between, finite, positive

_FARTHEST = 1e12  # standard uncertainties; beyond, one place is as unlikely as another


def acceptance_limit(limit_mm: float, standard_uncertainty_mm: float, coverage: float) -> float:
    """Largest measured difference that may be called inside.

    A = T - k u

    Parameters
    ----------
    limit_mm : Limit T on the size of the difference. [mm]
    standard_uncertainty_mm : Standard uncertainty u of the difference. [mm]
    coverage : Factor k of the guard band; 2, or about 1.65 for 95 % on one side. [1]

    Returns
    -------
    Largest size A of the measured difference, 0 or more. [mm]

    Valid for
    ---------
    Uncertainty 0 or more, limit and factor more than 0, guard band at most the limit. A band of 1.65 u is
    for an uncertainty that is small against the limit.

    Source
    ------
    ISO 14253-1, decision rule as summarised on public pages; the standard itself was not read; 1.65 of its
    2017 edition from memory.

    >>> round(acceptance_limit(0.010, 0.00182, coverage=2), 5), round(acceptance_limit(0.010, 0.00182, 1.645), 5)
    (0.00636, 0.00701)
    """
    _judged(limit_mm, standard_uncertainty_mm)
    positive(coverage, "factor of the guard band")
    band = coverage * standard_uncertainty_mm
    if band > limit_mm:
        raise OutOfRange(
            f"guard band is {band:g} mm and the limit {limit_mm:g} mm; no reading could be called inside: "
            "take a better instrument or a wider limit"
        )
    return limit_mm - band


def rejection_limit(limit_mm: float, standard_uncertainty_mm: float, coverage: float) -> float:
    """Measured difference beyond which it may be called outside.

    B = T + k u

    Parameters
    ----------
    limit_mm : Limit T on the size of the difference. [mm]
    standard_uncertainty_mm : Standard uncertainty u of the difference. [mm]
    coverage : Factor k of the guard band. [1]

    Returns
    -------
    Size B of the measured difference above which it is outside. [mm]

    Valid for
    ---------
    Uncertainty 0 or more, limit and factor more than 0.

    Source
    ------
    ISO 14253-1, decision rule as summarised on public pages; the standard itself was not read.

    >>> round(rejection_limit(0.010, 0.00182, coverage=2), 5)
    0.01364
    """
    _judged(limit_mm, standard_uncertainty_mm)
    positive(coverage, "factor of the guard band")
    return limit_mm + coverage * standard_uncertainty_mm


def conformity_probability(
    difference_mm: float, standard_uncertainty_mm: float, limit_mm: float, degrees_of_freedom: float = inf
) -> float:
    """Probability that the true difference keeps the limit, given what was measured.

    p = P(|D + u t| <= T), t after Student

    Parameters
    ----------
    difference_mm : Measured difference D, of either sign. [mm]
    standard_uncertainty_mm : Standard uncertainty u of it. [mm]
    limit_mm : Limit T on its size. [mm]
    degrees_of_freedom : Degrees of freedom of the uncertainty; endless when it is itself known. [1]

    Returns
    -------
    Probability p from 0 to 1. [1]

    Valid for
    ---------
    Uncertainty 0 or more, limit more than 0, at least one degree of freedom; nothing known of the
    difference but the measurement.

    Source
    ------
    JCGM 106, conformance probability (from memory).

    >>> [round(conformity_probability(d, 0.00182, 0.010), 3) for d in (0.0055, 0.007, 0.015)]
    [0.993, 0.95, 0.003]
    """
    finite(difference_mm, "difference", "mm")
    _judged(limit_mm, standard_uncertainty_mm)
    between(degrees_of_freedom, 1, inf, "number of degrees of freedom")
    return _within(limit_mm, difference_mm, standard_uncertainty_mm, degrees_of_freedom)


def verdict_at_probability(
    difference_mm: float,
    standard_uncertainty_mm: float,
    limit_mm: float,
    probability: float,
    degrees_of_freedom: float = inf,
) -> Verdict:
    """What may be said of a measured difference when a verdict must be right with a probability.

    inside: P(|true D| <= T) >= p; outside: P(true |D| > T on the side measured) >= p; else too close to say

    Parameters
    ----------
    difference_mm : Measured difference D, of either sign. [mm]
    standard_uncertainty_mm : Standard uncertainty of it. [mm]
    limit_mm : Limit T on its size. [mm]
    probability : Probability p with which either word must be right. [1]
    degrees_of_freedom : Degrees of freedom of the uncertainty; endless when it is itself known. [1]

    Returns
    -------
    One of the words inside, outside, too close to say. [1]

    Valid for
    ---------
    As `conformity_probability`; probability from 0.9 to 0.9999.

    Source
    ------
    ISO 14253-1 (2017), 95 % conformance probability (from memory; the standard itself was not read). A band
    on both sides of 2 u is simpler and safer.

    >>> [verdict_at_probability(d, 0.00182, 0.010, probability=0.95) for d in (0.0065, 0.0075, -0.0131)]
    ['inside', 'too close to say', 'outside']
    """
    between(probability, 0.9, 0.9999, "probability of a right verdict")
    keeps = conformity_probability(difference_mm, standard_uncertainty_mm, limit_mm, degrees_of_freedom)
    if keeps >= probability:
        return "inside"
    if standard_uncertainty_mm == 0:
        return "outside"
    # One side only: a poor instrument spreads over both sides, and that alone is no sign of a fault.
    beyond = _below(abs(difference_mm) - limit_mm, standard_uncertainty_mm, degrees_of_freedom)
    return "outside" if beyond >= probability else "too close to say"


def pass_rate(true_difference_mm: float, standard_uncertainty_mm: float, limit_mm: float, coverage: float) -> float:
    """How often a lathe with a known true difference would be called inside.

    q = P(|X + u z| <= T - k u), z normal

    Parameters
    ----------
    true_difference_mm : True difference X, of either sign. [mm]
    standard_uncertainty_mm : Standard uncertainty u of the measurement. [mm]
    limit_mm : Limit T on the size of the difference. [mm]
    coverage : Factor k of the guard band. [1]

    Returns
    -------
    Share q of the measurements that are called inside; beyond the limit it is the rate of wrong passes,
    2.3 % at most for a factor of 2. [1]

    Valid for
    ---------
    Uncertainty 0 or more, limit and factor more than 0; a guard band wider than the limit passes nothing.

    Source
    ------
    JCGM 106, operating characteristic (from memory).

    >>> round(pass_rate(0.010, 0.00182, 0.010, coverage=2), 4), round(pass_rate(0.004, 0.00182, 0.010, coverage=2), 4)
    (0.0228, 0.9026)
    """
    finite(true_difference_mm, "true difference", "mm")
    _judged(limit_mm, standard_uncertainty_mm)
    positive(coverage, "factor of the guard band")
    accepted = max(0.0, limit_mm - coverage * standard_uncertainty_mm)
    return _within(accepted, true_difference_mm, standard_uncertainty_mm, inf)


def worth_moving(move_mm: float, expanded_mm: float) -> bool:
    """Whether a move of the tailstock is more than its own uncertainty; a smaller one only adds noise.

    worth it: |m| > U

    Parameters
    ----------
    move_mm : Move m of the centre, of either sign. [mm]
    expanded_mm : Expanded uncertainty U of the move. [mm]

    Returns
    -------
    Yes when the move is worth making. [1]

    Valid for
    ---------
    Uncertainty 0 or more.

    Source
    ------
    Common practice.

    >>> worth_moving(-0.004, 0.0023), worth_moving(0.0023, 0.0023)
    (True, False)
    """
    finite(move_mm, "move of the centre", "mm")
    at_least(expanded_mm, 0, "expanded uncertainty of the move", "mm")
    return abs(move_mm) > expanded_mm


def methods_agree(first_mm: float, first_expanded_mm: float, second_mm: float, second_expanded_mm: float) -> bool:
    """Whether two independent measurements of one thing agree within their uncertainties.

    agree: |x_1 - x_2| <= sqrt(U_1^2 + U_2^2)

    Parameters
    ----------
    first_mm : Result x_1 of one method. [mm]
    first_expanded_mm : Its expanded uncertainty U_1. [mm]
    second_mm : Result x_2 of the other. [mm]
    second_expanded_mm : Its expanded uncertainty U_2. [mm]

    Returns
    -------
    Yes when they agree. [1]

    Valid for
    ---------
    Uncertainties 0 or more, with the same coverage factor; no error common to the two methods.

    Source
    ------
    Common practice in comparing measurements.

    >>> methods_agree(0.015, 0.0023, 0.011, 0.005), methods_agree(0.015, 0.0023, 0.005, 0.005)
    (True, False)
    """
    finite(first_mm, "first result", "mm")
    at_least(first_expanded_mm, 0, "expanded uncertainty of the first result", "mm")
    finite(second_mm, "second result", "mm")
    at_least(second_expanded_mm, 0, "expanded uncertainty of the second result", "mm")
    return abs(first_mm - second_mm) <= hypot(first_expanded_mm, second_expanded_mm)


def _judged(limit_mm: float, standard_uncertainty_mm: float) -> None:
    positive(limit_mm, "limit", "mm")
    at_least(standard_uncertainty_mm, 0, "standard uncertainty", "mm")


def _within(bound_mm: float, middle_mm: float, unsure_mm: float, degrees_of_freedom: float) -> float:
    """Probability of lying within plus or minus a bound; certain, one way or the other, without uncertainty."""
    if unsure_mm == 0:
        return float(abs(middle_mm) <= bound_mm)
    upper, lower = (_below(side * bound_mm - abs(middle_mm), unsure_mm, degrees_of_freedom) for side in (1, -1))
    return upper - lower


def _below(distance_mm: float, unsure_mm: float, degrees_of_freedom: float) -> float:
    """Probability of not straying a distance the one way."""
    return probability_below(max(-_FARTHEST, min(_FARTHEST, distance_mm / unsure_mm)), degrees_of_freedom)
