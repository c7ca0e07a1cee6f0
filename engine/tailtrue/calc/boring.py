"""The boring bar as a beam held at one end."""

from tailtrue.calc.beams import deflection_cantilever
from tailtrue.calc.validity import positive


def overhang_ratio(overhang_mm: float, shank_mm: float) -> float:
    """Overhang of a boring bar, counted in its own diameters.

    ratio = L / d

    Parameters
    ----------
    overhang_mm : Length L standing out of the holder. [mm]
    shank_mm : Diameter d of the shank. [mm]

    Returns
    -------
    Overhang in diameters. [1]

    Valid for
    ---------
    Both more than 0.

    Source
    ------
    Definition.

    >>> overhang_ratio(48, 12)
    4.0
    """
    positive(overhang_mm, "overhang", "mm")
    positive(shank_mm, "shank", "mm")
    return overhang_mm / shank_mm


def boring_bar_deflection(force_n: float, overhang_mm: float, shank_mm: float, modulus_mpa: float) -> float:
    """Deflection of the tip of a round boring bar under a radial force.

    y = F L^3 / (3 E I), I = pi d^4 / 64

    Parameters
    ----------
    force_n : Radial force F at the tip. [N]
    overhang_mm : Length L standing out of the holder. [mm]
    shank_mm : Diameter d of the shank. [mm]
    modulus_mpa : Modulus of elasticity E of the shank. [MPa]

    Returns
    -------
    Deflection y of the tip, a radius: the bore changes by twice this. [mm]

    Valid for
    ---------
    As `deflection_cantilever`; the holder is taken as rigid, so a real bar gives more.

    Source
    ------
    Magazine article on the deflection of boring bars (2019), formula and example.

    >>> round(boring_bar_deflection(100, 48, 12, 206000), 5)
    0.01758
    """
    positive(shank_mm, "shank", "mm")
    return deflection_cantilever(force_n, overhang_mm, modulus_mpa, shank_mm)
