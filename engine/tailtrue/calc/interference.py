"""Collars held by interference: pressure and stress from the equations of thick cylinders.

An interference is always that of diameters, bar less bore, twice the one of radii.
"""

from math import sqrt
from typing import NamedTuple

from tailtrue.calc.validity import at_least, between, finite, positive

# Of the joint diameter. Beyond this no metal of a collar is elastic any more; a slipped unit or a factor of two shows.
_MOST_INTERFERENCE_SHARE = 0.004
_MOST_POISSON = 0.5  # a body that keeps its volume


class CollarStress(NamedTuple):
    """Stresses at the bore of a collar; pulling is more than 0."""

    hoop_mpa: float
    radial_mpa: float
    von_mises_mpa: float


def roughness_loss(bar_roughness_um: float, collar_roughness_um: float, loss_factor: float) -> float:
    """Interference that goes when the peaks of both faces are pressed flat.

    l = f (R_bar + R_collar) / 1000

    Parameters
    ----------
    bar_roughness_um : Roughness R of the bar, of the kind that the factor is for. [um]
    collar_roughness_um : Roughness R of the bore, of the same kind. [um]
    loss_factor : Loss f on diameter for each unit of roughness: 0.4 or 0.8 with Rz, 1.2 with Ra. [1]

    Returns
    -------
    Loss l of interference on diameter. [mm]

    Valid for
    ---------
    Roughness and factor 0 or more.

    Source
    ------
    DIN 7190-1:2017 (0.4 with Rz) and its forerunner (0.8), as told in an engineering note on the change; rule
    of asperities (1.2 with Ra) from a tribology reference.

    >>> round(roughness_loss(6.3, 6.3, 0.4), 5)
    0.00504
    """
    for roughness, name in ((bar_roughness_um, "bar"), (collar_roughness_um, "bore")):
        at_least(roughness, 0, f"roughness of the {name}", "um")
    at_least(loss_factor, 0, "loss for each unit of roughness")
    return loss_factor * (bar_roughness_um + collar_roughness_um) / 1000


def effective_interference(
    diametral_interference_mm: float, bar_roughness_um: float, collar_roughness_um: float, loss_factor: float
) -> float:
    """Interference that is left when the peaks of both faces are pressed flat.

    i_e = i - f (R_bar + R_collar) / 1000, never less than 0; the loss is that of `roughness_loss`

    Parameters
    ----------
    diametral_interference_mm : Bar less bore i, as measured; less than 0 is a clearance. [mm]
    bar_roughness_um : Roughness R of the bar, of the kind that the factor is for. [um]
    collar_roughness_um : Roughness R of the bore, of the same kind. [um]
    loss_factor : Loss f on diameter for each unit of roughness: 0.4 or 0.8 with Rz, 1.2 with Ra. [1]

    Returns
    -------
    Interference on diameter that presses; 0 when there is none. [mm]

    Valid for
    ---------
    Roughness and factor 0 or more. For the least grip take the larger factor, for the greatest stress no loss.

    Source
    ------
    DIN 7190-1:2017 (0.4 with Rz) and its forerunner (0.8), as told in an engineering note on the change; rule
    of asperities (1.2 with Ra) from a tribology reference.

    >>> round(effective_interference(0.028, 6.3, 6.3, 0.4), 5)
    0.02296
    """
    finite(diametral_interference_mm, "interference on diameter", "mm")
    return max(0.0, diametral_interference_mm - roughness_loss(bar_roughness_um, collar_roughness_um, loss_factor))


def contact_pressure(
    *,
    diametral_interference_mm: float,
    joint_diameter_mm: float,
    collar_diameter_mm: float,
    bar_modulus_mpa: float,
    bar_poisson: float,
    collar_modulus_mpa: float,
    collar_poisson: float,
) -> float:
    """Pressure between a solid bar and a collar that is smaller in the bore.

    p = i / (d (C_c / E_c + C_b / E_b)), C_c = (D^2 + d^2) / (D^2 - d^2) + nu_c, C_b = 1 - nu_b

    Parameters
    ----------
    diametral_interference_mm : Interference i on diameter, after the loss from roughness. [mm]
    joint_diameter_mm : Diameter d of the joint. [mm]
    collar_diameter_mm : Outside diameter D of the collar. [mm]
    bar_modulus_mpa : Modulus of elasticity E_b of the bar. [MPa]
    bar_poisson : Poisson's ratio nu_b of the bar. [1]
    collar_modulus_mpa : Modulus of elasticity E_c of the collar. [MPa]
    collar_poisson : Poisson's ratio nu_c of the collar. [1]

    Returns
    -------
    Pressure p. [MPa]

    Valid for
    ---------
    Solid bar, D > d, interference 0 to 0.4 % of the joint diameter, both metals elastic (see `collar_stress`),
    wall of the collar even, rim so slow that it does not widen. A bar that goes on past the collar presses
    harder at its edges than this.

    Source
    ------
    Thick-cylinder theory (Shigley's Mechanical Engineering Design, eq. 3-56; memory). The Poisson terms are plus
    for the collar and minus for the bar; a form with both signs turned is in print and gives half as much again.

    >>> round(contact_pressure(diametral_interference_mm=0.02, joint_diameter_mm=25, collar_diameter_mm=75,
    ...     bar_modulus_mpa=207e3, bar_poisson=0.29, collar_modulus_mpa=69e3, collar_poisson=0.33), 2)
    30.39
    """
    yielding = _give(joint_diameter_mm, collar_diameter_mm, bar_modulus_mpa, bar_poisson, collar_modulus_mpa, collar_poisson)
    _interference_is_small(diametral_interference_mm, joint_diameter_mm)
    return diametral_interference_mm / yielding


def interference_for_pressure(
    *,
    pressure_mpa: float,
    joint_diameter_mm: float,
    collar_diameter_mm: float,
    bar_modulus_mpa: float,
    bar_poisson: float,
    collar_modulus_mpa: float,
    collar_poisson: float,
) -> float:
    """Interference that a wanted pressure asks for.

    i = p d (C_c / E_c + C_b / E_b), with C_c and C_b as in `contact_pressure`

    Parameters
    ----------
    pressure_mpa : Pressure p wanted. [MPa]
    joint_diameter_mm : Diameter d of the joint. [mm]
    collar_diameter_mm : Outside diameter D of the collar. [mm]
    bar_modulus_mpa : Modulus of elasticity E_b of the bar. [MPa]
    bar_poisson : Poisson's ratio nu_b of the bar. [1]
    collar_modulus_mpa : Modulus of elasticity E_c of the collar. [MPa]
    collar_poisson : Poisson's ratio nu_c of the collar. [1]

    Returns
    -------
    Interference i on diameter; the loss from roughness comes on top. [mm]

    Valid for
    ---------
    As `contact_pressure`, pressure 0 or more.

    Source
    ------
    `contact_pressure` turned round.

    >>> round(interference_for_pressure(pressure_mpa=30.39, joint_diameter_mm=25, collar_diameter_mm=75,
    ...     bar_modulus_mpa=207e3, bar_poisson=0.29, collar_modulus_mpa=69e3, collar_poisson=0.33), 4)
    0.02
    """
    at_least(pressure_mpa, 0, "pressure", "MPa")
    interference = pressure_mpa * _give(
        joint_diameter_mm, collar_diameter_mm, bar_modulus_mpa, bar_poisson, collar_modulus_mpa, collar_poisson
    )
    _interference_is_small(interference, joint_diameter_mm)
    return interference


def collar_stress(pressure_mpa: float, joint_diameter_mm: float, collar_diameter_mm: float) -> CollarStress:
    """Stresses in a collar at its bore, where they are greatest.

    s_t = p (D^2 + d^2) / (D^2 - d^2), s_r = -p, s_v = sqrt(s_t^2 + s_t p + p^2)

    Parameters
    ----------
    pressure_mpa : Pressure p in the joint. [MPa]
    joint_diameter_mm : Diameter d of the joint. [mm]
    collar_diameter_mm : Outside diameter D of the collar. [mm]

    Returns
    -------
    Stress round the bore s_t, stress across the wall s_r, and what they come to for a ductile metal s_v. [MPa]

    Valid for
    ---------
    Pressure 0 or more, D > d, elastic. A brittle metal such as grey iron breaks by s_t, not by s_v.

    Source
    ------
    Thick-cylinder theory (memory).

    >>> [round(stress, 1) for stress in collar_stress(30.39, 25, 75)]
    [38.0, -30.4, 59.3]
    """
    at_least(pressure_mpa, 0, "pressure", "MPa")
    hoop = pressure_mpa * _spread(joint_diameter_mm, collar_diameter_mm)
    return CollarStress(hoop, -pressure_mpa, sqrt(hoop**2 + hoop * pressure_mpa + pressure_mpa**2))


def collar_growth(
    pressure_mpa: float, joint_diameter_mm: float, collar_diameter_mm: float, collar_modulus_mpa: float
) -> float:
    """Growth of the outside of a collar under the pressure of its joint.

    dD = 2 p d^2 D / (E (D^2 - d^2))

    Parameters
    ----------
    pressure_mpa : Pressure p in the joint. [MPa]
    joint_diameter_mm : Diameter d of the joint. [mm]
    collar_diameter_mm : Outside diameter D of the collar. [mm]
    collar_modulus_mpa : Modulus of elasticity E of the collar. [MPa]

    Returns
    -------
    Growth dD on diameter; the skim comes after it. [mm]

    Valid for
    ---------
    As `collar_stress`, modulus more than 0.

    Source
    ------
    Thick-cylinder theory (memory).

    >>> round(collar_growth(30.39, 25, 75, 69e3), 4)
    0.0083
    """
    at_least(pressure_mpa, 0, "pressure", "MPa")
    positive(collar_modulus_mpa, "modulus of elasticity of the collar", "MPa")
    _spread(joint_diameter_mm, collar_diameter_mm)
    wall = collar_diameter_mm**2 - joint_diameter_mm**2
    return 2 * pressure_mpa * joint_diameter_mm**2 * collar_diameter_mm / (collar_modulus_mpa * wall)


def _spread(joint_diameter_mm: float, collar_diameter_mm: float) -> float:
    """Hoop stress at the bore of a collar for each unit of pressure; 1 in a wall without end."""
    positive(joint_diameter_mm, "diameter of the joint", "mm")
    positive(collar_diameter_mm, "outside diameter of the collar", "mm")
    positive(collar_diameter_mm - joint_diameter_mm, "outside diameter of the collar over that of the joint", "mm")
    return (collar_diameter_mm**2 + joint_diameter_mm**2) / (collar_diameter_mm**2 - joint_diameter_mm**2)


def _give(
    joint_diameter_mm: float,
    collar_diameter_mm: float,
    bar_modulus_mpa: float,
    bar_poisson: float,
    collar_modulus_mpa: float,
    collar_poisson: float,
) -> float:
    """Change of both diameters together, for each unit of pressure."""
    spread = _spread(joint_diameter_mm, collar_diameter_mm)
    for poisson, modulus, name in ((bar_poisson, bar_modulus_mpa, "bar"), (collar_poisson, collar_modulus_mpa, "collar")):
        positive(modulus, f"modulus of elasticity of the {name}", "MPa")
        between(poisson, 0, _MOST_POISSON, f"Poisson's ratio of the {name}")
    return joint_diameter_mm * ((spread + collar_poisson) / collar_modulus_mpa + (1 - bar_poisson) / bar_modulus_mpa)


def _interference_is_small(interference_mm: float, joint_diameter_mm: float) -> None:
    share = interference_mm / joint_diameter_mm
    between(share, 0, _MOST_INTERFERENCE_SHARE, "interference as a share of the joint diameter")
