"""The band of spindle speeds that a cut may have, and when to go a step up or down in it."""

from collections.abc import Sequence
from typing import NamedTuple

from tailtrue.calc.cutting import spindle_speed, surface_speed
from tailtrue.calc.validity import OutOfRange, at_least, between, finite, positive


class SpeedBand(NamedTuple):
    """Spindle speeds for a band of surface speeds."""

    low_per_min: float
    middle_per_min: float
    high_per_min: float


def speed_band(low_m_min: float, high_m_min: float, diameter_mm: float, factor: float = 1.0) -> SpeedBand:
    """Spindle speeds for a band of surface speeds at a diameter; the middle is what a light lathe aims at.

    n = 1000 k v / (pi D) for the ends, and their mean

    Parameters
    ----------
    low_m_min : Lower surface speed of the band. [m/min]
    high_m_min : Upper surface speed of the band. [m/min]
    diameter_mm : Diameter D where the tool cuts. [mm]
    factor : Factor k of the operation on the speed, as 0.5 for reaming against drilling. [1]

    Returns
    -------
    Lowest, middle and highest spindle speed. [1/min, 1/min, 1/min]

    Valid for
    ---------
    As `spindle_speed`, the upper speed no less than the lower, factor 0.1 to 1.5.

    Source
    ------
    `spindle_speed`; the middle of the band is common practice.

    >>> [round(speed, 1) for speed in speed_band(24, 33, 25)]
    [305.6, 362.9, 420.2]
    """
    positive(low_m_min, "lower surface speed", "m/min")
    at_least(high_m_min, low_m_min, "upper surface speed", "m/min")
    between(factor, 0.1, 1.5, "factor on the speed")
    low, high = (spindle_speed(speed * factor, diameter_mm) for speed in (low_m_min, high_m_min))
    return SpeedBand(low, (low + high) / 2, high)


def speed_by_head(surface_speed_m_min: float, diameter_mm: float) -> float:
    """Spindle speed by head, with pi taken as 3: four times the feet per minute over the inches.

    n = 1000 v / (3 D) = 4 V / D in ft/min and inches

    Parameters
    ----------
    surface_speed_m_min : Surface speed v. [m/min]
    diameter_mm : Diameter D where the tool cuts. [mm]

    Returns
    -------
    Spindle speed, 4.7 % above the true one: an estimate, never to be set against a hard limit. [1/min]

    Valid for
    ---------
    Both more than 0.

    Source
    ------
    Machine-shop course cards; US Army Ordnance subcourse OD1645 describes the cancelling.

    >>> round(speed_by_head(30.48, 25.4), 6)
    400.0
    """
    positive(surface_speed_m_min, "surface speed", "m/min")
    positive(diameter_mm, "diameter", "mm")
    return 1000 * surface_speed_m_min / (3 * diameter_mm)


def speed_by_head_metric(surface_speed_m_min: float, diameter_mm: float) -> float:
    """Spindle speed by head in metric measure.

    n = 320 v / D

    Parameters
    ----------
    surface_speed_m_min : Surface speed v. [m/min]
    diameter_mm : Diameter D where the tool cuts. [mm]

    Returns
    -------
    Spindle speed, 0.5 % above the true one: an estimate, never to be set against a hard limit. [1/min]

    Valid for
    ---------
    Both more than 0.

    Source
    ------
    Machine-shop course cards.

    >>> speed_by_head_metric(30, 25)
    384.0
    """
    positive(surface_speed_m_min, "surface speed", "m/min")
    positive(diameter_mm, "diameter", "mm")
    return 320 * surface_speed_m_min / diameter_mm


def step_up(
    available: Sequence[float],
    chosen_per_min: float,
    cap_per_min: float,
    diameter_mm: float,
    high_m_min: float,
    overrun: float,
) -> float:
    """Next higher speed of the lathe where cut and limits bear it, else the speed that was chosen.

    n' = next step, where n' <= cap and pi D n' / 1000 <= k v

    Parameters
    ----------
    available : The speeds of the lathe, in any order. [1/min]
    chosen_per_min : Speed that was chosen, one of them. [1/min]
    cap_per_min : Speed that must not be passed. [1/min]
    diameter_mm : Diameter D where the tool cuts. [mm]
    high_m_min : Upper surface speed v of the band. [m/min]
    overrun : Factor k by which it may be passed. [1]

    Returns
    -------
    Speed to set, never above the cap. [1/min]

    Valid for
    ---------
    All more than 0, overrun 1 to 1.1, the chosen speed one of the lathe and at or below the cap. Only for balanced,
    short, well-held work with carbide, in a soft metal or in a finishing cut: the caller judges that.

    Source
    ------
    Common practice.

    >>> step_up([70, 115, 190, 300, 460], 300, 1800, 25, 33, overrun=1.1)
    460
    """
    speeds = _steps(available, chosen_per_min)
    finite(cap_per_min, "speed limit", "1/min")
    positive(diameter_mm, "diameter", "mm")
    positive(high_m_min, "upper surface speed", "m/min")
    between(overrun, 1, 1.1, "overrun of the upper surface speed")
    if chosen_per_min > cap_per_min:
        raise OutOfRange(f"the chosen speed is {chosen_per_min:g} 1/min, above the limit of {cap_per_min:g} 1/min")
    higher = min((speed for speed in speeds if speed > chosen_per_min), default=chosen_per_min)
    fits = higher <= cap_per_min and surface_speed(higher, diameter_mm) <= overrun * high_m_min
    return higher if fits else chosen_per_min


def step_down(available: Sequence[float], chosen_per_min: float) -> float:
    """Next lower speed of the lathe, as for a broken cut, long overhang or unknown stock.

    n' = largest step < n

    Parameters
    ----------
    available : The speeds of the lathe, in any order. [1/min]
    chosen_per_min : Speed n that was chosen, one of them. [1/min]

    Returns
    -------
    Speed to set. [1/min]

    Valid for
    ---------
    All more than 0, the chosen speed one of the lathe; refused at the slowest, where the cut must change instead.

    Source
    ------
    Common practice.

    >>> step_down([70, 115, 190, 300, 460], 300)
    190
    """
    lower = [speed for speed in _steps(available, chosen_per_min) if speed < chosen_per_min]
    if not lower:
        raise OutOfRange(f"the lathe has no speed below {chosen_per_min:g} 1/min; a lighter cut or better holding is needed")
    return max(lower)


def _steps(available: Sequence[float], chosen: float) -> Sequence[float]:
    for speed in available:
        positive(speed, "speed of the lathe", "1/min")
    if chosen not in available:
        raise OutOfRange(f"the chosen speed is {chosen:g} 1/min, and the lathe has no such speed")
    return available
