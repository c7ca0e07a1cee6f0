"""Drilling: thrust and torque of a drill, and what hand, quill and taper can give."""

from math import pi, radians, sin, tan

from tailtrue.calc.validity import OutOfRange, at_least, between, positive, up_to

SHAW_OXFORD_DRILLS_MM = (1.6, 50.0)
SHAW_OXFORD_FEEDS_MM = (0.01, 1.25)  # per turn
TOOL_MAKER_FEEDS_MM = (0.1, 0.5)  # per turn
_SLACK = 1e-9  # a pilot exactly as wide as the chisel edge counts as wide enough, whatever its binary form


def point_length(diameter_mm: float, point_angle_deg: float) -> float:
    """Length of the cone at the end of a drill.

    A = (D / 2) / tan(sigma / 2)

    Parameters
    ----------
    diameter_mm : Diameter D of the drill. [mm]
    point_angle_deg : Full angle sigma of the point. [deg]

    Returns
    -------
    Length A of the point, by which a through hole must be drilled deeper. [mm]

    Valid for
    ---------
    Diameter more than 0, angle 60 to 180 degrees.

    Source
    ------
    Geometry.

    >>> round(point_length(20, point_angle_deg=118), 3)
    6.009
    """
    positive(diameter_mm, "diameter of the drill", "mm")
    between(point_angle_deg, 60, 180, "point angle", "degrees")
    return diameter_mm / 2 / tan(radians(point_angle_deg / 2))


def least_pilot(diameter_mm: float, chisel_ratio: float) -> float:
    """Smallest pilot hole that takes the chisel edge of a drill out of work.

    d0 = c D

    Parameters
    ----------
    diameter_mm : Diameter D of the drill. [mm]
    chisel_ratio : Length c of its chisel edge as a share of D. [1]

    Returns
    -------
    Diameter d0 of the pilot. [mm]

    Valid for
    ---------
    Diameter more than 0, share 0 to 0.5. The web is narrower than the chisel edge: do not put its share here.

    Source
    ------
    Geometry of the point; chisel edge after Machinery's Handbook, 31st ed., p. 1152.

    >>> round(least_pilot(23, 0.18), 2)
    4.14
    """
    positive(diameter_mm, "diameter of the drill", "mm")
    between(chisel_ratio, 0, 0.5, "chisel edge as a share of the diameter")
    return chisel_ratio * diameter_mm


def thrust_shaw_oxford(
    kd: float,
    feed_mm: float,
    diameter_mm: float,
    pilot_ratio: float = 0.0,
    wear_factor: float = 1.0,
    *,
    chisel_ratio: float,
    thrust_factor: float,
    chisel_thrust_factor: float,
) -> float:
    """Thrust of a twist drill, lips and chisel edge apart (Shaw and Oxford).

    T = 0.05 Kd f^0.8 D^0.8 B W + 0.007 Kd D^2 J W; with a pilot B = 1, J = 0

    Parameters
    ----------
    kd : Drilling constant Kd of the metal. [1]
    feed_mm : Feed f per turn. [mm/rev]
    diameter_mm : Diameter D of the drill. [mm]
    pilot_ratio : Pilot hole as a share of D, 0 for none. [1]
    wear_factor : Factor W, 1 for a sharp drill. [1]
    chisel_ratio : Chisel edge as a share of D, here of a standard point. [1]
    thrust_factor : Factor B of that point. [1]
    chisel_thrust_factor : Factor J of that point. [1]

    Returns
    -------
    Thrust T along the axis. [N]

    Valid for
    ---------
    High speed steel, 118 degrees, D 1.6 to 50 mm, f 0.01 to 1.25 mm/rev, W 1 to 2; a pilot at least as wide
    as the chisel edge. A pilot lowers the thrust no further than to that of the full lips: an upper bound.

    Source
    ------
    Machinery's Handbook, 31st ed., pp. 1152-1153, equations and tables 7 to 9 in closed form.

    >>> round(thrust_shaw_oxford(24000, 0.2, 16, chisel_ratio=0.18, thrust_factor=1.355, chisel_thrust_factor=0.03))
    5413
    """
    _shaw_oxford_holds(kd, feed_mm, diameter_mm, wear_factor)
    at_least(thrust_factor, 1, "thrust factor B")
    at_least(chisel_thrust_factor, 0, "thrust factor J")
    lips = 0.05 * kd * feed_mm**0.8 * diameter_mm**0.8 * wear_factor
    if _piloted(pilot_ratio, chisel_ratio):
        return float(lips)
    return float(lips * thrust_factor + 0.007 * kd * diameter_mm**2 * chisel_thrust_factor * wear_factor)


def torque_shaw_oxford(
    kd: float,
    feed_mm: float,
    diameter_mm: float,
    pilot_ratio: float = 0.0,
    wear_factor: float = 1.0,
    *,
    chisel_ratio: float,
    torque_factor: float,
) -> float:
    """Torque of a twist drill (Shaw and Oxford), from solid or opening a hole.

    M = 0.025 Kd f^0.8 D^1.8 A W; with a pilot A = 1, times 1 - (d0 / D)^2

    Parameters
    ----------
    kd : Drilling constant Kd of the metal. [1]
    feed_mm : Feed f per turn. [mm/rev]
    diameter_mm : Diameter D of the drill. [mm]
    pilot_ratio : Pilot hole d0 as a share of D, 0 for none. [1]
    wear_factor : Factor W, 1 for a sharp drill. [1]
    chisel_ratio : Chisel edge as a share of D, here of a standard point. [1]
    torque_factor : Factor A of that point. [1]

    Returns
    -------
    Torque M on the drill. [N mm]

    Valid for
    ---------
    As `thrust_shaw_oxford`.

    Source
    ------
    Machinery's Handbook, 31st ed., pp. 1152-1153; the share left by a pilot is derived (area of the ring).

    >>> round(torque_shaw_oxford(24000, 0.2, 16, chisel_ratio=0.18, torque_factor=1.085), -1)
    26410.0
    """
    _shaw_oxford_holds(kd, feed_mm, diameter_mm, wear_factor)
    at_least(torque_factor, 1, "torque factor A")
    lips = 0.025 * kd * feed_mm**0.8 * diameter_mm**1.8 * wear_factor
    if _piloted(pilot_ratio, chisel_ratio):
        return float(lips * (1 - pilot_ratio**2))
    return float(lips * torque_factor)


def thrust_tool_maker(material_factor: float, feed_mm: float, diameter_mm: float) -> float:
    """Thrust of a twist drill from solid, after a tool maker's formula.

    T = 570 K D f^0.85

    Parameters
    ----------
    material_factor : Factor K of the metal in that formula. [1]
    feed_mm : Feed f per turn. [mm/rev]
    diameter_mm : Diameter D of the drill. [mm]

    Returns
    -------
    Thrust T of a sharp drill. [N]

    Valid for
    ---------
    High speed steel drills from solid, f 0.1 to 0.5 mm/rev (`tool_maker_holds`).

    Source
    ------
    Technical page of a tool maker's general catalogue, 2020-21.

    >>> round(thrust_tool_maker(2.22, 0.3, 10))
    4548
    """
    _tool_maker_holds(material_factor, feed_mm, diameter_mm)
    return float(570 * material_factor * diameter_mm * feed_mm**0.85)


def torque_tool_maker(material_factor: float, feed_mm: float, diameter_mm: float) -> float:
    """Torque of a twist drill from solid, after a tool maker's formula.

    M = 10 K D^2 (0.630 + 16.84 f)

    Parameters
    ----------
    material_factor : Factor K of the metal in that formula. [1]
    feed_mm : Feed f per turn. [mm/rev]
    diameter_mm : Diameter D of the drill. [mm]

    Returns
    -------
    Torque M of a sharp drill. [N mm]

    Valid for
    ---------
    As `thrust_tool_maker`.

    Source
    ------
    As `thrust_tool_maker`.

    >>> round(torque_tool_maker(2.22, 0.3, 10))
    12614
    """
    _tool_maker_holds(material_factor, feed_mm, diameter_mm)
    return 10 * material_factor * diameter_mm**2 * (0.630 + 16.84 * feed_mm)


def tool_maker_holds(feed_mm: float) -> bool:
    """Whether a feed lies where the tool maker's formulas hold; below, use the other model alone.

    0.1 <= f <= 0.5

    Parameters
    ----------
    feed_mm : Feed f per turn. [mm/rev]

    Returns
    -------
    True where `thrust_tool_maker` and `torque_tool_maker` hold. [1]

    Valid for
    ---------
    Any feed.

    Source
    ------
    As `thrust_tool_maker`.

    >>> tool_maker_holds(0.3), tool_maker_holds(0.05)
    (True, False)
    """
    least, most = TOOL_MAKER_FEEDS_MM
    return least <= feed_mm <= most


def hand_thrust(handwheel_force_n: float, handwheel_radius_mm: float, screw_pitch_mm: float, efficiency: float) -> float:
    """Thrust that a hand on the wheel gives at the quill of the tailstock.

    F = 2 pi Fh R eta / p

    Parameters
    ----------
    handwheel_force_n : Force Fh of the hand at the handle. [N]
    handwheel_radius_mm : Radius R of the handle from the middle of the wheel. [mm]
    screw_pitch_mm : Advance p of the quill per turn. [mm]
    efficiency : Efficiency eta of the screw. [1]

    Returns
    -------
    Thrust F of the quill. [N]

    Valid for
    ---------
    All more than 0, efficiency at most 1.

    Source
    ------
    Work of one turn, derived.

    >>> round(hand_thrust(100, 75, 5, 0.25), 1)
    2356.2
    """
    positive(handwheel_force_n, "force of the hand", "N")
    positive(handwheel_radius_mm, "radius of the handwheel", "mm")
    positive(screw_pitch_mm, "pitch of the quill screw", "mm")
    up_to(efficiency, 1, "efficiency of the quill screw")
    return 2 * pi * handwheel_force_n * handwheel_radius_mm * efficiency / screw_pitch_mm


def taper_friction_torque(thrust_n: float, friction: float, mean_diameter_mm: float, half_angle_deg: float) -> float:
    """Torque that a taper shank carries by friction alone, under an axial thrust.

    M = mu F dm / (2 sin a)

    Parameters
    ----------
    thrust_n : Axial thrust F that seats the taper. [N]
    friction : Coefficient of friction mu. [1]
    mean_diameter_mm : Mean diameter dm of the seat. [mm]
    half_angle_deg : Angle a between the side of the taper and its axis. [deg]

    Returns
    -------
    Torque M at which the shank begins to spin. [N mm]

    Valid for
    ---------
    Thrust 0 or more, friction 0 to 1, half angle above 0 and at most 10 degrees; taper clean and well seated.

    Source
    ------
    Cone friction, derived; dimensions of the tapers as published.

    >>> round(taper_friction_torque(1000, 0.12, 16.1544, 1.4307), -1)
    38820.0
    """
    at_least(thrust_n, 0, "thrust", "N")
    between(friction, 0, 1, "coefficient of friction")
    positive(mean_diameter_mm, "mean diameter of the taper", "mm")
    up_to(half_angle_deg, 10, "half angle of the taper", "degrees")
    return friction * thrust_n * mean_diameter_mm / (2 * sin(radians(half_angle_deg)))


def drill_power(torque_nmm: float, spindle_speed_per_min: float) -> float:
    """Power that a torque takes at a spindle speed.

    P = 2 pi n M / 60000

    Parameters
    ----------
    torque_nmm : Torque M. [N mm]
    spindle_speed_per_min : Spindle speed n. [1/min]

    Returns
    -------
    Power P at the drill. [W]

    Valid for
    ---------
    Torque 0 or more, speed more than 0.

    Source
    ------
    Definition of power.

    >>> round(drill_power(17550, 190), 1)
    349.2
    """
    at_least(torque_nmm, 0, "torque", "N mm")
    positive(spindle_speed_per_min, "spindle speed", "1/min")
    return 2 * pi * spindle_speed_per_min * torque_nmm / 60000


def _shaw_oxford_holds(kd: float, feed_mm: float, diameter_mm: float, wear_factor: float) -> None:
    positive(kd, "drilling constant Kd")
    between(feed_mm, *SHAW_OXFORD_FEEDS_MM, "feed of the drill", "mm/rev")
    between(diameter_mm, *SHAW_OXFORD_DRILLS_MM, "diameter of the drill", "mm")
    between(wear_factor, 1, 2, "wear factor")


def _piloted(pilot_ratio: float, chisel_ratio: float) -> bool:
    between(chisel_ratio, 0, 0.5, "chisel edge as a share of the diameter")
    if pilot_ratio == 0:
        return False
    if not chisel_ratio - _SLACK <= pilot_ratio < 1:
        raise OutOfRange(
            f"the pilot is {pilot_ratio:g} of the drill; "
            f"the formula holds for no pilot, or for one from {chisel_ratio:g} to below 1"
        )
    return True


def _tool_maker_holds(material_factor: float, feed_mm: float, diameter_mm: float) -> None:
    positive(material_factor, "material factor K")
    between(feed_mm, *TOOL_MAKER_FEEDS_MM, "feed of the drill", "mm/rev")
    positive(diameter_mm, "diameter of the drill", "mm")
