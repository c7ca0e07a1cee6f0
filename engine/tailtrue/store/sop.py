"""The knowledge of the standing procedure, read from ``knowledge/sop`` and held against itself."""

import re
from collections.abc import Callable, Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass, fields, replace
from itertools import chain
from pathlib import Path
from typing import Any, Generic, TypeVar

from tailtrue.conditions import Condition
from tailtrue.errors import KnowledgeInvalid, Problem
from tailtrue.store import sop_models as files
from tailtrue.store.models import File
from tailtrue.store.reading import Reader, ReadText, ReadWhen
from tailtrue.tables import source_keys
from tailtrue.wording import Wording

AT_MOST_LINES = 12
COUNTED = ("before", "during", "after")
_DIGIT = re.compile(r"\d")

FileT = TypeVar("FileT", bound=File)
RuleT = TypeVar("RuleT", bound=files.SopRuleFile)


@dataclass(frozen=True)
class Rule(Generic[FileT]):
    """An entry with its condition and its texts read, by the names of its fields."""

    file: FileT
    when: Condition
    texts: Mapping[str, tuple[Wording, ...]]
    where: str

    def text(self, name: str) -> Wording:
        """The one text of a field."""
        return self.texts[name][0]


@dataclass(frozen=True)
class Entry:
    """A label of a block of particulars, its text, and when it stands on the paper."""

    label: str
    value: Wording
    when: Condition
    activities: tuple[str, ...] = ()


@dataclass(frozen=True)
class Paper:
    """What the paper of one route is called, and the line that says what it is for."""

    title: Wording
    scope: Wording


@dataclass(frozen=True)
class FormText:
    """A form with its lead, and what stands in some of its places already."""

    file: files.FormFile
    lead: Wording
    lead_owner: Wording
    given: Mapping[str, Wording]


@dataclass(frozen=True)
class SopTexts:
    """Everything that the standing procedure is made from."""

    page: Rule[files.SopPageFile]
    papers: Mapping[str, Paper]
    control: tuple[Entry, ...]
    places: tuple[Entry, ...]
    forms: tuple[FormText, ...]
    lines: tuple[Rule[files.SopLineFile], ...]
    limits: tuple[Rule[files.SopLimitFile], ...]
    controls: tuple[Rule[files.SopControlFile], ...]
    wear: tuple[Rule[files.SopWearFile], ...]
    upkeep: tuple[Rule[files.SopUpkeepFile], ...]
    emergency: tuple[Rule[files.SopEmergencyFile], ...]

    @property
    def rules(self) -> Iterator[Rule[File]]:
        """Every entry of every kind."""
        for one in fields(self):
            value = getattr(self, one.name)
            yield from (rule for rule in (value if isinstance(value, tuple) else (value,)) if isinstance(rule, Rule))

    def wordings(self) -> Iterator[tuple[str, str, Wording]]:
        """Every text with its place and what it belongs to."""
        for rule in self.rules:
            for texts in rule.texts.values():
                yield from ((rule.where, getattr(rule.file, "id", ""), text) for text in texts)
        entries = ((one.label, one.value) for one in (*self.control, *self.places))
        papers = ((route, text) for route, one in self.papers.items() for text in (one.title, one.scope))
        forms = ((form.file.id, text) for form in self.forms for text in (form.lead, form.lead_owner, *form.given.values()))
        for label, text in (*entries, *papers, *forms):
            yield self.page.where, label, text


def standing(sop: SopTexts) -> Iterator[Rule[files.SopRuleFile]]:
    """Every entry that may stand on one paper and not on another."""
    every: Iterable[Rule[Any]] = chain(sop.lines, sop.limits, sop.controls, sop.wear, sop.upkeep, sop.emergency)
    yield from every


def conditional(sop: SopTexts) -> Iterator[Rule[files.SopRuleFile]]:
    """Every entry that stands on the paper under a condition alone."""
    yield from (rule for rule in standing(sop) if rule.file.when)


def belonging(sop: SopTexts, about: Callable[[Collection[str]], bool], activities: Collection[str]) -> SopTexts:
    """The entries for a sheet whose steps do these activities; `about` tells whether it has to do with some concerns."""

    def here(rules: tuple[Rule[RuleT], ...]) -> tuple[Rule[RuleT], ...]:
        return tuple(rule for rule in rules if about(rule.file.concerns) and _met(rule.file.activities, activities))

    control = tuple(entry for entry in sop.control if _met(entry.activities, activities))
    return replace(
        sop, control=control, lines=here(sop.lines), limits=here(sop.limits), controls=here(sop.controls),
        wear=here(sop.wear), upkeep=here(sop.upkeep), emergency=here(sop.emergency),
    )  # fmt: skip


def _met(wanted: Collection[str], activities: Collection[str]) -> bool:
    return not wanted or any(one in activities for one in wanted)


# The fields of an entry that hold text for the page.
_TEXTS = ("text", "value", "beyond", "back", "state", "means", "required", "forbidden", "task", "do", "never")


def load_sop(folder: Path, reader: Reader, when: ReadWhen, word: ReadText) -> SopTexts:
    """What stands in the folder. Raises KnowledgeInvalid when its frame cannot be read."""

    def rule(file: FileT, where: str) -> Rule[FileT]:
        said = str(getattr(file, "id", ""))
        texts = {name: getattr(file, name) for name in _TEXTS if hasattr(file, name)}
        read = {
            name: tuple(word(text, where, said) for text in (value if isinstance(value, list) else [value]))
            for name, value in texts.items()
        }
        return Rule(file, when(getattr(file, "when", []), where, said), read, where)

    def whole(name: str, model: type[FileT]) -> tuple[FileT | None, str]:
        path = folder / "sop" / name
        where = reader.place(path)
        return reader.model(model, reader.toml(path), where), where

    page, at_page = whole("page.toml", files.SopPageFile)
    machine, at_machine = whole("machine.toml", files.SopMachineFile)
    if page is None or machine is None:
        raise KnowledgeInvalid(tuple(reader.problems))

    def entry(file: files.EntryFile) -> Entry:
        return Entry(
            file.label, word(file.value, at_page, file.label), when(file.when, at_page, file.label), tuple(file.activities)
        )

    def form(file: files.FormFile) -> FormText:
        given = {place: word(text, at_page, file.id) for place, text in file.given.items()}
        lead = word(file.lead, at_page, file.id)
        return FormText(file, lead, word(file.lead_owner, at_page, file.id) if file.lead_owner else lead, given)

    said = {name: (word(getattr(page, name), at_page, name),) for name in ("id", "photo", "last_reviewed")}
    frame = Rule(page, when(page.made_when, at_page, "made_when"), said, at_page)
    return SopTexts(
        page=frame,
        papers={
            one.route: Paper(word(one.title, at_page, one.route), word(one.scope, at_page, one.route)) for one in page.paper
        },
        control=tuple(map(entry, page.control)),
        places=tuple(map(entry, page.place)),
        forms=tuple(map(form, page.form)),
        lines=tuple(rule(f, w) for f, w in reader.entries("sop/lines.toml", "line", files.SopLineFile)),
        limits=tuple(rule(f, w) for f, w in reader.entries("sop/limits.toml", "limit", files.SopLimitFile)),
        controls=tuple(rule(f, at_machine) for f in machine.control),
        wear=tuple(rule(f, at_machine) for f in machine.wear),
        upkeep=tuple(rule(f, at_machine) for f in machine.upkeep),
        emergency=tuple(rule(f, w) for f, w in reader.entries("sop/emergency.toml", "emergency", files.SopEmergencyFile)),
    )


def sop_problems(
    sop: SopTexts, facts: Collection[str], sources: Collection[str], seen: Collection[str], papers: Mapping[str, SopTexts]
) -> Iterator[Problem]:
    """What is wrong in the entries: names and sources that nobody knows, numbers typed, papers with too many lines or none.

    `papers` are the entries that belong to each route with a standing procedure, were all its steps done.
    """
    where = sop.page.where
    for rule in sop.rules:
        for key in (key for text in getattr(rule.file, "sources", ()) for key in source_keys(text)):
            if key not in sources:
                yield Problem(rule.where, key, f"source '{key}' is not in sources.toml", "add it, or use memory")
    for reference in sop.page.file.reference:
        if reference.source not in sources:
            yield Problem(where, reference.source, "is not in sources.toml", "add it, or take the reference out")
    for role in sop.page.file.role:
        for name in (role.name, role.day):
            if name is not None and name not in facts:
                yield Problem(where, role.role, f"no fact is named '{name}'", "mend the name")
    for emergency in sop.emergency:
        if not emergency.file.do and emergency.file.seen not in seen:
            yield Problem(emergency.where, emergency.file.seen, "the sheet's table has no such line", "say what to do")
    for form in sop.page.file.form:
        for label in {*form.high, *form.others, *form.given} - set(form.blanks):
            yield Problem(where, label, f"is no place of the form '{form.id}'", "mend the name")
    yield from _papers(sop, papers)
    ids = [str(getattr(rule.file, "id", "")) for rule in sop.rules]
    for twice in sorted({one for one in ids if ids.count(one) > 1}):
        yield Problem(where, twice, "two entries have this id", "rename one")
    yield from _typed(sop)


def _papers(sop: SopTexts, papers: Mapping[str, SopTexts]) -> Iterator[Problem]:
    """Routes without a title, titles without a route, lists too long for one of them, entries that belong to none."""
    where = sop.page.where
    for route in sorted(papers.keys() ^ sop.papers.keys()):
        wrong = "has no [[paper]] with its title" if route in papers else "is no route with a standing procedure"
        yield Problem(where, route, wrong, "let routes and papers be the same")
    for route, mine in papers.items():
        for part in COUNTED:
            count = sum(1 for line in mine.lines if line.file.part == part)
            if count > AT_MOST_LINES:
                lines = f"{where.rpartition('/')[0]}/lines.toml"
                yield Problem(lines, part, f"has {count} lines on {route}", f"keep {AT_MOST_LINES} at most")
    used = {rule.file.id for mine in papers.values() for rule in standing(mine)}
    for rule in standing(sop):
        limit = isinstance(rule.file, files.SopLimitFile)  # stands on the sheets of other routes too
        if rule.file.id not in used and not limit:
            yield Problem(rule.where, rule.file.id, "belongs on no paper", "mend its concerns and activities")


def _typed(sop: SopTexts) -> Iterator[Problem]:
    for where, said, text in sop.wordings():
        if _DIGIT.search(text.words):
            yield Problem(where, said, "a number is typed into a sentence", "make it a fact")
