"""Lengths and diameters laid out: shares, margins on both sides, edges and middles, pieces out of a stock."""

from tailtrue.calc.validity import at_least, between, finite, positive


def share_of(whole_mm: float, share: float) -> float:
    """Share of a length, a size or a limit.

    p = q w

    Parameters
    ----------
    whole_mm : Whole w; any one unit will do for whole and part. [mm]
    share : Share q. [1]

    Returns
    -------
    Part p. [mm]

    Valid for
    ---------
    Whole 0 or more, share 0 to 1.

    Source
    ------
    Arithmetic.

    >>> round(share_of(0.016, 0.25), 6)
    0.004
    """
    at_least(whole_mm, 0, "whole", "mm")
    between(share, 0, 1, "share")
    return share * whole_mm


def length_of_diameters(diameter_mm: float, ratio: float) -> float:
    """Length that is so many diameters, or so many widths.

    l = q d

    Parameters
    ----------
    diameter_mm : Diameter d. [mm]
    ratio : Number q of diameters. [1]

    Returns
    -------
    Length l. [mm]

    Valid for
    ---------
    Diameter more than 0, number 0 or more.

    Source
    ------
    Arithmetic.

    >>> length_of_diameters(25, 1.5)
    37.5
    """
    positive(diameter_mm, "diameter", "mm")
    at_least(ratio, 0, "number of diameters")
    return ratio * diameter_mm


def length_ratio(length_mm: float, measure_mm: float) -> float:
    """Length as a multiple of another.

    q = l / m

    Parameters
    ----------
    length_mm : Length l. [mm]
    measure_mm : Length m that it is held against. [mm]

    Returns
    -------
    Multiple q. [1]

    Valid for
    ---------
    Length 0 or more, the other more than 0.

    Source
    ------
    Arithmetic.

    >>> length_ratio(300, 35)
    8.571428571428571
    """
    at_least(length_mm, 0, "length", "mm")
    positive(measure_mm, "length that it is held against", "mm")
    return length_mm / measure_mm


def percentage(part_mm: float, whole_mm: float) -> float:
    """Part of a whole in hundredths.

    q = 100 p / w

    Parameters
    ----------
    part_mm : Part p. [mm]
    whole_mm : Whole w. [mm]

    Returns
    -------
    Hundredths q. [1]

    Valid for
    ---------
    Part finite, whole more than 0.

    Source
    ------
    Arithmetic.

    >>> percentage(240, 300)
    80.0
    """
    finite(part_mm, "part", "mm")
    positive(whole_mm, "whole", "mm")
    return 100 * part_mm / whole_mm


def within_both_sides(outer_mm: float, margin_mm: float) -> float:
    """What is left of a length or a diameter when the same is taken off at both ends or all round.

    i = o - 2 m

    Parameters
    ----------
    outer_mm : Length or diameter o. [mm]
    margin_mm : Margin m at each end, or per side. [mm]

    Returns
    -------
    Length or diameter i; less than 0 when nothing is left. [mm]

    Valid for
    ---------
    Length finite, margin 0 or more.

    Source
    ------
    Geometry, derived.

    >>> within_both_sides(180, 10)
    160
    """
    finite(outer_mm, "length", "mm")
    at_least(margin_mm, 0, "margin", "mm")
    return outer_mm - 2 * margin_mm


def over_both_sides(inner_mm: float, margin_mm: float) -> float:
    """Length or diameter with the same added at both ends or all round.

    o = i + 2 m

    Parameters
    ----------
    inner_mm : Length or diameter i. [mm]
    margin_mm : Margin m at each end, or per side. [mm]

    Returns
    -------
    Length or diameter o. [mm]

    Valid for
    ---------
    Length finite, margin 0 or more.

    Source
    ------
    Geometry, derived.

    >>> over_both_sides(400, 1.5)
    403.0
    """
    finite(inner_mm, "length", "mm")
    at_least(margin_mm, 0, "margin", "mm")
    return inner_mm + 2 * margin_mm


def per_side(outer_mm: float, inner_mm: float) -> float:
    """Step from one diameter to another, on the radius.

    h = (D - d) / 2

    Parameters
    ----------
    outer_mm : Larger diameter D. [mm]
    inner_mm : Smaller diameter d. [mm]

    Returns
    -------
    Height h per side; less than 0 when the second is larger. [mm]

    Valid for
    ---------
    Both 0 or more.

    Source
    ------
    Geometry, derived.

    >>> per_side(70, 25)
    22.5
    """
    at_least(outer_mm, 0, "diameter", "mm")
    at_least(inner_mm, 0, "diameter", "mm")
    return (outer_mm - inner_mm) / 2


def on_diameter(depth_mm: float, cuts: float = 1) -> float:
    """What so many cuts change the diameter by.

    c = 2 a k

    Parameters
    ----------
    depth_mm : Depth a per side of each. [mm]
    cuts : Number k of cuts. [1]

    Returns
    -------
    Change c of diameter. [mm]

    Valid for
    ---------
    Both 0 or more.

    Source
    ------
    Geometry, derived.

    >>> on_diameter(0.05, 2)
    0.2
    """
    at_least(depth_mm, 0, "depth of cut", "mm")
    at_least(cuts, 0, "number of cuts")
    return 2 * depth_mm * cuts


def near_edge(middle_mm: float, width_mm: float) -> float:
    """Edge of a band from where its middle is counted.

    e = m - w / 2

    Parameters
    ----------
    middle_mm : Distance m of the middle. [mm]
    width_mm : Width w of the band. [mm]

    Returns
    -------
    Distance e of the nearer edge; less than 0 when the band reaches past the start. [mm]

    Valid for
    ---------
    Distance finite, width more than 0.

    Source
    ------
    Geometry, derived.

    >>> near_edge(48, 35)
    30.5
    """
    finite(middle_mm, "distance of the middle", "mm")
    positive(width_mm, "width", "mm")
    return middle_mm - width_mm / 2


def middle_past(edge_mm: float, width_mm: float) -> float:
    """Middle of a band from where its nearer edge is counted.

    m = e + w / 2

    Parameters
    ----------
    edge_mm : Distance e of the nearer edge. [mm]
    width_mm : Width w of the band. [mm]

    Returns
    -------
    Distance m of the middle. [mm]

    Valid for
    ---------
    Distance finite, width more than 0.

    Source
    ------
    Geometry, derived.

    >>> middle_past(30.5, 35)
    48.0
    """
    finite(edge_mm, "distance of the edge", "mm")
    positive(width_mm, "width", "mm")
    return edge_mm + width_mm / 2


def midway(first_mm: float, second_mm: float) -> float:
    """Middle between two sizes, or mean of two readings.

    m = (a + b) / 2

    Parameters
    ----------
    first_mm : Size a. [mm]
    second_mm : Size b. [mm]

    Returns
    -------
    Middle m. [mm]

    Valid for
    ---------
    Both finite.

    Source
    ------
    Geometry, derived.

    >>> midway(24.98, 25.02)
    25.0
    """
    finite(first_mm, "first size", "mm")
    finite(second_mm, "second size", "mm")
    return (first_mm + second_mm) / 2


def length_for_pieces(piece_mm: float, kerf_mm: float, count: int) -> float:
    """Length of stock from which pieces are sawn, a cut for each.

    L = n (l + k)

    Parameters
    ----------
    piece_mm : Length l of a piece. [mm]
    kerf_mm : Width k of the saw cut. [mm]
    count : Number n of pieces. [1]

    Returns
    -------
    Length L. [mm]

    Valid for
    ---------
    Length more than 0, cut 0 or more, at least one piece.

    Source
    ------
    Arithmetic.

    >>> length_for_pieces(38, 2, 2)
    80
    """
    positive(piece_mm, "length of a piece", "mm")
    at_least(kerf_mm, 0, "saw cut", "mm")
    at_least(count, 1, "number of pieces")
    return count * (piece_mm + kerf_mm)


def piece_of_stock(stock_mm: float, kerf_mm: float, count: int) -> float:
    """Length of each of the pieces into which a whole stock is sawn.

    l = (L - (n - 1) k) / n

    Parameters
    ----------
    stock_mm : Length L of the stock. [mm]
    kerf_mm : Width k of the saw cut. [mm]
    count : Number n of pieces. [1]

    Returns
    -------
    Length l; less than 0 when the saw takes it all. [mm]

    Valid for
    ---------
    Length 0 or more, cut 0 or more, at least one piece.

    Source
    ------
    Arithmetic.

    >>> piece_of_stock(82, 2, 2)
    40.0
    """
    at_least(stock_mm, 0, "length of the stock", "mm")
    at_least(kerf_mm, 0, "saw cut", "mm")
    at_least(count, 1, "number of pieces")
    return (stock_mm - (count - 1) * kerf_mm) / count
