"""Reading one file against the catalogue: every value it holds, and everything that is wrong with it."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from types import MappingProxyType
from typing import Any, Literal

from tailtrue.errors import Problem
from tailtrue.given.entries import Catalogue, GivenFact
from tailtrue.given.quoting import as_written, harmless, pair
from tailtrue.given.relations import entry_problems
from tailtrue.given.suggest import closest
from tailtrue.given.toml_file import TomlFile
from tailtrue.given.values import Unfit, of_list, single

Origin = Literal["said", "default", "class"]
Path = tuple[str | int, ...]

_NONE = "none"


@dataclass(frozen=True)
class GivenValue:
    """A value that is known: what it is inside, where and how it was said, and whether the user said it at all."""

    value: Any
    where: str
    said: str
    origin: Origin


@dataclass
class Reading:
    """One file as it is read. Keys that were met are kept, so that a wrong value is not called missing as well."""

    catalogue: Catalogue
    file: TomlFile
    problems: list[Problem] = field(default_factory=list)
    met: set[str] = field(default_factory=set)
    beside: frozenset[str] = frozenset()  # tables that another reader takes

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
                values[facts[key].spec.name] = GivenValue(*found, origin=origin)
        return values

    def value(self, fact: GivenFact, raw: Any, path: Path) -> tuple[Any, str, str] | None:
        """Value, place and words of one fact; None, with the problem noted, when it cannot be used."""
        kind = fact.spec.kind
        if kind in ("quantities", "texts"):
            read = self._list(fact, raw, path)
        elif kind == "records":
            read = self._records(fact, raw, path)
        else:
            try:
                read = single(fact, raw, self.catalogue.references)
            except Unfit as unfit:
                self._wrong(path, pair(fact.key, raw), unfit.wrong, unfit.do)
                return None
        return None if read is None else (read[0], self.file.place(*path), read[1])

    def _own_table(self, kind: str, facts: Mapping[str, GivenFact]) -> Mapping[str, Any]:
        also = "".join(f", its tables [[{name}]]" for name in sorted(self.beside))
        for key, raw in self.file.tables.items():
            if key == kind or key in self.beside:
                continue
            if key in facts:
                heading = f"[[{kind}.{key}]]" if facts[key].spec.kind == "records" else f"[{kind}]"
                do = f"write {heading}" if facts[key].spec.kind == "records" else f"put it below the line {heading}"
                self._wrong((key,), harmless(key), f"stands outside [{kind}]", do)
                self.met.add(facts[key].spec.name)
            else:
                said = f"[{harmless(key)}]" if isinstance(raw, Mapping) else pair(key, raw)
                self._wrong(
                    (key,), said, "does not belong here", f"this file holds the table [{kind}]{also} and nothing else"
                )
        table = self.file.tables.get(kind)
        if isinstance(table, Mapping):
            return table
        # One problem for the heading; a list of every fact below it would only bury that.
        self.met.update(fact.spec.name for fact in facts.values())
        if table is None:
            self.problems.append(
                Problem(self.file.shown, f"[{kind}]", "not given", f"begin this file with the line [{kind}]")
            )
        else:
            self._wrong((kind,), pair(kind, table), "is not a table", f"begin this file with the line [{kind}]")
        return {}

    def _unknown(self, kind: str, key: str, raw: Any, facts: Mapping[str, GivenFact]) -> None:
        close = closest(key, facts)
        elsewhere = next((f for f in self.catalogue.facts.values() if f.key == key), None)
        if elsewhere:
            do = f"it belongs in the {elsewhere.file} file, below [{elsewhere.file}]"
        elif close:
            # What was misspelt is not missing too.
            self.met.add(facts[close].spec.name)
            do = f"a key named '{close}' exists"
        else:
            do = f"take it out, or look up the keys of [{kind}]"
        self._wrong((kind, key), pair(key, raw), f"unknown key '{harmless(key)}'", do)

    def _list(self, fact: GivenFact, raw: Any, path: Path) -> tuple[tuple[Any, ...], str] | None:
        if not isinstance(raw, list):
            said = raw if isinstance(raw, str) else fact.typical
            self._wrong(path, pair(fact.key, raw), "is not a list", f"write {fact.key} = [{as_written(said)}]")
            return None
        values, words = [], []
        met: set[str] = set()
        before = len(self.problems)
        for number, one in enumerate(raw):
            try:
                value, said = of_list(fact, one, self.catalogue.references)
            except Unfit as unfit:
                # One slip made all along a list is told once.
                if unfit.wrong not in met:
                    self._wrong((*path, number), f"{fact.key}: {as_written(one)}", unfit.wrong, unfit.do)
                met.add(unfit.wrong)
                continue
            values.append(value)
            words.append(said)
        if not met and not self._enough(fact, raw, path):
            return None
        return (tuple(values), ", ".join(words) or _NONE) if len(self.problems) == before else None

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
            self._wrong((*path, key), pair(key, one), f"unknown key '{harmless(key)}'", do)
        self.problems += entry_problems(fact, raw, record, met, self.file.place, path)
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
