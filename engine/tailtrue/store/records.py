"""The knowledge of the records, read from ``knowledge/record`` and ``knowledge/records`` and held against itself."""

import re
from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import NamedTuple

from tailtrue.conditions import Condition
from tailtrue.errors import Problem
from tailtrue.facts import FactSpec
from tailtrue.store.reading import Reader, ReadText, ReadWhen
from tailtrue.store.record_models import BlockFile, EntryFile, LookTableFile, RecordLineFile, WorkRecordFile
from tailtrue.tables import source_keys
from tailtrue.wording import Wording

_DIGIT = re.compile(r"\d")


class EntryText(NamedTuple):
    """A place of the record with its text read."""

    file: EntryFile
    when: Condition
    planned: Wording


class BlockText(NamedTuple):
    """Places of the record that belong together, read."""

    file: BlockFile
    when: Condition
    entries: tuple[EntryText, ...]
    where: str


class KnownText(NamedTuple):
    """A line of what is known beforehand, read."""

    label: str
    value: Wording
    when: Condition


class WayText(NamedTuple):
    """A reading and the side that goes with it, read."""

    case: Wording
    side: Wording
    when: Condition


class LookTableText(NamedTuple):
    """A table with its condition read."""

    file: LookTableFile
    heads: tuple[Wording, ...]
    when: Condition


class RecordLine(NamedTuple):
    """A line, read."""

    file: RecordLineFile
    text: Wording
    when: Condition


@dataclass(frozen=True)
class WorkRecordText:
    """The record of a route, read."""

    file: WorkRecordFile
    subject: Wording
    known: tuple[KnownText, ...]
    ways: tuple[WayText, ...]
    tables: tuple[LookTableText, ...]
    lines: tuple[RecordLine, ...]
    blocks: tuple[BlockText, ...]
    where: str

    def wordings(self) -> Iterator[tuple[str, str, Wording]]:
        """Every text of it with its place and what it belongs to."""
        yield self.where, "subject", self.subject
        yield from ((self.where, row.label, row.value) for row in self.known)
        for way in self.ways:
            yield from ((self.where, "way", text) for text in (way.case, way.side))
        yield from ((self.where, table.file.title, text) for table in self.tables for text in table.heads)
        yield from ((self.where, line.file.part, line.text) for line in self.lines)
        for block in self.blocks:
            yield from ((block.where, entry.file.label, entry.planned) for entry in block.entries)


def load_blocks(reader: Reader, when: ReadWhen, word: ReadText) -> tuple[BlockText, ...]:
    """The blocks that records share."""
    return tuple(_block(f, w, when, word) for f, w in reader.entries("record/sheet.toml", "block", BlockFile))


def load_records(folder: Path, reader: Reader, when: ReadWhen, word: ReadText) -> dict[str, WorkRecordText]:
    """The record of each route that has one of its own, by the route."""
    found: dict[str, WorkRecordText] = {}
    for path in sorted((folder / "records").glob("*.toml")):
        where = reader.place(path, 1)
        file = reader.model(WorkRecordFile, reader.toml(path), where)
        if file is None:
            continue
        if file.route != path.stem:
            reader.wrong(where, file.route, "a record has the name of its route", "make file and route the same")
        found[file.route] = WorkRecordText(
            file=file,
            subject=word(file.subject, where, "subject"),
            known=tuple(KnownText(o.label, word(o.value, where, o.label), when(o.when, where, o.label)) for o in file.known),
            ways=tuple(
                WayText(word(one.case, where, "way"), word(one.side, where, "way"), when(one.when, where, "way"))
                for one in file.way
            ),
            tables=tuple(
                LookTableText(
                    one, tuple(word(two.head, where, one.title) for two in one.column), when(one.when, where, one.title)
                )
                for one in file.table
            ),
            lines=tuple(RecordLine(o, word(o.text, where, o.part), when(o.when, where, o.part)) for o in file.line),
            blocks=tuple(_block(one, where, when, word) for one in file.block),
            where=where,
        )
    return found


def _block(file: BlockFile, where: str, when: ReadWhen, word: ReadText) -> BlockText:
    entries = tuple(
        EntryText(entry, when(entry.when, where, file.id), word(entry.planned, where, file.id)) for entry in file.entry
    )
    return BlockText(file, when(file.when, where, file.id), entries, where)


def record_problems(
    records: Mapping[str, WorkRecordText], shared: tuple[BlockText, ...], catalogue: Mapping[str, FactSpec],
    routes: Collection[str], needs: Collection[str], steps: Collection[str], sources: Collection[str],
) -> Iterator[Problem]:  # fmt: skip
    """Routes, blocks, facts, instruments, fields and sources that nobody knows; numbers typed into lines."""
    ids = {block.file.id for block in shared}
    for record in records.values():
        where, file = record.where, record.file
        if file.route not in routes:
            yield Problem(where, file.route, "no route has this id", "mend the name")
        for name in (one for one in file.shared if one not in ids):
            yield Problem(where, name, "no block of every record has this id", "mend the name")
        for written in (file.sources, *(block.file.sources for block in record.blocks)):
            for key in (key for text in written for key in source_keys(text) if key not in sources):
                yield Problem(where, key, f"source '{key}' is not in sources.toml", "add it, or use memory")
        yield from _tables(record, catalogue)
        for line in record.lines:
            yield from _typed(where, line)
    for block in (*shared, *(block for record in records.values() for block in record.blocks)):
        for entry in block.entries:
            yield from _entry(block.where, entry.file, catalogue, needs, steps)


def _entry(
    where: str, entry: EntryFile, catalogue: Collection[str], needs: Collection[str], steps: Collection[str]
) -> Iterator[Problem]:
    if entry.judged_at and entry.judged_at not in steps:
        yield Problem(where, entry.label, f"no step is named '{entry.judged_at}'", "mend the name")
    if entry.judged_at and (entry.low or entry.high):
        yield Problem(where, entry.label, "has a band of its own and that of a step", "take one of them out")
    for name in (entry.low, entry.high, entry.resolution, entry.uncertainty):
        if name and name not in catalogue:
            yield Problem(where, entry.label, f"no fact is named '{name}'", "mend the name")
    if entry.instrument and entry.instrument not in needs:
        yield Problem(where, entry.label, f"no need is named '{entry.instrument}'", "mend the name")
    judged = bool(entry.low or entry.high)
    if judged and not (entry.instrument and entry.unit and (entry.resolution or entry.uncertainty)):
        yield Problem(where, entry.label, "is judged without unit, instrument or how well that reads", "say all three")


def _tables(record: WorkRecordText, catalogue: Mapping[str, FactSpec]) -> Iterator[Problem]:
    for table, _, _ in record.tables:
        spec = catalogue.get(table.records)
        if spec is None or not spec.fields:
            yield Problem(record.where, table.records, "is no list of records", "mend the name")
            continue
        for name in (*(one.field for one in table.column), *([table.said] if table.said else [])):
            if name not in spec.fields:
                yield Problem(record.where, table.records, f"has no field '{name}'", "mend the name")


def _typed(where: str, line: RecordLine) -> Iterator[Problem]:
    if _DIGIT.search(line.text.words):
        yield Problem(where, line.text.words, "a number is typed into a sentence", "make it a fact")
