"""Tags for lathes that tell how the tailstock was last found: `tailtrue tag`."""

from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Any

import typer

from tailtrue.cli.guarded import guarded

if TYPE_CHECKING:
    from tailtrue.truing.tag import LastCheck, Result

_RESULT_OF: "dict[str, Result]" = {
    "inside": "in-limits", "outside": "out-of-limits", "too close to say": "too-close-to-say",
}  # fmt: skip

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
Json = Annotated[bool, typer.Option("--json", help="print the result as JSON")]


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
        from tailtrue.truing.tag import machine_tag, read_check

        typed = read_check(date, initials, result, next_due)
        if typed is not None and len(jobs) > 1:
            do = "make that tag by itself, and the others from their logs"
            raise UsageError((Problem("", "--date", "stands with more than one job", do),))
        cases = [(job, advise(job).case) for job in jobs]
        checks = [_latest(typed, _logged(job, str(case.value("lathe.name")))) for job, case in cases]
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


def _latest(typed: "LastCheck | None", logged: "LastCheck | None") -> "LastCheck | None":
    """What was typed, unless the log knows better."""
    from dataclasses import replace
    from datetime import date, timedelta
    from math import floor

    from tailtrue.errors import FactsWrong, Problem
    from tailtrue.log.rules import log_rules

    if typed is None:
        return logged
    if logged is not None and logged.date > typed.date:
        do = "leave the options out: the tag then says what the log says"
        raise FactsWrong((Problem("--date", typed.date, f"is before the last check in the log, of {logged.date}", do),))
    if typed.next_due:
        return typed
    days = floor(log_rules().recheck.often_days)
    return replace(typed, next_due=(date.fromisoformat(typed.date) + timedelta(days=days)).isoformat())


def _logged(job: Path, lathe: str) -> "LastCheck | None":
    """The last check of the lathe in the log beside the job: quill clamped, not struck out."""
    from tailtrue.log.book import Book
    from tailtrue.log.recheck import next_check
    from tailtrue.log.rules import log_rules
    from tailtrue.log.storage import LOG_FILE
    from tailtrue.truing.tag import LastCheck

    path = job.parent / LOG_FILE
    if not path.is_file():
        return None
    with Book.open(path) as book:
        found = [
            (record.date_time, number, record, series)
            for series in book.series(lathe) for number, record in series.records if record.quill_clamped
        ]  # fmt: skip
    if not found:
        return None
    _, _, record, series = max(found, key=lambda one: one[:2])
    again = next_check(series, log_rules().recheck)
    return LastCheck(
        record.date_time[:10], record.operator, _RESULT_OF[record.judgement.verdict], again.due if again else "",
        record.judgement.difference_mm,
    )  # fmt: skip
