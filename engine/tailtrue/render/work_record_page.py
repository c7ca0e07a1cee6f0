"""The record of work that is no test of the tailstock: sides, tables, places to write in. HTML and Markdown."""

from collections.abc import Iterator, Sequence

from tailtrue.papers import Head
from tailtrue.parts import Text
from tailtrue.procedure import TitleBlock
from tailtrue.render.columns import abreast
from tailtrue.render.glossary import terms
from tailtrue.render.marks import legend
from tailtrue.render.numbers import columns
from tailtrue.render.paper import MEND, head_of, page, unit_beside
from tailtrue.render.plain import bold, bullets, heading, literal, table
from tailtrue.render.words import HEADINGS, say
from tailtrue.render.writing import ON_SHEET, WRITE, block_rows, judged
from tailtrue.work_record import LookTable, WorkRecord

NOTHING = "\u2013"
TO_WRITE = "to write on"
VISIT = ("date", "operator, initials", "day and time of the first reading", "day and time of the last reading")
VERIFIED = "verified by, initials"
LOG = "Into the log"
# So many columns of a table stand side by side on a page.
_ABREAST = 9
# A table of no more lines stands as one.
_FEW = 4
# A block of more lines may run on over the page.
_LONG = 8


def work_record_html(record: WorkRecord, title: TitleBlock, mend: Sequence[Text] = (), *, large: bool = False) -> str:
    """The record as one HTML file, in large print if asked; `mend` is what keeps the lathe from running."""
    head = _head(record, title)
    return page(
        "work-record.html.j2",
        head,
        large=large,
        record=record,
        mend=mend,
        tables=[(one, *_set(one, head)) for one in record.tables],
        nothing=NOTHING,
        to_write_on=TO_WRITE,
        visit=VISIT,
        verified=VERIFIED,
        log_title=LOG,
        long_from=_LONG,
        on_sheet=ON_SHEET,
        glossary_title=HEADINGS["glossary"],
        abreast=abreast,
        legend=legend(record, tuple(mend)),
        judged=lambda entry: judged(entry, head.dials),
        unit_beside=lambda unit: unit_beside(unit, head.dials),
    )


def work_record_markdown(record: WorkRecord, title: TitleBlock, mend: Sequence[Text] = ()) -> str:
    """The record as Markdown."""
    return "\n\n".join(block for block in _markdown(record, _head(record, title), mend) if block) + "\n"


def _head(record: WorkRecord, title: TitleBlock) -> Head:
    return head_of(title, record.subject)


def _set(one: LookTable, head: Head) -> tuple[tuple[str, ...], list[list[tuple[tuple[str | None, ...], str]]]]:
    """The heads of a table with their units, and its lines in blocks that stand side by side."""
    found = [columns((line.cells[place] for line in one.lines), head.dials) for place in range(len(one.heads))]
    heads = tuple(
        ", ".join(filter(None, (say(name, head.dials), column.unit))) for name, column in zip(one.heads, found, strict=True)
    )
    cells = zip(*(column.numbers for column in found), strict=True)
    lines = [(row, line.says or "") for row, line in zip(cells, one.lines, strict=True)]
    blocks = max(1, _ABREAST // (len(one.heads) + bool(one.says))) if len(lines) > _FEW else 1
    height = -(-len(lines) // blocks)
    return heads, [lines[start : start + height] for start in range(0, len(lines), height)]


def _markdown(record: WorkRecord, head: Head, mend: Sequence[Text]) -> Iterator[str]:
    def lines(texts: Sequence[Text]) -> str:
        return bullets(literal(say(text, head.dials)) for text in texts)

    yield heading(1, f"{record.title}: {head.machine}")
    yield literal(
        f"{head.shop}. {record.of} {record.subject}. Sheet {head.number} rev {head.revision}{head.standing}. "
        f"{head.made_by.capitalize()}."
    )
    if mend:
        yield bold(MEND)
        yield lines(mend)
    yield lines(record.safety)
    yield bullets(f"{bold(say(way.case, head.dials) + ':')} {literal(say(way.side, head.dials))}" for way in record.ways)
    for one in record.tables:
        yield heading(2, one.title)
        heads, blocks = _set(one, head)
        rows = (
            (*(cell if cell is not None else NOTHING for cell in cells), *([literal(says)] if one.says else []))
            for block in blocks
            for cells, says in block
        )
        yield table((*map(literal, heads), *([literal(one.says)] if one.says else [])), rows)
    yield lines(record.told)
    yield literal(legend(record, tuple(mend)))
    yield heading(2, f"{record.title}: {TO_WRITE}")
    known = ((literal(label), literal(say(value, head.dials))) for label, value in record.known)
    yield table(("Known beforehand", "Value"), known)
    yield lines(record.fill)
    yield table(("Whose", "Written"), ((literal(label), WRITE) for label in VISIT))
    for block in record.blocks:
        yield heading(3, block.title)
        yield table(("What", *map(literal, block.columns)), block_rows(block, head.dials))
    yield "\n".join(f"- [ ] {literal(say(text, head.dials))}" for text in record.verify)
    yield table(("Signed", "Written"), ((literal(label), WRITE) for label in (VERIFIED,)))
    yield lines(record.keep)
    yield heading(3, LOG)
    yield lines(record.log)
    yield from terms(HEADINGS["glossary"], record.glossary, head.dials)
