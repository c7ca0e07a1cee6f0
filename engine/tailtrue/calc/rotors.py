"""Speeds at which a bar with collars whirls, and how far stock may stand out free behind the spindle.

Every one of these is a speed to stay well below; a share of one half is usual. Stations are distances from the
headstock centre.
"""

from collections.abc import Sequence
from itertools import pairwise
from math import pi, sqrt

from tailtrue.calc.beams import (
    GRAVITY_M_S2,
    deflection_between_centres,
    mass_cylinder,
    second_moment,
    whirl_speed_between_centres,
    whirl_speed_cantilever,
)
from tailtrue.calc.bending import sag_with_collars
from tailtrue.calc.soft_centres import RIGID_N_PER_MM, centre_give
from tailtrue.calc.validity import OutOfRange, at_least, between, on_span, positive, up_to

_LEAST_OVERHANG_IN_DIAMETERS = 2.5  # as in beams, for a length that is a result here
_MOST_SHARE_OF_CRITICAL = 0.9  # nearer to it damping decides, which nobody knows
_SHAPES = 40  # sine waves in which the whirling bar is drawn; the error is then below a part in 100 000


def disc_speed(mass_kg: float, span_mm: float, station_mm: float, modulus_mpa: float, diameter_mm: float) -> float:
    """Whirling speed of one disc on a bar between centres whose own mass does not count.

    n = 30 / pi sqrt(1 / (m y1)), y1 = deflection under 1 N at the disc

    Parameters
    ----------
    mass_kg : Mass m of the disc. [kg]
    span_mm : Distance L between the points of the two centres. [mm]
    station_mm : Distance of the disc from the headstock centre. [mm]
    modulus_mpa : Modulus of elasticity E of the bar. [MPa]
    diameter_mm : Diameter d of the bar. [mm]

    Returns
    -------
    Critical speed n of that disc alone. [1/min]

    Valid for
    ---------
    As `deflection_between_centres`; mass more than 0, the disc between the centres and not upon one.

    Source
    ------
    Shigley's Mechanical Engineering Design, 9th ed., sec. 7-6.

    >>> round(disc_speed(0.3711, 500, 50, 207000, 25))
    53758
    """
    positive(mass_kg, "mass of the disc", "kg")
    give = deflection_between_centres(1, span_mm, station_mm, modulus_mpa, diameter_mm)
    if give == 0:
        raise OutOfRange(f"the disc stands at {station_mm:g} mm, upon a centre, where it cannot whirl")
    return 30 / pi * sqrt(1000 / (mass_kg * give))


def mass_at_middle(mass_kg: float, span_mm: float, station_mm: float) -> float:
    """Mass in the middle of the span that lowers the whirling speed as much as a disc somewhere else.

    m_c = m 16 a^2 (L - a)^2 / L^4

    Parameters
    ----------
    mass_kg : Mass m of the disc. [kg]
    span_mm : Distance L between the points of the two centres. [mm]
    station_mm : Distance a of the disc from the headstock centre. [mm]

    Returns
    -------
    Mass m_c in the middle. [kg]

    Valid for
    ---------
    Bar of even thickness, station on the span.

    Source
    ------
    Shigley's Mechanical Engineering Design, 9th ed., sec. 7-6, example 7-5.

    >>> round(mass_at_middle(35, 31, 7), 1)
    17.1
    """
    positive(mass_kg, "mass of the disc", "kg")
    on_span(station_mm, span_mm)
    return mass_kg * 16 * (station_mm * (span_mm - station_mm)) ** 2 / span_mm**4


def critical_speed_low_side(
    diameter_mm: float,
    span_mm: float,
    modulus_mpa: float,
    density_kg_m3: float,
    masses_kg: Sequence[float],
    stations_mm: Sequence[float],
    headstock_n_per_mm: float = RIGID_N_PER_MM,
    tailstock_n_per_mm: float = RIGID_N_PER_MM,
) -> float:
    """Lowest whirling speed of a bar with collars, estimated from below.

    1 / w^2 = 1 / w_bar^2 + sum of m_i y_i + (m_bar / 3) (1 / k_h + 1 / k_t), y_i = give under 1 N at disc i

    Parameters
    ----------
    diameter_mm : Diameter d of the bar. [mm]
    span_mm : Distance L between the points of the two centres. [mm]
    modulus_mpa : Modulus of elasticity E of the bar. [MPa]
    density_kg_m3 : Density rho of the bar, 0 when its own mass does not count. [kg/m3]
    masses_kg : Mass of each collar. [kg]
    stations_mm : Distance of each collar from the headstock centre. [mm]
    headstock_n_per_mm : Stiffness k_h of the headstock centre, rigid when left out. [N/mm]
    tailstock_n_per_mm : Stiffness k_t of the tailstock centre, rigid when left out. [N/mm]

    Returns
    -------
    Critical speed, never above the true one of this model: the safe side. [1/min]

    Valid for
    ---------
    Span at least 5 diameters, density 0 or more, as many masses as stations and something that has mass; collars
    add mass and no stiffness. Centres that give lower the true speed by up to a tenth and more.

    Source
    ------
    Dunkerley; Shigley's Mechanical Engineering Design, 9th ed., sec. 7-6. The term of the centres is derived.

    >>> round(critical_speed_low_side(25, 500, 207000, 7850, [0.3711, 0.3711], [50, 450]), -1)
    11530.0
    """
    _loads(span_mm, density_kg_m3, masses_kg, stations_mm)
    lines = 0.0  # 1 / w^2 in s^2; give in mm/N times mass in kg is in 1/1000 s^2
    bar_mass = _bar_mass(diameter_mm, span_mm, density_kg_m3)
    if density_kg_m3 > 0:
        bare = whirl_speed_between_centres(diameter_mm, span_mm, modulus_mpa, density_kg_m3)
        lines += (30 / (pi * bare)) ** 2
    for end in (0.0, span_mm):
        lines += bar_mass / 3 * centre_give(1, span_mm, end, end, headstock_n_per_mm, tailstock_n_per_mm) / 1000
    for mass, station in zip(masses_kg, stations_mm, strict=True):
        give = deflection_between_centres(1, span_mm, station, modulus_mpa, diameter_mm)
        give += centre_give(1, span_mm, station, station, headstock_n_per_mm, tailstock_n_per_mm)
        lines += mass * give / 1000
    return 30 / pi / sqrt(lines)


def critical_speed_high_side(
    diameter_mm: float,
    span_mm: float,
    modulus_mpa: float,
    density_kg_m3: float,
    masses_kg: Sequence[float],
    stations_mm: Sequence[float],
) -> float:
    """Lowest whirling speed of a bar with collars on rigid centres, estimated from above.

    w^2 = g sum(m y) / sum(m y^2), y = sag under bar and collars

    Parameters
    ----------
    diameter_mm : Diameter d of the bar. [mm]
    span_mm : Distance L between the points of the two centres. [mm]
    modulus_mpa : Modulus of elasticity E of the bar. [MPa]
    density_kg_m3 : Density rho of the bar, 0 when its own mass does not count. [kg/m3]
    masses_kg : Mass of each collar. [kg]
    stations_mm : Distance of each collar from the headstock centre. [mm]

    Returns
    -------
    Critical speed, never below the true one of this model; no limit may rest on it alone. [1/min]

    Valid for
    ---------
    As `critical_speed_low_side`, centres rigid, the sag below a tenth of the span.

    Source
    ------
    Rayleigh; Shigley's Mechanical Engineering Design, 9th ed., sec. 7-6.

    >>> round(critical_speed_high_side(25, 500, 207000, 7850, [0.3711, 0.3711], [50, 450]), -1)
    11700.0
    """
    from numpy.polynomial.legendre import leggauss

    _loads(span_mm, density_kg_m3, masses_kg, stations_mm)
    lumps = list(zip(masses_kg, stations_mm, strict=True))
    # Between collars the sag is a quartic, so five points to a piece carry its square without error.
    points, weights = leggauss(5)
    ends = sorted({0.0, *stations_mm, span_mm})
    per_mm = _bar_mass(diameter_mm, span_mm, density_kg_m3) / span_mm
    for left, right in pairwise(ends):
        half = (right - left) / 2
        lumps += [
            (per_mm * half * float(weight), left + half * (1 + float(point)))
            for point, weight in zip(points, weights, strict=True)
        ]
    work = square = 0.0
    for mass, station in lumps:
        sag = sag_with_collars(diameter_mm, span_mm, modulus_mpa, density_kg_m3, masses_kg, stations_mm, station)
        work += mass * sag
        square += mass * sag**2
    return 30 / pi * sqrt(1000 * GRAVITY_M_S2 * work / square)


def critical_speed(
    diameter_mm: float,
    span_mm: float,
    modulus_mpa: float,
    density_kg_m3: float,
    masses_kg: Sequence[float],
    stations_mm: Sequence[float],
    headstock_n_per_mm: float = RIGID_N_PER_MM,
    tailstock_n_per_mm: float = RIGID_N_PER_MM,
) -> float:
    """Lowest whirling speed of a bar with collars, its shape made up of sine waves and a tilt on the centres.

    1 / w^2 = largest root of det(K^(-1/2) M K^(-1/2) - q) = 0

    Parameters
    ----------
    diameter_mm : Diameter d of the bar. [mm]
    span_mm : Distance L between the points of the two centres. [mm]
    modulus_mpa : Modulus of elasticity E of the bar. [MPa]
    density_kg_m3 : Density rho of the bar, 0 when its own mass does not count. [kg/m3]
    masses_kg : Mass of each collar. [kg]
    stations_mm : Distance of each collar from the headstock centre. [mm]
    headstock_n_per_mm : Stiffness of the headstock centre, rigid when left out. [N/mm]
    tailstock_n_per_mm : Stiffness of the tailstock centre, rigid when left out. [N/mm]

    Returns
    -------
    Critical speed; the best estimate of the three, with no safe side of its own. [1/min]

    Valid for
    ---------
    As `critical_speed_low_side`; shear and the tilting of the collars are left out.

    Source
    ------
    Rayleigh and Ritz, derived.

    >>> round(critical_speed(25, 500, 207000, 7850, [0.3711, 0.3711], [50, 450]), -1)
    11670.0
    """
    import numpy as np

    _loads(span_mm, density_kg_m3, masses_kg, stations_mm)
    positive(headstock_n_per_mm, "stiffness of the headstock centre", "N/mm")
    positive(tailstock_n_per_mm, "stiffness of the tailstock centre", "N/mm")
    deflection_between_centres(1, span_mm, span_mm / 2, modulus_mpa, diameter_mm)  # refuses what is no slender beam
    wave = np.arange(1, _SHAPES + 1)
    bending = modulus_mpa * second_moment(diameter_mm) * (wave * pi / span_mm) ** 4 * span_mm / 2
    stiffness = np.concatenate([bending, [headstock_n_per_mm, tailstock_n_per_mm]])
    # The tilt is made of two straight lines: 1 at the headstock and 0 at the tailstock, and the other way round.
    mass = np.zeros((_SHAPES + 2, _SHAPES + 2))
    mass[:_SHAPES, :_SHAPES] = np.eye(_SHAPES) / 2
    # Only the half below the diagonal is read.
    mass[-2, :_SHAPES] = 1 / (wave * pi)
    mass[-1, :_SHAPES] = (-1.0) ** (wave + 1) / (wave * pi)
    mass[-1, -2] = 1 / 6
    mass[-2, -2] = mass[-1, -1] = 1 / 3
    mass *= _bar_mass(diameter_mm, span_mm, density_kg_m3)
    for kg, station in zip(masses_kg, stations_mm, strict=True):
        u = station / span_mm
        shape = np.concatenate([np.sin(wave * pi * u), [1 - u, u]])
        mass += kg * np.outer(shape, shape)
    root = 1 / np.sqrt(stiffness)
    largest = float(np.linalg.eigvalsh(root[:, None] * mass * root, UPLO="L")[-1])
    return 30 / pi / sqrt(largest / 1000)


def bow_growth(spindle_speed_per_min: float, critical_per_min: float) -> float:
    """How many times its bow at rest a turning bar shows, damping left out.

    q = 1 / (1 - (n / n_c)^2)

    Parameters
    ----------
    spindle_speed_per_min : Spindle speed n. [1/min]
    critical_per_min : Lowest critical speed n_c. [1/min]

    Returns
    -------
    Growth q of the bow. [1]

    Valid for
    ---------
    Speed from 0 to nine tenths of the critical one.

    Source
    ------
    Simple rotor on a bent shaft (any text on vibration; memory).

    >>> round(bow_growth(500, 1000), 3)
    1.333
    """
    positive(critical_per_min, "critical speed", "1/min")
    ratio = spindle_speed_per_min / critical_per_min
    between(ratio, 0, _MOST_SHARE_OF_CRITICAL, "speed as a share of the critical one")
    return 1 / (1 - ratio**2)


def free_length_limit(
    diameter_mm: float, modulus_mpa: float, density_kg_m3: float, spindle_speed_per_min: float, share: float
) -> float:
    """Longest piece of bar that may stand out free behind the spindle at a speed.

    L = 1.8751 sqrt(60 s / (2 pi n) (d / 4) sqrt(E / rho))

    Parameters
    ----------
    diameter_mm : Diameter d of the bar. [mm]
    modulus_mpa : Modulus of elasticity E. [MPa]
    density_kg_m3 : Density rho. [kg/m3]
    spindle_speed_per_min : Spindle speed n. [1/min]
    share : Share s of the whirling speed that the spindle may reach. [1]

    Returns
    -------
    Free length L; a bar that is bent or loose in the bore whips when it is shorter. [mm]

    Valid for
    ---------
    Straight solid bar, held without play at the end of the spindle; share above 0 to 0.9; a result of at least
    2.5 diameters.

    Source
    ------
    `whirl_speed_cantilever` turned round.

    >>> round(free_length_limit(12, 206000, 7850, 637, 1 / 2))
    636
    """
    positive(diameter_mm, "diameter", "mm")
    positive(spindle_speed_per_min, "spindle speed", "1/min")
    up_to(share, _MOST_SHARE_OF_CRITICAL, "share of the whirling speed")
    length = 10 * diameter_mm
    whirls = whirl_speed_cantilever(diameter_mm, length, modulus_mpa, density_kg_m3)
    longest = length * sqrt(share * whirls / spindle_speed_per_min)
    if longest < _LEAST_OVERHANG_IN_DIAMETERS * diameter_mm:
        raise OutOfRange(
            f"at {spindle_speed_per_min:g} 1/min only {longest:.3g} mm could stand out free, less than the formula "
            f"holds for ({_LEAST_OVERHANG_IN_DIAMETERS:g} diameters); let nothing stand out, or turn slower"
        )
    return longest


def _bar_mass(diameter_mm: float, span_mm: float, density_kg_m3: float) -> float:
    return mass_cylinder(diameter_mm, span_mm, density_kg_m3) if density_kg_m3 else 0.0


def _loads(span_mm: float, density_kg_m3: float, masses_kg: Sequence[float], stations_mm: Sequence[float]) -> None:
    positive(span_mm, "span", "mm")
    at_least(density_kg_m3, 0, "density", "kg/m3")
    if len(masses_kg) != len(stations_mm):
        raise OutOfRange(f"{len(masses_kg)} masses are given for {len(stations_mm)} stations; each mass needs one station")
    for mass, station in zip(masses_kg, stations_mm, strict=True):
        positive(mass, "mass of a collar", "kg")
        between(station, 0, span_mm, "station", "mm")
    if density_kg_m3 == 0 and all(station in (0, span_mm) for station in stations_mm):
        raise OutOfRange("nothing between the centres has mass; give the density of the bar or the mass of a collar")
