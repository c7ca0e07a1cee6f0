"""A file of tests: one table for each test that was made; every fault in it at once, with file and line."""

import re
from collections.abc import Mapping
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

from tailtrue.diagnosis.knowing import Known
from tailtrue.errors import FactsWrong, Problem, TailtrueError
from tailtrue.given.quoting import as_written, harmless, pair
from tailtrue.given.reading import Reading
from tailtrue.given.relations import file_problems
from tailtrue.given.suggest import closest, some_of
from tailtrue.given.toml_file import TomlFile, read_toml
from tailtrue.quantities import read_quantity

_LEVEL = re.compile(r"(?P<rise>[^/]*?[^/\s])\s*/\s*(?P<run>m|ft)")
_RUN_MM = {"m": 1000.0, "ft": 304.8}
_LEVEL_NEEDED = 'write mm/m or thou/ft, such as "0.10 mm/m" or "-1.2 thou/ft"'
_PAIRED = {("chucked_bar", "diameters"): "stations", ("level", "readings"): "stations", ("clamping", "clamped"): "released"}

Values = Mapping[str, Any]


class TestsWrong(TailtrueError):
    """A file of tests cannot be used as it stands."""

    __test__ = False  # no test of the test runner

    exit_code = FactsWrong.exit_code
    heading = "no diagnosis yet: the tests need mending"


@dataclass(frozen=True)
class Made:
    """The tests that were made: the values of each by key, in mm and mm/m; its finest written step; where it stands."""

    tests: Mapping[str, Values]
    steps_mm: Mapping[str, float]
    places: Mapping[str, str]

    def __contains__(self, kind: object) -> bool:
        return kind in self.tests

    def __getitem__(self, kind: str) -> Values:
        return self.tests[kind]


def read_tests(path: Path, knowledge: Known) -> Made:
    """The tests of a file. Raises TestsWrong with everything that is wrong."""
    file = read_toml(path, path.name)
    if isinstance(file, Problem):
        raise TestsWrong((file,))
    problems: list[Problem] = []
    tests: dict[str, Values] = {}
    for kind, table in file.tables.items():
        if kind not in knowledge.tests:
            problems.append(_no_test(file, kind, table, knowledge))
        elif not isinstance(table, Mapping):
            do = f"write its keys below one line [{kind}]"
            problems.append(Problem(file.place(kind), pair(kind, table), "is not one table", do))
        else:
            tests[kind] = _values(kind, replace(file, tables={kind: table}), knowledge, problems)
    problems += _together(tests, file, knowledge)
    if not file.tables:
        do = f"write a table for each test that was made, such as [{next(iter(knowledge.tests))}]"
        problems.append(Problem(file.shown, "", "holds no test", do))
    if problems:
        raise TestsWrong(sorted(problems, key=_line))
    steps = {kind: _finest_step(file.tables[kind]) for kind in tests}
    return Made(tests, steps, {kind: file.place(kind) for kind in tests})


def _no_test(file: TomlFile, kind: str, table: Any, knowledge: Known) -> Problem:
    said = f"[{harmless(kind)}]" if isinstance(table, Mapping | list) else pair(kind, table)
    close = closest(kind, knowledge.tests)
    near = f"'{close}' comes nearest; " if close else ""
    return Problem(file.place(kind), said, "is no test that is known here", f"{near}tests are {some_of(knowledge.tests)}")


def _values(kind: str, file: TomlFile, knowledge: Known, problems: list[Problem]) -> Values:
    reading = Reading(knowledge.keys, file)
    given = reading.table(kind)
    values = {name.split(".", 1)[1]: one.value for name, one in given.items()}
    if kind == "level":
        steepest = knowledge.figures["steepest_level"]
        values |= {
            key: _levels(key, values[key], reading, steepest) for key in ("readings", "give_or_take") if key in values
        }
    if values.get("instrument") == "caliper":
        said, do = pair("instrument", "caliper"), "read the collars with a micrometer"
        reading.problems.append(
            Problem(file.place(kind, "instrument"), said, "is too coarse to tell these causes apart", do)
        )
    for (table, key), other in _PAIRED.items():
        if kind == table and key in values and other in values and len(values[key]) != len(values[other]):
            wrong = f"holds {len(values[key])}, and {other} holds {len(values[other])}"
            reading.problems.append(
                Problem(file.place(kind, key), pair(key, file.tables[kind][key]), wrong, "write one for each")
            )
    if kind in ("chucked_bar", "level") and len(set(values.get("stations", (0, 1)))) < 2:
        said = pair("stations", file.tables[kind]["stations"])
        reading.problems.append(
            Problem(file.place(kind, "stations"), said, "are all one place", "read at two places or more, well apart")
        )
    problems += reading.problems
    # A fact that could not be read was met all the same; what is missing stands with its own table.
    problems += (
        replace(one, where=file.place(kind), said=f"{one.said} of [{kind}]")
        for one in file_problems(knowledge.keys, kind, reading.met, given, file.shown)
    )
    return values


def _levels(key: str, written: str | tuple[str, ...], reading: Reading, steepest: float) -> tuple[float, ...]:
    found = []
    for number, text in enumerate((written,) if isinstance(written, str) else written):
        where, said = reading.file.place("level", key, number), as_written(text)
        match = _LEVEL.fullmatch(text.strip())
        if match is None:
            reading.problems.append(Problem(where, said, "is no reading of a level", _LEVEL_NEEDED))
            continue
        try:
            slope = read_quantity(match["rise"], "mm") / _RUN_MM[match["run"]] * 1000
        except FactsWrong as wrong:
            reading.problems.append(Problem(where, said, wrong.problems[0].wrong, _LEVEL_NEEDED))
            continue
        if abs(slope) > steepest:
            do = "look at the unit and the decimal point"
            reading.problems.append(Problem(where, said, f"is not plausible here: {steepest:g} mm/m at most is", do))
            continue
        found.append(slope)
    return tuple(found)


def _together(tests: Mapping[str, Values], file: TomlFile, knowledge: Known) -> list[Problem]:
    problems = []
    for kind, values in tests.items():
        needed = knowledge.tests[kind].with_
        if needed and needed not in file.tables:
            do = f"add [{needed}], the test that it is compared with"
            problems.append(Problem(file.place(kind), f"[{kind}]", f"stands without [{needed}]", do))
        first = tests.get("between_centres", {})
        if needed and kind in tests and "middle" in values and "middle" not in first and first:
            do = "add it there, or take it out here"
            problems.append(Problem(file.place(kind, "middle"), "middle", "is not given in [between_centres]", do))
    first = tests.get("between_centres", {})
    if "middle" in first and "middle_station" not in first:
        do = 'write middle_station = "150 mm", from the headstock centre'
        problems.append(Problem(file.place("between_centres", "middle"), "middle", "stands without middle_station", do))
    return problems


def _finest_step(table: Mapping[str, Any]) -> float:
    """The last place that was written, in mm: the finest of all that is written with a decimal point."""
    finest = []
    for key in ("head", "tail", "middle", "diameters"):
        written = table.get(key, ())
        for text in written if isinstance(written, list) else ():
            match = re.fullmatch(r"\s*[0-9]*\.([0-9]+)\s*(\S+)\s*", str(text))
            if match:
                finest.append(read_quantity(f"1 {match[2]}", "mm") / 10 ** len(match[1]))
    return min(finest, default=0.0)


def _line(problem: Problem) -> int:
    number = problem.where.rpartition(":")[2]
    return int(number) if number.isdigit() else 0
