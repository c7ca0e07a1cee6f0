"""The budget of a move by drawing numbers, after JCGM 101: no formula of the project makes a trial (E21).

The answers are derived: a simulation of two million trials made beforehand, good to 0.02 um.
"""

import numpy as np
import pytest

from tailtrue.calc.difference_budget import move_uncertainty
from tailtrue.calc.uncertainty import difference_uncertainty

_TRIALS = 1_000_000


def _moves_um() -> "np.ndarray[tuple[int], np.dtype[np.float64]]":
    random = np.random.default_rng(20240101)

    def bounds(half_width: float) -> "np.ndarray[tuple[int], np.dtype[np.float64]]":
        return random.uniform(-half_width, half_width, _TRIALS)

    difference = random.normal(24.0, 1.5 * (2 / 3) ** 0.5, _TRIALS)  # means of three readings on each collar
    for half_width in (0.5, 0.5, 0.5, 1.0, 1.0, 23.6e-6 * 70e3 * 0.5, 1.0, 1.0):
        # a digit on each collar, screw, form of each collar, temperature, wear, deflection
        difference += bounds(half_width)
    span, first, second = 300 + bounds(1.0), 30 + bounds(0.5), 270 + bounds(0.5)
    return difference / 2 * span / (second - first)


def test_the_budget_of_a_move_agrees_with_drawing_numbers() -> None:
    moves = _moves_um()
    low, high = np.quantile(moves, (0.025, 0.975))
    assert (moves.mean(), moves.std(), low, high) == pytest.approx((15.00, 1.138, 12.77, 17.23), abs=0.02)
    difference = difference_uncertainty(0.0015, 3, 0.001, 0.0005, 0.001, 23.6e-6 * 70 * 0.5, 0.001, 0.001)
    found = move_uncertainty(0.024, 300, 30, 270, difference, 1 / 3**0.5, 0.5 / 3**0.5, 0.5 / 3**0.5)
    assert found * 1000 == pytest.approx(moves.std(), rel=0.003)
