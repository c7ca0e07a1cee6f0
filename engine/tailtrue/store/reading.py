"""Reading knowledge files: TOML and Markdown with a TOML head, each fault with its file and line."""

import re
import tomllib
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any, TypeVar

from pydantic import ValidationError

from tailtrue.conditions import Condition
from tailtrue.errors import Problem
from tailtrue.facts import nearest
from tailtrue.store.models import File, When
from tailtrue.wording import Wording

Model = TypeVar("Model", bound=File)

# How what is written becomes a condition or a text; then come the place of the file and the entry that says it.
ReadWhen = Callable[[When, str, str], Condition]
ReadText = Callable[[str, str, str], Wording]

_TOML_PLACE = re.compile(r"\(at line (\d+), column \d+\)")
_ID = re.compile(r'\s*id\s*=\s*"([^"]*)"')
_HEAD = re.compile(r"\A\+\+\+\n(.*?)\n\+\+\+\n(.*)\Z", re.DOTALL)


class Reader:
    """Reads the files of one knowledge folder and gathers what is wrong in them."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.problems: list[Problem] = []

    def place(self, path: Path, line: int | None = None) -> str:
        """A place as a person finds it: file below the knowledge folder, and line."""
        name = f"knowledge/{path.relative_to(self.folder).as_posix()}"
        return f"{name}:{line}" if line else name

    def wrong(self, where: str, said: str, wrong: str, do: str) -> None:
        """Note one fault."""
        self.problems.append(Problem(where, said, wrong, do))

    def toml(self, path: Path, text: str | None = None) -> dict[str, Any]:
        """The tables of a TOML file, or nothing when it cannot be read."""
        written = path.read_text(encoding="utf-8") if text is None else text
        try:
            return tomllib.loads(written)
        except tomllib.TOMLDecodeError as broken:
            match = _TOML_PLACE.search(str(broken))
            line = int(match[1]) if match else None
            self.wrong(self.place(path, line), "", f"is not TOML: {broken}", "mend the line")
            return {}

    def entries(self, folder: str, key: str, model: type[Model]) -> Iterator[tuple[Model, str]]:
        """Every ``[[key]]`` of the TOML files of a folder, or of one file."""
        below = self.folder / folder
        paths = sorted(below.glob("*.toml")) if below.is_dir() else [below]
        for path in paths:
            text = path.read_text(encoding="utf-8")
            lines = _lines_of_ids(text)
            for name, rows in self.toml(path, text).items():
                if name != key or not isinstance(rows, list):
                    self.wrong(self.place(path), name, "is not known here", f"this file holds [[{key}]] tables only")
                    continue
                for row in rows:
                    where = self.place(path, lines.get(str(row.get("id", ""))))
                    if (made := self.model(model, row, where)) is not None:
                        yield made, where

    def head_and_body(self, path: Path) -> tuple[dict[str, Any], str]:
        """The TOML head between ``+++`` lines and the text below it."""
        match = _HEAD.match(path.read_text(encoding="utf-8"))
        if match is None:
            self.wrong(self.place(path, 1), "", "has no TOML head between two lines of +++", "begin the file with +++")
            return {}, ""
        return self.toml(path, match[1]), match[2]

    def model(self, model: type[Model], row: dict[str, Any], where: str) -> Model | None:
        """One entry held against its shape."""
        try:
            return model.model_validate(row)
        except ValidationError as faults:
            for fault in faults.errors():
                name = ".".join(str(part) for part in fault["loc"])
                said = f"{row.get('id', '')}: {name}"
                if fault["type"] == "extra_forbidden":
                    close = nearest(str(fault["loc"][-1]), model.model_fields)
                    do = f"a field named '{close}' exists" if close else "take it out"
                    self.wrong(where, said, f"unknown field '{fault['loc'][-1]}'", do)
                elif fault["type"] == "missing":
                    self.wrong(where, said, f"field '{fault['loc'][-1]}' is missing", "add it")
                else:
                    self.wrong(where, said, str(fault["msg"]).lower(), f"what was read: {fault['input']!r}")
            return None


def head_of(text: str) -> str:
    """The TOML head of a text, without the lines of +++; nothing where there is none."""
    match = _HEAD.match(text)
    return match[1] if match else ""


def _lines_of_ids(text: str) -> dict[str, int]:
    found = ((_ID.match(line), number) for number, line in enumerate(text.splitlines(), start=1))
    return {match[1]: number for match, number in found if match}
