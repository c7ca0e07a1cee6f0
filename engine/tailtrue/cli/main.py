"""Commands and exit codes."""

import atexit
import gc
import json
import os
import sys
from datetime import date
from pathlib import Path
from typing import Annotated, Any

import typer

from tailtrue.cli.asking import ask
from tailtrue.cli.correct import correct
from tailtrue.cli.diagnose import diagnose
from tailtrue.cli.explain import compare, why, why_not
from tailtrue.cli.guarded import guarded
from tailtrue.cli.knowledge import knowledge_app
from tailtrue.cli.log import log_app
from tailtrue.cli.options import Job, Json, LargePrint, Out
from tailtrue.cli.record import record
from tailtrue.cli.tag import tag
from tailtrue.cli.taper import taper
from tailtrue.cli.trials import clamp_test, reverse_test
from tailtrue.cli.true import true
from tailtrue.errors import ExitCode

app = typer.Typer(
    add_completion=False,
    no_args_is_help=True,
    rich_markup_mode=None,
    pretty_exceptions_enable=False,
    help="Procedures for making and using an alignment test bar on your lathe.",
)
app.command()(correct)
app.command()(true)
app.command("clamp-test")(clamp_test)
app.command("reverse-test")(reverse_test)
app.command()(diagnose)
app.command()(record)
app.command()(taper)
app.command()(tag)
app.command()(why)
app.command("why-not")(why_not)
app.command()(compare)
app.add_typer(knowledge_app, name="knowledge")
app.add_typer(log_app, name="log")


Only = Annotated[
    str | None,
    typer.Option(
        "--only",
        metavar="NAMES",
        help="procedure, card, safety, record, sop: these documents alone, with commas",
        show_default=False,
    ),
]
Formats = Annotated[
    str | None,
    typer.Option("--format", metavar="FORMATS", help="html, pdf, md, json; without it html,md,json", show_default=False),
]


@app.command()
def make(
    job: Job,
    out: Out,
    only: Only = None,
    formats: Formats = None,
    large_print: LargePrint = False,
    as_json: Json = False,
) -> None:
    """Make the procedure of a job with its card, safety review and record and, for a shared shop, its standing procedure."""

    def work() -> dict[str, Any]:
        from tailtrue.cli.earlier_papers import earlier_papers
        from tailtrue.documents import PdfLeftOut, how_to_print, read_wanted, write_documents

        wanted = read_wanted(only, formats, large=large_print)

        from tailtrue.advise import advise, procedure_of
        from tailtrue.cli.odd_days import odd_days
        from tailtrue.render.words import say

        advice = advise(job)
        procedure = procedure_of(advice)
        lacking = ""
        try:
            paths = write_documents(procedure, out, wanted)
        except PdfLeftOut as left:
            paths, lacking = left.paths, str(left)
        return {
            "print": lacking or how_to_print(wanted),
            **({"lacking": lacking} if lacking else {}),
            "documents": [str(path) for path in paths],
            "number": procedure.title.number,
            "checksum": procedure.title.checksum,
            "knowledge_version": procedure.title.knowledge_version,
            "attention": [
                *odd_days(advice.given, advice.case.knowledge, date.today()),
                *(say(one.text, procedure.title.dials) for one in procedure.findings if one.level == "attention"),
            ],
            "earlier": earlier_papers(out, paths, procedure.title.checksum),
        }

    try:
        done = guarded(work, as_json)
    except typer.Exit:
        # Whoever opens the folder after a refusal must not take what lies there for what was asked.
        from tailtrue.cli.earlier_papers import earlier_papers

        if said := earlier_papers(out):
            typer.echo(said, err=True)
        raise
    if not as_json:
        typer.echo("Made:")
        for path in done["documents"]:
            typer.echo(f"  {path}")
        for finding in done["attention"]:
            typer.echo(f"attention: {finding}")
        if done["earlier"]:
            typer.echo(done["earlier"])
        typer.echo(done["print"], err="lacking" in done)
    if "lacking" in done:
        raise typer.Exit(1)


@app.command()
def check(job: Job, as_json: Json = False) -> None:
    """Judge a job and print the findings; write nothing."""

    def work() -> dict[str, Any]:
        from tailtrue.advise import advise, procedure_of
        from tailtrue.cli.odd_days import odd_days
        from tailtrue.render.words import say

        advice = advise(job)
        procedure_of(advice)
        days = odd_days(advice.given, advice.case.knowledge, date.today())
        noticed = [*(("attention", (day,)) for day in days), *advice.noticed]
        return {"findings": [{"level": level, "text": say(text, advice.dials)} for level, text in noticed]}

    done = guarded(work, as_json)
    if not as_json:
        typer.echo("This job can be done. The procedure passes inspection.")
        for finding in done["findings"]:
            typer.echo(f"  {finding['level']}: {finding['text']}")


@app.command()
def schema(
    out: Annotated[Path | None, typer.Option("--out", help="folder to write the schemas to", show_default=False)] = None,
) -> None:
    """Print the JSON Schemas of lathe, crib, stock and job files, and of procedure.json."""

    def work() -> dict[str, Any]:
        from tailtrue.given.catalogue import load_catalogue
        from tailtrue.given.schema import schemas
        from tailtrue.places import knowledge_folder
        from tailtrue.procedure import Procedure

        return {**schemas(load_catalogue(knowledge_folder())), "procedure": Procedure.model_json_schema()}

    made = guarded(work, as_json=False)
    if out is None:
        typer.echo(json.dumps(made, indent=2, ensure_ascii=False))
        return
    pages = {f"{name}.schema.json": json.dumps(body, indent=2, ensure_ascii=False) + "\n" for name, body in made.items()}

    def write() -> dict[str, Any]:
        from tailtrue.documents import write_all

        return {"paths": write_all(pages, out)}

    for path in guarded(write, as_json=False)["paths"]:
        typer.echo(str(path))


ask(app)


def run() -> None:
    """The console entry: no traceback for what a user can mend, a short word for what nobody foresaw."""
    # A command is over before the collector of cycles could free anything worth its searching; nor need it search
    # once more at the end, for the memory goes back with the process.
    gc.disable()
    # Nothing of another package reads along while files are checked; so none is looked for among all that is installed.
    os.environ.setdefault("PYDANTIC_DISABLE_PLUGINS", "__all__")
    atexit.register(gc.freeze)
    try:
        app()
    except Exception as unexpected:
        typer.echo(f"tailtrue stopped on something it did not expect: {type(unexpected).__name__}: {unexpected}", err=True)
        typer.echo("nothing was printed that was not inspected; please report this with the job file", err=True)
        sys.exit(int(ExitCode.UNEXPECTED))
