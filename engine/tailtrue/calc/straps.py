"""Work clamped to a faceplate: what a strap presses with, whether the work can slip under it, how straps are spaced."""

from tailtrue.calc.validity import at_least, positive, up_to


def strap_force(screw_force_n: float, to_work_mm: float, to_heel_mm: float) -> float:
    """Force with which a strap presses on the work.

    P = F h / (w + h)

    Parameters
    ----------
    screw_force_n : Force F along the screw of the strap. [N]
    to_work_mm : Distance w from the screw to the nose on the work. [mm]
    to_heel_mm : Distance h from the screw to the heel on its block. [mm]

    Returns
    -------
    Force P on the work; the heel takes the rest. [N]

    Valid for
    ---------
    All more than 0; a strap that lies level and bears at nose and heel alone.

    Source
    ------
    Statics: the lever.

    >>> strap_force(6000, 20, 40)
    4000.0
    """
    positive(screw_force_n, "force along the screw", "N")
    positive(to_work_mm, "distance from screw to work", "mm")
    positive(to_heel_mm, "distance from screw to heel", "mm")
    return screw_force_n * to_heel_mm / (to_work_mm + to_heel_mm)


def slip_margin(
    strap_force_n: float, straps: int, friction: float, pull_n: float, torque_nmm: float, radius_mm: float, side_n: float
) -> float:
    """How many times over friction keeps clamped work from turning or sliding on a faceplate.

    S = mu (n P - A) / (T / r + Q)

    Parameters
    ----------
    strap_force_n : Force P of one strap on the work. [N]
    straps : Number n of straps. [1]
    friction : Low value of the coefficient of friction mu between work and packing. [1]
    pull_n : Pull A along the axis off the plate. [N]
    torque_nmm : Torque T of the cut. [N mm]
    radius_mm : Distance r from the axis at which the straps press. [mm]
    side_n : Force Q across the axis, of the cut and of unbalance. [N]

    Returns
    -------
    Margin S; 0 where the pull lifts the work off. [1]

    Valid for
    ---------
    At least two straps alike, each over its packing; forces 0 or more, torque more than 0. Friction under the work
    alone is counted, not that under the straps; at the strap that carries most, torque and side force push the same way.

    Source
    ------
    Statics of friction, derived.

    >>> slip_margin(4000, 3, 0.1, 400, 14000, 35, 100)
    2.32
    """
    positive(strap_force_n, "force of a strap", "N")
    at_least(straps, 2, "number of straps")
    up_to(friction, 1, "coefficient of friction")
    at_least(pull_n, 0, "pull along the axis", "N")
    positive(torque_nmm, "torque of the cut", "N mm")
    positive(radius_mm, "distance of the straps from the axis", "mm")
    at_least(side_n, 0, "force across the axis", "N")
    pressed = max(0.0, straps * strap_force_n - pull_n)
    return friction * pressed / (torque_nmm / radius_mm + side_n)


def even_straps(slots: int, straps: int, least: int) -> int:
    """How many straps stand at equal angles in the slots of a faceplate.

    n = largest divisor of k with n_least <= n <= m

    Parameters
    ----------
    slots : Number k of slots, at equal angles. [1]
    straps : Number m of straps that are there, all alike. [1]
    least : Fewest straps n_least that may hold work. [1]

    Returns
    -------
    Number n of straps; 0 where none stand evenly. [1]

    Valid for
    ---------
    At least one slot, straps 0 or more, at least two straps to hold work; other spacings pull to one side.

    Source
    ------
    Geometry: like masses at equal angles balance.

    >>> even_straps(8, 6, 3)
    4
    """
    at_least(slots, 1, "number of slots")
    at_least(straps, 0, "number of straps")
    at_least(least, 2, "fewest straps")
    return max((count for count in range(least, straps + 1) if slots % count == 0), default=0)
