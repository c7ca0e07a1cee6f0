"""Days in the files of a job that nobody can mean; told at the command line alone, for no paper knows what day it is."""

from collections.abc import Iterator
from datetime import date

from tailtrue.given.read import Given
from tailtrue.store.knowledge import Knowledge

_FIRST = date(2000, 1, 1)
# A year and a month: the review of a sheet that is dated a few weeks ahead is due a year after it.
_FAR_AHEAD_DAYS = 397
_DO = "look at the year"


def odd_days(given: Given, known: Knowledge, today: date) -> Iterator[str]:
    """What is wrong with each day that was said, in words."""
    for name, fact in known.given.facts.items():
        said = given.values.get(name)
        if fact.spec.kind != "date" or said is None or not said.value:
            continue
        day = date.fromisoformat(str(said.value))
        if day < _FIRST:
            yield f"{said.where}: {fact.key} = {day} is before the year {_FIRST.year}; {_DO}"
        elif (day - today).days > _FAR_AHEAD_DAYS:
            yield f"{said.where}: {fact.key} = {day} is more than a year ahead of today, {today}; {_DO}"
