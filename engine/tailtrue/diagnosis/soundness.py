"""The knowledge of causes and tests held against itself: every place filled, every name and source known."""

from collections.abc import Collection, Iterator, Mapping
from pathlib import Path

from tailtrue.diagnosis.entries import FIGURES, FILLED_WITH, OF_A_CAUSE
from tailtrue.diagnosis.knowing import FILES, Known, load_known
from tailtrue.errors import FactsWrong, KnowledgeInvalid, Problem
from tailtrue.given.knowledge_file import knowledge_toml, source_problems
from tailtrue.given.said_file import completeness_problems, place_problems, said_problems
from tailtrue.given.toml_file import TomlFile
from tailtrue.tables import Table
from tailtrue.wording import Wording


def check_diagnosis(folder: Path, tables: Mapping[str, Table], sources: Collection[str]) -> Known:
    """The knowledge of causes and tests of a folder. Raises KnowledgeInvalid with everything that is wrong with it."""
    known = load_known(folder)
    files = [knowledge_toml(folder, name) for name in FILES]
    causes, tests, keys, weighing, says = files
    classes = {row.text("class") for row in tables["diagnosis/limits"].rows}
    problems = [
        *(problem for file in files for problem in source_problems(file, sources)),
        *_causes(known, causes),
        *_tests(known, tests, keys),
        *completeness_problems(known.figures, FIGURES, weighing),
        *said_problems(known.says, FILLED_WITH, says),
        *_named(tables["diagnosis/signatures"], "component", known.causes, "cause"),
        *_named(tables["diagnosis/signatures"], "situation", known.tests, "test"),
        *_named(tables["alignment/accuracy"], "machine_class", classes, "limit of a class"),
    ]  # fmt: skip
    if problems:
        raise KnowledgeInvalid(problems)
    return known


def _causes(known: Known, file: TomlFile) -> Iterator[Problem]:
    for number, cause in enumerate(known.causes.values()):
        where = file.place("cause", number)
        for text in (cause.plus, cause.minus):
            yield from place_problems(text or Wording(()), OF_A_CAUSE, where, cause.id)
        try:
            sound = cause.usual_size > 0
        except (FactsWrong, ArithmeticError):
            sound = False
        if not sound:
            said = " over ".join(part for part in (cause.usual, cause.over) if part)
            yield Problem(
                where, f"{cause.id}: {said}", "is no usual size", "write a length, and for a slope what it is over"
            )


def _tests(known: Known, tests: TomlFile, keys: TomlFile) -> Iterator[Problem]:
    for number, test in enumerate(known.tests.values()):
        if test.with_ and test.with_ not in known.tests:
            yield Problem(tests.place("test", number, "with"), f"{test.id}: {test.with_}", *_no("test"))
    for fact in known.keys.facts.values():
        if fact.file not in known.tests:
            yield Problem(fact.spec.where, f"{fact.key}: {fact.file}", *_no("test"))
    for number, test in enumerate(known.tests.values()):
        if not known.keys.of_file(test.id):
            yield Problem(tests.place("test", number), test.id, f"no key of {keys.shown} belongs to it", "add its keys")


def _named(table: Table, column: str, known: Collection[str], what: str) -> Iterator[Problem]:
    for row in table.rows:
        for name in row.listed(column):
            if name not in known:
                yield Problem(f"knowledge/{table.name}.csv:{row.line}", name, *_no(what))


def _no(what: str) -> tuple[str, str]:
    return f"no {what} has this id", "mend the name"
