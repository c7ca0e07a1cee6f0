"""What was typed of a record, in a file or with the command: read by the catalogue, whole or not yet whole."""

import re
from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass, replace
from pathlib import Path as FilePath
from typing import Any

from tailtrue.errors import Problem
from tailtrue.given.entries import GivenFact
from tailtrue.given.locate import Lines
from tailtrue.given.quoting import as_written, harmless
from tailtrue.given.reading import GivenValue, Reading
from tailtrue.given.toml_file import TomlFile, read_toml
from tailtrue.log.faults import Path, RecordWrong
from tailtrue.log.fields import place_of, record_catalogue
from tailtrue.log.lists import tidied
from tailtrue.log.record import MICROMETER
from tailtrue.quantities import System

TABLE = "record"
# What a record says only where a micrometer read the collars, by key.
OF_A_MICROMETER = ("instrument_zero_error", "collar_diameter_after")
_READING = re.compile(r"(?P<collar>[HMT])\s+(?P<said>.+?)(?:\s*,?\s*rejected:\s*(?P<rejected>.+))?", re.DOTALL)


@dataclass(frozen=True)
class Place:
    """Where a value was typed."""

    file: TomlFile
    keys: tuple[str | int, ...]

    def problem(self, further: Path, wrong: str, do: str) -> Problem:
        """A fault of this value, or of a part of it."""
        keys = (*self.keys, *further)
        value: Any = self.file.tables
        for step in keys:
            try:
                value = value[step]
            except (KeyError, IndexError, TypeError):
                break
        said = (
            str(keys[1]) if value is self.file.tables or isinstance(value, Mapping) else f"{keys[1]} = {as_written(value)}"
        )
        return Problem(self.file.place(*keys), harmless(said), wrong, do)


@dataclass(frozen=True)
class Typed:
    """Values of a record by their keys, and what is wrong with others; `met` are the names that were met at all.

    `in_order` when the readings stand in the order in which they were taken.
    """

    shown: str
    problems: tuple[Problem, ...]
    met: frozenset[str]
    values: Mapping[str, GivenValue]
    content: Mapping[str, Any]
    places: Mapping[str, Place]
    in_order: bool

    def says(self, key: str) -> bool:
        """Whether this was typed."""
        return key in self.content

    @property
    def read_by(self) -> str:
        """What read the collars; a micrometer where nothing is said."""
        return str(self.content.get("read_by", MICROMETER))

    def sound(self) -> "Typed":
        """This, when nothing in it is wrong. Raises RecordWrong with everything that is."""
        if self.problems:
            raise RecordWrong(self.problems)
        return self

    def lacking(self, known: Collection[str] = (), read_by: str = "") -> list[GivenFact]:
        """What a record of a test read with this instrument must say, and neither this nor `known` does."""
        facts = facts_by_key().values()
        # What read the collars may be said and not be understood; then nobody knows what a micrometer would have to say.
        unclear = f"{TABLE}.read_by" in self.met and not self.says("read_by")
        spared = {*known, *(OF_A_MICROMETER if unclear or (read_by or self.read_by) != MICROMETER else ())}
        return [one for one in facts if one.ask == "must" and one.spec.name not in self.met and one.key not in spared]

    def with_more(self, other: "Typed") -> "Typed":
        """Both together; a thing said in both is a fault."""
        wrong = f"is said in {self.shown} as well"
        twice = (other.places[key].problem((), wrong, "keep one of the two") for key in other.content if key in self.content)
        return Typed(
            self.shown, (*self.problems, *other.problems, *twice), self.met | other.met,
            {**self.values, **other.values}, {**self.content, **other.content}, {**self.places, **other.places},
            self.in_order and other.in_order,
        )  # fmt: skip

    def instead(self, content: Mapping[str, Any], problems: Iterable[Problem]) -> "Typed":
        """This with other values of some keys, and with more that is wrong."""
        return replace(self, content={**self.content, **content}, problems=(*self.problems, *problems))


@dataclass(frozen=True)
class _Options(TomlFile):
    """What was typed with the command: each value is known by its option, not by a line."""

    def place(self, *path: str | int) -> str:
        key = path[1] if len(path) > 1 else path[0]
        return OPTION_OF.get(str(key), f"--say {key}")


OPTION_OF = {"operator": "--initials", "state": "--state", "date": "--date", "moves": "--moved"}


def facts_by_key() -> Mapping[str, GivenFact]:
    """The catalogue of a record by key."""
    return record_catalogue().of_file(TABLE)


def read_typed(path: FilePath, system: System) -> Typed:
    """What a file says of a record; `system` is that of the lathe, for what is said where a value is refused.

    Raises RecordWrong when it cannot be read at all."""
    file = read_toml(path, path.name)
    if isinstance(file, Problem):
        raise RecordWrong((file,))
    return _typed(file, system)


def typed_options(said: Mapping[str, Any], system: System) -> Typed:
    """What options of a command say of a record, by key."""
    return _typed(_Options("the command", {TABLE: dict(said)}, Lines({})), system)


def _typed(file: TomlFile, system: System) -> Typed:
    file, in_order, faults = tidied(file, TABLE)
    reading = Reading(record_catalogue(), file, system=system)
    values = reading.table(TABLE)
    content: dict[str, Any] = {}
    for name, given in values.items():
        fact = reading.catalogue.facts[name]
        value: Any = given.value
        if fact.key == "readings":
            value = _readings(given.value, reading)
        elif fact.fields:
            value = _groups(fact.key, given.value, file)
        content[fact.key] = value
    problems = sorted([*faults, *reading.problems], key=_line)
    places = {key: Place(file, (TABLE, key)) for key in content}
    # A reading that cannot be used is told as such, and not as missing too.
    met = reading.met | ({f"{TABLE}.readings"} if faults else set())
    return Typed(file.shown, tuple(problems), frozenset(met), values, content, places, in_order)


def _readings(texts: Iterable[str], reading: Reading) -> list[dict[str, Any]]:
    found = []
    for number, text in enumerate(texts):
        match = _READING.fullmatch(text.strip())
        if match is None:
            do = 'write the collar and the reading, such as "H 69.842 mm" or "T 69.9 mm rejected: burr"'
            reading.problems.append(
                Problem(reading.file.place(TABLE, "readings", number), as_written(text), "is no reading of a collar", do)
            )
            continue
        found.append({key: value for key, value in match.groupdict().items() if value is not None})
    return found


def _groups(key: str, records: tuple[Mapping[str, float], ...], file: TomlFile) -> list[dict[str, Any]]:
    """Entries of a list; what an indicator showed is kept as it was typed."""
    typed = file.tables[TABLE][key]
    if key == "moves":
        return [{name: {"said": typed[n][name], "mm": size} for name, size in one.items()} for n, one in enumerate(records)]
    return [{f"{name}_mm": size for name, size in one.items()} for one in records]


def path_of(key: str) -> Path:
    """Where in a record the value of a key goes."""
    return place_of(facts_by_key()[key])


def _line(problem: Problem) -> int:
    number = problem.where.rpartition(":")[2]
    return int(number) if number.isdigit() else 0
