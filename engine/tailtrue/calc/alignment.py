"""From the difference of two collars to the move of the tailstock, and what else makes a difference.

A difference is always that of diameters, tailstock collar less headstock collar. A move is that of the
tailstock centre across the bed; more than 0 is toward the tool, wherever the tool is mounted.
"""

from math import floor, hypot

from tailtrue.calc.setover import setover_by_rule, taper_from_diameters
from tailtrue.calc.validity import at_least, between, collars_on_span, finite, positive

_MOST_OFFSET_SHARE = 0.02  # of the span; the first-order rule is then right within two parts in ten thousand
_MOST_HEIGHT_SHARE = 0.1  # of the radius of the collar
_ROUNDING_SLACK = 1e-9


def tailstock_move(difference_mm: float, span_mm: float, first_station_mm: float, second_station_mm: float) -> float:
    """Move of the tailstock centre that takes the taper out.

    m = (D_t - D_h) / 2 * L / (b - a)

    Parameters
    ----------
    difference_mm : Diameter of the tailstock collar less that of the headstock collar. [mm]
    span_mm : Distance L between the points of the two centres. [mm]
    first_station_mm : Distance a of the headstock collar from the headstock centre. [mm]
    second_station_mm : Distance b of the tailstock collar from the headstock centre. [mm]

    Returns
    -------
    Move m of the centre itself, not of a diameter dial; more than 0 is toward the tool. [mm]

    Valid for
    ---------
    0 <= a < b <= L, move at most 2 % of L; both collars cut between centres, the cross slide not touched.

    Source
    ------
    Geometry, derived; the direction agrees with an examination question of the US Coast Guard (no. 642).

    >>> round(tailstock_move(69.866 - 69.842, 300, 30, 270), 6)
    0.015
    """
    finite(difference_mm, "difference of the collars", "mm")
    collars_on_span(span_mm, first_station_mm, second_station_mm)
    move = difference_mm / 2 * span_mm / (second_station_mm - first_station_mm)
    between(move / span_mm, -_MOST_OFFSET_SHARE, _MOST_OFFSET_SHARE, "move as a share of the span")
    return move


def diameter_difference(move_mm: float, span_mm: float, first_station_mm: float, second_station_mm: float) -> float:
    """Difference of the collars that a tailstock leaves when it still needs a move.

    D_t - D_h = 2 m (b - a) / L

    Parameters
    ----------
    move_mm : Move m that the centre needs, more than 0 toward the tool. [mm]
    span_mm : Distance L between the points of the two centres. [mm]
    first_station_mm : Distance a of the headstock collar from the headstock centre. [mm]
    second_station_mm : Distance b of the tailstock collar from the headstock centre. [mm]

    Returns
    -------
    Diameter of the tailstock collar less that of the headstock collar. [mm]

    Valid for
    ---------
    As `tailstock_move`.

    Source
    ------
    `tailstock_move` turned round.

    >>> round(diameter_difference(0.015, 300, 30, 270), 6)
    0.024
    """
    collars_on_span(span_mm, first_station_mm, second_station_mm)
    between(move_mm / span_mm, -_MOST_OFFSET_SHARE, _MOST_OFFSET_SHARE, "move as a share of the span")
    return 2 * move_mm * (second_station_mm - first_station_mm) / span_mm


def tailstock_move_exact(
    difference_mm: float, bar_span_mm: float, first_station_mm: float, second_station_mm: float
) -> float:
    """Move of the tailstock centre for an offset of any size, lengths taken along the slanting bar.

    m = l sin(atan((D_t - D_h) / (2 (b - a))))

    Parameters
    ----------
    difference_mm : Diameter of the tailstock collar less that of the headstock collar. [mm]
    bar_span_mm : Distance l between the bottoms of the centre holes, along the bar. [mm]
    first_station_mm : Distance a of the headstock collar, along the bar. [mm]
    second_station_mm : Distance b of the tailstock collar, along the bar. [mm]

    Returns
    -------
    Move m of the centre; more than 0 is toward the tool. [mm]

    Valid for
    ---------
    0 <= a < b <= l; the point of the tool at centre height.

    Source
    ------
    Geometry, derived.

    >>> round(tailstock_move_exact(1.6, 300.0016667, 30, 270), 6)
    1.0
    """
    finite(difference_mm, "difference of the collars", "mm")
    collars_on_span(bar_span_mm, first_station_mm, second_station_mm)
    slope = difference_mm / (2 * (second_station_mm - first_station_mm))
    return bar_span_mm * slope / hypot(1, slope)


def scaled_tolerance(tolerance_mm: float, tolerance_length_mm: float, spacing_mm: float) -> float:
    """Tolerance on a difference, brought from one length to the spacing of the collars.

    T = T0 (b - a) / L0

    Parameters
    ----------
    tolerance_mm : Tolerance T0 on the difference of diameters. [mm]
    tolerance_length_mm : Length L0 to which it belongs. [mm]
    spacing_mm : Distance b - a between the middles of the collars. [mm]

    Returns
    -------
    Limit T on the difference of the collars. [mm]

    Valid for
    ---------
    All more than 0.

    Source
    ------
    Proportion, derived.

    >>> round(scaled_tolerance(0.020, 300, 240), 6)
    0.016
    """
    positive(tolerance_mm, "tolerance", "mm")
    positive(tolerance_length_mm, "length of the tolerance", "mm")
    positive(spacing_mm, "distance between the collars", "mm")
    return tolerance_mm * spacing_mm / tolerance_length_mm


def height_error_difference(
    height_error_mm: float,
    collar_diameter_mm: float,
    span_mm: float,
    first_station_mm: float,
    second_station_mm: float,
) -> float:
    """Difference of the collars from a tailstock centre that is high or low, the tool at centre height.

    D_t - D_h = h^2 (b^2 - a^2) / (R L^2), R = D / 2

    Parameters
    ----------
    height_error_mm : Height h of the tailstock centre over the headstock centre, of either sign. [mm]
    collar_diameter_mm : Diameter D of the collars. [mm]
    span_mm : Distance L between the points of the two centres. [mm]
    first_station_mm : Distance a of the headstock collar from the headstock centre. [mm]
    second_station_mm : Distance b of the tailstock collar from the headstock centre. [mm]

    Returns
    -------
    Diameter of the tailstock collar less that of the headstock collar; never less than 0. [mm]

    Valid for
    ---------
    0 <= a < b <= L, h at most a tenth of the radius of the collar.

    Source
    ------
    Geometry (distance of the slanting axis from the path of the tool), derived.

    >>> round(height_error_difference(0.5, 70, 300, 30, 270), 6)
    0.005714
    """
    collars_on_span(span_mm, first_station_mm, second_station_mm)
    radius = _radius_that_dwarfs(height_error_mm, collar_diameter_mm, "height error of the tailstock")
    return height_error_mm**2 * (second_station_mm**2 - first_station_mm**2) / (radius * span_mm**2)


def tool_height_difference(
    tool_height_mm: float,
    height_error_mm: float,
    collar_diameter_mm: float,
    span_mm: float,
    first_station_mm: float,
    second_station_mm: float,
) -> float:
    """Difference of the collars from a tool off centre height that meets a tailstock off height.

    D_t - D_h = -2 t h (b - a) / (R L), R = D / 2

    Parameters
    ----------
    tool_height_mm : Height t of the point of the tool over centre height, of either sign. [mm]
    height_error_mm : Height h of the tailstock centre over the headstock centre, of either sign. [mm]
    collar_diameter_mm : Diameter D of the collars. [mm]
    span_mm : Distance L between the points of the two centres. [mm]
    first_station_mm : Distance a of the headstock collar from the headstock centre. [mm]
    second_station_mm : Distance b of the tailstock collar from the headstock centre. [mm]

    Returns
    -------
    Diameter of the tailstock collar less that of the headstock collar, added by the two together. [mm]

    Valid for
    ---------
    0 <= a < b <= L, t and h at most a tenth of the radius of the collar; first order.

    Source
    ------
    Geometry, derived.

    >>> round(tool_height_difference(1, 0.1, 70, 300, 30, 270), 6)
    -0.004571
    """
    collars_on_span(span_mm, first_station_mm, second_station_mm)
    radius = _radius_that_dwarfs(height_error_mm, collar_diameter_mm, "height error of the tailstock")
    _radius_that_dwarfs(tool_height_mm, collar_diameter_mm, "height of the tool")
    spacing = second_station_mm - first_station_mm
    return -2 * tool_height_mm * height_error_mm * spacing / (radius * span_mm)


def uses_left(diameter_mm: float, least_diameter_mm: float, diameter_per_use_mm: float) -> int:
    """Whole uses left in a collar that is skimmed at each of them.

    N = floor((D - D_least) / c)

    Parameters
    ----------
    diameter_mm : Diameter D of the collar now. [mm]
    least_diameter_mm : Diameter D_least at which it is worn out. [mm]
    diameter_per_use_mm : Diameter c that one use takes off, twice the depth per side. [mm]

    Returns
    -------
    Whole uses N left; 0 when it is worn out. [1]

    Valid for
    ---------
    All more than 0.

    Source
    ------
    Arithmetic.

    >>> uses_left(70, 55, 0.15)
    100
    """
    positive(diameter_mm, "diameter", "mm")
    positive(least_diameter_mm, "least diameter", "mm")
    positive(diameter_per_use_mm, "diameter per use", "mm")
    return max(0, floor((diameter_mm - least_diameter_mm) / diameter_per_use_mm + _ROUNDING_SLACK))


def setover_for_taper(large_diameter_mm: float, small_diameter_mm: float, taper_length_mm: float, span_mm: float) -> float:
    """Set-over of the tailstock that turns a taper between centres.

    s = (D - d) / (2 l) * L

    Parameters
    ----------
    large_diameter_mm : Diameter D at the large end of the taper. [mm]
    small_diameter_mm : Diameter d at its small end. [mm]
    taper_length_mm : Length l of the taper along the axis. [mm]
    span_mm : Distance L between the bottoms of the centre holes of the whole bar. [mm]

    Returns
    -------
    Set-over s of the centre from the line; to which side depends on the end that is to be small. [mm]

    Valid for
    ---------
    0 <= d <= D, taper not longer than the span, half angle at most 4 degrees (the rule then gives at most
    0.25 % too much).

    Source
    ------
    Turning and Boring (1914), taper chapter; the same rule in a US Navy manual.

    >>> setover_for_taper(63.5, 50.8, 152.4, 228.6)
    9.525
    """
    taper = taper_from_diameters(large_diameter_mm, small_diameter_mm, taper_length_mm)
    at_least(span_mm, taper_length_mm, "span", "mm")
    return setover_by_rule(taper, span_mm)


def _radius_that_dwarfs(height_mm: float, collar_diameter_mm: float, name: str) -> float:
    positive(collar_diameter_mm, "diameter of the collars", "mm")
    radius = collar_diameter_mm / 2
    between(abs(height_mm) / radius, 0, _MOST_HEIGHT_SHARE, f"{name} as a share of the radius")
    return radius
