"""Sizes of a cast blank for a collar: pattern and feeder.

These are first sizes for a trained founder to judge. Melting and pouring are outside: molten metal is work for people
trained in it, in a place made for it, by local rules. Round bar does the same job without any of it.
"""

from math import asin, pi, radians, sin, sqrt, tan
from typing import NamedTuple

from tailtrue.calc.validity import OutOfRange, at_least, between, positive

_MOST_CONTRACTION = 0.03
_MOST_DRAFT_DEG = 5.0
_FEEDER_HEIGHTS = (1.0, 1.5)  # in diameters; the shapes for which the rules are used
_MOST_TIME_RATIO = 2.0


class CastBlank(NamedTuple):
    """A round blank as cast, tapered by the draft."""

    small_diameter_mm: float
    large_diameter_mm: float
    height_mm: float


def draft_taper(height_mm: float, draft_deg: float) -> float:
    """Difference of diameters that the draft makes over a height, or over the length that jaws hold.

    dD = 2 h tan(theta)

    Parameters
    ----------
    height_mm : Height h of the wall. [mm]
    draft_deg : Draft theta of one side. [deg]

    Returns
    -------
    Diameter at the large end less that at the small end. [mm]

    Valid for
    ---------
    Height more than 0, draft 0 to 5 degrees.

    Source
    ------
    Geometry.

    >>> round(draft_taper(41, 2), 2)
    2.86
    """
    positive(height_mm, "height", "mm")
    between(draft_deg, 0, _MOST_DRAFT_DEG, "draft", "degrees")
    return 2 * height_mm * tan(radians(draft_deg))


def cast_blank(
    finished_diameter_mm: float, finished_width_mm: float, allowance_mm: float, top_extra_mm: float, draft_deg: float
) -> CastBlank:
    """Sizes as cast of a solid round blank that holds a finished collar.

    d = D_f + 2 a, h = W_f + 2 a + t, D = d + 2 h tan(theta)

    Parameters
    ----------
    finished_diameter_mm : Diameter D_f of the finished collar. [mm]
    finished_width_mm : Width W_f of the finished collar. [mm]
    allowance_mm : Metal a left for machining on each surface. [mm]
    top_extra_mm : More metal t on the face that is on top when poured, where dross gathers. [mm]
    draft_deg : Draft theta of one side. [deg]

    Returns
    -------
    Small diameter d, large diameter D, height h. [mm]

    Valid for
    ---------
    Diameter, width and allowance more than 0, extra metal 0 or more, draft 0 to 5 degrees; cast solid, bored later.

    Source
    ------
    Geometry; the order of allowances is common practice.

    >>> [round(size, 2) for size in cast_blank(75, 35, 3, 0, 2)]
    [81, 83.86, 41]
    """
    positive(finished_diameter_mm, "finished diameter", "mm")
    positive(finished_width_mm, "finished width", "mm")
    positive(allowance_mm, "allowance for machining", "mm")
    at_least(top_extra_mm, 0, "extra metal on the top face", "mm")
    small = finished_diameter_mm + 2 * allowance_mm
    height = finished_width_mm + 2 * allowance_mm + top_extra_mm
    return CastBlank(small, small + draft_taper(height, draft_deg), height)


def pattern_size(casting_mm: float, contraction: float) -> float:
    """Size of the pattern for a size of the casting.

    p = c (1 + s)

    Parameters
    ----------
    casting_mm : Size c of the casting, cold. [mm]
    contraction : Contraction s of the metal as a share of its length. [1]

    Returns
    -------
    Size p of the pattern. [mm]

    Valid for
    ---------
    Size more than 0, contraction 0 to 0.03; sources differ by half of what they say, which machining takes off.

    Source
    ------
    Dooley, Applied Science for Metal Workers, ch. XXXI (a rule that is longer by the contraction).

    >>> round(pattern_size(81, 0.013), 2)
    82.05
    """
    positive(casting_mm, "size of the casting", "mm")
    between(contraction, 0, _MOST_CONTRACTION, "contraction")
    return casting_mm * (1 + contraction)


def blank_volume(small_diameter_mm: float, large_diameter_mm: float, height_mm: float) -> float:
    """Volume of a round blank with draft.

    V = pi h (d^2 + d D + D^2) / 12

    Parameters
    ----------
    small_diameter_mm : Small diameter d. [mm]
    large_diameter_mm : Large diameter D. [mm]
    height_mm : Height h. [mm]

    Returns
    -------
    Volume V. [mm3]

    Valid for
    ---------
    0 < d <= D, height more than 0.

    Source
    ------
    Geometry of the cut cone.

    >>> round(blank_volume(81, 83.86, 41) / 1000, 1)
    218.8
    """
    _blank_fits(small_diameter_mm, large_diameter_mm, height_mm)
    small, large = small_diameter_mm, large_diameter_mm
    return pi * height_mm * (small**2 + small * large + large**2) / 12


def blank_surface(small_diameter_mm: float, large_diameter_mm: float, height_mm: float) -> float:
    """Whole surface of a round blank with draft, both faces with it.

    A = pi (d^2 + D^2) / 4 + pi (d + D) / 2 sqrt(h^2 + (D - d)^2 / 4)

    Parameters
    ----------
    small_diameter_mm : Small diameter d. [mm]
    large_diameter_mm : Large diameter D. [mm]
    height_mm : Height h. [mm]

    Returns
    -------
    Surface A. [mm2]

    Valid for
    ---------
    0 < d <= D, height more than 0.

    Source
    ------
    Geometry of the cut cone.

    >>> round(blank_surface(81, 83.86, 41) / 100, 1)
    213.0
    """
    _blank_fits(small_diameter_mm, large_diameter_mm, height_mm)
    small, large = small_diameter_mm, large_diameter_mm
    slant = sqrt(height_mm**2 + ((large - small) / 2) ** 2)
    return pi * (small**2 + large**2) / 4 + pi * (small + large) / 2 * slant


def modulus(volume_mm3: float, cooling_surface_mm2: float) -> float:
    """Modulus of a casting or feeder: the longer it stays liquid, the larger it is.

    M = V / A

    Parameters
    ----------
    volume_mm3 : Volume V. [mm3]
    cooling_surface_mm2 : Surface A that gives off heat, without faces shared by casting and feeder. [mm2]

    Returns
    -------
    Modulus M. [mm]

    Valid for
    ---------
    Both more than 0; chunky shapes in one kind of sand, nothing that chills or insulates.

    Source
    ------
    Chvorinov's rule, as restated in an article on risers.

    >>> round(modulus(218_800, 21_300), 2)
    10.27
    """
    positive(volume_mm3, "volume", "mm3")
    positive(cooling_surface_mm2, "cooling surface", "mm2")
    return volume_mm3 / cooling_surface_mm2


def modulus_factor(time_ratio: float) -> float:
    """How much larger the modulus of a feeder is than that of the casting it outlasts.

    k = sqrt(t_f / t_c)

    Parameters
    ----------
    time_ratio : Time t_f in which the feeder turns solid, in times t_c of the casting. [1]

    Returns
    -------
    Factor k of the moduli. [1]

    Valid for
    ---------
    Ratio 1 to 2, the same sand around both.

    Source
    ------
    Chvorinov's rule, as restated in an article on risers; 1.44 in time, 1.2 in modulus, is usual (from memory).

    >>> round(modulus_factor(1.44), 6)
    1.2
    """
    between(time_ratio, 1, _MOST_TIME_RATIO, "ratio of the times")
    return sqrt(time_ratio)


def side_feeder_diameter(casting_modulus_mm: float, factor: float, height_ratio: float) -> float:
    """Diameter of a round feeder beside the casting; all its faces give off heat.

    D = k M (4 r + 2) / r, H = r D

    Parameters
    ----------
    casting_modulus_mm : Modulus M of the casting. [mm]
    factor : Factor k of the moduli. [1]
    height_ratio : Height of the feeder in diameters, r. [1]

    Returns
    -------
    Diameter D of the feeder. [mm]

    Valid for
    ---------
    Modulus more than 0, factor at least 1, height 1 to 1.5 diameters. A first size for a trained founder.

    Source
    ------
    Geometry with Chvorinov's rule; the same for two published problems on feeders.

    >>> round(side_feeder_diameter(10.275, 1.2, 1), 1)
    74.0
    """
    positive(casting_modulus_mm, "modulus of the casting", "mm")
    at_least(factor, 1, "factor of the moduli")
    between(height_ratio, *_FEEDER_HEIGHTS, "height of the feeder in diameters")
    return factor * casting_modulus_mm * (4 * height_ratio + 2) / height_ratio


def top_feeder_diameter(
    casting_volume_mm3: float, casting_surface_mm2: float, face_diameter_mm: float, factor: float, height_ratio: float
) -> float:
    """Diameter of a round feeder on the casting, the face shared by both giving off no heat.

    D (A - pi D^2 / 4) = k V (4 r + 1) / r, H = r D

    Parameters
    ----------
    casting_volume_mm3 : Volume V of the casting. [mm3]
    casting_surface_mm2 : Whole surface A of the casting. [mm2]
    face_diameter_mm : Diameter of the face on which the feeder stands. [mm]
    factor : Factor k of the moduli. [1]
    height_ratio : Height of the feeder in diameters, r. [1]

    Returns
    -------
    Diameter D of the feeder, the smallest that serves. [mm]

    Valid for
    ---------
    Sizes more than 0, factor at least 1, height 1 to 1.5 diameters, feeder not wider than the face. A first size for a
    trained founder.

    Source
    ------
    Geometry with Chvorinov's rule, derived.

    >>> round(top_feeder_diameter(218_800, 21_300, 83.86, 1.2, 1), 1)
    81.9
    """
    positive(casting_volume_mm3, "volume of the casting", "mm3")
    positive(casting_surface_mm2, "surface of the casting", "mm2")
    positive(face_diameter_mm, "diameter of the face", "mm")
    at_least(factor, 1, "factor of the moduli")
    between(height_ratio, *_FEEDER_HEIGHTS, "height of the feeder in diameters")
    # With D = 2 s sin(u) the cubic D^3 - 3 s^2 D + 2 s^3 sin(3 u) = 0 is solved by an angle.
    scale = sqrt(4 * casting_surface_mm2 / (3 * pi))
    needed = 4 / pi * factor * casting_volume_mm3 * (4 * height_ratio + 1) / height_ratio
    sine = needed / (2 * scale**3)
    diameter = 2 * scale * sin(asin(sine) / 3) if sine <= 1 else None
    if diameter is None or diameter > face_diameter_mm:
        raise OutOfRange(
            f"no feeder that fits the face of {face_diameter_mm:g} mm stays liquid long enough; "
            "a taller feeder, one at the side, or a plain stick whose top is sawn off helps"
        )
    return diameter


def feeder_volume_least(casting_volume_mm3: float, shrinkage: float, efficiency: float) -> float:
    """Least volume of a feeder that has metal enough to give.

    e V_f = b (V_c + V_f)

    Parameters
    ----------
    casting_volume_mm3 : Volume V_c of the casting. [mm3]
    shrinkage : Shrinkage b of the metal while it cools and turns solid, as a share of volume. [1]
    efficiency : Share e of its metal that the feeder can give. [1]

    Returns
    -------
    Least volume V_f of the feeder. [mm3]

    Valid for
    ---------
    Volume more than 0, 0 < b < e <= 1; feeder open to the sand.

    Source
    ------
    Balance of volumes; the usual shares (efficiency 0.14, shrinkage of aluminium 0.06) are from memory.

    >>> round(feeder_volume_least(218_800, 0.06, 0.14) / 1000)
    164
    """
    positive(casting_volume_mm3, "volume of the casting", "mm3")
    positive(shrinkage, "shrinkage")
    between(efficiency, 0, 1, "efficiency of the feeder")
    positive(efficiency - shrinkage, "efficiency of the feeder less the shrinkage")
    return shrinkage * casting_volume_mm3 / (efficiency - shrinkage)


def stick_height(blank_height_mm: float, top_share: float) -> float:
    """Height of a plain cast stick whose top is the feeder and is sawn off.

    H = h / (1 - q)

    Parameters
    ----------
    blank_height_mm : Height h of the blank that is to be kept. [mm]
    top_share : Share q of the stick that is sawn off at the top. [1]

    Returns
    -------
    Height H of the stick. [mm]

    Valid for
    ---------
    Height more than 0, share 0.4 to 0.5.

    Source
    ------
    Common practice: 1.7 to 2 times the height that is needed.

    >>> round(stick_height(41, 0.4), 1)
    68.3
    """
    positive(blank_height_mm, "height of the blank", "mm")
    between(top_share, 0.4, 0.5, "share sawn off at the top")
    return blank_height_mm / (1 - top_share)


def _blank_fits(small_diameter_mm: float, large_diameter_mm: float, height_mm: float) -> None:
    positive(small_diameter_mm, "small diameter", "mm")
    at_least(large_diameter_mm, small_diameter_mm, "large diameter", "mm")
    positive(height_mm, "height", "mm")
