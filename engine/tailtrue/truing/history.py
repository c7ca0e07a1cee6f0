"""The visit before: taken from the log, or from the round that was just judged."""

from collections.abc import Sequence
from dataclasses import dataclass
from statistics import fmean
from typing import Any

from tailtrue.calc.alignment import diameter_difference
from tailtrue.case import Case
from tailtrue.log.record import MICROMETER, Record, moment
from tailtrue.log.typed import Typed
from tailtrue.truing.keep import VERDICTS
from tailtrue.truing.typed import Readings
from tailtrue.truing.visit import Visit

_VERDICTS = {written: judged for judged, written in VERDICTS.items()}
_STATIONS = (("span_mm", "truing.span", "length"), ("first_station_mm", "truing.head_station", "station"),
             ("second_station_mm", "truing.tail_station", "station"))  # fmt: skip


@dataclass(frozen=True)
class Before:
    """What a visit is held against."""

    head_mm: float
    tail_mm: float
    uncertainty_mm: float
    move_mm: float
    verdict: str
    date: str
    rounds: int
    kind: str = MICROMETER

    def facts(self, as_found: bool) -> dict[str, Any]:
        """Facts of the visit that comes after; a test as found begins the rounds anew."""
        return {
            "visit.before_instrument_kind": self.kind,
            "visit.before_head": self.head_mm,
            "visit.before_tail": self.tail_mm,
            "visit.before_uncertainty": self.uncertainty_mm,
            "visit.before_move": abs(self.move_mm),
            "visit.before_verdict": self.verdict,
            "visit.before_date": self.date,
            "visit.rounds_before": 0 if as_found else self.rounds,
        }


def last_record(records: Sequence[Record], case: Case, date: str) -> Record | None:
    """The latest record of this lathe and bar, up to a date where one is given."""
    found = _of_this_bar(records, case, date)
    return found[-1] if found else None


def before_in(records: Sequence[Record], case: Case, date: str = "") -> Before | None:
    """The latest test that can be held against one of this case: same lathe, bar, stations and side of the tool."""
    found = _of_this_bar(records, case, date)
    if not found or not _comparable(found[-1], case):
        return None
    last = found[-1]
    judged = last.judgement
    unsure = judged.difference_uncertainty_mm
    if unsure is None:
        unsure = abs(
            diameter_difference(judged.move_uncertainty_mm, last.span_mm, last.first_station_mm, last.second_station_mm)
        )
    return Before(
        fmean(last.kept("H")), fmean(last.kept("T")), unsure, judged.move_mm, _VERDICTS[judged.verdict],
        last.date_time.partition("T")[0], _rounds(found), last.read_by,
    )  # fmt: skip


def kept_already(
    records: Sequence[Record], case: Case, typed: Typed, readings: Readings, date: str, kind: str
) -> Record | None:
    """The record of this very visit: lathe, bar, state, what read it, readings; None where it was not kept yet.

    Date and time count where they were said; those of the clock are other ones each time that a file is given.
    """
    dated = typed.says("date")
    taken = [(one.collar[0].upper(), one.diameter_mm) for one in readings.taken]
    state, when = typed.content.get("state"), moment(date)
    for one in _of_this_bar(records, case, ""):
        read = [(each.collar, each.mm) for each in one.readings if each.collar != "M" and each.rejected is None]
        if (one.read_by, one.state, read) == (kind, state, taken) and (not dated or one.date_time == when):
            return one
    return None


def before_of(visit: Visit, date: str, rounds: int) -> Before:
    """A round that was just judged, for the next one."""
    value = visit.case.value
    return Before(
        value("visit.head"), value("visit.tail"), value("visit.uncertainty"), value("visit.toward_tool"),
        value("visit.verdict"), date, rounds, visit.kind,
    )  # fmt: skip


def _of_this_bar(records: Sequence[Record], case: Case, date: str) -> list[Record]:
    lathe, bar = case.value("lathe.name"), case.value("truing.bar")
    mine = [one for one in records if one.lathe == lathe and one.bar == bar]
    return sorted((one for one in mine if not date or one.date_time[: len(date)] <= date), key=lambda one: one.date_time)


def _comparable(record: Record, case: Case) -> bool:
    doubts = case.knowledge.tables["alignment/uncertainty"]
    return record.tool_side == case.value("lathe.tool_side") and all(
        abs(getattr(record, name) - case.value(fact)) <= doubts.value(component) for name, fact, component in _STATIONS
    )


def _rounds(found: Sequence[Record]) -> int:
    """Tests since the last one as found, that one too."""
    as_found = [place for place, one in enumerate(found) if one.state == "as found"]
    return len(found) - (as_found[-1] if as_found else 0)
