"""One worked set of readings with its answer (E10): three chucked and three between centres, and a level.

Readings and answers are derived: the geometry of the axis and the path of the tool, weighed normal equations.
"""

from math import sqrt

import pytest

from tailtrue.calc.causes import (
    HEADSTOCK_YAW,
    PATH_LEAN,
    TAILSTOCK_OFFSET,
    between_centres_row,
    chucked_row,
    level_row,
)
from tailtrue.calc.estimation import Fit, Reading

_CUT = [
    *(
        Reading(chucked_row(z, "front"), diameter - 32, 0.0015)
        for z, diameter in ((20, 32.002), (95, 32.008), (170, 32.015))
    ),
    *(
        Reading(between_centres_row(z, 300, "front"), diameter - 70, 0.0015)
        for z, diameter in ((30, 70.009), (150, 70.044), (270, 70.077))
    ),
]
_LEVEL = Reading(level_row(500, 150), 0.20, 0.02)


@pytest.mark.parametrize(
    ("combination", "value", "standard_uncertainty"),
    [
        ({HEADSTOCK_YAW: 1}, 16.667e-6, 9.274e-6),
        ({PATH_LEAN: 1}, 60e-6, 6e-6),
        ({TAILSTOCK_OFFSET: 1}, -24.5e-3, 2.235579e-3),
        ({PATH_LEAN: 1, HEADSTOCK_YAW: -1}, 43.333e-6, 7.071e-6),
        ({TAILSTOCK_OFFSET: 1, PATH_LEAN: -300}, -42.5e-3, 1.325825e-3),
    ],
)
def test_all_is_settled_with_the_level(combination: dict[str, float], value: float, standard_uncertainty: float) -> None:
    fit = Fit.of([*_CUT, _LEVEL])
    assert (fit.rank, fit.not_told_apart, fit.degrees_of_freedom) == (5, 0, 2)
    assert fit.chi_squared == pytest.approx(0.37037, rel=1e-4)
    assert fit.estimate(combination) == pytest.approx((value, standard_uncertainty), rel=1e-4)


def test_without_the_level_only_the_two_differences_are_settled() -> None:
    fit = Fit.of(_CUT, against=[PATH_LEAN])
    assert (fit.rank, fit.not_told_apart, fit.degrees_of_freedom) == (4, 1, 2)
    several = [row for row in fit.combinations if len(row) > 1]
    assert several == [
        pytest.approx({HEADSTOCK_YAW: 1, PATH_LEAN: -1}),
        pytest.approx({TAILSTOCK_OFFSET: 1, PATH_LEAN: -300}),
    ]
    assert fit.estimate(several[0]) == pytest.approx((-43.333e-6, 7.071e-6), rel=1e-4)
    assert fit.estimate(several[1]) == pytest.approx((-42.5e-3, 1.325825e-3), rel=1e-4)
    # Slope of three equal readings at equal steps: the outer two carry it.
    assert fit.estimate(several[0]).standard_uncertainty == pytest.approx(0.0015 / sqrt(2) / 150, rel=1e-9)
