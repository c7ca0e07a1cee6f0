"""The centre hole in the end of a bar: cone, depth, what it bears, where the centre drill cuts."""

from math import radians, tan

from tailtrue.calc.validity import OutOfRange, at_least, between, finite, positive


def cone_depth(large_mm: float, small_mm: float, cone_deg: float) -> float:
    """Depth of a cone between two diameters: the seat of a centre, or the chamfer that guards it.

    t = (D - d) / (2 tan(c / 2))

    Parameters
    ----------
    large_mm : Large diameter D of the cone. [mm]
    small_mm : Small diameter d: the pilot, or for the guarding chamfer the cone below it. [mm]
    cone_deg : Full angle c: 60 for a lathe centre, 120 for the guarding chamfer. [deg]

    Returns
    -------
    Depth t of the cone alone, without the pilot. [mm]

    Valid for
    ---------
    Large diameter above the small one, which is more than 0; angle 20 to 150 degrees.

    Source
    ------
    Geometry; the depths that ISO 866 sizes ask for (memory) agree.

    >>> round(cone_depth(5.3, 2.5, cone_deg=60), 3)
    2.425
    """
    _cone(large_mm, small_mm)
    between(cone_deg, 20, 150, "angle of the cone", "degrees")
    return (large_mm - small_mm) / (2 * tan(radians(cone_deg / 2)))


def cone_diameter(depth_mm: float, small_mm: float, cone_deg: float) -> float:
    """Large diameter of a cone of a given depth, as when the centre drill is set by its dial.

    D = d + 2 t tan(c / 2)

    Parameters
    ----------
    depth_mm : Depth t of the cone alone, without the pilot. [mm]
    small_mm : Small diameter d, the pilot. [mm]
    cone_deg : Full angle c. [deg]

    Returns
    -------
    Large diameter D. [mm]

    Valid for
    ---------
    Both more than 0, angle 20 to 150 degrees; no deeper than the cone of the drill reaches.

    Source
    ------
    `cone_depth` turned round.

    >>> round(cone_diameter(2.4249, 2.5, cone_deg=60), 3)
    5.3
    """
    positive(depth_mm, "depth of the cone", "mm")
    positive(small_mm, "small diameter of the cone", "mm")
    between(cone_deg, 20, 150, "angle of the cone", "degrees")
    return small_mm + 2 * depth_mm * tan(radians(cone_deg / 2))


def cone_within_drill(pilot_mm: float, largest_cone_mm: float, share: float) -> float:
    """Large diameter of a centre hole that uses a share of the cone of its centre drill.

    D = d + s (Dmax - d)

    Parameters
    ----------
    pilot_mm : Diameter d of the pilot. [mm]
    largest_cone_mm : Largest cone Dmax that the drill cuts. [mm]
    share : Share s of the way from the pilot to it. [1]

    Returns
    -------
    Large diameter D of the hole. [mm]

    Valid for
    ---------
    Largest cone above the pilot, which is more than 0; share 0.05 to 1: never deeper than the cone.

    Source
    ------
    Common practice.

    >>> round(cone_within_drill(2.5, 5.3, 0.75), 2)
    4.6
    """
    _cone(largest_cone_mm, pilot_mm)
    between(share, 0.05, 1, "share of the cone")
    return pilot_mm + share * (largest_cone_mm - pilot_mm)


def largest_cone(bar_mm: float, cone_share: float) -> float:
    """Largest centre hole that a bar should have in its end.

    D = s d

    Parameters
    ----------
    bar_mm : Diameter d of the bar. [mm]
    cone_share : Share s of it that the hole may take, a third. [1]

    Returns
    -------
    Largest diameter D of the cone. [mm]

    Valid for
    ---------
    Diameter more than 0, share 0.1 to 0.6.

    Source
    ------
    Common practice.

    >>> round(largest_cone(25, 1 / 3), 2)
    8.33
    """
    positive(bar_mm, "diameter of the bar", "mm")
    between(cone_share, 0.1, 0.6, "cone as a share of the bar")
    return bar_mm * cone_share


def bearing_area(large_mm: float, small_mm: float, cone_deg: float) -> float:
    """Area on which a centre bears sideways, seen across the axis.

    A = (D^2 - d^2) / (4 tan(c / 2))

    Parameters
    ----------
    large_mm : Large diameter D of the cone. [mm]
    small_mm : Small diameter d, the pilot. [mm]
    cone_deg : Full angle c. [deg]

    Returns
    -------
    Projected area A. [mm2]

    Valid for
    ---------
    As `cone_depth`; centre and hole in line, so that the whole cone bears.

    Source
    ------
    Geometry.

    >>> round(bearing_area(5.3, 2.5, cone_deg=60), 3)
    9.457
    """
    return cone_depth(large_mm, small_mm, cone_deg) * (large_mm + small_mm) / 2


def bearing_pressure(force_n: float, large_mm: float, small_mm: float, cone_deg: float) -> float:
    """Mean pressure of a centre on its hole under a force across the axis.

    p = F / A

    Parameters
    ----------
    force_n : Force F on this centre: half the weight of the work, and the cut. [N]
    large_mm : Large diameter of the cone. [mm]
    small_mm : Small diameter, the pilot. [mm]
    cone_deg : Full angle of the cone. [deg]

    Returns
    -------
    Mean pressure p on the projected area; a centre out of line bears on an edge and presses harder. [MPa]

    Valid for
    ---------
    Force more than 0, the cone as in `bearing_area`.

    Source
    ------
    Geometry.

    >>> round(bearing_pressure(249, 5.3, 2.5, cone_deg=60), 2)
    26.33
    """
    positive(force_n, "force on the centre", "N")
    return force_n / bearing_area(large_mm, small_mm, cone_deg)


def mean_cutting_diameter(pilot_mm: float, body_mm: float) -> float:
    """Diameter at which the surface speed of a centre drill is reckoned.

    D = (d1 + d2) / 2

    Parameters
    ----------
    pilot_mm : Diameter d1 of the pilot. [mm]
    body_mm : Diameter d2 of the body. [mm]

    Returns
    -------
    Mean diameter D. [mm]

    Valid for
    ---------
    Pilot more than 0 and below the body; a cap for thin pilots comes on top.

    Source
    ------
    Common practice.

    >>> mean_cutting_diameter(2.5, 6.3)
    4.4
    """
    _cone(body_mm, pilot_mm)
    return (pilot_mm + body_mm) / 2


def centre_load(mass_kg: float, gravity_m_s2: float, radial_force_n: float) -> float:
    """Load on one centre from half the weight of the bar and the push of the tool.

    R = m g / 2 + F

    Parameters
    ----------
    mass_kg : Mass m between the centres. [kg]
    gravity_m_s2 : Gravity g. [m/s2]
    radial_force_n : Radial force F of the tool, all of it at this centre. [N]

    Returns
    -------
    Load R at worst, as if weight and push had one direction. [N]

    Valid for
    ---------
    Mass and gravity more than 0, force 0 or more; a bar alike at both ends.

    Source
    ------
    Statics, derived.

    >>> round(centre_load(2, 9.81, 30), 6)
    39.81
    """
    positive(mass_kg, "mass", "kg")
    positive(gravity_m_s2, "gravity", "m/s2")
    at_least(radial_force_n, 0, "radial force", "N")
    return mass_kg / 2 * gravity_m_s2 + radial_force_n


def _cone(large_mm: float, small_mm: float) -> None:
    positive(small_mm, "small diameter of the cone", "mm")
    finite(large_mm, "large diameter of the cone", "mm")
    if large_mm <= small_mm:
        raise OutOfRange(f"the cone goes from {small_mm:g} mm to {large_mm:g} mm; its large end must be the larger")
