"""Dates that are said of a test: what is wrong with one, held against the clock of the shop."""

from datetime import datetime, timedelta

from pydantic_core import PydanticCustomError

from tailtrue.log.record import moment

# A record written after midnight, or on a clock that is a zone out, is no slip of the hand.
_AHEAD = timedelta(days=1)


def wrong_date(text: str, now: str) -> tuple[str, str] | None:
    """What is wrong with a date, and what to do; None where nothing is.

    >>> wrong_date("2036-11-24", "2026-11-24T10:00:00")[0]
    'is in the future: the clock here says 2026-11-24'
    >>> wrong_date("2026-11-25", "2026-11-24T10:00:00")
    """
    try:
        said = datetime.fromisoformat(moment(text))
    except PydanticCustomError as wrong:
        context = wrong.context or {}
        return str(context["wrong"]), str(context["do"])
    if said - datetime.fromisoformat(now) <= _AHEAD:
        return None
    return (
        f"is in the future: the clock here says {now.partition('T')[0]}",
        "mend the date, or set the clock of this machine",
    )
