"""A judged visit as a record of the log: what was said, what the job knows, what was worked out, and nothing else."""

from collections.abc import Collection, Iterator, Mapping
from typing import Any

from tailtrue.case import Case
from tailtrue.errors import Problem
from tailtrue.facts import NotKnown
from tailtrue.log.faults import RecordWrong
from tailtrue.log.record import Record
from tailtrue.log.record_file import whole
from tailtrue.log.typed import Typed, path_of
from tailtrue.log.unread import RowFault, UnreadRow
from tailtrue.render.words import say
from tailtrue.truing.lacking import missing_said
from tailtrue.truing.paper import head_of
from tailtrue.truing.said import facts_of, readings_of
from tailtrue.truing.typed import Readings
from tailtrue.truing.visit import FROM_ZERO, Visit, judge_visit

SAME_PLACE = "visit/set_up"
# A verdict as it is judged, and as the log writes it.
VERDICTS = {"inside": "inside", "outside": "outside", "too-close": "too close to say"}

# What the job says of a record, and what the readings give.
_JOB = {
    "lathe": "lathe.name", "bar": "truing.bar", "tool_side": "lathe.tool_side", "span": "truing.span",
    "first_station": "truing.head_station", "second_station": "truing.tail_station", "limit": "truing.limit",
    "limit_over": "lookup.spacing",
}  # fmt: skip
_WORKED_OUT = {
    "difference": "visit.difference", "difference_uncertainty": "visit.uncertainty", "move": "visit.toward_tool",
    "move_uncertainty": "visit.move_uncertainty", "instrument_resolution": "visit.step",
}  # fmt: skip
_MAY = {"collar_least_diameter": "skim.worn_out_at"}
# Made of the visit by name: a verdict, its rule, the rules in force, what is left of the collars, the readings.
_MADE = ("verdict", "rule", "knowledge_version", "collar_diameter_after")
_INSTRUMENT = "instrument"
_LENGTHS = ("span", "first_station", "second_station", "limit_over")
_ROUNDED = ("limit", "difference", "move")
_ROUNDED_TO_MM = 0.001
_SAME = ("lathe", "bar", "tool_side", "verdict")
# What reads the collars and makes no record, why, and what to do. A remark of the same name says so and bars no move.
NO_RECORD = {
    "caliper": (
        "a caliper", "cannot judge the limit, so its readings are not kept",
        "read both collars with a micrometer, or note the coarse move on the sheet only",
    ),
}  # fmt: skip

_ANSWER = "answer this, then keep the visit anew"


def check_keepable(
    case: Case, typed: Typed, read: Collection[str] = ("readings",), as_before: Record | None = None, kind: str = ""
) -> None:
    """Raise RecordWrong with everything wrong and, in one sentence, everything missing, before anybody reads a collar.

    `read` names what is not said yet and will be, `kind` what reads the collars where it is not typed. What reads them
    and makes no record asks for no set-up.
    """
    kind = kind or typed.read_by
    if kind in NO_RECORD:
        typed.sound()
        return
    taken_over = _taken_over(as_before, case, kind) if as_before else ()
    missing = typed.lacking({*_JOB, *_WORKED_OUT, *_MADE, *read, "date", *taken_over}, kind)
    problems = [*typed.problems, *_of_a_micrometer(typed, kind)]
    if missing:
        again = {row.text("name") for row in case.knowledge.tables[SAME_PLACE].rows} if as_before is None else set()
        problems.append(missing_said(typed, missing, again, case.value("lathe.dials")))
    if problems:
        raise RecordWrong(problems)


def make_record(visit: Visit, typed: Typed, date: str | None, as_before: Record | None = None) -> Record:
    """The record of a visit.

    `as_before` is the record whose set-up still holds for everything that was not said. Raises RecordWrong.
    """
    case = visit.case
    if visit.kind in NO_RECORD:
        raise RecordWrong((Problem("", *NO_RECORD[visit.kind]),))
    read = () if typed.says("readings") else ("readings",)
    check_keepable(case, typed, read, as_before, visit.kind)
    known = dict(_known(visit))
    problems = list(_contradictions(typed, known, case))
    if problems:
        raise RecordWrong(problems)
    for key in (*_WORKED_OUT, *_MADE, *_JOB):
        if typed.says(key):
            # Held against it just now; what was worked out here has all its digits.
            known.pop(key, None)
    if not typed.says("readings"):
        known["readings"] = _readings(visit.readings)
    if as_before is not None:
        taken_over = _taken_over(as_before, case, visit.kind)
        known = {**{key: value for key, value in taken_over.items() if not typed.says(key)}, **known}
    if date is not None and not typed.says("date"):
        known["date"] = date
    return whole(typed, known)


def judged_record(case: Case, typed: Typed, date: str | None) -> Record:
    """The record of what was typed, judged on the lathe of a case; `date` where the typing does not say it.

    Raises RecordWrong, ReadingsWrong, FactsWrong; also when a remark bars a move, for such readings are no record.
    """
    kind = typed.read_by
    visit = judge_visit(case, readings_of(typed, kind == FROM_ZERO), kind, facts_of(typed))
    if visit.barred:
        do = "see what stands under FIRST in: tailtrue correct JOB --from this file"
        names = ", ".join(one.id for one in visit.remarks if one.bars_move)
        raise RecordWrong((Problem(typed.shown, names, "the readings do not hang together", do),))
    return make_record(visit, typed, date)


def unread_row(visit: Visit, typed: Typed, date: str) -> UnreadRow:
    """A visit that is no record, as a row of the log: what was read, and what stands against it."""
    case, dials = visit.case, head_of(visit.case).dials
    read = "; ".join(f"{one.collar[0].upper()} {one.said}" for one in visit.readings.taken)
    cells = {
        "date": date, "operator": typed.content.get("operator", ""), "lathe": case.value("lathe.name"),
        "bar": case.value("truing.bar"), "state": typed.content.get("state", ""), "read_by": visit.kind,
        "readings": read,
    }  # fmt: skip
    faults = tuple(
        RowFault(column="readings", said="", wrong=say(one.text, dials), do=NO_RECORD.get(one.id, (_ANSWER,))[-1])
        for one in visit.remarks if one.bars_move or one.id in NO_RECORD
    )  # fmt: skip
    text = ", ".join(str(cell) for cell in cells.values())
    return UnreadRow(file=typed.shown, line=0, columns=", ".join(cells), text=text, faults=faults)


def _known(visit: Visit) -> Iterator[tuple[str, Any]]:
    case = visit.case
    for key, name in {**_JOB, **_WORKED_OUT, **_MAY}.items():
        if not isinstance(case.get(name), NotKnown):
            yield key, case.value(name)
    yield "verdict", VERDICTS[case.value("visit.verdict")]
    yield "rule", case.knowledge.catalogue["visit.verdict"].how
    yield "knowledge_version", case.knowledge.version
    yield "read_by", visit.kind
    if visit.kind != FROM_ZERO:
        yield "collar_diameter_after", min(case.value("visit.head"), case.value("visit.tail"))


def _readings(readings: Readings) -> list[dict[str, str]]:
    if not readings.in_order:
        do = "say the order in which they were read, such as HTTH"
        raise RecordWrong((Problem("", "readings", "stand without their order", do),))
    return [{"collar": one.collar[0].upper(), "said": one.said} for one in readings.taken]


def _taken_over(before: Record, case: Case, kind: str) -> dict[str, Any]:
    """The set-up of an earlier record, which somebody said is still the same; an instrument of another kind is not."""
    content = before.model_dump(exclude_none=True)
    found = {}
    for row in case.knowledge.tables[SAME_PLACE].rows:
        value: Any = content
        for step in path_of(row.text("name")):
            value = value.get(step) if isinstance(value, dict) else None
        if value is not None and (row.text("name") != _INSTRUMENT or before.read_by == kind):
            found[row.text("name")] = value
    return found


def _of_a_micrometer(typed: Typed, kind: str) -> Iterator[Problem]:
    """The zero of a micrometer, said of what is none: then the instrument is most likely not the right one either."""
    if kind == FROM_ZERO and typed.says("instrument_zero_error"):
        wrong = "belongs to a micrometer; an indicator reads from a zero of its own"
        do = f"take it out, and write the mark of the indicator as {_INSTRUMENT}"
        yield typed.places["instrument_zero_error"].problem((), wrong, do)


def _contradictions(typed: Typed, known: Mapping[str, Any], case: Case) -> Iterator[Problem]:
    """What was typed and is known otherwise here: another lathe, another bar, a verdict of other readings."""
    length = case.knowledge.tables["alignment/uncertainty"].value("length")
    within = {**dict.fromkeys(_LENGTHS, length), **dict.fromkeys(_ROUNDED, _ROUNDED_TO_MM)}
    for key in (*_SAME, *within):
        said, here = typed.content.get(key), known[key]
        if said is None or (abs(said - here) <= within[key] if key in within else said == here):
            continue
        shown = f"{here:.4g} mm" if isinstance(here, float) else str(here)
        do = "mend it, leave it out, or name the job that it belongs to"
        yield typed.places[key].problem((), f"is not what this job and these readings give: {shown}", do)
