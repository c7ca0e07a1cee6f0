"""Faults planted in files of the rule base, many at once: one load, or one check, tells of them all."""

from collections.abc import Iterable
from pathlib import Path
from typing import TypeVar

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
