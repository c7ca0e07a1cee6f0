"""What each kind of test sees of each cause: rows for `estimation`.

Across the bed everything counts toward the operator, whatever the side of the tool. Diameters count from any
fixed value, the nominal one for instance; each setting of the cross slide or of the indicator is an unknown of
its own. Lengths are in mm, slopes in mm for each mm, a level in mm/m.
"""

from tailtrue.calc.sides import sign_of_side
from tailtrue.calc.validity import OutOfRange, at_least, between, finite, on_span, positive

HEADSTOCK_YAW = "headstock yaw"
HEADSTOCK_PITCH = "headstock pitch"
PATH_LEAN = "path lean"
TAILSTOCK_OFFSET = "tailstock offset"
TAILSTOCK_ON_BED = "tailstock offset on its bed"
TAILSTOCK_HEIGHT = "tailstock height"
TOOL_WEAR = "tool wear"
LOCAL_WEAR = "local wear"
BAR_TAPER = "bar taper"


def chucked_row(station_mm: float, tool_side: str, setting: str = "chucked") -> dict[str, float]:
    """What a diameter sees that was cut on a bar held by the chuck alone.

    D = 2 (X + s (k - theta) z)

    Parameters
    ----------
    station_mm : Place z along the bed, more toward the tailstock. [mm]
    tool_side : Side of the work on which the tool stands, front or rear. [1]
    setting : Name of the setting of the cross slide; readings of one setting share it. [1]

    Returns
    -------
    Factor of each unknown: yaw theta, lean k, setting X. [1]

    Valid for
    ---------
    Light cut, stiff bar, a path that leans evenly, small angles.

    Source
    ------
    Geometry, derived.

    >>> chucked_row(20, "front")
    {'headstock yaw': -40, 'setting chucked': 2.0, 'path lean': 40}
    """
    finite(station_mm, "station", "mm")
    sign = sign_of_side(tool_side)
    return {HEADSTOCK_YAW: -2 * sign * station_mm, _setting(setting): 2.0, PATH_LEAN: 2 * sign * station_mm}


def between_centres_row(
    station_mm: float, span_mm: float, tool_side: str, setting: str = "between centres"
) -> dict[str, float]:
    """What a diameter sees that was cut on a bar between centres.

    D = 2 (X + s (k - E / L) z)

    Parameters
    ----------
    station_mm : Distance z from the headstock centre. [mm]
    span_mm : Distance L between the points of the two centres; E belongs to this span. [mm]
    tool_side : Side of the work on which the tool stands, front or rear. [1]
    setting : Name of the setting of the cross slide; readings of one setting share it. [1]

    Returns
    -------
    Factor of each unknown: offset E, setting X, lean k. The yaw of the headstock is not among them. [1]

    Valid for
    ---------
    0 <= z <= L, light cut, a path that leans evenly, small angles, the tool at centre height.

    Source
    ------
    Geometry, derived.

    >>> between_centres_row(30, 300, "front")
    {'tailstock offset': -0.2, 'setting between centres': 2.0, 'path lean': 60}
    """
    on_span(station_mm, span_mm)
    sign = sign_of_side(tool_side)
    return {
        TAILSTOCK_OFFSET: -2 * sign * station_mm / span_mm,
        _setting(setting): 2.0,
        PATH_LEAN: 2 * sign * station_mm,
    }


def level_row(distance_mm: float, centre_height_mm: float) -> dict[str, float]:
    """What the change of a level across the ways sees, in mm/m, more than 0 when the front sinks toward the tailstock.

    dpsi = 1000 k dz / H

    Parameters
    ----------
    distance_mm : Distance dz moved along the bed toward the tailstock between the two readings. [mm]
    centre_height_mm : Height H of the centres over the ways. [mm]

    Returns
    -------
    Factor of the lean k. [1]

    Valid for
    ---------
    Twist that grows evenly, the cross-section of the bed rigid.

    Source
    ------
    Geometry, derived.

    >>> round(level_row(500, 150)["path lean"], 3)
    3333.333
    """
    positive(distance_mm, "distance along the bed", "mm")
    positive(centre_height_mm, "height of the centres", "mm")
    return {PATH_LEAN: 1000 * distance_mm / centre_height_mm}


def sweep_row(span_mm: float) -> dict[str, float]:
    """What a sweep of the tailstock by the spindle sees, across the bed.

    e = E - theta L

    Parameters
    ----------
    span_mm : Distance L from the headstock centre to the place that is swept. [mm]

    Returns
    -------
    Factor of each unknown: yaw theta, offset E at this span. [mm, 1]

    Valid for
    ---------
    Span more than 0, small angles; the place swept is the one that carries the bar.

    Source
    ------
    Geometry, derived.

    >>> sweep_row(300)
    {'headstock yaw': -300, 'tailstock offset': 1.0}
    """
    positive(span_mm, "span", "mm")
    return {HEADSTOCK_YAW: -span_mm, TAILSTOCK_OFFSET: 1.0}


def sweep_height_row(span_mm: float) -> dict[str, float]:
    """What a sweep of the tailstock by the spindle sees in height, the sag of the indicator taken off.

    h_seen = h - phi L

    Parameters
    ----------
    span_mm : Distance L from the headstock centre to the place that is swept. [mm]

    Returns
    -------
    Factor of each unknown: pitch phi of the spindle axis, free end up, and height h of the tailstock centre. [mm, 1]

    Valid for
    ---------
    Span more than 0, small angles.

    Source
    ------
    Geometry, derived.

    >>> sweep_height_row(300)
    {'headstock pitch': -300, 'tailstock height': 1.0}
    """
    positive(span_mm, "span", "mm")
    return {HEADSTOCK_PITCH: -span_mm, TAILSTOCK_HEIGHT: 1.0}


def chucked_traverse_row(station_mm: float, tool_side: str, setting: str = "chucked traverse") -> dict[str, float]:
    """What an indicator on the carriage sees along a true bar held by the spindle alone, more where pushed in.

    i = X + s (theta - k) z

    Parameters
    ----------
    station_mm : Place z along the bed, more toward the tailstock. [mm]
    tool_side : Side of the bar on which the indicator stands, front or rear. [1]
    setting : Name of the setting of the indicator; readings of one setting share it. [1]

    Returns
    -------
    Factor of each unknown: yaw theta, setting X, lean k. [1]

    Valid for
    ---------
    Mean of the readings over one turn of the bar, the indicator level with the axis, small angles.

    Source
    ------
    Geometry, derived.

    >>> chucked_traverse_row(100, "front")
    {'headstock yaw': 100, 'setting chucked traverse': 1.0, 'path lean': -100}
    """
    finite(station_mm, "station", "mm")
    sign = sign_of_side(tool_side)
    return {HEADSTOCK_YAW: sign * station_mm, _setting(setting): 1.0, PATH_LEAN: -sign * station_mm}


def traverse_row(
    station_mm: float, span_mm: float, tool_side: str, swapped: bool = False, setting: str = "traverse"
) -> dict[str, float]:
    """What an indicator on the carriage sees along a bar between centres, more where pushed in.

    i = X + s (E / L - k) z + t z / L, t changing its sign with the swap

    Parameters
    ----------
    station_mm : Distance z from the headstock centre. [mm]
    span_mm : Distance L between the points of the two centres; E belongs to this span. [mm]
    tool_side : Side of the bar on which the indicator stands, front or rear. [1]
    swapped : Whether the bar is turned end for end against how it stood first. [1]
    setting : Name of the setting of the indicator; readings of one setting and one way round share it. [1]

    Returns
    -------
    Factor of each unknown: offset E, bar taper t (radius at its second end less radius at its first), setting X,
    lean k. [1]

    Valid for
    ---------
    0 <= z <= L, a bar that is round and tapers evenly, small angles.

    Source
    ------
    Geometry, derived.

    >>> traverse_row(150, 300, "front", swapped=True)
    {'tailstock offset': 0.5, 'bar taper': -0.5, 'setting traverse': 1.0, 'path lean': -150}
    """
    on_span(station_mm, span_mm)
    sign = sign_of_side(tool_side)
    share = station_mm / span_mm
    return {
        TAILSTOCK_OFFSET: sign * share,
        BAR_TAPER: -share if swapped else share,
        _setting(setting): 1.0,
        PATH_LEAN: -sign * station_mm,
    }


def riding_the_bed(row: dict[str, float], span_mm: float, overhang_mm: float) -> dict[str, float]:
    """A row with the offset of the tailstock split: what the twisted bed carries it over, and its own on the bed.

    E = E_0 + k (L + d)

    Parameters
    ----------
    row : Factors of each unknown as a test sees them. [1]
    span_mm : Distance L between the points of the two centres in that test. [mm]
    overhang_mm : Distance d from the point of the tailstock centre back to the middle of the tailstock base. [mm]

    Returns
    -------
    Factors with E_0 in place of E; tests at several spans may then be joined. [1]

    Valid for
    ---------
    Tailstock on the same ways as the carriage, twist that grows evenly from the headstock on.

    Source
    ------
    Geometry, derived.

    >>> riding_the_bed(sweep_row(300), 300, 80)
    {'headstock yaw': -300, 'tailstock offset on its bed': 1.0, 'path lean': 380.0}
    """
    positive(span_mm, "span", "mm")
    at_least(overhang_mm, 0, "overhang of the centre", "mm")
    if TAILSTOCK_OFFSET not in row:
        raise OutOfRange(f"row has no {TAILSTOCK_OFFSET}; only a test that sees the tailstock rides on its bed")
    share = row[TAILSTOCK_OFFSET]
    rest = {name: factor for name, factor in row.items() if name not in (TAILSTOCK_OFFSET, PATH_LEAN)}
    return rest | {TAILSTOCK_ON_BED: share, PATH_LEAN: row.get(PATH_LEAN, 0.0) + share * (span_mm + overhang_mm)}


def wear_term(collars_before: int) -> dict[str, float]:
    """What the wear of the tool adds to a diameter.

    D = ... + 2 w n

    Parameters
    ----------
    collars_before : Number n of equal collars cut before this one with the same edge, at this setting. [1]

    Returns
    -------
    Factor of the set-back w of the edge on the radius, for each collar. [1]

    Valid for
    ---------
    Equal collars, steady wear.

    Source
    ------
    Geometry, derived.

    >>> wear_term(1)
    {'tool wear': 2.0}
    """
    at_least(collars_before, 0, "number of collars cut before")
    return {TOOL_WEAR: 2.0 * collars_before}


def bed_bow_term(station_mm: float, from_mm: float, to_mm: float, tool_side: str) -> dict[str, float]:
    """What a bowed stretch of the path adds to a diameter.

    D = ... + 2 s v 4 (z - p) (q - z) / (q - p)^2 between p and q, and nothing outside

    Parameters
    ----------
    station_mm : Place z along the bed. [mm]
    from_mm : Place p where the bowed stretch begins. [mm]
    to_mm : Place q where it ends. [mm]
    tool_side : Side of the work on which the tool stands, front or rear. [1]

    Returns
    -------
    Factor of the greatest shift v of the path toward the operator, half way between p and q. [1]

    Valid for
    ---------
    p < q; the stretch and its shape are assumed, so that a third collar is needed to see it.

    Source
    ------
    Geometry, derived; the parabola is an assumption.

    >>> bed_bow_term(150, 0, 300, "front")
    {'local wear': 2.0}
    """
    finite(station_mm, "station", "mm")
    positive(to_mm - from_mm, "length of the bowed stretch", "mm")
    share = max(0.0, 4 * (station_mm - from_mm) * (to_mm - station_mm) / (to_mm - from_mm) ** 2)
    return {LOCAL_WEAR: 2 * sign_of_side(tool_side) * share}


def tool_height_term(
    tool_height_mm: float, collar_diameter_mm: float, station_mm: float, span_mm: float
) -> dict[str, float]:
    """What a tool off centre height lets a diameter see of the height of the tailstock.

    D = ... - 2 t h z / (R L), R = D / 2

    Parameters
    ----------
    tool_height_mm : Height t of the point of the tool over centre height, of either sign. [mm]
    collar_diameter_mm : Diameter D of the collar. [mm]
    station_mm : Distance z from the headstock centre. [mm]
    span_mm : Distance L between the points of the two centres. [mm]

    Returns
    -------
    Factor of the height h of the tailstock centre. [1]

    Valid for
    ---------
    0 <= z <= L, t at most a tenth of R and h small against R; first order.

    Source
    ------
    Geometry, derived.

    >>> round(tool_height_term(1, 70, 270, 300)["tailstock height"], 6)
    -0.051429
    """
    positive(collar_diameter_mm, "diameter of the collar", "mm")
    on_span(station_mm, span_mm)
    radius = collar_diameter_mm / 2
    between(tool_height_mm / radius, -0.1, 0.1, "height of the tool as a share of the radius")
    return {TAILSTOCK_HEIGHT: -2 * tool_height_mm * station_mm / (radius * span_mm)}


def _setting(name: str) -> str:
    return f"setting {name}"
