"""Work out of balance: where its mass lies, how bad that is, how fast it may turn; and what turning parts carry."""

import math
from collections.abc import Callable
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import dblquad

from spoilt import each_is_refused, spoilt
from tailtrue.calc.balance import (
    balance_grade,
    bored_disc_offset,
    centre_of_mass,
    eccentricity_for_grade,
    speed_for_force,
    speed_for_grade,
    unbalance_for_grade,
)
from tailtrue.calc.turning_masses import unbalance_force
from tailtrue.calc.validity import OutOfRange

_GOOD: dict[Callable[..., Any], dict[str, Any]] = {
    balance_grade: {"eccentricity_mm": 3, "spindle_speed_per_min": 600},
    eccentricity_for_grade: {"grade_mm_s": 6.3, "spindle_speed_per_min": 600},
    unbalance_for_grade: {"grade_mm_s": 6.3, "mass_kg": 1.2, "spindle_speed_per_min": 600},
    speed_for_grade: {"grade_mm_s": 6.3, "eccentricity_mm": 0.1},
    speed_for_force: {"force_n": 14.2, "mass_kg": 1.2, "eccentricity_mm": 3},
    centre_of_mass: {"masses_kg": [1.0, 0.2], "offsets_mm": [0.0, 30.0]},
    bored_disc_offset: {"diameter_mm": 75, "bore_mm": 25, "bore_offset_mm": 0.8},
}


@pytest.mark.parametrize(("formula", "calls"), spoilt(_GOOD))
def test_what_is_no_number_is_refused(formula: Callable[..., Any], calls: list[dict[str, Any]]) -> None:
    each_is_refused(formula, calls)


@pytest.mark.parametrize(
    ("formula", "change", "says"),
    [
        (balance_grade, {"eccentricity_mm": -1}, "eccentricity is -1 mm"),
        (balance_grade, {"spindle_speed_per_min": -1}, "spindle speed is -1 1/min"),
        (eccentricity_for_grade, {"grade_mm_s": 0}, "quality of balance is 0 mm/s"),
        (eccentricity_for_grade, {"spindle_speed_per_min": 0}, "spindle speed is 0 1/min"),
        (unbalance_for_grade, {"mass_kg": 0}, "mass is 0 kg"),
        (unbalance_for_grade, {"grade_mm_s": 0}, "quality of balance is 0 mm/s"),
        (speed_for_grade, {"grade_mm_s": 0}, "quality of balance is 0 mm/s"),
        (speed_for_grade, {"eccentricity_mm": 0}, "eccentricity is 0 mm"),
        (speed_for_force, {"force_n": 0}, "force is 0 N"),
        (speed_for_force, {"mass_kg": 0}, "mass is 0 kg"),
        (speed_for_force, {"eccentricity_mm": 0}, "eccentricity is 0 mm"),
        (centre_of_mass, {"masses_kg": [], "offsets_mm": []}, "0 masses are given for 0 offsets; each part needs both"),
        (centre_of_mass, {"masses_kg": [1.0]}, "1 masses are given for 2 offsets"),
        (centre_of_mass, {"masses_kg": [1.0, 0]}, "mass of a part is 0 kg"),
        (bored_disc_offset, {"diameter_mm": 0}, "diameter is 0 mm"),
        (bored_disc_offset, {"bore_mm": 0}, "bore is 0 mm"),
        (bored_disc_offset, {"bore_mm": 75}, "wall left by the hole is 0 mm"),
        (bored_disc_offset, {"bore_offset_mm": -0.1}, "offset of the hole is -0.1 mm"),
        (bored_disc_offset, {"bore_offset_mm": 25.1}, "offset of the hole is 25.1 mm; the formula holds from 0 mm to 25 mm"),
    ],
)
def test_beyond_its_bounds_it_refuses_and_says_what_was_read(
    formula: Callable[..., Any], change: dict[str, Any], says: str
) -> None:
    with pytest.raises(OutOfRange) as refused:
        formula(**(_GOOD[formula] | change))
    assert says in str(refused.value)


def test_bounds_themselves_are_allowed() -> None:
    assert balance_grade(0, 600) == balance_grade(3, 0) == 0
    assert bored_disc_offset(75, 25, 0) == (0, 0)
    assert bored_disc_offset(75, 25, 25).from_outside_axis_mm == pytest.approx(3.125)
    assert centre_of_mass([2.0], [-3.0]) == 3
    assert centre_of_mass([1.0, 1.0], [5.0, -5.0]) == 0


@given(eccentricity=st.floats(0.01, 5), mass=st.floats(0.1, 20), grade=st.floats(1, 40))
def test_grade_speed_and_eccentricity_are_ways_back(eccentricity: float, mass: float, grade: float) -> None:
    speed = speed_for_grade(grade, eccentricity)
    assert balance_grade(eccentricity, speed) == pytest.approx(grade)
    assert eccentricity_for_grade(grade, speed) == pytest.approx(eccentricity)
    assert unbalance_for_grade(grade, mass, speed) == pytest.approx(mass * 1000 * eccentricity)
    force = unbalance_force(mass, eccentricity, speed)
    assert speed_for_force(force, mass, eccentricity) == pytest.approx(speed)
    assert speed_for_force(force, 4 * mass, eccentricity) == pytest.approx(speed / 2)


def test_usual_grade_in_micrometres_by_the_rule_of_thumb() -> None:
    # 9549 is 30 000 / pi, rounded: micrometres from millimetres a second and turns a minute.
    assert eccentricity_for_grade(6.3, 600) * 1000 == pytest.approx(9549 * 6.3 / 600, rel=1e-4)


@pytest.mark.parametrize(("outside", "bore", "offset"), [(75, 25, 0.8), (60, 40, 5)])
def test_offset_of_a_bored_disc_is_that_of_its_area_integrated(outside: float, bore: float, offset: float) -> None:
    """The disc less the hole, first moment over area, in polar coordinates about the middle of either."""
    hole, _ = dblquad(lambda r, angle: r * (offset + r * math.cos(angle)), 0, 2 * math.pi, 0, bore / 2)
    area = math.pi / 4 * (outside**2 - bore**2)
    found = bored_disc_offset(outside, bore, offset)
    assert found.from_outside_axis_mm == pytest.approx(hole / area)
    # The centre of mass lies on the far side of the middle from the hole.
    assert found.from_hole_axis_mm == pytest.approx(hole / area + offset)


@given(shift=st.floats(-20, 20), mass=st.floats(0.1, 3))
def test_counterweight_brings_the_centre_of_mass_back(shift: float, mass: float) -> None:
    weight = 0.5
    assert centre_of_mass([mass, weight], [shift, -shift * mass / weight]) == pytest.approx(0, abs=1e-9)
