"""The alignment log of a shop: `tailtrue log`."""

from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Any

import typer

from tailtrue.cli.guarded import guarded
from tailtrue.cli.log_beside import check_date, check_typed_date, log_of, now
from tailtrue.cli.log_lines import entry_line, fault_lines, one_line, strike_line, unread_lines, with_strike
from tailtrue.cli.log_others import CHOICES, TEST, add_other, check_kind, other_line
from tailtrue.cli.options import Json
from tailtrue.errors import ExitCode, FactsWrong, Problem

if TYPE_CHECKING:
    from tailtrue.log.record import Record, State
    from tailtrue.log.series import Series
    from tailtrue.log.unread import UnreadRow
    from tailtrue.parts import Dials
    from tailtrue.quantities import System
    from tailtrue.truing.lathe_steps import LatheSteps

log_app = typer.Typer(
    no_args_is_help=True,
    help="The alignment log beside the job file: every test of every lathe, kept for good; charts and what they say.",
)

Job = Annotated[Path, typer.Argument(metavar="JOB", help="the job file (TOML); the log lies beside it", show_default=False)]
Number = Annotated[int, typer.Argument(metavar="NUMBER", help="number of the record in the list", show_default=False)]
Lathe = Annotated[str | None, typer.Option("--lathe", help="only this lathe", show_default=False)]
Bar = Annotated[str | None, typer.Option("--bar", help="only this bar", show_default=False)]
Date = Annotated[
    str | None,
    typer.Option("--date", help="day, or day and time, such as 2026-03-31T09:40; now when left out", show_default=False),
]


@log_app.command()
def add(
    job: Job,
    source: Annotated[Path, typer.Option("--from", help="the record file (TOML)", show_default=False)],
    date: Date = None,
    as_json: Json = False,
) -> None:
    """Add one test, certificate or height from its file. Whatever is wrong is told at once, and nothing is added then."""

    def work() -> dict[str, Any]:
        from tailtrue.log.book import Book
        from tailtrue.log.other_file import kind_of_file

        if kind := kind_of_file(source):
            number, other = add_other(job, source, kind, date)
            return {"number": number, "log_id": other.log_id, "notes": []}
        path = log_of(job)
        record, dated = _whole_record(job, source, date)
        with Book.create(path) as book:
            before = [entry.record for entry in book.records()]
            number = book.add(record, dated)
        names = {"lathe": record.lathe, "bar": record.bar}
        known = {what: sorted({getattr(one, what) for one in before}) for what in names}
        notes = [
            f"this is the first record of {what} {name}; the log knows {', '.join(known[what])}"
            for what, name in names.items() if known[what] and name not in known[what]
        ]  # fmt: skip
        if not record.quill_clamped:
            notes.append("the quill was not clamped, so this test is kept but not charted")
        return {"number": number, "log_id": record.log_id, "notes": notes}

    done = guarded(work, as_json)
    if not as_json:
        typer.echo(f"Added as record {done['number']}.")
        for note in done["notes"]:
            typer.echo(f"  note: {one_line(note)}")


@log_app.command("list")
def list_records(
    job: Job,
    lathe: Lathe = None,
    bar: Bar = None,
    state: Annotated[str | None, typer.Option("--state", help='"as found" or "as left"', show_default=False)] = None,
    kind: Annotated[str | None, typer.Option("--kind", help=", ".join(CHOICES), show_default=False)] = None,
    struck: Annotated[bool, typer.Option("--struck", help="show what was struck out as well")] = False,
    unread: Annotated[bool, typer.Option("--unread", help="show the rows that are no record: files, barred visits")] = False,
    as_json: Json = False,
) -> None:
    """List the tests, certificates and heights in the log, one line each."""
    lines: list[str] = []

    def work() -> dict[str, Any]:
        from tailtrue.log.book import Book
        from tailtrue.log.json_file import entry_content

        if unread:
            with Book.open(log_of(job)) as book:
                rows = book.unread(struck)
            lines.extend(line for row in rows for line in unread_lines(row))
            return {"unread": [{"number": one.number, **one.row.model_dump()} for one in rows]}
        wanted = _state(state)
        check_kind(kind)
        dials = _dials(job)
        with Book.open(log_of(job)) as book:
            tests = book.records(lathe, bar, wanted, struck) if kind in (None, TEST) else ()
            others = [
                one for one in book.others(lathe, bar, struck)
                if kind in (None, one.record.kind) and wanted in (None, getattr(one.record, "state", ""))
            ]  # fmt: skip
        told = [(one.number, entry_line(one, dials)) for one in tests]
        told += [(one.number, with_strike(other_line(one, dials), one.strike)) for one in others]
        lines.extend(line for _, line in sorted(told))
        found = {"records": [entry_content(entry) for entry in tests]}
        return found | ({"others": [entry_content(entry) for entry in others]} if others else {})

    guarded(work, as_json)
    if not as_json:
        for line in lines or ["Nothing in the log fits."]:
            typer.echo(line)


@log_app.command()
def show(job: Job, number: Number, as_json: Json = False) -> None:
    """Show everything that one record says."""
    lines: list[str] = []

    def work() -> dict[str, Any]:
        from tailtrue.log.book import Book
        from tailtrue.log.fields import labelled
        from tailtrue.log.json_file import entry_content
        from tailtrue.log.other_file import labelled as labelled_other
        from tailtrue.log.record import Record

        dials = _dials(job)
        with Book.open(log_of(job)) as book:
            entry = book.record(number)
        said = entry.record
        found = labelled(said, dials) if isinstance(said, Record) else labelled_other(said, dials)
        lines.append(f"Record {entry.number}, {said.log_id}")
        if entry.strike is not None:
            lines.append(strike_line(entry.strike.initials, entry.strike.date_time, entry.strike.reason))
        lines.extend(f"  {label}: {one_line(value)}" for label, value in found)
        return entry_content(entry)

    guarded(work, as_json)
    if not as_json:
        typer.echo("\n".join(lines))


@log_app.command()
def strike(
    job: Job,
    number: Number,
    reason: Annotated[str, typer.Option("--reason", help="why it no longer counts", show_default=False)],
    initials: Annotated[str, typer.Option("--initials", help="who says so", show_default=False)],
    date: Date = None,
    unread: Annotated[bool, typer.Option("--unread", help="strike out an unread row instead of a record")] = False,
    as_json: Json = False,
) -> None:
    """Strike out a record: it stays in the log with your reason and no longer counts. This cannot be undone."""

    def work() -> dict[str, Any]:
        from tailtrue.log.book import Book

        check_date(date)
        with Book.open(log_of(job)) as book:
            (book.strike_unread if unread else book.strike)(number, reason, initials, date or now())
        return {"number": number}

    guarded(work, as_json)
    if not as_json:
        typer.echo(f"Struck out: {'unread row' if unread else 'record'} {number}. It stays in the log.")


@log_app.command()
def export(
    job: Job,
    out: Annotated[
        Path,
        typer.Option("--out", metavar="FILE", help="file to write, .csv for a spreadsheet or .json", show_default=False),
    ],
    as_json: Json = False,
) -> None:
    """Write the whole log to a file: a copy to keep, or a table for a spreadsheet."""

    def work() -> dict[str, Any]:
        from tailtrue.documents import write_all
        from tailtrue.log.book import Book
        from tailtrue.log.exchange import written

        with Book.open(log_of(job)) as book:
            text = written(book, out)
        (path,) = write_all({out.name: text}, out.parent)
        return {"path": str(path)}

    done = guarded(work, as_json)
    if not as_json:
        typer.echo(done["path"])


@log_app.command("import")
def import_file(
    job: Job,
    file: Annotated[Path, typer.Argument(metavar="FILE", help="an exported file, .csv or .json", show_default=False)],
    as_json: Json = False,
) -> None:
    """Add what is new in a file. Rows that cannot be read are named, and kept in the log until you deal with them."""
    unread: list[UnreadRow] = []

    def work() -> dict[str, Any]:
        from tailtrue.log.book import Book
        from tailtrue.log.exchange import bring_in

        with Book.create(log_of(job)) as book:
            taken, rows = bring_in(book, file, now())
        unread.extend(rows)
        return {**taken._asdict(), "faults": [one.model_dump() for one in rows]}

    done = guarded(work, as_json)
    if not as_json:
        typer.echo(
            f"Added {len(done['added'])}; known already {done['known']}; struck out {done['struck']}; "
            f"not read {len(unread)}."
        )
        for line in (line for row in unread for line in fault_lines(row)):
            typer.echo(line, err=True)
        if unread:
            typer.echo(f"These rows are kept: tailtrue log list {job} --unread", err=True)
    if unread:
        raise typer.Exit(int(ExitCode.FACTS_WRONG))


@log_app.command()
def chart(
    job: Job,
    lathe: Lathe = None,
    bar: Bar = None,
    out: Annotated[
        Path | None, typer.Option("--out", help="folder for the charts to print (SVG)", show_default=False)
    ] = None,
    least: Annotated[
        str | None,
        typer.Option("--least", help='diameter at which the collars are worn out: "55 mm"', show_default=False),
    ] = None,
    as_json: Json = False,
) -> None:
    """Chart the tests as found of each lathe and bar: drift or noise, when to check again, how long the collars last."""
    lines: list[str] = []

    def work() -> dict[str, Any]:
        from tailtrue.documents import write_all
        from tailtrue.log.book import Book
        from tailtrue.log.chart_drawing import chart_svg
        from tailtrue.log.chart_text import chart_lines, wear_line
        from tailtrue.log.recheck import drift_or_noise, next_check
        from tailtrue.log.rules import log_rules
        from tailtrue.log.wear import wear_of

        dials, rules = _dials(job), log_rules()
        least_mm = _length("--least", least)
        with Book.open(log_of(job)) as book:
            found = book.series(lathe, bar)
            used = [entry.record for entry in book.records(bar=bar)]
        pages: dict[str, str] = {}
        told = []
        for series in found:
            again = next_check(series, rules.recheck)
            lines.extend([*chart_lines(series, dials, rules, again), ""])
            pages[_page_name(series, pages)] = chart_svg(series, dials, rules, again)
            told.append(
                {
                    "lathe": series.lathe, "bar": series.bar, "says": list(drift_or_noise(series, rules.chart)),
                    "stretches": [_stretch(one) for one in series.stretches],
                    "left_out": [{"number": number, "why": why} for number, why in series.left_out],
                    "check_again": again._asdict() if again else None,
                }
            )  # fmt: skip
        bars = {series.bar for series in found}
        wear = [one for one in wear_of(used, rules.new_collars_from_mm, least_mm) if one.bar in bars]
        lines.extend(wear_line(one, dials) for one in wear)
        paths = [] if out is None else [str(path) for path in write_all(pages, out)]
        lines.extend(paths)
        return {"series": told, "wear": [one._asdict() for one in wear], "charts": paths}

    guarded(work, as_json)
    if not as_json:
        typer.echo("\n".join(lines) if lines else "Nothing in the log fits.")


def _whole_record(job: Path, source: Path, date: str | None) -> "tuple[Record, bool]":
    """The record in a file, and whether its date was said.

    What a file leaves out that the job knows or the readings give is filled in.
    """
    from tailtrue.log.record_file import whole
    from tailtrue.log.typed import read_typed
    from tailtrue.truing.lathe_steps import on_steps

    steps = _steps(job)
    system: System = "" if steps is None else "inch" if steps.inch else "metric"
    typed = on_steps(read_typed(source, system), steps)
    check_typed_date(typed)
    check_date(date)
    dated = bool(date) or typed.says("date")
    when = date or (None if typed.says("date") else now())
    if not typed.lacking() or (date is not None and typed.says("date")):
        return whole(typed, {} if when is None else {"date": when}), dated
    from tailtrue.advise import advise
    from tailtrue.truing.keep import check_keepable, judged_record

    case = advise(job).case
    check_keepable(case, typed, read=())
    return judged_record(case, typed, when), dated


def _steps(job: Path) -> "LatheSteps | None":
    """The steps of the lathe of a job; a record can be added beside a job file that has faults of its own."""
    from tailtrue.errors import TailtrueError
    from tailtrue.given.catalogue import load_catalogue
    from tailtrue.given.read import read_job
    from tailtrue.places import knowledge_folder
    from tailtrue.truing.lathe_steps import LatheSteps

    try:
        given = read_job(job, load_catalogue(knowledge_folder()))
    except TailtrueError:
        return None
    return LatheSteps.of(given.value)


def _dials(job: Path) -> "Dials":
    from tailtrue.given.catalogue import load_catalogue
    from tailtrue.given.read import read_job
    from tailtrue.places import knowledge_folder

    given = read_job(job, load_catalogue(knowledge_folder()))
    return "inch" if given.value("lathe.dials") == "inch" else "metric"


def _state(said: str | None) -> "State | None":
    if said in (None, "as found"):
        return None if said is None else "as found"
    if said == "as left":
        return "as left"
    raise FactsWrong((Problem("--state", said, "is not one of the choices", "write as found or as left, in quotes"),))


def _length(option: str, said: str | None) -> float | None:
    from tailtrue.quantities import read_quantity

    if said is None:
        return None
    try:
        return read_quantity(said, "mm")
    except FactsWrong as wrong:
        raise FactsWrong(Problem(option, one.said, one.wrong, one.do) for one in wrong.problems) from None


def _stretch(stretch: Any) -> dict[str, Any]:
    return {
        "began": stretch.began,
        "checks": [check._asdict() for check in stretch.checks],
        "chart": stretch.chart._asdict() if stretch.chart else None,
        "more_than_scatter": [stretch.checks[place].number for place in sorted(stretch.signals)],
    }


def _page_name(series: "Series", taken: dict[str, str]) -> str:
    """A file name for a chart; two names that look alike as file names are told apart by a number."""
    import re

    plain = re.sub(r"[^a-z0-9]+", "-", f"{series.lathe} {series.bar}".lower()).strip("-") or "lathe"
    names = (f"chart-{plain[:80]}{'' if turn == 0 else f'-{turn + 1}'}.svg" for turn in range(len(taken) + 1))
    return next(name for name in names if name not in taken)
