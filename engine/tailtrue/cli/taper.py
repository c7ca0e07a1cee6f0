"""A taper by setting the tailstock over: `tailtrue taper`."""

from pathlib import Path
from typing import Annotated, Any

import typer

from tailtrue.cli.guarded import guarded
from tailtrue.cli.options import Json

_FIGURES = (
    "setover.taper", "setover.half_angle", "setover.span", "setover.amount", "setover.toward_tool",
    "setover.turns", "setover.divisions_over", "setover.steep",
    "setover.cut_difference", "setover.cut_wanted", "setover.correction", "setover.correction_doubt",
)  # fmt: skip

Job = Annotated[
    Path,
    typer.Argument(
        metavar="JOB", help="the job file (TOML): lathe, bar, and the taper where it says one", show_default=False
    ),
]
Small = Annotated[str, typer.Option("--small-end", help="tailstock or headstock, as the work lies", show_default=False)]
Work = Annotated[str, typer.Option("--work-length", help='whole work over both faces: "300 mm"', show_default=False)]
Depth = Annotated[
    str, typer.Option("--hole-depth", help='how deep the centres enter: "3 mm", or head, tail', show_default=False)
]
Large = Annotated[str, typer.Option("--large", help="diameter at the large end of the taper", show_default=False)]
Slim = Annotated[str, typer.Option("--small", help="diameter at its small end", show_default=False)]
Length = Annotated[str, typer.Option("--length", help="length of the tapered part", show_default=False)]
Foot = Annotated[str, typer.Option("--per-foot", help='taper on diameter for each foot: "0.6 in"', show_default=False)]
Ratio = Annotated[str, typer.Option("--ratio", help='taper on diameter: "1:50"', show_default=False)]
Angle = Annotated[str, typer.Option("--angle", help='"1.5 deg half" or "3 deg included"', show_default=False)]
Travel = Annotated[str, typer.Option("--travel", help="how far the tailstock goes over to that side", show_default=False)]
CutLarge = Annotated[str, typer.Option("--cut-large", help="after a cut: diameter nearer the large end", show_default=False)]
CutSmall = Annotated[str, typer.Option("--cut-small", help="after a cut: diameter nearer the small end", show_default=False)]
CutApart = Annotated[str, typer.Option("--cut-apart", help="distance between the two", show_default=False)]
Out = Annotated[Path | None, typer.Option("--out", help="folder for set-over-tag.html", show_default=False)]


def taper(
    job: Job,
    small_end: Small = "",
    work_length: Work = "",
    hole_depth: Depth = "",
    large: Large = "",
    small: Slim = "",
    length: Length = "",
    per_foot: Foot = "",
    ratio: Ratio = "",
    angle: Angle = "",
    travel: Travel = "",
    cut_large: CutLarge = "",
    cut_small: CutSmall = "",
    cut_apart: CutApart = "",
    out: Out = None,
    as_json: Json = False,
) -> None:
    """Set the tailstock over for a taper between centres: how far, which way, how to check it, and the way back."""
    typed = {
        "small_end": small_end, "work_length": work_length, "hole_depth": hole_depth, "large": large, "small": small,
        "length": length, "per_foot": per_foot, "ratio": ratio, "angle": angle, "travel": travel, "cut_large": cut_large,
        "cut_small": cut_small, "cut_apart": cut_apart,
    }  # fmt: skip
    lines: list[str] = []

    def work() -> dict[str, Any]:
        from tailtrue.advise import advise
        from tailtrue.cli.bench_page import terminal_lines
        from tailtrue.documents import write_all
        from tailtrue.render.tag_page import set_over_html
        from tailtrue.render.words import say
        from tailtrue.truing.setover import judge_setover, read_taper, said_in_job

        advice = advise(job)
        found = judge_setover(advice.case, read_taper(typed, said_in_job(advice.case), advice.dials))
        paths = [] if out is None else write_all({"set-over-tag.html": set_over_html(found.tag)}, out)
        lines.extend([str(found.case.value("lathe.name")), ""])
        lines.extend(terminal_lines(found.sections, found.mend, advice.dials))
        lines.extend(["", "Made:", *(f"  {path}" for path in paths)] if paths else [])
        return {
            "lathe": found.case.value("lathe.name"),
            "way": found.case.value("setover.way"),
            "after_cut": found.case.value("setover.after_cut"),
            "correction_way": found.case.value("setover.correction_way"),
            "figures": {name: found.case.value(name) for name in _FIGURES},
            "lines": [say(line, advice.dials) for section in found.sections for line in section.lines],
            "mend_before_cutting": [say(line, advice.dials) for line in found.mend],
            "documents": [str(path) for path in paths],
        }

    guarded(work, as_json)
    if not as_json:
        for line in lines:
            typer.echo(line)
