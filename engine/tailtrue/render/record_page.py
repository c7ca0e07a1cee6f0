"""The paper of one bar for the lathe: table, scales, and the sheet that readings are written on. HTML and Markdown."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Literal

from markupsafe import Markup

from tailtrue.procedure import Figure, LookUp, Text
from tailtrue.render.move import move_drawing
from tailtrue.render.nomogram import Scales, nomogram
from tailtrue.render.numbers import columns, read, show_one
from tailtrue.render.paper import MEND, Head, page, unit_beside
from tailtrue.render.plain import bold, bullets, heading, literal, table
from tailtrue.render.words import directions, say

Do = Literal["leave", "again", "move"]
Kind = Literal["blank", "readings", "way", "moves", "wide"]
DO = {"leave": "leave it", "again": "read again", "move": "move"}
BLOCKS = 3
WRITE = "____________"
NOTHING = "\u2013"
TITLE = "Bar at the lathe"
TABLE_TITLE = "Difference read, and the move"
SCALES_TITLE = "The same with a straight edge"
SHEET_TITLE = "Record sheet"
STATES = ("As found", "As left")
ORDER = ("H headstock end, first", "T tailstock end, first", "T tailstock end, second", "H headstock end, second")
MOVES = ("indicator before the move", "after the move, not yet clamped", "after clamping")
WAYS = ("toward you", "away from you")
TURNS = ("first move", "second move")
NEXT_DUE = "next check due"
INITIALS = "verified by, initials"
SETS = {
    "set-up": "State of the lathe", "skim": "The skim", "measuring": "The micrometer", "visit": "The test",
    "moves": "The move", "end": "Remarks",
}  # fmt: skip


@dataclass(frozen=True)
class TableRow:
    """One line of the table: the difference, what to do, the move where there is one."""

    difference: Figure
    do: Do
    move: Figure | None


@dataclass(frozen=True)
class Place:
    """A place to write in: what, in which unit, which words to tick, what is planned."""

    label: str
    unit: str = ""
    choices: tuple[str, ...] = ()
    planned: Text = ()
    kind: Kind = "blank"


@dataclass(frozen=True)
class RecordSheet:
    """Everything that stands on the paper."""

    head: Head
    safety: tuple[Text, ...]
    mend: tuple[Text, ...]
    look_up: LookUp
    rows: tuple[TableRow, ...]
    scales: Scales
    read: tuple[Text, ...]
    scales_read: tuple[Text, ...]
    cannot: tuple[Text, ...]
    fill: tuple[Text, ...]
    verify: tuple[Text, ...]
    known: tuple[tuple[str, Text], ...]
    places: dict[str, tuple[Place, ...]]


def record_html(sheet: RecordSheet) -> str:
    """The paper as one HTML file."""
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
        sheet=sheet,
        blocks=_blocks(cells),
        difference_unit=differences.unit,
        move_unit=moves.unit or differences.unit,
        ways=directions(sheet.look_up),
        move=Markup(move_drawing(sheet.look_up)),
        nomogram=Markup(nomogram(sheet.scales, dials, SCALES_TITLE)),
        do=DO,
        states=STATES,
        order=ORDER,
        moves=MOVES,
        way_words=WAYS,
        sets=SETS,
        turns=TURNS,
        nothing=NOTHING,
        titles=(TITLE, TABLE_TITLE, SCALES_TITLE, SHEET_TITLE),
        next_due=NEXT_DUE,
        initials=INITIALS,
        unit_beside=lambda unit: unit_beside(unit, dials),
    )


def record_markdown(sheet: RecordSheet) -> str:
    """The paper as Markdown; the scales are a drawing and stay on the HTML page."""
    return "\n\n".join(block for block in _markdown(sheet) if block) + "\n"


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
    yield heading(2, TABLE_TITLE)
    yield bullets(f"{bold(case + ':')} {literal(way)}" for case, way in directions(sheet.look_up))
    unit = read(sheet.rows[0].difference, head.dials).unit
    rows = (
        (read(row.difference, head.dials).number, DO[row.do], read(row.move, head.dials).number if row.move else NOTHING)
        for row in sheet.rows
    )
    yield table((f"Collars differ by, {unit}", "Do", f"Move the tailstock, {unit}"), rows)
    yield lines(sheet.read)
    yield literal(f"Factor of this bar: {show_one(sheet.scales.factor, head.dials)}.")
    yield lines(sheet.cannot)
    yield heading(2, SHEET_TITLE)
    yield table(("This bar", "Value"), ((literal(label), literal(say(value, head.dials))) for label, value in sheet.known))
    yield lines(sheet.fill)
    for name, places in sheet.places.items():
        yield heading(3, SETS[name])
        written = {"visit": STATES, "moves": TURNS}.get(name, ("Written",))
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
