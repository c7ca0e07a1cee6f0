"""The record of work that is no test of the tailstock: its lines filled, its tables made of computed lists."""

from collections.abc import Iterator, Mapping, Sequence
from types import MappingProxyType

from tailtrue.assemble.filling import Filler, figure, words_of
from tailtrue.assemble.glossary import glossary
from tailtrue.conditions import Condition
from tailtrue.facts import Fact
from tailtrue.parts import Check, Figure, Limits, Text
from tailtrue.procedure import Phase, Step
from tailtrue.record_sheet import Block, Place
from tailtrue.store.knowledge import Route
from tailtrue.store.records import BlockText, EntryText, LookTableText, WorkRecordText
from tailtrue.truth import Truth
from tailtrue.work_record import LookLine, LookTable, Way, WorkRecord

Judged = Mapping[tuple[str, int], Check]


def work_record(filler: Filler, route: Route, made: Sequence[Phase]) -> WorkRecord | None:
    """The record of a route that has one of its own; None for any other. What the steps judge is judged as they do.

    Raises Gap where a place cannot be filled.
    """
    knowledge = filler.case.knowledge
    found = knowledge.records.get(route.file.id)
    if found is None:
        return None
    shared = {block.file.id: block for block in knowledge.blocks}
    blocks = (*found.blocks, *(shared[name] for name in found.file.shared))
    judged = {(step.id, at): check for phase in made for step in phase.steps for at, check in _judged(step)}
    record = WorkRecord(
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
        blocks=tuple(block_of(filler, block, judged) for block in blocks if _holds(filler, block.when)),
        verify=_lines(filler, found, "verify"),
        keep=_lines(filler, found, "keep"),
        log=_lines(filler, found, "log"),
    )
    return record.model_copy(update={"glossary": glossary(knowledge.glossary, record)})


def block_of(filler: Filler, block: BlockText, judged: Judged = MappingProxyType({})) -> Block:
    """Places that belong together, as many as hold in this case; `judged` are the checks of the steps with a band."""
    entries = tuple(_place(filler, entry, judged) for entry in block.entries if _holds(filler, entry.when))
    return Block(id=block.file.id, title=block.file.title, columns=tuple(block.file.columns), entries=entries)


def _judged(step: Step) -> Iterator[tuple[int, Check]]:
    return enumerate((check for check in step.checks if check.limits is not None), start=1)


def _place(filler: Filler, entry: EntryText, judged: Judged) -> Place:
    file = entry.file
    check = judged.get((file.judged_at, file.check))

    def figure_of(name: str) -> Figure | None:
        return filler.figure(name) if name else None

    place = Place(
        label=file.label,
        unit=file.unit,
        choices=tuple(file.choices),
        planned=filler.text(entry.planned),
        words=file.words,
    )
    limits, instrument = None, None
    if check is not None:
        limits, instrument = check.limits, check.instrument
    elif file.low or file.high:
        limits, instrument = Limits(low=figure_of(file.low), high=figure_of(file.high)), file.instrument
    if limits is None or not instrument:
        return place
    uncertainty = check.uncertainty if check is not None else figure_of(file.uncertainty)
    resolution = check.resolution if check is not None else None
    return place.model_copy(
        update={
            "limits": limits,
            "read_with": filler.text(filler.case.knowledge.needs[instrument].name),
            "uncertainty": uncertainty,
            "resolution": resolution or (figure_of(file.resolution) if uncertainty is None else None),
        }
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
