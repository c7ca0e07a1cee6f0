"""A third collar half-way between the other two: what it reads against their mean, and when that says something."""

from tailtrue.calc.validity import at_least, positive


def middle_from_mean(headstock_diameter_mm: float, middle_diameter_mm: float, tailstock_diameter_mm: float) -> float:
    """Diameter of a collar half-way between two others, less the mean of the two.

    w = D_m - (D_h + D_t) / 2

    Parameters
    ----------
    headstock_diameter_mm : Diameter D_h of the headstock collar. [mm]
    middle_diameter_mm : Diameter D_m of the collar in the middle. [mm]
    tailstock_diameter_mm : Diameter D_t of the tailstock collar. [mm]

    Returns
    -------
    Deviation w on the diameter, more than 0 when the middle is fat. [mm]

    Valid for
    ---------
    Diameters more than 0; the middle collar as far from the one as from the other, all three cut at one setting.

    Source
    ------
    Geometry, derived: a tailstock that is off makes a plain taper, whose middle is the mean of its ends.

    >>> round(middle_from_mean(69.842, 69.858, 69.866), 6)
    0.004
    """
    positive(headstock_diameter_mm, "diameter of the headstock collar", "mm")
    positive(middle_diameter_mm, "diameter of the collar in the middle", "mm")
    positive(tailstock_diameter_mm, "diameter of the tailstock collar", "mm")
    return middle_diameter_mm - (headstock_diameter_mm + tailstock_diameter_mm) / 2


def middle_allowance(doubt_mm: float, bending_mm: float) -> float:
    """Deviation of the middle collar, either way, up to which it says nothing of the bed.

    w_0 = u + c

    Parameters
    ----------
    doubt_mm : Doubt u of the deviation, from the reading. [mm]
    bending_mm : Bow c on the diameter that the bending of the bar under the cut can leave. [mm]

    Returns
    -------
    Deviation w_0, to either side. [mm]

    Valid for
    ---------
    Doubt and bending 0 or more; the bending is added in full, for it is not known how much the spring passes take.

    Source
    ------
    House rule after ISO 14253-1: what the doubt and a known influence explain is not told as a finding (derived).

    >>> round(middle_allowance(0.0035, 0.0026), 6)
    0.0061
    """
    at_least(doubt_mm, 0, "doubt of the deviation", "mm")
    at_least(bending_mm, 0, "bow from bending", "mm")
    return doubt_mm + bending_mm
