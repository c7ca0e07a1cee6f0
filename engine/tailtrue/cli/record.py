"""Paper of a bar for the lathe: `tailtrue record`."""

from pathlib import Path
from typing import Any

import typer

from tailtrue.cli.guarded import guarded
from tailtrue.cli.options import Job, Json, LargePrint, Out


def record(job: Job, out: Out, large_print: LargePrint = False, as_json: Json = False) -> None:
    """Make the paper of this bar for the lathe: look-up table, scales and record sheet, record.html and record.md."""

    def work() -> dict[str, Any]:
        from tailtrue.advise import advise
        from tailtrue.documents import write_all
        from tailtrue.log.fields import fields_of_a_record
        from tailtrue.render.record_page import record_html, record_markdown
        from tailtrue.truing.lookup import record_sheet
        from tailtrue.truing.paper import head_of, mend_first

        case = advise(job).case
        sheet, head, mend = record_sheet(case, fields_of_a_record()), head_of(case), mend_first(case)
        name = "record-large.html" if large_print else "record.html"
        page = record_html(sheet, head, mend, large=large_print)
        paths = write_all({name: page, "record.md": record_markdown(sheet, head, mend)}, out)
        return {"documents": [str(path) for path in paths], "mend_before_cutting": len(mend)}

    done = guarded(work, as_json)
    if not as_json:
        typer.echo("Made:")
        for path in done["documents"]:
            typer.echo(f"  {path}")
        if done["mend_before_cutting"]:
            typer.echo("The lathe must not run yet: see the top of the paper.")
        typer.echo(f"Open {Path(done['documents'][0]).name} in a browser and print it from there.")
