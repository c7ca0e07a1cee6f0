"""Judging a bore: errors of the hand, uncertainty, plugs, reamers; and the bow of bar."""

from collections.abc import Callable
from math import cos, hypot, inf, nan, radians, sin, sqrt
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from uncertainties import ufloat

from tailtrue.calc.bar_stock import bow_of_piece
from tailtrue.calc.bore_gauging import (
    bore_reading_uncertainty,
    chord_error,
    gauge_shares,
    plug_limits,
    reamer_limits,
    tilt_error,
)
from tailtrue.calc.fit_temperature import clearance_at, reading_when_warm, size_at_20
from tailtrue.calc.fits import bore_target, class_fit, measured_fit
from tailtrue.calc.validity import OutOfRange

DIAMETERS = st.floats(5, 100)


@given(diameter=DIAMETERS, tilt=st.floats(-5, 5))
def test_a_leaning_gauge_spans_the_slanting_distance(diameter: float, tilt: float) -> None:
    along = diameter * sin(radians(tilt)) / cos(radians(tilt))
    assert tilt_error(diameter, tilt) == pytest.approx(hypot(diameter, along) - diameter, abs=1e-9)
    assert tilt_error(diameter, tilt) >= 0


@given(diameter=DIAMETERS, share=st.floats(-0.1, 0.1))
def test_a_chord_is_shorter_than_the_diameter(diameter: float, share: float) -> None:
    offset = share * diameter * 0.999
    half = sqrt((diameter / 2) ** 2 - offset**2)
    assert chord_error(diameter, offset) == pytest.approx(2 * half - diameter, abs=1e-9)
    assert chord_error(diameter, offset) <= 0


def test_the_two_errors_have_opposite_signs() -> None:
    assert tilt_error(25, 1) > 0 > chord_error(25, 0.1)
    assert tilt_error(25, -1) == tilt_error(25, 1)
    assert chord_error(25, -0.1) == chord_error(25, 0.1)
    assert tilt_error(25, 0) == chord_error(25, 0) == 0


@pytest.mark.parametrize("tilt", [5.001, -5.001])
def test_a_gauge_plainly_askew_is_refused(tilt: float) -> None:
    assert tilt_error(25, 5) == tilt_error(25, -5)
    with pytest.raises(OutOfRange, match=r"^tilt of the gauge is .*; the formula holds from -5 degrees to 5 degrees"):
        tilt_error(25, tilt)


def test_a_gauge_far_off_the_diameter_is_refused() -> None:
    assert chord_error(25, 2.5) == pytest.approx(25 * (sqrt(0.96) - 1))
    for offset in (2.501, -2.501):
        with pytest.raises(OutOfRange, match=r"^offset of the gauge as a share of the diameter is 0\.10004; .* 0 to 0\.1$"):
            chord_error(25, offset)


def test_a_bore_has_a_diameter() -> None:
    for error in (tilt_error, chord_error):
        with pytest.raises(OutOfRange, match=r"^diameter of the bore is 0 mm"):
            error(0, 0)


PARTS = {
    "instrument_mm": 0.004,
    "reading_mm": 0.002,
    "feel_mm": 0.008,
    "readings": 3,
    "temperature_mm": 0.0018,
    "form_mm": 0.003,
}


def budget(**changed: float) -> float:
    return bore_reading_uncertainty(**{**PARTS, **changed})  # type: ignore[arg-type]


def test_budget_agrees_with_propagation() -> None:
    settings = [ufloat(25, 0.008) for _ in range(3)]
    others = [ufloat(0, half / sqrt(3)) for half in (0.004, 0.002, 0.0018, 0.003)]
    assert budget() == pytest.approx((sum(settings) / 3 + sum(others)).std_dev, rel=1e-9)


@pytest.mark.parametrize("part", ["instrument_mm", "reading_mm", "temperature_mm", "form_mm"])
def test_each_half_width_counts_as_rectangular(part: str) -> None:
    nothing = dict.fromkeys(PARTS, 0.0) | {"readings": 1}
    assert bore_reading_uncertainty(**{**nothing, part: 0.003}) == pytest.approx(0.003 / sqrt(3))  # type: ignore[arg-type]


def test_feel_is_averaged_out_by_setting_anew() -> None:
    nothing = dict.fromkeys(PARTS, 0.0) | {"feel_mm": 0.008}
    assert bore_reading_uncertainty(**{**nothing, "readings": 4}) == pytest.approx(0.004)  # type: ignore[arg-type]
    assert budget(readings=4) < budget(readings=3) < budget(readings=1)


@pytest.mark.parametrize(
    ("part", "said"),
    [
        ("instrument_mm", "^error of the micrometer is -0"), ("reading_mm", "^half width of reading is -0"),
        ("feel_mm", "^scatter of feel is -0"), ("temperature_mm", "^half width of temperature is -0"),
        ("form_mm", "^half width of form is -0"),
    ],
)  # fmt: skip
def test_no_part_of_the_budget_is_less_than_nought(part: str, said: str) -> None:
    with pytest.raises(OutOfRange, match=said):
        budget(**{part: -0.001})


def test_there_is_at_least_one_setting() -> None:
    with pytest.raises(OutOfRange, match=r"^number of settings is 0; the formula holds from 1 upward"):
        budget(readings=0)


def test_the_two_ways_to_judge_a_gauge_differ_by_the_factor_of_two() -> None:
    shares = gauge_shares(0.04, 0.005)
    assert shares.ratio_to_double_uncertainty == pytest.approx(4)
    assert shares.uncertainty_share == pytest.approx(0.125)
    with pytest.raises(OutOfRange, match=r"^tolerance is 0 mm"):
        gauge_shares(0, 0.005)
    with pytest.raises(OutOfRange, match=r"^expanded uncertainty is 0 mm"):
        gauge_shares(0.04, 0)


@given(least=st.floats(5, 60), tolerance=st.floats(0.001, 0.2), share=st.floats(0, 0.5))
def test_plugs_stand_in_order_and_inside_the_limits(least: float, tolerance: float, share: float) -> None:
    plugs = plug_limits(least, least + tolerance, share)
    assert list(plugs) == sorted(plugs)
    assert plugs.go_least_mm == least
    assert plugs.no_go_largest_mm == least + tolerance
    assert plugs.go_largest_mm - plugs.go_least_mm == pytest.approx(share * tolerance / 2, abs=1e-9)
    assert plugs.no_go_largest_mm - plugs.no_go_least_mm == pytest.approx(share * tolerance / 2, abs=1e-9)


@pytest.mark.parametrize("share", [-0.001, 0.501])
def test_plugs_never_take_most_of_the_tolerance(share: float) -> None:
    assert plug_limits(25, 26, 0.5) == (25, 25.25, 25.75, 26)
    with pytest.raises(OutOfRange, match=r"^share of the tolerance for the plugs is .* from 0 to 0\.5$"):
        plug_limits(25, 26, share)


def test_plugs_need_a_tolerance() -> None:
    with pytest.raises(OutOfRange, match=r"^least bore is 0 mm"):
        plug_limits(0, 1, share=0.1)
    with pytest.raises(OutOfRange, match=r"^tolerance of the bore is 0 mm"):
        plug_limits(25, 25, share=0.1)


@pytest.mark.parametrize(
    ("tolerance", "least", "largest"),
    [(20, 10, 17), (40, 20, 34), (1, -1, 0), (100, 50, 85), (101, 49, 85)],
)
def test_shares_of_a_reamer_round_up_to_whole_micrometres(tolerance: float, least: float, largest: float) -> None:
    # 0.15 of 20 is 3 and 0.35 of 20 is 7: whole already. Of 101 they are 15.15 and 35.35.
    assert reamer_limits(25, 0, tolerance) == pytest.approx((25 + least / 1000, 25 + largest / 1000), abs=1e-9)


@given(lower=st.floats(-100, 100), tolerance=st.floats(7, 300))
def test_a_reamer_is_smaller_than_the_largest_hole(lower: float, tolerance: float) -> None:
    least, largest = reamer_limits(25, lower, lower + tolerance)
    assert 25 + lower / 1000 <= least + 0.002
    assert least < largest < 25 + (lower + tolerance) / 1000


def test_a_reamer_needs_a_hole() -> None:
    with pytest.raises(OutOfRange, match=r"^nominal size is 0 mm"):
        reamer_limits(0, 0, 21)
    with pytest.raises(OutOfRange, match=r"^tolerance of the hole is 0 um"):
        reamer_limits(25, 21, 21)


@given(bow=st.floats(0, 5), reference=st.floats(100, 4000), share=st.floats(0.01, 1))
def test_a_piece_is_never_more_bent_than_the_bar(bow: float, reference: float, share: float) -> None:
    even, kink = bow_of_piece(bow, reference, reference * share)
    assert 0 <= even <= kink * (1 + 1e-9) <= bow * (1 + 2e-9)


def test_an_even_bend_is_an_arc() -> None:
    """Height of an arc of 1000 mm and of 300 mm cut from it, by the circle itself."""
    radius = 1000**2 / 8 / 1.0
    exact = radius - sqrt(radius**2 - 150**2)
    assert bow_of_piece(1.0, 1000, 300).even_mm == pytest.approx(exact, rel=1e-4)
    assert bow_of_piece(1.0, 1000, 1000) == (1.0, 1.0)
    assert bow_of_piece(0, 1000, 300) == (0, 0)


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        ((-0.1, 1000, 300), r"^bow is -0\.1 mm"),
        ((1, 0, 300), "^length of the straightness limit is 0 mm"),
        ((1, 1000, 0), "^length of the piece is 0 mm"),
        ((1, 1000, 1001), r"^length of the piece as a share of the length of the limit is 1\.001; .* 0 to 1$"),
    ],
)
def test_a_bow_is_not_carried_beyond_its_length(arguments: tuple[float, float, float], said: str) -> None:
    with pytest.raises(OutOfRange, match=said):
        bow_of_piece(*arguments)


SOUND: list[tuple[Callable[..., Any], tuple[float, ...]]] = [
    (tilt_error, (25, 1)), (chord_error, (25, 0.1)), (bore_reading_uncertainty, (0.004, 0.002, 0.008, 3, 0.0018, 0.003)),
    (gauge_shares, (0.05, 0.01)), (plug_limits, (25, 25.04, 0.1)), (reamer_limits, (25, 0, 21)), (bow_of_piece, (1, 1000, 300)),
    (size_at_20, (25, 2e-5, 30, 1e-5, 20)), (reading_when_warm, (25, 2e-5, 30, 1e-5, 20)),
    (clearance_at, (0.05, 25, 2e-5, 30, 1e-5, 20)), (bore_target, (24.99, 25.01, 0.01)),
    (class_fit, (0, 21, -20, -7)), (measured_fit, (25, 25.02, 24.9, 24.95, 0.01)),
]  # fmt: skip


@pytest.mark.parametrize(
    ("formula", "sound", "place", "bad"),
    [(formula, sound, place, bad) for formula, sound in SOUND for place in range(len(sound)) for bad in (nan, inf, -inf)],
)
def test_what_is_no_number_is_refused_in_plain_words(
    formula: Callable[..., Any], sound: tuple[float, ...], place: int, bad: float
) -> None:
    formula(*sound)
    with pytest.raises(OutOfRange, match=r"^[a-z]") as refused:
        formula(*sound[:place], bad, *sound[place + 1 :])
    assert "_" not in str(refused.value)
