"""How heavy a part is for hands: the recommended weight of a lift, and what to say of a mass.

These are no limits of law; local rules, and what a person can lift that day, come first.
"""

from collections.abc import Sequence
from math import prod

from tailtrue.calc.validity import at_least, between, positive, up_to

_NEAREST_MM, _FARTHEST_MM = 250.0, 630.0  # hands from the ankles
_KNUCKLES_MM, _HIGHEST_MM = 750.0, 1750.0
_LEAST_TRAVEL_MM, _MOST_TRAVEL_MM = 250.0, 1750.0
_MOST_TWIST_DEG = 135.0


def recommended_weight(
    load_constant_kg: float,
    horizontal_mm: float,
    height_mm: float,
    travel_mm: float,
    twist_deg: float,
    coupling: float,
    frequency: float,
) -> float:
    """Weight that nearly all healthy people may lift so, with two hands.

    RWL = LC (25 / H) (1 - 0.003 |V - 75|) (0.82 + 4.5 / D) (1 - 0.0032 A) CM FM, lengths in cm

    Parameters
    ----------
    load_constant_kg : Weight LC for the best lift there is. [kg]
    horizontal_mm : Distance H of the hands from the line between the ankles; below 250 counts as 250. [mm]
    height_mm : Height V of the hands over the floor at the start. [mm]
    travel_mm : Height D through which it is lifted; below 250 counts as 250. [mm]
    twist_deg : Turn A of the trunk. [deg]
    coupling : Factor CM for the hold that the hands find. [1]
    frequency : Factor FM for how often. [1]

    Returns
    -------
    Recommended weight RWL. [kg]

    Valid for
    ---------
    H up to 630 mm, V up to 1750 mm, D up to 1750 mm, A up to 135 degrees, factors above 0 to 1; slow lifts by
    someone who stands well and has room.

    Source
    ------
    Applications Manual for the Revised NIOSH Lifting Equation, publication 94-110, rev. 2021; the factor for the turn of
    the trunk from memory.

    >>> round(recommended_weight(23, 500, 1100, 300, 45, 0.95, 1), 1)
    8.1
    """
    positive(load_constant_kg, "load constant", "kg")
    between(horizontal_mm, 0, _FARTHEST_MM, "distance of the hands", "mm")
    between(height_mm, 0, _HIGHEST_MM, "height of the hands", "mm")
    between(travel_mm, 0, _MOST_TRAVEL_MM, "height of the lift", "mm")
    between(twist_deg, 0, _MOST_TWIST_DEG, "turn of the trunk", "degrees")
    for factor, name in ((coupling, "factor of the hold"), (frequency, "factor of how often")):
        up_to(factor, 1, name)
    reach = _NEAREST_MM / max(horizontal_mm, _NEAREST_MM)
    level = 1 - 0.0003 * abs(height_mm - _KNUCKLES_MM)
    travel = 0.82 + 45 / max(travel_mm, _LEAST_TRAVEL_MM)
    twist = 1 - 0.0032 * twist_deg
    return load_constant_kg * reach * level * travel * twist * coupling * frequency


def lifting_index(mass_kg: float, recommended_kg: float) -> float:
    """How many times the recommended weight a part is.

    LI = m / RWL

    Parameters
    ----------
    mass_kg : Mass m of the part. [kg]
    recommended_kg : Recommended weight RWL of this lift. [kg]

    Returns
    -------
    Lifting index LI; above 1 the lift is to be made easier. [1]

    Valid for
    ---------
    Both more than 0.

    Source
    ------
    Applications Manual for the Revised NIOSH Lifting Equation, publication 94-110, rev. 2021.

    >>> round(lifting_index(17, 8.12), 1)
    2.1
    """
    positive(mass_kg, "mass", "kg")
    positive(recommended_kg, "recommended weight", "kg")
    return mass_kg / recommended_kg


def reduced_weight(weight_kg: float, reductions: Sequence[float]) -> float:
    """Guide weight for hands, made less for each thing that makes the lift worse.

    w = w_0 prod(1 - r_i)

    Parameters
    ----------
    weight_kg : Guide weight w_0 for a lift straight in front. [kg]
    reductions : Reductions r, each a share: for a turn of the trunk, for lifting often. [1]

    Returns
    -------
    Guide weight w. [kg]

    Valid for
    ---------
    Weight more than 0, each reduction from 0 to below 1.

    Source
    ------
    Guidance on manual handling of the British Health and Safety Executive (memory); the shares come from the rules.

    >>> round(reduced_weight(15, [0.1, 0.3]), 2)
    9.45
    """
    positive(weight_kg, "guide weight", "kg")
    for reduction in reductions:
        at_least(reduction, 0, "reduction")
        positive(1 - reduction, "what a reduction leaves")
    return weight_kg * prod(1 - reduction for reduction in reductions)


def lift_verdict(mass_kg: float, caution_above_kg: float, two_above_kg: float) -> str:
    """What to say of lifting a part into the lathe.

    alone: m <= m_c; caution: m <= m_2; help: beyond

    Parameters
    ----------
    mass_kg : Mass m of the part. [kg]
    caution_above_kg : Mass m_c above which care is asked for. [kg]
    two_above_kg : Mass m_2 above which a second person or a lifting aid is. [kg]

    Returns
    -------
    One of alone, caution, help. [1]

    Valid for
    ---------
    All more than 0, m_c <= m_2.

    Source
    ------
    Common practice; the limits come from the rules.

    >>> lift_verdict(9, 8, 16)
    'caution'
    """
    positive(mass_kg, "mass", "kg")
    positive(caution_above_kg, "mass for a caution", "kg")
    at_least(two_above_kg, caution_above_kg, "mass for a second person", "kg")
    if mass_kg <= caution_above_kg:
        return "alone"
    return "caution" if mass_kg <= two_above_kg else "help"
