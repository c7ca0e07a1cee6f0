"""What a joint carries, held against what a catch or a skim asks of it."""

from tailtrue.calc.joints import skim_torque
from tailtrue.calc.validity import at_least, between, positive


def catch_torque(cutting_force_n: float, dull_factor: float, diameter_mm: float) -> float:
    """Torque on a collar when a dull tool catches.

    T = q Fc D / 2

    Parameters
    ----------
    cutting_force_n : Cutting force Fc of the deep, coarse cut of a sharp tool, with the high constants of the metal.
        [N]
    dull_factor : Factor q of a dull tool or a built-up edge. [1]
    diameter_mm : Outside diameter D of the collar. [mm]

    Returns
    -------
    Torque T. [N mm]

    Valid for
    ---------
    Force 0 or more, factor 1 to 5, diameter more than 0; what a joint must hold, not what it meets every day.

    Source
    ------
    Torque = force times lever; the factor is a rule of the trade (memory).

    >>> round(catch_torque(209.3, 3, 75))
    23546
    """
    between(dull_factor, 1, 5, "factor of a dull tool")
    return dull_factor * skim_torque(cutting_force_n, diameter_mm)


def torque_margin(carried_nmm: float, asked_nmm: float) -> float:
    """Torque that is carried, in torques that are asked for.

    S = T / T_a

    Parameters
    ----------
    carried_nmm : Torque T that is carried. [N mm]
    asked_nmm : Torque T_a that is asked for. [N mm]

    Returns
    -------
    Margin S; below 1 it slips. [1]

    Valid for
    ---------
    Carried 0 or more, asked more than 0.

    Source
    ------
    Definition.

    >>> torque_margin(30000, 20000)
    1.5
    """
    at_least(carried_nmm, 0, "torque carried", "N mm")
    positive(asked_nmm, "torque asked for", "N mm")
    return carried_nmm / asked_nmm


def margin_of_narrow(margin: float, width_mm: float, full_width_mm: float) -> float:
    """Margin of a bond that came out narrower than was reckoned with.

    S_1 = S min(1, w / w_0)

    Parameters
    ----------
    margin : Margin S of the full width. [1]
    width_mm : Width w as found. [mm]
    full_width_mm : Width w_0 that was reckoned with. [mm]

    Returns
    -------
    Margin S_1; a wider one counts as the full one. [1]

    Valid for
    ---------
    Margin 0 or more, widths more than 0; a bond carries by its area.

    Source
    ------
    Proportion, derived.

    >>> margin_of_narrow(1.5, 28, 35)
    1.2000000000000002
    """
    at_least(margin, 0, "margin")
    positive(width_mm, "width as found", "mm")
    positive(full_width_mm, "full width", "mm")
    return margin * min(1.0, width_mm / full_width_mm)


def width_for_margin(width_mm: float, margin: float, margin_wanted: float) -> float:
    """Width with which a bond has the margin that is wanted.

    w_1 = w S_1 / S

    Parameters
    ----------
    width_mm : Width w that was reckoned with. [mm]
    margin : Margin S that came of it. [1]
    margin_wanted : Margin S_1 that is wanted. [1]

    Returns
    -------
    Width w_1; more than w where the margin is too small. [mm]

    Valid for
    ---------
    All more than 0; a bond carries by its area.

    Source
    ------
    Proportion, derived.

    >>> width_for_margin(20, 0.8, 1)
    25.0
    """
    positive(width_mm, "width", "mm")
    positive(margin, "margin")
    positive(margin_wanted, "margin wanted")
    return width_mm * margin_wanted / margin


def strength_for_margin(strength_mpa: float, margin: float, margin_wanted: float) -> float:
    """Strength with which a joint has the margin that is wanted.

    t_1 = t S_1 / S

    Parameters
    ----------
    strength_mpa : Strength t that was reckoned with. [MPa]
    margin : Margin S that came of it. [1]
    margin_wanted : Margin S_1 that is wanted. [1]

    Returns
    -------
    Strength t_1, all else alike. [MPa]

    Valid for
    ---------
    All more than 0; a joint whose torque is proportional to the strength.

    Source
    ------
    Proportion, derived.

    >>> strength_for_margin(8, 0.8, 1)
    10.0
    """
    positive(strength_mpa, "strength", "MPa")
    positive(margin, "margin")
    positive(margin_wanted, "margin wanted")
    return strength_mpa * margin_wanted / margin


def depth_for_margin(depth_mm: float, margin: float, margin_wanted: float) -> float:
    """Depth of a cut to which a joint holds with the margin that is wanted.

    a_1 = a S / S_1

    Parameters
    ----------
    depth_mm : Depth a, per side, that was reckoned with. [mm]
    margin : Margin S that came of it. [1]
    margin_wanted : Margin S_1 that is wanted. [1]

    Returns
    -------
    Depth a_1 per side, all else alike. [mm]

    Valid for
    ---------
    All more than 0; a cut whose force is proportional to its depth.

    Source
    ------
    Proportion, derived.

    >>> round(depth_for_margin(1, 1.2, 1.5), 6)
    0.8
    """
    positive(depth_mm, "depth of the cut", "mm")
    positive(margin, "margin")
    positive(margin_wanted, "margin wanted")
    return depth_mm * margin / margin_wanted
