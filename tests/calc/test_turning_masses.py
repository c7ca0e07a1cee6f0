"""Turning masses: exact values, bounds, and the same figures in inches."""

import math
from collections.abc import Callable
from typing import Any

import pytest

from tailtrue.calc.turning_masses import kinetic_energy, rim_speed, unbalance_force, unbalance_speed_limit
from tailtrue.calc.validity import OutOfRange


@pytest.mark.parametrize(
    ("formula", "given", "says"),
    [
        (unbalance_force, {"mass_kg": 0, "eccentricity_mm": 1, "spindle_speed_per_min": 300}, "mass is 0 kg"),
        (unbalance_force, {"mass_kg": 1, "eccentricity_mm": -1, "spindle_speed_per_min": 300}, "eccentricity is -1 mm"),
        (unbalance_force, {"mass_kg": 1, "eccentricity_mm": 1, "spindle_speed_per_min": -1}, "spindle speed is -1 1/min"),
        (unbalance_speed_limit, {"eccentricity_mm": 0, "force_to_weight": 0.3}, "eccentricity is 0 mm"),
        (unbalance_speed_limit, {"eccentricity_mm": 1, "force_to_weight": 0}, "force as a share of the weight is 0"),
        (rim_speed, {"diameter_mm": 0, "spindle_speed_per_min": 300}, "diameter is 0 mm"),
        (rim_speed, {"diameter_mm": 100, "spindle_speed_per_min": -1}, "spindle speed is -1 1/min"),
        (kinetic_energy, {"mass_kg": 0, "speed_m_s": 1}, "mass is 0 kg"),
        (kinetic_energy, {"mass_kg": 1, "speed_m_s": -1}, "speed is -1 m/s"),
    ],
)
def test_beyond_its_bounds_it_refuses_and_says_what_was_read(
    formula: Callable[..., float], given: dict[str, Any], says: str
) -> None:
    with pytest.raises(OutOfRange) as refused:
        formula(**given)
    assert says in str(refused.value)


def test_what_stands_still_or_runs_true_pulls_at_nothing() -> None:
    assert unbalance_force(1, 0, 300) == unbalance_force(1, 1, 0) == 0
    assert rim_speed(100, 0) == kinetic_energy(1, 0) == 0


def test_figures_of_one_radian_a_second() -> None:
    slow = 30 / math.pi
    assert unbalance_force(2, 500, slow) == pytest.approx(1)
    assert rim_speed(2000, slow) == pytest.approx(1)
    assert kinetic_energy(2, 1) == pytest.approx(1)
    assert unbalance_speed_limit(9806.65, 1) == pytest.approx(slow)


def test_rule_of_thumb_for_a_rough_blank() -> None:
    # 518 divided by the root of the eccentricity in mm, for three tenths of the weight
    for eccentricity in (0.3, 1, 3):
        assert unbalance_speed_limit(eccentricity, 0.3) == pytest.approx(518 / math.sqrt(eccentricity), rel=1e-3)


def test_inches_and_pounds_pull_as_millimetres_and_kilograms() -> None:
    # W r w^2 / g in pounds force, inches and seconds
    pounds = 2.6 * 0.12 * (2 * math.pi * 10) ** 2 / 386.0886
    assert unbalance_force(2.6 * 0.45359237, 0.12 * 25.4, 600) / 4.4482216152605 == pytest.approx(pounds)
