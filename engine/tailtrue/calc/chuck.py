"""What the jaws hold: grip for a cut, grip lost to speed, what friction carries, how fast a chuck may turn.

A grip is the sum of the forces of all jaws.
"""

from math import hypot, pi, sqrt

from tailtrue.calc.cutting import spindle_speed
from tailtrue.calc.validity import OutOfRange, at_least, positive, up_to

_LEAST_SAFETY = 1.5  # of either safety factor, VDI 3106


def grip_for_cut(
    cutting_force_n: float, cut_diameter_mm: float, grip_diameter_mm: float, friction: float, safety: float
) -> float:
    """Grip that keeps a turning cut from slipping the work round in the jaws.

    G = S F d_cut / (mu d_grip)

    Parameters
    ----------
    cutting_force_n : Main cutting force F. [N]
    cut_diameter_mm : Diameter d_cut that is cut. [mm]
    grip_diameter_mm : Diameter d_grip that is gripped. [mm]
    friction : Friction mu between jaws and work. [1]
    safety : Safety factor S. [1]

    Returns
    -------
    Grip G needed while it turns, all jaws together. [N]

    Valid for
    ---------
    Parallel work seated along the jaws; safety at least 1.5, friction above 0 to 1.

    Source
    ------
    VDI 3106, as quoted in manuals of chucks.

    >>> round(grip_for_cut(400, 75, 75, 0.25, 1.5))
    2400
    """
    at_least(cutting_force_n, 0, "cutting force", "N")
    positive(cut_diameter_mm, "diameter that is cut", "mm")
    positive(grip_diameter_mm, "diameter that is gripped", "mm")
    _friction(friction)
    at_least(safety, _LEAST_SAFETY, "safety factor")
    return safety * cutting_force_n * cut_diameter_mm / (friction * grip_diameter_mm)


def grip_for_torque_and_thrust(
    torque_nmm: float, axial_force_n: float, grip_diameter_mm: float, friction: float, safety: float
) -> float:
    """Grip that carries a torque and a push along the axis at the same time.

    G = S sqrt((2 T / d)^2 + A^2) / mu

    Parameters
    ----------
    torque_nmm : Torque T on the work. [N mm]
    axial_force_n : Force A along the axis, out of the jaws or in where no jaw step takes it. [N]
    grip_diameter_mm : Diameter d that is gripped. [mm]
    friction : Friction mu between jaws and work. [1]
    safety : Safety factor S. [1]

    Returns
    -------
    Grip G needed while it turns, all jaws together. [N]

    Valid for
    ---------
    As `grip_for_cut`; torque and force 0 or more.

    Source
    ------
    Friction shared between two directions, derived; with A = 0 it is the rule of VDI 3106.

    >>> round(grip_for_torque_and_thrust(400 * 37.5, 300, 75, 0.25, 1.5))
    3000
    """
    at_least(torque_nmm, 0, "torque", "N mm")
    at_least(axial_force_n, 0, "axial force", "N")
    positive(grip_diameter_mm, "diameter that is gripped", "mm")
    _friction(friction)
    at_least(safety, _LEAST_SAFETY, "safety factor")
    return safety * hypot(2 * torque_nmm / grip_diameter_mm, axial_force_n) / friction


def jaw_pull(jaws: int, jaw_mass_kg: float, jaw_radius_mm: float, spindle_speed_per_min: float) -> float:
    """Force with which the turning jaws pull outward, all together.

    C = i m r w^2, w = 2 pi n / 60

    Parameters
    ----------
    jaws : Number i of jaws. [1]
    jaw_mass_kg : Mass m of one jaw with what moves with it. [kg]
    jaw_radius_mm : Distance r of its centre of mass from the axis. [mm]
    spindle_speed_per_min : Spindle speed n. [1/min]

    Returns
    -------
    Outward force C, taken away from the grip of work held from outside. [N]

    Valid for
    ---------
    At least 2 jaws, speed 0 or more.

    Source
    ------
    Circular motion; VDI 3106, as quoted in manuals of chucks.

    >>> round(jaw_pull(3, 0.35, 60, 1000))
    691
    """
    at_least(spindle_speed_per_min, 0, "spindle speed", "1/min")
    return _jaw_inertia(jaws, jaw_mass_kg, jaw_radius_mm) * (pi * spindle_speed_per_min / 30) ** 2


def grip_at_rest(grip_needed_n: float, jaw_pull_n: float, safety: float) -> float:
    """Grip to set at a standstill so that enough is left at speed.

    G_0 = S (G + C)

    Parameters
    ----------
    grip_needed_n : Grip G needed while it turns, its own safety within. [N]
    jaw_pull_n : Outward force C of the jaws at speed. [N]
    safety : Safety factor S of the chuck, over that of the cut. [1]

    Returns
    -------
    Grip G_0 at a standstill. [N]

    Valid for
    ---------
    Work gripped from outside; safety at least 1.5.

    Source
    ------
    VDI 3106, as quoted in manuals of chucks.

    >>> round(grip_at_rest(2400, 690.9, 1.5))
    4636
    """
    at_least(grip_needed_n, 0, "grip needed", "N")
    at_least(jaw_pull_n, 0, "outward force of the jaws", "N")
    at_least(safety, _LEAST_SAFETY, "safety factor")
    return safety * (grip_needed_n + jaw_pull_n)


def residual_grip(grip_at_rest_n: float, jaw_pull_n: float) -> float:
    """Grip that is left at speed.

    G = G_0 - C

    Parameters
    ----------
    grip_at_rest_n : Grip G_0 at a standstill. [N]
    jaw_pull_n : Outward force C of the jaws at speed. [N]

    Returns
    -------
    Grip G left; 0 when the jaws have let go. [N]

    Valid for
    ---------
    Work gripped from outside, jaws whose stiffness does not help.

    Source
    ------
    VDI 3106, as quoted in manuals of chucks.

    >>> residual_grip(9000, 691)
    8309
    """
    at_least(grip_at_rest_n, 0, "grip at a standstill", "N")
    at_least(jaw_pull_n, 0, "outward force of the jaws", "N")
    return max(0, grip_at_rest_n - jaw_pull_n)


def grip_speed_limit(
    grip_at_rest_n: float, grip_needed_n: float, jaws: int, jaw_mass_kg: float, jaw_radius_mm: float, safety: float
) -> float:
    """Speed up to which a chuck keeps the grip that a cut needs.

    n = 30 / pi sqrt((G_0 / S - G) / (i m r))

    Parameters
    ----------
    grip_at_rest_n : Grip G_0 at a standstill. [N]
    grip_needed_n : Grip G needed while it turns. [N]
    jaws : Number i of jaws. [1]
    jaw_mass_kg : Mass m of one jaw with what moves with it. [kg]
    jaw_radius_mm : Distance r of its centre of mass from the axis. [mm]
    safety : Safety factor S of the chuck. [1]

    Returns
    -------
    Highest speed n on account of the grip; the mark on the chuck and every other limit still hold. [1/min]

    Valid for
    ---------
    As `grip_at_rest`; the grip at a standstill enough for the cut with its safety.

    Source
    ------
    VDI 3106, as quoted in manuals of chucks; of two printed forms the stricter, with S under the root.

    >>> round(grip_speed_limit(9000, 2400, 3, 0.35, 60, 1.5))
    2283
    """
    positive(grip_at_rest_n, "grip at a standstill", "N")
    at_least(grip_needed_n, 0, "grip needed", "N")
    at_least(safety, _LEAST_SAFETY, "safety factor")
    to_spare = grip_at_rest_n / safety - grip_needed_n
    if to_spare < 0:
        raise OutOfRange(
            f"the chuck grips with {grip_at_rest_n:g} N and the cut needs {safety * grip_needed_n:g} N even at a "
            "standstill; take a lighter cut or hold the work better"
        )
    return 30 / pi * sqrt(to_spare / _jaw_inertia(jaws, jaw_mass_kg, jaw_radius_mm))


def axial_hold(grip_n: float, friction: float, safety: float) -> float:
    """Pull along the axis that jaws hold by friction alone.

    A = mu G / S

    Parameters
    ----------
    grip_n : Grip G at speed. [N]
    friction : Friction mu between jaws and work. [1]
    safety : Safety factor S. [1]

    Returns
    -------
    Force A along the axis, when no torque acts with it. [N]

    Valid for
    ---------
    Grip 0 or more, friction above 0 to 1, safety at least 1; parallel work.

    Source
    ------
    Friction.

    >>> round(axial_hold(9000, 0.2, 2))
    900
    """
    at_least(grip_n, 0, "grip", "N")
    _friction(friction)
    at_least(safety, 1, "safety factor")
    return friction * grip_n / safety


def torque_hold(grip_n: float, grip_diameter_mm: float, friction: float, safety: float) -> float:
    """Torque that jaws hold by friction alone.

    T = mu G d / (2 S)

    Parameters
    ----------
    grip_n : Grip G at speed. [N]
    grip_diameter_mm : Diameter d that is gripped. [mm]
    friction : Friction mu between jaws and work. [1]
    safety : Safety factor S. [1]

    Returns
    -------
    Torque T, when no force along the axis acts with it. [N mm]

    Valid for
    ---------
    As `axial_hold`.

    Source
    ------
    Friction.

    >>> round(torque_hold(2400, 75, 0.25, 1.5))
    15000
    """
    positive(grip_diameter_mm, "diameter that is gripped", "mm")
    return axial_hold(grip_n, friction, safety) * grip_diameter_mm / 2


def scroll_grip(key_torque_nmm: float, key_turns: float, scroll_pitch_mm: float, efficiency: float) -> float:
    """Grip of a scroll chuck from the torque on its key.

    G = 2 pi T u e / p

    Parameters
    ----------
    key_torque_nmm : Torque T on the key. [N mm]
    key_turns : Turns u of the key for one turn of the scroll. [1]
    scroll_pitch_mm : Way p of a jaw for one turn of the scroll. [mm]
    efficiency : Part e of the work that friction leaves over. [1]

    Returns
    -------
    Grip G, all jaws together. [N]

    Valid for
    ---------
    All more than 0, efficiency at most 1; a dry or worn scroll leaves half of what a greased one does.

    Source
    ------
    Work of the key against work of the jaws, derived.

    >>> round(scroll_grip(60000, 3, 8, 0.15))
    21206
    """
    positive(key_torque_nmm, "torque on the key", "N mm")
    positive(key_turns, "turns of the key for one of the scroll")
    positive(scroll_pitch_mm, "pitch of the scroll", "mm")
    up_to(efficiency, 1, "efficiency")
    return 2 * pi * key_torque_nmm * key_turns * efficiency / scroll_pitch_mm


def rim_speed_limit(diameter_mm: float, rim_speed_m_s: float) -> float:
    """Speed at which the rim of a chuck or faceplate reaches a speed.

    n = 60000 v / (pi d)

    Parameters
    ----------
    diameter_mm : Outside diameter d. [mm]
    rim_speed_m_s : Rim speed v allowed, a limit that the caller takes from the rules. [m/s]

    Returns
    -------
    Highest spindle speed n on account of the rim; a lower mark on the chuck comes first. [1/min]

    Valid for
    ---------
    Both more than 0.

    Source
    ------
    Geometry.

    >>> round(rim_speed_limit(160, 25))
    2984
    """
    positive(rim_speed_m_s, "rim speed", "m/s")
    return spindle_speed(60 * rim_speed_m_s, diameter_mm)


def _jaw_inertia(jaws: int, jaw_mass_kg: float, jaw_radius_mm: float) -> float:
    at_least(jaws, 2, "number of jaws")
    positive(jaw_mass_kg, "mass of a jaw", "kg")
    positive(jaw_radius_mm, "distance of the jaw from the axis", "mm")
    return jaws * jaw_mass_kg * jaw_radius_mm / 1000


def _friction(friction: float) -> None:
    up_to(friction, 1, "friction")
