"""Rounds at the lathe: each visit judged against the one before, and kept where that was asked for."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import Any

from tailtrue.case import Case
from tailtrue.log.record import Record
from tailtrue.log.typed import Typed
from tailtrue.log.unread import UnreadRow
from tailtrue.truing.history import Before, before_of
from tailtrue.truing.keep import NO_RECORD, make_record, unread_row
from tailtrue.truing.said import facts_of, readings_of
from tailtrue.truing.typed import Readings
from tailtrue.truing.visit import FROM_ZERO, Visit, judge_visit

Add = Callable[[Record], int]
Aside = Callable[[UnreadRow], int]


@dataclass(frozen=True)
class Keeping:
    """How visits are kept: where they go, the record whose set-up still holds, where readings go that make no record."""

    add: Add
    as_before: Record | None = None
    aside: Aside | None = None


@dataclass
class Session:
    """One bout of truing a tailstock. `before` is the visit that the next one is held against."""

    case: Case
    before: Before | None = None
    keeping: Keeping | None = None
    kind: str = "micrometer"
    kept: list[int] = field(default_factory=list)
    aside: list[int] = field(default_factory=list)

    def judge(self, typed: Typed, readings: Readings | None = None, also: Mapping[str, Any] | None = None) -> Visit:
        """Judge one visit against the one before. Raises ReadingsWrong or FactsWrong."""
        said = {**facts_of(typed), **(also or {})}
        as_found = said.get("visit.state") == "as-found"
        earlier = self.before.facts(as_found) if self.before else {}
        return judge_visit(self.case, readings or readings_of(typed, self.kind == FROM_ZERO), self.kind, {**earlier, **said})

    def settle(self, visit: Visit, typed: Typed, date: str) -> int | None:
        """Keep a visit where that was asked for, and hold the next one against it; the number of its record.

        What a remark bars is looked at again first, so it is neither kept nor held against anything; what a caliper read
        is no record. Raises RecordWrong or LogUnusable; then nothing was kept, the session is as it was.
        """
        number = None
        if self.keeping is not None and visit.kind not in NO_RECORD:
            record = make_record(visit, typed, date, self.keeping.as_before)
            number = None if visit.barred else self.keeping.add(record)
        if self.keeping is not None and self.keeping.aside is not None and number is None:
            self.aside.append(self.keeping.aside(unread_row(visit, typed, date)))
        if number is not None:
            self.kept.append(number)
        if not visit.barred:
            rounds = int(visit.case.value("visit.rounds_before") or 0) + 1
            self.before = before_of(visit, date.partition("T")[0], rounds)
        return number
