"""The hole a drill leaves, what it must leave for boring or reaming, and the pecks it is drilled in."""

from collections.abc import Sequence
from itertools import pairwise

from tailtrue.calc.validity import OutOfRange, at_least, between, finite, positive

_SAME_MM = 1e-9  # a peck that would end a rounding short of the depth ends at the depth


def expected_oversize(diameter_mm: float, sizes_mm: Sequence[float], oversizes_mm: Sequence[float]) -> float:
    """How much larger than its drill a hole is expected to be, between the sizes of a table.

    o = o1 + (o2 - o1) (D - D1) / (D2 - D1)

    Parameters
    ----------
    diameter_mm : Diameter D of the drill. [mm]
    sizes_mm : Sizes of the table, each larger than the one before. [mm]
    oversizes_mm : Oversize on diameter at each of them. [mm]

    Returns
    -------
    Oversize o on diameter of a drill led true; a tailstock off the axis adds to it. [mm]

    Valid for
    ---------
    From the smallest to the largest size of the table.

    Source
    ------
    Test of over 2800 holes in Machinery's Handbook, 27th ed., p. 885 (its figures from memory).

    >>> round(expected_oversize(9.525, [6.35, 12.7], [0.102, 0.127]), 4)
    0.1145
    """
    if len(sizes_mm) != len(oversizes_mm) or len(sizes_mm) < 2:
        raise OutOfRange("the table of oversizes needs at least two sizes and an oversize for each")
    for oversize in oversizes_mm:
        finite(oversize, "oversize", "mm")
    for smaller, larger in pairwise(sizes_mm):
        if not smaller < larger:
            raise OutOfRange(f"the table of oversizes goes from {smaller:g} mm to {larger:g} mm; each must be larger")
    between(diameter_mm, sizes_mm[0], sizes_mm[-1], "diameter of the drill", "mm")
    last = len(sizes_mm) - 1
    right = next(place for place, size in enumerate(sizes_mm) if place == last or (place and diameter_mm <= size))
    share = (diameter_mm - sizes_mm[right - 1]) / (sizes_mm[right] - sizes_mm[right - 1])
    return oversizes_mm[right - 1] + share * (oversizes_mm[right] - oversizes_mm[right - 1])


def largest_hole(diameter_mm: float, oversize_mm: float, tailstock_offset_mm: float = 0.0) -> float:
    """Largest diameter that a drilled hole may have, when the tailstock may stand off the axis.

    d = D + o + 2 e

    Parameters
    ----------
    diameter_mm : Diameter D of the drill. [mm]
    oversize_mm : Oversize o on diameter of a drill led true. [mm]
    tailstock_offset_mm : Distance e of the tailstock from the axis of the spindle. [mm]

    Returns
    -------
    Largest diameter d, at the mouth. [mm]

    Valid for
    ---------
    Diameter more than 0, oversize and offset 0 or more.

    Source
    ------
    War Department TM 1-420 (1940), par. 36-37 (head and tailstock in line for drilling); the sum is common practice.

    >>> round(largest_hole(20, 0.13, 0.2), 2)
    20.53
    """
    positive(diameter_mm, "diameter of the drill", "mm")
    at_least(oversize_mm, 0, "oversize", "mm")
    at_least(tailstock_offset_mm, 0, "offset of the tailstock", "mm")
    return diameter_mm + oversize_mm + 2 * tailstock_offset_mm


def least_boring_stock(oversize_mm: float, wander_mm: float, tailstock_offset_mm: float = 0.0) -> float:
    """Least stock on diameter for boring, so that the bore cleans up all round and follows the true axis.

    s = 2 (w + e + o)

    Parameters
    ----------
    oversize_mm : Oversize o on diameter that the drill leaves. [mm]
    wander_mm : Distance w by which the drill may leave its way, a radius. [mm]
    tailstock_offset_mm : Distance e of the tailstock from the axis of the spindle. [mm]

    Returns
    -------
    Stock s on diameter between the drill and the finished bore. [mm]

    Valid for
    ---------
    All 0 or more; the tables of the trade may ask for more, the larger holds.

    Source
    ------
    Common practice; the full oversize is counted on both sides, which is on the safe side.

    >>> round(least_boring_stock(0.13, 0.3, 0.1), 2)
    1.06
    """
    at_least(oversize_mm, 0, "oversize", "mm")
    at_least(wander_mm, 0, "wander of the drill", "mm")
    at_least(tailstock_offset_mm, 0, "offset of the tailstock", "mm")
    return 2 * (wander_mm + tailstock_offset_mm + oversize_mm)


def drill_before_reamer(reamer_mm: float, undersize_mm: float, oversize_mm: float, metal_factor: float = 1.0) -> float:
    """Diameter of the drill whose hole leaves what a reamer is to take off.

    D = R - (u k + o)

    Parameters
    ----------
    reamer_mm : Diameter R of the reamed hole. [mm]
    undersize_mm : Stock u on diameter for the reamer. [mm]
    oversize_mm : Oversize o on diameter that the drill leaves. [mm]
    metal_factor : Factor k on the stock, 1.5 for light metals. [1]

    Returns
    -------
    Diameter D of the drill; take the next smaller that there is. [mm]

    Valid for
    ---------
    Reamer and stock more than 0, oversize 0 or more, factor 1 to 2, and a drill larger than half the reamer; the
    tailstock in line, or the reamer makes a bell mouth.

    Source
    ------
    Trade-theory rule for the undersize before reaming.

    >>> round(drill_before_reamer(16, 0.25, 0.05), 2)
    15.7
    """
    positive(reamer_mm, "reamer", "mm")
    positive(undersize_mm, "stock for the reamer", "mm")
    at_least(oversize_mm, 0, "oversize", "mm")
    between(metal_factor, 1, 2, "factor on the stock")
    drill = reamer_mm - (undersize_mm * metal_factor + oversize_mm)
    if drill <= reamer_mm / 2:
        raise OutOfRange(f"before a reamer of {reamer_mm:g} mm the drill would be {drill:g} mm; that is too much to ream")
    return drill


def peck_depths(
    depth_mm: float, diameter_mm: float, first_ratio: float, next_ratio: float, deep_ratio: float, deep_from_ratio: float
) -> tuple[float, ...]:
    """Depths at which a drill is drawn out to clear its chips.

    first peck r1 D, then steps of r2 D, beyond r4 D steps of r3 D, last = depth

    Parameters
    ----------
    depth_mm : Depth of the hole, measured as the pecks are. [mm]
    diameter_mm : Diameter D of the drill. [mm]
    first_ratio : First peck r1 in diameters, 2 to 3. [1]
    next_ratio : Further pecks r2 in diameters, 1. [1]
    deep_ratio : Pecks r3 in a deep hole, 0.5. [1]
    deep_from_ratio : Depth r4 in diameters from which on the pecks are short, 6. [1]

    Returns
    -------
    Depth from the face after each peck, the last one the depth of the hole. [mm]

    Valid for
    ---------
    Depth 0.01 to 50 diameters, ratios 0.1 to 20, the later pecks no longer than the earlier.

    Source
    ------
    Metal drilling guide (deep from three diameters); the steps are common practice.

    >>> peck_depths(20, 5, 2, 1, 0.5, 6)
    (10, 15, 20)
    """
    positive(diameter_mm, "diameter of the drill", "mm")
    at_least(deep_ratio, 0.1, "pecks of a deep hole in diameters")
    at_least(next_ratio, deep_ratio, "further pecks in diameters")
    between(first_ratio, next_ratio, 20, "first peck in diameters")
    between(deep_from_ratio, 0.1, 20, "depth in diameters from which on pecks are short")
    between(depth_mm / diameter_mm, 0.01, 50, "depth of the hole in diameters")
    reached = [min(depth_mm, first_ratio * diameter_mm)]
    while reached[-1] < depth_mm:
        deep = reached[-1] >= deep_from_ratio * diameter_mm - _SAME_MM
        depth = reached[-1] + (deep_ratio if deep else next_ratio) * diameter_mm
        reached.append(depth if depth < depth_mm - _SAME_MM else depth_mm)
    return tuple(reached)


def withdrawal_travel(depths_mm: Sequence[float]) -> float:
    """Way that a drill runs out and in again without cutting, over all its pecks.

    s = 2 (d1 + ... + d(n-1)) + dn

    Parameters
    ----------
    depths_mm : Depth d after each peck, as of `peck_depths`. [mm]

    Returns
    -------
    Way s, to be divided by the speed of the hand for the time it takes. [mm]

    Valid for
    ---------
    At least one depth, all more than 0, each deeper than the one before; the drill leaves the hole every time.

    Source
    ------
    Sum of ways.

    >>> withdrawal_travel([10, 15, 20])
    70
    """
    if not depths_mm:
        raise OutOfRange("there is no peck to count")
    for depth in depths_mm:
        positive(depth, "depth of a peck", "mm")
    for before, after in pairwise(depths_mm):
        if not before < after:
            raise OutOfRange(f"a peck goes from {before:g} mm to {after:g} mm; each must be deeper than the one before")
    return 2 * sum(depths_mm[:-1]) + depths_mm[-1]
