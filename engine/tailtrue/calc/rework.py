"""Opening a bore that came out too small: whole divisions of the dial that end inside the window, never past it."""

from math import ceil, floor, inf

from tailtrue.calc.validity import OutOfRange, at_least, positive

_NOISE = 1e-9


def landing_divisions(least_mm: float, largest_mm: float, low_mm: float, high_mm: float, division_mm: float) -> int | None:
    """Divisions of the dial, one at least, that bring a bore into its window, nearest to the middle of the window.

    least + 2 n division >= low and largest + 2 n division <= high, n = 1, 2, ...

    Parameters
    ----------
    least_mm : Least reading of the bore, a diameter. [mm]
    largest_mm : Largest reading of the same bore, a diameter. [mm]
    low_mm : Smallest bore allowed, a diameter. [mm]
    high_mm : Largest bore allowed, a diameter. [mm]
    division_mm : What one division of the dial moves the tool, a radius. [mm]

    Returns
    -------
    Number of divisions n; None when no whole number of them ends inside the window. [1]

    Valid for
    ---------
    Sizes and division more than 0, readings and limits in order; the tool cuts what is set.

    Source
    ------
    Geometry, derived: a bore grows by twice what the tool moves.

    >>> landing_divisions(24.9, 24.9, 25.0, 25.1, 0.025)
    3
    """
    for value, name in ((least_mm, "least reading"), (low_mm, "smallest bore"), (division_mm, "division")):
        positive(value, name, "mm")
    if not (least_mm <= largest_mm < inf and low_mm < high_mm < inf):
        raise OutOfRange("the least reading and the smallest bore come first")
    step = 2 * division_mm
    fewest = max(1, ceil((low_mm - least_mm) / step - _NOISE))
    most = floor((high_mm - largest_mm) / step + _NOISE)
    if most < fewest:
        return None
    middle = (low_mm + high_mm - least_mm - largest_mm) / 2 / step
    return min(max(round(middle), fewest), most)


def shared_divisions(total: int, most: int) -> tuple[int, ...]:
    """Divisions of each cut when a total is shared out evenly, the deepest first.

    n = ceil(total / most) cuts, each total // n divisions or one more

    Parameters
    ----------
    total : Divisions to take in all. [1]
    most : Most divisions of one cut. [1]

    Returns
    -------
    Divisions of each cut, in order; together the total. [1]

    Valid for
    ---------
    Both 1 or more.

    Source
    ------
    Arithmetic, derived.

    >>> shared_divisions(5, 2)
    (2, 2, 1)
    """
    if not (1 <= total < inf and 1 <= most < inf):
        raise OutOfRange(f"a total of {total} and {most} at most cannot be shared out")
    cuts = ceil(total / most)
    each, over = divmod(total, cuts)
    return tuple(each + 1 if index < over else each for index in range(cuts))


def light_cuts(least_mm: float, low_mm: float, high_mm: float, depth_mm: float) -> int:
    """Light cuts from a bore as found to the middle of its window.

    n = ((low + high) / 2 - least) / (2 a), up to a whole number, 0 at least

    Parameters
    ----------
    least_mm : Least reading of the bore. [mm]
    low_mm : Smallest bore to accept. [mm]
    high_mm : Largest bore to accept. [mm]
    depth_mm : Depth a per side of a cut. [mm]

    Returns
    -------
    Number n. [1]

    Valid for
    ---------
    Sizes and depth more than 0, smallest not above largest; the tool cuts what is set.

    Source
    ------
    Arithmetic.

    >>> light_cuts(24.9, 25.0, 25.02, 0.02)
    3
    """
    positive(least_mm, "least reading", "mm")
    positive(low_mm, "smallest bore", "mm")
    at_least(high_mm, low_mm, "largest bore", "mm")
    positive(depth_mm, "depth of cut", "mm")
    return max(0, ceil(((low_mm + high_mm) / 2 - least_mm) / 2 / depth_mm - _NOISE))
