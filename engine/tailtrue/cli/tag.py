"""Tags for lathes that tell how the tailstock was last found: `tailtrue tag`."""

from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Any

import typer

from tailtrue.cli.guarded import guarded
from tailtrue.cli.log_beside import check_date, is_empty, log_of
from tailtrue.cli.options import Json

if TYPE_CHECKING:
    from tailtrue.truing.tag import LastCheck

Jobs = Annotated[
    list[Path], typer.Argument(metavar="JOB...", help="job files (TOML), one for each lathe", show_default=False)
]
Out = Annotated[Path, typer.Option("--out", help="folder for tags.html", show_default=False)]
Day = Annotated[
    str, typer.Option("--date", help="day of the last check, where the log has none: 2026-11-24", show_default=False)
]
Initials = Annotated[str, typer.Option("--initials", help="who made it", show_default=False)]
Result_ = Annotated[str, typer.Option("--result", help="in-limits, out-of-limits or too-close-to-say", show_default=False)]
Due = Annotated[str, typer.Option("--next-due", help="day of the next check", show_default=False)]


def tag(
    jobs: Jobs,
    out: Out,
    date: Day = "",
    initials: Initials = "",
    result: Result_ = "",
    next_due: Due = "",
    as_json: Json = False,
) -> None:
    """Make tags to hang on lathes: last check from the log or as given, result, initials, next check. Six on a page."""

    def work() -> dict[str, Any]:
        from tailtrue.advise import advise
        from tailtrue.documents import write_all
        from tailtrue.errors import Problem, UsageError
        from tailtrue.render.tag_page import tags_html
        from tailtrue.truing.tag import latest_check, machine_tag, read_check

        typed = read_check(date, initials, result, next_due)
        check_date(date)
        if typed is not None and len(jobs) > 1:
            do = "make that tag by itself, and the others from their logs"
            raise UsageError((Problem("", "--date", "stands with more than one job", do),))
        cases = [(job, advise(job).case) for job in jobs]
        checks = [latest_check(typed, _logged(job, str(case.value("lathe.name")))) for job, case in cases]
        tags = [machine_tag(case, check) for (_, case), check in zip(cases, checks, strict=True)]
        (path,) = write_all({"tags.html": tags_html(tags)}, out)
        told = [
            {
                "lathe": one.head.machine, "date": one.date, "result": check.result if check else None,
                "initials": one.initials, "next_due": one.next_due, "mend_before_cutting": len(one.mend),
            }
            for one, check in zip(tags, checks, strict=True)
        ]  # fmt: skip
        return {"document": str(path), "tags": told}

    done = guarded(work, as_json)
    if not as_json:
        typer.echo("Made:")
        typer.echo(f"  {done['document']}")
        for one in done["tags"]:
            found = (
                f"{one['result'].replace('-', ' ')} on {one['date']}"
                if one["result"]
                else "no check known, places to write in"
            )
            typer.echo(f"  {one['lathe']}: {'must not run yet; ' if one['mend_before_cutting'] else ''}{found}")


def _logged(job: Path, lathe: str) -> "LastCheck | None":
    """The last check of the lathe in the log beside the job."""
    from tailtrue.log.book import Book
    from tailtrue.truing.tag import last_check

    path = log_of(job)
    if is_empty(path):
        return None
    with Book.open(path) as book:
        return last_check(book.series(lathe))
