"""What the knowledge says of the fields of a record: labels, units, what is plausible; and a record file read by it."""

from collections.abc import Iterator, Mapping
from functools import cache
from typing import Any

from pydantic import BaseModel, ValidationError

from tailtrue.errors import KnowledgeInvalid, Problem
from tailtrue.facts import FactSpec
from tailtrue.given.entries import Catalogue, GivenFact
from tailtrue.given.references import References
from tailtrue.given.shapes import CatalogueShape, FieldShape
from tailtrue.given.toml_file import read_toml
from tailtrue.log.faults import Fault, Path
from tailtrue.log.record import ChuckTest, Judgement, Measured, Part, Record
from tailtrue.places import knowledge_folder
from tailtrue.quantities import read_quantity

_FILE = "alignment/log_record.toml"
_TABLE = "record"

# How the name of a field of a record ends that holds a quantity of this unit.
_ENDS = {"mm": "_mm", "1/min": "_per_min", "mm/rev": "_mm_per_rev", "degC": "_degc", "s": "_s"}
# A group inside a record is written flat in a file; its keys may carry its name.
_GROUPS: Mapping[str, type[BaseModel]] = {"judgement": Judgement, "chuck_test": ChuckTest}
_OTHER_NAMES = {"date": ("date_time",), "bar_temperature": ("bar_degc",)}


@cache
def record_catalogue() -> Catalogue:
    """The catalogue of a record file. Raises KnowledgeInvalid."""
    shown = f"knowledge/{_FILE}"
    file = read_toml(knowledge_folder() / _FILE, shown)
    if isinstance(file, Problem):
        raise KnowledgeInvalid((file,))
    try:
        shape = CatalogueShape.model_validate(file.tables)
    except ValidationError as faults:
        raise KnowledgeInvalid(
            Problem(file.place(*fault["loc"]), ".".join(map(str, fault["loc"])), str(fault["msg"]).lower(), "mend it")
            for fault in faults.errors()
        ) from faults
    facts = {}
    for number, row in enumerate(shape.fact):
        where = file.place("fact", number)
        fields = {one.name: _fact(one, where, {}) for one in row.field}
        facts[row.name] = _fact(row, where, fields)
    return Catalogue(facts, (), (), tuple(map(tuple, shape.together)), {}, References(knowledge_folder()))


def _fact(row: FieldShape, where: str, fields: Mapping[str, GivenFact]) -> GivenFact:
    specs = {name: one.spec for name, one in fields.items()}
    spec = FactSpec(
        row.name, row.type, row.label, "given", row.unit, choices=tuple(row.choices), least=_size(row, row.least),
        most=_size(row, row.most), fields=specs, where=where, how=row.how, sources=(row.source,),
    )  # fmt: skip
    return GivenFact(spec, row.ask, row.typical, least_said=row.least, most_said=row.most, fewest=row.fewest, fields=fields)


def _size(row: FieldShape, written: str) -> float | None:
    if not written:
        return None
    return float(written) if row.type == "count" else read_quantity(written, row.unit)


def place_of(fact: GivenFact) -> Path:
    """Where in a record the value of a key of the file goes."""
    if fact.key in _OTHER_NAMES:
        return _OTHER_NAMES[fact.key]
    name = fact.key + _ENDS.get(fact.spec.unit, "")
    if name in Record.model_fields:
        return (name,)
    for group, model in _GROUPS.items():
        bare = name.removeprefix(f"{group}_")
        if bare in model.model_fields:
            return (group, bare)
    return (name,)


def labelled(record: Record) -> Iterator[tuple[str, str]]:
    """Label and value of everything a record says, in the order of the record file, for people to read."""
    for fact in record_catalogue().facts.values():
        value: Any = record
        for step in place_of(fact):
            value = None if value is None else getattr(value, str(step))
        if fact.key == "readings":
            for one in record.readings:
                yield f"reading of collar {one.collar}", one.said + (f", rejected: {one.rejected}" if one.rejected else "")
        elif fact.fields:
            for number, one in enumerate(value, start=1):
                told = (f"{field.spec.label} {_shown(_of(one, key), field.spec.unit)}" for key, field in fact.fields.items())
                yield f"{fact.spec.label}, {number}", "; ".join(told)
        elif value is not None:
            yield fact.spec.label, _shown(value, fact.spec.unit)


def _of(part: Part, key: str) -> Any:
    return getattr(part, key) if key in type(part).model_fields else getattr(part, f"{key}_mm")


def _shown(value: Any, unit: str) -> str:
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, Measured):
        return value.said
    return f"{value:g} {unit}" if isinstance(value, float) else str(value)


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


def _beyond(fact: GivenFact, value: Any, path: Path) -> Iterator[Fault]:
    size = value["mm"] if isinstance(value, Mapping) else value
    least, most = fact.spec.least, fact.spec.most
    if least is None or most is None or size is None or least <= size <= most:
        return
    yield Fault(
        path, f"is not plausible here: {fact.least_said} to {fact.most_said} is", "look at the unit and the decimal point"
    )
