"""The list of computed numbers that may be set by hand, as the knowledge has it."""

from collections.abc import Iterator
from pathlib import Path
from typing import Literal

from pydantic import Field

from tailtrue.errors import FactsWrong, Problem
from tailtrue.facts import Settable
from tailtrue.given.knowledge_file import knowledge_toml, shaped
from tailtrue.given.shapes import Shape
from tailtrue.given.toml_file import TomlFile
from tailtrue.quantities import read_quantity

SETTABLE_FILE = "overridable.toml"


class SettableShape(Shape):
    """Computed numbers of one kind that may be set by hand, alike bounded."""

    facts: list[str] = Field(min_length=1)
    unit: str
    least: str
    most: str
    safe: Literal["lower", "higher", ""] = ""
    at_least: tuple[str, ...] = ()
    at_most: tuple[str, ...] = ()
    one_of: str = ""
    whole: str = ""
    why: str
    sources: list[str] = Field(min_length=1)


class SettableFileShape(Shape):
    """The whole file."""

    overridable: list[SettableShape] = Field(min_length=1)


def load_settable(folder: Path, problems: list[Problem]) -> dict[str, Settable]:
    """Every number that may be set by hand, by name; faults are added to `problems`."""
    toml = knowledge_toml(folder, SETTABLE_FILE)
    shape = shaped(SettableFileShape, toml, problems, known=SettableShape.model_fields)
    found: dict[str, Settable] = {}
    for number, row in enumerate(shape.overridable if shape else ()):
        for one in _of(row, toml, number, problems):
            if one.fact in found:
                problems.append(Problem(one.where, one.fact, "is listed twice", "take one of the two out"))
            found[one.fact] = one
    return found


def _of(row: SettableShape, toml: TomlFile, number: int, problems: list[Problem]) -> Iterator[Settable]:
    where = toml.place("overridable", number)
    try:
        least, most = (read_quantity(said, row.unit) for said in (row.least, row.most))
    except (FactsWrong, ValueError) as wrong:
        problems.append(Problem(where, f"{row.least}, {row.most}", str(wrong), f"give quantities in {row.unit}"))
        return
    if not row.safe and not (row.at_least and row.at_most):
        problems.append(Problem(where, row.facts[0], "is bounded on no side", "give the safe side, or bounds on both"))
    for place, fact in enumerate(row.facts):
        yield Settable(
            fact, row.unit, least, most, row.safe, row.at_least, row.at_most, row.one_of, row.whole, row.why,
            tuple(row.sources), toml.place("overridable", number, "facts", place),
        )  # fmt: skip
