"""Facts said on the command line in place of those in the files: ``lathe.dials=inch``, read as a file would be."""

import tomllib
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field
from datetime import date
from typing import Any

from tailtrue.errors import Problem, UsageError
from tailtrue.facts import FactSpec
from tailtrue.given.entries import Catalogue, GivenFact
from tailtrue.given.quoting import harmless
from tailtrue.given.suggest import closest
from tailtrue.given.toml_file import TomlFile

OPTION = "--set"


@dataclass(frozen=True)
class ChangedFile(TomlFile):
    """A file with values put in place of its own; of those the place is the option."""

    changed: frozenset[tuple[str, str]] = field(default=frozenset())

    def place(self, *path: str | int) -> str:
        """The option for what was changed, else file and line."""
        if len(path) > 1 and (path[0], path[1]) in self.changed:
            return f"{OPTION} {path[0]}.{path[1]}"
        return super().place(*path)


def changed(file: TomlFile, kind: str, instead: Mapping[str, Any]) -> TomlFile:
    """The file with the values of `instead` that belong in it; None takes a key out."""
    values = {name.split(".", 1)[1]: raw for name, raw in instead.items() if name.startswith(f"{kind}.")}
    table = file.tables.get(kind, {})
    if not values or not isinstance(table, Mapping):
        return file
    said = {key: raw for key, raw in {**table, **values}.items() if raw is not None}
    tables = {**file.tables, kind: said}
    return ChangedFile(file.shown, tables, file.lines, frozenset((kind, key) for key in values))


def read_instead(
    said: Iterable[str],
    catalogue: Catalogue,
    every: Mapping[str, FactSpec],
    follows_from: Callable[[str], Iterable[str]],
) -> dict[str, Any]:
    """Raw values by name of fact, as the files would hold them.

    `every` is the catalogue of all facts; of one that is not given, `follows_from` names the given facts to set in its
    place. What the values are worth is judged when the files are read. Raises UsageError with every fault of form.
    """
    problems: list[Problem] = []
    raw: dict[str, Any] = {}
    for one in said:
        name, equals, text = (part.strip() for part in one.partition("="))
        name = _key_of_a_file(name, catalogue)
        fact = catalogue.facts.get(name)
        if not equals or not text:
            problems.append(
                Problem(f"{OPTION} {harmless(one)}", "", "says no value", "write fact=value, such as lathe.dials=inch")
            )
        elif fact is None:
            problems.append(_not_given(name, catalogue, every, follows_from))
        elif name in raw:
            problems.append(Problem(f"{OPTION} {name}", "", "is set twice", "keep one of the two"))
        else:
            raw[name] = _raw(fact, text)
    if problems:
        raise UsageError(problems)
    return raw


def _key_of_a_file(name: str, catalogue: Catalogue) -> str:
    """The fact that a bare key of a file says, where only one file has such a key; else the name as it came."""
    meant = [one for one in catalogue.facts if one.rpartition(".")[2] == name]
    return meant[0] if len(meant) == 1 else name


def _not_given(
    name: str, catalogue: Catalogue, every: Mapping[str, FactSpec], follows_from: Callable[[str], Iterable[str]]
) -> Problem:
    where = f"{OPTION} {harmless(name)}"
    if name in every:
        comes = {"limit": "is a limit of the knowledge", "decided": "is decided by rule", "computed": "is computed"}
        wrong = comes.get(every[name].comes, "is said at the lathe")
        instead = ", ".join(follows_from(name))
        do = f"set what it follows from: {instead}" if instead else "nothing that is said in the files changes it"
        return Problem(where, "", f"{wrong}, not given", do)
    close = closest(name, catalogue.facts)
    do = f"a fact named '{close}' exists" if close else "docs/facts.md lists every fact that is given"
    return Problem(where, "", "no given fact has this name", do)


def _raw(fact: GivenFact, text: str) -> Any:
    """The value as the file would hold it; what is not fit for it stays text, which the reader will refuse."""
    kind = fact.spec.kind
    if kind in ("quantities", "texts", "records"):
        written = _toml(text)
        if isinstance(written, list):
            return written
        return text if kind == "records" else [part.strip() for part in text.split(",")]
    if kind in ("count", "yes-no"):
        written = _toml(text)
        return text if written is None else written
    unquoted = _toml(text)
    return unquoted if isinstance(unquoted, str) else text


def _toml(text: str) -> Any:
    try:
        value = tomllib.loads(f"value = {text}")["value"]
    except ValueError:
        return None
    return value if not isinstance(value, date) else value.isoformat()
