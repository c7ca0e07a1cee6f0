"""The shape of the catalogue file: what may be said of a fact that a user gives. Unknown keys are refused."""

from typing import Literal

from pydantic import BaseModel, ConfigDict, Field

Ask = Literal["must", "may", "default"]
SingleKind = Literal["quantity", "choice", "yes-no", "text", "count", "date"]
GivenKind = Literal["quantity", "choice", "yes-no", "text", "count", "date", "quantities", "texts", "records"]


class Shape(BaseModel):
    """A part of the catalogue file."""

    model_config = ConfigDict(extra="forbid", frozen=True, defer_build=True)


class FieldShape(Shape):
    """What can be said of a fact and of a field of a record alike.

    `words` are words allowed in place of a quantity. `reads_as` is the unit that each of a list of texts must have,
    where the text itself is kept. `refers` names a column of a table, ``table:column``, or a list in the user's own
    files, ``stock.bars:label``, and `role` the role a row must have there; a row
    with the role `also` is read as well, so that the rules can say what speaks against it.
    """

    name: str
    type: GivenKind
    ask: Ask
    label: str
    how: str
    typical: str = ""
    typical_inch: str = ""
    source: str
    unit: str = ""
    rounding: str = "ratio"
    bound: Literal["nearest", "most", "least"] = "nearest"
    choices: list[str] = []
    least: str = ""
    most: str = ""
    default: str | bool | None = None
    if_missing: str = ""
    words: list[str] = []
    words_if: str = ""
    owned: bool = False
    lever: Literal["any", "more", "less", "none"] = "any"
    read_from: str = ""
    reads_as: str = ""
    refers: str = ""
    role: str = ""
    also: str = ""
    fewest: int = Field(default=1, ge=0)
    unique: bool = False


class RecordFieldShape(FieldShape):
    """A field of a record."""

    type: SingleKind | Literal["texts"]


class WaysShape(Shape):
    """Ways to say one thing: exactly one of them must be taken, and taken whole; where `several`, one at least."""

    label: str
    ways: list[list[str]] = Field(min_length=2)
    several: bool = False


class PairShape(Shape):
    """Two quantities that go together, the smaller first."""

    low: str
    high: str


class ReadTogetherShape(Shape):
    """Lists of readings of one piece: what they are read with, and how far one may stand from others that agree."""

    lists: list[str] = Field(min_length=1)
    read_with: str
    apart: str
    source: str = Field(min_length=1)


class SparedShape(Shape):
    """What a job need not say that does one of these things, where it says all of `said`."""

    facts: list[str] = Field(min_length=1)
    do: list[str] = Field(min_length=1)
    said: list[str] = []


class FactShape(FieldShape):
    """A given fact. `changes` says that it may be otherwise tomorrow, with the same lathe, crib and stock; `stands_for`
    names the fact of the work at the lathe that it says beforehand."""

    never_from_class: bool = False
    most_words: int = Field(default=0, description="of a text that stands in sentences; nought for any number")
    changes: Literal["", "daily"] = ""
    stands_for: str = ""
    field: list[RecordFieldShape] = []
    one_way: list[WaysShape] = []
    range: list[PairShape] = []


class CatalogueShape(Shape):
    """The whole file."""

    fact: list[FactShape] = Field(min_length=1)
    one_way: list[WaysShape] = []
    range: list[PairShape] = []
    together: list[list[str]] = []
    entry_for_entry: list[tuple[str, str]] = []
    read_together: list[ReadTogetherShape] = []
    spared: list[SparedShape] = []


class ClassShape(Shape):
    """A class of lathes: typical values for what its owner did not say."""

    label: str
    source: str
    note: str
    lathe: dict[str, str | list[str] | bool | int]
