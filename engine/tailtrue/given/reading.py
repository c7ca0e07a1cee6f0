"""Reading one file against the catalogue: every value it holds, and everything that is wrong with it."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from types import MappingProxyType
from typing import Any, Literal

from tailtrue.errors import Problem
from tailtrue.given.entries import FILES, Catalogue, GivenFact
from tailtrue.given.quoting import as_written, harmless, pair
from tailtrue.given.relations import as_a_line, entry_problems
from tailtrue.given.suggest import closest, one_of
from tailtrue.given.toml_file import TomlFile
from tailtrue.given.values import Unfit, of_list, single
from tailtrue.quantities import System

Origin = Literal["said", "default", "class"]
Path = tuple[str | int, ...]

# What stands in each entry of a list of tables: place and words of a field by number of the entry and key.
Inside = Mapping[tuple[int, str], tuple[str, str]]

_NONE = "none"


@dataclass(frozen=True)
class GivenValue:
    """A value that is known: what it is inside, where and how it was said, and whether the user said it at all."""

    value: Any
    where: str
    said: str
    origin: Origin
    inside: Inside = field(default_factory=dict)


@dataclass
class Reading:
    """One file as it is read. Keys that were met are kept, so that a wrong value is not called missing as well."""

    catalogue: Catalogue
    file: TomlFile
    problems: list[Problem] = field(default_factory=list)
    met: set[str] = field(default_factory=set)
    beside: frozenset[str] = frozenset()  # tables that another reader takes
    system: System = ""  # the one that the file is written in
    named: Mapping[str, str] = field(default_factory=dict)  # the files of this job by kind

    def table(self, kind: str, origin: Origin = "said") -> dict[str, GivenValue]:
        """Every fact that the table of this kind of file holds, by full name."""
        facts = self.catalogue.of_file(kind)
        table = self._own_table(kind, facts)
        values = {}
        for key, raw in table.items():
            if key not in facts:
                self._unknown(kind, key, raw, facts)
                continue
            self.met.add(facts[key].spec.name)
            found = self.value(facts[key], raw, (kind, key))
            if found is not None:
                inside = self._inside(raw, (kind, key)) if facts[key].spec.kind == "records" else {}
                values[facts[key].spec.name] = GivenValue(*found, origin=origin, inside=inside)
        return values

    def _inside(self, raw: Any, path: Path) -> Inside:
        return MappingProxyType(
            {
                (number, key): (self.file.place(*path, number, key), one if isinstance(one, str) else as_written(one))
                for number, entry in enumerate(raw) for key, one in entry.items()
            }
        )  # fmt: skip

    def value(self, fact: GivenFact, raw: Any, path: Path) -> tuple[Any, str, str] | None:
        """Value, place and words of one fact; None, with the problem noted, when it cannot be used."""
        kind = fact.spec.kind
        if kind in ("quantities", "texts"):
            read = self._list(fact, raw, path)
        elif kind == "records":
            read = self._records(fact, raw, path)
        else:
            try:
                read = single(fact, raw, self.catalogue.references, self.system)
            except Unfit as unfit:
                self._wrong(path, pair(fact.key, raw), unfit.wrong, unfit.do)
                return None
        return None if read is None else (read[0], self.file.place(*path), read[1])

    def _own_table(self, kind: str, facts: Mapping[str, GivenFact]) -> Mapping[str, Any]:
        table = self.file.tables.get(kind)
        other = next((one for one in FILES if one in self.file.tables), None)
        if table is None and other:
            # The wrong file was named; what is missing in it and what stands there too would only bury that.
            self.met.update(fact.spec.name for fact in facts.values())
            self._wrong((other,), f"[{other}]", f"is a {other} file, not a {kind} file", _the_right_one(kind))
            return {}
        for key, raw in self.file.tables.items():
            if key == kind or key in self.beside:
                continue
            if key in facts:
                heading = f"[[{kind}.{key}]]" if facts[key].spec.kind == "records" else f"[{kind}]"
                do = f"write {heading}" if facts[key].spec.kind == "records" else f"put it below the line {heading}"
                self._wrong((key,), harmless(key), f"stands outside [{kind}]", do)
                self.met.add(facts[key].spec.name)
            else:
                said = f"[{harmless(key)}]" if _is_tables(raw) else pair(key, raw)
                self._wrong((key,), said, "does not belong here", self._where_it_belongs(kind, key, raw))
        if isinstance(table, Mapping):
            return table
        # One problem for the heading; a list of every fact below it would only bury that.
        self.met.update(fact.spec.name for fact in facts.values())
        if table is None:
            wrong = "not given" if self.file.tables else "not given: the file is empty"
            self.problems.append(Problem(self.file.shown, f"[{kind}]", wrong, f"begin this file with the line [{kind}]"))
        else:
            self._wrong((kind,), pair(kind, table), "is not a table", f"begin this file with the line [{kind}]")
        return {}

    def _where_it_belongs(self, kind: str, key: str, raw: Any) -> str:
        """Where a table or key outside the table of the file has its place; else which tables the file may hold."""
        if key in FILES:
            return f"it belongs in the {self._file_of(key)}"
        if found := self._elsewhere(key, raw):
            return found
        also = "".join(f", its tables [[{name}]]" for name in sorted(self.beside))
        heads = self._headings(kind)
        close = closest(key, [head.partition(".")[2] for head in heads])
        near = f"a heading [[{kind}.{close}]] exists; " if close and _is_tables(raw) else ""
        return f"{near}this file holds the table [{kind}]{also}{_and_headings(heads)} and nothing else"

    def _file_of(self, kind: str) -> str:
        name = self.named.get(kind)
        return f"{kind} file, {name}" if name else f"{kind} file"

    def _headings(self, kind: str) -> list[str]:
        return [fact.spec.name for fact in self.catalogue.of_file(kind).values() if fact.spec.kind == "records"]

    def _elsewhere(self, key: str, raw: Any) -> str | None:
        """Where a key of this name and shape belongs, in another of the files."""
        for fact in self.catalogue.facts.values():
            if fact.key == key and (fact.spec.kind == "records") == _is_tables(raw):
                below = f"as [[{fact.spec.name}]]" if fact.spec.kind == "records" else f"below [{fact.file}]"
                return f"it belongs in the {self._file_of(fact.file)}, {below}"
        return None

    def _unknown(self, kind: str, key: str, raw: Any, facts: Mapping[str, GivenFact]) -> None:
        tables = _is_tables(raw)
        close = closest(key, [name for name, fact in facts.items() if (fact.spec.kind == "records") == tables])
        said = f"[[{kind}.{harmless(key)}]]" if tables else pair(key, raw)
        wrong = "unknown heading" if tables else f"unknown key '{harmless(key)}'"
        if elsewhere := self._elsewhere(key, raw):
            do = elsewhere
        elif close:
            # What was misspelt is not missing too.
            self.met.add(facts[close].spec.name)
            do = f"a heading [[{kind}.{close}]] exists" if tables else f"a key named '{close}' exists"
            if facts[close].spec.choices and not tables:
                do += f"; it is one of {', '.join(facts[close].spec.choices)}"
        elif tables:
            heads = self._headings(kind)
            do = f"headings here are {', '.join(f'[[{head}]]' for head in heads)}" if heads else f"take it out of [{kind}]"
        else:
            do = f"take it out, or look up the keys of [{kind}]"
        self._wrong((kind, key), said, wrong, do)

    def _list(self, fact: GivenFact, raw: Any, path: Path) -> tuple[tuple[Any, ...], str] | None:
        if not isinstance(raw, list):
            self._wrong(path, pair(fact.key, raw), "is not a list", f"write {self._as_a_list(fact, raw)}")
            return None
        values, words = [], []
        met: set[str] = set()
        before = len(self.problems)
        whole = self._mended(fact, raw)
        for number, one in enumerate(raw):
            try:
                value, said = of_list(fact, one, self.catalogue.references, self.system)
            except Unfit as unfit:
                # One slip made all along a list is told once.
                if unfit.wrong not in met:
                    do = f"write {whole}" if whole and unfit.instead else unfit.do
                    self._wrong((*path, number), f"{fact.key}: {as_written(one)}", unfit.wrong, do)
                met.add(unfit.wrong)
                continue
            values.append(value)
            words.append(said)
        if not met and not self._enough(fact, raw, path):
            return None
        return (tuple(values), ", ".join(words) or _NONE) if len(self.problems) == before else None

    def _instead(self, fact: GivenFact, raw: Any) -> str | None:
        """One entry of a list as it would be taken; None where that is not sure."""
        try:
            return of_list(fact, raw, self.catalogue.references, self.system)[1]
        except Unfit as unfit:
            return unfit.instead[0] if len(unfit.instead) == 1 else None

    def _as_a_list(self, fact: GivenFact, raw: Any) -> str:
        """The line of a list whose one entry was written bare, with a place for each that is still to be written."""
        several = raw.split(", ") if isinstance(raw, str) else []
        if len(several) > 1 and (whole := self._mended(fact, several)):
            return whole
        said = self._instead(fact, raw) if isinstance(raw, str) else None
        return as_a_line(fact, self.system, said or (raw if isinstance(raw, str) else ""))

    def _mended(self, fact: GivenFact, raw: list[Any]) -> str:
        """The whole line as it would be taken; empty where an entry leaves open what is meant."""
        said = [self._instead(fact, one) for one in raw]
        if None in said:
            return ""
        return f"{fact.key} = [{', '.join(as_written(one) for one in said)}]"

    def _enough(self, fact: GivenFact, raw: list[Any], path: Path) -> bool:
        if len(raw) >= fact.fewest:
            return True
        at_least = f"at least {fact.fewest} {'is' if fact.fewest == 1 else 'are'} needed"
        self._wrong(path, pair(fact.key, raw), f"holds {len(raw) or 'none'}, and {at_least}", fact.spec.how)
        return False

    def _records(self, fact: GivenFact, raw: Any, path: Path) -> tuple[tuple[Any, ...], str] | None:
        heading = f"[[{fact.spec.name}]]"
        if not isinstance(raw, list) or not all(isinstance(one, Mapping) for one in raw):
            self._wrong(path, pair(fact.key, raw), "is not a list of tables", f"write each below a line {heading}")
            return None
        before = len(self.problems)
        records = [self._record(fact, one, (*path, number)) for number, one in enumerate(raw)]
        for key in (key for key, one in fact.fields.items() if one.unique):
            self._unique(key, records, path)
        if not self._enough(fact, raw, path) or len(self.problems) > before:
            return None
        labels = [str(record.get("label", "")) for record in records]
        said = ", ".join(labels) if all(labels) else f"{len(records)} listed"
        return tuple(records), said or _NONE

    def _record(self, fact: GivenFact, raw: Mapping[str, Any], path: Path) -> Mapping[str, Any]:
        record: dict[str, Any] = {}
        met: set[str] = set()
        for key, one in raw.items():
            if key in fact.fields:
                met.add(key)
                if found := self.value(fact.fields[key], one, (*path, key)):
                    record[key] = found[0]
                continue
            close = closest(key, fact.fields)
            met.update({close} if close else ())
            do = f"a key named '{close}' exists" if close else f"keys here are {', '.join(fact.fields)}"
            if key in self.catalogue.of_file(fact.file):
                # What stands below a heading in double brackets belongs to that entry, however far below it stands.
                do = f"it belongs to [{fact.file}]: put it above the first line [[{fact.file}. ...]]"
            self._wrong((*path, key), pair(key, one), f"unknown key '{harmless(key)}'", do)
        self.problems += entry_problems(fact, raw, record, met, self.file.place, path, self.system)
        return MappingProxyType(record)

    def _unique(self, key: str, records: list[Mapping[str, Any]], path: Path) -> None:
        seen: set[Any] = set()
        for number, record in enumerate(records):
            word = record.get(key)
            if word is not None and word in seen:
                self._wrong((*path, number, key), pair(key, word), "names two entries", "give each its own")
            seen.add(word)

    def _wrong(self, path: Path, said: str, wrong: str, do: str) -> None:
        self.problems.append(Problem(self.file.place(*path), said, wrong, do))


def _is_tables(raw: Any) -> bool:
    """Whether this stands below a heading: a table, or a list of them."""
    return isinstance(raw, Mapping) or (isinstance(raw, list) and bool(raw) and all(isinstance(one, Mapping) for one in raw))


def _and_headings(names: list[str]) -> str:
    return f", the headings {one_of(f'[[{name}]]' for name in names)}" if names else ""


def _the_right_one(kind: str) -> str:
    return "give the job file that names it" if kind == "job" else f"name the {kind} file; it begins with the line [{kind}]"
