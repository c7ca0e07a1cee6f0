"""Passes of a boring bar that gives way: how many cuts, what a spring pass leaves, what taper is copied.

A tool that gives way by r times the depth it really cuts leaves a share r / (1 + r) of the depth that is set.
"""

from math import ceil, log

from tailtrue.calc.boring import boring_bar_deflection
from tailtrue.calc.cutting import passes_for_stock
from tailtrue.calc.validity import OutOfRange, at_least, between, positive, up_to

_SLACK = 1e-9  # an error that is just as wanted must not ask for one more pass
_MOST_BEND_SHARE = 0.1  # of the overhang; straight-beam theory is for small deflections


def bored_bar_deflection(force_n: float, overhang_mm: float, shank_mm: float, hole_mm: float, modulus_mpa: float) -> float:
    """Deflection of the tip of a boring bar that is hollow, as one with a hole for coolant.

    y = F L^3 / (3 E I), I = pi (d^4 - b^4) / 64

    Parameters
    ----------
    force_n : Radial force F at the tip. [N]
    overhang_mm : Length L standing out of the holder. [mm]
    shank_mm : Diameter d of the shank. [mm]
    hole_mm : Diameter b of the hole along it, 0 for a solid bar. [mm]
    modulus_mpa : Modulus of elasticity E of the shank, of carbide about three times that of steel. [MPa]

    Returns
    -------
    Deflection y of the tip, a radius: the bore changes by twice this. [mm]

    Valid for
    ---------
    As `boring_bar_deflection`, hole from 0 to 0.8 of the shank.

    Source
    ------
    Second moment of a ring, with `boring_bar_deflection`.

    >>> round(bored_bar_deflection(100, 48, 12, 6, 206000), 5)
    0.01875
    """
    solid = boring_bar_deflection(force_n, overhang_mm, shank_mm, modulus_mpa)
    between(hole_mm / shank_mm, 0, 0.8, "hole in the bar as a share of its shank")
    bend = solid / (1 - (hole_mm / shank_mm) ** 4)
    if bend > _MOST_BEND_SHARE * overhang_mm:
        raise OutOfRange(
            f"the bar would bend by {bend:g} mm over {overhang_mm:g} mm; the formula holds below a tenth of the length"
        )
    return bend


def equal_stiffness_overhang(overhang_mm: float, modulus_mpa: float, other_modulus_mpa: float) -> float:
    """Overhang at which a bar of another material bends as much as this one, at the same shank and force.

    L2 = L1 (E2 / E1)^(1/3)

    Parameters
    ----------
    overhang_mm : Overhang L1 of this bar. [mm]
    modulus_mpa : Modulus of elasticity E1 of this bar. [MPa]
    other_modulus_mpa : Modulus of elasticity E2 of the other one. [MPa]

    Returns
    -------
    Overhang L2 of the other bar. [mm]

    Valid for
    ---------
    All more than 0, moduli at most five times apart; bending alone, chatter is another matter.

    Source
    ------
    `boring_bar_deflection`, derived.

    >>> round(equal_stiffness_overhang(48, 206000, 620000), 1)
    69.3
    """
    positive(overhang_mm, "overhang", "mm")
    positive(modulus_mpa, "modulus of elasticity", "MPa")
    between(other_modulus_mpa / modulus_mpa, 0.2, 5, "ratio of the moduli")
    return float(overhang_mm * (other_modulus_mpa / modulus_mpa) ** (1 / 3))


def boring_passes(from_mm: float, to_mm: float, depth_mm: float) -> int:
    """Number of passes from one bore to a larger one.

    k = (D2 - D1) / (2 ap), up to a whole number, 1 at least

    Parameters
    ----------
    from_mm : Diameter D1 of the bore there is. [mm]
    to_mm : Diameter D2 of the bore there shall be. [mm]
    depth_mm : Depth ap of a pass per side, not on diameter. [mm]

    Returns
    -------
    Number k of passes. [1]

    Valid for
    ---------
    Diameters and depth more than 0, the second diameter no less than the first; at most 1000 passes.

    Source
    ------
    Geometry.

    >>> boring_passes(22, 25, 0.4)
    4
    """
    positive(from_mm, "bore there is", "mm")
    at_least(to_mm, from_mm, "bore to make", "mm")
    return passes_for_stock(to_mm - from_mm, depth_mm)


def cut_stiffness(kc_mpa: float, feed_mm: float, passive_share: float) -> float:
    """Radial force that a cut asks for each millimetre of its depth.

    Kc = s kc f

    Parameters
    ----------
    kc_mpa : Specific cutting force kc of the metal at this chip. [MPa]
    feed_mm : Feed f per turn. [mm/rev]
    passive_share : Radial force as a share s of the cutting force. [1]

    Returns
    -------
    Stiffness Kc of the cut. [N/mm]

    Valid for
    ---------
    Specific force and feed more than 0, share 0.05 to 1.5; a radial force in step with the depth.

    Source
    ------
    Force law of `cutting_force`, derived; share from memory.

    >>> cut_stiffness(2000, 0.1, 0.5)
    100.0
    """
    positive(kc_mpa, "specific cutting force", "MPa")
    positive(feed_mm, "feed", "mm/rev")
    between(passive_share, 0.05, 1.5, "radial force as a share of the cutting force")
    return passive_share * kc_mpa * feed_mm


def share_left(cut_stiffness_n_per_mm: float, machine_n_per_mm: float) -> float:
    """Share of an error of depth that a pass leaves, because tool and work give way under the cut.

    q = r / (1 + r), r = Kc / Km

    Parameters
    ----------
    cut_stiffness_n_per_mm : Radial force Kc per depth of cut. [N/mm]
    machine_n_per_mm : Stiffness Km of all that gives way: tool, holder, work and lathe together. [N/mm]

    Returns
    -------
    Share q, from 0 to 1; after n passes it is q^n. [1]

    Valid for
    ---------
    Both more than 0, stiffness of the cut at most ten times that of the machine; a force in step with the depth.

    Source
    ------
    Springs in line, derived.

    >>> round(share_left(100, 400), 6)
    0.2
    """
    positive(cut_stiffness_n_per_mm, "stiffness of the cut", "N/mm")
    positive(machine_n_per_mm, "stiffness of the machine", "N/mm")
    up_to(cut_stiffness_n_per_mm / machine_n_per_mm, 10, "stiffness of the cut over that of the machine")
    return cut_stiffness_n_per_mm / (cut_stiffness_n_per_mm + machine_n_per_mm)


def error_after_passes(
    set_depth_mm: float,
    cut_stiffness_n_per_mm: float,
    tool_stiffness_n_per_mm: float,
    spring_passes: int,
    least_chip_mm: float = 0.0,
) -> float:
    """Depth per side that is still to be cut after a pass and some spring passes at the same setting.

    e = a q^(k + 1), q = r / (1 + r), r = Kc / Kt, no less than the depth at which the edge only rubs

    Parameters
    ----------
    set_depth_mm : Depth a per side that was set. [mm]
    cut_stiffness_n_per_mm : Radial force Kc per depth of cut. [N/mm]
    tool_stiffness_n_per_mm : Stiffness Kt of tool, holder and work together at the edge. [N/mm]
    spring_passes : Number k of passes after the first, the dial untouched. [1]
    least_chip_mm : Depth below which the edge rubs and takes no more; 0 for an edge keen without end. [mm]

    Returns
    -------
    Depth e per side left standing, a radius: the bore is smaller by twice this. [mm]

    Valid for
    ---------
    Depth more than 0, stiffness of the cut at most ten times that of the tool, spring passes 0 to 50; steady cut
    without chatter.

    Source
    ------
    Springs in line, derived.

    >>> round(error_after_passes(0.2, 100, 400, 1), 4)
    0.008
    """
    positive(set_depth_mm, "depth that is set", "mm")
    left = share_left(cut_stiffness_n_per_mm, tool_stiffness_n_per_mm)
    between(spring_passes, 0, 50, "number of spring passes")
    at_least(least_chip_mm, 0, "depth at which the edge rubs", "mm")
    depth = set_depth_mm
    for _ in range(spring_passes + 1):
        if depth <= least_chip_mm:
            break
        depth *= left
    return depth


def spring_passes_for(
    set_depth_mm: float,
    cut_stiffness_n_per_mm: float,
    tool_stiffness_n_per_mm: float,
    wanted_mm: float,
    least_chip_mm: float = 0.0,
) -> int:
    """Spring passes after which what is left standing is no more than wanted.

    k : a q^(k + 1) <= e, q = r / (1 + r), r = Kc / Kt

    Parameters
    ----------
    set_depth_mm : Depth a per side that was set. [mm]
    cut_stiffness_n_per_mm : Radial force Kc per depth of cut. [N/mm]
    tool_stiffness_n_per_mm : Stiffness Kt of tool, holder and work together at the edge. [N/mm]
    wanted_mm : Depth e per side that may be left standing. [mm]
    least_chip_mm : Depth below which the edge rubs and takes no more. [mm]

    Returns
    -------
    Number k of spring passes, 0 when the first pass is enough. [1]

    Valid for
    ---------
    As `error_after_passes`; refused where the edge would rub before, or 50 spring passes do not do.

    Source
    ------
    `error_after_passes` turned round.

    >>> spring_passes_for(0.2, 100, 400, 0.01)
    1
    """
    positive(set_depth_mm, "depth that is set", "mm")
    positive(wanted_mm, "depth that may be left standing", "mm")
    at_least(least_chip_mm, 0, "depth at which the edge rubs", "mm")
    left = share_left(cut_stiffness_n_per_mm, tool_stiffness_n_per_mm)
    passes = max(0, ceil(log(wanted_mm / set_depth_mm) / log(left) - _SLACK) - 1)
    before = set_depth_mm * left**passes
    if passes > 50 or before <= least_chip_mm:
        raise OutOfRange(
            f"spring passes do not bring what is left standing to {wanted_mm:g} mm; "
            "a keener edge, a stiffer tool or a smaller depth is needed"
        )
    return passes


def copied_taper(
    depth_mouth_mm: float,
    depth_bottom_mm: float,
    cut_stiffness_n_per_mm: float,
    tool_stiffness_n_per_mm: float,
    spring_passes: int = 0,
) -> float:
    """Taper that a boring bar copies from a hole whose stock is not the same all along.

    Dm - Db = 2 (ab - am) q^(k + 1), q = r / (1 + r), r = Kc / Kt

    Parameters
    ----------
    depth_mouth_mm : Depth of cut am per side at the mouth. [mm]
    depth_bottom_mm : Depth of cut ab per side at the far end. [mm]
    cut_stiffness_n_per_mm : Radial force Kc per depth of cut. [N/mm]
    tool_stiffness_n_per_mm : Stiffness Kt of tool, holder and work together at the edge. [N/mm]
    spring_passes : Number k of passes after the first, the dial untouched. [1]

    Returns
    -------
    Diameter at the mouth less diameter at the far end; more than 0 for a bell mouth. [mm]

    Valid for
    ---------
    As `error_after_passes`, both depths 0 or more; a bar on the carriage keeps its overhang, so an even stock gives no
    taper.

    Source
    ------
    Springs in line, derived.

    >>> round(copied_taper(0.3, 0.5, 100, 400), 3)
    0.08
    """
    at_least(depth_mouth_mm, 0, "depth of cut at the mouth", "mm")
    at_least(depth_bottom_mm, 0, "depth of cut at the far end", "mm")
    between(spring_passes, 0, 50, "number of spring passes")
    left = share_left(cut_stiffness_n_per_mm, tool_stiffness_n_per_mm)
    return float(2 * (depth_bottom_mm - depth_mouth_mm) * left ** (spring_passes + 1))


def bore_error(depth_left_mm: float, recession_mm: float = 0.0) -> float:
    """By how much a bore is smaller than the dial says.

    dD = 2 (e + w)

    Parameters
    ----------
    depth_left_mm : Depth e per side left standing by a tool that gives way. [mm]
    recession_mm : Distance w by which the worn edge has drawn back. [mm]

    Returns
    -------
    Shortfall of the diameter dD. [mm]

    Valid for
    ---------
    Both 0 or more.

    Source
    ------
    Geometry.

    >>> bore_error(0.04, 0.001)
    0.082
    """
    at_least(depth_left_mm, 0, "depth left standing", "mm")
    at_least(recession_mm, 0, "wear of the edge", "mm")
    return 2 * (depth_left_mm + recession_mm)
