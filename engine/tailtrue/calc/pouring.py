"""Metal and gates for a cast blank: how much metal, and how fast it enters the mould.

These are first sizes for a trained founder to judge. Melting and pouring are outside: molten metal is work for people
trained in it, in a place made for it, by local rules.
"""

from math import sqrt

from tailtrue.calc.validity import at_least, between, positive

_GRAVITY_MM_S2 = 9806.65
_MM3_PER_M3 = 1e9


def casting_yield(casting_volume_mm3: float, other_volume_mm3: float) -> float:
    """Share of the poured metal that is casting.

    y = V_c / (V_c + V_o)

    Parameters
    ----------
    casting_volume_mm3 : Volume V_c of the casting. [mm3]
    other_volume_mm3 : Volume V_o of feeder, runner and sprue. [mm3]

    Returns
    -------
    Share y. [1]

    Valid for
    ---------
    Casting more than 0, the rest 0 or more.

    Source
    ------
    Definition.

    >>> round(casting_yield(218_800, 318_000), 2)
    0.41
    """
    positive(casting_volume_mm3, "volume of the casting", "mm3")
    at_least(other_volume_mm3, 0, "volume of feeder, runner and sprue", "mm3")
    return casting_volume_mm3 / (casting_volume_mm3 + other_volume_mm3)


def melt_mass(volume_mm3: float, density_kg_m3: float, surplus_share: float) -> float:
    """Mass of metal for all that is poured.

    m = rho V (1 + w)

    Parameters
    ----------
    volume_mm3 : Volume V of casting, feeder, runner and sprue. [mm3]
    density_kg_m3 : Density rho of the metal. [kg/m3]
    surplus_share : Surplus w for skin, dross and what stays behind. [1]

    Returns
    -------
    Mass m. [kg]

    Valid for
    ---------
    Volume and density more than 0, surplus 0 to 1. What is left is poured into a dry, warmed ingot mould.

    Source
    ------
    Definition of density.

    >>> round(melt_mass(536_800, 2400, 0), 3)
    1.288
    """
    positive(volume_mm3, "volume", "mm3")
    positive(density_kg_m3, "density", "kg/m3")
    between(surplus_share, 0, 1, "surplus")
    return density_kg_m3 * volume_mm3 / _MM3_PER_M3 * (1 + surplus_share)


def fall_velocity(height_mm: float) -> float:
    """Velocity of metal that has fallen freely.

    v = sqrt(2 g h)

    Parameters
    ----------
    height_mm : Height h of the fall. [mm]

    Returns
    -------
    Velocity v. [m/s]

    Valid for
    ---------
    Height 0 or more; no friction.

    Source
    ------
    Free fall.

    >>> round(fall_velocity(150), 3)
    1.715
    """
    at_least(height_mm, 0, "height of the fall", "mm")
    return sqrt(2 * _GRAVITY_MM_S2 * height_mm) / 1000


def fall_height(velocity_m_s: float) -> float:
    """Height of a free fall that gives a velocity.

    h = v^2 / (2 g)

    Parameters
    ----------
    velocity_m_s : Velocity v. [m/s]

    Returns
    -------
    Height h. [mm]

    Valid for
    ---------
    Velocity 0 or more; no friction.

    Source
    ------
    Free fall.

    >>> round(fall_height(0.5), 1)
    12.7
    """
    at_least(velocity_m_s, 0, "velocity", "m/s")
    return (1000 * velocity_m_s) ** 2 / (2 * _GRAVITY_MM_S2)


def choke_area(mass_kg: float, density_kg_m3: float, time_s: float, height_mm: float, discharge: float) -> float:
    """Narrowest area of the sprue that fills the mould in a wanted time.

    A = m / (rho t C sqrt(2 g h))

    Parameters
    ----------
    mass_kg : Mass m that is poured. [kg]
    density_kg_m3 : Density rho of the liquid metal. [kg/m3]
    time_s : Time t of filling. [s]
    height_mm : Height h from the surface in the basin to the choke. [mm]
    discharge : Share C of the free fall that is kept. [1]

    Returns
    -------
    Area A. [mm2]

    Valid for
    ---------
    All more than 0, share at most 1; a first size for a trained founder.

    Source
    ------
    Continuity and free fall; the formula as founders use it is from memory.

    >>> round(choke_area(1.288, 2400, 6, 150, 0.8), 1)
    65.2
    """
    positive(mass_kg, "mass", "kg")
    positive(density_kg_m3, "density", "kg/m3")
    positive(time_s, "time of filling", "s")
    positive(height_mm, "height", "mm")
    positive(discharge, "share of the free fall")
    between(discharge, 0, 1, "share of the free fall")
    flow_mm3_s = mass_kg / density_kg_m3 * _MM3_PER_M3 / time_s
    return flow_mm3_s / (discharge * 1000 * fall_velocity(height_mm))


def sprue_top_area(choke_area_mm2: float, total_height_mm: float, basin_height_mm: float) -> float:
    """Area at the top of a tapered sprue that stays full to the choke.

    A_top = A sqrt(h_total / h_basin)

    Parameters
    ----------
    choke_area_mm2 : Area A of the choke at the foot. [mm2]
    total_height_mm : Height h_total from the surface in the basin to the choke. [mm]
    basin_height_mm : Depth h_basin of metal in the basin, above the top of the sprue. [mm]

    Returns
    -------
    Area A_top. [mm2]

    Valid for
    ---------
    All more than 0, basin not deeper than the whole height.

    Source
    ------
    Continuity of a falling stream; as a rule of founders from memory.

    >>> round(sprue_top_area(65.2, 150, 50), 1)
    112.9
    """
    positive(choke_area_mm2, "area of the choke", "mm2")
    positive(basin_height_mm, "depth of metal in the basin", "mm")
    at_least(total_height_mm, basin_height_mm, "whole height", "mm")
    return choke_area_mm2 * sqrt(total_height_mm / basin_height_mm)


def gate_velocity(mass_kg: float, density_kg_m3: float, time_s: float, gate_area_mm2: float) -> float:
    """Velocity at which metal enters the mould.

    v = m / (rho t A)

    Parameters
    ----------
    mass_kg : Mass m that is poured. [kg]
    density_kg_m3 : Density rho of the liquid metal. [kg/m3]
    time_s : Time t of filling. [s]
    gate_area_mm2 : Area A of all gates together. [mm2]

    Returns
    -------
    Velocity v. [m/s]

    Valid for
    ---------
    All more than 0; all gates running full. Above 0.5 m/s aluminium folds its skin in.

    Source
    ------
    Continuity; the limit is from JOM 57(5), 2005, on rules for sound castings.

    >>> round(gate_velocity(1.288, 2400, 6, 130.3), 3)
    0.686
    """
    positive(mass_kg, "mass", "kg")
    positive(density_kg_m3, "density", "kg/m3")
    positive(time_s, "time of filling", "s")
    positive(gate_area_mm2, "area of the gates", "mm2")
    flow_mm3_s = mass_kg / density_kg_m3 * _MM3_PER_M3 / time_s
    return flow_mm3_s / gate_area_mm2 / 1000
