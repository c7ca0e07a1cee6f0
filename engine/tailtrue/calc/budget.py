"""A budget of uncertainty after the GUM: components, what they come to together, and how wide to print it.

Lengths are named in mm; any one unit will do, as long as a whole budget keeps to it.
"""

from collections.abc import Sequence
from math import floor, fsum, inf, sqrt
from typing import Literal, NamedTuple

from tailtrue.calc.student import two_sided_factor
from tailtrue.calc.validity import OutOfRange, at_least, between, finite, positive

Shape = Literal["normal", "rectangular", "triangular", "U-shaped"]

# Half width of a distribution over its standard deviation; that of the normal one is its coverage factor.
_DIVISORS: dict[str, float] = {"rectangular": sqrt(3), "triangular": sqrt(6), "U-shaped": sqrt(2)}
_SLACK = 1e-12  # of the sum of all variances: what rounding may leave below 0
_NEARLY_WHOLE = 1e-9  # a number of degrees of freedom that only rounding keeps below a whole one


class Component(NamedTuple):
    """One thing that is unsure, and how strongly the result follows it."""

    name: str
    standard_uncertainty_mm: float
    sensitivity: float = 1.0
    degrees_of_freedom: float = inf


class Correlation(NamedTuple):
    """How far two components go wrong together: 1 always alike, 0 not at all, -1 always opposite."""

    first: str
    second: str
    coefficient: float


class Expanded(NamedTuple):
    """A budget in four numbers."""

    standard_uncertainty_mm: float
    degrees_of_freedom: float
    coverage_factor: float
    expanded_mm: float


def standard_uncertainty(half_width_mm: float, shape: Shape, coverage: float = 2.0) -> float:
    """Standard uncertainty of something known to lie within plus or minus a half width.

    u = a / sqrt(3) rectangular, a / sqrt(6) triangular, a / sqrt(2) U-shaped, a / k normal

    Parameters
    ----------
    half_width_mm : Half width a. [mm]
    shape : Shape of the distribution: rectangular, triangular, U-shaped or normal. [1]
    coverage : Coverage factor k of the half width; counts for the normal shape only. [1]

    Returns
    -------
    Standard uncertainty u. [mm]

    Valid for
    ---------
    Half width 0 or more, factor more than 0. Rectangular when nothing but the bounds is known; U-shaped when
    it swings to and fro between them, as the temperature of a room does.

    Source
    ------
    JCGM 100 (the GUM), clauses 4.3.3, 4.3.7, 4.3.9 and H.1.3.4 (numbers from memory).

    >>> [round(standard_uncertainty(0.001, shape), 6) for shape in ("rectangular", "triangular", "U-shaped", "normal")]
    [0.000577, 0.000408, 0.000707, 0.0005]
    """
    at_least(half_width_mm, 0, "half width", "mm")
    positive(coverage, "coverage factor")
    divisors = {**_DIVISORS, "normal": coverage}
    if shape not in divisors:
        raise OutOfRange(f"shape of the distribution is '{shape}'; it must be one of {', '.join(sorted(divisors))}")
    return half_width_mm / divisors[shape]


def doubt_freedom(relative_doubt: float) -> float:
    """Degrees of freedom of an uncertainty that was judged, from how far it may itself be wrong.

    f = 1 / (2 r^2)

    Parameters
    ----------
    relative_doubt : Doubt r about the uncertainty, as a share of it; 0.25 for a quarter. [1]

    Returns
    -------
    Degrees of freedom f; endless without doubt. [1]

    Valid for
    ---------
    Doubt from 0 to 0.7 (more would be less than one degree of freedom).

    Source
    ------
    JCGM 100 (the GUM), clause G.4.2 (number from memory).

    >>> doubt_freedom(0.25), doubt_freedom(0.5)
    (8.0, 2.0)
    """
    between(relative_doubt, 0, 0.7, "doubt about the uncertainty")
    twice = 2 * relative_doubt**2
    return 1 / twice if twice else inf


def combined_uncertainty(components: Sequence[Component], correlations: Sequence[Correlation] = ()) -> float:
    """Standard uncertainty of a result from all that is unsure in it.

    u^2 = sum (c u)^2 + 2 sum r_ij c_i u_i c_j u_j

    Parameters
    ----------
    components : Name, standard uncertainty u, sensitivity c and degrees of freedom of each. [1]
    correlations : Names of two components and their coefficient r; pairs not named are independent. [1]

    Returns
    -------
    Combined standard uncertainty u. [mm]

    Valid for
    ---------
    At least one component, each name once, u 0 or more, coefficients from -1 to 1 that do not contradict one
    another; effects small enough to add in a straight line.

    Source
    ------
    JCGM 100 (the GUM), clauses 5.1.2 and 5.2.2 (numbers from memory).

    >>> parts = [Component("first collar", 0.003), Component("second collar", 0.003, -1)]
    >>> round(combined_uncertainty(parts), 6)
    0.004243
    >>> combined_uncertainty(parts, [Correlation("first collar", "second collar", 1)])
    0.0
    """
    return sqrt(fsum(_variances(components, correlations)))


def shares(components: Sequence[Component], correlations: Sequence[Correlation] = ()) -> tuple[float, ...]:
    """Share of each component in the square of the combined uncertainty: what to better first.

    share_i = c_i u_i sum_j r_ij c_j u_j / u^2

    Parameters
    ----------
    components : Name, standard uncertainty u, sensitivity c and degrees of freedom of each. [1]
    correlations : Names of two components and their coefficient r; pairs not named are independent. [1]

    Returns
    -------
    Shares in the order of the components; their sum is 1, one that cancels another is less than 0. [1]

    Valid for
    ---------
    As `combined_uncertainty`, and a combined uncertainty of more than 0.

    Source
    ------
    Derived from `combined_uncertainty`.

    >>> [round(share, 3) for share in shares([Component("feel", 0.003), Component("form", 0.001)])]
    [0.9, 0.1]
    """
    variances = _variances(components, correlations)
    whole = _more_than_nothing(fsum(variances))
    return tuple(variance / whole for variance in variances)


def effective_freedom(components: Sequence[Component]) -> float:
    """Degrees of freedom of a combined uncertainty.

    f = u^4 / sum ((c u)^4 / f_i)

    Parameters
    ----------
    components : Name, standard uncertainty u, sensitivity c and degrees of freedom f_i of each. [1]

    Returns
    -------
    Effective degrees of freedom f (Welch and Satterthwaite); endless when those of all are. [1]

    Valid for
    ---------
    Independent components, as `combined_uncertainty`; a combined uncertainty of more than 0.

    Source
    ------
    JCGM 100 (the GUM), clause G.4.1 (number from memory).

    >>> parts = [Component("gauge", 25, 1, 18), Component("reading", 9.7, 1, 25.6), Component("expansion", 2.9, 1, 50)]
    >>> round(effective_freedom([*parts, Component("temperature", 16.6, 1, 2)]), 2)
    16.76
    """
    variances = _variances(components, ())
    # As shares of the whole, so that fourth powers of small lengths do not vanish.
    whole = _more_than_nothing(fsum(variances))
    parts = zip(components, variances, strict=True)
    doubt = fsum((variance / whole) ** 2 / freedom for (*_, freedom), variance in parts)
    return 1 / doubt if doubt else inf


def expanded_uncertainty(components: Sequence[Component], probability: float) -> Expanded:
    """Expanded uncertainty of a result, with the coverage factor that its degrees of freedom ask for.

    U = k u, k after Student for the whole number below the effective degrees of freedom

    Parameters
    ----------
    components : Name, standard uncertainty u, sensitivity c and degrees of freedom of each. [1]
    probability : Probability to cover. [1]

    Returns
    -------
    Combined standard uncertainty u, effective degrees of freedom, coverage factor k, expanded
    uncertainty U. [mm, 1, 1, mm]

    Valid for
    ---------
    As `effective_freedom` and `two_sided_factor`. The freedom is an approximation: where scatter from two to
    four readings meets a bound of its own size, up to 3 % less is covered than asked. `repeatability` in
    readings.py mends that, where the scatter is known from before.

    Source
    ------
    JCGM 100 (the GUM), clauses G.4.1 and G.6.4 (numbers from memory).

    >>> found = expanded_uncertainty([Component("feel", 0.0012, 1, 4), Component("form", 0.0009)], probability=0.95)
    >>> round(found.degrees_of_freedom, 2), round(found.coverage_factor, 3), round(found.expanded_mm, 5)
    (9.77, 2.262, 0.00339)
    """
    combined = combined_uncertainty(components)
    freedom = effective_freedom(components)
    factor = two_sided_factor(probability, freedom if freedom == inf else floor(freedom + _NEARLY_WHOLE))
    return Expanded(combined, freedom, factor, factor * combined)


def carried_uncertainty(unsure_mm: float, sensitivity: float) -> float:
    """Uncertainty carried through a factor.

    u_y = |c| u_x

    Parameters
    ----------
    unsure_mm : Uncertainty u_x of what is measured. [mm]
    sensitivity : Factor c from what is measured to the result. [1]

    Returns
    -------
    Uncertainty u_y of the result. [mm]

    Valid for
    ---------
    Uncertainty 0 or more, factor finite; the doubt of the factor itself left out.

    Source
    ------
    JCGM 100 (the GUM), equation 11 (from memory).

    >>> carried_uncertainty(0.004, 0.625)
    0.0025
    """
    at_least(unsure_mm, 0, "uncertainty", "mm")
    finite(sensitivity, "factor")
    return abs(sensitivity) * unsure_mm


def _variances(components: Sequence[Component], correlations: Sequence[Correlation]) -> list[float]:
    """What each component gives to the square of the combined uncertainty, its half of each pair included."""
    effects: dict[str, float] = {}
    for name, unsure, sensitivity, freedom in components:
        if name in effects:
            raise OutOfRange(f"component '{name}' stands twice in the budget; give each a name of its own")
        at_least(unsure, 0, f"standard uncertainty of '{name}'", "mm")
        finite(sensitivity, f"sensitivity to '{name}'")
        between(freedom, 1, inf, f"number of degrees of freedom of '{name}'")
        effects[name] = sensitivity * unsure
    at_least(len(effects), 1, "number of components of the budget")
    variances = {name: effect**2 for name, effect in effects.items()}
    alone, seen = fsum(variances.values()), set()
    for first, second, coefficient in correlations:
        pair = frozenset((first, second))
        if not pair <= effects.keys() or len(pair) < 2 or pair in seen:
            raise OutOfRange(f"correlation of '{first}' with '{second}'; name two different components of the budget, once")
        between(coefficient, -1, 1, f"correlation of '{first}' with '{second}'")
        seen.add(pair)
        shared = coefficient * effects[first] * effects[second]
        variances[first] += shared
        variances[second] += shared
    whole = fsum(variances.values())
    if whole < -_SLACK * alone:
        raise OutOfRange("the correlations contradict one another: together they leave less than no uncertainty")
    # Errors that cancel leave nothing; what rounding leaves is no uncertainty.
    return list(variances.values()) if whole > _SLACK * alone else [0.0] * len(effects)


def _more_than_nothing(variance: float) -> float:
    if variance == 0:
        raise OutOfRange("nothing in the budget is unsure; no measurement is that good: name what is")
    return variance
