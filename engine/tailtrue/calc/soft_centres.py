"""Centres that give: what their softness adds to the collars, and the pull test that finds it.

A stiffness is force for each mm of give; `RIGID_N_PER_MM` stands for a centre that does not give. Stations are
distances from the headstock centre.
"""

from typing import NamedTuple

from tailtrue.calc.beams import deflection_between_centres
from tailtrue.calc.validity import at_least, between, in_order, on_span, positive

RIGID_N_PER_MM = 1e12


class SkimDeflection(NamedTuple):
    """How far the axis gives under the tool at each collar, and what that leaves on the two diameters."""

    at_headstock_collar_mm: float
    at_tailstock_collar_mm: float
    difference_of_diameters_mm: float


def centre_give(
    force_n: float,
    span_mm: float,
    load_station_mm: float,
    look_station_mm: float,
    headstock_n_per_mm: float,
    tailstock_n_per_mm: float,
) -> float:
    """How far the axis moves at one place because the centres give under a force at another.

    y(x) = F ((1 - a/L)(1 - x/L) / k_h + (a/L)(x/L) / k_t)

    Parameters
    ----------
    force_n : Radial force F. [N]
    span_mm : Distance L between the points of the two centres. [mm]
    load_station_mm : Distance a of the force from the headstock centre. [mm]
    look_station_mm : Distance x of the place looked at. [mm]
    headstock_n_per_mm : Stiffness k_h of the headstock centre. [N/mm]
    tailstock_n_per_mm : Stiffness k_t of the tailstock centre, quill out and clamped as in use. [N/mm]

    Returns
    -------
    Movement y of the axis away from the tool, a radius; the bar itself taken as rigid. [mm]

    Valid for
    ---------
    Both places on the span, springs that give in proportion, no play.

    Source
    ------
    Lever on two springs, derived.

    >>> round(centre_give(10, 300, 270, 270, 50000, 10000), 6)
    0.000812
    """
    at_least(force_n, 0, "force", "N")
    on_span(load_station_mm, span_mm, "station of the force")
    on_span(look_station_mm, span_mm, "station looked at")
    positive(headstock_n_per_mm, "stiffness of the headstock centre", "N/mm")
    positive(tailstock_n_per_mm, "stiffness of the tailstock centre", "N/mm")
    a, x = load_station_mm / span_mm, look_station_mm / span_mm
    return force_n * ((1 - a) * (1 - x) / headstock_n_per_mm + a * x / tailstock_n_per_mm)


def difference_from_centres(
    force_n: float,
    span_mm: float,
    first_station_mm: float,
    second_station_mm: float,
    headstock_n_per_mm: float,
    tailstock_n_per_mm: float,
) -> float:
    """Difference of the collars from centres of unlike stiffness alone, the same force at either collar.

    D_t - D_h = 2 F (((1 - b/L)^2 - (1 - a/L)^2) / k_h + ((b/L)^2 - (a/L)^2) / k_t)

    Parameters
    ----------
    force_n : Radial force F of the skim. [N]
    span_mm : Distance L between the points of the two centres. [mm]
    first_station_mm : Distance a of the headstock collar from the headstock centre. [mm]
    second_station_mm : Distance b of the tailstock collar. [mm]
    headstock_n_per_mm : Stiffness k_h of the headstock centre. [N/mm]
    tailstock_n_per_mm : Stiffness k_t of the tailstock centre. [N/mm]

    Returns
    -------
    Diameter of the tailstock collar less that of the headstock collar; it looks like a tailstock out of line. [mm]

    Valid for
    ---------
    As `centre_give`; a < b.

    Source
    ------
    Lever on two springs, derived.

    >>> round(difference_from_centres(10, 300, 30, 270, 50000, 10000), 6)
    0.00128
    """
    in_order(first_station_mm, second_station_mm)
    near, far = (
        centre_give(force_n, span_mm, station, station, headstock_n_per_mm, tailstock_n_per_mm)
        for station in (first_station_mm, second_station_mm)
    )
    return 2 * (far - near)


def skim_deflection(
    force_n: float,
    span_mm: float,
    first_station_mm: float,
    second_station_mm: float,
    modulus_mpa: float,
    diameter_mm: float,
    headstock_n_per_mm: float = RIGID_N_PER_MM,
    tailstock_n_per_mm: float = RIGID_N_PER_MM,
) -> SkimDeflection:
    """How far bar and centres together give under the skim of each collar.

    y = F a^2 (L - a)^2 / (3 E I L) + F ((1 - a/L)^2 / k_h + (a/L)^2 / k_t), the same with b; D_t - D_h = 2 (y_b - y_a)

    Parameters
    ----------
    force_n : Radial force F of the skim, the same at either collar. [N]
    span_mm : Distance L between the points of the two centres. [mm]
    first_station_mm : Distance a of the headstock collar from the headstock centre. [mm]
    second_station_mm : Distance b of the tailstock collar. [mm]
    modulus_mpa : Modulus of elasticity E of the bar. [MPa]
    diameter_mm : Diameter d of the bar. [mm]
    headstock_n_per_mm : Stiffness k_h of the headstock centre, rigid when left out. [N/mm]
    tailstock_n_per_mm : Stiffness k_t of the tailstock centre, rigid when left out. [N/mm]

    Returns
    -------
    Deflection at the headstock collar, at the tailstock collar (radii), and the difference of their diameters. [mm]

    Valid for
    ---------
    As `deflection_between_centres` and `centre_give`; a < b; the first cut, before spring passes.

    Source
    ------
    Standard beam on two supports and lever on two springs, derived.

    >>> [round(value, 6) for value in skim_deflection(10, 300, 30, 270, 205000, 25, 50000, 10000)]
    [0.000357, 0.000997, 0.00128]
    """
    in_order(first_station_mm, second_station_mm)
    near, far = (
        deflection_between_centres(force_n, span_mm, station, modulus_mpa, diameter_mm)
        + centre_give(force_n, span_mm, station, station, headstock_n_per_mm, tailstock_n_per_mm)
        for station in (first_station_mm, second_station_mm)
    )
    return SkimDeflection(near, far, 2 * (far - near))


def pull_stiffness(pull_force_n: float, give_mm: float) -> float:
    """Stiffness found at a collar by a spring balance and an indicator.

    k = F / y

    Parameters
    ----------
    pull_force_n : Force F of the pull, across the bed at the collar. [N]
    give_mm : Movement y that the indicator shows there, a radius. [mm]

    Returns
    -------
    Stiffness k at that collar: bar, centre and what carries them, together. [N/mm]

    Valid for
    ---------
    Both more than 0; spindle stopped and isolated, the indicator comes back to 0 when the pull ends.

    Source
    ------
    Definition of a stiffness.

    >>> pull_stiffness(50, 0.004)
    12500.0
    """
    positive(pull_force_n, "force of the pull", "N")
    positive(give_mm, "give under the pull", "mm")
    return pull_force_n / give_mm


def pull_correction(
    cutting_force_n: float, pull_force_n: float, headstock_give_mm: float, tailstock_give_mm: float
) -> float:
    """Part of the measured difference of the collars that comes from softness, found by a pull test.

    c = 2 F (y_t - y_h) / F_pull

    Parameters
    ----------
    cutting_force_n : Radial force F of the skim. [N]
    pull_force_n : Force F_pull of the pull, the same at each collar. [N]
    headstock_give_mm : Movement y_h of the headstock collar under the pull, a radius. [mm]
    tailstock_give_mm : Movement y_t of the tailstock collar under the pull, a radius. [mm]

    Returns
    -------
    Difference c of diameters, tailstock less headstock, to take away from the measured one. [mm]

    Valid for
    ---------
    Gives 0 or more, the pull more than 0 and at least as strong as the cut (beyond it nobody looked).

    Source
    ------
    Proportion, derived.

    >>> round(pull_correction(10, 50, 0.001, 0.004), 6)
    0.0012
    """
    positive(pull_force_n, "force of the pull", "N")
    between(cutting_force_n, 0, pull_force_n, "radial force of the skim", "N")
    at_least(headstock_give_mm, 0, "give of the headstock collar", "mm")
    at_least(tailstock_give_mm, 0, "give of the tailstock collar", "mm")
    return 2 * cutting_force_n * (tailstock_give_mm - headstock_give_mm) / pull_force_n
