"""Status and days of the standing procedure, against days worked out on a calendar."""

from typing import Any

import pytest

from tailtrue.computed.registry import Limited, register
from tailtrue.computed.shop_rules import months_after


def made(name: str, *given: Any) -> Any:
    value = register()[name].function(*given)
    return value.value if isinstance(value, Limited) else value


@pytest.mark.parametrize(
    ("day", "months", "later"),
    [
        ("2026-11-24", 12, "2027-11-24"),
        ("2026-01-31", 1, "2026-02-28"),
        ("2028-01-31", 1, "2028-02-29"),
        ("2028-02-29", 12, "2029-02-28"),
        ("2026-12-01", 1, "2027-01-01"),
        ("2026-11-30", 3, "2027-02-28"),
        ("2026-06-15", 0, "2026-06-15"),
    ],
)
def test_months_later_is_the_same_day_or_the_last_of_a_shorter_month(day: str, months: int, later: str) -> None:
    assert months_after(day, months) == later


@pytest.mark.parametrize(
    ("given", "status"),
    [
        ((None, None, None, None, "trainer"), "draft"),
        ((None, "lead", "manager", None, "trainer"), "draft"),
        ((None, "lead", None, "2026-11-24", "trainer"), "draft"),
        ((None, None, "manager", "2026-11-24", "trainer"), "draft"),
        ((None, "lead", "manager", "2026-11-24", "trainer"), "approved"),
        (("approved", "lead", "manager", "2026-11-24", "trainer"), "approved"),
        (("approved", "lead", None, None, "trainer"), "draft"),
        (("draft", "lead", "manager", "2026-11-24", "trainer"), "draft"),
        (("superseded", "lead", "manager", "2026-11-24", "trainer"), "superseded"),
        ((None, "lead", "manager", "2026-11-24", None), "draft"),
        (("approved", "lead", "manager", "2026-11-24", None), "draft"),
        (("superseded", None, None, None, "trainer"), "superseded"),
    ],
)
def test_it_is_a_draft_until_walk_through_author_approver_and_day_are_given(
    given: tuple[str | None, ...], status: str
) -> None:
    assert made("sop.status", *given) == status


@pytest.mark.parametrize(
    ("planned", "due", "because"),
    [
        (None, "2027-11-24", "the longest interval"),
        ("2027-05-01", "2027-05-01", "as planned"),
        ("2027-11-24", "2027-11-24", "as planned"),
        ("2027-11-25", "2027-11-24", "2027-11-25 was planned"),
        ("2026-01-01", "2026-01-01", "as planned"),
    ],
)
def test_a_review_is_never_later_than_the_longest_interval(planned: str | None, due: str, because: str) -> None:
    found = register()["sop.review_due"].function("2026-11-24", planned, 12.0)
    assert found.value == due
    assert because in found.by


@pytest.mark.parametrize("name", ["sop.review_overdue", "sop.compound_expired", "sop.calibration_overdue"])
@pytest.mark.parametrize(("last", "over"), [("2026-11-23", True), ("2026-11-24", False), ("2026-11-25", False)])
def test_a_day_is_over_when_the_sheet_is_later(name: str, last: str, over: bool) -> None:
    assert made(name, "2026-11-24", last) is over
