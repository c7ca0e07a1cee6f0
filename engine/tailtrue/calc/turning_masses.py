"""Turning masses: what is out of balance, how fast a rim runs, what a flung part carries."""

from math import pi

from tailtrue.calc.balance import speed_for_force
from tailtrue.calc.beams import GRAVITY_M_S2
from tailtrue.calc.validity import at_least, positive


def unbalance_force(mass_kg: float, eccentricity_mm: float, spindle_speed_per_min: float) -> float:
    """Force that goes round with a mass whose centre is off the axis.

    F = m e w^2, w = 2 pi n / 60

    Parameters
    ----------
    mass_kg : Mass m of what turns. [kg]
    eccentricity_mm : Distance e of its centre of mass from the axis, half of any run-out. [mm]
    spindle_speed_per_min : Spindle speed n. [1/min]

    Returns
    -------
    Turning force F. [N]

    Valid for
    ---------
    Mass more than 0, the others 0 or more; rigid work on a rigid spindle.

    Source
    ------
    Circular motion.

    >>> round(unbalance_force(1.2, 3, 600), 1)
    14.2
    """
    positive(mass_kg, "mass", "kg")
    at_least(eccentricity_mm, 0, "eccentricity", "mm")
    at_least(spindle_speed_per_min, 0, "spindle speed", "1/min")
    return mass_kg * eccentricity_mm / 1000 * _angular_speed(spindle_speed_per_min) ** 2


def unbalance_speed_limit(eccentricity_mm: float, force_to_weight: float) -> float:
    """Speed at which the force of unbalance reaches a chosen share of the weight.

    n = 30 / pi sqrt(q g / e)

    Parameters
    ----------
    eccentricity_mm : Distance e of the centre of mass from the axis. [mm]
    force_to_weight : Share q of the weight that the turning force may reach. [1]

    Returns
    -------
    Highest spindle speed n. [1/min]

    Valid for
    ---------
    Both more than 0; the share itself is a judgement that the caller takes from the rules.

    Source
    ------
    Derived from `unbalance_force`.

    >>> round(unbalance_speed_limit(3, 0.3))
    299
    """
    positive(force_to_weight, "force as a share of the weight")
    return speed_for_force(force_to_weight * GRAVITY_M_S2, 1.0, eccentricity_mm)


def rim_speed(diameter_mm: float, spindle_speed_per_min: float) -> float:
    """Speed of the rim of a turning part, also the speed at which a part leaves it.

    v = pi d n / 60000

    Parameters
    ----------
    diameter_mm : Diameter d of the circle. [mm]
    spindle_speed_per_min : Spindle speed n. [1/min]

    Returns
    -------
    Rim speed v, per second (a surface speed is per minute). [m/s]

    Valid for
    ---------
    Diameter more than 0, speed 0 or more.

    Source
    ------
    Geometry.

    >>> round(rim_speed(240, 1000), 2)
    12.57
    """
    positive(diameter_mm, "diameter", "mm")
    at_least(spindle_speed_per_min, 0, "spindle speed", "1/min")
    return diameter_mm / 2000 * _angular_speed(spindle_speed_per_min)


def kinetic_energy(mass_kg: float, speed_m_s: float) -> float:
    """Energy of a part that flies off.

    E = m v^2 / 2

    Parameters
    ----------
    mass_kg : Mass m. [kg]
    speed_m_s : Speed v, for instance a rim speed. [m/s]

    Returns
    -------
    Energy E; one kilogram falling one metre has 9.8. [J]

    Valid for
    ---------
    Mass more than 0, speed 0 or more.

    Source
    ------
    Mechanics.

    >>> round(kinetic_energy(0.3, 12.566), 1)
    23.7
    """
    positive(mass_kg, "mass", "kg")
    at_least(speed_m_s, 0, "speed", "m/s")
    return mass_kg * speed_m_s**2 / 2


def _angular_speed(spindle_speed_per_min: float) -> float:
    return 2 * pi * spindle_speed_per_min / 60
