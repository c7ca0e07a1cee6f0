"""Parts: the mass of those that are no plain cylinder, and the energy they hold while they turn."""

from collections.abc import Sequence
from math import pi

from tailtrue.calc.beams import mass_cylinder
from tailtrue.calc.validity import OutOfRange, at_least, between, positive


def mass_stepped(
    diameters_mm: Sequence[float], lengths_mm: Sequence[float], density_kg_m3: float, bores_mm: Sequence[float] = ()
) -> float:
    """Mass of a part made of cylinders and rings one after another.

    m = rho pi / 4 sum((d_i^2 - b_i^2) L_i)

    Parameters
    ----------
    diameters_mm : Outside diameter of each step. [mm]
    lengths_mm : Length of each step. [mm]
    density_kg_m3 : Density rho. [kg/m3]
    bores_mm : Hole in each step, 0 where there is none; left out for a solid part. [mm]

    Returns
    -------
    Mass m. [kg]

    Valid for
    ---------
    At least one step, as many lengths as diameters; as `mass_cylinder` for each.

    Source
    ------
    Geometry.

    >>> round(mass_stepped([75, 40], [35, 20], 2700, [25, 25]), 3)
    0.412
    """
    steps = len(diameters_mm)
    if not steps or len(lengths_mm) != steps or (bores_mm and len(bores_mm) != steps):
        raise OutOfRange(
            f"{steps} diameters, {len(lengths_mm)} lengths and {len(bores_mm)} bores are given; each step needs one of "
            "each, or no bores at all"
        )
    bores = bores_mm or [0.0] * steps
    return sum(
        mass_cylinder(diameter, length, density_kg_m3, bore)
        for diameter, length, bore in zip(diameters_mm, lengths_mm, bores, strict=True)
    )


def mass_cone(
    large_diameter_mm: float, small_diameter_mm: float, length_mm: float, density_kg_m3: float, bore_mm: float = 0.0
) -> float:
    """Mass of a part that tapers, as a blank cast with draft.

    m = rho pi L ((D^2 + D d + d^2) / 12 - b^2 / 4)

    Parameters
    ----------
    large_diameter_mm : Diameter D of the large end. [mm]
    small_diameter_mm : Diameter d of the small end. [mm]
    length_mm : Length L along the axis. [mm]
    density_kg_m3 : Density rho. [kg/m3]
    bore_mm : Diameter b of a parallel hole right through, 0 for none. [mm]

    Returns
    -------
    Mass m. [kg]

    Valid for
    ---------
    0 < D, 0 <= d <= D, 0 <= b <= d, length and density more than 0.

    Source
    ------
    Geometry.

    >>> round(mass_cone(83.86, 81, 41, 2680), 3)
    0.586
    """
    positive(large_diameter_mm, "large diameter", "mm")
    between(small_diameter_mm, 0, large_diameter_mm, "small diameter", "mm")
    positive(length_mm, "length", "mm")
    positive(density_kg_m3, "density", "kg/m3")
    between(bore_mm, 0, small_diameter_mm, "bore", "mm")
    squares = large_diameter_mm**2 + large_diameter_mm * small_diameter_mm + small_diameter_mm**2
    return density_kg_m3 * pi * length_mm * (squares / 12 - bore_mm**2 / 4) * 1e-9


def mass_slab(width_mm: float, thickness_mm: float, length_mm: float, density_kg_m3: float) -> float:
    """Mass of a piece of plate with square edges.

    m = rho w t L

    Parameters
    ----------
    width_mm : Width w. [mm]
    thickness_mm : Thickness t. [mm]
    length_mm : Length L. [mm]
    density_kg_m3 : Density rho. [kg/m3]

    Returns
    -------
    Mass m. [kg]

    Valid for
    ---------
    Width, thickness, length and density more than 0.

    Source
    ------
    Geometry.

    >>> round(mass_slab(80, 40, 164, 2700), 3)
    1.417
    """
    positive(width_mm, "width", "mm")
    positive(thickness_mm, "thickness", "mm")
    positive(length_mm, "length", "mm")
    positive(density_kg_m3, "density", "kg/m3")
    return density_kg_m3 * width_mm * thickness_mm * length_mm * 1e-9


def turning_energy(mass_kg: float, diameter_mm: float, spindle_speed_per_min: float, bore_mm: float = 0.0) -> float:
    """Energy that a ring or disc holds because it turns, set free when a chuck runs off its spindle.

    E = m (d^2 + b^2) w^2 / 16, w = 2 pi n / 60

    Parameters
    ----------
    mass_kg : Mass m. [kg]
    diameter_mm : Outside diameter d. [mm]
    spindle_speed_per_min : Spindle speed n. [1/min]
    bore_mm : Diameter b of the hole, 0 for none. [mm]

    Returns
    -------
    Energy E; one kilogram falling one metre has 9.8. [J]

    Valid for
    ---------
    Mass and diameter more than 0, speed 0 or more, bore from 0 to the diameter.

    Source
    ------
    Mechanics.

    >>> round(turning_energy(9, 160, 1000), 1)
    157.9
    """
    positive(mass_kg, "mass", "kg")
    positive(diameter_mm, "diameter", "mm")
    at_least(spindle_speed_per_min, 0, "spindle speed", "1/min")
    between(bore_mm, 0, diameter_mm, "bore", "mm")
    inertia = mass_kg * (diameter_mm**2 + bore_mm**2) / 8 * 1e-6
    return inertia * (pi * spindle_speed_per_min / 30) ** 2 / 2


def mass_with_pieces(base_kg: float, piece_kg: float, count: int) -> float:
    """Mass of something that carries so many like pieces.

    M = m_0 + n m

    Parameters
    ----------
    base_kg : Mass m_0 of what carries them; 0 for the pieces alone. [kg]
    piece_kg : Mass m of one. [kg]
    count : Number n of them. [1]

    Returns
    -------
    Mass M of the whole. [kg]

    Valid for
    ---------
    Masses 0 or more, at least one piece.

    Source
    ------
    Arithmetic.

    >>> round(mass_with_pieces(1.5, 0.4, 2), 6)
    2.3
    """
    at_least(base_kg, 0, "mass", "kg")
    at_least(piece_kg, 0, "mass of a piece", "kg")
    at_least(count, 1, "number of pieces")
    return base_kg + count * piece_kg
