"""The paper of one bar for the lathe: table, scales, and the sheet that readings are written on. HTML and Markdown."""

from collections.abc import Iterator, Mapping, Sequence

from markupsafe import Markup

from tailtrue.papers import Head
from tailtrue.parts import Text
from tailtrue.procedure import Procedure
from tailtrue.record_sheet import Do, Part, Place, RecordSheet
from tailtrue.render.columns import abreast
from tailtrue.render.glossary import terms
from tailtrue.render.marks import legend
from tailtrue.render.move import move_drawing
from tailtrue.render.nomogram import nomogram
from tailtrue.render.numbers import columns, read, show_one
from tailtrue.render.paper import MEND, head_of, page, unit_beside
from tailtrue.render.plain import bold, bullets, heading, literal, table
from tailtrue.render.words import HEADINGS, directions, say
from tailtrue.render.work_record_page import work_record_html, work_record_markdown
from tailtrue.render.writing import ON_SHEET, WRITE, block_rows, judged, planned, to_write

DO: Mapping[Do, str] = {"leave": "leave it", "again": "read again", "move": "move"}
DO_FIXED: Mapping[Do, str] = {"leave": "leave it", "again": "read again", "move": "note it"}
BLOCKS = 3
NOTHING = "\u2013"
TITLE = "Bar at the lathe"
TABLE_TITLE = "Difference read, and the move"
TABLE_TITLE_FIXED = "Difference read, and where the centre stands"
SCALES_TITLE = "The same with a straight edge"
SHEET_TITLE = "Record sheet"
FULL_TITLE = "Record sheet: in full"
STATES = ("As found", "As left")
STATES_FIXED = ("First test", "Second test")
ORDER = ("H headstock end, first", "T tailstock end, first", "T tailstock end, second", "H headstock end, second")
MOVES = ("indicator before the move", "after the move, not yet clamped", "after clamping")
WAYS = ("toward you", "away from you")
TURNS = ("first move", "second move")
NEXT_DUE = "next check due"
INITIALS = "verified by, initials"
SETS: Mapping[Part, str] = {
    "set-up": "State of the lathe", "skim": "The skim", "measuring": "The instrument", "visit": "The test",
    "moves": "The move", "end": "Remarks",
}  # fmt: skip


def to_record_html(procedure: Procedure, mend: Sequence[Text] = (), *, large: bool = False) -> str:
    """The record of a procedure as one HTML file, in large print if asked; `mend` is what keeps the lathe from running."""
    if procedure.work_record is not None:
        return work_record_html(procedure.work_record, procedure.title, mend, large=large)
    return record_html(_of(procedure), _head(procedure), mend, large=large)


def to_record_markdown(procedure: Procedure, mend: Sequence[Text] = ()) -> str:
    """The record of a procedure as Markdown."""
    if procedure.work_record is not None:
        return work_record_markdown(procedure.work_record, procedure.title, mend)
    return record_markdown(_of(procedure), _head(procedure), mend)


def _of(procedure: Procedure) -> RecordSheet:
    if procedure.record is None:
        raise ValueError("the procedure has no record")
    return procedure.record


def _head(procedure: Procedure) -> Head:
    return head_of(procedure.title, _of(procedure).bar)


def record_html(sheet: RecordSheet, head: Head, mend: Sequence[Text] = (), *, large: bool = False) -> str:
    """The paper as one HTML file, in large print if asked; `mend` is what keeps the lathe from running."""
    dials = head.dials
    differences = columns((row.difference for row in sheet.rows), dials)
    moves = columns((row.move for row in sheet.rows), dials)
    cells = [
        (row.do, difference, move)
        for row, difference, move in zip(sheet.rows, differences.numbers, moves.numbers, strict=True)
    ]
    return page(
        "record.html.j2",
        head,
        large=large,
        sheet=sheet,
        mend=mend,
        blocks=_blocks(cells),
        difference_unit=differences.unit,
        move_unit=moves.unit or differences.unit,
        ways=directions(sheet),
        # Its arrows tell a move.
        move=Markup(move_drawing(sheet)) if sheet.can_move else "",
        nomogram=Markup(nomogram(sheet.scales, dials, SCALES_TITLE, sheet.can_move)),
        do=DO if sheet.can_move else DO_FIXED,
        states=STATES if sheet.can_move else STATES_FIXED,
        by="Move by" if sheet.can_move else "Centre off by",
        order=ORDER,
        moves=MOVES,
        way_words=WAYS,
        sets=SETS,
        turns=TURNS,
        nothing=NOTHING,
        on_sheet=ON_SHEET,
        titles=(TITLE, _table_title(sheet), SCALES_TITLE, SHEET_TITLE, FULL_TITLE),
        next_due=NEXT_DUE,
        initials=INITIALS,
        glossary_title=HEADINGS["glossary"],
        abreast=abreast,
        legend=legend(sheet, tuple(mend)),
        judged=lambda entry: judged(entry, head.dials),
        unit_beside=lambda unit: unit_beside(unit, dials),
    )


def record_markdown(sheet: RecordSheet, head: Head, mend: Sequence[Text] = ()) -> str:
    """The paper as Markdown; the scales are a drawing and stay on the HTML page."""
    return "\n\n".join(block for block in _markdown(sheet, head, mend) if block) + "\n"


def _table_title(sheet: RecordSheet) -> str:
    return TABLE_TITLE if sheet.can_move else TABLE_TITLE_FIXED


def _blocks(cells: Sequence[tuple[Do, str | None, str | None]]) -> list[Sequence[tuple[Do, str | None, str | None]]]:
    height = -(-len(cells) // BLOCKS)
    return [cells[start : start + height] for start in range(0, len(cells), height)]


def _markdown(sheet: RecordSheet, head: Head, mend: Sequence[Text]) -> Iterator[str]:
    def lines(texts: Sequence[Text]) -> str:
        return bullets(literal(say(text, head.dials)) for text in texts)

    yield heading(1, f"{TITLE}: {head.machine}")
    yield literal(
        f"{head.shop}. Bar {head.bar}. Sheet {head.number} rev {head.revision}{head.standing}. {head.made_by.capitalize()}."
    )
    if mend:
        yield bold(MEND)
        yield lines(mend)
    yield lines(sheet.safety)
    yield heading(2, _table_title(sheet))
    yield bullets(f"{bold(case + ':')} {literal(way)}" for case, way in directions(sheet))
    unit = read(sheet.rows[0].difference, head.dials).unit
    do, by = (DO, "Move the tailstock") if sheet.can_move else (DO_FIXED, "Centre off the line")
    rows = (
        (read(row.difference, head.dials).number, do[row.do], read(row.move, head.dials).number if row.move else NOTHING)
        for row in sheet.rows
    )
    yield table((f"Collars differ by, {unit}", "Do", f"{by}, {unit}"), rows)
    yield lines(sheet.read)
    yield literal(legend(sheet, tuple(mend)))
    yield literal(f"Factor of this bar: {show_one(sheet.scales.factor, head.dials)}.")
    yield lines(sheet.cannot)
    yield heading(2, SHEET_TITLE)
    yield table(("This bar", "Value"), ((literal(label), literal(say(value, head.dials))) for label, value in sheet.known))
    yield lines(sheet.fill)
    for name, places in sheet.places.items():
        yield heading(3, SETS[name])
        written = {"visit": STATES if sheet.can_move else STATES_FIXED, "moves": TURNS}.get(name, ("Written",))
        yield table(("What", *written), (row for place in places for row in _rows(place, head, len(written))))
    yield "\n".join(f"- [ ] {literal(say(text, head.dials))}" for text in sheet.verify)
    yield table(("Signed", "Written"), ((literal(label), WRITE) for label in (INITIALS, NEXT_DUE)))
    yield heading(2, FULL_TITLE)
    for block in sheet.blocks:
        yield heading(3, block.title)
        yield table(("What", *map(literal, block.columns)), block_rows(block, head.dials))
    yield lines(sheet.keep)
    yield from terms(HEADINGS["glossary"], sheet.glossary, head.dials)


def _rows(place: Place, head: Head, count: int) -> Iterator[tuple[str, ...]]:
    blank, beside = to_write(place, head.dials), planned(place, head.dials)
    many: dict[str, tuple[str, ...]] = {"readings": ORDER, "moves": MOVES}
    names = many.get(place.kind, (place.label,))
    for name in names:
        yield (literal(name) + beside, *[blank] * count)
    if place.kind == "way":
        yield ("way of the move", *[" / ".join(WAYS)] * count)
