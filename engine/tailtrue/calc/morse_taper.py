"""A drill with a taper shank in the quill: its seat, what it holds by friction, which number takes which drill."""

from collections.abc import Sequence
from itertools import pairwise
from math import radians, sin

from tailtrue.calc.drilling import taper_friction_torque
from tailtrue.calc.setover import half_angle_of_taper
from tailtrue.calc.setover import taper_per_foot as taper_per_unit
from tailtrue.calc.validity import OutOfRange, at_least, between, finite, positive


def half_angle(taper_per_foot: float) -> float:
    """Angle between the side of a taper and its axis, from the taper on diameter.

    a = atan(t / 24), t in inches per foot

    Parameters
    ----------
    taper_per_foot : Taper t on diameter, inches in a length of one foot. [1]

    Returns
    -------
    Half angle a. [deg]

    Valid for
    ---------
    Taper 0.01 to 4.

    Source
    ------
    Geometry; tables of Morse tapers print 0.599 to 0.632 inches per foot.

    >>> round(half_angle(0.602), 3)
    1.437
    """
    between(taper_per_foot, 0.01, 4, "taper in inches per foot")
    return half_angle_of_taper(taper_per_unit(taper_per_foot))


def mean_diameter(large_end_mm: float, small_end_mm: float) -> float:
    """Diameter in the middle of a tapered seat.

    dm = (D + d) / 2

    Parameters
    ----------
    large_end_mm : Diameter D of the large end. [mm]
    small_end_mm : Diameter d of the small end. [mm]

    Returns
    -------
    Mean diameter dm, where friction is reckoned to act. [mm]

    Valid for
    ---------
    The small end more than 0 and below the large end.

    Source
    ------
    Geometry.

    >>> round(mean_diameter(17.78, 14.529), 3)
    16.154
    """
    positive(small_end_mm, "small end of the taper", "mm")
    finite(large_end_mm, "large end of the taper", "mm")
    if small_end_mm >= large_end_mm:
        raise OutOfRange(f"the ends of the taper are {large_end_mm:g} mm and {small_end_mm:g} mm; name the large end first")
    return (large_end_mm + small_end_mm) / 2


def slip_margin(
    thrust_n: float, torque_nmm: float, friction: float, mean_diameter_mm: float, half_angle_deg: float
) -> float:
    """How many times the torque of a drill its taper shank would hold by friction.

    S = mu T dm / (2 sin a) / M

    Parameters
    ----------
    thrust_n : Thrust T of the same drill, which seats the taper. [N]
    torque_nmm : Torque M on the drill. [N mm]
    friction : Coefficient of friction mu; 0.10 clean and dry, 0.03 oily or bruised. [1]
    mean_diameter_mm : Mean diameter dm of the seat. [mm]
    half_angle_deg : Half angle a of the taper. [deg]

    Returns
    -------
    Margin S; below 1 the shank spins in the quill. [1]

    Valid for
    ---------
    As `taper_friction_torque`, torque more than 0. At break-through, and in brass, the thrust falls away and the margin
    with it; the tang is for driving the drill out and carries torque only in a slotted quill.

    Source
    ------
    Cone friction, derived; friction from memory.

    >>> round(slip_margin(5284, 30240, 0.12, 16.1544, 1.4307), 2)
    6.78
    """
    positive(torque_nmm, "torque on the drill", "N mm")
    return taper_friction_torque(thrust_n, friction, mean_diameter_mm, half_angle_deg) / torque_nmm


def friction_at_slip(thrust_n: float, torque_nmm: float, mean_diameter_mm: float, half_angle_deg: float) -> float:
    """Friction at which a taper shank just begins to spin under its drill.

    mu = 2 M sin a / (T dm)

    Parameters
    ----------
    thrust_n : Thrust T of the drill. [N]
    torque_nmm : Torque M on the drill. [N mm]
    mean_diameter_mm : Mean diameter dm of the seat. [mm]
    half_angle_deg : Half angle a of the taper. [deg]

    Returns
    -------
    Coefficient of friction mu; the seat must be better than that. [1]

    Valid for
    ---------
    All more than 0, half angle 0.1 to 10 degrees.

    Source
    ------
    `slip_margin` turned round.

    >>> round(friction_at_slip(2423.8, 27870, 16.1544, 1.4307), 4)
    0.0355
    """
    positive(thrust_n, "thrust", "N")
    positive(torque_nmm, "torque on the drill", "N mm")
    positive(mean_diameter_mm, "mean diameter of the taper", "mm")
    between(half_angle_deg, 0.1, 10, "half angle of the taper", "degrees")
    return 2 * torque_nmm * sin(radians(half_angle_deg)) / (thrust_n * mean_diameter_mm)


def shank_number(diameter_mm: float, upper_limits_mm: Sequence[float]) -> int:
    """Number of the Morse taper on the shank of a drill of usual make.

    number = first place of the series whose upper limit is at least D

    Parameters
    ----------
    diameter_mm : Diameter D of the drill. [mm]
    upper_limits_mm : Largest drill on taper no. 1, no. 2 and so on, each larger than the one before. [mm]

    Returns
    -------
    Number of the taper. [1]

    Valid for
    ---------
    Diameter more than 0 and at most the last limit; a drill of special make may differ: look at the shank.

    Source
    ------
    Ranges of the series (DIN 345, ASME B94.11M from memory; Rose, Modern Machine-Shop Practice, 1888).

    >>> shank_number(23, [14, 23, 31.75, 50.5])
    2
    """
    positive(diameter_mm, "diameter of the drill", "mm")
    if not upper_limits_mm:
        raise OutOfRange("the series of tapers has no limits")
    for limit in upper_limits_mm:
        positive(limit, "largest drill on a taper", "mm")
    for smaller, larger in pairwise(upper_limits_mm):
        if not smaller < larger:
            raise OutOfRange(f"the limits of the series go from {smaller:g} mm to {larger:g} mm; each must be larger")
    if diameter_mm > upper_limits_mm[-1]:
        raise OutOfRange(f"the drill is {diameter_mm:g} mm, and the series of tapers ends at {upper_limits_mm[-1]:g} mm")
    return next(place for place, limit in enumerate(upper_limits_mm, start=1) if diameter_mm <= limit)


def sleeve_steps(shank_taper: int, quill_taper: int) -> int:
    """By how many numbers a sleeve must fill up the quill around a taper shank.

    steps = quill - shank

    Parameters
    ----------
    shank_taper : Number of the Morse taper of the shank. [1]
    quill_taper : Number of the Morse taper in the quill. [1]

    Returns
    -------
    Numbers to bridge, 0 when the shank goes in as it is. [1]

    Valid for
    ---------
    Morse tapers 0 to 7; a shank larger than the quill is refused, for it cannot be sleeved.

    Source
    ------
    Common practice.

    >>> sleeve_steps(2, 3)
    1
    """
    at_least(shank_taper, 0, "taper of the shank")
    between(quill_taper, 0, 7, "taper of the quill")
    if shank_taper > quill_taper:
        raise OutOfRange(f"a shank no. {shank_taper} does not go into a quill no. {quill_taper}, with any sleeve")
    return quill_taper - shank_taper
