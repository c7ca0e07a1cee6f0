"""Pins that hold a collar on a bar: across the bar, or along the line between bar and collar."""

from math import hypot, pi
from typing import NamedTuple

from tailtrue.calc.joints import joint_torque
from tailtrue.calc.validity import OutOfRange, at_least, between, finite, positive

_MOST_SHARE_OF_BAR = 1 / 3  # a thicker pin leaves no bar to speak of
_ROUNDING_SLACK_MM = 1e-9


class CrossPin(NamedTuple):
    """Torques at which a pin across bar and collar gives way, and the least of them with its safety taken off."""

    pin_nmm: float
    collar_nmm: float
    bar_nmm: float
    carried_nmm: float


class AxialPin(NamedTuple):
    """Torques at which pins along the joint give way, and the least of them with its safety taken off."""

    shear_nmm: float
    bearing_nmm: float
    carried_nmm: float


def pin_shear_force(shear_strength_mpa: float, pin_diameter_mm: float) -> float:
    """Force that shears a solid pin in two places.

    F = 2 tau pi b^2 / 4

    Parameters
    ----------
    shear_strength_mpa : Shear strength tau of the pin. [MPa]
    pin_diameter_mm : Diameter b of the pin. [mm]

    Returns
    -------
    Force F in double shear. [N]

    Valid for
    ---------
    Both more than 0; solid pin. Spring pins are hollow: take the force of their data sheet.

    Source
    ------
    Geometry; about 1050 MPa gives the printed forces of hardened dowel pins of ASME B18.8.5M within 2 %.

    >>> round(pin_shear_force(1050, 5))
    41233
    """
    positive(shear_strength_mpa, "shear strength of the pin", "MPa")
    positive(pin_diameter_mm, "diameter of the pin", "mm")
    return 2 * shear_strength_mpa * pi * pin_diameter_mm**2 / 4


def pin_shear_stress(shear_force_n: float, pin_diameter_mm: float) -> float:
    """Shear in a solid pin that would give the force of a data sheet in double shear.

    tau = F / (2 pi b^2 / 4)

    Parameters
    ----------
    shear_force_n : Force F in double shear. [N]
    pin_diameter_mm : Diameter b of the pin. [mm]

    Returns
    -------
    Shear tau. [MPa]

    Valid for
    ---------
    Force 0 or more, diameter more than 0; for a hollow pin it is that of a solid one as strong.

    Source
    ------
    `pin_shear_force` turned round.

    >>> round(pin_shear_stress(26400, 4), 1)
    1050.4
    """
    at_least(shear_force_n, 0, "shear force", "N")
    positive(pin_diameter_mm, "diameter of the pin", "mm")
    return shear_force_n / (2 * pi * pin_diameter_mm**2 / 4)


def cross_pin(
    *,
    shear_force_n: float,
    pin_diameter_mm: float,
    pin_length_mm: float,
    joint_diameter_mm: float,
    collar_bearing_mpa: float,
    bar_bearing_mpa: float,
    safety: float,
) -> CrossPin:
    """Torque that one pin right across bar and collar carries.

    T_pin = F d / 2, T_collar = p_c b (l^2 - d^2) / 4, T_bar = p_b b d^2 / 6, T = least / S

    Parameters
    ----------
    shear_force_n : Force F that shears the pin in two places, from its sheet or `pin_shear_force`. [N]
    pin_diameter_mm : Diameter b of the pin. [mm]
    pin_length_mm : Length l of the pin. [mm]
    joint_diameter_mm : Diameter d of the bar. [mm]
    collar_bearing_mpa : Pressure p_c that the metal of the collar stands from the pin. [MPa]
    bar_bearing_mpa : Pressure p_b that the metal of the bar stands from the pin. [MPa]
    safety : Safety factor S. [1]

    Returns
    -------
    Torque that shears the pin, that crushes the hole in the collar, that crushes the hole in the bar, and the
    least of them over the safety. [N mm]

    Valid for
    ---------
    All more than 0, pin at most a third of the bar and longer than the bar is thick, safety 1 or more. Pressure
    even in the collar, rising from the middle outward in the bar. The bar itself is judged by `bar_section_left`.

    Source
    ------
    Usual working for a pin across a hub (any text on machine elements; memory).

    >>> [round(torque) for torque in cross_pin(shear_force_n=11240, pin_diameter_mm=4, pin_length_mm=50,
    ...     joint_diameter_mm=25, collar_bearing_mpa=50, bar_bearing_mpa=100, safety=1)]
    [140500, 93750, 41667, 41667]
    """
    positive(shear_force_n, "force that shears the pin", "N")
    _thin_against_the_bar(pin_diameter_mm, joint_diameter_mm)
    finite(pin_length_mm, "length of the pin", "mm")
    positive(pin_length_mm - joint_diameter_mm, "length of the pin over the diameter of the bar", "mm")
    positive(collar_bearing_mpa, "pressure that the collar stands", "MPa")
    positive(bar_bearing_mpa, "pressure that the bar stands", "MPa")
    at_least(safety, 1, "safety factor")
    torques = (
        joint_torque(shear_force_n, joint_diameter_mm),
        collar_bearing_mpa * pin_diameter_mm * (pin_length_mm**2 - joint_diameter_mm**2) / 4,
        bar_bearing_mpa * pin_diameter_mm * joint_diameter_mm**2 / 6,
    )
    return CrossPin(*torques, min(torques) / safety)


def bar_section_left(pin_diameter_mm: float, joint_diameter_mm: float) -> float:
    """Share of its strength in bending that a bar keeps beside a hole right across it.

    Z / Z0 = 1 - 16 b / (3 pi d)

    Parameters
    ----------
    pin_diameter_mm : Diameter b of the hole. [mm]
    joint_diameter_mm : Diameter d of the bar. [mm]

    Returns
    -------
    Share left where it is least; the bar is also less stiff one way than the other. [1]

    Valid for
    ---------
    Both more than 0, hole at most a third of the bar; stress raised at the rim of the hole not counted.

    Source
    ------
    Net section, as in tables of stress concentration (memory), derived.

    >>> round(bar_section_left(6, 25), 3)
    0.593
    """
    _thin_against_the_bar(pin_diameter_mm, joint_diameter_mm)
    return 1 - 16 * pin_diameter_mm / (3 * pi * joint_diameter_mm)


def cross_pin_depth(end_diameter_mm: float, pin_length_mm: float, pin_diameter_mm: float, least_depth_mm: float) -> float:
    """Depth of the ends of a pin across a collar below its surface after the last skim.

    h = (D - sqrt(l^2 + b^2)) / 2

    Parameters
    ----------
    end_diameter_mm : Outside diameter D of the collar after the last skim of its life. [mm]
    pin_length_mm : Length l of the pin, its middle on the axis. [mm]
    pin_diameter_mm : Diameter b of the pin; the rim of its flat end comes nearest to the surface. [mm]
    least_depth_mm : Depth that must be left, usually 1 mm. [mm]

    Returns
    -------
    Depth h per side, at the rim of the end of the pin. [mm]

    Valid for
    ---------
    All more than 0. A pin whose ends would come too near the tool is refused: a hardened one breaks it.

    Source
    ------
    Geometry; the least depth is common practice.

    >>> round(cross_pin_depth(65, 60, 4, 1), 2)
    2.43
    """
    positive(end_diameter_mm, "last diameter of the collar", "mm")
    positive(pin_length_mm, "length of the pin", "mm")
    positive(pin_diameter_mm, "diameter of the pin", "mm")
    return _deep_enough((end_diameter_mm - hypot(pin_length_mm, pin_diameter_mm)) / 2, least_depth_mm, "a shorter pin")


def axial_pins(
    *,
    count: int,
    pin_diameter_mm: float,
    pin_length_mm: float,
    joint_diameter_mm: float,
    shear_mpa: float,
    bearing_mpa: float,
    safety: float,
) -> AxialPin:
    """Torque that pins along the joint carry, each half in the bar and half in the collar.

    T_shear = n tau b L d / 2, T_bearing = n p (b / 2) L d / 2, T = least / S

    Parameters
    ----------
    count : Number n of pins. [1]
    pin_diameter_mm : Diameter b of each pin. [mm]
    pin_length_mm : Length L of each pin. [mm]
    joint_diameter_mm : Diameter d of the joint. [mm]
    shear_mpa : Shear tau that the metal of the pin stands. [MPa]
    bearing_mpa : Pressure p that the softer of bar and collar stands. [MPa]
    safety : Safety factor S. [1]

    Returns
    -------
    Torque that shears the pins, torque that crushes the softer metal, and the least over the safety. [N mm]

    Valid for
    ---------
    One or two pins, diameter at most a third of the joint, all more than 0, safety 1 or more. Nothing is held
    along the bar.

    Source
    ------
    Statics, derived. Pressure usually governs.

    >>> [round(torque) for torque in axial_pins(count=1, pin_diameter_mm=6, pin_length_mm=12, joint_diameter_mm=25,
    ...     shear_mpa=60, bearing_mpa=50, safety=1)]
    [54000, 22500, 22500]
    """
    between(count, 1, 2, "number of pins")
    _thin_against_the_bar(pin_diameter_mm, joint_diameter_mm)
    positive(pin_length_mm, "length of the pin", "mm")
    positive(shear_mpa, "shear that the pin stands", "MPa")
    positive(bearing_mpa, "pressure that the softer metal stands", "MPa")
    at_least(safety, 1, "safety factor")
    face = count * pin_diameter_mm * pin_length_mm
    shear = shear_mpa * face * joint_diameter_mm / 2
    bearing = bearing_mpa * face / 2 * joint_diameter_mm / 2
    return AxialPin(shear, bearing, min(shear, bearing) / safety)


def axial_pin_depth(
    end_diameter_mm: float, joint_diameter_mm: float, pin_diameter_mm: float, least_depth_mm: float
) -> float:
    """Metal left over a pin along the joint after the last skim.

    h = (D - d - b) / 2

    Parameters
    ----------
    end_diameter_mm : Outside diameter D of the collar after the last skim of its life. [mm]
    joint_diameter_mm : Diameter d of the joint, on which the middle of the pin lies. [mm]
    pin_diameter_mm : Diameter b of the pin. [mm]
    least_depth_mm : Depth that must be left, usually 1 mm. [mm]

    Returns
    -------
    Depth h per side from the last surface to the pin. [mm]

    Valid for
    ---------
    All more than 0, pin at most a third of the joint. Too thin a cover is refused: the tool would meet the pin.

    Source
    ------
    Geometry; the least depth is common practice.

    >>> axial_pin_depth(65, 25, 6, 1)
    17.0
    """
    positive(end_diameter_mm, "last diameter of the collar", "mm")
    _thin_against_the_bar(pin_diameter_mm, joint_diameter_mm)
    depth = (end_diameter_mm - joint_diameter_mm - pin_diameter_mm) / 2
    return _deep_enough(depth, least_depth_mm, "a thinner pin")


def _thin_against_the_bar(pin_diameter_mm: float, joint_diameter_mm: float) -> None:
    positive(pin_diameter_mm, "diameter of the pin", "mm")
    positive(joint_diameter_mm, "diameter of the bar", "mm")
    between(pin_diameter_mm / joint_diameter_mm, 0, _MOST_SHARE_OF_BAR, "pin as a share of the bar")


def _deep_enough(depth_mm: float, least_depth_mm: float, remedy: str) -> float:
    positive(least_depth_mm, "least depth of the pin below the surface", "mm")
    if depth_mm < least_depth_mm - _ROUNDING_SLACK_MM:
        raise OutOfRange(
            f"the pin would lie {abs(depth_mm):.3g} mm {'above' if depth_mm < 0 else 'below'} the last surface of the"
            f" collar, and must lie at least {least_depth_mm:g} mm below it: {remedy} or a larger last diameter helps"
        )
    return depth_mm
