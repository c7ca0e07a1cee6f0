"""Paper of a bar for the lathe: `tailtrue record`."""

from typing import Annotated, Any

import typer

from tailtrue.cli.guarded import guarded
from tailtrue.cli.options import Job, Json, LargePrint, Out

Formats = Annotated[
    str | None, typer.Option("--format", metavar="FORMATS", help="html, pdf, md; without it html,md", show_default=False)
]


def record(job: Job, out: Out, formats: Formats = None, large_print: LargePrint = False, as_json: Json = False) -> None:
    """Make the paper of this bar for the lathe, inspected: look-up table, scales and record sheet."""

    def work() -> dict[str, Any]:
        from tailtrue.documents import PdfLeftOut, how_to_print, read_wanted, write_record

        wanted = read_wanted("record", formats, large=large_print)

        from tailtrue.advise import advise, record_of
        from tailtrue.truing.paper import mend_first

        advice = advise(job)
        mend = mend_first(advice.case)
        lacking = ""
        try:
            paths = write_record(record_of(advice), mend, out, wanted)
        except PdfLeftOut as left:
            paths, lacking = left.paths, str(left)
        return {
            "print": lacking or how_to_print(wanted),
            **({"lacking": lacking} if lacking else {}),
            "documents": [str(path) for path in paths],
            "mend_before_cutting": len(mend),
        }

    done = guarded(work, as_json)
    if not as_json:
        typer.echo("Made:")
        for path in done["documents"]:
            typer.echo(f"  {path}")
        if done["mend_before_cutting"]:
            typer.echo("The lathe must not run yet: see the top of the paper.")
        typer.echo(done["print"], err="lacking" in done)
    if "lacking" in done:
        raise typer.Exit(1)
