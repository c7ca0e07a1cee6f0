"""How work sits in the jaws: tilting, length of grip, overhang."""

from tailtrue.calc.validity import OutOfRange, at_least, positive, up_to


def tilt_moment_held(grip_n: float, grip_length_mm: float, grip_diameter_mm: float, friction: float) -> float:
    """Moment that tips the work out of three jaws, a rough figure for a warning.

    M = G (l / 9 + mu d / 3)

    Parameters
    ----------
    grip_n : Grip G at speed. [N]
    grip_length_mm : Length l of the work in the jaws. [mm]
    grip_diameter_mm : Diameter d that is gripped. [mm]
    friction : Friction mu between jaws and work. [1]

    Returns
    -------
    Moment M about the middle of the grip, no safety within. [N mm]

    Valid for
    ---------
    Three jaws, work not longer in the jaws than they are; an estimate, no proof that work stays in.

    Source
    ------
    Derived: pressure piled up at the ends of the grip, and friction along the jaws.

    >>> round(tilt_moment_held(9000, 15, 75, 0.2))
    60000
    """
    at_least(grip_n, 0, "grip", "N")
    positive(grip_length_mm, "length in the jaws", "mm")
    positive(grip_diameter_mm, "diameter that is gripped", "mm")
    up_to(friction, 1, "friction")
    return grip_n * (grip_length_mm / 9 + friction * grip_diameter_mm / 3)


def tilt_safety(
    cutting_force_n: float,
    overhang_mm: float,
    grip_n: float,
    grip_length_mm: float,
    grip_diameter_mm: float,
    friction: float,
) -> float:
    """How many times over the jaws hold the work against being tipped out by the cut.

    S = M / (F (X + l / 2))

    Parameters
    ----------
    cutting_force_n : Cutting force F across the axis. [N]
    overhang_mm : Distance X of the cut from the front of the jaws. [mm]
    grip_n : Grip G at speed. [N]
    grip_length_mm : Length l of the work in the jaws. [mm]
    grip_diameter_mm : Diameter that is gripped. [mm]
    friction : Friction mu between jaws and work. [1]

    Returns
    -------
    Safety S; below 2 the work wants a centre, a longer grip or a lighter cut. [1]

    Valid for
    ---------
    As `tilt_moment_held`; force more than 0, overhang 0 or more, no tailstock centre.

    Source
    ------
    Derived; the bound of 2 is judgement.

    >>> round(tilt_safety(400, 50, 9000, 15, 75, 0.2), 1)
    2.6
    """
    positive(cutting_force_n, "cutting force", "N")
    at_least(overhang_mm, 0, "overhang", "mm")
    held = tilt_moment_held(grip_n, grip_length_mm, grip_diameter_mm, friction)
    return held / (cutting_force_n * (overhang_mm + grip_length_mm / 2))


def least_grip_length(
    diameter_mm: float, jaw_length_mm: float, share_of_diameter: float, share_of_jaw: float, least_mm: float
) -> float:
    """Least length of the work that must be in the jaws.

    l = max(s_d d, s_j j, l_least)

    Parameters
    ----------
    diameter_mm : Diameter d that is gripped. [mm]
    jaw_length_mm : Length j of the jaws along the axis. [mm]
    share_of_diameter : Share s_d of the diameter; more for work that stands out far. [1]
    share_of_jaw : Share s_j of the length of the jaws. [1]
    least_mm : Length l_least below which no work is held. [mm]

    Returns
    -------
    Least length l in the jaws. [mm]

    Valid for
    ---------
    All more than 0, share of the jaw at most 1; a result longer than the jaws is refused.

    Source
    ------
    Common practice; the shares come from the rules.

    >>> least_grip_length(25, 30, 1, 0.5, 10)
    25
    """
    positive(diameter_mm, "diameter", "mm")
    positive(jaw_length_mm, "length of the jaws", "mm")
    positive(share_of_diameter, "share of the diameter")
    up_to(share_of_jaw, 1, "share of the jaw")
    positive(least_mm, "least length", "mm")
    length = max(share_of_diameter * diameter_mm, share_of_jaw * jaw_length_mm, least_mm)
    if length > jaw_length_mm:
        raise OutOfRange(
            f"the work needs {length:g} mm in the jaws, and they are {jaw_length_mm:g} mm long; "
            "hold it another way or put a centre to it"
        )
    return length


def overhang_verdict(overhang_mm: float, diameter_mm: float, free_ratio: float, most_ratio: float) -> str:
    """Whether work may stand out of the jaws so far without a centre.

    free: X <= q_f d; caution: X <= q_m d; support: beyond

    Parameters
    ----------
    overhang_mm : Length X standing out of the jaws. [mm]
    diameter_mm : Least diameter d of that length. [mm]
    free_ratio : Diameters q_f up to which it may stand free. [1]
    most_ratio : Diameters q_m beyond which a centre or a steady must carry it. [1]

    Returns
    -------
    One of free, caution, support. [1]

    Valid for
    ---------
    Overhang 0 or more, the others more than 0, q_f <= q_m.

    Source
    ------
    Common practice; the ratios come from the rules.

    >>> overhang_verdict(75, 25, 2.5, 4)
    'caution'
    """
    at_least(overhang_mm, 0, "overhang", "mm")
    positive(diameter_mm, "diameter", "mm")
    positive(free_ratio, "diameters that may stand free")
    at_least(most_ratio, free_ratio, "diameters beyond which support is needed")
    if overhang_mm <= free_ratio * diameter_mm:
        return "free"
    return "caution" if overhang_mm <= most_ratio * diameter_mm else "support"
