"""From readings to the move of the tailstock: `tailtrue correct`."""

import sys
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Any

import typer

from tailtrue.cli.guarded import guarded
from tailtrue.cli.log_beside import add_to_log, now, records_of
from tailtrue.errors import ExitCode

if TYPE_CHECKING:
    from tailtrue.case import Case
    from tailtrue.log.record import Record
    from tailtrue.log.typed import Typed
    from tailtrue.render.numbers import Dials
    from tailtrue.truing.typed import Collar, Readings
    from tailtrue.truing.visit import Visit

ASKED: "tuple[tuple[Collar, str], ...]" = (("head", "Headstock end, first"), ("tail", "Tailstock end, first"),
         ("tail", "Tailstock end, second"), ("head", "Headstock end, second"))  # fmt: skip
NOT_KEPT = "NOT KEPT in the log: answer what stands under FIRST, then keep it."

Job = Annotated[Path, typer.Argument(metavar="JOB", help="the job file (TOML)", show_default=False)]
Head = Annotated[
    str, typer.Option("--head", help='readings of the headstock collar: "49.612 mm, 49.613 mm"', show_default=False)
]
Tail = Annotated[str, typer.Option("--tail", help="readings of the tailstock collar", show_default=False)]
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
Caliper = Annotated[bool, typer.Option("--caliper", help="a caliper read the collars, not a micrometer")]
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
Keep = Annotated[bool, typer.Option("--keep", help="keep this visit in the alignment log beside the job")]
Initials = Annotated[str, typer.Option("--initials", help="who made the test", show_default=False)]
Date = Annotated[str, typer.Option("--date", help="day, or day and time; now when left out", show_default=False)]
Say = Annotated[
    list[str] | None,
    typer.Option("--say", help='anything else of a record: --say "quill_extension=40 mm"', show_default=False),
]
AsBefore = Annotated[bool, typer.Option("--as-before", help="the set-up is as in the last record of this lathe and bar")]
Explain = Annotated[bool, typer.Option("--explain", help="say why: the geometry with the figures of this bar")]
Out = Annotated[
    Path | None, typer.Option("--out", help="folder for explain.html, the same with its drawing", show_default=False)
]
Json = Annotated[bool, typer.Option("--json", help="print the result as JSON")]


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
        from tailtrue.truing.history import before_in
        from tailtrue.truing.keep import check_keepable
        from tailtrue.truing.session import Keeping, Session
        from tailtrue.truing.typed import temperatures

        advice = advise(job)
        also = {"visit.read_twice": read_twice, **temperatures(head_temperature, tail_temperature)}
        told = {"state": state, "moved": moved, "initials": initials, "date": date, "middle_station": middle_station}
        if middle:
            told.update(head=head, tail=tail, middle=middle, order=order)
        typed = typed_of(source, told, say or [])
        if not keep:
            typed.sound()
        day = str(typed.content.get("date", "")) or now()
        records, unread = earlier_records(job, keep)
        last = record_as_before(records, advice.case, day) if as_before else None
        if keep:
            check_keepable(advice.case, typed, as_before=last)
        readings = None if typed.says("readings") else _readings(head, tail, order, table)
        session = Session(
            advice.case, before_in(records, advice.case, day), kind="caliper" if caliper else "micrometer",
            keeping=Keeping(lambda record: add_to_log(job, record), last) if keep else None,
        )  # fmt: skip
        visit = session.judge(typed, readings, also)
        number = session.settle(visit, typed, day)
        lines.extend(visit_page(visit, advice.dials))
        if explain or out is not None:
            lines.extend(["", *_explained(advice.case, visit, advice.dials, out)])
        if unread:
            lines.extend(["", *wrapped(f"Earlier visits were not looked at: {unread}", "  ")])
        if keep:
            lines.extend(["", f"Kept as record {number} of the alignment log." if number else NOT_KEPT])
        return {**visit_content(visit, advice.dials), "kept": number, "earlier_not_read": unread}

    result = guarded(work, as_json)
    if not as_json:
        for line in lines:
            typer.echo(line)
    if keep and result["kept"] is None:
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


def typed_of(source: Path | None, told: dict[str, str], say: list[str]) -> "Typed":
    """What a visit file and the options say together of a record."""
    from tailtrue.errors import Problem, UsageError
    from tailtrue.log.typed import read_typed, typed_options

    said: dict[str, Any] = {}
    names = {"initials": "operator", "moved": "moves", "middle_station": "mid_station"}
    for name, text in told.items():
        if text:
            said[names.get(name, name)] = text
    if "state" in said:
        said["state"] = said["state"].replace("-", " ")
    if "moves" in said:
        said["moves"] = three_readings(said["moves"])
    faults = []
    for one in say:
        key, sign, value = (part.strip() for part in one.partition("="))
        if not (key and sign and value) or key in said or key in ("readings", "moves", "level"):
            do = 'write a key of a visit file, once, and its value: --say "quill_extension=40 mm"'
            faults.append(Problem("", f"--say {one}", "cannot be used", do))
            continue
        said[key] = _plain(value)
    if faults:
        raise UsageError(faults)
    options = typed_options(said)
    return options if source is None else read_typed(source).with_more(options)


def three_readings(text: str) -> list[dict[str, str]]:
    """What an indicator showed of one move, as a visit file would have it; what is missing is found there."""
    return [dict(zip(("before", "unclamped", "clamped"), (piece.strip() for piece in text.split(",")), strict=False))]


def _plain(value: str) -> Any:
    """A value as a visit file would have it: yes and no, whole numbers, text."""
    words = {"yes": True, "true": True, "no": False, "false": False}
    if value.casefold() in words:
        return words[value.casefold()]
    return int(value) if value.isdecimal() else value


def earlier_records(job: Path, needed: bool) -> "tuple[list[Record], str]":
    """The records of the log, and why they cannot be read; that stops nothing but the keeping."""
    from tailtrue.log.faults import LogUnusable

    try:
        return records_of(job), ""
    except LogUnusable as unusable:
        if needed:
            raise
        return [], str(unusable)


def record_as_before(records: "list[Record]", case: "Case", date: str) -> "Record":
    from tailtrue.errors import Problem, UsageError
    from tailtrue.truing.history import last_record

    last = last_record(records, case, date)
    if last is None:
        do = "say the set-up this once, in a visit file (--from) or with --say"
        raise UsageError((Problem("", "--as-before", "finds no earlier record of this lathe and bar in the log", do),))
    return last


def _readings(head: str, tail: str, order: str, table: Path | None) -> "Readings":
    from tailtrue.errors import Problem, UsageError
    from tailtrue.truing.typed import Readings, checked, read_lists, read_one, read_table

    if table is not None and (head or tail or order):
        raise UsageError((Problem("", "--table", "stands with --head, --tail or --order", "give the table, or the lists"),))
    if table is not None:
        try:
            text = sys.stdin.read() if str(table) == "-" else table.read_text(encoding="utf-8-sig")
        except (OSError, UnicodeDecodeError) as broken:
            raise UsageError((Problem("", str(table), f"cannot be read: {broken}", "name a CSV file"),)) from broken
        return read_table(text, "typed" if str(table) == "-" else table.name)
    if head or tail:
        return read_lists(head, tail, order)
    if not sys.stdin.isatty():
        do = 'give --head "49.612 mm, 49.613 mm" --tail "49.655 mm, 49.654 mm", or --table'
        raise UsageError((Problem("", "", "there are no readings", do),))
    return checked(Readings(tuple(read_one(collar, typer.prompt(asked)) for collar, asked in ASKED), in_order=True))
