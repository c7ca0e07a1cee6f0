"""What a shared shop's standing procedure says of itself: its status, and days that have passed by the day of the job."""

from calendar import monthrange
from datetime import date

from tailtrue.computed.registry import Limited, computed


def months_after(day: str, months: int) -> str:
    """The day so many months later; the last of the month where the month is shorter.

    >>> months_after("2026-11-24", 12), months_after("2027-12-31", 2)
    ('2027-11-24', '2028-02-29')
    """
    start = date.fromisoformat(day)
    years, month = divmod(start.month - 1 + months, 12)
    year = start.year + years
    return date(year, month + 1, min(start.day, monthrange(year, month + 1)[1])).isoformat()


@computed("sop.status", label="status of the standing procedure", kind="choice", choices=("draft", "approved", "superseded"),
          needs=("job.status?", "job.author?", "job.approver?", "job.approved_on?", "job.walked_through?"),
          how="a draft until walk-through, author, approver and day of approval are given, else as told")  # fmt: skip
def status(said: str | None, author: str | None, approver: str | None, approved_on: str | None, walked: str | None) -> str:
    if said == "superseded":
        return said
    return "approved" if said != "draft" and author and approver and approved_on and walked else "draft"


@computed("sop.review_due", label="day the next review is due", kind="date",
          needs=("job.date", "job.review_due?", "limit.sop_review_months"),
          how="as planned by the shop, never later than the longest interval after the date of the sheet")  # fmt: skip
def review_due(made_on: str, planned: str | None, months: float) -> Limited:
    # Days are written year first: their order is that of the letters.
    latest = months_after(made_on, int(months))
    if planned is None:
        return Limited(latest, "the longest interval after the date of this paper")
    if planned > latest:
        return Limited(latest, f"{planned} was planned and is later than the longest interval allows")
    return Limited(planned, "as planned by the shop")


@computed("sop.review_overdue", label="the review is overdue", kind="yes-no", needs=("job.date", "sop.review_due"),
          how="the review was due before the date of the sheet")  # fmt: skip
def review_overdue(made_on: str, due: str) -> bool:
    return due < made_on


@computed("sop.compound_expired", label="the bonding compound is past its day", kind="yes-no",
          needs=("job.date", "crib.compound_expires"), how="its last day lies before the date of the sheet")  # fmt: skip
def compound_expired(made_on: str, last: str) -> bool:
    return last < made_on


@computed("sop.calibration_overdue", label="the check of the micrometers is overdue", kind="yes-no",
          needs=("job.date", "crib.calibration_due"), how="it was due before the date of the sheet")  # fmt: skip
def calibration_overdue(made_on: str, due: str) -> bool:
    return due < made_on
