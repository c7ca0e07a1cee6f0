"""Faults planted in files of the rule base, many at once: one load, or one check, tells of them all."""

import shutil
from collections.abc import Callable, Iterable, Sequence
from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any, TypeVar

import pytest

from tailtrue.errors import KnowledgeInvalid, Problem
from tailtrue.places import knowledge_folder
from tailtrue.store.load import load_knowledge

Fault = TypeVar("Fault", bound=tuple[str, ...])


def together(faults: Iterable[Fault]) -> list[list[Fault]]:
    """Faults, each with its file first, in as few groups as have no file twice."""
    groups: list[list[Fault]] = []
    for fault in faults:
        free = [group for group in groups if fault[0] not in {one[0] for one in group}]
        if not free:
            groups.append([])
        (free or groups[-1:])[0].append(fault)
    return groups


def plant(folder: Path, file: str, old: str, new: str) -> str:
    """Write one thing for another in a file, and give the whole as it is then."""
    path = folder / file
    text = path.read_text(encoding="utf-8")
    assert old in text, (file, old)
    broken = text.replace(old, new)
    path.write_text(broken, encoding="utf-8")
    return broken


# File, what stands there, what is written instead, the place and the words that must be told.
Planted = tuple[str, str, str, str, str]
Tells = Callable[[Path], Sequence[Problem]]


def each(*groups: Sequence[Planted]) -> list[Any]:
    """Every fault as a case of its own, with those that are planted together with it."""
    return [pytest.param(fault, tuple(group), id=f"{fault[0]}: {fault[4]}") for group in groups for fault in group]


def is_told(tells: Tells, fault: Planted, group: tuple[Planted, ...]) -> None:
    """Assert that a fault of a group is told at its place, in its words."""
    places, problems = _told(tells, group)
    place = places[group.index(fault)]
    there = [": ".join(part for part in (one.said, one.wrong, one.do) if part) for one in problems if one.where == place]
    assert any(fault[4] in words for words in there), (place, fault[4], there)


@cache
def _told(tells: Tells, group: tuple[Planted, ...]) -> tuple[list[str], Sequence[Problem]]:
    """What is told of all faults of a group, planted in one copy of the rule base; before it, where each one stands."""
    with TemporaryDirectory() as room:
        folder = Path(room) / "knowledge"
        shutil.copytree(knowledge_folder(), folder)
        for file, old, new in dict.fromkeys(fault[:3] for fault in group):
            plant(folder, file, old, new)
        return [_where(folder, fault[3]) for fault in group], tells(folder)


def _where(folder: Path, place: str) -> str:
    """How a report names a place: `file`, `file:1`, or `file: words`, which is the line where these words begin."""
    file, _, words = place.partition(": ")
    if not words:
        return f"knowledge/{place}"
    text = (folder / file).read_text(encoding="utf-8")
    return f"knowledge/{file}:{text.count(chr(10), 0, text.index(words)) + 1}"


def refused_at_load(folder: Path) -> Sequence[Problem]:
    """What the loading of a rule base tells of it."""
    with pytest.raises(KnowledgeInvalid) as refused:
        load_knowledge(folder)
    return refused.value.problems
