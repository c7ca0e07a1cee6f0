"""The paper of one bar for the lathe: table, scales, and the sheet that readings are written on. HTML and Markdown."""

from collections.abc import Iterator, Mapping, Sequence

from markupsafe import Markup

from tailtrue.papers import Do, Head, Part, Place, RecordSheet
from tailtrue.parts import Text
from tailtrue.render.move import move_drawing
from tailtrue.render.nomogram import nomogram
from tailtrue.render.numbers import columns, read, show_one
from tailtrue.render.paper import MEND, page, unit_beside
from tailtrue.render.plain import bold, bullets, heading, literal, table
from tailtrue.render.words import directions, say

DO: Mapping[Do, str] = {"leave": "leave it", "again": "read again", "move": "move"}
DO_FIXED: Mapping[Do, str] = {"leave": "leave it", "again": "read again", "move": "note it"}
BLOCKS = 3
WRITE = "____________"
NOTHING = "\u2013"
TITLE = "Bar at the lathe"
TABLE_TITLE = "Difference read, and the move"
TABLE_TITLE_FIXED = "Difference read, and where the centre stands"
SCALES_TITLE = "The same with a straight edge"
SHEET_TITLE = "Record sheet"
STATES = ("As found", "As left")
STATES_FIXED = ("First test", "Second test")
ORDER = ("H headstock end, first", "T tailstock end, first", "T tailstock end, second", "H headstock end, second")
MOVES = ("indicator before the move", "after the move, not yet clamped", "after clamping")
WAYS = ("toward you", "away from you")
TURNS = ("first move", "second move")
NEXT_DUE = "next check due"
INITIALS = "verified by, initials"
SETS: Mapping[Part, str] = {
    "set-up": "State of the lathe", "skim": "The skim", "measuring": "The micrometer", "visit": "The test",
    "moves": "The move", "end": "Remarks",
}  # fmt: skip


def record_html(sheet: RecordSheet, *, large: bool = False) -> str:
    """The paper as one HTML file; in large print if asked."""
    dials = sheet.head.dials
    differences = columns((row.difference for row in sheet.rows), dials)
    moves = columns((row.move for row in sheet.rows), dials)
    cells = [
        (row.do, difference, move)
        for row, difference, move in zip(sheet.rows, differences.numbers, moves.numbers, strict=True)
    ]
    return page(
        "record.html.j2",
        sheet.head,
        large=large,
        sheet=sheet,
        blocks=_blocks(cells),
        difference_unit=differences.unit,
        move_unit=moves.unit or differences.unit,
        ways=directions(sheet.look_up),
        # Its arrows tell a move.
        move=Markup(move_drawing(sheet.look_up)) if sheet.can_move else "",
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
        titles=(TITLE, _table_title(sheet), SCALES_TITLE, SHEET_TITLE),
        next_due=NEXT_DUE,
        initials=INITIALS,
        unit_beside=lambda unit: unit_beside(unit, dials),
    )


def record_markdown(sheet: RecordSheet) -> str:
    """The paper as Markdown; the scales are a drawing and stay on the HTML page."""
    return "\n\n".join(block for block in _markdown(sheet) if block) + "\n"


def _table_title(sheet: RecordSheet) -> str:
    return TABLE_TITLE if sheet.can_move else TABLE_TITLE_FIXED


def _blocks(cells: Sequence[tuple[Do, str | None, str | None]]) -> list[Sequence[tuple[Do, str | None, str | None]]]:
    height = -(-len(cells) // BLOCKS)
    return [cells[start : start + height] for start in range(0, len(cells), height)]


def _markdown(sheet: RecordSheet) -> Iterator[str]:
    head = sheet.head

    def lines(texts: Sequence[Text]) -> str:
        return bullets(literal(say(text, head.dials)) for text in texts)

    yield heading(1, f"{TITLE}: {head.machine}")
    yield literal(f"{head.shop}. Bar {head.bar}. Sheet {head.number} rev {head.revision}. Rules {head.rules}.")
    if sheet.mend:
        yield bold(MEND)
        yield lines(sheet.mend)
    yield lines(sheet.safety)
    yield heading(2, _table_title(sheet))
    yield bullets(f"{bold(case + ':')} {literal(way)}" for case, way in directions(sheet.look_up))
    unit = read(sheet.rows[0].difference, head.dials).unit
    do, by = (DO, "Move the tailstock") if sheet.can_move else (DO_FIXED, "Centre off the line")
    rows = (
        (read(row.difference, head.dials).number, do[row.do], read(row.move, head.dials).number if row.move else NOTHING)
        for row in sheet.rows
    )
    yield table((f"Collars differ by, {unit}", "Do", f"{by}, {unit}"), rows)
    yield lines(sheet.read)
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


def _rows(place: Place, head: Head, count: int) -> Iterator[tuple[str, ...]]:
    unit = f" {unit_beside(place.unit, head.dials)}" if place.unit else ""
    blank = " / ".join(map(literal, place.choices)) if place.choices else f"{literal(WRITE)}{literal(unit)}"
    planned = f" (planned {literal(say(place.planned, head.dials))})" if place.planned else ""
    many: dict[str, tuple[str, ...]] = {"readings": ORDER, "moves": MOVES}
    names = many.get(place.kind, (place.label,))
    for name in names:
        yield (literal(name) + planned, *[blank] * count)
    if place.kind == "way":
        yield ("way of the move", *[" / ".join(WAYS)] * count)
