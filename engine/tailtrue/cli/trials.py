"""Two tests beside that of the collars: `tailtrue clamp-test` and `tailtrue reverse-test`."""

from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Any

import typer

from tailtrue.cli.guarded import guarded
from tailtrue.cli.options import Json

if TYPE_CHECKING:
    from tailtrue.truing.trials import Trial

_CLAMP = ("clamp.cycles", "clamp.shift", "clamp.shift_doubt", "clamp.scatter", "lookup.limit_move")
_REVERSE = (
    "reverse.change", "reverse.change_doubt", "reverse.mean_difference", "reverse.lathe_signed", "reverse.bar",
    "reverse.indicator_doubt", "reverse.move", "reverse.move_doubt",
)  # fmt: skip

Job = Annotated[Path, typer.Argument(metavar="JOB", help="the job file (TOML), for lathe and bar", show_default=False)]
Cycles = Annotated[
    str,
    typer.Option("--indicator", help='on the quill, released and clamped by turns: "0 mm, 0.004 mm, 0.001 mm, 0.005 mm"',
                 show_default=False),
]  # fmt: skip
Begins = Annotated[str, typer.Option("--begins", help="the state of the first reading: released or clamped")]
Head = Annotated[str, typer.Option("--head", help="readings of the headstock collar, bar as it is", show_default=False)]
Tail = Annotated[str, typer.Option("--tail", help="readings of the tailstock collar, bar as it is", show_default=False)]
TurnedHead = Annotated[
    str, typer.Option("--turned-head", help="collar at the headstock, bar turned and skimmed anew", show_default=False)
]
TurnedTail = Annotated[
    str, typer.Option("--turned-tail", help="collar at the tailstock, bar turned and skimmed anew", show_default=False)
]
Run = Annotated[
    str, typer.Option("--indicator", help='at the headstock collar, at the tailstock collar: "0 mm, 0.018 mm"',
                      show_default=False),
]  # fmt: skip
TurnedRun = Annotated[
    str, typer.Option("--turned-indicator", help="the same with the bar turned end for end", show_default=False)
]
Side = Annotated[str, typer.Option("--side", help="side of the bar that is touched: front or rear", show_default=False)]


def clamp_test(job: Job, indicator: Cycles = "", begins: Begins = "released", as_json: Json = False) -> None:
    """Judge whether the tailstock comes back to one place when it is clamped, against the limit of the bar."""

    def judged(case: Any) -> "Trial":
        from tailtrue.truing.trials import judge_clamping

        return judge_clamping(case, indicator, begins)

    _run(job, judged, ("clamp.verdict", "clamp.shift_way"), _CLAMP, as_json)


def reverse_test(
    job: Job,
    head: Head = "",
    tail: Tail = "",
    turned_head: TurnedHead = "",
    turned_tail: TurnedTail = "",
    indicator: Run = "",
    turned_indicator: TurnedRun = "",
    side: Side = "",
    as_json: Json = False,
) -> None:
    """Tell what is the lathe's from what is the bar's, with the bar as it is and turned end for end."""

    def judged(case: Any) -> "Trial":
        from tailtrue.truing.trials import judge_reversal

        collars = {"head": head, "tail": tail, "turned_head": turned_head, "turned_tail": turned_tail}
        return judge_reversal(case, collars, {"first": indicator, "turned": turned_indicator}, side)

    _run(job, judged, ("reverse.collars", "reverse.way"), _REVERSE, as_json)


def _run(
    job: Path, judged: "Callable[[Any], Trial]", words: tuple[str, ...], figures: tuple[str, ...], as_json: bool
) -> None:  # fmt: skip
    lines: list[str] = []

    def work() -> dict[str, Any]:
        from tailtrue.advise import advise
        from tailtrue.cli.bench_page import terminal_lines
        from tailtrue.render.words import say

        advice = advise(job)
        trial = judged(advice.case)
        value = trial.case.value
        lines.extend([f"{value('lathe.name')}, {value('truing.bar')}", ""])
        lines.extend(terminal_lines(trial.sections, trial.mend, advice.dials))
        return {
            "lathe": value("lathe.name"),
            "bar": value("truing.bar"),
            **{name.split(".")[1]: value(name) for name in words},
            "figures": {name: value(name) for name in figures},
            "lines": [say(line, advice.dials) for section in trial.sections for line in section.lines],
            "mend_before_cutting": [say(line, advice.dials) for line in trial.mend],
        }

    guarded(work, as_json)
    if not as_json:
        for line in lines:
            typer.echo(line)
