"""The shape of a file with the rules of a shop. Unknown keys are refused, as in every file of the knowledge."""

import datetime
from typing import Literal

from pydantic import Field

from tailtrue.parts import Signal
from tailtrue.store.models import CautionFile, ControlFile, ExampleFile, File, NoteFile, StopFile, When
from tailtrue.store.rule_files import SHOP_SOURCE


class EntryFile(File):
    """What every entry says: why, who, and when if it is known."""

    reason: str = Field(min_length=3)
    by: str = Field(min_length=1)
    date: datetime.date | None = None


class AddedCaution(CautionFile):
    """A caution of the shop; what the shipped ones must say of themselves may be left out."""

    row: str = "shop"
    controls: list[ControlFile] = Field(default_factory=list)
    protective_equipment: list[str] = Field(default_factory=list)
    signs: list[str] = Field(default_factory=list)
    scope: Literal["step", "job"] = "step"
    when: When = Field(default_factory=list)
    sources: list[str] = Field(default_factory=lambda: [SHOP_SOURCE])


class AddedStop(StopFile):
    """A stop of the shop."""

    sources: list[str] = Field(default_factory=lambda: [SHOP_SOURCE])
    example: list[ExampleFile] = Field(default_factory=list)


class AddedNote(NoteFile):
    """A note of the shop."""

    when: When = Field(default_factory=list)
    sources: list[str] = Field(default_factory=lambda: [SHOP_SOURCE])


class AddFile(EntryFile):
    """Something the shop says besides: one of the three."""

    caution: AddedCaution | None = None
    stop: AddedStop | None = None
    note: AddedNote | None = None


class TightenFile(EntryFile):
    """A named limit, drawn tighter."""

    limit: str
    value: str


class RewordFile(EntryFile):
    """Other words for a caution, a note or a step: one of the three."""

    caution: str = ""
    note: str = ""
    step: str = ""
    text: list[str] = Field(min_length=1)
    signal: Signal | None = None


class DisableFile(EntryFile):
    """A caution, a note, or one alternative of a decision, taken out."""

    caution: str = ""
    note: str = ""
    decision: str = ""
    alternative: str = ""


class ShopRulesFile(File):
    """The whole file."""

    add: list[AddFile] = Field(default_factory=list)
    tighten: list[TightenFile] = Field(default_factory=list)
    reword: list[RewordFile] = Field(default_factory=list)
    disable: list[DisableFile] = Field(default_factory=list)
