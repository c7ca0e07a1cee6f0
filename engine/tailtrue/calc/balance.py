"""Work that is out of balance: where its centre of mass lies, how bad that is, how fast it may turn."""

from collections.abc import Sequence
from math import pi, sqrt
from typing import NamedTuple

from tailtrue.calc.validity import OutOfRange, at_least, between, finite, positive


class BoredDiscOffset(NamedTuple):
    """Distance of the centre of mass of a disc with an eccentric hole, from the axis on which it is turned."""

    from_outside_axis_mm: float
    from_hole_axis_mm: float


def balance_grade(eccentricity_mm: float, spindle_speed_per_min: float) -> float:
    """Quality of balance at a speed: how fast the centre of mass goes round.

    G = e w, w = 2 pi n / 60

    Parameters
    ----------
    eccentricity_mm : Distance e of the centre of mass from the axis. [mm]
    spindle_speed_per_min : Spindle speed n. [1/min]

    Returns
    -------
    Quality G; 6.3 is usual for parts of machines. [mm/s]

    Valid for
    ---------
    Both 0 or more; rigid work.

    Source
    ------
    ISO 21940-11, definition of the grades.

    >>> round(balance_grade(3, 600), 1)
    188.5
    """
    at_least(eccentricity_mm, 0, "eccentricity", "mm")
    at_least(spindle_speed_per_min, 0, "spindle speed", "1/min")
    return eccentricity_mm * pi * spindle_speed_per_min / 30


def eccentricity_for_grade(grade_mm_s: float, spindle_speed_per_min: float) -> float:
    """Distance of the centre of mass from the axis that a quality of balance allows at a speed.

    e = 30 G / (pi n)

    Parameters
    ----------
    grade_mm_s : Quality of balance G. [mm/s]
    spindle_speed_per_min : Spindle speed n. [1/min]

    Returns
    -------
    Eccentricity e allowed, half of a run-out. [mm]

    Valid for
    ---------
    Both more than 0; rigid work.

    Source
    ------
    ISO 21940-11, definition of the grades.

    >>> round(eccentricity_for_grade(6.3, 600), 4)
    0.1003
    """
    positive(grade_mm_s, "quality of balance", "mm/s")
    positive(spindle_speed_per_min, "spindle speed", "1/min")
    return 30 * grade_mm_s / (pi * spindle_speed_per_min)


def unbalance_for_grade(grade_mm_s: float, mass_kg: float, spindle_speed_per_min: float) -> float:
    """Unbalance that a quality of balance allows at a speed.

    U = 1000 m e

    Parameters
    ----------
    grade_mm_s : Quality of balance G. [mm/s]
    mass_kg : Mass m of what turns. [kg]
    spindle_speed_per_min : Spindle speed n. [1/min]

    Returns
    -------
    Unbalance U allowed. [g mm]

    Valid for
    ---------
    All more than 0; rigid work.

    Source
    ------
    ISO 21940-11, definition of the grades.

    >>> round(unbalance_for_grade(6.3, 1.2, 600), 1)
    120.3
    """
    positive(mass_kg, "mass", "kg")
    return 1000 * mass_kg * eccentricity_for_grade(grade_mm_s, spindle_speed_per_min)


def speed_for_grade(grade_mm_s: float, eccentricity_mm: float) -> float:
    """Speed up to which work keeps to a quality of balance.

    n = 30 G / (pi e)

    Parameters
    ----------
    grade_mm_s : Quality of balance G. [mm/s]
    eccentricity_mm : Distance e of the centre of mass from the axis. [mm]

    Returns
    -------
    Highest spindle speed n. [1/min]

    Valid for
    ---------
    Both more than 0; rigid work.

    Source
    ------
    ISO 21940-11, definition of the grades.

    >>> round(speed_for_grade(6.3, 0.1003))
    600
    """
    positive(grade_mm_s, "quality of balance", "mm/s")
    positive(eccentricity_mm, "eccentricity", "mm")
    return 30 * grade_mm_s / (pi * eccentricity_mm)


def speed_for_force(force_n: float, mass_kg: float, eccentricity_mm: float) -> float:
    """Speed at which the turning force of unbalance reaches a limit.

    n = 30 / pi sqrt(1000 F / (m e))

    Parameters
    ----------
    force_n : Turning force F that the lathe may take. [N]
    mass_kg : Mass m of what turns. [kg]
    eccentricity_mm : Distance e of the centre of mass from the axis. [mm]

    Returns
    -------
    Highest spindle speed n. [1/min]

    Valid for
    ---------
    All more than 0; rigid work on a rigid spindle.

    Source
    ------
    Circular motion.

    >>> round(speed_for_force(14.2, 1.2, 3))
    600
    """
    positive(force_n, "force", "N")
    positive(mass_kg, "mass", "kg")
    positive(eccentricity_mm, "eccentricity", "mm")
    return 30 / pi * sqrt(1000 * force_n / (mass_kg * eccentricity_mm))


def centre_of_mass(masses_kg: Sequence[float], offsets_mm: Sequence[float]) -> float:
    """Distance of the common centre of mass of several parts from the axis, all on one line through it.

    e = |sum(m_i x_i)| / sum(m_i)

    Parameters
    ----------
    masses_kg : Mass of each part: blank, stub of a feeder, clamp, balance weight. [kg]
    offsets_mm : Distance x of the centre of each from the axis, less than 0 on the other side. [mm]

    Returns
    -------
    Eccentricity e of the whole. [mm]

    Valid for
    ---------
    At least one part, each with mass; as many offsets as masses.

    Source
    ------
    Statics.

    >>> centre_of_mass([1.0, 0.2], [0, 30])
    5.0
    """
    if not masses_kg or len(masses_kg) != len(offsets_mm):
        raise OutOfRange(f"{len(masses_kg)} masses are given for {len(offsets_mm)} offsets; each part needs both")
    for mass, offset in zip(masses_kg, offsets_mm, strict=True):
        positive(mass, "mass of a part", "kg")
        finite(offset, "offset of a part", "mm")
    return abs(sum(mass * offset for mass, offset in zip(masses_kg, offsets_mm, strict=True))) / sum(masses_kg)


def bored_disc_offset(diameter_mm: float, bore_mm: float, bore_offset_mm: float) -> BoredDiscOffset:
    """Where the centre of mass of a disc lies whose hole is not in its middle.

    e_outside = c b^2 / (d^2 - b^2), e_hole = c d^2 / (d^2 - b^2)

    Parameters
    ----------
    diameter_mm : Outside diameter d. [mm]
    bore_mm : Diameter b of the hole. [mm]
    bore_offset_mm : Distance c of the hole from the middle, half of a run-out. [mm]

    Returns
    -------
    Distance from the axis when it turns on its outside, and when it turns on its hole. [mm]

    Valid for
    ---------
    Even thickness, the hole within the disc.

    Source
    ------
    Statics of areas, derived.

    >>> [round(value, 4) for value in bored_disc_offset(75, 25, 0.8)]
    [0.1, 0.9]
    """
    positive(diameter_mm, "diameter", "mm")
    positive(bore_mm, "bore", "mm")
    positive(diameter_mm - bore_mm, "wall left by the hole", "mm")
    between(bore_offset_mm, 0, (diameter_mm - bore_mm) / 2, "offset of the hole", "mm")
    metal = diameter_mm**2 - bore_mm**2
    return BoredDiscOffset(bore_offset_mm * bore_mm**2 / metal, bore_offset_mm * diameter_mm**2 / metal)
