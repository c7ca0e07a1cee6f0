"""Loading the catalogue of given facts and the classes of lathes; every fault in them is found here."""

from collections.abc import Collection, Iterable, Iterator, Mapping
from dataclasses import replace
from pathlib import Path
from types import MappingProxyType
from typing import Any

from tailtrue.errors import KnowledgeInvalid, Problem
from tailtrue.given.entries import DOES, FILES, Catalogue, GivenFact, MachineClass, ReadTogether, Spared
from tailtrue.given.knowledge_file import knowledge_toml, shaped
from tailtrue.given.locate import Lines
from tailtrue.given.making import CLASSES_FOLDER, FactMaker, range_of, ways_of
from tailtrue.given.reading import Reading
from tailtrue.given.references import References
from tailtrue.given.settable import load_settable
from tailtrue.given.shapes import CatalogueShape, ClassShape, FactShape
from tailtrue.given.suggest import closest, one_of
from tailtrue.given.toml_file import TomlFile
from tailtrue.quantities import read_quantity
from tailtrue.tables import source_keys

__all__ = ["Catalogue", "load_catalogue", "read_catalogue"]

CATALOGUE_FILE = "facts.toml"

_NOWHERE = Lines({})


def load_catalogue(folder: Path) -> Catalogue:
    """The catalogue of given facts of a knowledge folder.

    Raises KnowledgeInvalid with every fault in it.
    """
    problems: list[Problem] = []
    classes = _classes(folder, problems)
    catalogue = read_catalogue(folder, CATALOGUE_FILE, FILES, problems, classes)
    if not problems:
        problems += _class_values(catalogue)
    settable = load_settable(folder, problems)
    if problems:
        raise KnowledgeInvalid(problems)
    return replace(catalogue, settable=settable)


def read_catalogue(
    folder: Path, name: str, tables: Collection[str], problems: list[Problem],
    classes: Mapping[str, MachineClass] = MappingProxyType({}),
) -> Catalogue:  # fmt: skip
    """A catalogue file of a knowledge folder whose facts stand in these tables of a user's file.

    Faults of the facts are added to `problems`; KnowledgeInvalid when the file has not the shape of a catalogue.
    """
    toml = knowledge_toml(folder, name)
    shape = shaped(CatalogueShape, toml, problems, known=FactShape.model_fields)
    if shape is None:
        raise KnowledgeInvalid(problems)
    references = References(folder)
    facts: dict[str, GivenFact] = {}
    for number, row in enumerate(shape.fact):
        where = toml.place("fact", number)
        if row.name.split(".", 1)[0] not in tables or row.name.count(".") != 1:
            do = f"write {one_of(f'{table}.key' for table in tables)}"
            problems.append(Problem(where, row.name, "is no name of a given fact", do))
        if row.name in facts:
            problems.append(Problem(where, row.name, "a fact has this name already", "rename one"))
        facts[row.name] = FactMaker(where, references, tuple(classes), problems).fact(row)
    catalogue = Catalogue(
        facts,
        tuple(ways_of(one) for one in shape.one_way),
        tuple(range_of(one) for one in shape.range),
        tuple(tuple(names) for names in shape.together),
        tuple(shape.entry_for_entry),
        classes,
        references,
        read_together=tuple(
            ReadTogether(tuple(one.lists), one.read_with, float(read_quantity(one.apart, "mm")))
            for one in shape.read_together
        ),
        spared=tuple(Spared(tuple(one.facts), tuple(one.do), tuple(one.said)) for one in shape.spared),
    )
    problems += _ties(catalogue, toml.shown)
    if not problems:
        problems += _defaults(catalogue)
    return catalogue


def _classes(folder: Path, problems: list[Problem]) -> dict[str, MachineClass]:
    classes = {}
    for path in sorted((folder / CLASSES_FOLDER).glob("*.toml")):
        toml = knowledge_toml(folder, f"{CLASSES_FOLDER}/{path.name}")
        if shape := shaped(ClassShape, toml, problems, known=FactShape.model_fields):
            classes[path.stem] = MachineClass(path.stem, shape.label, shape.note, source_keys(shape.source), toml)
    return classes


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
    readings = ((*tie.lists, tie.read_with) for tie in catalogue.read_together)
    spared = ((*one.facts, *one.said) for one in catalogue.spared)
    for names in (*catalogue.together, *catalogue.entry_for_entry, *readings, *spared):
        yield from unknown(names, catalogue.facts)
    does = catalogue.facts[DOES].spec.choices if DOES in catalogue.facts else ()
    for one in catalogue.spared:
        yield from unknown(one.do, does)
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
