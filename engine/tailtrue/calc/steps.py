"""Sizes a person can set: whole steps of a rule, a dial or an instrument, and the cuts that share out a stock."""

from math import ceil, floor

from tailtrue.calc.validity import at_least, between, finite, positive

# Binary form must not cost a whole step: 25.4 / 0.05 is 507.99999999999994.
_NOISE = 1e-9


def step_down(value_mm: float, step_mm: float) -> float:
    """Largest whole number of steps at or below a value.

    d = floor(v / s) s

    Parameters
    ----------
    value_mm : Value v. [mm]
    step_mm : Step s of a rule, a dial or an instrument; any one unit will do for both. [mm]

    Returns
    -------
    Size d that can be set. [mm]

    Valid for
    ---------
    Value finite, step more than 0; a whole step that binary form leaves just short counts as whole.

    Source
    ------
    Arithmetic.

    >>> round(step_down(25.4, 0.05), 6)
    25.4
    """
    return steps_in(value_mm, step_mm) * step_mm


def step_up(value_mm: float, step_mm: float) -> float:
    """Least whole number of steps at or above a value.

    u = ceil(v / s) s

    Parameters
    ----------
    value_mm : Value v. [mm]
    step_mm : Step s; any one unit will do for both. [mm]

    Returns
    -------
    Size u that can be set. [mm]

    Valid for
    ---------
    As `step_down`.

    Source
    ------
    Arithmetic.

    >>> round(step_up(25.43, 0.05), 6)
    25.45
    """
    finite(value_mm, "value", "mm")
    positive(step_mm, "step", "mm")
    return ceil(value_mm / step_mm - _NOISE) * step_mm


def steps_in(value_mm: float, step_mm: float) -> int:
    """How many whole steps a value holds.

    n = floor(v / s)

    Parameters
    ----------
    value_mm : Value v. [mm]
    step_mm : Step s; any one unit will do for both. [mm]

    Returns
    -------
    Number n. [1]

    Valid for
    ---------
    As `step_down`.

    Source
    ------
    Arithmetic.

    >>> steps_in(25.4, 0.05)
    508
    """
    finite(value_mm, "value", "mm")
    positive(step_mm, "step", "mm")
    return floor(value_mm / step_mm + _NOISE)


def nearest_steps(value_mm: float, step_mm: float, parts: int = 1) -> float:
    """Number of steps, or of halves of them, nearest to a value.

    n = round(k v / s) / k

    Parameters
    ----------
    value_mm : Value v. [mm]
    step_mm : Step s; any one unit will do for both. [mm]
    parts : Parts k into which a step can be read. [1]

    Returns
    -------
    Number n. [1]

    Valid for
    ---------
    Value finite, step more than 0, 1 to 10 parts.

    Source
    ------
    Arithmetic.

    >>> nearest_steps(0.037, 0.01, 2)
    3.5
    """
    finite(value_mm, "value", "mm")
    positive(step_mm, "step", "mm")
    between(parts, 1, 10, "parts of a step")
    return round(parts * value_mm / step_mm) / parts


def length_of_steps(count: float, step_mm: float) -> float:
    """Length of so many steps.

    l = n s

    Parameters
    ----------
    count : Number n of steps. [1]
    step_mm : Step s. [mm]

    Returns
    -------
    Length l. [mm]

    Valid for
    ---------
    Number finite, step more than 0.

    Source
    ------
    Arithmetic.

    >>> round(length_of_steps(7, 0.025), 6)
    0.175
    """
    finite(count, "number of steps")
    positive(step_mm, "step", "mm")
    return count * step_mm


def surely_less(whole_mm: float, doubt_mm: float, step_mm: float) -> float:
    """What is left of a whole as it is written, rounded down, less a doubt as it is written, rounded up.

    r = step_down(w) - step_up(u); w - u where steps so coarse leave nothing

    Parameters
    ----------
    whole_mm : Whole w. [mm]
    doubt_mm : Doubt u. [mm]
    step_mm : Step in which both are written. [mm]

    Returns
    -------
    Rest r. [mm]

    Valid for
    ---------
    Values finite, doubt 0 or more, step more than 0.

    Source
    ------
    Rounding inward, derived.

    >>> round(surely_less(0.0184, 0.0043, 0.001), 6)
    0.013
    """
    at_least(doubt_mm, 0, "doubt", "mm")
    left = step_down(whole_mm, step_mm) - step_up(doubt_mm, step_mm)
    return left if left > step_mm / 2 else whole_mm - doubt_mm


def equal_cut(stock_on_diameter_mm: float, passes: int, step_mm: float) -> float:
    """Depth per side of each of so many equal cuts that do not go past the size.

    a = step_down(s / (2 k)), but one step at least

    Parameters
    ----------
    stock_on_diameter_mm : Stock s on diameter. [mm]
    passes : Number k of cuts. [1]
    step_mm : Division of the dial, as movement of the tool. [mm]

    Returns
    -------
    Depth a per side. [mm]

    Valid for
    ---------
    Stock 0 or more, at least one cut, step more than 0.

    Source
    ------
    Arithmetic.

    >>> round(equal_cut(1.71, 3, 0.025), 6)
    0.275
    """
    return max(step_mm, step_down(_each(stock_on_diameter_mm, passes), step_mm))


def finishing_cut(stock_on_diameter_mm: float, passes: float, step_mm: float) -> float:
    """Depth per side of the last cuts that take a stock off between them.

    a = step_up(s / (2 k))

    Parameters
    ----------
    stock_on_diameter_mm : Stock s on diameter, at least. [mm]
    passes : Number k of cuts. [1]
    step_mm : Division of the dial, as movement of the tool. [mm]

    Returns
    -------
    Depth a per side. [mm]

    Valid for
    ---------
    Stock 0 or more, at least one cut, step more than 0.

    Source
    ------
    Arithmetic.

    >>> round(finishing_cut(0.3, 2, 0.02), 6)
    0.08
    """
    return step_up(_each(stock_on_diameter_mm, passes), step_mm)


def _each(stock_on_diameter_mm: float, passes: float) -> float:
    at_least(stock_on_diameter_mm, 0, "stock", "mm")
    at_least(passes, 1, "number of cuts")
    return stock_on_diameter_mm / 2 / passes
