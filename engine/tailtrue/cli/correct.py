"""From readings to the move of the tailstock: `tailtrue correct`."""

from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Any

import typer

from tailtrue.cli.guarded import guarded
from tailtrue.cli.log_beside import (
    check_typed_date,
    earlier_records,
    keeping_beside,
    now,
    number_of,
    record_as_before,
)
from tailtrue.cli.options import AsBefore, Caliper, Head, Indicator, Initials, Job, Json, Keep, Say, Tail
from tailtrue.cli.visit_typed import both, kind_said, readings_said, typed_of
from tailtrue.errors import ExitCode

if TYPE_CHECKING:
    from tailtrue.case import Case
    from tailtrue.parts import Dials
    from tailtrue.truing.typed import Readings
    from tailtrue.truing.visit import Visit

BARRED = "answer what stands under FIRST, then keep it"
KEPT = "Kept as record {number} of the alignment log."
KNOWN = "This visit is record {number} of the alignment log already; nothing was added."
TWICE = """\
NOT KEPT: record {number} of {date} has the same readings, lathe, bar and state, and this visit was given no date.
If it is that visit, nothing is to be done. If it is another one, keep it with its own date: --date"""
NOT_KEPT = """\
NOT KEPT as a record: {because}.
So that they are not lost, the readings stand in the log as unread row {number}: tailtrue log list {job} --unread"""

NOT_ASKED = "Not kept: the next call will not know of this one. Use `true`, or --keep."
NO_RECORD_ANYWAY = "Not kept: the next call will not know of this one. Use `true`: it holds each round against the last."
ANEW = (
    "Look at what stands under FIRST and read both collars anew. If that shows the same, give this command the new "
    "readings and --read-twice."
)

Middle = Annotated[str, typer.Option("--middle", help="readings of a third collar, where there is one", show_default=False)]
Station = Annotated[
    str, typer.Option("--middle-station", help="headstock centre to the middle of that collar", show_default=False)
]
Order = Annotated[
    str, typer.Option("--order", help="the order they were read in, one letter each: HTTH", show_default=False)
]
Table = Annotated[
    Path | None,
    typer.Option("--table", help="a CSV file with the columns collar and reading, in the order read; - for typed input",
                 show_default=False),
]  # fmt: skip
From = Annotated[
    Path | None,
    typer.Option("--from", help="a visit file (TOML): readings, set-up, initials and the rest", show_default=False),
]
ReadTwice = Annotated[bool, typer.Option("--read-twice", help="both collars were read anew and the readings stand")]
HeadWarm = Annotated[str, typer.Option("--head-temperature", help='of the headstock collar: "24 degC"', show_default=False)]
TailWarm = Annotated[str, typer.Option("--tail-temperature", help="of the tailstock collar", show_default=False)]
State = Annotated[
    str, typer.Option("--state", help="as-found, or as-left after a move and a fresh skim", show_default=False)
]
Moved = Annotated[
    str,
    typer.Option("--moved", help='indicator before, released at the mark, clamped: "0 mm, 0.016 mm, 0.015 mm"',
                 show_default=False),
]  # fmt: skip
Date = Annotated[str, typer.Option("--date", help="day, or day and time; now when left out", show_default=False)]
Explain = Annotated[bool, typer.Option("--explain", help="say why: the geometry with the figures of this bar")]
Out = Annotated[
    Path | None, typer.Option("--out", help="folder for explain.html, the same with its drawing", show_default=False)
]


def correct(
    job: Job,
    head: Head = "",
    tail: Tail = "",
    order: Order = "",
    middle: Middle = "",
    middle_station: Station = "",
    table: Table = None,
    source: From = None,
    caliper: Caliper = False,
    indicator: Indicator = False,
    read_twice: ReadTwice = False,
    head_temperature: HeadWarm = "",
    tail_temperature: TailWarm = "",
    state: State = "",
    moved: Moved = "",
    keep: Keep = False,
    initials: Initials = "",
    date: Date = "",
    say: Say = None,
    as_before: AsBefore = False,
    explain: Explain = False,
    out: Out = None,
    as_json: Json = False,
) -> None:
    """Work out the move of the tailstock from readings of both collars. Without readings it asks for them."""
    lines: list[str] = []

    def work() -> dict[str, Any]:
        from tailtrue.advise import advise
        from tailtrue.cli.layout import wrapped
        from tailtrue.cli.visit_page import visit_content, visit_page
        from tailtrue.truing.history import before_in, kept_already
        from tailtrue.truing.keep import NO_RECORD, check_keepable
        from tailtrue.truing.lathe_steps import on_steps, steps_of
        from tailtrue.truing.said import readings_of
        from tailtrue.truing.session import Session
        from tailtrue.truing.typed import temperatures
        from tailtrue.truing.visit import FROM_ZERO

        advice = advise(job)
        also = {"visit.read_twice": read_twice, **temperatures(head_temperature, tail_temperature)}
        told = {"state": state, "moved": moved, "initials": initials, "date": date, "middle_station": middle_station}
        if middle:
            told.update(head=head, tail=tail, middle=middle, order=order)
        typed = on_steps(typed_of(source, told, say or []), steps_of(advice.case))
        kind = kind_said(caliper, indicator, typed)
        check_typed_date(typed)
        day = str(typed.content.get("date", "")) or now()
        records, unread = earlier_records(job, keep)
        last = record_as_before(records, advice.case, day) if as_before else None

        def check() -> None:
            if keep:
                check_keepable(advice.case, typed, as_before=last, kind=kind)
            else:
                typed.sound()

        def read() -> "Readings":
            if typed.says("readings"):
                return readings_of(typed, kind == FROM_ZERO)
            return readings_said(head, tail, order, table, kind)

        # Nobody is asked for readings that cannot be kept; those that were written are looked at together with the rest.
        written = typed.says("readings") or bool(head or tail or table)
        if not written:
            check()
        readings = both(check, read) if written else read()
        same = kept_already(records, advice.case, typed, readings, day, kind) if keep else None
        if same is not None:
            records.remove(same)
        session = Session(
            advice.case, before_in(records, advice.case, day), kind=kind,
            keeping=keeping_beside(job, last, typed.says("date")) if keep and same is None else None,
        )  # fmt: skip
        visit = session.judge(typed, readings, also)
        number = session.settle(visit, typed, day) if same is None else number_of(job, same)
        aside = session.aside[-1] if session.aside else None
        lines.extend(visit_page(visit, advice.dials))
        if visit.barred and not session.judge(typed, readings, {**also, "visit.read_twice": True}).barred:
            lines.extend(["", *wrapped(ANEW, "")])
        if explain or out is not None:
            lines.extend(["", *_explained(advice.case, visit, advice.dials, out)])
        if unread:
            lines.extend(["", *wrapped(f"Earlier visits were not looked at: {unread}", "  ")])
        if keep:
            because = " ".join(NO_RECORD[kind][:2]) if kind in NO_RECORD else BARRED
            known = KNOWN if typed.says("date") else TWICE
            ending = NOT_KEPT if number is None else KEPT if same is None else known
            filled = ending.format(
                number=number or aside, job=job, because=because, date=same.date_time[:10] if same else ""
            )
            lines.extend(["", *filled.splitlines()])
        else:
            lines.extend(["", *wrapped(NO_RECORD_ANYWAY if kind in NO_RECORD else NOT_ASKED, "")])
        return {
            **visit_content(visit, advice.dials),
            "kept": number,
            "kept_before": same is not None,
            "date_needed": same is not None and not typed.says("date"),
            "unread_row": aside,
            "earlier_not_read": unread,
        }

    result = guarded(work, as_json)
    if not as_json:
        for line in lines:
            typer.echo(line)
    if keep and (result["kept"] is None or result["date_needed"]):
        raise typer.Exit(int(ExitCode.FACTS_WRONG))


def _explained(case: "Case", visit: "Visit", dials: "Dials", out: Path | None) -> list[str]:
    from tailtrue.cli.bench_page import terminal_lines
    from tailtrue.documents import write_all
    from tailtrue.render.explain_page import explain_html
    from tailtrue.truing.explain import explain_visit

    explained = explain_visit(case, visit)
    lines = list(terminal_lines(explained.told, (), dials))
    if out is not None:
        (page,) = write_all({"explain.html": explain_html(explained)}, out)
        lines += ["", f"With its drawing: {page}"]
    return lines
