"""Skeletons of new entries: every key with what goes there, and never valid before it is filled in."""

import re
from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from types import MappingProxyType

from tailtrue.errors import Problem, UsageError
from tailtrue.facts import nearest
from tailtrue.store.knowledge import Caution, Knowledge, Note, Remark, Stop

FILL_IN = "FILL-IN"
_WORDS = re.compile(r"[a-z0-9]+(?:-[a-z0-9]+)*")
_FACT = re.compile(r"[a-z][a-z0-9_]*(?:\.[a-z][a-z0-9_]*)+")


@dataclass(frozen=True)
class Kind:
    """A kind of entry: its skeleton, where it lies in the knowledge, how its id is written, what remains to do."""

    skeleton: str
    folder: str
    named: re.Pattern[str]
    like: str
    then: str


_STOP = Kind("stop.toml", "stops", _WORDS, "bar-too-long", "It concerns what a route lists under `concerns`.")
KINDS: Mapping[str, Kind] = MappingProxyType(
    {
        "rule": _STOP,
        "stop": _STOP,
        "caution": Kind("caution.toml", "cautions", _WORDS, "hot-chips", "The activities it answers give its place."),
        "step": Kind("step.md", "steps", _WORDS, "face-bar", "Name it in a phase of a route."),
        "decision": Kind("decision.toml", "decisions", _FACT, "bore.gauge", "Its id is a fact: let a rule or text read it."),
        "material": Kind(
            "material.csv", "materials", _WORDS, "brass-free-cutting",
            "Move the row into materials.csv, take the file away, and add its rows to cutting/speeds.csv.",
        ),
    }
)  # fmt: skip


def skeleton(kind: str, name: str, knowledge: Knowledge, templates: Path) -> tuple[str, str]:
    """Path below the knowledge, and text, of a new entry.

    Raises UsageError for a kind that is not known, an id of the wrong form, and an id that is taken.
    """
    known = KINDS.get(kind)
    if known is None:
        close = nearest(kind, KINDS)
        do = f"did you mean '{close}'?" if close else f"allowed are {', '.join(KINDS)}"
        raise UsageError([Problem("KIND", kind, "is no kind of entry", do)])
    if not known.named.fullmatch(name):
        raise UsageError([Problem("ID", name, f"is not an id of a {kind}", f"write it like '{known.like}'")])
    if name in _taken(known.folder, knowledge):
        raise UsageError([Problem("ID", name, f"a {kind} has this id already", "choose another")])
    text = (templates / "skeletons" / known.skeleton).read_text(encoding="utf-8")
    ending = known.skeleton.rpartition(".")[2]
    return f"{known.folder}/{name.replace('.', '_')}.{ending}", text.replace("@ID@", name)


def _taken(folder: str, knowledge: Knowledge) -> Collection[str]:
    rules: tuple[Caution | Stop | Note | Remark, ...] = (
        *knowledge.cautions, *knowledge.stops, *knowledge.notes, *knowledge.remarks,
    )  # fmt: skip
    return {
        "steps": knowledge.steps.keys(),
        "decisions": knowledge.catalogue.keys(),
        "materials": {row.text("material") for row in knowledge.tables["materials/materials"].rows},
    }.get(folder, {rule.file.id for rule in rules})


def unfilled(folder: Path) -> Iterator[Problem]:
    """Every place of the knowledge that a skeleton left to be filled in."""
    for path in sorted(one for one in folder.rglob("*") if one.suffix in (".toml", ".md", ".csv")):
        text = path.read_text(encoding="utf-8")
        if FILL_IN not in text:
            continue
        for number, line in enumerate(text.splitlines(), start=1):
            if FILL_IN in line and not line.startswith("#"):
                key = line.partition("=")[0].strip() if "=" in line else line.partition(":")[0]
                where = f"knowledge/{path.relative_to(folder).as_posix()}:{number}"
                yield Problem(where, key[:60], "is still to be filled in", f"put what belongs there in place of {FILL_IN}")
