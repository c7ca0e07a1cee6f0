"""The bar between centres in three dimensions, and small errors of its support."""

from math import hypot, sqrt

from tailtrue.calc.validity import at_least, between, collars_on_span, finite, in_order, positive

_MOST_SLANT = 0.1  # of the axis against the path; far beyond any lathe, set-over included
_MOST_QUILL_SLOPE = 0.01
_MOST_HEIGHT_SHARE = 0.1  # of the radius of the collar


def radius_cut(
    cross_slide_mm: float,
    offset_to_tool_mm: float,
    tool_height_mm: float,
    height_error_mm: float,
    station_mm: float,
    span_mm: float,
) -> float:
    """Radius that the tool leaves on a bar between centres, whatever the offset and the heights.

    r = |P x u|, P = (X, t, z), u along (e, h, L), z where P . u = s

    Parameters
    ----------
    cross_slide_mm : Distance X of the point of the tool from the headstock centre, level across the bed. [mm]
    offset_to_tool_mm : Offset e of the tailstock centre, more than 0 toward the tool. [mm]
    tool_height_mm : Height t of the point of the tool over the headstock centre, of either sign. [mm]
    height_error_mm : Height h of the tailstock centre over the headstock centre, of either sign. [mm]
    station_mm : Distance s from the headstock centre, along the bar. [mm]
    span_mm : Distance L between the points of the two centres, along the bed. [mm]

    Returns
    -------
    Radius r at that station. [mm]

    Valid for
    ---------
    X more than 0, e and h at most a tenth of L, station on the bar; rigid bar, straight path of the tool.

    Source
    ------
    Geometry: distance of a point from a line, derived.

    >>> round(2 * (radius_cut(35, -1, 0, 0, 270, 300) - radius_cut(35, -1, 0, 0, 30, 300)), 9)
    1.6
    """
    positive(cross_slide_mm, "distance of the tool from the axis", "mm")
    positive(span_mm, "span", "mm")
    finite(tool_height_mm, "height of the tool", "mm")
    between(offset_to_tool_mm / span_mm, -_MOST_SLANT, _MOST_SLANT, "offset as a share of the span")
    between(height_error_mm / span_mm, -_MOST_SLANT, _MOST_SLANT, "height error as a share of the span")
    bar_span = hypot(span_mm, offset_to_tool_mm, height_error_mm)
    between(station_mm, 0, bar_span, "station", "mm")
    across = cross_slide_mm * offset_to_tool_mm + tool_height_mm * height_error_mm
    carriage = (station_mm * bar_span - across) / span_mm
    return (
        hypot(
            cross_slide_mm * span_mm - offset_to_tool_mm * carriage,
            tool_height_mm * span_mm - height_error_mm * carriage,
            cross_slide_mm * height_error_mm - tool_height_mm * offset_to_tool_mm,
        )
        / bar_span
    )


def height_for_difference(
    difference_mm: float, collar_diameter_mm: float, span_mm: float, first_station_mm: float, second_station_mm: float
) -> float:
    """Height error of the tailstock that by itself makes a given difference of the collars.

    h = L sqrt((D_t - D_h) R / (b^2 - a^2)), R = D / 2

    Parameters
    ----------
    difference_mm : Diameter of the tailstock collar less that of the headstock collar. [mm]
    collar_diameter_mm : Diameter D of the collars. [mm]
    span_mm : Distance L between the points of the two centres. [mm]
    first_station_mm : Distance a of the headstock collar from the headstock centre. [mm]
    second_station_mm : Distance b of the tailstock collar from the headstock centre. [mm]

    Returns
    -------
    Height error h, high or low alike. [mm]

    Valid for
    ---------
    Difference 0 or more (a height error never makes the tailstock collar smaller), 0 <= a < b <= L, h at most a
    tenth of the radius of the collar, tool at centre height.

    Source
    ------
    `alignment.height_error_difference` turned round.

    >>> round(height_for_difference(0.001, 70, 300, 30, 270), 4)
    0.2092
    """
    positive(collar_diameter_mm, "diameter of the collars", "mm")
    collars_on_span(span_mm, first_station_mm, second_station_mm)
    radius = collar_diameter_mm / 2
    most = _MOST_HEIGHT_SHARE**2 * radius * (second_station_mm**2 - first_station_mm**2) / span_mm**2
    between(difference_mm, 0, most, "difference of the collars", "mm")
    return span_mm * sqrt(difference_mm * radius / (second_station_mm**2 - first_station_mm**2))


def quill_shift(slope_mm_per_mm: float, extension_change_mm: float) -> float:
    """Shift of the tailstock centre when a quill that points off is run out or in.

    de = phi dx

    Parameters
    ----------
    slope_mm_per_mm : Slope phi of the quill across the bed against the path of the carriage. [mm/mm]
    extension_change_mm : Change dx of the extension, more than 0 when run out. [mm]

    Returns
    -------
    Shift of the centre, to the side on which the slope counts as more than 0. [mm]

    Valid for
    ---------
    Slope at most 0.01 either way; a quill that moves straight and is clamped as in use.

    Source
    ------
    Geometry, derived.

    >>> round(quill_shift(0.015 / 100, 50), 6)
    0.0075
    """
    between(slope_mm_per_mm, -_MOST_QUILL_SLOPE, _MOST_QUILL_SLOPE, "slope of the quill", "mm/mm")
    finite(extension_change_mm, "change of the extension", "mm")
    return slope_mm_per_mm * extension_change_mm


def third_collar_bow(
    headstock_diameter_mm: float,
    middle_diameter_mm: float,
    tailstock_diameter_mm: float,
    first_station_mm: float,
    middle_station_mm: float,
    second_station_mm: float,
) -> float:
    """Diameter of a third collar less what a plain taper would give there.

    bow = D_m - (D_h + (D_t - D_h) (z_m - a) / (b - a))

    Parameters
    ----------
    headstock_diameter_mm : Diameter D_h of the headstock collar. [mm]
    middle_diameter_mm : Diameter D_m of the third collar. [mm]
    tailstock_diameter_mm : Diameter D_t of the tailstock collar. [mm]
    first_station_mm : Distance a of the headstock collar from the headstock centre. [mm]
    middle_station_mm : Distance z_m of the third collar. [mm]
    second_station_mm : Distance b of the tailstock collar. [mm]

    Returns
    -------
    Bow on the diameter, more than 0 when the third collar is fat. [mm]

    Valid for
    ---------
    0 <= a < z_m < b; all three collars cut at one setting of the cross slide.

    Source
    ------
    Geometry, derived.

    >>> round(third_collar_bow(69.842, 69.858, 69.866, 30, 150, 270), 6)
    0.004
    """
    positive(headstock_diameter_mm, "diameter of the headstock collar", "mm")
    positive(middle_diameter_mm, "diameter of the third collar", "mm")
    positive(tailstock_diameter_mm, "diameter of the tailstock collar", "mm")
    between(first_station_mm, 0, second_station_mm, "station of the headstock collar", "mm")
    in_order(first_station_mm, middle_station_mm, "distance from headstock collar to third collar")
    in_order(middle_station_mm, second_station_mm, "distance from third collar to tailstock collar")
    share = (middle_station_mm - first_station_mm) / (second_station_mm - first_station_mm)
    return middle_diameter_mm - headstock_diameter_mm - (tailstock_diameter_mm - headstock_diameter_mm) * share


def offset_tolerance(tolerance_mm: float, tolerance_length_mm: float, span_mm: float) -> float:
    """Offset of the tailstock centre that uses up a tolerance on the difference of diameters.

    e = T0 L / (2 L0)

    Parameters
    ----------
    tolerance_mm : Tolerance T0 on the difference of diameters. [mm]
    tolerance_length_mm : Length L0 to which it belongs. [mm]
    span_mm : Distance L between the points of the two centres. [mm]

    Returns
    -------
    Limit of the offset e, to either side; it is the same wherever the collars stand. [mm]

    Valid for
    ---------
    All more than 0.

    Source
    ------
    Proportion, derived.

    >>> round(offset_tolerance(0.020, 300, 300), 6)
    0.01
    """
    positive(tolerance_mm, "tolerance", "mm")
    positive(tolerance_length_mm, "length of the tolerance", "mm")
    positive(span_mm, "span", "mm")
    return tolerance_mm * span_mm / (2 * tolerance_length_mm)


def bow_doubt(
    difference_unsure_mm: float,
    first_station_mm: float,
    middle_station_mm: float,
    second_station_mm: float,
) -> float:
    """Doubt of the bow of three collars that are read alike.

    u = u_D / sqrt(2) sqrt(1 + q^2 + (1 - q)^2), q = (z_m - a) / (b - a)

    Parameters
    ----------
    difference_unsure_mm : Doubt u_D of the difference of two collars. [mm]
    first_station_mm : Distance a of the headstock collar. [mm]
    middle_station_mm : Distance z_m of the middle collar. [mm]
    second_station_mm : Distance b of the tailstock collar. [mm]

    Returns
    -------
    Doubt u of the bow. [mm]

    Valid for
    ---------
    Doubt 0 or more, 0 <= a < z_m < b; no error common to the collars.

    Source
    ------
    JCGM 100 (the GUM), equation 11 on `third_collar_bow` (derived).

    >>> round(bow_doubt(0.004, 30, 150, 270), 6)
    0.003464
    """
    at_least(difference_unsure_mm, 0, "doubt of the difference", "mm")
    at_least(first_station_mm, 0, "station of the headstock collar", "mm")
    in_order(first_station_mm, middle_station_mm, "distance from headstock collar to middle collar")
    in_order(middle_station_mm, second_station_mm, "distance from middle collar to tailstock collar")
    share = (middle_station_mm - first_station_mm) / (second_station_mm - first_station_mm)
    return difference_unsure_mm / sqrt(2) * hypot(1, share, 1 - share)
