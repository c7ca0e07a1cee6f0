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
        from tailtrue.log.fields import record_catalogue
        from tailtrue.render.record_page import record_html, record_markdown
        from tailtrue.truing.lookup import record_sheet

        fields = {fact.key: fact.spec for fact in record_catalogue().facts.values()}
        sheet = record_sheet(advise(job).case, fields)
        name = "record-large.html" if large_print else "record.html"
        paths = write_all({name: record_html(sheet, large=large_print), "record.md": record_markdown(sheet)}, out)
        return {"documents": [str(path) for path in paths], "mend_before_cutting": len(sheet.mend)}

    done = guarded(work, as_json)
    if not as_json:
        typer.echo("Made:")
        for path in done["documents"]:
            typer.echo(f"  {path}")
        if done["mend_before_cutting"]:
            typer.echo("The lathe must not run yet: see the top of the paper.")
        typer.echo(f"Open {Path(done['documents'][0]).name} in a browser and print it from there.")
