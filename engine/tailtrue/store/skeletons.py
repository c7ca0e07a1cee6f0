"""Skeletons of new entries: every key with what goes there, and never valid before it is filled in."""

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from types import MappingProxyType

from tailtrue.computed.registry import register
from tailtrue.errors import Problem, UsageError
from tailtrue.facts import nearest

FILL_IN = "FILL-IN"
_WORDS = re.compile(r"[a-z0-9]+(?:-[a-z0-9]+)*")
_FACT = re.compile(r"[a-z][a-z0-9_]*(?:\.[a-z][a-z0-9_]*)+")


@dataclass(frozen=True)
class Kind:
    """A kind of entry: its skeleton, where it lies in the knowledge, how its id is written, what remains to do.

    `beside` are the files in which no other entry may have its id.
    """

    skeleton: str
    folder: str
    named: re.Pattern[str]
    like: str
    then: str
    beside: tuple[str, ...]


_RULES = ("cautions/*.toml", "stops/*.toml", "notes.toml", "visit/remarks.toml")
_FACTS = ("decisions/*.toml", "facts.toml", "limits.toml", "visit/facts.toml", "setover/facts.toml", "tag/facts.toml")
_STOP = Kind("stop.toml", "stops", _WORDS, "bar-too-long", "It concerns what a route lists under `concerns`.", _RULES)
KINDS: Mapping[str, Kind] = MappingProxyType(
    {
        "rule": _STOP,
        "stop": _STOP,
        "caution": Kind(
            "caution.toml", "cautions", _WORDS, "hot-chips", "The activities it answers give its place.", _RULES
        ),
        "step": Kind("step.md", "steps", _WORDS, "face-bar", "Name it in a phase of a route.", ("steps/*.md",)),
        "decision": Kind(
            "decision.toml", "decisions", _FACT, "bore.gauge", "Its id is a fact: let a rule or text read it.", _FACTS
        ),
        "material": Kind(
            "material.csv", "materials", _WORDS, "brass-free-cutting",
            "Move the row into materials.csv, take the file away, and add its rows to cutting/speeds.csv.",
            ("materials/*.csv",),
        ),
    }
)  # fmt: skip


def skeleton(kind: str, name: str, folder: Path, templates: Path, out: Path | None = None) -> tuple[Path, str]:
    """File and text of a new entry; the file lies in its place below the knowledge in `folder`, or in `out`.

    The files are searched as they stand: another entry that is still to be filled in keeps nobody from beginning one.
    Raises UsageError for a kind that is not known, an id of the wrong form, an id that is taken, a file that is there.
    """
    known = KINDS.get(kind)
    if known is None:
        close = nearest(kind, KINDS)
        do = f"did you mean '{close}'?" if close else f"allowed are {', '.join(KINDS)}"
        raise UsageError([Problem("KIND", kind, "is no kind of entry", do)])
    if not known.named.fullmatch(name):
        raise UsageError([Problem("ID", name, f"is not an id of a {kind}", f"write it like '{known.like}'")])
    if where := _taken(known, name, folder):
        raise UsageError([Problem(where, name, "an entry has this id already; nothing was written", _OTHER)])
    ending = known.skeleton.rpartition(".")[2]
    path = out or folder / known.folder
    if out is None or out.is_dir():
        path /= f"{name.replace('.', '_')}.{ending}"
    if path.exists():
        raise UsageError([Problem(str(path), "", "this file is there already; nothing was written", _OTHER)])
    text = (templates / "skeletons" / known.skeleton).read_text(encoding="utf-8")
    return path, text.replace("@ID@", name)


_OTHER = "go on with what is there, take it away first, or choose another"


def _taken(known: Kind, name: str, folder: Path) -> str:
    """Where an id is in use: file and line, or what else has it; empty where it is free."""
    row = re.compile(rf"{re.escape(name)}," if known.skeleton.endswith(".csv") else rf'(?:id|name) = "{re.escape(name)}"$')
    for path in sorted(one for pattern in known.beside for one in folder.glob(pattern)):
        for number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), start=1):
            if row.match(line):
                return f"{path}:{number}"
    return "the computed facts" if known.named is _FACT and name in register() else ""


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
