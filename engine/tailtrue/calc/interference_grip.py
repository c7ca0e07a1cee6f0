"""What a collar with interference holds, from its least fit to its greatest."""

from typing import NamedTuple

from tailtrue.calc.interference import collar_growth, collar_stress, contact_pressure
from tailtrue.calc.joints import bond_area, joint_torque
from tailtrue.calc.validity import OutOfRange, at_least, finite, positive, up_to


class Grip(NamedTuple):
    """An interference fit at both ends of its tolerance: what surely holds, and what may have to be borne."""

    least_pressure_mpa: float
    least_axial_n: float
    least_torque_nmm: float
    greatest_pressure_mpa: float
    greatest_hoop_mpa: float
    greatest_von_mises_mpa: float
    greatest_press_force_n: float
    greatest_growth_mm: float


def axial_grip(pressure_mpa: float, friction: float, joint_diameter_mm: float, length_mm: float) -> float:
    """Force along the bar at which a pressed joint slides.

    F = mu p pi d L

    Parameters
    ----------
    pressure_mpa : Pressure p in the joint: the least for what it holds, the greatest for what a press must push. [MPa]
    friction : Coefficient of friction mu: the low value for holding, the high one for pressing. [1]
    joint_diameter_mm : Diameter d of the joint. [mm]
    length_mm : Length L of the joint. [mm]

    Returns
    -------
    Force F. [N]

    Valid for
    ---------
    Pressure 0 or more, friction above 0 and at most 1, diameter and length more than 0; pressure even along the joint.

    Source
    ------
    Friction; the coefficients come from the tables of the caller.

    >>> round(axial_grip(30.39, 0.1, 25, 35))
    8354
    """
    at_least(pressure_mpa, 0, "pressure", "MPa")
    up_to(friction, 1, "coefficient of friction")
    return friction * pressure_mpa * bond_area(joint_diameter_mm, length_mm)


def grip_torque(pressure_mpa: float, friction: float, joint_diameter_mm: float, length_mm: float) -> float:
    """Torque at which a pressed joint slips.

    T = mu p pi d L d / 2

    Parameters
    ----------
    pressure_mpa : Least pressure p in the joint. [MPa]
    friction : Low value of the coefficient of friction mu. [1]
    joint_diameter_mm : Diameter d of the joint. [mm]
    length_mm : Length L of the joint. [mm]

    Returns
    -------
    Torque T. [N mm]

    Valid for
    ---------
    As `axial_grip`.

    Source
    ------
    Friction.

    >>> round(grip_torque(30.39, 0.1, 25, 35))
    104424
    """
    return joint_torque(axial_grip(pressure_mpa, friction, joint_diameter_mm, length_mm), joint_diameter_mm)


def pressure_for_torque(torque_nmm: float, friction: float, joint_diameter_mm: float, length_mm: float) -> float:
    """Pressure that a pressed joint needs to carry a torque.

    p = 2 T / (mu pi d^2 L)

    Parameters
    ----------
    torque_nmm : Torque T to carry, safety included. [N mm]
    friction : Low value of the coefficient of friction mu. [1]
    joint_diameter_mm : Diameter d of the joint. [mm]
    length_mm : Length L of the joint. [mm]

    Returns
    -------
    Pressure p. [MPa]

    Valid for
    ---------
    Torque 0 or more, the rest as `axial_grip`.

    Source
    ------
    `grip_torque` turned round.

    >>> round(pressure_for_torque(104424, 0.1, 25, 35), 2)
    30.39
    """
    at_least(torque_nmm, 0, "torque", "N mm")
    return torque_nmm / grip_torque(1.0, friction, joint_diameter_mm, length_mm)


def grip(
    *,
    least_interference_mm: float,
    greatest_interference_mm: float,
    roughness_loss_mm: float,
    joint_diameter_mm: float,
    length_mm: float,
    collar_diameter_mm: float,
    end_diameter_mm: float,
    bar_modulus_mpa: float,
    bar_poisson: float,
    collar_modulus_mpa: float,
    collar_poisson: float,
    low_friction: float,
    high_friction: float,
    elastic_limit_mpa: float,
) -> Grip:
    """An interference fit from both ends of what was measured: its least grip and its greatest stress.

    T_least: least i less the loss, last D, low mu; s_greatest: greatest i, no loss, worse of first and last D

    Parameters
    ----------
    least_interference_mm : Least interference on diameter; less than 0 is a clearance. [mm]
    greatest_interference_mm : Greatest interference on diameter. [mm]
    roughness_loss_mm : Interference on diameter that the roughness may take away at most. [mm]
    joint_diameter_mm : Diameter d of the joint. [mm]
    length_mm : Length L of the joint. [mm]
    collar_diameter_mm : Outside diameter D of the collar when it is put on. [mm]
    end_diameter_mm : Outside diameter D after the last skim of its life. [mm]
    bar_modulus_mpa : Modulus of elasticity of the bar. [MPa]
    bar_poisson : Poisson's ratio of the bar. [1]
    collar_modulus_mpa : Modulus of elasticity of the collar. [MPa]
    collar_poisson : Poisson's ratio of the collar. [1]
    low_friction : Low value of the coefficient of friction, for holding. [1]
    high_friction : High value of the coefficient of friction, for pressing. [1]
    elastic_limit_mpa : Stress that the metal of the collar may reach, a share of its yield strength. [MPa]

    Returns
    -------
    Least pressure, axial grip and torque; then the greatest pressure, stress round the bore, equivalent stress,
    press force and growth of the outside. [MPa, N, N mm, MPa, MPa, MPa, N, mm]

    Valid for
    ---------
    As `contact_pressure`; least not above greatest, last diameter not above the first, and the greatest
    equivalent stress within the limit given: beyond it the bore yields and the grip is less than reckoned.
    The least grip is 0 where nothing of the least interference is left.

    Source
    ------
    Derived from `contact_pressure`, `collar_stress` and `axial_grip`. As the collar wears, pressure and grip
    fall and the stress round the bore rises.

    >>> found = grip(least_interference_mm=0.014, greatest_interference_mm=0.048, roughness_loss_mm=0.01,
    ...     joint_diameter_mm=25, length_mm=35, collar_diameter_mm=75, end_diameter_mm=65, bar_modulus_mpa=207e3,
    ...     bar_poisson=0.29, collar_modulus_mpa=69e3, collar_poisson=0.33, low_friction=0.1, high_friction=0.2,
    ...     elastic_limit_mpa=220)
    >>> round(found.least_torque_nmm), round(found.greatest_von_mises_mpa)
    (19821, 142)
    """
    finite(least_interference_mm, "least interference on diameter", "mm")
    at_least(greatest_interference_mm, least_interference_mm, "greatest interference on diameter", "mm")
    at_least(roughness_loss_mm, 0, "loss of interference from roughness", "mm")
    at_least(collar_diameter_mm, end_diameter_mm, "outside diameter of the collar", "mm")
    at_least(high_friction, low_friction, "high coefficient of friction")
    positive(elastic_limit_mpa, "stress that the collar may reach", "MPa")

    def pressure(interference_mm: float, outside_mm: float) -> float:
        return contact_pressure(
            diametral_interference_mm=max(0.0, interference_mm),
            joint_diameter_mm=joint_diameter_mm,
            collar_diameter_mm=outside_mm,
            bar_modulus_mpa=bar_modulus_mpa,
            bar_poisson=bar_poisson,
            collar_modulus_mpa=collar_modulus_mpa,
            collar_poisson=collar_poisson,
        )

    least = pressure(least_interference_mm - roughness_loss_mm, end_diameter_mm)
    greatest = pressure(greatest_interference_mm, collar_diameter_mm)
    new = collar_stress(greatest, joint_diameter_mm, collar_diameter_mm)
    worn = collar_stress(pressure(greatest_interference_mm, end_diameter_mm), joint_diameter_mm, end_diameter_mm)
    equivalent = max(new.von_mises_mpa, worn.von_mises_mpa)
    if equivalent > elastic_limit_mpa:
        raise OutOfRange(
            f"the bore of the collar may come to a stress of {equivalent:.1f} MPa, and its metal may bear"
            f" {elastic_limit_mpa:g} MPa: a larger bore, measured more closely, or another way of fixing it helps"
        )
    return Grip(
        least_pressure_mpa=least,
        least_axial_n=axial_grip(least, low_friction, joint_diameter_mm, length_mm),
        least_torque_nmm=grip_torque(least, low_friction, joint_diameter_mm, length_mm),
        greatest_pressure_mpa=greatest,
        greatest_hoop_mpa=max(new.hoop_mpa, worn.hoop_mpa),
        greatest_von_mises_mpa=equivalent,
        greatest_press_force_n=axial_grip(greatest, high_friction, joint_diameter_mm, length_mm),
        greatest_growth_mm=collar_growth(greatest, joint_diameter_mm, collar_diameter_mm, collar_modulus_mpa),
    )
