"""The tag that tells how a tailstock was last found."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import date, timedelta
from math import floor
from typing import Literal

from tailtrue.assemble.filling import figure
from tailtrue.case import Case
from tailtrue.errors import FactsWrong, Problem
from tailtrue.log.recheck import next_check
from tailtrue.log.rules import log_rules
from tailtrue.log.series import Series
from tailtrue.papers import MachineTag
from tailtrue.parts import Text
from tailtrue.truing.paper import head_of, lines_of, mend_first

Result = Literal["in-limits", "out-of-limits", "too-close-to-say"]
RESULTS: tuple[Result, ...] = ("in-limits", "out-of-limits", "too-close-to-say")
_RESULT_OF: dict[str, Result] = {
    "inside": "in-limits", "outside": "out-of-limits", "too close to say": "too-close-to-say",
}  # fmt: skip


@dataclass(frozen=True)
class LastCheck:
    """The last check of a lathe: dates as year-month-day; the difference where it is known."""

    date: str
    initials: str
    result: Result
    next_due: str
    difference_mm: float | None = None


def read_check(on: str, initials: str, result: str, next_due: str) -> LastCheck | None:
    """A check as it was typed; None when nothing was.

    Raises FactsWrong with every fault at once.

    >>> read_check("2026-11-24", "FB", "in-limits", "").result
    'in-limits'
    """
    if not any((on, initials, result, next_due)):
        return None
    faults = [
        Problem("", option, "is not given", "give --date, --initials and --result together")
        for option, said in (("--date", on), ("--initials", initials), ("--result", result))
        if not said.strip()
    ]
    faults += [
        Problem(option, said, "is no day", "write year-month-day, such as 2026-11-24")
        for option, said in (("--date", on), ("--next-due", next_due))
        if said and not _is_day(said)
    ]
    if result.strip() and result not in RESULTS:
        faults.append(Problem("--result", result, "is not one of the results", f"write {', '.join(RESULTS)}"))
    if not faults and next_due and next_due <= on:
        faults.append(Problem("--next-due", next_due, f"is not after the check of {on}", "look at both days again"))
    if faults:
        raise FactsWrong(faults)
    return LastCheck(on, initials.strip(), next(one for one in RESULTS if one == result), next_due)


def last_check(found: Iterable[Series]) -> LastCheck | None:
    """The last check of a lathe with whichever bar, the quill clamped; None when there was none."""
    checks = [
        (record.date_time, number, record, series)
        for series in found for number, record in series.records if record.quill_clamped
    ]  # fmt: skip
    if not checks:
        return None
    _, _, record, series = max(checks, key=lambda one: one[:2])
    again = next_check(series, log_rules().recheck)
    return LastCheck(
        record.date_time[:10], record.operator, _RESULT_OF[record.judgement.verdict], again.due if again else "",
        record.judgement.difference_mm,
    )  # fmt: skip


def latest_check(typed: LastCheck | None, logged: LastCheck | None) -> LastCheck | None:
    """What was typed, unless the log knows better; where it names no next check, that falls due as a first one's does.

    Raises FactsWrong when what was typed is older than what the log holds.
    """
    if typed is None:
        return logged
    if logged is not None and logged.date > typed.date:
        do = "leave the options out: the tag then says what the log says"
        raise FactsWrong((Problem("--date", typed.date, f"is before the last check in the log, of {logged.date}", do),))
    if typed.next_due:
        return typed
    days = floor(log_rules().recheck.often_days)
    return replace(typed, next_due=(date.fromisoformat(typed.date) + timedelta(days=days)).isoformat())


def machine_tag(case: Case, check: LastCheck | None) -> MachineTag:
    """The tag of the lathe of a case; places to write in where nothing is known of a check."""
    here = case if check is None else case.with_values({"tag.result": check.result})
    result = lines_of(here, "tag-result")
    return MachineTag(
        head=head_of(here),
        result=result[0] if result else (),
        in_limits=check is None or check.result == "in-limits",
        difference=_difference(here, check),
        date=check.date if check else "",
        initials=check.initials if check else "",
        next_due=check.next_due if check else "",
        means=lines_of(here, "tag-means"),
        mend=mend_first(here),
    )


def _difference(case: Case, check: LastCheck | None) -> Text:
    if check is None or check.difference_mm is None:
        return ()
    spec = case.knowledge.catalogue["truing.limit"]
    size = figure(spec, "tag.difference", abs(check.difference_mm)).model_copy(update={"bound": "nearest"})
    if check.difference_mm == 0:
        return (size,)
    return (size, ", tailstock larger" if check.difference_mm > 0 else ", headstock larger")


def _is_day(text: str) -> bool:
    try:
        return date.fromisoformat(text).isoformat() == text
    except ValueError:
        return False
