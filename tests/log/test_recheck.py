"""When to check again follows from the history, and drift is told from noise."""

import pytest

from tailtrue.log.recheck import drift_or_noise, next_check
from tailtrue.log.record import Record
from tailtrue.log.rules import log_rules
from tailtrue.log.series import gather

from .sample import MOVE, check
from .test_series import TWELVE_UM, one, settled

RULES = log_rules()


def every(days: int, count: int = 12) -> list[Record]:
    return [check(TWELVE_UM[n % 12], days * n) for n in range(count)]


# Monthly until ten checks exist, then two to three times the shortest interval without alarm, and twice a year where the
# shop is unheated (common practice; the halving after an alarm is from memory).
@pytest.mark.parametrize(
    ("records", "days", "why"),
    [
        (every(30, 1), 30, "a month at most until ten checks"),
        (every(30, 9), 30, "a month at most until ten checks"),
        (every(40, 10), 80, "twice the shortest time"),
        ([*every(40, 11), check(1, 435)], 70, "twice the shortest time"),
        (every(7, 12), 30, "a month at most until ten checks"),
        (every(0, 12), 30, "a month at most until ten checks"),
        (every(120, 12), 182, "no longer than half a year"),
        ([*every(40, 11), check(12, 450)], 25, "the last check as found was not in order"),
        ([check(12, 0)], 15, "the last check as found was not in order"),
        ([check(0, 0), check(12, 200)], 30, "the last check as found was not in order"),
        ([check(0, 0), check(12, 1)], 1, "the last check as found was not in order"),
        ([check(0, 0), check(12, 0, date_time="2026-01-05T10:00")], 15, "the last check as found was not in order"),
        ([*every(40, 8), check(0, 290, quill_extension_mm=90.0), check(12, 310, quill_extension_mm=90.0)], 10, "not in order"),
        ([*every(40, 8), check(40, 320), check(0, 360, quill_extension_mm=90.0)], 80, "twice the shortest time"),
        ([*every(40, 5), check(12, 170), *[check(TWELVE_UM[n], 210 + 40 * n) for n in range(8)]], 80, "twice the shortest time"),
    ],
)  # fmt: skip
def test_the_interval_and_its_reason(records: list[Record], days: int, why: str) -> None:
    again = next_check(one(records), RULES.recheck)
    assert again is not None
    assert again.days == days
    assert why in again.why


def test_the_day_is_counted_from_the_last_check_or_the_move_after_it() -> None:
    again = next_check(one([check(0, 0)]), RULES.recheck)
    assert again is not None
    assert again.due == "2026-02-04"
    moved = next_check(one([check(12, 0), check(0, 3, state="as left", moves=[MOVE])]), RULES.recheck)
    assert moved is not None
    assert (moved.days, moved.due) == (15, "2026-01-23")
    assert moved.why.startswith("the tailstock was moved after a check as found that was not in order, and an early look")


def test_more_than_scatter_is_an_alarm_too() -> None:
    quiet = [check(um, 40 * n) for n, um in enumerate([1, 0, 1, 0, 1, 0, 1, 0, 1, 0, 1])]
    again = next_check(one([*quiet, check(8, 480)]), RULES.recheck)
    assert again is not None
    assert (again.days, "not in order" in again.why) == (30, True)


def test_without_a_check_there_is_no_interval() -> None:
    (series,) = gather([(1, check(0, 0, state="as left"))])
    assert next_check(series, RULES.recheck) is None
    assert drift_or_noise(series, RULES.chart) == ("No test as found can be charted yet.",)


def said(*records: Record) -> str:
    return " ".join(drift_or_noise(one(records), RULES.chart))


def test_few_checks_are_only_held_against_their_limit() -> None:
    assert said(*settled(7)) == (
        "7 checks since the first check: no limits of scatter yet, for 8 are needed. Compare each check with its limit alone."
    )
    assert said(check(0, 0)).startswith("1 check since")


def test_scatter_about_one_level_is_noise() -> None:
    assert "scatter about one level: noise" in said(*settled(12))
    assert "drift" not in said(*settled(12))


def test_a_steady_wander_is_drift_with_its_side() -> None:
    up = said(*[check(um, 30 * n) for n, um in enumerate([-6, -5, -3, -2, 0, 1, 3, 4, 6])])
    assert "wanders steadily toward the tool: this is drift" in up
    down = said(*[check(-um, 30 * n) for n, um in enumerate([-6, -5, -3, -2, 0, 1, 3, 4, 6])])
    assert "wanders steadily away from the tool: this is drift" in down
    assert "about one level" not in up


def test_a_jump_is_told_with_its_dates() -> None:
    words = said(*settled(12), check(40, 400))
    assert "Checks beyond what scatter explains: 2027-02-09." in words
    assert "From 2026-12-01 to 2027-02-09 the reading jumped" in words
    assert "about one level" not in words


def test_eight_in_a_row_on_one_side_are_drift() -> None:
    swing, low, high = [5, -5, 5, -5, 5, -5], [-8, -9, -8, -9], [2, 3, 2, 3, 2, 3, 2, 3]
    words = said(*[check(um, 10 * n) for n, um in enumerate([*swing, *low, *high])])
    assert "8 checks or more in a row lie on one side of the mean, up to 2026-06-24: this is drift" in words


def test_a_latest_check_outside_its_limit_comes_first() -> None:
    assert said(check(12, 0)).startswith(
        "The latest check, of 2026-01-05, was outside its limit: bring the tailstock into line."
    )
    assert "outside" not in said(check(12, 0), check(1, 30))


def test_after_a_move_nobody_is_sent_to_move_again() -> None:
    words = said(check(12, 0), check(0, 1, state="as left", moves=[MOVE]))
    assert "bring the tailstock into line" not in words
    assert "The tailstock was moved on 2026-01-06" in words


def test_a_change_of_set_up_does_not_hide_what_went_before() -> None:
    wander = [check(um, 30 * n) for n, um in enumerate([-6, -5, -3, -2, 0, 1, 3, 4, 6])]
    words = said(*wander, check(6, 300, quill_extension_mm=80.0))
    assert words.startswith("1 check since a change (another quill extension)")
    assert "Before that: the centre wanders steadily toward the tool" in words


def test_checks_of_one_day_are_no_drift() -> None:
    assert "wanders" not in said(*[check(um, 0, date_time=f"2026-01-05T10:{n:02}") for n, um in enumerate(range(-4, 5))])


def test_a_long_run_is_told_up_to_its_end() -> None:
    swing, low, high = [5, -5, 5, -5, 5, -5], [-8, -9, -8, -9, -8], [2, 3, 2, 3, 2, 3, 2, 3, 2, 3]
    words = said(*[check(um, 10 * n) for n, um in enumerate([*swing, *low, *high])])
    assert "up to 2026-07-24: this is drift" in words  # 5 January and 200 days
    assert "about one level" not in words


def test_a_steady_slope_within_its_limits_is_no_noise() -> None:
    slope = [check(um, 30 * n) for n, um in enumerate([-4, 0, -3, 1, -1, 3, 0, 4, 1, 5])]
    assert one(slope).stretches[0].signals == frozenset()
    assert said(*slope) == "The centre wanders steadily toward the tool: this is drift, not noise."


def test_an_earlier_stretch_is_told_only_where_the_latest_has_no_limits() -> None:
    wander = [check(um, 30 * n) for n, um in enumerate([-6, -5, -3, -2, 0, 1, 3, 4, 6])]
    assert "Before that" not in said(*wander, *settled(12, start=400, quill_extension_mm=80.0))
    two = said(
        *settled(12),
        *[check(um, 500 + 30 * n, quill_extension_mm=80.0) for n, um in enumerate([-6, -5, -3, -2, 0, 1, 3, 4, 6])],
        check(0, 900),
    )
    assert "Before that: the centre wanders" in two
