"""Readings of a dial indicator, and of the dials of the lathe, turned into offsets and moves of the tailstock."""

from typing import NamedTuple

from tailtrue.calc.validity import OutOfRange, at_least, between, collars_on_span, finite, positive

# Where something is read: its share in the move, and the length that the span is divided by.
_PLACES = {
    "quill": (1.0, "span"),
    "bar at the tailstock collar": (1.0, "station"),
    "traverse on the tool side": (-1.0, "spacing"),
    "traverse of fresh skims on the far side": (0.5, "spacing"),
    "difference of diameters": (0.5, "spacing"),
    "diameter dial": (0.5, "span"),
    "radius dial": (1.0, "span"),
}


class SwapParts(NamedTuple):
    """A traverse with the bar both ways round, taken apart."""

    lathe_mm: float
    bar_mm: float


class Sweep(NamedTuple):
    """What an indicator carried round by the spindle says of the tailstock."""

    offset_to_operator_mm: float
    apparent_height_mm: float
    height_mm: float
    closure_mm: float


def move_factor(place: str, span_mm: float, first_station_mm: float, second_station_mm: float) -> float:
    """Factor from what is read at a place to the move of the tailstock centre.

    m = f x, f = 1 (quill), L / b (bar), -L / (b - a) (traverse), L / (2 (b - a)) (diameters), 1 / 2 (diameter dial)

    Parameters
    ----------
    place : Where it is read, one of the places named under Valid for. [1]
    span_mm : Distance L between the points of the two centres. [mm]
    first_station_mm : Distance a of the headstock collar from the headstock centre. [mm]
    second_station_mm : Distance b of the tailstock collar from the headstock centre. [mm]

    Returns
    -------
    Factor f; the move is more than 0 toward the tool. [1]

    Valid for
    ---------
    0 <= a < b <= L. Movements, counted toward the tool: quill, bar at the tailstock collar, radius dial, diameter
    dial. Differences, reading at the tailstock collar less reading at the headstock collar, more than 0 where the
    plunger is pushed in or the collar is fat: traverse on the tool side (of a bar known to be true), traverse of
    fresh skims on the far side, difference of diameters.

    Source
    ------
    Geometry, derived.

    >>> round(move_factor("difference of diameters", 300, 30, 270), 6)
    0.625
    """
    if place not in _PLACES:
        raise OutOfRange(f"place of the reading is {place!r}; it must be one of: {', '.join(_PLACES)}")
    collars_on_span(span_mm, first_station_mm, second_station_mm)
    share, length = _PLACES[place]
    lengths = {"span": span_mm, "station": second_station_mm, "spacing": second_station_mm - first_station_mm}
    return share * span_mm / lengths[length]


def swap_parts(as_it_is_mm: float, swapped_mm: float) -> SwapParts:
    """Error of the lathe and error of the bar, from a traverse with the bar each way round.

    i_lathe = (i_A + i_B) / 2, i_bar = (i_A - i_B) / 2

    Parameters
    ----------
    as_it_is_mm : Reading i_A at the tailstock end less that at the headstock end. [mm]
    swapped_mm : The same difference i_B of readings, the bar turned end for end. [mm]

    Returns
    -------
    Part of the lathe and part of the bar, both on the radius. [mm, mm]

    Valid for
    ---------
    The same two stations, the same indicator at the same height, nothing else touched.

    Source
    ------
    Arithmetic: the bar changes its sign with the swap, the lathe does not.

    >>> [round(value, 6) for value in swap_parts(0.018, 0.006)]
    [0.012, 0.006]
    """
    finite(as_it_is_mm, "reading with the bar as it is", "mm")
    finite(swapped_mm, "reading with the bar swapped", "mm")
    return SwapParts((as_it_is_mm + swapped_mm) / 2, (as_it_is_mm - swapped_mm) / 2)


def sweep(
    front_mm: float, top_mm: float, rear_mm: float, bottom_mm: float, sag_mm: float = 0.0, in_bore: bool = False
) -> Sweep:
    """Offset and height of the tailstock from an indicator that the spindle carries round it.

    e = (F - R) / 2, h = (T - B) / 2 - sag, closure = F + R - T - B

    Parameters
    ----------
    front_mm : Reading F on the operator's side, more than 0 where the plunger is pushed in. [mm]
    top_mm : Reading T on top. [mm]
    rear_mm : Reading R on the far side. [mm]
    bottom_mm : Reading B below. [mm]
    sag_mm : Drop of the indicator in its holder, by its weight. [mm]
    in_bore : Whether it reads inside a bore, where all signs are reversed. [1]

    Returns
    -------
    Offset toward the operator, height as it looks, height with the sag taken off, and closure, which is near 0
    when nothing moved during the sweep. [mm, mm, mm, mm]

    Valid for
    ---------
    Offset and height small against the radius that is swept; sag 0 or more, at most 1 mm. All from the spindle axis.

    Source
    ------
    Geometry, derived.

    >>> [round(value, 6) for value in sweep(0, -0.010, -0.030, -0.019, 0.006)]
    [0.015, 0.0045, -0.0015, -0.001]
    """
    for name, value in (("front", front_mm), ("top", top_mm), ("rear", rear_mm), ("bottom", bottom_mm)):
        finite(value, f"reading at the {name}", "mm")
    between(sag_mm, 0, 1, "sag of the indicator", "mm")
    sign = -1 if in_bore else 1
    apparent = sign * (top_mm - bottom_mm) / 2
    closure = sign * (front_mm + rear_mm - top_mm - bottom_mm)
    return Sweep(sign * (front_mm - rear_mm) / 2, apparent, apparent - sag_mm, closure)


def screw_angle(move_mm: float, pitch_mm: float) -> float:
    """Turn of an adjusting screw that makes a move.

    turn = 360 m / P

    Parameters
    ----------
    move_mm : Move m of the tailstock, as an amount. [mm]
    pitch_mm : Pitch P of the screw. [mm]

    Returns
    -------
    Turn of the screw, its play not counted; an indicator must show the move itself. [deg]

    Valid for
    ---------
    Move 0 or more, pitch more than 0; a screw that pushes straight.

    Source
    ------
    Definition of the pitch.

    >>> round(screw_angle(0.015, 1.25), 6)
    4.32
    """
    at_least(move_mm, 0, "move", "mm")
    positive(pitch_mm, "pitch of the screw", "mm")
    return 360 * move_mm / pitch_mm


def move_from_reading(
    place: str,
    reading_mm: float,
    span_mm: float,
    first_station_mm: float,
    second_station_mm: float,
) -> float:
    """Move of the tailstock centre that a reading stands for.

    m = f i, f by `move_factor`

    Parameters
    ----------
    place : Where the indicator stands, one of the places of `move_factor`. [1]
    reading_mm : Movement or difference i read there. [mm]
    span_mm : Distance L between the points of the two centres. [mm]
    first_station_mm : Distance a of the headstock collar from the headstock centre. [mm]
    second_station_mm : Distance b of the tailstock collar from the headstock centre. [mm]

    Returns
    -------
    Move m of the centre; more than 0 is toward the tool. [mm]

    Valid for
    ---------
    As `move_factor`; reading finite.

    Source
    ------
    Geometry, derived.

    >>> round(move_from_reading("difference of diameters", 0.024, 300, 30, 270), 6)
    0.015
    """
    finite(reading_mm, "reading", "mm")
    return move_factor(place, span_mm, first_station_mm, second_station_mm) * reading_mm
