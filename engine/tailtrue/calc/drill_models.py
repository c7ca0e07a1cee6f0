"""Other models of drilling, to hold the planned thrust and torque against: lips alone, and a coarse power law."""

from math import radians, sin

from tailtrue.calc.cutting import specific_force
from tailtrue.calc.drilling import TOOL_MAKER_FEEDS_MM
from tailtrue.calc.validity import between, positive


def specific_force_drilling(kc11_mpa: float, mc: float, feed_mm: float, point_angle_deg: float) -> float:
    """Specific cutting force at the lips of a drill (Kienzle).

    kc = kc1.1 h^-mc, h = f / 2 sin(sigma / 2)

    Parameters
    ----------
    kc11_mpa : Specific force kc1.1 of the metal. [MPa]
    mc : Exponent mc of the metal. [1]
    feed_mm : Feed f per turn, shared by two lips. [mm/rev]
    point_angle_deg : Full angle sigma of the point. [deg]

    Returns
    -------
    Specific cutting force kc. [MPa]

    Valid for
    ---------
    Feed more than 0, angle 60 to 180 degrees, the chip thickness as in `specific_force`.

    Source
    ------
    Metal groups of VDI 3323; common sheet of drilling formulas.

    >>> round(specific_force_drilling(1500, 0.22, 0.2, point_angle_deg=118), 1)
    2575.2
    """
    positive(feed_mm, "feed of the drill", "mm/rev")
    between(point_angle_deg, 60, 180, "point angle", "degrees")
    return specific_force(kc11_mpa, mc, feed_mm / 2 * sin(radians(point_angle_deg / 2)))


def torque_kienzle(kc_mpa: float, feed_mm: float, diameter_mm: float) -> float:
    """Torque of a twist drill from the specific force at its lips; a comparison, the chisel edge left out.

    M = kc f D^2 / 8

    Parameters
    ----------
    kc_mpa : Specific force kc at the lips, of `specific_force_drilling`. [MPa]
    feed_mm : Feed f per turn. [mm/rev]
    diameter_mm : Diameter D of the drill. [mm]

    Returns
    -------
    Torque M of a sharp drill. [N mm]

    Valid for
    ---------
    All more than 0; lips only, so rather low: plan with `drill_demand`.

    Source
    ------
    Common sheet of drilling formulas.

    >>> round(torque_kienzle(2575.2, 0.2, 10))
    6438
    """
    _kienzle_holds(kc_mpa, feed_mm, diameter_mm)
    return kc_mpa * feed_mm * diameter_mm**2 / 8


def thrust_kienzle(kc_mpa: float, feed_mm: float, diameter_mm: float, thrust_share: float) -> float:
    """Thrust of a twist drill from the specific force at its lips; a comparison, the chisel edge left out.

    T = s D / 2 f kc

    Parameters
    ----------
    kc_mpa : Specific force kc at the lips, of `specific_force_drilling`. [MPa]
    feed_mm : Feed f per turn. [mm/rev]
    diameter_mm : Diameter D of the drill. [mm]
    thrust_share : Share s of the thrust in the force of both lips. [1]

    Returns
    -------
    Thrust T of a sharp drill. [N]

    Valid for
    ---------
    All more than 0, share 0.1 to 1.5; without the chisel edge, so too low to plan with: use `drill_demand`.

    Source
    ------
    Common sheet of drilling formulas.

    >>> round(thrust_kienzle(2575.2, 0.2, 10, thrust_share=0.7), 1)
    1802.6
    """
    _kienzle_holds(kc_mpa, feed_mm, diameter_mm)
    between(thrust_share, 0.1, 1.5, "share of the thrust")
    return thrust_share * diameter_mm / 2 * feed_mm * kc_mpa


def torque_power_law(drill_constant: float, feed_mm: float, diameter_mm: float) -> float:
    """Torque of a twist drill by a power law of a data handbook; a coarse comparison.

    M = 1000 kD f^0.75 D^1.8

    Parameters
    ----------
    drill_constant : Constant kD of the metal, 0.36 for mild steel, for a torque in N m. [1]
    feed_mm : Feed f per turn. [mm/rev]
    diameter_mm : Diameter D of the drill. [mm]

    Returns
    -------
    Torque M of a sharp drill. [N mm]

    Valid for
    ---------
    All more than 0; coarse: plan with `drill_demand`.

    Source
    ------
    Carvill, Mechanical Engineer's Data Handbook, p. 192 (constants); exponents from memory.

    >>> round(torque_power_law(0.36, 0.3, 10))
    9208
    """
    positive(drill_constant, "drilling constant kD")
    positive(feed_mm, "feed of the drill", "mm/rev")
    positive(diameter_mm, "diameter of the drill", "mm")
    return float(1000 * drill_constant * feed_mm**0.75 * diameter_mm**1.8)


def power_tool_maker(material_factor: float, feed_mm: float, diameter_mm: float, spindle_speed_per_min: float) -> float:
    """Power at a twist drill from solid, after a tool maker's formula.

    P = K D^2 n (0.647 + 17.29 f) / 1000

    Parameters
    ----------
    material_factor : Factor K of the metal in that formula. [1]
    feed_mm : Feed f per turn. [mm/rev]
    diameter_mm : Diameter D of the drill. [mm]
    spindle_speed_per_min : Spindle speed n. [1/min]

    Returns
    -------
    Power P at the drill, within 3 % of what the torque of the same page takes. [W]

    Valid for
    ---------
    As `thrust_tool_maker`, speed more than 0.

    Source
    ------
    Technical page of a tool maker's general catalogue, 2020-21.

    >>> round(power_tool_maker(2.22, 0.3, 10, 800))
    1036
    """
    positive(material_factor, "material factor K")
    between(feed_mm, *TOOL_MAKER_FEEDS_MM, "feed of the drill", "mm/rev")
    positive(diameter_mm, "diameter of the drill", "mm")
    positive(spindle_speed_per_min, "spindle speed", "1/min")
    return material_factor * diameter_mm**2 * spindle_speed_per_min * (0.647 + 17.29 * feed_mm) / 1000


def _kienzle_holds(kc_mpa: float, feed_mm: float, diameter_mm: float) -> None:
    positive(kc_mpa, "specific force at the lips", "MPa")
    positive(feed_mm, "feed of the drill", "mm/rev")
    positive(diameter_mm, "diameter of the drill", "mm")
