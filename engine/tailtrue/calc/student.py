"""How far a mean may stray when its scatter is itself known from few readings only: Student's t."""

from math import inf

from tailtrue.calc.validity import OutOfRange, between, finite


def two_sided_factor(probability: float, degrees_of_freedom: float = inf) -> float:
    """Factor k so that plus or minus k standard uncertainties cover a probability.

    P(-k <= t <= k) = p, t after Student

    Parameters
    ----------
    probability : Probability p to cover, such as 0.95. [1]
    degrees_of_freedom : Degrees of freedom; endless when the uncertainty itself is known. [1]

    Returns
    -------
    Coverage factor k. [1]

    Valid for
    ---------
    Probability from 0.5 to 0.9999, at least one degree of freedom.

    Source
    ------
    JCGM 100 (the GUM), clause G.3 and table G.2 (numbers from memory).

    >>> round(two_sided_factor(0.95), 3), round(two_sided_factor(0.95, 4), 3)
    (1.96, 2.776)
    """
    _probability(probability)
    return _quantile((1 + probability) / 2, degrees_of_freedom)


def one_sided_factor(probability: float, degrees_of_freedom: float = inf) -> float:
    """Factor k so that a value stays below k standard uncertainties with a probability.

    P(t <= k) = p, t after Student

    Parameters
    ----------
    probability : Probability p, such as 0.95. [1]
    degrees_of_freedom : Degrees of freedom; endless when the uncertainty itself is known. [1]

    Returns
    -------
    Factor k; always less than that of both sides. [1]

    Valid for
    ---------
    Probability from 0.5 to 0.9999, at least one degree of freedom.

    Source
    ------
    JCGM 100 (the GUM), clause G.3 (number from memory).

    >>> round(one_sided_factor(0.95), 3), round(one_sided_factor(0.95, 4), 3)
    (1.645, 2.132)
    """
    _probability(probability)
    return _quantile(probability, degrees_of_freedom)


def probability_below(value: float, degrees_of_freedom: float = inf) -> float:
    """Probability that a deviation, counted in standard uncertainties, is below a value.

    p = P(t <= x), t after Student

    Parameters
    ----------
    value : Deviation x divided by its standard uncertainty, of either sign. [1]
    degrees_of_freedom : Degrees of freedom; endless when the uncertainty itself is known. [1]

    Returns
    -------
    Probability p from 0 to 1. [1]

    Valid for
    ---------
    Any finite value, at least one degree of freedom.

    Source
    ------
    Definition of Student's distribution; JCGM 100 (the GUM), clause G.3 (number from memory).

    >>> round(probability_below(1.96), 4), round(probability_below(-2.776, 4), 4)
    (0.975, 0.025)
    """
    from scipy.special import stdtr

    finite(value, "deviation in standard uncertainties")
    between(degrees_of_freedom, 1, inf, "number of degrees of freedom")
    return float(stdtr(degrees_of_freedom, value))


def _probability(probability: float) -> None:
    if not 0.5 <= probability <= 0.9999:
        raise OutOfRange(f"probability is {probability:g}; take one from 0.5 to 0.9999, such as 0.95")


def _quantile(probability: float, degrees_of_freedom: float) -> float:
    from scipy.special import stdtrit

    between(degrees_of_freedom, 1, inf, "number of degrees of freedom")
    return float(stdtrit(degrees_of_freedom, probability))
