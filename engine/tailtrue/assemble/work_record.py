"""The record of work that is no test of the tailstock: its lines filled, its tables made of computed lists."""

from tailtrue.assemble.filling import Filler, figure, words_of
from tailtrue.assemble.glossary import glossary
from tailtrue.conditions import Condition
from tailtrue.facts import Fact
from tailtrue.parts import Figure, Limits, Text
from tailtrue.record_sheet import Block, Place
from tailtrue.store.knowledge import Route
from tailtrue.store.records import BlockText, EntryText, LookTableText, WorkRecordText
from tailtrue.truth import Truth
from tailtrue.work_record import LookLine, LookTable, Way, WorkRecord


def work_record(filler: Filler, route: Route) -> WorkRecord | None:
    """The record of a route that has one of its own; None for any other. Raises Gap where a place cannot be filled."""
    knowledge = filler.case.knowledge
    found = knowledge.records.get(route.file.id)
    if found is None:
        return None
    shared = {block.file.id: block for block in knowledge.blocks}
    blocks = (*found.blocks, *(shared[name] for name in found.file.shared))
    made = WorkRecord(
        id=found.file.route,
        title=found.file.title,
        of=found.file.of,
        subject=words_of(filler.text(found.subject)),
        safety=_lines(filler, found, "safety"),
        ways=tuple(
            Way(case=filler.text(one.case), side=filler.text(one.side)) for one in found.ways if _holds(filler, one.when)
        ),
        tables=tuple(_table(filler, one) for one in found.tables if _holds(filler, one.when)),
        told=_lines(filler, found, "told"),
        fill=_lines(filler, found, "fill"),
        known=tuple((one.label, filler.text(one.value)) for one in found.known if _holds(filler, one.when)),
        blocks=tuple(block_of(filler, block) for block in blocks if _holds(filler, block.when)),
        verify=_lines(filler, found, "verify"),
        keep=_lines(filler, found, "keep"),
        log=_lines(filler, found, "log"),
    )
    return made.model_copy(update={"glossary": glossary(knowledge.glossary, made)})


def block_of(filler: Filler, block: BlockText) -> Block:
    """Places that belong together, as many as hold in this case."""
    entries = tuple(_place(filler, entry) for entry in block.entries if _holds(filler, entry.when))
    return Block(id=block.file.id, title=block.file.title, columns=tuple(block.file.columns), entries=entries)


def _place(filler: Filler, entry: EntryText) -> Place:
    file = entry.file

    def figure_of(name: str) -> Figure | None:
        return filler.figure(name) if name else None

    judged = file.low or file.high
    return Place(
        label=file.label,
        unit=file.unit,
        choices=tuple(file.choices),
        planned=filler.text(entry.planned),
        words=file.words,
        limits=Limits(low=figure_of(file.low), high=figure_of(file.high)) if judged else None,
        read_with=filler.text(filler.case.knowledge.needs[file.instrument].name) if file.instrument else (),
        resolution=figure_of(file.resolution),
        uncertainty=figure_of(file.uncertainty),
    )


def _holds(filler: Filler, when: Condition) -> bool:
    return filler.case.judge(when).truth is Truth.YES


def _lines(filler: Filler, found: WorkRecordText, part: str) -> tuple[Text, ...]:
    return tuple(filler.text(one.text) for one in found.lines if one.file.part == part and _holds(filler, one.when))


def _table(filler: Filler, table: LookTableText) -> LookTable:
    file = table.file
    found: Fact = filler.fact(file.records)

    def cell(name: str, value: float | None) -> Figure | None:
        return None if value is None else figure(found.spec.fields[name], f"{file.records}.{name}", value)

    return LookTable(
        id=file.records,
        title=file.title,
        heads=tuple(filler.text(head) for head in table.heads),
        says=file.says or None,
        lines=tuple(
            LookLine(
                # A number that is printed is used: what asks for no more than to read again has none.
                cells=tuple(
                    cell(one.field, None if place and row.get(file.said) in file.blank_at else row[one.field])
                    for place, one in enumerate(file.column)
                ),
                says=file.words[row[file.said]] if file.said else None,
            )
            for row in found.value
        ),
    )
