"""A file with a certificate or a height for the log: which of them it is, what it says, and the same for people to read."""

from collections.abc import Iterator, Mapping
from functools import cache
from pathlib import Path
from typing import Any

from pydantic import ValidationError

from tailtrue.errors import KnowledgeInvalid, Problem
from tailtrue.given.catalogue import read_catalogue
from tailtrue.given.entries import Catalogue, GivenFact
from tailtrue.given.reading import Reading
from tailtrue.given.relations import file_problems
from tailtrue.given.toml_file import TomlFile, read_toml
from tailtrue.log.faults import RecordWrong, faults_of
from tailtrue.log.fields import shown, with_unit
from tailtrue.log.kinds import KINDS, Certificate, Height
from tailtrue.log.typed import Place
from tailtrue.parts import Dials
from tailtrue.places import knowledge_folder
from tailtrue.store.keeping import kept

OTHERS_FILE = "alignment/log_others.toml"
_OTHER_NAMES = {"date": "date_time"}


@cache
def others_catalogue() -> Catalogue:
    """The catalogue of these files that ships with the engine. Raises KnowledgeInvalid."""
    return kept("others", knowledge_folder(), load_others_catalogue)


def load_others_catalogue(folder: Path) -> Catalogue:
    """The catalogue of these files of a knowledge folder. Raises KnowledgeInvalid with everything that is wrong."""
    problems: list[Problem] = []
    catalogue = read_catalogue(folder, OTHERS_FILE, tuple(KINDS), problems)
    problems += (
        Problem(fact.spec.where, fact.spec.name, "has no place in a line of this kind", "mend the name or its unit")
        for kind in KINDS
        for fact in catalogue.of_file(kind).values()
        if field_of(kind, fact) not in KINDS[kind].model_fields
    )
    if problems:
        raise KnowledgeInvalid(problems)
    return catalogue


def field_of(kind: str, fact: GivenFact) -> str:
    """The field of a line that the value of a key of the file goes to."""
    name = _OTHER_NAMES.get(fact.key, fact.key)
    return name if name in KINDS[kind].model_fields else with_unit(fact)


def kind_of_file(path: Path) -> str | None:
    """The kind of line that a file holds; None for a test, and for what cannot be read, which its reader tells."""
    file = read_toml(path, path.name)
    return None if isinstance(file, Problem) else next((kind for kind in KINDS if kind in file.tables), None)


def read_other(path: Path, kind: str, date: str | None, now: str) -> tuple[Certificate | Height, bool]:
    """The line in a file, and whether its date was said, in the file or with the command; else it is `now`.

    Raises RecordWrong with everything that is wrong.
    """
    file = read_toml(path, path.name)
    if isinstance(file, Problem):
        raise RecordWrong((file,))
    reading = Reading(others_catalogue(), file)
    values = reading.table(kind)
    problems = [*reading.problems, *file_problems(reading.catalogue, kind, reading.met, values, file.shown)]
    content: dict[str, Any] = {}
    keys: dict[str, str] = {}
    for name, given in values.items():
        fact = reading.catalogue.facts[name]
        field = field_of(kind, fact)
        keys[field] = fact.key
        content[field] = _typed(file, kind, fact.key, given.value) if field == fact.key else given.value
    said = "date_time" in content
    if said and date is not None:
        problems.append(
            Place(file, (kind, "date")).problem((), "is given in the file and with --date", "keep one of the two")
        )
    if problems:
        raise RecordWrong(problems)
    content.setdefault("date_time", date or now)
    try:
        return KINDS[kind].model_validate(content), said or date is not None
    except ValidationError as wrong:
        raise RecordWrong(_placed(wrong, file, kind, keys)) from wrong


def labelled(record: Certificate | Height, dials: Dials) -> Iterator[tuple[str, str]]:
    """Label and value of everything a line says, in the order of its file; what was read stands as it was typed."""
    for fact in others_catalogue().of_file(record.kind).values():
        value = getattr(record, field_of(record.kind, fact))
        if isinstance(value, tuple):
            yield fact.spec.label, ", ".join(one.said for one in value)
        elif value is not None:
            yield fact.spec.label, shown(value, fact, dials)


def _typed(file: TomlFile, kind: str, key: str, value: Any) -> Any:
    """A size that is kept as it was typed, or a list of such; anything else as it was read."""
    raw = file.tables[kind][key]
    if isinstance(value, float):
        return {"said": raw, "mm": value}
    if isinstance(value, tuple):
        return [{"said": said, "mm": size} for said, size in zip(raw, value, strict=True)]
    return value


def _placed(wrong: ValidationError, file: TomlFile, kind: str, keys: Mapping[str, str]) -> Iterator[Problem]:
    for fault in faults_of(wrong):
        first = str(fault.path[0]) if fault.path else ""
        if key := keys.get(first):
            yield Place(file, (kind, key)).problem((), fault.wrong, fault.do)
        else:
            yield Problem(file.shown, first, fault.wrong, fault.do)
