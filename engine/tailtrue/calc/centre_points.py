"""The point of a centre in its hole: what pushes it out, what it carries, how warm it runs."""

from math import pi, radians, sin, tan

from tailtrue.calc.centre_hole import bearing_area
from tailtrue.calc.validity import at_least, between, positive, up_to


def separating_force(radial_force_n: float, point_angle_deg: float) -> float:
    """Axial force with which a load across the bar pushes a centre out of its hole.

    A = R tan(p / 2)

    Parameters
    ----------
    radial_force_n : Load R across the bar at that centre, weight and cut together. [N]
    point_angle_deg : Angle p of the point. [deg]

    Returns
    -------
    Axial force A; the thrust of the tailstock must stay well above it. [N]

    Valid for
    ---------
    Load 0 or more, angle from 30 to 120 degrees, friction left out (it helps).

    Source
    ------
    Statics of a cone, derived.

    >>> round(separating_force(64.7, 60), 1)
    37.4
    """
    at_least(radial_force_n, 0, "load on the centre", "N")
    return radial_force_n * tan(_half(point_angle_deg))


def seat_area(seat_diameter_mm: float, pilot_diameter_mm: float, point_angle_deg: float) -> float:
    """Area of the cone of a centre hole, seen from the side, on which a load across the bar bears.

    A = (D^2 - d^2) / (4 tan(p / 2))

    Parameters
    ----------
    seat_diameter_mm : Diameter D of the cone at the end face. [mm]
    pilot_diameter_mm : Diameter d of the pilot hole. [mm]
    point_angle_deg : Angle p of the point. [deg]

    Returns
    -------
    Projected area A. [mm2]

    Valid for
    ---------
    0 < d < D, angle from 30 to 120 degrees.

    Source
    ------
    Geometry, derived.

    >>> round(seat_area(6.7, 3.15, 60), 1)
    15.1
    """
    _half(point_angle_deg)
    return bearing_area(seat_diameter_mm, pilot_diameter_mm, point_angle_deg)


def seat_load(area_mm2: float, pressure_mpa: float) -> float:
    """Load across the bar that a centre hole carries at a pressure.

    R = p A

    Parameters
    ----------
    area_mm2 : Projected area A of the cone. [mm2]
    pressure_mpa : Pressure p allowed there, a judgement that the caller takes from the rules. [MPa]

    Returns
    -------
    Load R. [N]

    Valid for
    ---------
    Both more than 0; lubricated.

    Source
    ------
    Definition of a pressure.

    >>> round(seat_load(15.1, 5), 1)
    75.5
    """
    positive(area_mm2, "area of the seat", "mm2")
    positive(pressure_mpa, "pressure", "MPa")
    return area_mm2 * pressure_mpa


def dead_centre_heat(
    axial_force_n: float, friction: float, mean_diameter_mm: float, point_angle_deg: float, spindle_speed_per_min: float
) -> float:
    """Heat that a dead centre makes in its hole.

    P = mu F / sin(p / 2) * pi d n / 60000

    Parameters
    ----------
    axial_force_n : Thrust F of the tailstock. [N]
    friction : Friction mu in the hole. [1]
    mean_diameter_mm : Mean diameter d of the ring that rubs. [mm]
    point_angle_deg : Angle p of the point. [deg]
    spindle_speed_per_min : Spindle speed n. [1/min]

    Returns
    -------
    Heat P. [W]

    Valid for
    ---------
    Thrust and speed 0 or more, friction above 0 to 1, angle from 30 to 120 degrees.

    Source
    ------
    Friction of a cone, derived.

    >>> round(dead_centre_heat(300, 0.1, 5, 60, 300), 1)
    4.7
    """
    at_least(axial_force_n, 0, "thrust of the tailstock", "N")
    up_to(friction, 1, "friction")
    positive(mean_diameter_mm, "mean diameter", "mm")
    at_least(spindle_speed_per_min, 0, "spindle speed", "1/min")
    rubbing_m_s = pi * mean_diameter_mm * spindle_speed_per_min / 60000
    return friction * axial_force_n / sin(_half(point_angle_deg)) * rubbing_m_s


def _half(point_angle_deg: float) -> float:
    between(point_angle_deg, 30, 120, "angle of the point", "degrees")
    return radians(point_angle_deg) / 2
