"""Power at the tool and at the motor, and the depth of cut that a motor can drive."""

from tailtrue.calc.cutting import removal_rate, specific_force
from tailtrue.calc.validity import between, positive


def power_from_constant(
    kp_mpa: float,
    surface_speed_m_min: float,
    depth_mm: float,
    feed_mm: float,
    feed_factor: float = 1.0,
    wear_factor: float = 1.0,
) -> float:
    """Power at the tool from the volume cut off and the power constant of the metal.

    P = Kp C W Q / 60, Q = v ap f in cm3/min

    Parameters
    ----------
    kp_mpa : Power constant Kp; 1 kW per cm3/s is 1000 MPa, 1 hp per in3/min is 2730 MPa. [MPa]
    surface_speed_m_min : Surface speed v. [m/min]
    depth_mm : Depth of cut ap per side, not on diameter. [mm]
    feed_mm : Feed f per turn. [mm/rev]
    feed_factor : Factor C of the feed; the constant is for 0.3 mm/rev. [1]
    wear_factor : Factor W of wear, 1 for a sharp tool. [1]

    Returns
    -------
    Power P at the tool. [W]

    Valid for
    ---------
    As `removal_rate`, constant more than 0, C 0.5 to 2, W 1 to 2; turning with the rakes of the handbook's table.

    Source
    ------
    Machinery's Handbook, 31st ed., p. 1147 (constants); factors C and W from memory.

    >>> round(power_from_constant(1690, 107, 2.54, 0.40, 0.94, 1.30))
    3742
    """
    positive(kp_mpa, "power constant Kp", "MPa")
    between(feed_factor, 0.5, 2, "feed factor C")
    between(wear_factor, 1, 2, "wear factor W")
    return kp_mpa * feed_factor * wear_factor * removal_rate(surface_speed_m_min, depth_mm, feed_mm) / 60


def motor_power(power_w: float, efficiency: float) -> float:
    """Power that the motor gives for a power at the tool.

    Pm = P / eta

    Parameters
    ----------
    power_w : Power P at the tool. [W]
    efficiency : Efficiency eta of the drive. [1]

    Returns
    -------
    Power Pm of the motor. [W]

    Valid for
    ---------
    Power more than 0, efficiency 0.3 to 1.

    Source
    ------
    Definition of efficiency.

    >>> round(motor_power(150.8, 0.7), 1)
    215.4
    """
    positive(power_w, "power at the tool", "W")
    between(efficiency, 0.3, 1, "efficiency of the drive")
    return power_w / efficiency


def power_at_tool(motor_w: float, efficiency: float, use_share: float) -> float:
    """Power there is for cutting, of a motor that is not to be driven to its limit.

    P = Pm eta s

    Parameters
    ----------
    motor_w : Power Pm on the plate of the motor. [W]
    efficiency : Efficiency eta of the drive. [1]
    use_share : Share s of it that is used. [1]

    Returns
    -------
    Power P at the tool. [W]

    Valid for
    ---------
    Power more than 0, efficiency 0.3 to 1, share 0.1 to 1; a drive with electronic speed control gives
    less at low speed.

    Source
    ------
    Definition of efficiency; the usual share of 0.8 is common practice.

    >>> power_at_tool(1000, 0.75, 0.8)
    600.0
    """
    positive(motor_w, "power of the motor", "W")
    between(efficiency, 0.3, 1, "efficiency of the drive")
    between(use_share, 0.1, 1, "share of the power that is used")
    return motor_w * efficiency * use_share


def depth_for_power(kc11_mpa: float, mc: float, feed_mm: float, surface_speed_m_min: float, power_w: float) -> float:
    """Depth of cut at which a cut takes just the power there is.

    ap = 60 P / (kc f v)

    Parameters
    ----------
    kc11_mpa : Specific force kc1.1 of the metal. [MPa]
    mc : Exponent mc of the metal. [1]
    feed_mm : Feed f per turn, at an approach of 90 degrees the chip thickness. [mm/rev]
    surface_speed_m_min : Surface speed v. [m/min]
    power_w : Power P at the tool. [W]

    Returns
    -------
    Depth of cut ap per side, not on diameter. [mm]

    Valid for
    ---------
    As `cutting_force` and `cutting_power`; the tool and the work may bear less.

    Source
    ------
    `cutting_force` and `cutting_power` turned round.

    >>> round(depth_for_power(1350, 0.21, 0.15, 30, 150.8), 3)
    1.0
    """
    positive(surface_speed_m_min, "surface speed", "m/min")
    positive(power_w, "power at the tool", "W")
    return 60 * power_w / (specific_force(kc11_mpa, mc, feed_mm) * feed_mm * surface_speed_m_min)
