"""The path of the carriage against the axis of the work: bed twist, worn ways, headstock yaw.

Across the bed everything here counts toward the operator. The path leans by k for each millimetre toward the
tailstock, the spindle axis by theta, and the tailstock centre stands at E. A collar shows k and theta, or k and
E, only together: no test of one kind tells them apart.
"""

from tailtrue.calc.alignment import diameter_difference
from tailtrue.calc.sides import sign_of_side, toward_tool
from tailtrue.calc.validity import at_least, between, finite, in_order, positive

_CHUCK_TO_FREE = "distance from the collar at the chuck to the free collar"
_MOST_SLOPE = 0.01  # small angles: an error of the second order stays under one part in ten thousand


def path_lean(level_change_mm_per_m: float, distance_mm: float, centre_height_mm: float) -> float:
    """Lean of the path of the tool that bed twist makes, from a level across the ways.

    k = H dpsi / dz

    Parameters
    ----------
    level_change_mm_per_m : Change dpsi of the level, more than 0 when the front way sinks toward the tailstock. [mm/m]
    distance_mm : Distance dz moved along the bed toward the tailstock between the two readings. [mm]
    centre_height_mm : Height H of the centres over the ways. [mm]

    Returns
    -------
    Lean k of the path toward the operator, for each mm along the bed. [mm/mm]

    Valid for
    ---------
    Twist that grows evenly, change of level at most 10 mm/m, small angles, the cross-section of the bed rigid.

    Source
    ------
    Geometry, derived.

    >>> round(path_lean(0.02, 300, 150), 9)
    1e-05
    """
    between(level_change_mm_per_m, -10, 10, "change of the level", "mm/m")
    positive(distance_mm, "distance along the bed", "mm")
    positive(centre_height_mm, "height of the centres", "mm")
    return centre_height_mm * level_change_mm_per_m / 1000 / distance_mm


def wear_shift(front_wear_mm: float, rear_wear_mm: float, centre_height_mm: float, way_spacing_mm: float) -> float:
    """Shift of the point of the tool where the two ways are worn unequally.

    dx = H (v_f - v_r) / B

    Parameters
    ----------
    front_wear_mm : Depth v_f that the front way has lost at this place. [mm]
    rear_wear_mm : Depth v_r that the rear way has lost there. [mm]
    centre_height_mm : Height H of the centres over the ways. [mm]
    way_spacing_mm : Distance B from front way to rear way. [mm]

    Returns
    -------
    Shift of the tool toward the operator; a tool in front then cuts larger by twice this, one at the rear smaller. [mm]

    Valid for
    ---------
    Wear 0 or more, difference of the wear at most 1 % of the distance of the ways; the carriage rocks as one piece.

    Source
    ------
    Geometry, derived.

    >>> round(wear_shift(0.02, 0, 130, 150), 6)
    0.017333
    """
    at_least(front_wear_mm, 0, "wear of the front way", "mm")
    at_least(rear_wear_mm, 0, "wear of the rear way", "mm")
    positive(centre_height_mm, "height of the centres", "mm")
    positive(way_spacing_mm, "distance of the ways", "mm")
    roll = (front_wear_mm - rear_wear_mm) / way_spacing_mm
    _small(roll, "difference of the wear as a share of the distance of the ways")
    return centre_height_mm * roll


def diameter_change(shift_mm: float, tool_side: str) -> float:
    """Change of a diameter when the tool stands nearer to the operator by a shift, or farther.

    dD = 2 s dx, s = 1 for a tool in front and -1 for one at the rear

    Parameters
    ----------
    shift_mm : Shift dx of the point of the tool, more than 0 toward the operator. [mm]
    tool_side : Side of the work on which the tool stands, front or rear. [1]

    Returns
    -------
    Change of the diameter cut there. [mm]

    Valid for
    ---------
    Any shift that is small against the diameter.

    Source
    ------
    Geometry, derived.

    >>> round(diameter_change(0.0173333, "front"), 5)
    0.03467
    """
    return 2 * toward_tool(shift_mm, tool_side)


def chucked_difference(
    path_lean_mm_per_mm: float,
    headstock_yaw_mm_per_mm: float,
    first_station_mm: float,
    second_station_mm: float,
    tool_side: str,
) -> float:
    """Difference of two collars on a bar that is held by the chuck alone.

    D_q - D_p = 2 s (k - theta) (q - p)

    Parameters
    ----------
    path_lean_mm_per_mm : Lean k of the path of the tool toward the operator. [mm/mm]
    headstock_yaw_mm_per_mm : Yaw theta of the spindle axis, free end toward the operator. [mm/mm]
    first_station_mm : Distance p of the collar near the chuck, from any fixed place. [mm]
    second_station_mm : Distance q of the collar at the free end, from the same place. [mm]
    tool_side : Side of the work on which the tool stands, front or rear. [1]

    Returns
    -------
    Diameter at the free end less diameter at the chuck. [mm]

    Valid for
    ---------
    p < q, lean and yaw at most 0.01 either way; light cut, the bar stiff.

    Source
    ------
    Geometry, derived.

    >>> round(chucked_difference(0.060e-3, 0.015e-3, 20, 170, "front"), 6)
    0.0135
    """
    _small(path_lean_mm_per_mm, "lean of the path")
    _small(headstock_yaw_mm_per_mm, "yaw of the headstock")
    in_order(first_station_mm, second_station_mm, _CHUCK_TO_FREE)
    slope = sign_of_side(tool_side) * (path_lean_mm_per_mm - headstock_yaw_mm_per_mm)
    return 2 * slope * (second_station_mm - first_station_mm)


def between_centres_difference(
    path_lean_mm_per_mm: float,
    tailstock_offset_mm: float,
    span_mm: float,
    first_station_mm: float,
    second_station_mm: float,
    tool_side: str,
) -> float:
    """Difference of two collars on a bar between centres, on a bed that is twisted.

    D_t - D_h = 2 s (k - E / L) (b - a)

    Parameters
    ----------
    path_lean_mm_per_mm : Lean k of the path of the tool toward the operator. [mm/mm]
    tailstock_offset_mm : Offset E of the tailstock centre toward the operator, as it stands. [mm]
    span_mm : Distance L between the points of the two centres. [mm]
    first_station_mm : Distance a of the headstock collar from the headstock centre. [mm]
    second_station_mm : Distance b of the tailstock collar from the headstock centre. [mm]
    tool_side : Side of the work on which the tool stands, front or rear. [1]

    Returns
    -------
    Diameter of the tailstock collar less that of the headstock collar. [mm]

    Valid for
    ---------
    0 <= a < b <= L, lean at most 0.01 and offset from the path, E - k L, at most 2 % of L either way. The yaw of the
    headstock plays no part.

    Source
    ------
    Geometry, derived.

    >>> round(between_centres_difference(0.060e-3, -0.025, 300, 30, 270, "front"), 6)
    0.0688
    """
    move = -offset_from_path(tailstock_offset_mm, path_lean_mm_per_mm, span_mm)
    return diameter_difference(toward_tool(move, tool_side), span_mm, first_station_mm, second_station_mm)


def offset_from_path(tailstock_offset_mm: float, path_lean_mm_per_mm: float, span_mm: float) -> float:
    """Offset of the tailstock centre that turning between centres sees: measured from the path of the tool.

    e = E - k L

    Parameters
    ----------
    tailstock_offset_mm : Offset E of the tailstock centre toward the operator. [mm]
    path_lean_mm_per_mm : Lean k of the path of the tool toward the operator. [mm/mm]
    span_mm : Distance L between the points of the two centres. [mm]

    Returns
    -------
    Offset e from the path, toward the operator; collars and an indicator on the carriage see this one. [mm]

    Valid for
    ---------
    Span more than 0, lean at most 0.01 either way.

    Source
    ------
    Geometry, derived.

    >>> round(offset_from_path(-0.025, 0.060e-3, 300), 6)
    -0.043
    """
    finite(tailstock_offset_mm, "offset of the tailstock centre", "mm")
    _small(path_lean_mm_per_mm, "lean of the path")
    positive(span_mm, "span", "mm")
    return tailstock_offset_mm - path_lean_mm_per_mm * span_mm


def offset_from_spindle_axis(tailstock_offset_mm: float, headstock_yaw_mm_per_mm: float, span_mm: float) -> float:
    """Offset of the tailstock centre that a drill sees: measured from the spindle axis, prolonged.

    e = E - theta L

    Parameters
    ----------
    tailstock_offset_mm : Offset E of the tailstock centre toward the operator. [mm]
    headstock_yaw_mm_per_mm : Yaw theta of the spindle axis, free end toward the operator. [mm/mm]
    span_mm : Distance L from the headstock centre to the place that is swept. [mm]

    Returns
    -------
    Offset e from the axis, toward the operator; an indicator swept by the spindle sees this one. [mm]

    Valid for
    ---------
    Span more than 0, yaw at most 0.01 either way.

    Source
    ------
    Geometry, derived.

    >>> round(offset_from_spindle_axis(-0.025, 0.015e-3, 300), 6)
    -0.0295
    """
    finite(tailstock_offset_mm, "offset of the tailstock centre", "mm")
    _small(headstock_yaw_mm_per_mm, "yaw of the headstock")
    positive(span_mm, "span", "mm")
    return tailstock_offset_mm - headstock_yaw_mm_per_mm * span_mm


def collars_less_sweep(
    chucked_difference_mm: float, first_station_mm: float, second_station_mm: float, span_mm: float, tool_side: str
) -> float:
    """By how much the collars and a sweep from the spindle must disagree on the tailstock, from a chucked bar.

    (theta - k) L = -s (D_q - D_p) / 2 * L / (q - p)

    Parameters
    ----------
    chucked_difference_mm : Diameter at the free end less diameter at the chuck, on a bar held by the chuck alone. [mm]
    first_station_mm : Distance p of the collar near the chuck, from any fixed place. [mm]
    second_station_mm : Distance q of the collar at the free end, from the same place. [mm]
    span_mm : Distance L at which the tailstock centre stands. [mm]
    tool_side : Side of the work on which the tool stood for the chucked bar, front or rear. [1]

    Returns
    -------
    Offset by the collars less offset by the sweep, both toward the operator. [mm]

    Valid for
    ---------
    p < q, span more than 0, slope at most 0.01 either way; light cut, the bar stiff.

    Source
    ------
    Geometry, derived.

    >>> round(collars_less_sweep(0.0135, 20, 170, 300, "front"), 6)
    -0.0135
    """
    finite(chucked_difference_mm, "difference of the collars", "mm")
    in_order(first_station_mm, second_station_mm, _CHUCK_TO_FREE)
    positive(span_mm, "span", "mm")
    slope = chucked_difference_mm / 2 / (second_station_mm - first_station_mm)
    _small(slope, "slope that the chucked bar shows")
    return -sign_of_side(tool_side) * slope * span_mm


def offset_after_untwisting(
    tailstock_offset_mm: float, lean_taken_out_mm_per_mm: float, span_mm: float, overhang_mm: float
) -> float:
    """Offset of the tailstock centre once a twist is taken out of the bed that carries the tailstock.

    E' = E - k (L + d)

    Parameters
    ----------
    tailstock_offset_mm : Offset E of the tailstock centre toward the operator, before. [mm]
    lean_taken_out_mm_per_mm : Lean k of the path that the untwisting takes out. [mm/mm]
    span_mm : Distance L between the points of the two centres. [mm]
    overhang_mm : Distance d from the point of the tailstock centre back to the middle of the tailstock base. [mm]

    Returns
    -------
    Offset E' toward the operator, after. [mm]

    Valid for
    ---------
    Tailstock on the same twisted ways as the carriage, twist that grows evenly from the headstock on, lean at most 0.01.

    Source
    ------
    Geometry, derived.

    >>> round(offset_after_untwisting(-0.025, 0.060e-3, 300, 80), 6)
    -0.0478
    """
    finite(tailstock_offset_mm, "offset of the tailstock centre", "mm")
    _small(lean_taken_out_mm_per_mm, "lean of the path")
    positive(span_mm, "span", "mm")
    at_least(overhang_mm, 0, "overhang of the centre", "mm")
    return tailstock_offset_mm - lean_taken_out_mm_per_mm * (span_mm + overhang_mm)


def _small(slope: float, name: str) -> None:
    between(slope, -_MOST_SLOPE, _MOST_SLOPE, name)
