"""Causes of taper from whatever tests were made: `tailtrue diagnose`."""

from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Any

import typer

from tailtrue.cli.guarded import guarded
from tailtrue.cli.layout import sections, wrapped
from tailtrue.cli.options import Job, Json

if TYPE_CHECKING:
    from tailtrue.diagnosis.diagnose import Told
    from tailtrue.parts import Dials

_TITLES = {
    "explains": "HOW THAT EXPLAINS THE READINGS",
    "first": "LEFT OUT",
    "found": "WHAT THE READINGS SETTLE",
    "do": "WHAT TO DO, IN THIS ORDER",
    "next": "NEXT TEST",
    "careful": "TAKE CARE",
    "limits": "WHAT THIS CANNOT SHOW",
}

Tests = Annotated[
    Path, typer.Argument(metavar="TESTS", help="a file with the tests that were made (TOML)", show_default=False)
]


def diagnose(job: Job, tests: Tests, as_json: Json = False) -> None:
    """Say what is out of line, from whatever tests were made: bar, chuck, level, sweep, clamping. Nothing is recorded."""
    kept: dict[str, Any] = {}

    def work() -> dict[str, Any]:
        from tailtrue.advise import advise
        from tailtrue.diagnosis.diagnose import as_data
        from tailtrue.diagnosis.diagnose import diagnose as told_of
        from tailtrue.render.words import say
        from tailtrue.truing.paper import mend_first

        advice = advise(job)
        told = told_of(advice.case, tests)
        unsafe = [say(text, advice.dials) for text in mend_first(advice.case)]
        kept.update(told=told, dials=advice.dials, lathe=advice.case.value("lathe.name"), unsafe=unsafe)
        return {
            "lathe": kept["lathe"],
            **as_data(told.found),
            "lines": [{"id": one.id, "part": one.part, "text": say(one.text, advice.dials)} for one in told.lines],
            "mend_before_cutting": unsafe,
        }

    guarded(work, as_json)
    if not as_json:
        for line in _page(kept["told"], kept["dials"], kept["lathe"], kept["unsafe"]):
            typer.echo(line)


def _page(told: "Told", dials: "Dials", lathe: str, unsafe: list[str]) -> list[str]:
    from tailtrue.render.paper import MEND
    from tailtrue.render.words import say

    lines = [lathe, ""]
    for line in (*told.part("answer"), *told.part("ranks")):
        lines += wrapped(say(line.text, dials), "  ")
    parts = [(title, [say(one.text, dials) for one in told.part(part)]) for part, title in _TITLES.items()]
    return lines + sections([*parts, (MEND, unsafe)])
