"""Sizes and clearances away from 20 degC."""

from math import inf

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tailtrue.calc.fit_temperature import clearance_at, reading_when_warm, size_at_20
from tailtrue.calc.thermal import growth
from tailtrue.calc.validity import OutOfRange

STEEL, ALUMINIUM = 11.5e-6, 23.6e-6
warmth = st.floats(-30, 70)
expansion = st.floats(5e-6, 3e-5)


def test_at_20_degrees_nothing_changes() -> None:
    assert size_at_20(25.03, ALUMINIUM, 20, STEEL, 20) == 25.03
    assert reading_when_warm(25.03, ALUMINIUM, 20, STEEL, 20) == 25.03
    assert clearance_at(0.05, 25, ALUMINIUM, 20, STEEL, 20) == 0.05


def test_a_warm_bore_reads_larger_than_it_will_be() -> None:
    assert reading_when_warm(25, ALUMINIUM, 45, STEEL, 20) == pytest.approx(25 * (1 + 25 * ALUMINIUM), rel=1e-6)
    assert size_at_20(25, ALUMINIUM, 45, STEEL, 20) == 25 * (1 - 25 * ALUMINIUM)


def test_a_warm_gauge_reads_smaller_than_the_part_is() -> None:
    assert reading_when_warm(25, ALUMINIUM, 20, STEEL, 30) < 25
    assert size_at_20(25, ALUMINIUM, 20, STEEL, 30) == 25 * (1 + 10 * STEEL)


def test_part_and_gauge_of_one_metal_and_one_warmth_read_true() -> None:
    assert size_at_20(25, STEEL, 35, STEEL, 35) == pytest.approx(25, abs=1e-12)


@given(size=st.floats(1, 200), work=expansion, work_t=warmth, gauge=expansion, gauge_t=warmth)
def test_reading_and_size_are_each_others_inverse(
    size: float, work: float, work_t: float, gauge: float, gauge_t: float
) -> None:
    reading = reading_when_warm(size, work, work_t, gauge, gauge_t)
    assert size_at_20(reading, work, work_t, gauge, gauge_t) == pytest.approx(size, rel=1e-12)
    # Exactly: the part grows, and the gauge counts in steps that have grown too.
    exact = size * (1 + work * (work_t - 20)) / (1 + gauge * (gauge_t - 20))
    assert reading == pytest.approx(exact, rel=5e-6)


@given(clearance=st.floats(-0.1, 0.2), bore=expansion, bore_t=warmth, shaft=expansion, shaft_t=warmth)
def test_clearance_is_that_of_the_two_parts_grown(
    clearance: float, bore: float, bore_t: float, shaft: float, shaft_t: float
) -> None:
    found = clearance_at(clearance, 25, bore, bore_t, shaft, shaft_t)
    assert found == pytest.approx(clearance + growth(25, bore, bore_t - 20) - growth(25, shaft, shaft_t - 20), abs=1e-12)


def test_a_warm_collar_gains_clearance_and_a_warm_bar_loses_it() -> None:
    assert clearance_at(0, 25, ALUMINIUM, 30, STEEL, 20) > 0 > clearance_at(0, 25, ALUMINIUM, 20, STEEL, 30)


@given(bore_t=warmth, shaft_t=warmth, diameter_in=st.floats(0.25, 3))
def test_inch_and_mm_agree(bore_t: float, shaft_t: float, diameter_in: float) -> None:
    in_inches = clearance_at(0.001, diameter_in, ALUMINIUM, bore_t, STEEL, shaft_t)
    in_mm = clearance_at(0.0254, diameter_in * 25.4, ALUMINIUM, bore_t, STEEL, shaft_t)
    assert in_mm == pytest.approx(in_inches * 25.4, abs=1e-12)


@pytest.mark.parametrize("temperature", [-30, 70])
def test_the_ends_of_the_range_belong_to_it(temperature: float) -> None:
    assert size_at_20(25, ALUMINIUM, temperature, STEEL, temperature) > 0
    assert clearance_at(0, 25, ALUMINIUM, temperature, STEEL, temperature) != 0


@pytest.mark.parametrize("temperature", [-30.01, 70.01])
def test_beyond_the_range_nothing_is_said(temperature: float) -> None:
    with pytest.raises(OutOfRange, match=r"^temperature of the part is .*; the formula holds from -30 degC to 70 degC"):
        size_at_20(25, ALUMINIUM, temperature, STEEL, 20)
    with pytest.raises(OutOfRange, match=r"^temperature of the gauge is "):
        reading_when_warm(25, ALUMINIUM, 20, STEEL, temperature)
    with pytest.raises(OutOfRange, match=r"^temperature of the part with the bore is "):
        clearance_at(0, 25, ALUMINIUM, temperature, STEEL, 20)
    with pytest.raises(OutOfRange, match=r"^temperature of the shaft is "):
        clearance_at(0, 25, ALUMINIUM, 20, STEEL, temperature)


def test_sizes_and_coefficients_are_more_than_nought() -> None:
    with pytest.raises(OutOfRange, match=r"^reading is 0 mm"):
        size_at_20(0, ALUMINIUM, 20, STEEL, 20)
    with pytest.raises(OutOfRange, match=r"^size at 20 degC is 0 mm"):
        reading_when_warm(0, ALUMINIUM, 20, STEEL, 20)
    with pytest.raises(OutOfRange, match=r"^coefficient of expansion of the part is 0 1/K"):
        size_at_20(25, 0, 20, STEEL, 20)
    with pytest.raises(OutOfRange, match=r"^coefficient of expansion of the gauge is 0 1/K"):
        size_at_20(25, ALUMINIUM, 20, 0, 20)
    with pytest.raises(OutOfRange, match=r"^coefficient of expansion of the collar is 0 1/K"):
        clearance_at(0, 25, 0, 20, STEEL, 20)
    with pytest.raises(OutOfRange, match=r"^coefficient of expansion of the bar is 0 1/K"):
        clearance_at(0, 25, ALUMINIUM, 20, 0, 20)
    with pytest.raises(OutOfRange, match=r"^diameter of the joint is 0 mm"):
        clearance_at(0, 0, ALUMINIUM, 20, STEEL, 20)
    with pytest.raises(OutOfRange, match=r"^clearance at 20 degC is inf mm"):
        clearance_at(inf, 25, ALUMINIUM, 20, STEEL, 20)
