"""Set screws that hold a collar on a bar: what they hold, how they add up, where they must end."""

from collections.abc import Sequence
from math import cos, hypot, pi, prod, radians, sin
from typing import NamedTuple

from tailtrue.calc.joints import joint_torque
from tailtrue.calc.validity import OutOfRange, at_least, between, finite, positive, up_to

_SMALLEST_MM = 3.0  # thread sizes of the published charts
_LARGEST_MM = 10.0
_LARGEST_TIGHTENED_MM = 16.0  # the rule for tightening needs no chart
_DEEPEST_SPOT_SHARE = 0.1  # of the bar, which a deeper hole would weaken
_ROUNDING_SLACK_MM = 1e-9
_MOST_FACTOR = 1.1  # points and flats change what a cup point holds by less than this


class ScrewHold(NamedTuple):
    """What the screws of one collar hold together."""

    axial_n: float
    torque_nmm: float


def screw_preload(torque_nmm: float, thread_diameter_mm: float, nut_factor: float) -> float:
    """Force along a screw that is tightened: of a set screw, what it presses on the bar with.

    F0 = T / (K d)

    Parameters
    ----------
    torque_nmm : Tightening torque T. [N mm]
    thread_diameter_mm : Outside diameter d of the thread. [mm]
    nut_factor : Share K of friction in thread and point, usually 0.2. [1]

    Returns
    -------
    Force F0 along the screw. [N]

    Valid for
    ---------
    Torque and factor more than 0, factor at most 1, thread 3 to 16 mm.

    Source
    ------
    Usual rule for screws (any text on machine elements; memory).

    >>> round(screw_preload(7200, 6, 0.2))
    6000
    """
    _screw(torque_nmm, thread_diameter_mm, _LARGEST_TIGHTENED_MM)
    up_to(nut_factor, 1, "share of friction")
    return torque_nmm / (nut_factor * thread_diameter_mm)


def screw_holding(torque_nmm: float, thread_diameter_mm: float, holding_ratio: float) -> float:
    """Force that one cup-pointed set screw holds along the bar, where no chart has the thread.

    F = r T / d

    Parameters
    ----------
    torque_nmm : Tightening torque T. [N mm]
    thread_diameter_mm : Outside diameter d of the thread. [mm]
    holding_ratio : Ratio r: 2.6 follows the high chart, 1.04 the low one. [1]

    Returns
    -------
    Holding force F along the bar, and round it; no safety taken off. [N]

    Valid for
    ---------
    Torque and ratio more than 0, thread 3 to 10 mm; hard cup point on a softer steel bar.

    Source
    ------
    Fitted to the inch rows of the published charts, derived; the charts count a shift of 0.25 mm as held.

    >>> round(screw_holding(7200, 6, 2.6))
    3120
    """
    _screw(torque_nmm, thread_diameter_mm)
    positive(holding_ratio, "ratio of holding force")
    return holding_ratio * torque_nmm / thread_diameter_mm


def screws_ratio(angles_deg: Sequence[float]) -> float:
    """What several like set screws in one collar hold, in single screws.

    r = (n + |u1 + u2 + ...|) / 2

    Parameters
    ----------
    angles_deg : Place of each screw round the bar; the same angle twice is two screws in line. [deg]

    Returns
    -------
    Ratio r: 2 for two in line, 1.7 for two at 90 degrees, 1 for two that face each other. [1]

    Valid for
    ---------
    At least one screw, all tightened alike; friction at the points as at the bore behind them.

    Source
    ------
    Statics, derived; within the range of a public chart for two screws 60 to 180 degrees apart.

    >>> round(screws_ratio([0, 90]), 3)
    1.707
    """
    at_least(len(angles_deg), 1, "number of screws")
    for angle in angles_deg:
        finite(angle, "angle of a screw", "degrees")
    # Each point holds by itself; the bore holds by what the screws push it against the bar, which may cancel.
    push = hypot(sum(cos(radians(angle)) for angle in angles_deg), sum(sin(radians(angle)) for angle in angles_deg))
    return (len(angles_deg) + push) / 2


def screws_hold(
    holding_n: float, angles_deg: Sequence[float], factors: Sequence[float], safety: float, joint_diameter_mm: float
) -> ScrewHold:
    """Force and torque that the set screws of one collar hold.

    F = F1 r f1 f2 ... / S, T = F d / 2

    Parameters
    ----------
    holding_n : Holding force F1 of one cup-pointed screw, from a chart or `screw_holding`. [N]
    angles_deg : Place of each screw round the bar. [deg]
    factors : Shares f for another point, a hard bar, less than the full torque. [1]
    safety : Safety factor S: 2 with the low chart, 4 to 8 with the high one. [1]
    joint_diameter_mm : Diameter d of the bar. [mm]

    Returns
    -------
    Force along the bar and torque round it; both at once are less than each. [N, N mm]

    Valid for
    ---------
    Force and diameter more than 0, factors above 0 and at most 1.1, safety 1.5 or more.

    Source
    ------
    Shigley's Mechanical Engineering Design, 9th ed., sec. 7-7: same force along and round the bar; safety 1.5 to 2
    at rest, 4 to 8 where loads change.

    >>> [round(value, 1) for value in screws_hold(3120, [0], [], 8, 25)]
    [390.0, 4875.0]
    """
    positive(holding_n, "holding force of one screw", "N")
    for factor in factors:
        up_to(factor, _MOST_FACTOR, "factor")
    at_least(safety, 1.5, "safety factor")
    positive(joint_diameter_mm, "diameter of the bar", "mm")
    force = holding_n * screws_ratio(angles_deg) * prod(factors) / safety
    return ScrewHold(force, joint_torque(force, joint_diameter_mm))


def thread_shear(preload_n: float, thread_diameter_mm: float, engagement_mm: float) -> float:
    """Shear in the thread of the collar under a tightened set screw.

    tau = F0 / (0.5 pi d Le)

    Parameters
    ----------
    preload_n : Force F0 along the screw. [N]
    thread_diameter_mm : Outside diameter d of the thread. [mm]
    engagement_mm : Length Le of thread that carries. [mm]

    Returns
    -------
    Shear tau in the metal of the collar. [MPa]

    Valid for
    ---------
    Force 0 or more, thread 3 to 10 mm, engagement at least half a thread diameter.

    Source
    ------
    Half the cylinder of the thread taken to carry, derived.

    >>> round(thread_shear(6000, 6, 8), 1)
    79.6
    """
    at_least(preload_n, 0, "force along the screw", "N")
    between(thread_diameter_mm, _SMALLEST_MM, _LARGEST_MM, "diameter of the thread", "mm")
    at_least(engagement_mm, thread_diameter_mm / 2, "length of thread that carries", "mm")
    return preload_n / (0.5 * pi * thread_diameter_mm * engagement_mm)


def screw_depth(
    *,
    end_diameter_mm: float,
    joint_diameter_mm: float,
    thread_diameter_mm: float,
    screw_length_mm: float,
    spot_mm: float,
    least_depth_mm: float,
) -> float:
    """Depth of a tightened set screw below the surface of a collar after its last skim.

    h = D / 2 - sqrt((d / 2 - s + l)^2 + (t / 2)^2)

    Parameters
    ----------
    end_diameter_mm : Outside diameter D of the collar after the last skim of its life. [mm]
    joint_diameter_mm : Diameter d of the bar. [mm]
    thread_diameter_mm : Outside diameter t of the thread; the rim of the flat end comes nearest to the surface. [mm]
    screw_length_mm : Length l of the screw. [mm]
    spot_mm : Depth s of the spot or flat in the bar; 0 without one. [mm]
    least_depth_mm : Depth that must be left, usually 1 mm. [mm]

    Returns
    -------
    Depth h per side from the last surface to the rim of the outer end of the screw. [mm]

    Valid for
    ---------
    D > d, thread 3 to 10 mm, lengths more than 0, spot 0 or more and at most a tenth of the bar. A screw that
    would stand too high is refused: it would meet the tool, and one that stands out catches sleeves.

    Source
    ------
    Geometry; the least depth is common practice. Rules for guards ask that no screw stands out of a turning part.

    >>> round(screw_depth(end_diameter_mm=65, joint_diameter_mm=25, thread_diameter_mm=6, screw_length_mm=16,
    ...     spot_mm=0, least_depth_mm=1), 2)
    3.84
    """
    positive(joint_diameter_mm, "diameter of the bar", "mm")
    positive(end_diameter_mm - joint_diameter_mm, "last diameter of the collar over that of the bar", "mm")
    between(thread_diameter_mm, _SMALLEST_MM, _LARGEST_MM, "diameter of the thread", "mm")
    positive(screw_length_mm, "length of the screw", "mm")
    between(spot_mm, 0, joint_diameter_mm * _DEEPEST_SPOT_SHARE, "depth of the spot in the bar", "mm")
    positive(least_depth_mm, "least depth of the screw below the surface", "mm")
    outer_end = joint_diameter_mm / 2 - spot_mm + screw_length_mm
    depth = end_diameter_mm / 2 - hypot(outer_end, thread_diameter_mm / 2)
    if depth < least_depth_mm - _ROUNDING_SLACK_MM:
        raise OutOfRange(
            f"the set screw would end {abs(depth):.3g} mm {'above' if depth < 0 else 'below'} the last surface of the"
            f" collar, and must end at least {least_depth_mm:g} mm below it: a shorter screw or a larger last diameter helps"
        )
    return depth


def _screw(torque_nmm: float, thread_diameter_mm: float, largest_mm: float = _LARGEST_MM) -> None:
    positive(torque_nmm, "tightening torque", "N mm")
    between(thread_diameter_mm, _SMALLEST_MM, largest_mm, "diameter of the thread", "mm")
