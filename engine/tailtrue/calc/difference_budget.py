"""What makes the difference of two collars unsure, part by part, and the move of the tailstock with it."""

from math import hypot, inf, sqrt
from typing import NamedTuple

from tailtrue.calc.alignment import tailstock_move
from tailtrue.calc.budget import Component
from tailtrue.calc.validity import at_least, between, positive

_MOST_LENGTH_SHARE = 0.05  # of the distance of the collars


class DifferenceParts(NamedTuple):
    """Standard uncertainties of the parts, each as it counts on the difference of two diameters."""

    repeatability_mm: float
    resolution_mm: float
    local_error_mm: float
    form_mm: float
    temperature_mm: float
    wear_mm: float
    deflection_mm: float

    def components(self, repeatability_freedom: float = inf) -> tuple[Component, ...]:
        """The parts as components of a budget.

        component = part with factor 1; degrees of freedom endless but for the scatter of readings

        Parameters
        ----------
        repeatability_freedom : Degrees of freedom of the scatter, endless when it is known. [1]

        Returns
        -------
        Components in the order of the parts. [mm]

        Valid for
        ---------
        At least one degree of freedom; all but the scatter are taken as known bounds.

        Source
        ------
        JCGM 100 (the GUM), annex G (memory).

        >>> [part.name for part in DifferenceParts(1, 0, 0, 0, 0, 0, 0).components(4)][0]
        'repeatability'
        """
        freedom = {"repeatability": repeatability_freedom}
        named = {name.removesuffix("_mm"): value for name, value in self._asdict().items()}
        return tuple(Component(name, value, 1.0, freedom.get(name, inf)) for name, value in named.items())


def difference_parts(
    repeatability_mm: float,
    readings: int,
    resolution_mm: float,
    local_error_mm: float,
    form_mm: float,
    temperature_mm: float,
    wear_mm: float,
    deflection_mm: float,
) -> DifferenceParts:
    """Parts of the uncertainty of the difference of two diameters read with one instrument.

    parts = s sqrt(2 / n), r sqrt(2 / 12), l / sqrt(3), f sqrt(2 / 3), t / sqrt(3), w / sqrt(3), b / sqrt(3)

    Parameters
    ----------
    repeatability_mm : Standard deviation s of one reading. [mm]
    readings : Readings n taken on each collar. [1]
    resolution_mm : Smallest step r that is read. [mm]
    local_error_mm : Half width l of the change of screw error between the two diameters. [mm]
    form_mm : Half width f from out-of-round and finish, of each collar. [mm]
    temperature_mm : Half width t from one collar being warmer, on diameter. [mm]
    wear_mm : Half width w from wear of the tool between the collars, on diameter. [mm]
    deflection_mm : Half width b from bending that is left, on diameter. [mm]

    Returns
    -------
    Standard uncertainties on the difference from repeatability, resolution, local error, form, temperature,
    wear and bending. [mm]

    Valid for
    ---------
    All 0 or more, at least one reading. The common error of the instrument cancels only when both collars
    are read with it and differ by less than about 0.1 mm.

    Source
    ------
    JCGM 100 (the GUM), clauses 4.2, 4.3.7 and F.2.2.1 (numbers from memory).

    >>> parts = difference_parts(0.0015, 3, 0.001, 0.0005, 0.001, 0.000826, 0.001, 0.001)
    >>> [round(part, 6) for part in parts]
    [0.001225, 0.000408, 0.000289, 0.000816, 0.000477, 0.000577, 0.000577]
    """
    at_least(readings, 1, "number of readings")
    at_least(repeatability_mm, 0, "repeatability", "mm")
    at_least(resolution_mm, 0, "resolution", "mm")
    at_least(local_error_mm, 0, "local error of the instrument", "mm")
    at_least(form_mm, 0, "error of form", "mm")
    at_least(temperature_mm, 0, "effect of temperature", "mm")
    at_least(wear_mm, 0, "effect of wear", "mm")
    at_least(deflection_mm, 0, "effect of bending", "mm")
    # Two collars: what happens anew on each counts twice; what acts once on the difference counts once.
    return DifferenceParts(
        repeatability_mm * sqrt(2 / readings),
        resolution_mm * sqrt(2 / 12),
        local_error_mm / sqrt(3),
        form_mm * sqrt(2 / 3),
        temperature_mm / sqrt(3),
        wear_mm / sqrt(3),
        deflection_mm / sqrt(3),
    )


def correlated_difference(headstock_mm: float, tailstock_mm: float, correlation: float) -> float:
    """Standard uncertainty of the difference of two sizes whose errors go partly together.

    u^2 = u_h^2 + u_t^2 - 2 r u_h u_t

    Parameters
    ----------
    headstock_mm : Standard uncertainty u_h of the headstock collar. [mm]
    tailstock_mm : Standard uncertainty u_t of the tailstock collar. [mm]
    correlation : Coefficient r: 1 for the common error of one instrument, 0 for two instruments. [1]

    Returns
    -------
    Standard uncertainty u of the difference. [mm]

    Valid for
    ---------
    Uncertainties 0 or more, coefficient from -1 to 1.

    Source
    ------
    JCGM 100 (the GUM), clauses 5.2.2 and F.1.2.3 (numbers from memory).

    >>> correlated_difference(0.003, 0.003, 1), round(correlated_difference(0.003, 0.003, 0), 6)
    (0.0, 0.004243)
    """
    at_least(headstock_mm, 0, "standard uncertainty of the headstock collar", "mm")
    at_least(tailstock_mm, 0, "standard uncertainty of the tailstock collar", "mm")
    between(correlation, -1, 1, "correlation of the two collars")
    # Written as two squares; a hair past a coefficient of 1 counts as 1.
    return hypot(headstock_mm - tailstock_mm, sqrt(2 * max(0, 1 - correlation) * headstock_mm * tailstock_mm))


def two_instruments(one_instrument_mm: float, first_limit_mm: float, second_limit_mm: float) -> float:
    """Standard uncertainty of the difference when each collar was read with an instrument of its own.

    u^2 = u_1^2 + (g_1^2 + g_2^2) / 3

    Parameters
    ----------
    one_instrument_mm : Standard uncertainty u_1 of the difference, as it would be with one instrument. [mm]
    first_limit_mm : Largest error g_1 of the one instrument. [mm]
    second_limit_mm : Largest error g_2 of the other. [mm]

    Returns
    -------
    Standard uncertainty u of the difference. [mm]

    Valid for
    ---------
    All 0 or more; instruments within their limits of error.

    Source
    ------
    JCGM 100 (the GUM), clauses 4.3.7 and 5.1.2 (numbers from memory).

    >>> round(two_instruments(0.00182, 0.005, 0.005), 5)
    0.00447
    """
    at_least(one_instrument_mm, 0, "standard uncertainty with one instrument", "mm")
    at_least(first_limit_mm, 0, "largest error of the first instrument", "mm")
    at_least(second_limit_mm, 0, "largest error of the second instrument", "mm")
    return hypot(one_instrument_mm, first_limit_mm / sqrt(3), second_limit_mm / sqrt(3))


def temperature_uncertainty(
    length_mm: float,
    expansion_per_k: float,
    expansion_unsure_per_k: float,
    temperature_change_k: float,
    unsure_change_k: float,
) -> float:
    """Standard uncertainty of the growth of a size with a change of temperature.

    u^2 = L^2 (alpha^2 u_T^2 + dT^2 u_a^2 + u_a^2 u_T^2)

    Parameters
    ----------
    length_mm : Length or diameter L. [mm]
    expansion_per_k : Coefficient of expansion alpha. [1/K]
    expansion_unsure_per_k : Standard uncertainty u_a of the coefficient. [1/K]
    temperature_change_k : Change of temperature dT that is corrected for; 0 when nothing is. [K]
    unsure_change_k : Standard uncertainty u_T of that change. [K]

    Returns
    -------
    Standard uncertainty u of the growth. [mm]

    Valid for
    ---------
    Length and coefficient more than 0, uncertainties 0 or more, change of at most 50 K either way.

    Source
    ------
    JCGM 100 (the GUM), clauses 5.1.2 and H.1.7 (numbers from memory).

    >>> round(temperature_uncertainty(70, 23.6e-6, 0, 0, 0.5 / 3**0.5), 6)
    0.000477
    """
    positive(length_mm, "length", "mm")
    positive(expansion_per_k, "coefficient of expansion", "1/K")
    at_least(expansion_unsure_per_k, 0, "uncertainty of the coefficient of expansion", "1/K")
    between(temperature_change_k, -50, 50, "change of temperature", "K")
    at_least(unsure_change_k, 0, "uncertainty of the change of temperature", "K")
    # The last term matters where no change is corrected for: then the plain first order gives nothing.
    return length_mm * hypot(
        expansion_per_k * unsure_change_k,
        temperature_change_k * expansion_unsure_per_k,
        expansion_unsure_per_k * unsure_change_k,
    )


def move_uncertainty(
    difference_mm: float,
    span_mm: float,
    first_station_mm: float,
    second_station_mm: float,
    difference_unsure_mm: float,
    span_unsure_mm: float,
    first_unsure_mm: float,
    second_unsure_mm: float,
) -> float:
    """Standard uncertainty of the move of the tailstock centre.

    u_m^2 = (L u_D / (2 s))^2 + (D u_L / (2 s))^2 + (m / s)^2 (u_a^2 + u_b^2), s = b - a, m = D L / (2 s)

    Parameters
    ----------
    difference_mm : Difference D of the diameters, tailstock collar less headstock collar. [mm]
    span_mm : Distance L between the points of the two centres. [mm]
    first_station_mm : Distance a of the headstock collar from the headstock centre. [mm]
    second_station_mm : Distance b of the tailstock collar from the headstock centre. [mm]
    difference_unsure_mm : Standard uncertainty u_D of the difference. [mm]
    span_unsure_mm : Standard uncertainty u_L of the span. [mm]
    first_unsure_mm : Standard uncertainty u_a of the first station. [mm]
    second_unsure_mm : Standard uncertainty u_b of the second station. [mm]

    Returns
    -------
    Standard uncertainty u_m of the move of the centre. [mm]

    Valid for
    ---------
    As `tailstock_move`; uncertainties 0 or more, those of the lengths at most 5 % of the distance of the
    collars (first order).

    Source
    ------
    JCGM 100 (the GUM), clause 5.1.2 (number from memory), on the formula of `tailstock_move`.

    >>> lengths = (300, 30, 270)
    >>> round(move_uncertainty(0.024, *lengths, 0.00181955, 0.57735, 0.288675, 0.288675), 6)
    0.001138
    """
    move = tailstock_move(difference_mm, span_mm, first_station_mm, second_station_mm)
    spacing = second_station_mm - first_station_mm
    at_least(difference_unsure_mm, 0, "uncertainty of the difference", "mm")
    between(span_unsure_mm, 0, _MOST_LENGTH_SHARE * spacing, "uncertainty of the span", "mm")
    between(first_unsure_mm, 0, _MOST_LENGTH_SHARE * spacing, "uncertainty of the first station", "mm")
    between(second_unsure_mm, 0, _MOST_LENGTH_SHARE * spacing, "uncertainty of the second station", "mm")
    return hypot(
        span_mm / (2 * spacing) * difference_unsure_mm,
        difference_mm / (2 * spacing) * span_unsure_mm,
        move / spacing * first_unsure_mm,
        move / spacing * second_unsure_mm,
    )
