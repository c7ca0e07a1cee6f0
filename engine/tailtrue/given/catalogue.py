"""Loading the catalogue of given facts and the classes of lathes; every fault in them is found here."""

from collections.abc import Iterable, Iterator
from dataclasses import replace
from pathlib import Path
from typing import Any, TypeVar

from pydantic import BaseModel, ValidationError

from tailtrue.errors import FactsWrong, KnowledgeInvalid, Problem
from tailtrue.facts import FactSpec
from tailtrue.given.entries import FILES, Catalogue, GivenFact, MachineClass, Range, Refers, Ways
from tailtrue.given.locate import Lines
from tailtrue.given.reading import Reading
from tailtrue.given.references import References
from tailtrue.given.shapes import CatalogueShape, ClassShape, FactShape, FieldShape, PairShape, WaysShape
from tailtrue.given.suggest import closest
from tailtrue.given.toml_file import TomlFile, read_toml
from tailtrue.quantities import FAST, read_quantity

__all__ = ["Catalogue", "load_catalogue"]

CATALOGUE_FILE = "facts.toml"
CLASSES_FOLDER = "machines"
_CLASSES = Refers(CLASSES_FOLDER, "id")

_NOWHERE = Lines({})

Shaped = TypeVar("Shaped", bound=BaseModel)


def load_catalogue(folder: Path) -> Catalogue:
    """The catalogue of given facts of a knowledge folder.

    Raises KnowledgeInvalid with every fault in it.
    """
    problems: list[Problem] = []
    references = References(folder)
    classes = _classes(folder, problems)
    toml = _toml(folder / CATALOGUE_FILE, folder)
    shape = _shaped(CatalogueShape, toml, problems)
    if shape is None:
        raise KnowledgeInvalid(problems)
    facts: dict[str, GivenFact] = {}
    for number, row in enumerate(shape.fact):
        where = toml.place("fact", number)
        made = _Maker(where, references, tuple(classes), problems).fact(row)
        if row.name in facts:
            problems.append(Problem(where, row.name, "a fact has this name already", "rename one"))
        facts[row.name] = made
    catalogue = Catalogue(
        facts,
        tuple(_ways(one) for one in shape.one_way),
        tuple(_range(one) for one in shape.range),
        tuple(tuple(names) for names in shape.together),
        classes,
        references,
    )
    problems += _ties(catalogue, toml.shown)
    if not problems:
        problems += [*_defaults(catalogue), *_class_values(catalogue)]
    if problems:
        raise KnowledgeInvalid(problems)
    return catalogue


def _toml(path: Path, folder: Path) -> TomlFile:
    found = read_toml(path, f"knowledge/{path.relative_to(folder).as_posix()}")
    if isinstance(found, Problem):
        raise KnowledgeInvalid([found])
    return found


def _shaped(model: type[Shaped], toml: TomlFile, problems: list[Problem]) -> Shaped | None:
    try:
        return model.model_validate(toml.tables)
    except ValidationError as faults:
        for fault in faults.errors():
            path = tuple(part for part in fault["loc"] if part != "str")
            said = ".".join(str(part) for part in path)
            if fault["type"] == "extra_forbidden":
                close = closest(str(path[-1]), FactShape.model_fields)
                do = f"a key named '{close}' exists" if close else "take it out"
                problems.append(Problem(toml.place(*path), said, f"unknown key '{path[-1]}'", do))
            elif fault["type"] == "missing":
                problems.append(Problem(toml.place(*path), said, "not given", "add it"))
            else:
                problems.append(Problem(toml.place(*path), said, "does not fit", str(fault["msg"]).lower()))
        return None


def _classes(folder: Path, problems: list[Problem]) -> dict[str, MachineClass]:
    classes = {}
    for path in sorted((folder / CLASSES_FOLDER).glob("*.toml")):
        toml = _toml(path, folder)
        if shape := _shaped(ClassShape, toml, problems):
            classes[path.stem] = MachineClass(path.stem, shape.label, shape.note, _sources(shape.source), toml)
    return classes


def _sources(written: str) -> tuple[str, ...]:
    return tuple(part.split(":", 1)[0].strip() for part in written.split(";") if part.strip())


def _ways(shape: WaysShape) -> Ways:
    return Ways(shape.label, tuple(tuple(way) for way in shape.ways))


def _range(shape: PairShape) -> Range:
    return Range(shape.low, shape.high)


class _Maker:
    """Makes one fact from its entry, noting what is wrong with it."""

    def __init__(self, where: str, references: References, classes: tuple[str, ...], problems: list[Problem]) -> None:
        self.where, self.references, self.classes, self.problems = where, references, classes, problems

    def fact(self, row: FactShape) -> GivenFact:
        """A fact with the fields it has when it is a list of records."""
        if row.name.split(".", 1)[0] not in FILES or row.name.count(".") != 1:
            self._wrong(row.name, "is no name of a given fact", "write file.key, such as lathe.name")
        if bool(row.field) != (row.type == "records"):
            self._wrong(row.name, "records have fields, and nothing else has", "mend the type or the fields")
        fields = {one.name: self._one(one) for one in row.field}
        made = self._one(row)
        specs = {name: one.spec for name, one in fields.items()}
        return replace(
            made,
            spec=replace(made.spec, fields=specs),
            never_from_class=row.never_from_class,
            fields=fields,
            one_way=tuple(_ways(one) for one in row.one_way),
            ranges=tuple(_range(one) for one in row.range),
        )

    def _one(self, row: FieldShape) -> GivenFact:
        sources = _sources(row.source)
        refers = self._refers(row)
        choices = self.classes if refers == _CLASSES else tuple(row.choices)
        unit = row.unit or row.reads_as
        if row.type in ("quantity", "quantities") and row.unit not in FAST:
            self._wrong(row.name, f"'{row.unit}' is no canonical unit", f"use one of {', '.join(FAST)}")
        if row.type == "choice" and not choices:
            self._wrong(row.name, "a choice without choices", "add choices")
        if not sources:
            self._wrong(row.name, "names no source", "name one, or say memory")
        if (row.ask == "default") != (row.default is not None):
            self._wrong(row.name, "ask and default do not agree", "give a default, or do not ask for one")
        spec = FactSpec(
            row.name, row.type, row.label, "given", row.unit, row.rounding, row.bound, choices,
            self._size(row, row.least, unit), self._size(row, row.most, unit),
            where=self.where, how=row.how, sources=sources,
        )  # fmt: skip
        if spec.least is not None and spec.most is not None and spec.least >= spec.most:
            self._wrong(row.name, "least is not below most", "mend the range")
        return GivenFact(
            spec, row.ask, row.typical, row.if_missing, row.default, row.least, row.most, tuple(row.words), row.reads_as,
            None if refers == _CLASSES else refers, row.fewest, row.unique,
        )  # fmt: skip

    def _size(self, row: FieldShape, written: str, unit: str) -> float | None:
        if not written:
            return None
        try:
            return float(written) if row.type == "count" else read_quantity(written, unit)
        except (FactsWrong, ValueError, KeyError) as wrong:
            self._wrong(f"{row.name}: {written}", str(wrong), "mend the range")
            return None

    def _refers(self, row: FieldShape) -> Refers | None:
        if not row.refers:
            return None
        table, _, column = row.refers.partition(":")
        refers = Refers(table, column, row.role)
        if refers != _CLASSES and not refers.in_own_files and not self.references.exists(table, column):
            self._wrong(f"{row.name}: {row.refers}", "there is no such table, or it has no such column", "mend refers")
        return refers

    def _wrong(self, said: str, wrong: str, do: str) -> None:
        self.problems.append(Problem(self.where, said, wrong, do))


def _ties(catalogue: Catalogue, shown: str) -> Iterator[Problem]:
    """Names in ways, ranges, pairs and references that do not exist."""

    def unknown(names: Iterable[str], known: Iterable[str]) -> Iterator[Problem]:
        for name in names:
            if name not in known:
                yield Problem(shown, name, "no given fact is named so", "mend the name")

    for ways in catalogue.one_way:
        yield from unknown(ways.names(), catalogue.facts)
    for pair in catalogue.ranges:
        yield from unknown((pair.low, pair.high), catalogue.facts)
    for names in catalogue.together:
        yield from unknown(names, catalogue.facts)
    for fact in catalogue.facts.values():
        for ways in fact.one_way:
            yield from unknown(ways.names(), fact.fields)
        for pair in fact.ranges:
            yield from unknown((pair.low, pair.high), fact.fields)
        if fact.refers and fact.refers.in_own_files:
            yield from unknown((fact.refers.table,), catalogue.facts)


def _defaults(catalogue: Catalogue) -> Iterator[Problem]:
    """Defaults and typical values that the reader itself would refuse."""
    for fact in catalogue.facts.values():
        for one in (fact, *fact.fields.values()):
            shown: list[Any] = [one.default] if one.default is not None else []
            if one.typical and one.spec.kind in ("quantity", "choice", "date"):
                shown.append(one.typical)
            for raw in shown:
                trial = Reading(catalogue, TomlFile(fact.spec.where, {}, _NOWHERE))
                trial.value(one, raw, ())
                yield from (replace(problem, where=fact.spec.where) for problem in trial.problems)


def _class_values(catalogue: Catalogue) -> Iterator[Problem]:
    keys = catalogue.of_file("lathe")
    for machine in catalogue.classes.values():
        reading = Reading(catalogue, machine.file)
        for key, raw in machine.file.tables["lathe"].items():
            place = machine.file.place("lathe", key)
            if key not in keys:
                yield Problem(place, key, "unknown key", f"a key named '{closest(key, keys)}' exists")
            elif keys[key].never_from_class:
                yield Problem(place, key, "must never come from a class", "take it out; the user must say it")
            else:
                reading.value(keys[key], raw, ("lathe", key))
        yield from reading.problems
