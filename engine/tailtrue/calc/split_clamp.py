"""A split collar drawn round its bar by a screw across the slit."""

from math import sqrt

from tailtrue.calc.validity import OutOfRange, at_least, between, positive, up_to

_MOST_SCREWS = 2


def split_clamp_torque(preload_n: float, count: int, friction: float, joint_diameter_mm: float, safety: float) -> float:
    """Torque that a split collar carries, from the force of its clamp screws.

    T = n F mu d / S

    Parameters
    ----------
    preload_n : Force F along one tightened screw. [N]
    count : Number n of screws across the slit. [1]
    friction : Low value of the coefficient of friction mu. [1]
    joint_diameter_mm : Diameter d of the bar. [mm]
    safety : Safety factor S. [1]

    Returns
    -------
    Torque T. [N mm]

    Valid for
    ---------
    Force and diameter more than 0, one or two screws, friction above 0 and at most 1, safety 1 or more. The collar
    is taken to press on two lines that face each other, each with the force of the screws, and the lever of the
    screw about the far side of the collar is not counted: a collar that closes well holds more.

    Source
    ------
    Statics; the clamped hub of any text on machine elements (memory), its lever left out.

    >>> split_clamp_torque(6000, 1, 0.1, 25, 2)
    7500.0
    """
    positive(preload_n, "force along the screw", "N")
    between(count, 1, _MOST_SCREWS, "number of screws")
    up_to(friction, 1, "coefficient of friction")
    positive(joint_diameter_mm, "diameter of the bar", "mm")
    at_least(safety, 1, "safety factor")
    return count * preload_n * friction * joint_diameter_mm / safety


def longest_clamp_screw(
    end_diameter_mm: float, joint_diameter_mm: float, head_diameter_mm: float, least_depth_mm: float
) -> float:
    """Longest screw, head included, that a split collar hides below its last surface.

    l = 2 (sqrt((D / 2)^2 - ((D + d) / 4 + h / 2)^2) - t)

    Parameters
    ----------
    end_diameter_mm : Outside diameter D of the collar after the last skim of its life. [mm]
    joint_diameter_mm : Diameter d of the bar. [mm]
    head_diameter_mm : Diameter h of the head; its outer rim comes nearest to the surface. [mm]
    least_depth_mm : Depth t that must be left at both ends. [mm]

    Returns
    -------
    Length l of the screw. [mm]

    Valid for
    ---------
    All more than 0, and a length left: a head as thick as the wall leaves none. The screw lies across the middle of the
    wall, its middle in the slit.

    Source
    ------
    Geometry; the least depth is common practice.

    >>> round(longest_clamp_screw(50, 25, 10, 1), 2)
    13.61
    """
    positive(end_diameter_mm, "last diameter of the collar", "mm")
    positive(joint_diameter_mm, "diameter of the bar", "mm")
    positive(head_diameter_mm, "diameter of the head", "mm")
    positive(least_depth_mm, "least depth of the screw below the surface", "mm")
    rim = (end_diameter_mm + joint_diameter_mm) / 4 + head_diameter_mm / 2
    half = sqrt(max(0.0, (end_diameter_mm / 2) ** 2 - rim**2)) - least_depth_mm
    if half <= 0:
        raise OutOfRange(
            f"no screw with a head of {head_diameter_mm:g} mm ends {least_depth_mm:g} mm below the last surface:"
            " a smaller screw or larger collars help"
        )
    return 2 * half
