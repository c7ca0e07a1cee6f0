"""Arguments and options that several commands share."""

from pathlib import Path
from typing import Annotated

import typer

Job = Annotated[Path, typer.Argument(metavar="JOB", help="the job file (TOML)", show_default=False)]
Json = Annotated[bool, typer.Option("--json", help="print the result as JSON")]
Out = Annotated[Path, typer.Option("--out", help="folder for the documents", show_default=False)]
LargePrint = Annotated[bool, typer.Option("--large-print", help="pages in letters of 16 points and more")]
Head = Annotated[
    str, typer.Option("--head", help='readings of the headstock collar: "49.612 mm, 49.613 mm"', show_default=False)
]
Tail = Annotated[str, typer.Option("--tail", help="readings of the tailstock collar", show_default=False)]
Caliper = Annotated[bool, typer.Option("--caliper", help="a caliper read the collars, not a micrometer")]
Indicator = Annotated[
    bool,
    typer.Option("--indicator", help="an indicator on the saddle read the fresh skims, on the side away from the tool"),
]
Keep = Annotated[bool, typer.Option("--keep", help="keep this visit in the alignment log beside the job")]
Initials = Annotated[str, typer.Option("--initials", help="who made the test", show_default=False)]
Say = Annotated[
    list[str] | None,
    typer.Option("--say", help='anything else of a record: --say "quill_extension=40 mm"', show_default=False),
]
AsBefore = Annotated[bool, typer.Option("--as-before", help="the set-up is as in the last record of this lathe and bar")]
