"""Series are never mixed, stretches end where the level was changed, and limits need enough checks."""

from collections.abc import Iterable
from statistics import fmean

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tailtrue.log.record import Record
from tailtrue.log.rules import log_rules
from tailtrue.log.series import FIRST, Series, gather
from tailtrue.log.wear import wear_of

from .sample import MOVE, check

RULES = log_rules()

# A lathe checked twelve times, in 0.001 mm. Limits by hand: mean 1.5, mean step 63/11 = 5.727, and
# 3/d2 = 2.6587, D4 = 3.267 as in NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.2 (from memory).
TWELVE_UM = (4, -2, 6, 1, -5, 3, 8, 0, -3, 5, 2, -1)


def series(records: Iterable[Record]) -> tuple[Series, ...]:
    return gather(enumerate(records, start=1))


def one(records: Iterable[Record]) -> Series:
    (found,) = series(records)
    return found


def settled(count: int, start: int = 0, **changes: object) -> list[Record]:
    return [check(TWELVE_UM[n % 12], start + 30 * n, **changes) for n in range(count)]


def test_limits_are_those_of_the_published_chart() -> None:
    (stretch,) = one(settled(12)).stretches
    assert stretch.chart is not None
    assert stretch.chart.mean == pytest.approx(0.0015)
    assert stretch.chart.upper == pytest.approx(0.01673, abs=5e-6)
    assert stretch.chart.lower == pytest.approx(-0.01373, abs=5e-6)
    assert stretch.chart.upper_moving_range == pytest.approx(0.01871, abs=5e-6)
    assert stretch.signals == frozenset()


def test_the_offset_is_charted_toward_the_tool() -> None:
    (first,) = one([check(4, 0)]).checks
    assert first.offset_mm == pytest.approx(0.004)
    assert first.limit_mm == pytest.approx(0.010)
    assert first.outside is False
    assert one([check(-12, 0)]).checks[0].outside is True


@pytest.mark.parametrize(("count", "has_limits"), [(1, False), (7, False), (8, True)])
def test_eight_checks_make_limits(count: int, has_limits: bool) -> None:
    (stretch,) = one(settled(count)).stretches
    assert (stretch.chart is not None) is has_limits


def test_lathes_and_bars_are_never_mixed() -> None:
    mixed = [*settled(8), *settled(8, lathe="Lathe 3"), *settled(8, bar="FM-2")]
    found = series(mixed)
    assert [(each.lathe, each.bar) for each in found] == [("Lathe 2", "FM-1"), ("Lathe 2", "FM-2"), ("Lathe 3", "FM-1")]
    assert all(len(each.checks) == 8 for each in found)


def test_the_order_is_that_of_the_dates() -> None:
    found = one([check(2, 60), check(1, 30), check(3, 90)])
    assert [each.number for each in found.checks] == [2, 1, 3]


def test_tests_as_left_are_not_charted_and_a_move_begins_a_stretch() -> None:
    left = check(0, 100, state="as left", moves=[MOVE])
    untouched = check(0, 40, state="as left")
    found = one([check(4, 0), untouched, check(6, 50), check(12, 99), left, check(1, 130)])
    assert [(each.began, [c.number for c in each.checks]) for each in found.stretches] == [
        (FIRST, [1, 3, 4]),
        ("tailstock moved", [6]),
    ]
    assert found.moved_since is None


def test_a_move_after_the_last_check_is_known() -> None:
    found = one([check(12, 0), check(0, 1, state="as left", moves=[MOVE])])
    assert found.moved_since == "2026-01-06"
    assert len(found.stretches) == 1


def test_a_move_before_the_first_check_begins_nothing() -> None:
    found = one([check(0, 0, state="as left", moves=[MOVE]), check(1, 30)])
    assert [(each.began, len(each.checks)) for each in found.stretches] == [(FIRST, 1)]


def test_steps_do_not_reach_across_a_move() -> None:
    found = one([check(4, 0), check(6, 1), check(0, 2, state="as left", moves=[MOVE]), check(-20, 30), check(-19, 60)])
    assert [pytest.approx(each.moving_ranges_mm) for each in found.stretches] == [(0.002,), (0.001,)]


@pytest.mark.parametrize(
    ("changes", "began"),
    [
        ({"tool_side": "rear"}, "another side of the tool"),
        ({"bar_orientation": "B at headstock"}, "another way round of the bar"),
        ({"headstock_centre": "hard dead", "headstock_centre_runout_mm": 0.001}, "another headstock centre"),
        ({"tailstock_centre": "live", "tailstock_centre_id": "L1"}, "another tailstock centre"),
        ({"tailstock_centre_id": "centre 4"}, "another tailstock centre"),
        ({"quill_extension_mm": 50.5}, "another quill extension"),
        ({"tailstock_position_mm": 570.5}, "another place of the tailstock on the bed"),
        ({"read_by": "indicator", "instrument_zero_error_mm": None}, "another way of reading the collars"),
        ({"span_mm": 303.5}, "another distance between the centres"),
    ],
)
def test_another_set_up_begins_a_stretch(changes: dict[str, object], began: str) -> None:
    found = one([check(4, 0), check(4, 30, **changes), check(4, 60, **changes)])
    assert [(each.began, len(each.checks)) for each in found.stretches] == [(FIRST, 1), (began, 2)]


def test_a_little_other_set_up_does_not() -> None:
    near = check(4, 30, quill_extension_mm=50.0, tailstock_position_mm=570.0, span_mm=303.0, operator="KL")
    assert len(one([check(4, 0), near]).stretches) == 1


def test_a_loose_quill_is_left_out_and_said() -> None:
    found = one([check(4, 0), check(9, 30, quill_clamped=False), check(5, 60)])
    assert found.left_out == ((2, "the quill was not clamped"),)
    assert [each.number for each in found.checks] == [1, 3]


def test_a_point_beyond_a_jump_and_a_run_are_signals() -> None:
    jumped = one([*settled(12), check(40, 400)]).stretches[0]
    assert (jumped.beyond, jumped.jumps) == ((12,), (12,))
    swing = [5, -5, 5, -5, 5, -5]
    run = one(check(um, 10 * n) for n, um in enumerate([*swing, *[-8, -9, -8, -9], *[2, 3, 2, 3, 2, 3, 2, 3]])).stretches[0]
    assert run.runs == (17,)
    assert 17 in run.signals


@given(st.lists(st.integers(-9, 9), min_size=8, max_size=20))
def test_the_mean_of_a_stretch_is_that_of_its_checks(values_um: list[int]) -> None:
    (stretch,) = one(check(um, n) for n, um in enumerate(values_um)).stretches
    assert stretch.chart is not None
    assert stretch.chart.mean == pytest.approx(fmean(values_um) / 1000, abs=1e-9)
    assert stretch.chart.lower <= stretch.chart.mean <= stretch.chart.upper


def test_uses_left_are_those_of_what_a_test_takes_off() -> None:
    """70 mm now, 55 mm least, 0.15 mm a test: 100 more (arithmetic, derived)."""
    records = [check(0, 30 * n, diameter_mm=70.45 - 0.15 * n) for n in range(4)]
    (wear,) = wear_of(records, RULES.new_collars_from_mm, 55.0)
    assert (wear.tests, wear.now_mm, wear.least_mm, wear.left) == (4, 70.0, 55.0, 100)
    assert wear.per_test_mm == pytest.approx(0.15)


def test_a_least_diameter_in_the_log_goes_before_the_one_asked() -> None:
    records = [
        check(0, 0, diameter_mm=70.3, collar_least_diameter_mm=50.0),
        check(0, 15, diameter_mm=70.15, collar_least_diameter_mm=60.0),
        check(0, 30, diameter_mm=70.0),
    ]
    (wear,) = wear_of(records, RULES.new_collars_from_mm, 55.0)
    assert (wear.least_mm, wear.left) == (60.0, 66)


def test_what_is_not_known_of_wear_stays_unknown() -> None:
    (first,) = wear_of([check(0, 0)], RULES.new_collars_from_mm, 55.0)
    assert (first.per_test_mm, first.left) == (None, None)
    (no_least,) = wear_of([check(0, 0), check(0, 30, diameter_mm=69.7)], RULES.new_collars_from_mm)
    assert (no_least.least_mm, no_least.left) == (None, None)
    (same,) = wear_of([check(0, 0), check(0, 30)], RULES.new_collars_from_mm, 55.0)
    assert (same.per_test_mm, same.left) == (None, None)


def test_new_collars_begin_a_new_life() -> None:
    sizes = [56.0, 55.8, 70.0, 69.8]
    (wear,) = wear_of([check(0, 30 * n, diameter_mm=size) for n, size in enumerate(sizes)], RULES.new_collars_from_mm, 55.0)
    assert (wear.tests, wear.now_mm) == (2, 69.8)
    assert wear.per_test_mm == pytest.approx(0.2)


def test_a_bar_wears_on_every_lathe_and_bars_are_kept_apart() -> None:
    records = [
        check(0, 0, diameter_mm=70.0),
        check(0, 1, diameter_mm=69.9, lathe="Lathe 3"),
        check(0, 2, bar="FM-2", diameter_mm=60.0),
    ]
    first, second = wear_of(records, RULES.new_collars_from_mm, 55.0)
    assert (first.bar, first.tests, first.now_mm) == ("FM-1", 2, 69.9)
    assert (second.bar, second.tests, second.now_mm) == ("FM-2", 1, 60.0)
