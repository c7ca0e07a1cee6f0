"""The ladder of drills: which pilot may go before which drill, by size alone."""

from collections.abc import Sequence
from functools import cache

from tailtrue.calc.validity import OutOfRange, at_least, between, positive


def pilot_choices(
    diameter_mm: float,
    sizes_mm: Sequence[float],
    least_ratio: float,
    most_ratio: float,
    step_most_ratio: float,
    step_least_ratio: float,
) -> tuple[float, ...]:
    """Pilots that may go before a drill, out of those there are, the best one first.

    best max(r1 D, D / s1) <= d <= r2 D; then r2 D < d <= D / s2; last r1 D <= d < D / s1

    Parameters
    ----------
    diameter_mm : Diameter D of the drill. [mm]
    sizes_mm : Sizes d there are, in any order. [mm]
    least_ratio : Least pilot r1 as a share of D: its chisel edge, or more. [1]
    most_ratio : Widest usual pilot r2 as a share of D. [1]
    step_most_ratio : Largest usual step s1 from drill to drill. [1]
    step_least_ratio : Smallest step s2 at which the lips still cut. [1]

    Returns
    -------
    Sizes in order of preference: usual ones from small to large, then wider ones, then narrower ones from large to
    small. [mm]

    Valid for
    ---------
    Diameter more than 0, ratios r1 0.03 to 0.5 (0.18 for a standard point) and r2 from r1 to 0.9, steps 1.05 to 6 and
    s2 no more than s1.

    Source
    ------
    Machinery's Handbook, 31st ed., p. 1152 (chisel edge 0.18 D); the other ratios are common practice.

    >>> pilot_choices(22, [5, 6, 10, 13, 20], 0.18, 0.5, 2.5, 1.1)
    (10, 13, 20, 6, 5)
    """
    positive(diameter_mm, "diameter of the drill", "mm")
    for size in sizes_mm:
        positive(size, "size of a drill", "mm")
    between(least_ratio, 0.03, 0.5, "least pilot as a share of the drill")
    between(most_ratio, least_ratio, 0.9, "widest pilot as a share of the drill")
    at_least(step_least_ratio, 1.05, "smallest step from drill to drill")
    between(step_most_ratio, step_least_ratio, 6, "largest step from drill to drill")
    least, narrow = least_ratio * diameter_mm, diameter_mm / step_most_ratio
    wide, widest = most_ratio * diameter_mm, diameter_mm / step_least_ratio
    rising = sorted(sizes_mm)
    usual = [size for size in rising if max(least, narrow) <= size <= wide]
    # A crib with gaps: a wider pilot still leaves the lips to cut, a narrower one still clears the chisel edge.
    wider = [size for size in rising if wide < size <= widest]
    narrower = [size for size in reversed(rising) if least <= size < narrow and size <= wide]
    return (*usual, *wider, *narrower)


def drill_steps(
    last_mm: float,
    sizes_mm: Sequence[float],
    solid_most_mm: float,
    least_ratio: float,
    most_ratio: float,
    step_most_ratio: float,
    step_least_ratio: float,
) -> tuple[float, ...]:
    """Drills that lead to a last drill, by size alone, the smallest first.

    dn = last; d(k-1) first of pilot_choices(dk) from which a way leads on; d1 <= largest from the spot

    Parameters
    ----------
    last_mm : Last drill. [mm]
    sizes_mm : Sizes there are, in any order; larger ones are passed over. [mm]
    solid_most_mm : Largest drill that may start from the spot. [mm]
    least_ratio : Least pilot as a share of the drill, as in `pilot_choices`. [1]
    most_ratio : Widest usual pilot as a share of the drill. [1]
    step_most_ratio : Largest usual step from drill to drill. [1]
    step_least_ratio : Smallest step at which the lips still cut. [1]

    Returns
    -------
    Sizes from the first drill to the last. [mm]

    Valid for
    ---------
    As `pilot_choices`; refused when no drill there is leads to the last one. Hand, holder and motor must drive each
    step as well (`drill_demand`).

    Source
    ------
    As `pilot_choices`.

    >>> drill_steps(22, [6, 13, 22, 30], 8, 0.18, 0.5, 2.5, 1.1)
    (6, 13, 22)
    """
    positive(last_mm, "last drill", "mm")
    positive(solid_most_mm, "largest drill from the spot", "mm")

    @cache
    def down_to(drill: float) -> tuple[float, ...] | None:
        if drill <= solid_most_mm:
            return (drill,)
        for pilot in pilot_choices(drill, sizes_mm, least_ratio, most_ratio, step_most_ratio, step_least_ratio):
            way = down_to(pilot)
            if way is not None:
                return (*way, drill)
        return None

    found = down_to(last_mm)
    if found is None:
        raise OutOfRange(
            f"no drill there is leads to one of {last_mm:g} mm; a drill of at most {solid_most_mm:g} mm must start, "
            f"and each must be at least {least_ratio:g} of the next"
        )
    return found
