"""Collars put on hot: how hot, and how a fit changes when bar and collar grow unlike."""

from math import isclose

from tailtrue.calc.validity import OutOfRange, at_least, between, finite, positive, up_to

_MOST_CHANGE_K = 250.0  # the coefficient itself drifts by about a tenth over this


def handling_clearance(joint_diameter_mm: float, share: float, least_mm: float) -> float:
    """Clearance that a hot collar needs to go on without seizing half-way.

    c = q d, but at least c_least

    Parameters
    ----------
    joint_diameter_mm : Diameter d of the joint. [mm]
    share : Share q of the diameter, usually 0.001. [1]
    least_mm : Least clearance c_least on diameter, usually 0.02. [mm]

    Returns
    -------
    Clearance c on diameter. [mm]

    Valid for
    ---------
    All more than 0; the collar is put on at once, within a few seconds.

    Source
    ------
    Common practice.

    >>> handling_clearance(25, 0.001, 0.02)
    0.025
    """
    positive(joint_diameter_mm, "diameter of the joint", "mm")
    positive(share, "clearance as a share of the diameter")
    positive(least_mm, "least clearance", "mm")
    return max(share * joint_diameter_mm, least_mm)


def shrink_rise(
    diametral_interference_mm: float, clearance_mm: float, joint_diameter_mm: float, expansion_per_k: float
) -> float:
    """Rise of temperature at which a collar goes over its bar with some clearance.

    dT = (i + c) / (alpha d)

    Parameters
    ----------
    diametral_interference_mm : Greatest interference i on diameter, both parts cold. [mm]
    clearance_mm : Clearance c on diameter wanted for handling. [mm]
    joint_diameter_mm : Diameter d of the joint. [mm]
    expansion_per_k : Coefficient of expansion alpha of the collar. [1/K]

    Returns
    -------
    Rise dT of the collar over the bar, which stays cold. [K]

    Valid for
    ---------
    Interference 0 or more, the others more than 0, rise found at most 250 K. Metals grow a little more with each
    kelvin when hot, so the true clearance is larger than reckoned.

    Source
    ------
    Definition of the coefficient; an engineering page on shrink-fit assembly.

    >>> round(shrink_rise(0.030, 0.025, 25, 23.6e-6), 1)
    93.2
    """
    at_least(diametral_interference_mm, 0, "interference on diameter", "mm")
    positive(clearance_mm, "clearance for handling", "mm")
    positive(joint_diameter_mm, "diameter of the joint", "mm")
    positive(expansion_per_k, "coefficient of expansion of the collar", "1/K")
    rise = (diametral_interference_mm + clearance_mm) / (expansion_per_k * joint_diameter_mm)
    between(rise, 0, _MOST_CHANGE_K, "rise of temperature", "K")
    return rise


def shrink_temperature(temperature_change_k: float, room_degc: float, hottest_degc: float) -> float:
    """Temperature to which a collar is heated, refused where its metal would suffer.

    t = t_room + dT, at most t_hottest

    Parameters
    ----------
    temperature_change_k : Rise dT needed over the bar. [K]
    room_degc : Temperature t_room of bar and shop. [degC]
    hottest_degc : Temperature t_hottest that the metal of the collar stands for a short time. [degC]

    Returns
    -------
    Temperature t of the collar. [degC]

    Valid for
    ---------
    Rise above 0 and at most 250 K, room 0 to 50 degC, temperature found not above the hottest allowed.

    Source
    ------
    Definition; the hottest temperature comes from the tables of the caller.

    >>> round(shrink_temperature(93.2, 20, 150), 1)
    113.2
    """
    up_to(temperature_change_k, _MOST_CHANGE_K, "rise of temperature", "K")
    between(room_degc, 0, 50, "temperature of the shop", "degC")
    finite(hottest_degc, "hottest that the metal of the collar stands", "degC")
    temperature = room_degc + temperature_change_k
    if temperature > hottest_degc:
        raise OutOfRange(
            f"the collar would have to be {temperature:.0f} degC hot, and its metal stands {hottest_degc:g} degC:"
            " a smaller interference, or another way of fixing the collar, helps"
        )
    return temperature


def interference_change(
    joint_diameter_mm: float,
    bar_expansion_per_k: float,
    bar_change_k: float,
    collar_expansion_per_k: float,
    collar_change_k: float,
) -> float:
    """Change of the interference when bar and collar change their temperatures.

    di = d (alpha_b dT_b - alpha_c dT_c)

    Parameters
    ----------
    joint_diameter_mm : Diameter d of the joint. [mm]
    bar_expansion_per_k : Coefficient of expansion alpha_b of the bar. [1/K]
    bar_change_k : Change dT_b of the temperature of the bar. [K]
    collar_expansion_per_k : Coefficient of expansion alpha_c of the collar. [1/K]
    collar_change_k : Change dT_c of the temperature of the collar. [K]

    Returns
    -------
    Change of the interference on diameter; less than 0 loosens the fit. A clearance changes by the opposite. [mm]

    Valid for
    ---------
    Diameter and coefficients more than 0, changes of at most 250 K either way, each part warm all through.

    Source
    ------
    Definition of the coefficient, derived.

    >>> round(interference_change(25, 11.7e-6, 10, 23.6e-6, 10), 6)
    -0.002975
    """
    positive(joint_diameter_mm, "diameter of the joint", "mm")
    positive(bar_expansion_per_k, "coefficient of expansion of the bar", "1/K")
    positive(collar_expansion_per_k, "coefficient of expansion of the collar", "1/K")
    between(bar_change_k, -_MOST_CHANGE_K, _MOST_CHANGE_K, "change of temperature of the bar", "K")
    between(collar_change_k, -_MOST_CHANGE_K, _MOST_CHANGE_K, "change of temperature of the collar", "K")
    return joint_diameter_mm * (bar_expansion_per_k * bar_change_k - collar_expansion_per_k * collar_change_k)


def release_change(
    diametral_interference_mm: float,
    joint_diameter_mm: float,
    bar_expansion_per_k: float,
    collar_expansion_per_k: float,
) -> float:
    """Change of temperature of bar and collar together at which an interference is gone.

    dT = i / (d (alpha_c - alpha_b))

    Parameters
    ----------
    diametral_interference_mm : Least interference i on diameter, after the loss from roughness. [mm]
    joint_diameter_mm : Diameter d of the joint. [mm]
    bar_expansion_per_k : Coefficient of expansion alpha_b of the bar. [1/K]
    collar_expansion_per_k : Coefficient of expansion alpha_c of the collar. [1/K]

    Returns
    -------
    Change dT; more than 0 when the collar lets go warm, less than 0 when it lets go cold. [K]

    Valid for
    ---------
    Interference 0 or more, the rest more than 0, coefficients unlike, change found at most 250 K either way:
    beyond that it does not let go within the temperatures for which coefficients are known.

    Source
    ------
    Derived from `interference_change`.

    >>> round(release_change(0.020, 25, 11.7e-6, 23.6e-6))
    67
    """
    at_least(diametral_interference_mm, 0, "interference on diameter", "mm")
    positive(joint_diameter_mm, "diameter of the joint", "mm")
    positive(bar_expansion_per_k, "coefficient of expansion of the bar", "1/K")
    positive(collar_expansion_per_k, "coefficient of expansion of the collar", "1/K")
    if isclose(bar_expansion_per_k, collar_expansion_per_k):
        raise OutOfRange(f"bar and collar both grow by {bar_expansion_per_k:g} 1/K: warmth does not change their fit")
    change = diametral_interference_mm / (joint_diameter_mm * (collar_expansion_per_k - bar_expansion_per_k))
    between(change, -_MOST_CHANGE_K, _MOST_CHANGE_K, "change of temperature", "K")
    return change
