"""Truing the tailstock round by round at a prompt: `tailtrue true`."""

from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Any

import typer

from tailtrue.cli.guarded import guarded
from tailtrue.cli.log_beside import earlier_records, keeping_beside, now, record_as_before
from tailtrue.cli.options import AsBefore, Caliper, Indicator, Initials, Job, Keep, Say
from tailtrue.cli.visit_typed import ASKED, kind_said, three_readings, typed_of
from tailtrue.errors import TailtrueError, report

if TYPE_CHECKING:
    from tailtrue.log.typed import Typed
    from tailtrue.parts import Dials
    from tailtrue.truing.session import Session
    from tailtrue.truing.typed import Readings
    from tailtrue.truing.visit import Visit

_STOP = "q"
_OF_A_MOVE = 3  # readings of the indicator
_KEEPS = "What was kept stays kept."
_KEEPS_NOTHING = "Each round is held against the one before, and nothing is recorded (--keep does that)."
_RECORDED_NOTHING = """\
Nothing was recorded, and the next session will not know of this one: write readings and result on the record sheet."""
_OVER = ("leave-in-limits", "leave-in-doubt", "no-way")
From = Annotated[
    Path | None, typer.Option("--from", help="a visit file (TOML) with the set-up, without readings", show_default=False)
]


class _Stopped(Exception):
    """The person at the lathe has had enough."""


def true(
    job: Job,
    source: From = None,
    caliper: Caliper = False,
    indicator: Indicator = False,
    keep: Keep = False,
    initials: Initials = "",
    say: Say = None,
    as_before: AsBefore = False,
) -> None:
    """True the tailstock round by round: readings in, move out, skim, readings again, until it is in limits."""
    begun: dict[str, Any] = {}

    def begin() -> dict[str, Any]:
        from tailtrue.advise import advise
        from tailtrue.errors import UsageError
        from tailtrue.truing.history import before_in
        from tailtrue.truing.keep import check_keepable
        from tailtrue.truing.lathe_steps import on_steps, steps_of
        from tailtrue.truing.session import Session

        advice = advise(job)
        typed = on_steps(typed_of(source, {"initials": initials}, say or [], advice.dials), steps_of(advice.case)).sound()
        kind = kind_said(caliper, indicator, typed)
        said = [key for key in ("readings", "state", "moves", "date") if typed.says(key)]
        if said:
            do = "take it out of the visit file; it is asked for round by round, and the time is that of the clock"
            raise UsageError(typed.places[key].problem((), "is not said beforehand", do) for key in said)
        records, unread = earlier_records(job, keep)
        last = record_as_before(records, advice.case, "") if as_before else None
        if keep:
            check_keepable(advice.case, typed, ("readings", "state"), last, kind)
        before = before_in(records, advice.case)
        keeping = keeping_beside(job, last) if keep else None
        session = Session(advice.case, before, keeping, kind)
        begun.update(session=session, typed=typed, dials=advice.dials, unread=unread)
        return {}

    guarded(begin, as_json=False)
    if begun["unread"]:
        typer.echo(f"Earlier visits are not looked at: {begun['unread']}")
    typer.echo(f"Type {_STOP} to stop. {_KEEPS if keep else _KEEPS_NOTHING}")
    session = begun["session"]
    try:
        _rounds(session, begun["typed"], begun["dials"])
    except (_Stopped, typer.Abort, KeyboardInterrupt):
        typer.echo("\nStopped.")
    if keep:
        kept = ", ".join(map(str, session.kept))
        typer.echo(f"Kept in the alignment log: record {kept}." if kept else "Nothing was kept in the alignment log.")
    else:
        typer.echo(_RECORDED_NOTHING)
    if session.aside:
        rows = ", ".join(map(str, dict.fromkeys(session.aside)))
        typer.echo(f"Readings that make no record stand there as unread row {rows}.")


def _rounds(session: "Session", base: "Typed", dials: "Dials") -> None:
    said: dict[str, Any] = {"state": "as found"}
    number = 1
    while True:
        typer.echo(f"\nROUND {number}, {said['state']}")
        visit = _round(session, base, said, dials)
        if visit.advice in _OVER:
            typer.echo("\nDone. Bring the lathe back as the sheet says, and note the result on its tag.")
            return
        if visit.advice == "read-more":
            typer.echo("\nThis skim cannot settle it. Do what is said above, then begin anew.")
            return
        said = {"state": "as left", **_moved(dials)}
        number += 1


def _round(session: "Session", base: "Typed", said: dict[str, Any], dials: "Dials") -> "Visit":
    """One round until its readings stand and say what to do."""
    from tailtrue.cli.visit_page import visit_page
    from tailtrue.log.typed import typed_options
    from tailtrue.truing.typed import MOST_READINGS, Readings

    typed = base.with_more(typed_options(said, dials))
    taken: Readings | None = None
    anew = False
    while True:
        try:
            more = _four_readings(session.kind, dials)
        except (_Stopped, typer.Abort, KeyboardInterrupt):
            # Readings that were judged and only lacked more of their kind are worth keeping.
            if taken is not None:
                _settle(session, session.judge(typed, taken, {"visit.read_twice": anew}), typed)
            raise
        if taken is not None and len(taken.taken) + len(more.taken) <= MOST_READINGS:
            more = Readings((*taken.taken, *more.taken), in_order=True)
        try:
            visit = session.judge(typed, more, {"visit.read_twice": anew})
        except TailtrueError as wrong:
            typer.echo(report(wrong), err=True)
            continue
        typer.echo("\n".join(["", *visit_page(visit, dials), ""]))
        if visit.barred:
            _settle(session, visit, typed)
            typer.echo("Look at what stands under FIRST, then read both collars anew.")
            taken, anew = None, True
        elif visit.advice == "read-more" and visit.case.value("visit.more_readings"):
            typer.echo(f"Read both collars again; these readings count too. {_STOP} leaves it at that.")
            taken = more
        else:
            _settle(session, visit, typed)
            return visit


def _settle(session: "Session", visit: "Visit", typed: "Typed") -> None:
    try:
        number = session.settle(visit, typed, now())
    except TailtrueError as wrong:
        typer.echo(report(wrong), err=True)
        return
    if number is not None:
        typer.echo(f"Kept as record {number} of the alignment log.")


def _four_readings(kind: str, dials: "Dials") -> "Readings":
    from tailtrue.truing.typed import Readings, checked, read_one
    from tailtrue.truing.visit import FROM_ZERO

    while True:
        taken = []
        for collar, asked in ASKED:
            while True:
                try:
                    taken.append(read_one(collar, _ask(asked), kind == FROM_ZERO, dials))
                    break
                except TailtrueError as wrong:
                    typer.echo(report(wrong), err=True)
        try:
            return checked(Readings(tuple(taken), in_order=True))
        except TailtrueError as wrong:
            typer.echo(report(wrong), err=True)


def _moved(dials: "Dials") -> dict[str, Any]:
    """What the indicator showed of the move; nothing where it was not noted."""
    from tailtrue.log.typed import typed_options

    asked = "Moved, clamped, skimmed, cooled? Indicator before, released, clamped (Enter where not noted)"
    while True:
        text = _ask(asked, empty=True)
        if not text:
            return {}
        pieces = text.split(",")
        if len(pieces) != _OF_A_MOVE or not all(piece.strip() for piece in pieces):
            typer.echo("not taken: write all three on one line, with commas: before, released, clamped", err=True)
            continue
        said = {"moves": three_readings(text)}
        try:
            typed_options(said, dials).sound()
        except TailtrueError as wrong:
            typer.echo(report(wrong), err=True)
            continue
        return said


def _ask(text: str, empty: bool = False) -> str:
    said = str(typer.prompt(text, default="" if empty else None, show_default=False)).strip()
    if said.casefold() == _STOP:
        raise _Stopped
    return said
