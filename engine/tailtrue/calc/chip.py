"""The chip and the forces on the tool: approach angle, corrections, what is typical and what is a limit."""

from collections.abc import Sequence
from math import prod, radians, sin
from typing import NamedTuple

from tailtrue.calc.cutting import cutting_force, specific_force
from tailtrue.calc.validity import at_least, between, positive


class ForceBand(NamedTuple):
    """Main cutting force of one cut, twice."""

    typical_n: float
    limit_n: float
    estimated: bool


def chip_thickness(feed_mm: float, approach_deg: float) -> float:
    """Thickness of the chip before it is cut, when the edge stands at an angle.

    h = f sin kappa

    Parameters
    ----------
    feed_mm : Feed f per turn. [mm/rev]
    approach_deg : Angle kappa between the cutting edge and the way the tool travels. [deg]

    Returns
    -------
    Chip thickness h. [mm]

    Valid for
    ---------
    Feed more than 0, angle 10 to 110 degrees; a straight edge, the nose radius left out.

    Source
    ------
    Geometry of the cut as in the metal groups of VDI 3323.

    >>> round(chip_thickness(0.15, 60), 4)
    0.1299
    """
    positive(feed_mm, "feed", "mm/rev")
    between(approach_deg, 10, 110, "approach angle", "degrees")
    return feed_mm * sin(radians(approach_deg))


def chip_width(depth_mm: float, approach_deg: float) -> float:
    """Width of the chip before it is cut, when the edge stands at an angle.

    b = ap / sin kappa

    Parameters
    ----------
    depth_mm : Depth of cut ap per side, not on diameter. [mm]
    approach_deg : Angle kappa between the cutting edge and the way the tool travels. [deg]

    Returns
    -------
    Chip width b. [mm]

    Valid for
    ---------
    Depth more than 0, angle 10 to 110 degrees; a straight edge, the nose radius left out.

    Source
    ------
    As `chip_thickness`.

    >>> round(chip_width(1, 60), 4)
    1.1547
    """
    positive(depth_mm, "depth of cut", "mm")
    between(approach_deg, 10, 110, "approach angle", "degrees")
    return depth_mm / sin(radians(approach_deg))


def force_at_approach(kc11_mpa: float, mc: float, depth_mm: float, feed_mm: float, approach_deg: float) -> float:
    """Main cutting force of a turning cut with the edge at any approach.

    Fc = kc1.1 h^-mc b h, h = f sin kappa, b = ap / sin kappa

    Parameters
    ----------
    kc11_mpa : Specific force kc1.1 of the metal. [MPa]
    mc : Exponent mc of the metal. [1]
    depth_mm : Depth of cut ap per side, not on diameter. [mm]
    feed_mm : Feed f per turn. [mm/rev]
    approach_deg : Angle kappa between the cutting edge and the way the tool travels. [deg]

    Returns
    -------
    Main (tangential) cutting force Fc of a sharp tool. [N]

    Valid for
    ---------
    As `chip_thickness` and `chip_width`; the chip thickness as in `specific_force`.

    Source
    ------
    Metal groups of VDI 3323 as reprinted in a tool maker's catalogue.

    >>> round(force_at_approach(1350, 0.21, 1, 0.15, 60), 1)
    310.9
    """
    thickness = chip_thickness(feed_mm, approach_deg)
    return specific_force(kc11_mpa, mc, thickness) * chip_width(depth_mm, approach_deg) * thickness


def rake_factor(rake_deg: float, reference_rake_deg: float, change_per_degree: float) -> float:
    """Factor on the cutting force for a rake other than that of the force tables.

    K = 1 - c (gamma - gamma0)

    Parameters
    ----------
    rake_deg : Rake gamma of the tool, more than 0 for a keen edge. [deg]
    reference_rake_deg : Rake gamma0 of the tables, 6 for steel and 2 for cast iron. [deg]
    change_per_degree : Share c by which a degree more lowers the force, 0.01 to 0.015. [1]

    Returns
    -------
    Factor K. [1]

    Valid for
    ---------
    Rakes at most 20 degrees apart, share 0 to 0.03.

    Source
    ------
    Memory; common in texts on cutting force.

    >>> round(rake_factor(16, 6, 0.015), 6)
    0.85
    """
    between(rake_deg - reference_rake_deg, -20, 20, "rake less that of the tables", "degrees")
    between(change_per_degree, 0, 0.03, "change of force per degree of rake")
    return 1 - change_per_degree * (rake_deg - reference_rake_deg)


def corrected_force(force_n: float, factors: Sequence[float]) -> float:
    """Cutting force with its corrections: rake, worn edge, slow tool, boring, parting.

    F = F0 K1 K2 ... Kn

    Parameters
    ----------
    force_n : Force F0 of a sharp tool in plain turning. [N]
    factors : Factors K1 to Kn, none for no correction. [1]

    Returns
    -------
    Corrected force F. [N]

    Valid for
    ---------
    Force more than 0, each factor 0.5 to 2; the usual ones are 1.2 for high speed steel and for boring, 1.3 for a
    worn edge and for parting.

    Source
    ------
    Usual form of the correction; the factors are from memory.

    >>> round(corrected_force(301.6, [1.2, 1.3]), 1)
    470.5
    """
    positive(force_n, "cutting force", "N")
    for factor in factors:
        between(factor, 0.5, 2, "correction of the cutting force")
    return force_n * prod(factors)


def force_band(
    kc11_low_mpa: float,
    mc_low: float,
    kc11_high_mpa: float,
    mc_high: float,
    depth_mm: float,
    feed_mm: float,
    factors: Sequence[float],
    ploughing_factor: float,
    ploughing_below_mm: float,
) -> ForceBand:
    """Cutting force from the low and the high constants of a metal: the typical one, and the one for limits.

    typical = least, limit = K1 ... Kn greatest of the two cutting_force; thin chip: limit times the ploughing factor

    Parameters
    ----------
    kc11_low_mpa : Specific force kc1.1 of the catalogue. [MPa]
    mc_low : Exponent mc of the catalogue. [1]
    kc11_high_mpa : Specific force kc1.1 for worn tools and small rake. [MPa]
    mc_high : Exponent mc that belongs to it. [1]
    depth_mm : Depth of cut ap per side, not on diameter. [mm]
    feed_mm : Feed f per turn, at an approach of 90 degrees the chip thickness. [mm/rev]
    factors : Corrections K1 to Kn that raise the limit. [1]
    ploughing_factor : Factor for a chip so thin that the edge ploughs. [1]
    ploughing_below_mm : Chip thickness below which it ploughs. [mm]

    Returns
    -------
    Typical force; force to hold chuck, motor and bending against; whether the chip is so thin that both are
    estimates. [N, N, 1]

    Valid for
    ---------
    As `cutting_force` and `corrected_force`, each factor here 1 or more, ploughing factor 1 to 2.

    Source
    ------
    VDI 3323 for the low constants, classic values (memory) for the high ones; ploughing share from memory.

    >>> typical, limit, estimated = force_band(1350, 0.21, 1990, 0.26, 1, 0.15, (), 1.5, 0.05)
    >>> round(typical, 1), round(limit, 1), estimated
    (301.6, 488.8, False)
    """
    for factor in factors:
        at_least(factor, 1, "correction that raises the limit")
    between(ploughing_factor, 1, 2, "ploughing factor")
    positive(ploughing_below_mm, "chip thickness below which the edge ploughs", "mm")
    low = cutting_force(kc11_low_mpa, mc_low, depth_mm, feed_mm)
    high = cutting_force(kc11_high_mpa, mc_high, depth_mm, feed_mm)
    ploughs = feed_mm < ploughing_below_mm
    limit = corrected_force(max(low, high), factors) * (ploughing_factor if ploughs else 1)
    return ForceBand(min(low, high), limit, ploughs)


def passive_force(
    cutting_force_n: float, depth_mm: float, nose_radius_mm: float, light_share: float, deep_share: float
) -> float:
    """Force that pushes tool and work apart, across the axis.

    Fp = s Fc; s is the light share where ap <= r, else the deep share

    Parameters
    ----------
    cutting_force_n : Main cutting force Fc. [N]
    depth_mm : Depth of cut ap per side. [mm]
    nose_radius_mm : Radius r of the tool nose. [mm]
    light_share : Share s in a cut no deeper than the nose radius, 0.7 to 1. [1]
    deep_share : Share s in a deeper cut, 0.3 to 0.5. [1]

    Returns
    -------
    Passive force Fp. [N]

    Valid for
    ---------
    Forces and sizes more than 0, shares above 0 and at most 1.5, the light one no less than the deep one.

    Source
    ------
    Ratios of the force components from memory.

    >>> passive_force(30, 0.1, 0.4, 1, 0.5)
    30
    """
    positive(cutting_force_n, "cutting force", "N")
    positive(depth_mm, "depth of cut", "mm")
    positive(nose_radius_mm, "nose radius", "mm")
    positive(deep_share, "share in a deep cut")
    between(light_share, deep_share, 1.5, "share in a light cut")
    return cutting_force_n * (light_share if depth_mm <= nose_radius_mm else deep_share)
