"""Files of lines that are said: a text by its name, with places that the engine fills."""

from collections.abc import Collection, Iterator, Mapping
from typing import Annotated

from pydantic import BeforeValidator, ConfigDict, Field

from tailtrue.errors import Problem
from tailtrue.given.knowledge_file import shaped
from tailtrue.given.shapes import Shape
from tailtrue.given.toml_file import TomlFile
from tailtrue.wording import Wording, read_wording

Words = Annotated[Wording, BeforeValidator(read_wording)]


class SaidShape(Shape):
    """One line."""

    model_config = ConfigDict(arbitrary_types_allowed=True)

    text: Words
    sources: list[str] = Field(min_length=1)


def said_in(file: TomlFile, problems: list[Problem]) -> dict[str, Wording]:
    """The texts of a file by name."""
    found = ((name, shaped(SaidShape, file, problems, (name,))) for name in file.tables)
    return {name: one.text for name, one in found if one is not None}


def said_problems(
    texts: Mapping[str, Wording], filled_with: Mapping[str, Collection[str]], file: TomlFile
) -> Iterator[Problem]:
    """Lines that are wanted and not there, that nobody says, or with a place that nothing fills."""
    yield from completeness_problems(texts, filled_with, file)
    for name, text in texts.items():
        yield from place_problems(text, filled_with.get(name, ()), file.place(name), name)


def completeness_problems(found: Collection[str], used: Collection[str], file: TomlFile) -> Iterator[Problem]:
    """Entries that are wanted and not there, and those that nobody reads."""
    for name in used:
        if name not in found:
            yield Problem(file.shown, name, "is read and not there", "add it")
    for name in found:
        if name not in used:
            yield Problem(file.place(name), name, "is read by nothing", "take it out, or mend the name")


def place_problems(text: Wording, filled: Collection[str], where: str, said: str) -> Iterator[Problem]:
    """Places of a text that nothing fills."""
    for place in text.places():
        if place.name not in filled or place.wants != "value":
            do = f"use {', '.join(filled)}" if filled else "write it without a place"
            yield Problem(where, said, f"nothing fills '{place.name}' here", do)
