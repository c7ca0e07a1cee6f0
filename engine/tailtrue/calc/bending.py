"""What the skim bends: the bar between centres, loaded anywhere, looked at anywhere.

A deflection moves the axis away from the tool, so it counts on the radius; an error of diameter is twice that and
has a name of its own. Stations are distances from the headstock centre.
"""

from collections.abc import Sequence
from math import pi, sqrt

from tailtrue.calc.beams import (
    GRAVITY_M_S2,
    deflection_between_centres,
    deflection_midspan,
    second_moment,
    self_weight_sag,
)
from tailtrue.calc.validity import OutOfRange, at_least, between, in_order, on_span, positive, up_to

_TO_THE_NEXT = "distance from one collar to the next"
_LEAST_SPAN_IN_DIAMETERS = 5.0  # as in beams, for a diameter that is a result here


def deflection_anywhere(
    force_n: float,
    span_mm: float,
    load_station_mm: float,
    look_station_mm: float,
    modulus_mpa: float,
    diameter_mm: float,
) -> float:
    """Deflection of a bar between centres at one place, under a force at another.

    y(x) = F b x (L^2 - b^2 - x^2) / (6 E I L) for x <= a, b = L - a; with a and x changed over beyond that

    Parameters
    ----------
    force_n : Radial force F. [N]
    span_mm : Distance L between the two points of support. [mm]
    load_station_mm : Distance a of the force from the headstock centre. [mm]
    look_station_mm : Distance x of the place looked at from the headstock centre. [mm]
    modulus_mpa : Modulus of elasticity E. [MPa]
    diameter_mm : Diameter d of the bar. [mm]

    Returns
    -------
    Deflection y, a radius. [mm]

    Valid for
    ---------
    Span at least 5 diameters, both places on the span; the same force in the middle would bend the bar by less
    than a tenth of the span. Centres are taken as rigid. Shear is left out: close to a centre it would add up to a
    quarter to a deflection that is small there.

    Source
    ------
    Standard beam on two supports (any text on strength of materials; memory).

    >>> round(deflection_anywhere(20, 500, 50, 250, 207000, 25), 6)
    0.003884
    """
    between(load_station_mm, 0, span_mm, "station of the force", "mm")
    between(look_station_mm, 0, span_mm, "station looked at", "mm")
    # By Maxwell the two places may change over, so the one nearer the headstock counts from there.
    x = min(load_station_mm, look_station_mm)
    b = span_mm - max(load_station_mm, look_station_mm)
    middle = deflection_midspan(force_n, span_mm, modulus_mpa, diameter_mm)
    return middle * 8 * b * x * (span_mm**2 - b**2 - x**2) / span_mm**4


def sag_with_collars(
    diameter_mm: float,
    span_mm: float,
    modulus_mpa: float,
    density_kg_m3: float,
    masses_kg: Sequence[float],
    stations_mm: Sequence[float],
    look_station_mm: float,
) -> float:
    """Sag of a bar between centres under its own weight and that of what sits on it.

    y(x) = s 16/5 (u - 2 u^3 + u^4) + sum of y_i(x), u = x / L, s = sag of the bare bar in the middle

    Parameters
    ----------
    diameter_mm : Diameter d of the bar. [mm]
    span_mm : Distance L between the supports. [mm]
    modulus_mpa : Modulus of elasticity E. [MPa]
    density_kg_m3 : Density rho of the bar, 0 to leave its own weight out. [kg/m3]
    masses_kg : Mass of each collar, none for a bare bar. [kg]
    stations_mm : Distance of each collar from the headstock centre. [mm]
    look_station_mm : Distance x of the place looked at. [mm]

    Returns
    -------
    Sag y, downward; it leaves the diameters alone and moves an indicator on top of the bar. [mm]

    Valid for
    ---------
    As `deflection_anywhere`; as many masses as stations, each more than 0, density 0 or more.

    Source
    ------
    Standard beam on two supports (any text on strength of materials; memory).

    >>> round(sag_with_collars(25, 500, 207000, 7850, [0.3711, 0.3711], [50, 450], 250), 4)
    0.0092
    """
    at_least(density_kg_m3, 0, "density", "kg/m3")
    between(look_station_mm, 0, span_mm, "station looked at", "mm")
    _as_many(masses_kg, stations_mm)
    u = look_station_mm / span_mm
    sag = 0.0
    if density_kg_m3 > 0:
        sag = self_weight_sag(diameter_mm, span_mm, modulus_mpa, density_kg_m3) * 3.2 * (u - 2 * u**3 + u**4)
    for mass, station in zip(masses_kg, stations_mm, strict=True):
        positive(mass, "mass of a collar", "kg")
        weight = mass * GRAVITY_M_S2
        sag += deflection_anywhere(weight, span_mm, station, look_station_mm, modulus_mpa, diameter_mm)
    return sag


def diameter_error(deflection_mm: float) -> float:
    """What a deflection away from the tool leaves on the diameter.

    e = 2 y

    Parameters
    ----------
    deflection_mm : Deflection y of the axis away from the tool, a radius. [mm]

    Returns
    -------
    Diameter left too large by e. [mm]

    Valid for
    ---------
    Deflection 0 or more.

    Source
    ------
    Geometry.

    >>> round(diameter_error(0.00143), 5)
    0.00286
    """
    at_least(deflection_mm, 0, "deflection", "mm")
    return 2 * deflection_mm


def difference_from_bending(
    force_n: float,
    span_mm: float,
    first_station_mm: float,
    second_station_mm: float,
    modulus_mpa: float,
    diameter_mm: float,
) -> float:
    """Difference of the collars from the bending of the bar alone, the same force at either.

    D_t - D_h = 2 (y(b) - y(a))

    Parameters
    ----------
    force_n : Radial force F of the skim. [N]
    span_mm : Distance L between the points of the two centres. [mm]
    first_station_mm : Distance a of the headstock collar from the headstock centre. [mm]
    second_station_mm : Distance b of the tailstock collar from the headstock centre. [mm]
    modulus_mpa : Modulus of elasticity E. [MPa]
    diameter_mm : Diameter d of the bar. [mm]

    Returns
    -------
    Diameter of the tailstock collar less that of the headstock collar; 0 when a = L - b. [mm]

    Valid for
    ---------
    As `deflection_between_centres`; a < b.

    Source
    ------
    Standard beam on two supports, derived.

    >>> round(difference_from_bending(10, 300, 30, 200, 205000, 25), 5)
    0.00189
    """
    in_order(first_station_mm, second_station_mm, _TO_THE_NEXT)
    near, far = (
        deflection_between_centres(force_n, span_mm, station, modulus_mpa, diameter_mm)
        for station in (first_station_mm, second_station_mm)
    )
    return 2 * (far - near)


def bow_from_bending(
    force_n: float,
    span_mm: float,
    first_station_mm: float,
    middle_station_mm: float,
    second_station_mm: float,
    modulus_mpa: float,
    diameter_mm: float,
) -> float:
    """How much larger bending leaves a third collar than the line through the other two.

    w = 2 (y(m) - y(a) - (y(b) - y(a)) (m - a) / (b - a))

    Parameters
    ----------
    force_n : Radial force F of the skim, the same at each collar. [N]
    span_mm : Distance L between the points of the two centres. [mm]
    first_station_mm : Distance a of the headstock collar from the headstock centre. [mm]
    middle_station_mm : Distance m of the third collar. [mm]
    second_station_mm : Distance b of the tailstock collar. [mm]
    modulus_mpa : Modulus of elasticity E. [MPa]
    diameter_mm : Diameter d of the bar. [mm]

    Returns
    -------
    Bow w on the diameter, before spring passes. [mm]

    Valid for
    ---------
    As `deflection_between_centres`; a < m < b.

    Source
    ------
    Standard beam on two supports, derived.

    >>> round(bow_from_bending(10, 300, 30, 150, 270, 205000, 25), 6)
    0.002491
    """
    in_order(first_station_mm, middle_station_mm, _TO_THE_NEXT)
    in_order(middle_station_mm, second_station_mm, _TO_THE_NEXT)
    first, middle, second = (
        deflection_between_centres(force_n, span_mm, station, modulus_mpa, diameter_mm)
        for station in (first_station_mm, middle_station_mm, second_station_mm)
    )
    share = (middle_station_mm - first_station_mm) / (second_station_mm - first_station_mm)
    return 2 * (middle - first - (second - first) * share)


def largest_force(
    tolerance_mm: float, share: float, span_mm: float, station_mm: float, modulus_mpa: float, diameter_mm: float
) -> float:
    """Force under which bending takes no more than a share of a tolerance on diameter.

    F = s T / (2 y1), y1 = deflection under 1 N

    Parameters
    ----------
    tolerance_mm : Tolerance T on the diameter or on the difference of diameters. [mm]
    share : Share s of it that bending may take. [1]
    span_mm : Distance L between the points of the two centres. [mm]
    station_mm : Distance of the collar from the headstock centre. [mm]
    modulus_mpa : Modulus of elasticity E. [MPa]
    diameter_mm : Diameter d of the bar. [mm]

    Returns
    -------
    Largest radial force F at that collar. [N]

    Valid for
    ---------
    As `deflection_between_centres`; share above 0 to 1, the collar between the centres and not upon one.

    Source
    ------
    `deflection_between_centres` turned round.

    >>> round(largest_force(0.010, 0.1, 300, 150, 205000, 32.5168), 3)
    10.0
    """
    _part(tolerance_mm, share)
    _between_the_centres(span_mm, station_mm)
    each = deflection_between_centres(1, span_mm, station_mm, modulus_mpa, diameter_mm)
    force = share * tolerance_mm / diameter_error(each)
    deflection_between_centres(force, span_mm, station_mm, modulus_mpa, diameter_mm)  # refuses a bend that is not small
    return force


def least_diameter(
    force_n: float, tolerance_mm: float, share: float, span_mm: float, station_mm: float, modulus_mpa: float
) -> float:
    """Thinnest bar that bends by no more than a share of a tolerance on diameter.

    d = (128 F a^2 (L - a)^2 / (3 pi E L s T))^(1/4)

    Parameters
    ----------
    force_n : Radial force F at the collar. [N]
    tolerance_mm : Tolerance T on the diameter or on the difference of diameters. [mm]
    share : Share s of it that bending may take. [1]
    span_mm : Distance L between the points of the two centres. [mm]
    station_mm : Distance a of the collar from the headstock centre. [mm]
    modulus_mpa : Modulus of elasticity E. [MPa]

    Returns
    -------
    Least diameter d of the bar. [mm]

    Valid for
    ---------
    As `deflection_between_centres`, so no diameter above a fifth of the span comes out; force more than 0,
    share above 0 to 1.

    Source
    ------
    `deflection_between_centres` turned round.

    >>> round(least_diameter(10, 0.010, 0.1, 300, 150, 205000), 2)
    32.52
    """
    positive(force_n, "force", "N")
    _part(tolerance_mm, share)
    _between_the_centres(span_mm, station_mm)
    positive(modulus_mpa, "modulus of elasticity", "MPa")
    arms = station_mm * (span_mm - station_mm)
    diameter = sqrt(sqrt(128 * force_n * arms**2 / (3 * pi * modulus_mpa * span_mm * share * tolerance_mm)))
    if diameter > span_mm / _LEAST_SPAN_IN_DIAMETERS:
        raise OutOfRange(
            f"the bar would have to be {diameter:.3g} mm thick, more than a fifth of its span of {span_mm:g} mm; "
            "take a lighter cut or a shorter span"
        )
    return diameter


def buckling_load(diameter_mm: float, span_mm: float, modulus_mpa: float, yield_mpa: float) -> float:
    """Thrust of the tailstock at which a bar between centres buckles.

    P = A s_E where s_E <= s_y / 2, else P = A s_y (1 - s_y / (4 s_E)); s_E = pi^2 E I / (A L^2), A = pi d^2 / 4

    Parameters
    ----------
    diameter_mm : Diameter d of the bar. [mm]
    span_mm : Distance L between the points of the two centres. [mm]
    modulus_mpa : Modulus of elasticity E. [MPa]
    yield_mpa : Yield stress s_y of the bar. [MPa]

    Returns
    -------
    Axial force P, far above what a tailstock should ever push with. [N]

    Valid for
    ---------
    All more than 0; straight bar on points that let it turn, pushed along its axis. A slim bar gives way as an elastic
    column, a thicker one earlier than that, and a stubby one is crushed at its yield stress.

    Source
    ------
    Euler's column and Johnson's parabola (any text on machine design; memory).

    >>> round(buckling_load(20, 1000, 207000, 300)), round(buckling_load(25, 500, 207000, 450))
    (16046, 143046)
    """
    positive(span_mm, "span", "mm")
    positive(modulus_mpa, "modulus of elasticity", "MPa")
    positive(yield_mpa, "yield stress", "MPa")
    area = pi * diameter_mm**2 / 4
    elastic = pi**2 * modulus_mpa * second_moment(diameter_mm) / (area * span_mm**2)
    # Parts of a bar yield long before its mean stress does; from half of it on the elastic column promises too much.
    return area * (elastic if elastic <= yield_mpa / 2 else yield_mpa * (1 - yield_mpa / (4 * elastic)))


def _as_many(masses: Sequence[float], stations: Sequence[float]) -> None:
    if len(masses) != len(stations):
        raise OutOfRange(f"{len(masses)} masses are given for {len(stations)} stations; each mass needs one station")


def _part(tolerance_mm: float, share: float) -> None:
    positive(tolerance_mm, "tolerance", "mm")
    up_to(share, 1, "share of the tolerance")


def _between_the_centres(span_mm: float, station_mm: float) -> None:
    on_span(station_mm, span_mm)
    if station_mm in (0, span_mm):
        raise OutOfRange(f"the collar stands at {station_mm:g} mm, upon a centre, where the bar does not bend")
