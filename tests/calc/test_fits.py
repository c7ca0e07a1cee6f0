"""The window for the bore: drawn in by the gauge, rounded inward, refused when nothing is left; fits and their kinds."""

import csv
from math import inf, nan
from pathlib import Path

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from uncertainties import ufloat

from tailtrue.calc.doubts import both_together
from tailtrue.calc.fits import (
    Fit,
    Zone,
    bore_target,
    bore_window,
    class_fit,
    diametral_clearance,
    measured_fit,
)
from tailtrue.calc.validity import OutOfRange

_WAYS = Path(__file__).parents[2] / "knowledge" / "fits" / "attachment_clearance.csv"


def ways_of_joining() -> list[dict[str, str]]:
    with _WAYS.open(encoding="utf-8", newline="") as lines:
        return list(csv.DictReader(lines))


def test_whole_steps_stay_where_they_are() -> None:
    # 24.974 + 0.025 is a whole step whose binary form may lie on either side of it.
    assert bore_window(24.966, 24.974, 0.025, 0.075, 0, 0.001) == pytest.approx((24.999, 25.041), abs=1e-9)


def test_zero_readings_give_what_is_to_be_added() -> None:
    low, high = bore_window(0, 0, 0.025, 0.075, 0.01, 0.005)
    assert (low, high) == pytest.approx((0.035, 0.065), abs=1e-9)


def test_an_uneven_bar_or_a_coarse_gauge_leaves_nothing() -> None:
    with pytest.raises(OutOfRange, match=r"^no bore is surely right: .* helps$"):
        bore_window(24.90, 24.974, 0.025, 0.075, 0, 0.001)
    with pytest.raises(OutOfRange, match=r"at least 25\.029 mm and at most 25\.011 mm in steps of 0\.001 mm"):
        bore_window(24.966, 24.974, 0.025, 0.075, 0.03, 0.001)


def test_readings_must_come_smallest_first() -> None:
    with pytest.raises(OutOfRange, match=r"^largest reading of the bar is 24\.9 mm"):
        bore_window(25, 24.9, 0.025, 0.075, 0, 0.001)


@given(
    bar=st.floats(10, 60),
    uneven=st.floats(0, 0.02),
    least=st.floats(0, 0.05),
    wide=st.floats(0.02, 0.2),
    unsure=st.floats(0, 0.03),
    step=st.sampled_from([0.001, 0.002, 0.005, 0.01, 0.00127, 0.00254, 0.0127]),
)
def test_any_accepted_reading_gives_a_clearance_inside_the_limits(
    bar: float, uneven: float, least: float, wide: float, unsure: float, step: float
) -> None:
    largest = least + wide
    try:
        low, high = bore_window(bar, bar + uneven, least, largest, unsure, step)
    except OutOfRange:
        # Refused only when less than two whole steps fit between the drawn-in limits.
        assert (bar + largest - unsure) - (bar + uneven + least + unsure) < 2 * step
        return
    assert low < high
    slack = 1e-5 * step
    assert low - unsure - (bar + uneven) >= least - slack
    assert high + unsure - bar <= largest + slack
    assert abs(low / step - round(low / step)) < 1e-6
    assert abs(high / step - round(high / step)) < 1e-6


@given(unsure=st.floats(0, 0.02), more=st.floats(0, 0.02))
def test_a_worse_gauge_never_widens_the_window(unsure: float, more: float) -> None:
    assume(unsure + more < 0.02)
    low, high = bore_window(25, 25, 0.02, 0.10, unsure, 0.001)
    low_worse, high_worse = bore_window(25, 25, 0.02, 0.10, unsure + more, 0.001)
    assert low_worse >= low
    assert high_worse <= high


WAYS = ways_of_joining()


@pytest.mark.parametrize("way", WAYS, ids=[f"{way['method']}-{way['upto_mm']}" for way in WAYS])
def test_every_way_of_joining_has_a_window_for_a_good_gauge_or_is_refused(way: dict[str, str]) -> None:
    """Press and shrink fits have clearances below nought; the window is then below the bar."""
    least, largest, bar = float(way["least_mm"]), float(way["largest_mm"]), float(way["upto_mm"])
    low, high = bore_window(bar - 0.002, bar, least, largest, 0.001, 0.001)
    assert low - 0.001 - bar >= least - 1e-9
    assert high + 0.001 - (bar - 0.002) <= largest + 1e-9
    target = bore_target(low, high, 0.001)
    assert low <= target <= high
    with pytest.raises(OutOfRange, match=r"^no bore is surely right"):
        bore_window(bar - 0.002, bar, least, largest, (largest - least) / 2, 0.001)


@pytest.mark.parametrize(
    ("low", "high", "step", "target"),
    [
        (24.999, 25.041, 0.01, 25.02),
        (25.00, 25.05, 0.01, 25.02),  # in the middle of two steps: a bore can be opened, not closed
        (25.00, 25.0501, 0.01, 25.03),
        (25.01, 25.02, 0.01, 25.01),
        (25.02, 25.02, 0.01, 25.02),
        (25.015, 25.025, 0.01, 25.02),
        (25.39492, 25.4381, 0.0127, 25.4127),
    ],
)
def test_the_target_is_the_step_nearest_to_the_middle(low: float, high: float, step: float, target: float) -> None:
    assert bore_target(low, high, step) == pytest.approx(target, abs=1e-9)


def test_without_a_step_inside_there_is_no_target() -> None:
    said = r"^no whole step of 0\.01 mm lies from 25\.021 mm to 25\.029 mm; set the cut in finer steps"
    with pytest.raises(OutOfRange, match=said):
        bore_target(25.021, 25.029, 0.01)
    with pytest.raises(OutOfRange, match=r"^no whole step"):
        bore_target(25.026, 25.029, 0.01)
    assert bore_target(25.021, 25.029, 0.001) == pytest.approx(25.025, abs=1e-9)


@given(low=st.floats(5, 60), wide=st.floats(0, 0.2), step=st.sampled_from([0.001, 0.005, 0.01, 0.0127, 0.02]))
def test_a_target_is_a_whole_step_inside_the_window(low: float, wide: float, step: float) -> None:
    try:
        target = bore_target(low, low + wide, step)
    except OutOfRange:
        assert wide < step
        return
    assert low - 1e-5 * step <= target <= low + wide + 1e-5 * step
    assert abs(target / step - round(target / step)) < 1e-6
    assert abs(target - (low + wide / 2)) <= step / 2 * 1.0001


@pytest.mark.parametrize(
    ("low", "high", "step", "said"),
    [
        (0, 25, 0.01, "^smallest bore is 0 mm; it must be more than 0 mm"),
        (25, 24.9, 0.01, r"^largest bore is 24\.9 mm; the formula holds from 25 mm"),
        (25, 25.1, 0, "^step is 0 mm"),
    ],
)
def test_a_target_needs_a_window_and_a_step(low: float, high: float, step: float, said: str) -> None:
    with pytest.raises(OutOfRange, match=said):
        bore_target(low, high, step)


@given(bar=st.floats(1e-6, 0.05), bore=st.floats(1e-6, 0.05))
def test_uncertainty_of_a_clearance_agrees_with_propagation(bar: float, bore: float) -> None:
    clearance = ufloat(25.02, bore) - ufloat(24.97, bar)
    assert both_together(bar, bore) == pytest.approx(clearance.std_dev, abs=1e-12)


@pytest.mark.parametrize(
    ("limits", "fit", "kind"),
    [
        ((0, 21, -20, -7), (0.007, 0.041), "clearance"),
        ((0, 21, -13, 0), (0, 0.034), "clearance"),
        ((0, 21, -13, 0.001), (-1e-6, 0.034), "transition"),
        ((0, 21, 2, 15), (-0.015, 0.019), "transition"),
        ((0, 21, 20.999, 35), (-0.035, 1e-6), "transition"),
        ((0, 21, 21, 35), (-0.035, 0), "interference"),
        ((-35, -14, -13, 0), (-0.035, -0.001), "interference"),
        ((0, 0, 0, 0), (0, 0), "clearance"),
    ],
)
def test_kind_of_a_fit(limits: tuple[float, float, float, float], fit: tuple[float, float], kind: str) -> None:
    found = class_fit(*limits)
    assert found == fit
    assert found.kind == kind


@pytest.mark.parametrize(
    ("limits", "said"),
    [
        ((nan, 21, -20, -7), "^lower deviation of the hole is nan um"),
        ((22, 21, -20, -7), "^upper deviation of the hole is 21 um; the formula holds from 22 um"),
        ((0, 21, -inf, -7), "^lower deviation of the shaft is -inf um"),
        ((0, 21, -6, -7), "^upper deviation of the shaft is -7 um; the formula holds from -6 um"),
    ],
)
def test_limits_stand_in_order(limits: tuple[float, float, float, float], said: str) -> None:
    with pytest.raises(OutOfRange, match=said):
        class_fit(*limits)


def test_a_zone_knows_its_limits_of_size() -> None:
    assert (Zone(25, -20, -7).least_mm, Zone(25, -20, -7).largest_mm) == (24.98, 24.993)
    assert Zone(25, -10.5, 10.5).least_mm == 24.9895
    # Without the dust of binary sums.
    assert (Zone(0.1, 200, 200).least_mm, Zone(0.1, 200, 200).largest_mm) == (0.3, 0.3)


def test_a_bar_as_measured_in_a_bore_class() -> None:
    assert measured_fit(25.0, 25.021, 24.966, 24.974, 0.005) == Fit(0.021, 0.06)
    # The same bar nearly at size: whether it goes in cannot be said.
    assert measured_fit(25.0, 25.021, 24.999, 25.0, 0.005).kind == "transition"
    assert measured_fit(25.0, 25.021, 24.9, 25.0, 0).kind == "clearance"
    assert measured_fit(25.0, 25.021, 25.021, 25.03, 0).kind == "interference"
    assert measured_fit(25.0, 25.021, 25.021, 25.03, 0.001).kind == "transition"


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        ((0, 25, 24, 24.1, 0), "^least bore is 0 mm"),
        ((25, 24.9, 24, 24.1, 0), r"^largest bore is 24\.9 mm"),
        ((25, 25, 0, 24.1, 0), "^smallest reading of the shaft is 0 mm"),
        ((25, 25, 24, 23.9, 0), r"^largest reading of the shaft is 23\.9 mm"),
        ((25, 25, 24, 24, -0.001), r"^uncertainty is -0\.001 mm"),
    ],
)
def test_a_measured_fit_needs_sizes_in_order(arguments: tuple[float, float, float, float, float], said: str) -> None:
    with pytest.raises(OutOfRange, match=said):
        measured_fit(*arguments)


@given(
    bore=st.floats(10, 60), wide=st.floats(0, 0.1), bar=st.floats(10, 60), uneven=st.floats(0, 0.05), unsure=st.floats(0, 0.03),
    tighter=st.floats(0, 0.1),
)  # fmt: skip
def test_a_tighter_bore_never_has_more_clearance(
    bore: float, wide: float, bar: float, uneven: float, unsure: float, tighter: float
) -> None:
    loose = measured_fit(bore, bore + wide, bar, bar + uneven, unsure)
    tight = measured_fit(bore - tighter, bore + wide - tighter, bar, bar + uneven, unsure)
    assert tight.least_clearance_mm <= loose.least_clearance_mm + 1e-9
    assert tight.largest_clearance_mm <= loose.largest_clearance_mm + 1e-9


@given(unsure=st.floats(0, 0.02), more=st.floats(0, 0.02))
def test_a_less_sure_bar_never_makes_a_fit_surer(unsure: float, more: float) -> None:
    sure, doubtful = (measured_fit(25, 25.021, 24.98, 24.99, u) for u in (unsure, unsure + more))
    assert doubtful.kind in (sure.kind, "transition")


@given(bore=st.floats(0.5, 2), bar=st.floats(0.5, 2), unsure=st.floats(0, 0.001))
def test_inch_and_mm_agree(bore: float, bar: float, unsure: float) -> None:
    in_inches = measured_fit(bore, bore + 0.001, bar, bar + 0.0005, unsure)
    in_mm = measured_fit(bore * 25.4, (bore + 0.001) * 25.4, bar * 25.4, (bar + 0.0005) * 25.4, unsure * 25.4)
    assert in_mm == pytest.approx([clearance * 25.4 for clearance in in_inches], abs=5e-8)
    assert diametral_clearance(bore * 25.4, bar * 25.4) == pytest.approx(25.4 * diametral_clearance(bore, bar), abs=1e-9)


@pytest.mark.parametrize(
    ("bore", "bar", "said"), [(0, 25, "^bore is 0 mm"), (25, 0, "^shaft is 0 mm"), (nan, 25, "^bore is nan mm")]
)
def test_a_clearance_needs_two_sizes(bore: float, bar: float, said: str) -> None:
    with pytest.raises(OutOfRange, match=said):
        diametral_clearance(bore, bar)


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        ((-0.001, 25, 0, 1, 0, 0.001), r"^smallest reading of the bar is -0\.001 mm"),
        ((25, 25, nan, 1, 0, 0.001), "^least clearance is nan mm"),
        ((25, 25, 0, inf, 0, 0.001), "^largest clearance is inf mm"),
        ((25, 25, 0, 1, -0.001, 0.001), r"^uncertainty of the gauge is -0\.001 mm"),
        ((25, 25, 0, 1, 0, 0), "^step is 0 mm"),
    ],
)
def test_a_window_needs_what_it_is_made_of(arguments: tuple[float, float, float, float, float, float], said: str) -> None:
    with pytest.raises(OutOfRange, match=said):
        bore_window(*arguments)
