"""The joint between collar and bar: what a bond carries, and what the cut asks of any joint."""

from collections.abc import Sequence
from math import pi, prod
from typing import NamedTuple

from tailtrue.calc.validity import at_least, between, positive, up_to

_LONGEST_IN_DIAMETERS = 1.5


class JointSafety(NamedTuple):
    """What a joint carries, in torques of the skim and in torques of a catch."""

    skim: float
    catch: float


def bond_area(diameter_mm: float, length_mm: float) -> float:
    """Area of the bond between a bar and a collar.

    A = pi d L

    Parameters
    ----------
    diameter_mm : Diameter d of the joint. [mm]
    length_mm : Length L of the joint, the width of the collar. [mm]

    Returns
    -------
    Area A. [mm2]

    Valid for
    ---------
    Both more than 0.

    Source
    ------
    Geometry.

    >>> round(bond_area(25, 35), 1)
    2748.9
    """
    positive(diameter_mm, "diameter of the joint", "mm")
    positive(length_mm, "length of the joint", "mm")
    return pi * diameter_mm * length_mm


def bond_torque(shear_mpa: float, diameter_mm: float, length_mm: float) -> float:
    """Torque that a bonded collar carries.

    T = tau pi d L d / 2

    Parameters
    ----------
    shear_mpa : Shear strength tau to reckon with, derated. [MPa]
    diameter_mm : Diameter d of the joint. [mm]
    length_mm : Length L of the joint. [mm]

    Returns
    -------
    Torque T. [N mm]

    Valid for
    ---------
    All more than 0, length at most 1.5 diameters: a longer joint is loaded at one end and carries less than
    this. Static torque, compound fully cured.

    Source
    ------
    Derived from even shear, as in the pin and collar test of ISO 10123.

    >>> round(bond_torque(20, 25, 35), -2)
    687200.0
    """
    positive(shear_mpa, "shear strength", "MPa")
    area = bond_area(diameter_mm, length_mm)
    between(length_mm / diameter_mm, 0, _LONGEST_IN_DIAMETERS, "length of the joint in diameters")
    return shear_mpa * area * diameter_mm / 2


def derated_shear(nominal_mpa: float, factors: Sequence[float], safety: float) -> float:
    """Shear strength to reckon with, from the one on the data sheet.

    tau = tau_N f1 f2 ... / S

    Parameters
    ----------
    nominal_mpa : Shear strength tau_N of the data sheet. [MPa]
    factors : Shares f that gap, metal, cleaning, warmth and size leave of it. [1]
    safety : Safety factor S. [1]

    Returns
    -------
    Shear strength tau to reckon with. [MPa]

    Valid for
    ---------
    Strength more than 0, each factor above 0 and at most 1, safety 1 or more. A factor of 0 means that there
    is no joint to reckon with.

    Source
    ------
    Common practice; the factors themselves come from the tables of the caller.

    >>> round(derated_shear(20, [0.6, 0.5, 0.6, 0.9, 0.9], 3), 3)
    0.972
    """
    positive(nominal_mpa, "shear strength of the data sheet", "MPa")
    for factor in factors:
        up_to(factor, 1, "derating factor")
    at_least(safety, 1, "safety factor")
    return nominal_mpa * prod(factors) / safety


def slowed_cure(full_cure_s: float, times: float) -> float:
    """Wait for a bond on a metal that slows its cure.

    t = n t0

    Parameters
    ----------
    full_cure_s : Time t0 to full cure on a metal that starts it, by the data sheet. [s]
    times : How many times n as long it takes on this metal. [1]

    Returns
    -------
    Wait t. [s]

    Valid for
    ---------
    Full cure more than 0, at the temperature of the data sheet; times 1 or more.

    Source
    ------
    Common practice; how many times comes from the table of the caller.

    >>> slowed_cure(86400, 2) / 3600
    48.0
    """
    positive(full_cure_s, "time to full cure", "s")
    at_least(times, 1, "times that the metal slows the cure")
    return full_cure_s * times


def skim_torque(cutting_force_n: float, diameter_mm: float) -> float:
    """Torque that a cut on the outside of a collar puts on its joint.

    T = Fc D / 2

    Parameters
    ----------
    cutting_force_n : Main cutting force Fc. [N]
    diameter_mm : Diameter D where the tool cuts, not that of the joint. [mm]

    Returns
    -------
    Torque T. [N mm]

    Valid for
    ---------
    Force 0 or more, diameter more than 0.

    Source
    ------
    Statics.

    >>> round(skim_torque(31.12, 75))
    1167
    """
    at_least(cutting_force_n, 0, "cutting force", "N")
    positive(diameter_mm, "diameter", "mm")
    return cutting_force_n * diameter_mm / 2


def bond_volume(diameter_mm: float, length_mm: float, diametral_clearance_mm: float) -> float:
    """Volume of compound that fills the gap of a joint.

    V = pi (d c / 2 + c^2 / 4) L

    Parameters
    ----------
    diameter_mm : Diameter d of the bar. [mm]
    length_mm : Length L of the joint. [mm]
    diametral_clearance_mm : Clearance c on diameter, twice the film. [mm]

    Returns
    -------
    Volume V, without what squeezes out; 1000 are a millilitre. [mm3]

    Valid for
    ---------
    Diameter and length more than 0, clearance 0 or more.

    Source
    ------
    Geometry.

    >>> round(bond_volume(25, 35, 0.10), 1)
    137.7
    """
    at_least(diametral_clearance_mm, 0, "diametral clearance", "mm")
    area = bond_area(diameter_mm, length_mm)
    return area * (diametral_clearance_mm / 2 + diametral_clearance_mm**2 / (4 * diameter_mm))


def bond_force(shear_mpa: float, diameter_mm: float, length_mm: float) -> float:
    """Force along the bar that a bonded collar carries.

    F = tau pi d L

    Parameters
    ----------
    shear_mpa : Shear strength tau to reckon with, derated. [MPa]
    diameter_mm : Diameter d of the joint. [mm]
    length_mm : Length L of the joint. [mm]

    Returns
    -------
    Force F along the axis. [N]

    Valid for
    ---------
    As `bond_torque`.

    Source
    ------
    Derived from even shear, as in the pin and collar test of ISO 10123.

    >>> round(bond_force(20, 25, 35))
    54978
    """
    return bond_torque(shear_mpa, diameter_mm, length_mm) / (diameter_mm / 2)


def bond_length(torque_nmm: float, shear_mpa: float, diameter_mm: float) -> float:
    """Shortest bond that carries a torque.

    L = 2 T / (pi d^2 tau)

    Parameters
    ----------
    torque_nmm : Torque T to carry, that of a catch and not of the skim. [N mm]
    shear_mpa : Shear strength tau to reckon with, derated. [MPa]
    diameter_mm : Diameter d of the joint. [mm]

    Returns
    -------
    Length L of the joint. [mm]

    Valid for
    ---------
    All more than 0, length found at most 1.5 diameters.

    Source
    ------
    `bond_torque` turned round.

    >>> round(bond_length(11700, 1.5, 25), 1)
    7.9
    """
    positive(torque_nmm, "torque", "N mm")
    positive(shear_mpa, "shear strength", "MPa")
    positive(diameter_mm, "diameter of the joint", "mm")
    length = 2 * torque_nmm / (pi * diameter_mm**2 * shear_mpa)
    between(length / diameter_mm, 0, _LONGEST_IN_DIAMETERS, "length of the joint in diameters")
    return length


def joint_torque(holding_n: float, diameter_mm: float) -> float:
    """Torque that a force along the face of the joint carries.

    T = F d / 2

    Parameters
    ----------
    holding_n : Force F round the bar at which the joint lets go. [N]
    diameter_mm : Diameter d of the joint, not that of the collar. [mm]

    Returns
    -------
    Torque T. [N mm]

    Valid for
    ---------
    Force 0 or more, diameter more than 0.

    Source
    ------
    Statics; for set screws and pins Shigley's Mechanical Engineering Design, 9th ed., sec. 7-7.

    >>> round(joint_torque(11240, 25))
    140500
    """
    at_least(holding_n, 0, "holding force", "N")
    positive(diameter_mm, "diameter of the joint", "mm")
    return holding_n * diameter_mm / 2


def joint_safety(carried_torque_nmm: float, cutting_force_n: float, catch_force_n: float, diameter_mm: float) -> JointSafety:
    """What a joint of any kind carries, against the skim and against a tool that catches.

    S = T / (F D / 2), for the skim and for the catch

    Parameters
    ----------
    carried_torque_nmm : Least torque T that the joint carries, its own safety already taken off. [N mm]
    cutting_force_n : Main cutting force F of the skim. [N]
    catch_force_n : Main cutting force F of a catch: a deep, coarse cut with a dull tool. [N]
    diameter_mm : Diameter D where the tool cuts, not that of the joint; the largest before the cut. [mm]

    Returns
    -------
    Torque carried in torques of the skim, and in torques of a catch; below 1 it slips. [1]

    Valid for
    ---------
    Torque 0 or more, forces and diameter more than 0, catch not below the skim. Torque alone: the push along
    the bar is small beside it, since the tool cuts on a larger diameter than that of the joint.

    Source
    ------
    Statics; that the catch and not the skim sizes the joint is common practice.

    >>> [round(share, 1) for share in joint_safety(33400, 31.12, 628, 75)]
    [28.6, 1.4]
    """
    at_least(carried_torque_nmm, 0, "torque that the joint carries", "N mm")
    positive(cutting_force_n, "cutting force", "N")
    at_least(catch_force_n, cutting_force_n, "cutting force of a catch", "N")
    return JointSafety(
        carried_torque_nmm / skim_torque(cutting_force_n, diameter_mm),
        carried_torque_nmm / skim_torque(catch_force_n, diameter_mm),
    )


def compound_needed(area_mm2: float, diametral_clearance_mm: float, waste_factor: float, count: int) -> float:
    """Retaining compound for so many seats, with what is wiped off.

    V = n A c / 2 q / 1000

    Parameters
    ----------
    area_mm2 : Area A of one seat. [mm2]
    diametral_clearance_mm : Gap c on diameter. [mm]
    waste_factor : Factor q for what is wiped off. [1]
    count : Number n of seats. [1]

    Returns
    -------
    Volume V. [ml]

    Valid for
    ---------
    Area more than 0, gap 0 or more, factor at least 1, at least one seat; the gap small against the diameter.

    Source
    ------
    Geometry, derived.

    >>> round(compound_needed(2748.9, 0.1, 2, 2), 4)
    0.5498
    """
    positive(area_mm2, "area", "mm2")
    at_least(diametral_clearance_mm, 0, "gap", "mm")
    at_least(waste_factor, 1, "factor for what is wiped off")
    at_least(count, 1, "number of seats")
    return count * area_mm2 * diametral_clearance_mm / 2 * waste_factor / 1000
