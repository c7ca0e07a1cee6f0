"""Doubt about the difference of two collars and about the move that follows from it."""

from math import hypot, inf, nan, sqrt

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from uncertainties import ufloat

from tailtrue.calc.budget import Component, combined_uncertainty, effective_freedom
from tailtrue.calc.difference_budget import (
    correlated_difference,
    difference_parts,
    move_uncertainty,
    temperature_uncertainty,
    two_instruments,
)
from tailtrue.calc.uncertainty import difference_uncertainty
from tailtrue.calc.validity import OutOfRange

_unsure = st.floats(0, 0.01)
_some = st.floats(1e-6, 0.01)
_PARTS = {
    "repeatability_mm": 0.0015, "readings": 3, "resolution_mm": 0.001, "local_error_mm": 0.0005, "form_mm": 0.001,
    "temperature_mm": 0.000826, "wear_mm": 0.001, "deflection_mm": 0.001,
}  # fmt: skip
_MOVE = {
    "difference_mm": 0.024, "span_mm": 300, "first_station_mm": 30, "second_station_mm": 270,
    "difference_unsure_mm": 0.0018, "span_unsure_mm": 0.58, "first_unsure_mm": 0.29, "second_unsure_mm": 0.29,
}  # fmt: skip


def test_each_part_counts_by_its_own_rule() -> None:
    nothing = dict.fromkeys(_PARTS, 0) | {"readings": 4}
    factors = {
        "repeatability_mm": sqrt(2 / 4), "resolution_mm": sqrt(1 / 6), "local_error_mm": 1 / sqrt(3), "form_mm": sqrt(2 / 3),
        "temperature_mm": 1 / sqrt(3), "wear_mm": 1 / sqrt(3), "deflection_mm": 1 / sqrt(3),
    }  # fmt: skip
    for name, factor in factors.items():
        found = difference_parts(**nothing | {name: 0.006})  # type: ignore[arg-type]
        assert found._asdict() == pytest.approx(dict.fromkeys(factors, 0.0) | {name: factor * 0.006})


@given(values=st.lists(_unsure, min_size=7, max_size=7), readings=st.integers(1, 30))
def test_parts_come_to_the_uncertainty_of_the_difference(values: list[float], readings: int) -> None:
    given_parts = (values[0], readings, *values[1:])
    parts = difference_parts(*given_parts)
    whole = difference_uncertainty(*given_parts)
    assert combined_uncertainty(parts.components()) == pytest.approx(whole, rel=1e-9, abs=1e-15)
    assert difference_uncertainty(values[0], readings + 1, *values[1:]) <= whole


def test_only_the_scatter_of_readings_is_known_from_few() -> None:
    parts = difference_parts(**_PARTS)  # type: ignore[arg-type]
    components = parts.components(4)
    assert components[0] == Component("repeatability", parts.repeatability_mm, 1.0, 4)
    assert [part.name for part in components] == [
        "repeatability",
        "resolution",
        "local_error",
        "form",
        "temperature",
        "wear",
        "deflection",
    ]
    assert all(part.degrees_of_freedom == inf for part in components[1:])
    assert all(part.degrees_of_freedom == inf for part in parts.components())
    assert effective_freedom(components) == pytest.approx(19.486441, rel=1e-6)  # by hand: u^4 / (s^4 / 4)


@pytest.mark.parametrize("name", _PARTS)
def test_part_below_nothing_is_refused(name: str) -> None:
    words = {
        "readings": "number of readings is -1",
        "resolution_mm": "resolution is -1 mm",
        "repeatability_mm": "repeatability is -1 mm",
    }
    for bad in (-1, nan):
        with pytest.raises(
            OutOfRange,
            match=words.get(name, "").replace("-1", str(bad)) or rf" is {bad} mm; the formula holds from 0 mm upward$",
        ):
            difference_parts(**_PARTS | {name: bad})  # type: ignore[arg-type]


def test_at_least_one_reading() -> None:
    with pytest.raises(OutOfRange, match=r"^number of readings is 0; the formula holds from 1 upward$"):
        difference_parts(**_PARTS | {"readings": 0})  # type: ignore[arg-type]
    assert difference_parts(**_PARTS | {"readings": 1}).repeatability_mm == pytest.approx(0.0015 * sqrt(2))  # type: ignore[arg-type]


@given(head=_some, tail=_some, common=_some)
def test_what_two_collars_share_cancels(head: float, tail: float, common: float) -> None:
    shared = ufloat(0, common)
    headstock, tailstock = ufloat(70, head) + shared, ufloat(70, tail) + shared
    correlation = min(1.0, common**2 / (headstock.std_dev * tailstock.std_dev))
    found = correlated_difference(headstock.std_dev, tailstock.std_dev, correlation)
    assert found == pytest.approx((tailstock - headstock).std_dev, rel=1e-6, abs=1e-9)


def test_difference_of_one_instrument_keeps_only_what_differs() -> None:
    assert correlated_difference(0.004, 0.003, 1) == pytest.approx(0.001)
    assert correlated_difference(0.004, 0.003, 0) == pytest.approx(0.005)
    assert correlated_difference(0.004, 0.003, -1) == pytest.approx(0.007)
    for wrong in (1.01, -1.01, nan):
        with pytest.raises(OutOfRange, match=r"^correlation of the two collars is .*; the formula holds from -1 to 1$"):
            correlated_difference(0.004, 0.003, wrong)
    with pytest.raises(
        OutOfRange, match=r"^standard uncertainty of the headstock collar is -1 mm; the formula holds from 0 mm upward$"
    ):
        correlated_difference(-1, 0.003, 0)
    with pytest.raises(
        OutOfRange, match=r"^standard uncertainty of the tailstock collar is -1 mm; the formula holds from 0 mm upward$"
    ):
        correlated_difference(0.003, -1, 0)


@given(one=_unsure, first=_unsure, second=_unsure)
def test_second_instrument_never_helps(one: float, first: float, second: float) -> None:
    found = two_instruments(one, first, second)
    assert found >= one
    assert found == pytest.approx(hypot(one, correlated_difference(first / sqrt(3), second / sqrt(3), 0)))
    assert found == two_instruments(one, second, first)


def test_limits_of_error_are_not_below_nothing() -> None:
    for bad in ((-1, 0, 0), (0, -1, 0), (0, 0, -1)):
        with pytest.raises(OutOfRange, match=r"-1 mm; the formula holds from 0 mm upward$"):
            two_instruments(*bad)
    assert two_instruments(0, 0, 0.003) == pytest.approx(0.003 / sqrt(3))


@pytest.mark.parametrize(("change", "unsure"), [(0, 0.5), (5, 0.5), (-5, 0.5), (20, 0.1), (2, 0)])
def test_growth_scatters_as_it_does_when_drawn(change: float, unsure: float) -> None:
    random = np.random.default_rng(20240101)
    expansion = random.normal(23.6e-6, 1e-6, 200_000)
    drawn = 70 * expansion * random.normal(change, unsure, 200_000)
    assert temperature_uncertainty(70, 23.6e-6, 1e-6, change, unsure) == pytest.approx(float(drawn.std()), rel=0.01)


def test_growth_has_bounds() -> None:
    sound = (70, 23.6e-6, 1e-6, 5, 0.5)
    for place, bad, said in [
        (0, 0, "length is 0 mm; it must be more than 0 mm"),
        (1, 0, "coefficient of expansion is 0 1/K; it must be more than 0 1/K"),
        (2, -1, "uncertainty of the coefficient of expansion is -1 1/K; the formula holds from 0 1/K upward"),
        (3, 50.1, "change of temperature is 50.1 K; the formula holds from -50 K to 50 K"),
        (3, -50.1, "change of temperature is -50.1 K; the formula holds from -50 K to 50 K"),
        (4, -1, "uncertainty of the change of temperature is -1 K; the formula holds from 0 K upward"),
    ]:
        with pytest.raises(OutOfRange) as refused:
            temperature_uncertainty(*(bad if place == other else value for other, value in enumerate(sound)))
        assert str(refused.value) == said
    assert temperature_uncertainty(70, 23.6e-6, 1e-6, 50, 0.5) == temperature_uncertainty(70, 23.6e-6, 1e-6, -50, 0.5)
    assert temperature_uncertainty(70, 23.6e-6, 0, 5, 0) == 0


@given(
    difference=st.floats(-0.5, 0.5), span=st.floats(150, 600), share=st.floats(0, 0.3), unsure=_some,
    lengths=st.tuples(st.floats(0.01, 2), st.floats(0.01, 2), st.floats(0.01, 2)),
)  # fmt: skip
def test_doubt_about_the_move_agrees_with_an_uncertainty_library(
    difference: float, span: float, share: float, unsure: float, lengths: tuple[float, float, float]
) -> None:
    first, second = share * span, (1 - share) * span
    measured = ufloat(difference, unsure)
    length, head, tail = (ufloat(value, doubt) for value, doubt in zip((span, first, second), lengths, strict=True))
    move = measured / 2 * length / (tail - head)
    found = move_uncertainty(difference, span, first, second, unsure, *lengths)
    assert found == pytest.approx(move.std_dev, rel=1e-6, abs=1e-15)
    assert move_uncertainty(-difference, span, first, second, unsure, *lengths) == found
    inch = move_uncertainty(*(value / 25.4 for value in (difference, span, first, second, unsure, *lengths)))
    assert inch * 25.4 == pytest.approx(found, rel=1e-9, abs=1e-15)


def test_doubt_about_lengths_is_bounded() -> None:
    most = 0.05 * 240
    for name, said in [
        ("span_unsure_mm", "span"),
        ("first_unsure_mm", "first station"),
        ("second_unsure_mm", "second station"),
    ]:
        assert move_uncertainty(**_MOVE | {name: most}) > 0
        for wrong in (most * 1.001, -0.001, nan):
            with pytest.raises(
                OutOfRange, match=rf"^uncertainty of the {said} is .* mm; the formula holds from 0 mm to 12 mm$"
            ):
                move_uncertainty(**_MOVE | {name: wrong})
    with pytest.raises(OutOfRange, match=r"^uncertainty of the difference is -1 mm; the formula holds from 0 mm upward$"):
        move_uncertainty(**_MOVE | {"difference_unsure_mm": -1})
    with pytest.raises(OutOfRange):
        move_uncertainty(**_MOVE | {"second_station_mm": 301})
