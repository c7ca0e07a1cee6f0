"""Explaining on the command line: `tailtrue why`, `tailtrue why-not`, `tailtrue compare`."""

import textwrap
from collections.abc import Iterable, Iterator
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Any

import typer

from tailtrue.cli.guarded import guarded
from tailtrue.cli.options import Job, Json

if TYPE_CHECKING:
    from tailtrue.advise import Advice
    from tailtrue.errors import Problem
    from tailtrue.explaining.compare import Changed, Difference, InOut
    from tailtrue.explaining.said import Explanation, Side
    from tailtrue.parts import Dials

WIDTH = 100

Name = Annotated[
    str,
    typer.Argument(
        metavar="NAME",
        help="a fact, decision, step, caution, stop or note: skim.speed; or as printed: 5.10, 'phase 5', '5.10 speed'",
        show_default=False,
    ),
]
NameNot = Annotated[
    str,
    typer.Argument(
        metavar="NAME",
        help="a step, caution, stop, note, decision, or one answer: collar.hold=jaws; a step also by its number: 5.10",
        show_default=False,
    ),
]
Parts = Annotated[bool, typer.Option("--parts", help="everything it was made from, down to what was said")]
ListAll = Annotated[bool, typer.Option("--list", help="print every name that can be asked for, by kind")]
Set = Annotated[
    list[str] | None,
    typer.Option("--set", metavar="FACT=VALUE", help="a given fact said otherwise: --set job.accuracy=fine; again for more",
                 show_default=False),
]  # fmt: skip


def why(
    job: Job, name: Name = "", parts: Parts = False, names: ListAll = False, as_json: Json = False
) -> None:  # fmt: skip
    """Say why something is so: the rule, what it met, what it was made from, the sources."""
    if names or not name:
        _list(job, names, as_json)
        return

    def explained(side: "Side") -> "Explanation":
        from tailtrue.explaining.why import why as explain

        return explain(side, name, parts)

    _explain(job, explained, as_json)


def _list(job: Path, asked: bool, as_json: bool) -> None:
    lines: list[str] = []

    def work() -> dict[str, Any]:
        from tailtrue.advise import advise
        from tailtrue.errors import Problem, UsageError
        from tailtrue.explaining.naming import listed

        if not asked:
            do = "write a name, such as skim.speed; --list prints all that can be asked for"
            raise UsageError((Problem("NAME", "", "is not given", do),))
        found = dict(listed(advise(job).case.knowledge))
        for kind, every in found.items():
            lines.extend((f"{kind}:", *(f"  {one}" for one in every)))
        return {"names": {kind: list(every) for kind, every in found.items()}}

    _tell(guarded(work, as_json), lines, as_json)


def why_not(job: Job, name: NameNot, as_json: Json = False) -> None:
    """Say why something is not so: each condition that failed, and what would have to be otherwise."""

    def explained(side: "Side") -> "Explanation":
        from tailtrue.explaining.why_not import why_not as explain

        return explain(side, name)

    _explain(job, explained, as_json)


def _explain(job: Path, explained: Any, as_json: bool) -> None:
    lines: list[str] = []

    def work() -> dict[str, Any]:
        from tailtrue.advise import advise

        advice = advise(job)
        side = side_of(advice)
        found = explained(side)
        lines.extend(page(found, side, advice.dials))
        return {"printed": not side.trouble, **found.as_data(advice.dials)}

    _tell(guarded(work, as_json), lines, as_json)


Every = Annotated[bool, typer.Option("--all", help="every row, and what no page prints")]


def compare(job: Job, instead: Set = None, every: Every = False, as_json: Json = False) -> None:
    """Lay a job beside the same job with facts said otherwise: choices, numbers, steps, cautions, time, refusals."""
    lines: list[str] = []

    def work() -> dict[str, Any]:
        from tailtrue.advise import advise, knowledge
        from tailtrue.explaining.compare import compare as lay_out
        from tailtrue.explaining.conditions_said import given_below
        from tailtrue.given.instead import read_instead

        known = knowledge()
        advice = advise(job)
        raw = read_instead(instead or (), known.given, known.catalogue, lambda name: given_below(advice.case, name))
        before, after = side_of(advice), side_of(advise(job, instead=raw))
        difference = lay_out(before, after)
        lines.extend(comparison(difference, before, after, folded=not every))
        return {
            "printed": {"before": not before.trouble, "after": not after.trouble},
            "same": difference.nothing,
            **difference.as_data(),
        }

    _tell(guarded(work, as_json), lines, as_json)


def _tell(_done: dict[str, Any], lines: Iterable[str], as_json: bool) -> None:
    if not as_json:
        for line in lines:
            typer.echo(line)


def side_of(advice: "Advice") -> "Side":
    """What is to be explained of a judged job; why nothing is printed, where nothing is."""
    from tailtrue.advise import procedure_of
    from tailtrue.errors import KnowledgeInvalid, TailtrueError
    from tailtrue.explaining.said import Side

    case = advice.case
    trouble: tuple[Problem, ...] = ()
    procedure = None
    try:
        procedure = procedure_of(advice)
    except KnowledgeInvalid:
        raise
    except TailtrueError as error:
        trouble = error.problems
    return Side(case, advice.given, advice.route, trouble, procedure)


def wrapped(text: str, indent: str = "", hang: str | None = None) -> list[str]:
    """A text in lines that any window has; later lines stand under its words."""
    return textwrap.wrap(
        text, WIDTH, initial_indent=indent, subsequent_indent=indent if hang is None else hang, break_on_hyphens=False
    )


def page(found: "Explanation", side: "Side", dials: "Dials") -> Iterator[str]:
    """An explanation for the terminal."""
    from tailtrue.render.words import say

    yield from wrapped(f"{found.label} ({found.name})")
    yield ""
    for text in (found.rule, found.met):
        if text:
            yield from wrapped(say(text, dials))
    for part in found.parts:
        yield ""
        yield part.title
        for line in part.lines:
            indent = "  " * (line.depth + 1)
            yield from wrapped(say(line.text, dials), f"{indent}- ", f"{indent}  ")
    if side.trouble:
        yield ""
        yield from wrapped(f"No procedure is printed for this job as it stands: {_reasons(side)}.")


def _reasons(side: "Side") -> str:
    return "; ".join(one.said or one.wrong for one in side.trouble)


def comparison(found: "Difference", before: "Side", after: "Side", *, folded: bool = False) -> Iterator[str]:
    """Two sides for the terminal: what is said otherwise, then what comes of it, the gravest first.

    `folded` counts what is many and what no page prints.
    """
    for name, side in (("As it is", before), ("As asked", after)):
        state = f"no procedure is printed: {_reasons(side)}" if side.trouble else "the procedure is printed"
        yield from wrapped(f"{name}: {state}.")
    if found.nothing:
        yield "Nothing differs."
        return
    yield from _rows("Said otherwise", found.said)
    yield from _both("Reasons to refuse", found.refusals)
    yield from _rows("Choices", found.choices)
    yield from _both("Cautions", found.cautions)
    yield from _both("Findings", found.findings)
    yield from _both("Steps", found.steps)
    yield from _rows("Time", found.times, _MOST if folded else None)
    for phase, changed in found.numbers:
        yield from _rows(phase, changed, _MOST if folded else None)
    yield from _rows("Behind the sheet", found.behind, 0 if folded else None)
    many = any(len(changed) > _MOST for changed in (found.times, *(changed for _, changed in found.numbers)))
    if folded and (found.behind or many):
        yield ""
        yield "Everything, row by row: the same with --all"


_LONG = 60
_MOST = 6  # rows of a phase before the rest is counted


def _rows(title: str, changed: "Iterable[Changed]", most: int | None = None) -> Iterator[str]:
    """The rows of a group; beyond `most` they are counted, where more than one would be."""
    every = list(changed)
    rows = every if most is None or len(every) <= most + 1 else every[:most]
    if most == 0 and every:
        yield ""
        numbers = "1 number that no page of this job prints differs" if len(every) == 1 else (
            f"{len(every)} numbers that no page of this job prints differ"
        )  # fmt: skip
        yield f"{title}: {numbers}"
        return
    if not rows:
        return
    yield ""
    yield title
    for one in rows:
        if len(one.before) + len(one.after) > 2 * _LONG:
            yield from wrapped(f"{one.label}: line by line otherwise; why JOB {one.name} shows it", "  - ", "    ")
        else:
            yield from wrapped(f"{one.label}: {one.before}  ->  {one.after}", "  - ", "    ")
    if len(rows) < len(every):
        yield f"  - and {len(every) - len(rows)} more"


def _both(title: str, found: "InOut") -> Iterator[str]:
    for word, rows in (("no longer", found.gone), ("new", found.come)):
        if rows:
            yield ""
            yield f"{title}, {word}"
            for name, text in rows:
                yield from wrapped(f"{text} ({name})", "  - ", "    ")
