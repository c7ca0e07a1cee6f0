"""What the knowledge says of the fields of a record: labels, units, what is plausible; and a record file read by it."""

from collections.abc import Iterator, Mapping
from functools import cache
from pathlib import Path
from typing import Any

from pydantic import BaseModel

from tailtrue.errors import KnowledgeInvalid, Problem
from tailtrue.facts import FactSpec
from tailtrue.given.entries import Catalogue, GivenFact
from tailtrue.log.faults import Fault
from tailtrue.log.faults import Path as Steps
from tailtrue.log.record import ChuckTest, Judgement, Measured, Part, Record
from tailtrue.log.wording import plain
from tailtrue.parts import Dials, Figure
from tailtrue.places import knowledge_folder
from tailtrue.render.numbers import read, show
from tailtrue.store.keeping import kept

RECORD_FILE = "alignment/log_record.toml"
_TABLE = "record"

# How the name of a field of a record ends that holds a quantity of this unit.
_ENDS = {"mm": "_mm", "1/min": "_per_min", "mm/rev": "_mm_per_rev", "degC": "_degc", "s": "_s"}
# A group inside a record is written flat in a file; its keys may carry its name.
_GROUPS: Mapping[str, type[BaseModel]] = {"judgement": Judgement, "chuck_test": ChuckTest}
_OTHER_NAMES = {"date": ("date_time",), "bar_temperature": ("bar_degc",)}


@cache
def record_catalogue() -> Catalogue:
    """The catalogue of a record file that ships with the engine. Raises KnowledgeInvalid."""
    return kept("record", knowledge_folder(), load_record_catalogue)


def fields_of_a_record() -> dict[str, FactSpec]:
    """What each field of a record is, by its name."""
    return {fact.key: fact.spec for fact in record_catalogue().facts.values()}


def load_record_catalogue(folder: Path) -> Catalogue:
    """The catalogue of a record file of a knowledge folder. Raises KnowledgeInvalid with everything that is wrong."""
    from tailtrue.given.catalogue import read_catalogue

    problems: list[Problem] = []
    catalogue = read_catalogue(folder, RECORD_FILE, (_TABLE,), problems)
    problems += (
        Problem(fact.spec.where, fact.spec.name, "has no place in a record", "mend the name or its unit")
        for fact in catalogue.facts.values()
        if not _is_place(place_of(fact))
    )
    if problems:
        raise KnowledgeInvalid(problems)
    return catalogue


def _is_place(path: Steps) -> bool:
    model: type[BaseModel] = Record
    for group in path[:-1]:
        model = _GROUPS[str(group)]
    return path[-1] in model.model_fields


def place_of(fact: GivenFact) -> Steps:
    """Where in a record the value of a key of the file goes."""
    if fact.key in _OTHER_NAMES:
        return _OTHER_NAMES[fact.key]
    name = with_unit(fact)
    if name in Record.model_fields:
        return (name,)
    for group, model in _GROUPS.items():
        bare = name.removeprefix(f"{group}_")
        if bare in model.model_fields:
            return (group, bare)
    return (name,)


def with_unit(fact: GivenFact) -> str:
    """The name of a field that holds a quantity ends in its unit."""
    return fact.key + _ENDS.get(fact.spec.unit, "")


def labelled(record: Record, dials: Dials) -> Iterator[tuple[str, str]]:
    """Label and value of everything a record says, in the order of the record file, for people to read.

    Sizes stand in the system of the dials first; what was read stands as it was typed.
    """
    for fact in record_catalogue().facts.values():
        value: Any = record
        for step in place_of(fact):
            value = None if value is None else getattr(value, str(step))
        if fact.key == "readings":
            for one in record.readings:
                yield f"reading of collar {one.collar}", one.said + (f", rejected: {one.rejected}" if one.rejected else "")
        elif fact.fields:
            for number, one in enumerate(value, start=1):
                told = (f"{field.spec.label} {shown(_of(one, key), field, dials)}" for key, field in fact.fields.items())
                yield f"{fact.spec.label}, {number}", "; ".join(told)
        elif value is not None:
            yield fact.spec.label, shown(value, fact, dials)


def _of(part: Part, key: str) -> Any:
    return getattr(part, key) if key in type(part).model_fields else getattr(part, f"{key}_mm")


def shown(value: Any, fact: GivenFact, dials: Dials) -> str:
    """A value of a line of the log, for people to read."""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, Measured):
        return value.said
    if not isinstance(value, float):
        return str(value)
    spec = fact.spec
    figure = Figure(fact=spec.name, value=value, unit=spec.unit, rounding=spec.rounding, bound=spec.bound)
    # A record of a temperature is held against another one, so it is told to the tenth of a degree.
    return plain(read(figure, dials, extra_places=1).whole if spec.rounding == "temperature" else show(figure, dials))


def implausible(record: Record) -> Iterator[Fault]:
    """Every value of a record beyond what is plausible for it: a slipped decimal point, another unit."""
    content = record.model_dump()
    for fact in record_catalogue().facts.values():
        if fact.fields:
            for place, one in enumerate(content[fact.key]):
                for key, field in fact.fields.items():
                    name = key if key in one else key + _ENDS[field.spec.unit]
                    yield from _beyond(field, one[name], (fact.key, place, name))
            continue
        path = place_of(fact)
        value: Any = content
        for step in path:
            value = None if value is None else value[step]
        yield from _beyond(fact, value, path)


def _beyond(fact: GivenFact, value: Any, path: Steps) -> Iterator[Fault]:
    size = value["mm"] if isinstance(value, Mapping) else value
    least, most = fact.spec.least, fact.spec.most
    if least is None or most is None or size is None or least <= size <= most:
        return
    yield Fault(
        path, f"is not plausible here: {fact.least_said} to {fact.most_said} is", "look at the unit and the decimal point"
    )
