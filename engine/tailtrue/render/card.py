"""The card that hangs at the headstock: one side of one sheet, read from a step away."""

import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from functools import cache, lru_cache
from itertools import combinations_with_replacement, groupby, pairwise
from textwrap import wrap
from types import MappingProxyType

from markupsafe import Markup, escape

from tailtrue.parts import Caution, Dials
from tailtrue.places import templates_folder
from tailtrue.procedure import Card, CardGroup, LookUp, Procedure
from tailtrue.render import words
from tailtrue.render.figures.speed_plate import settings_of
from tailtrue.render.look_up import look_up_columns
from tailtrue.render.numbers import read
from tailtrue.render.paper import head_of, page
from tailtrue.render.words import say, sentence

TITLE = "Bench card"
GOES_WITH = "Goes with sheet {number} rev {revision}, checksum {checksum}."
NOT_INSTEAD = "It does not stand in for the sheet."
RULES = "Rules {rules}."
EMERGENCY = "Press the stop. Isolate the lathe. Then help. Call"
_COLUMNS = 3  # of the numbers
_HEADING = 0.8  # height of a heading, in rows
_LABEL_LINE = 0.57  # height of a line of a label, in rows
_COLUMN_LETTERS = 19  # of a label beside a number without decimals; a digit is as wide as two of them
_SPLIT = 1.6  # rows that a column may be longer rather than split a block
_IN_LINE = re.compile(r"(\d[\d./]*\s(?:mm|in|div\.))")
_LARGER = Markup('<span class="small-figure">{}</span>')
_BLOCKS = 3  # of the look-up table, side by side


@dataclass(frozen=True)
class Row:
    """One number: its digits, its unit, and how many digits are wanting to its right to stand under the others."""

    label: str
    number: str
    unit: str
    wanting: float
    height: float  # in rows of a label of one line
    lever: str = ""  # how lever or belt stands, the end of the label

    @property
    def width(self) -> str:
        """The empty room to the right of the digits, in widths of a digit."""
        return f"{self.wanting:g}ch"


@dataclass(frozen=True)
class Block:
    """The rows of one operation and the steps that set them."""

    title: str
    steps: str
    rows: tuple[Row, ...]


def to_card_html(procedure: Procedure) -> str:
    """The card as one HTML file that needs nothing beside it."""
    card = card_of(procedure)
    title = procedure.title
    head = head_of(title, "")
    look_up = procedure.look_up
    differences, moves = look_up_columns(look_up, title.dials)
    return page(
        "card.html.j2",
        head,
        p=procedure,
        card=card,
        card_css=_style(),
        title=TITLE,
        columns=side_by_side(blocks(card, title.dials, settings_of(procedure.drawings))),
        dangers=[(caution.hazard, caution.avoid[0]) for caution in dangers(procedure)],
        differences=differences,
        moves=moves,
        parts=_parts(len(differences.numbers)),
        look_up_heading=words.look_up_heading(look_up) if look_up else "",
        second_column=words.second_column(look_up)[1] if look_up else "",
        ways=words.directions(look_up) if look_up else (),
        verdicts=words.when_to_leave(look_up) if look_up else (),
        leave=words.LEAVE,
        again=words.READ_AGAIN,
        headings=words.HEADINGS,
        goes_with=goes_with(procedure),
        by_hand=by_hand(card),
        figured=figured,
        emergency=EMERGENCY,
    )


def by_hand(card: Card) -> str:
    """What the mark of a number set by hand means; empty where no number has it."""
    return words.BY_HAND_CARD if any(line.value.set_by for group in card.groups for line in group.lines) else ""


def card_of(procedure: Procedure) -> Card:
    """The card of a sheet that has one."""
    if procedure.card is None:
        raise LookupError("this sheet has no card")
    return procedure.card


def dangers(procedure: Procedure) -> tuple[Caution, ...]:
    """Every danger that the operator meets, each once, in the order of the sheet."""
    found = {caution.id: caution for caution in _cautions(procedure) if caution.signal == "danger"}
    return tuple(found.values())


def _cautions(procedure: Procedure) -> Iterator[Caution]:
    yield from procedure.job_cautions
    for phase in procedure.phases:
        if all(step.who == "staff" for step in phase.steps):
            continue  # done by somebody else, away from this lathe
        yield from phase.cautions
        for step in phase.steps:
            yield from step.cautions


def blocks(card: Card, dials: Dials, settings: Mapping[float, str] = MappingProxyType({})) -> tuple[Block, ...]:
    """The groups of a card, their numbers set so that decimal points stand under each other all over the card.

    `settings` say how lever or belt stands for a speed.
    """
    shown = [read(line.value, dials) for group in card.groups for line in group.lines]
    most = max((_decimals(one.number) for one in shown), default=0)
    return tuple(_block(group, dials, most, settings) for group in card.groups)


def _block(group: CardGroup, dials: Dials, most: int, settings: Mapping[float, str]) -> Block:
    rows = []
    for line in group.lines:
        one = read(line.value, dials)
        label = say(line.label, dials)
        lever = settings.get(line.value.value, "") if line.value.unit == "1/min" else ""
        if lever:
            label = f"{label}: {lever}"
        rows.append(Row(label, one.number, one.unit, _wanting(one.number, most), _height(label, most), lever))
    return Block(group.title, ", ".join(dict.fromkeys(line.step for line in group.lines)), tuple(rows))


def figured(text: str, lever: str = "") -> Markup:
    """A line whose numbers and lever are set larger than its words: they are read from where the operator stands.

    >>> figured("depth per side, 12 div.")
    Markup('depth per side, <span class="small-figure">12 div.</span>')
    >>> figured("speed: B3", "B3")
    Markup('speed: <span class="small-figure">B3</span>')
    """
    words = text.removesuffix(lever) if lever else text
    pieces = [_LARGER.format(piece) if place % 2 else escape(piece) for place, piece in enumerate(_IN_LINE.split(words))]
    return Markup("").join((*pieces, _LARGER.format(lever)) if lever else pieces)


def _height(label: str, most: int) -> float:
    """The height of a row whose label stands beside numbers of so many decimals.

    >>> _height("speed", 3), _height("drill, taper shank 23 mm", 3) > 1, _height("as long as any label can be", 4) > 1.5
    (1.0, True, True)
    """
    return max(1.0, _LABEL_LINE * len(wrap(label, _COLUMN_LETTERS - 2 * most)))


def _decimals(number: str) -> int:
    return len(number.partition(".")[2])


def _wanting(number: str, most: int) -> float:
    """The digits wanting after a number; a decimal point is half as wide as a digit.

    >>> _wanting("0.050", 3), _wanting("0.05", 3), _wanting("450", 3), _wanting("450", 0)
    (0.0, 1.0, 3.5, 0.0)
    """
    missing = most - _decimals(number)
    return missing + (0.5 if most and "." not in number else 0.0)


def side_by_side(made: tuple[Block, ...]) -> tuple[tuple[Block, ...], ...]:
    """The blocks in columns, in order, cut so that the longest column is short and few blocks go on in the next one."""
    rows = [(place, row) for place, block in enumerate(made) for row in block.rows]

    @cache  # the same stretches come back in most of the cuts
    def length(start: int, end: int) -> float:
        return sum(row.height for _, row in rows[start:end]) + _HEADING * len({place for place, _ in rows[start:end]})

    def cost(cut: tuple[int, ...]) -> float:
        split = sum(1 for at in cut if 0 < at < len(rows) and rows[at - 1][0] == rows[at][0])
        return max(length(start, end) for start, end in pairwise((0, *cut, len(rows)))) + _SPLIT * split

    cut = min(combinations_with_replacement(range(len(rows) + 1), _COLUMNS - 1), key=cost)
    return tuple(_regrouped(made, rows[start:end]) for start, end in pairwise((0, *cut, len(rows))))


def _regrouped(made: tuple[Block, ...], rows: list[tuple[int, Row]]) -> tuple[Block, ...]:
    groups = groupby(rows, key=lambda pair: pair[0])
    return tuple(replace(made[place], rows=tuple(row for _, row in group)) for place, group in groups)


def _parts(count: int) -> tuple[range, ...]:
    """The rows of the look-up table shared out over blocks side by side.

    >>> _parts(7)
    (range(0, 3), range(3, 6), range(6, 7))
    """
    each = -(-count // _BLOCKS)
    return tuple(range(start, min(start + each, count)) for start in range(0, count, each or 1))


def goes_with(procedure: Procedure) -> tuple[str, str]:
    """Which sheet the card belongs to, and that it is no more than its card."""
    title = procedure.title
    # Who reads the card alone must see that it was made under rules of the shop.
    rules = f" {RULES.format(rules=title.knowledge_version)}" if procedure.shop_rules else ""
    sheet = GOES_WITH.format(number=title.number, revision=title.revision, checksum=title.checksum)
    return sheet, f"{NOT_INSTEAD}{rules}"


@lru_cache(maxsize=1)
def _style() -> Markup:
    return Markup((templates_folder() / "card.css").read_text(encoding="utf-8"))


def to_card_markdown(procedure: Procedure) -> str:
    """The card as Markdown: the same words and numbers in the same order."""
    return "\n\n".join(_markdown(procedure)) + "\n"


def _markdown(procedure: Procedure) -> Iterable[str]:
    from tailtrue.render.plain import bold, bullets, heading, literal, table

    card = card_of(procedure)
    title = procedure.title
    dials = title.dials
    yield heading(1, f"{TITLE}: {title.machine}")
    yield literal(" ".join(goes_with(procedure)))
    yield bullets(
        f"{bold('DANGER')} {bold(sentence(one.hazard))} {literal(say(one.avoid[0], dials))}" for one in dangers(procedure)
    )
    called = ", ".join(f"{literal(line.item)} {bold(line.state)}" for line in card.start.lines)
    yield f"{bold(card.start.title)}: {called}. {literal(card.start.ends_with)}."
    yield bullets(f"{bold(say(note.label, dials))}: {literal(say(note.value, dials))}" for note in card.notes)
    rows = [
        (literal(f"{block.title} ({block.steps})"), literal(row.label), literal(row.number), literal(row.unit))
        for block in blocks(card, dials, settings_of(procedure.drawings))
        for row in block.rows
    ]
    yield table(("Operation (step)", "Set", "Number", "Unit"), rows)
    if mark := by_hand(card_of(procedure)):
        yield literal(mark)
    if procedure.look_up is not None:
        yield from _look_up_markdown(procedure.look_up, dials)
    yield heading(2, words.HEADINGS["stop_at_once"])
    yield bullets(literal(say(line, dials)) for line in procedure.stop_at_once)
    yield f"{bold('Emergency')} {literal(EMERGENCY)}: ______"


def _look_up_markdown(look_up: LookUp, dials: Dials) -> Iterable[str]:
    from tailtrue.render.plain import bold, bullets, heading, literal, table

    yield heading(2, words.look_up_heading(look_up))
    differences, moves = look_up_columns(look_up, dials)
    yield table(
        (f"Collars differ by, {literal(differences.unit)}", f"{words.second_column(look_up)[0]}, {literal(moves.unit)}"),
        [
            (literal(str(difference)), words.LEAVE if move is None else literal(move))
            for difference, move in zip(differences.numbers, moves.numbers, strict=True)
        ],
    )
    yield bullets(f"{case}: {bold(way)}" for case, way in words.directions(look_up))
    yield bullets(literal(say(line, dials)) for line in words.when_to_leave(look_up))
