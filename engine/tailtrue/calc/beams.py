"""The bar as a beam: stiffness, sag, mass and the speed at which it whirls."""

from math import pi, sqrt

from tailtrue.calc.validity import OutOfRange, at_least, between, positive

GRAVITY_M_S2 = 9.80665
# Shear is left out of every formula here. At these lengths it would add about a tenth; a beam held at one end
# bends like half a beam of twice its length on two supports, so its limit is half as long.
_LEAST_SPAN_IN_DIAMETERS = 5.0
LEAST_OVERHANG_IN_DIAMETERS = 2.5
# Below this a bar held at one end is no beam any more; nothing in this trade stands out so little.
_LEAST_STUB_IN_DIAMETERS = 0.5
_ROUND_IN_SHEAR = 10 / 9  # strain energy of a round section in shear, over that of even shear; books print 1.11
_LEAST_RIGIDITY_SHARE = 1 / 3  # G = E / (2 (1 + nu)), and no metal has nu above one half
_MOST_DEFLECTION_SHARE = 0.1  # straight-beam theory is for small deflections
_FIRST_ROOT_FREE_END = 1.8751040687  # of cos x cosh x = -1


def second_moment(diameter_mm: float) -> float:
    """Second moment of area of a solid round section.

    I = pi d^4 / 64

    Parameters
    ----------
    diameter_mm : Diameter d. [mm]

    Returns
    -------
    Second moment of area I about a diameter. [mm4]

    Valid for
    ---------
    Diameter more than 0; solid and round.

    Source
    ------
    Geometry.

    >>> round(second_moment(25), 1)
    19174.8
    """
    positive(diameter_mm, "diameter", "mm")
    return pi * diameter_mm**4 / 64


def deflection_between_centres(
    force_n: float, span_mm: float, station_mm: float, modulus_mpa: float, diameter_mm: float
) -> float:
    """Deflection of a bar between centres, under a force and at the place of that force.

    y = F a^2 (L - a)^2 / (3 E I L)

    Parameters
    ----------
    force_n : Radial force F. [N]
    span_mm : Distance L between the two points of support. [mm]
    station_mm : Distance a of the force from one of them. [mm]
    modulus_mpa : Modulus of elasticity E. [MPa]
    diameter_mm : Diameter d of the bar. [mm]

    Returns
    -------
    Deflection y, a radius: the diameter cut there changes by twice this. [mm]

    Valid for
    ---------
    Span at least 5 diameters, station on the span, deflection below a tenth of the span. Centres are taken
    as rigid, collars as adding no stiffness.

    Source
    ------
    Standard beam on two supports (any text on strength of materials; memory).

    >>> round(deflection_between_centres(10, 300, 30, 205000, 25), 7)
    0.0001855
    """
    at_least(force_n, 0, "force", "N")
    positive(modulus_mpa, "modulus of elasticity", "MPa")
    _slender(span_mm, diameter_mm, _LEAST_SPAN_IN_DIAMETERS, "span")
    between(station_mm, 0, span_mm, "station", "mm")
    stiffness = 3 * modulus_mpa * second_moment(diameter_mm) * span_mm
    return _small(force_n * station_mm**2 * (span_mm - station_mm) ** 2 / stiffness, span_mm)


def deflection_midspan(force_n: float, span_mm: float, modulus_mpa: float, diameter_mm: float) -> float:
    """Deflection in the middle of a bar between centres, the force in the middle too.

    y = F L^3 / (48 E I)

    Parameters
    ----------
    force_n : Radial force F. [N]
    span_mm : Distance L between the two points of support. [mm]
    modulus_mpa : Modulus of elasticity E. [MPa]
    diameter_mm : Diameter d of the bar. [mm]

    Returns
    -------
    Deflection y, a radius. [mm]

    Valid for
    ---------
    As `deflection_between_centres`.

    Source
    ------
    As `deflection_between_centres`.

    >>> round(deflection_midspan(20, 500, 207000, 25), 5)
    0.01312
    """
    return deflection_between_centres(force_n, span_mm, span_mm / 2, modulus_mpa, diameter_mm)


def deflection_cantilever(force_n: float, length_mm: float, modulus_mpa: float, diameter_mm: float) -> float:
    """Deflection of the free end of a bar held at the other end.

    y = F L^3 / (3 E I)

    Parameters
    ----------
    force_n : Radial force F at the free end. [N]
    length_mm : Free length L. [mm]
    modulus_mpa : Modulus of elasticity E. [MPa]
    diameter_mm : Diameter d of the bar. [mm]

    Returns
    -------
    Deflection y of the free end, a radius. [mm]

    Valid for
    ---------
    Free length at least 2.5 diameters, deflection below a tenth of it, the held end rigid (a chuck is not).

    Source
    ------
    Magazine article on the deflection of boring bars (2019), formula and example.

    >>> round(deflection_cantilever(10, 127, 205000, 31.75), 6)
    0.000668
    """
    at_least(force_n, 0, "force", "N")
    positive(modulus_mpa, "modulus of elasticity", "MPa")
    _slender(length_mm, diameter_mm, LEAST_OVERHANG_IN_DIAMETERS, "free length")
    return _small(force_n * length_mm**3 / (3 * modulus_mpa * second_moment(diameter_mm)), length_mm)


def greatest_deflection_cantilever(force_n: float, length_mm: float, modulus_mpa: float, diameter_mm: float) -> float:
    """Most that the free end of a stout bar yields, held at the other end: bending and shear together.

    y = F L^3 / (3 E I) + (10 / 9) F L / (G A), G = E / 3

    Parameters
    ----------
    force_n : Radial force F at the free end. [N]
    length_mm : Free length L. [mm]
    modulus_mpa : Modulus of elasticity E; the modulus of rigidity G is taken as low as that of any metal can be. [MPa]
    diameter_mm : Diameter d of the bar. [mm]

    Returns
    -------
    Deflection y of the free end, a radius, from above. [mm]

    Valid for
    ---------
    Free length at least 0.5 diameter, deflection below a tenth of it, solid and round, the held end rigid (a chuck is not).

    Source
    ------
    Shigley's Mechanical Engineering Design, 9th ed., sec. 4-8 and table 4-1 (shear, factor of a round section; memory).

    >>> round(greatest_deflection_cantilever(10, 60, 205000, 50), 7)
    1.64e-05
    """
    at_least(force_n, 0, "force", "N")
    positive(modulus_mpa, "modulus of elasticity", "MPa")
    _slender(length_mm, diameter_mm, _LEAST_STUB_IN_DIAMETERS, "free length")
    bending = force_n * length_mm**3 / (3 * modulus_mpa * second_moment(diameter_mm))
    area = pi * diameter_mm**2 / 4
    return _small(bending + _ROUND_IN_SHEAR * force_n * length_mm / (_LEAST_RIGIDITY_SHARE * modulus_mpa * area), length_mm)


def self_weight_sag(diameter_mm: float, span_mm: float, modulus_mpa: float, density_kg_m3: float) -> float:
    """Sag in the middle of a bare bar on two supports under its own weight.

    s = 5 q L^4 / (384 E I), q = rho g pi d^2 / 4

    Parameters
    ----------
    diameter_mm : Diameter d of the bar. [mm]
    span_mm : Distance L between the supports. [mm]
    modulus_mpa : Modulus of elasticity E. [MPa]
    density_kg_m3 : Density rho. [kg/m3]

    Returns
    -------
    Sag s, downward; it leaves the diameters alone and moves an indicator on top of the bar. [mm]

    Valid for
    ---------
    Span at least 5 diameters, sag below a tenth of it.

    Source
    ------
    Standard beam on two supports (any text on strength of materials; memory).

    >>> round(self_weight_sag(25, 500, 207000, 7850), 5)
    0.00775
    """
    positive(modulus_mpa, "modulus of elasticity", "MPa")
    _slender(span_mm, diameter_mm, _LEAST_SPAN_IN_DIAMETERS, "span")
    load_n_mm = mass_cylinder(diameter_mm, 1, density_kg_m3) * GRAVITY_M_S2
    return _small(5 * load_n_mm * span_mm**4 / (384 * modulus_mpa * second_moment(diameter_mm)), span_mm)


def self_weight_stress(diameter_mm: float, span_mm: float, density_kg_m3: float) -> float:
    """Greatest bending stress in a bar that lies on two supports under its own weight.

    s = M / Z = rho g L^2 / d, M = q L^2 / 8, Z = pi d^3 / 32, q = rho g pi d^2 / 4

    Parameters
    ----------
    diameter_mm : Diameter d of the bar. [mm]
    span_mm : Distance L between the supports. [mm]
    density_kg_m3 : Density rho. [kg/m3]

    Returns
    -------
    Stress s in the outermost metal, half way; far below the yield stress a bar that lies so takes no set. [MPa]

    Valid for
    ---------
    Span at least 5 diameters; plain solid bar.

    Source
    ------
    Standard beam on two supports (any text on strength of materials; memory).

    >>> round(self_weight_stress(25, 300, 7850), 6)
    0.277136
    """
    _slender(span_mm, diameter_mm, _LEAST_SPAN_IN_DIAMETERS, "span")
    load_n_mm = mass_cylinder(diameter_mm, 1, density_kg_m3) * GRAVITY_M_S2
    return load_n_mm * span_mm**2 / 8 * (diameter_mm / 2) / second_moment(diameter_mm)


def mass_cylinder(diameter_mm: float, length_mm: float, density_kg_m3: float, bore_mm: float = 0.0) -> float:
    """Mass of a bar, disc or ring.

    m = rho pi (d^2 - b^2) L / 4

    Parameters
    ----------
    diameter_mm : Outside diameter d. [mm]
    length_mm : Length or width L. [mm]
    density_kg_m3 : Density rho. [kg/m3]
    bore_mm : Diameter b of a hole right through, 0 for none. [mm]

    Returns
    -------
    Mass m. [kg]

    Valid for
    ---------
    Diameter, length and density more than 0; bore from 0 to the diameter.

    Source
    ------
    Geometry.

    >>> round(mass_cylinder(25, 500, 7850), 3)
    1.927
    """
    positive(diameter_mm, "diameter", "mm")
    positive(length_mm, "length", "mm")
    positive(density_kg_m3, "density", "kg/m3")
    between(bore_mm, 0, diameter_mm, "bore", "mm")
    return density_kg_m3 * pi * (diameter_mm**2 - bore_mm**2) * length_mm / 4 * 1e-9


def whirl_speed_cantilever(diameter_mm: float, length_mm: float, modulus_mpa: float, density_kg_m3: float) -> float:
    """Lowest speed at which a bar held at one end whirls, as when it stands out behind the headstock.

    n = 60 / (2 pi) (1.8751 / L)^2 (d / 4) sqrt(E / rho)

    Parameters
    ----------
    diameter_mm : Diameter d of the bar. [mm]
    length_mm : Free length L. [mm]
    modulus_mpa : Modulus of elasticity E. [MPa]
    density_kg_m3 : Density rho. [kg/m3]

    Returns
    -------
    Critical speed n; a safe speed is a fraction of it. [1/min]

    Valid for
    ---------
    Free length at least 2.5 diameters, plain solid bar, held end rigid (a loose one whirls sooner).

    Source
    ------
    Euler beam theory, derived.

    >>> round(whirl_speed_cantilever(12, 900, 206000, 7850))
    637
    """
    _slender(length_mm, diameter_mm, LEAST_OVERHANG_IN_DIAMETERS, "free length")
    return _whirl(_FIRST_ROOT_FREE_END, diameter_mm, length_mm, modulus_mpa, density_kg_m3)


def whirl_speed_between_centres(diameter_mm: float, span_mm: float, modulus_mpa: float, density_kg_m3: float) -> float:
    """Lowest speed at which a bare bar between centres whirls.

    n = 60 / (2 pi) (pi / L)^2 (d / 4) sqrt(E / rho)

    Parameters
    ----------
    diameter_mm : Diameter d of the bar. [mm]
    span_mm : Distance L between the two points of support. [mm]
    modulus_mpa : Modulus of elasticity E. [MPa]
    density_kg_m3 : Density rho. [kg/m3]

    Returns
    -------
    Critical speed n; collars and soft centres lower it. [1/min]

    Valid for
    ---------
    Span at least 5 diameters, plain solid bar, rigid centres.

    Source
    ------
    Shigley's Mechanical Engineering Design, 9th ed., sec. 7-6 (simply supported shaft of even section).

    >>> round(whirl_speed_between_centres(25, 500, 207000, 7850))
    12099
    """
    _slender(span_mm, diameter_mm, _LEAST_SPAN_IN_DIAMETERS, "span")
    return _whirl(pi, diameter_mm, span_mm, modulus_mpa, density_kg_m3)


def _whirl(root: float, diameter_mm: float, length_mm: float, modulus_mpa: float, density: float) -> float:
    positive(modulus_mpa, "modulus of elasticity", "MPa")
    positive(density, "density", "kg/m3")
    sound_mm_s = sqrt(modulus_mpa * 1e6 / density) * 1000
    return 60 / (2 * pi) * (root / length_mm) ** 2 * diameter_mm / 4 * sound_mm_s


def _slender(length_mm: float, diameter_mm: float, least: float, name: str) -> None:
    positive(length_mm, name, "mm")
    positive(diameter_mm, "diameter", "mm")
    at_least(length_mm / diameter_mm, least, f"{name} in diameters")


def _small(deflection_mm: float, length_mm: float) -> float:
    if deflection_mm > _MOST_DEFLECTION_SHARE * length_mm:
        raise OutOfRange(
            f"the bar would bend by {deflection_mm:g} mm over {length_mm:g} mm; "
            "the formula holds for a bend below a tenth of the length"
        )
    return deflection_mm
