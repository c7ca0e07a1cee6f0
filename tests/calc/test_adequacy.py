"""Is the instrument good enough, and how many readings does it take."""

from math import inf, nan, sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tailtrue.calc.adequacy import adequate, readings_for_target, readings_to_settle, resolution_adequate
from tailtrue.calc.uncertainty import verdict
from tailtrue.calc.validity import OutOfRange


@pytest.mark.parametrize("formula", [adequate, resolution_adequate])
def test_share_of_the_limit_itself_is_good_enough(formula) -> None:  # type: ignore[no-untyped-def]
    assert formula(0.1, 0.3, 1 / 3)
    assert formula(0.004, 0.012, 1 / 3)
    assert formula(0.01, 0.01, 1)
    assert not formula(0.00401, 0.012, 1 / 3)
    assert not formula(0.01001, 0.01, 1)
    assert not formula(0.01 * (1 + 1e-7), 0.01, 1)
    for wrong, said in [
        (0, "is 0; it must be more than 0"),
        (1.01, r"is 1\.01; the formula holds from 0 to 1"),
        (nan, "is nan;"),
    ]:
        with pytest.raises(OutOfRange, match=rf"^share of the limit {said}"):
            formula(0.001, 0.01, wrong)
    with pytest.raises(OutOfRange, match=r"^limit is 0 mm; it must be more than 0 mm$"):
        formula(0.001, 0, 0.5)


def test_step_is_more_than_nothing_and_uncertainty_is_not_less() -> None:
    assert adequate(0, 0.01, 0.1)
    with pytest.raises(OutOfRange, match=r"^expanded uncertainty is -0\.001 mm; the formula holds from 0 mm upward$"):
        adequate(-0.001, 0.01, 0.1)
    with pytest.raises(OutOfRange, match=r"^smallest step is 0 mm; it must be more than 0 mm$"):
        resolution_adequate(0, 0.01, 0.1)


@given(scatter=st.floats(0.0002, 0.005), other=st.floats(0, 0.004), readings=st.integers(1, 50))
def test_count_is_the_least_that_reaches_the_target(scatter: float, other: float, readings: int) -> None:
    def unsure(count: int) -> float:
        return sqrt(2 * scatter**2 / count + other**2)

    assert readings_for_target(unsure(readings) * (1 + 1e-6), scatter, other, 60) == readings
    needed = (
        readings_for_target(unsure(readings) * 0.995, scatter, other, 10**9)
        if unsure(readings) * 0.995 > other
        else readings
    )
    assert needed == 1 or unsure(needed) <= unsure(readings) * 0.995 * (1 + 1e-8) < unsure(needed - 1) or needed == readings


def test_count_at_its_bounds() -> None:
    assert readings_for_target(0.002, 0.002, 0, 2) == 2  # 2 * 4 / 4
    assert readings_for_target(0.002, 0.0021, 0, 3) == 3
    assert readings_for_target(0.01, 0.001, 0, 1) == 1
    assert readings_for_target(0.001, 0, 0.00099, 1) == 1
    assert readings_for_target(0.001, 0, 0, 1) == 1


def test_no_number_of_readings_gets_under_the_floor() -> None:
    said = (
        r"^the standard uncertainty wanted is 0\.001 mm, and 0\.00135 mm of it is none that readings lessen; "
        r"no number of readings reaches it: take a better instrument or a better cut, or a wider limit$"
    )
    with pytest.raises(OutOfRange, match=said):
        readings_for_target(0.001, 0.0015, 0.00135, 20)
    with pytest.raises(OutOfRange, match="no number of readings reaches it"):
        readings_for_target(0.00135, 0.0015, 0.00135, 20)
    for target in (0.001, 0.00099):
        with pytest.raises(OutOfRange, match="no number of readings reaches it"):
            readings_for_target(target, 0, 0.001, 20)


def test_more_readings_than_anybody_takes_are_refused() -> None:
    said = (
        r"^a standard uncertainty of 0\.0014 mm takes more than 20 readings on each collar; "
        r"take a better instrument or a better cut, or a wider limit$"
    )
    with pytest.raises(OutOfRange, match=said):
        readings_for_target(0.0014, 0.0015, 0.00135, 20)
    with pytest.raises(OutOfRange, match="takes more than 1 readings"):
        readings_for_target(0.002, 0.002, 0, 1)
    with pytest.raises(OutOfRange, match="takes more than 1000 readings"):
        readings_for_target(1.35000000000000018e-3, 0.0015, 0.00135, 1000)


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        ((0, 0.001, 0, 5), r"^uncertainty wanted is 0 mm; it must be more than 0 mm$"),
        ((0.001, -1, 0, 5), r"^repeatability is -1 mm; the formula holds from 0 mm upward$"),
        (
            (0.001, 0.001, -1, 5),
            r"^uncertainty that readings do not lessen is -1 mm; the formula holds from 0 mm upward$",
        ),
        ((0.001, 0.001, 0, 0), r"^most readings is 0; the formula holds from 1 upward$"),
        ((nan, 0.001, 0, 5), r"^uncertainty wanted is nan mm"),
    ],
)
def test_target_must_be_sound(arguments: tuple[float, float, float, int], said: str) -> None:
    with pytest.raises(OutOfRange, match=said):
        readings_for_target(*arguments)


@given(
    difference=st.floats(-0.03, 0.03), scatter=st.floats(0, 0.005), other=st.floats(0, 0.004), most=st.integers(1, 40),
    coverage=st.floats(1, 3),
)  # fmt: skip
def test_count_that_settles_is_the_first_with_a_verdict(
    difference: float, scatter: float, other: float, most: int, coverage: float
) -> None:
    said = [
        verdict(difference, coverage * (2 * scatter**2 / count + other**2) ** 0.5, 0.01) != "too close to say"
        for count in range(1, most + 1)
    ]
    found = readings_to_settle(difference, 0.01, scatter, other, most, coverage)
    assert found == (said.index(True) + 1 if any(said) else 0)
    assert found == readings_to_settle(-difference, 0.01, scatter, other, most, coverage)


def test_count_that_settles_at_its_bounds() -> None:
    # U = 2 sqrt(2 * 1 / n) um against a gap of 2 um: two readings.
    assert readings_to_settle(0.007, 0.010, 0.001, 0, 1, coverage=2) == 1
    assert readings_to_settle(0.00799, 0.010, 0.001, 0, 2, coverage=2) == 2
    assert readings_to_settle(0.00799, 0.010, 0.001, 0, 1, coverage=2) == 0
    assert readings_to_settle(0.01201, 0.010, 0.001, 0, 5, coverage=2) == 2
    assert readings_to_settle(0.00799, 0.010, 0.001, 0, 5, 1) == 1
    assert readings_to_settle(0.010, 0.010, 0.001, 0, 1000, coverage=2) == 0
    assert readings_to_settle(0.010, 0.010, 0, 0, 1, coverage=2) == 1


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        ((inf, 0.01, 0.001, 0, 5, 2), r"^difference is inf mm; it must be a finite number$"),
        ((0, 0, 0.001, 0, 5, 2), r"^limit is 0 mm; it must be more than 0 mm$"),
        ((0, 0.01, -1, 0, 5, 2), r"^repeatability is -1 mm; the formula holds from 0 mm upward$"),
        (
            (0, 0.01, 0.001, -1, 5, 2),
            r"^uncertainty that readings do not lessen is -1 mm; the formula holds from 0 mm upward$",
        ),
        ((0, 0.01, 0.001, 0, 0, 2), r"^most readings is 0; the formula holds from 1 to 1000$"),
        ((0, 0.01, 0.001, 0, 1001, 2), r"^most readings is 1001; the formula holds from 1 to 1000$"),
        ((0, 0.01, 0.001, 0, 5, 0), r"^coverage factor is 0; it must be more than 0$"),
    ],
)
def test_question_must_be_sound(arguments: tuple[float, ...], said: str) -> None:
    with pytest.raises(OutOfRange, match=said):
        readings_to_settle(*arguments)  # type: ignore[arg-type]
