"""Sheets of rework that leave a bore tight for a bond, with one thing wrong."""

import re
from collections.abc import Callable
from dataclasses import replace
from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

from shops import shop
from tailtrue.parts import Figure, Text
from tailtrue.procedure import Step

from .broken import breaks
from .changed import Job, sheet_of

_FOUND = """
found = "bore-under-size"
found_at = "end-a"
found_front = ["24.985 mm", "24.985 mm", "24.985 mm"]
found_rear = ["24.983 mm", "24.984 mm", "24.983 mm"]
found_in_chuck = true
found_collars_on = false
"""


@cache
def _job() -> Job:
    with TemporaryDirectory() as folder:
        shop(Path(folder), "fernhill")
        path = Path(folder) / "fernhill" / "rework.toml"
        text = re.sub(r"^found.*\n", "", path.read_text(encoding="utf-8"), flags=re.MULTILINE)
        path.write_text(text + _FOUND, encoding="utf-8")
        return sheet_of(path)


def _changed(change: Callable[[Step], Step]) -> Job:
    tree, given = _job()
    phases = tuple(
        phase.model_copy(
            update={"steps": tuple(change(one) if one.id == "leave-bore-tight" else one for one in phase.steps)}
        )
        for phase in tree.phases
    )
    return tree.model_copy(update={"phases": phases}), given


def _figures(text: Text, fact: str, value: float) -> Text:
    return tuple(
        one.model_copy(update={"value": value}) if isinstance(one, Figure) and one.fact == fact else one for one in text
    )


def _told(fact: str, value: float) -> Job:
    def change(step: Step) -> Step:
        lines = tuple(
            line.model_copy(update={name: _figures(getattr(line, name), fact, value) for name in ("value", "reason")})
            for line in step.settings
        )
        return step.model_copy(update={"settings": lines})

    return _changed(change)


def _without(**parts: Any) -> Job:
    return _changed(lambda step: step.model_copy(update=parts))


@breaks("V302", "step 3.1", also="V462")
def a_gap_told_wider_than_it_is() -> Job:
    return _told("rework.gap_least", 0.03)


@breaks("V302", "step 3.1", also="V442")
def a_bond_with_hardly_a_film() -> Job:
    return _told("rework.tight_low", 24.966)


@breaks("V302", "step 3.1")
def a_bond_that_a_catch_breaks() -> Job:
    return _told("rework.tight_margin", 0.9)


@breaks("V302", "step 3.1")
def a_bar_that_nobody_slides_through() -> Job:
    return _without(hold=None)


@breaks("V302", "step 3.1")
def a_bar_that_nobody_measured() -> Job:
    tree, given = _job()
    return tree, replace(given, measured={})


@breaks("V302", "step 3.1")
def a_bore_that_reads_too_tight_for_a_bond() -> Job:
    tree, given = _job()
    assert given.rework is not None
    return tree, replace(given, rework=replace(given.rework, readings=(24.967, 24.985)))
