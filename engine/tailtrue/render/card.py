"""The card that hangs at the headstock: one side of one sheet, its numbers read from a step away."""

import re
from collections.abc import Iterable
from functools import lru_cache

from markupsafe import Markup, escape

from tailtrue.parts import Caution, Dials, Text
from tailtrue.places import templates_folder
from tailtrue.procedure import Card, LookUp, Procedure
from tailtrue.render import words
from tailtrue.render.card_room import SETTINGS_ABREAST, START, Side, one_side
from tailtrue.render.card_rows import LARGE, Block, Row, blocks, large_sides
from tailtrue.render.figures.speed_plate import settings_of
from tailtrue.render.large import enlarged
from tailtrue.render.look_up import look_up_columns
from tailtrue.render.numbers import read
from tailtrue.render.paper import head_of, page, unit_beside
from tailtrue.render.words import say, sentence

TITLE = "Bench card"
PHONE = "phone"  # the line of the safety review that has the emergency number
GOES_WITH = "Goes with sheet {number} rev {revision}, checksum {checksum}."
RULES = "Rules {rules}."
MORE_SIDES = "THIS CARD MAY TAKE TWO SIDES: hang up both."
_FIGURE = Markup('<span class="figure">{}</span>')
_NUMBER = re.compile(r"(\d[\d./]*(?:\s(?:mm|in)\b)?)")


def to_card_html(procedure: Procedure, *, large: bool = False) -> str:
    """The card as one HTML file that needs nothing beside it: one side of one sheet, or several in large print."""
    card = card_of(procedure)
    dials = procedure.title.dials
    made = blocks(card, dials, settings_of(procedure.drawings), procedure.look_up)
    dangers = [(caution.hazard, caution.avoid[0]) for caution in messages(procedure)]
    side = Side(LARGE, (), words_below=True) if large else _side(card, made, dials, dangers)
    return page(
        "card.html.j2",
        head_of(procedure.title, ""),
        large=large,
        p=procedure,
        card=card,
        card_css=_style(large),
        title=TITLE,
        side=side,
        sides=large_sides(made, dials) if large else (side.columns,),
        settings=words.SETTINGS,
        abreast=SETTINGS_ABREAST,
        dangers=dangers,
        headings=words.HEADINGS,
        goes_with=[*goes_with(procedure), *([] if side.fits else [MORE_SIDES])],
        by_hand=by_hand(card),
        phone=phone_of(procedure),
        start_mark=START,
        starts=_starts(card),
        labelled=lambda row: labelled(row, dials),
        figured=lambda text: figured(text, dials),
        words=[(term.term, say(term.meaning, dials)) for term in card.glossary],
        blank_unit=lambda unit: unit_beside(unit, dials) if unit else "",
    )


def _side(card: Card, made: tuple[Block, ...], dials: Dials, dangers: Iterable[tuple[str, Text]]) -> Side:
    notes = [f"{say(note.label, dials)}: {say(note.value, dials)}" for note in card.notes]
    told = [f"{sentence(hazard)} {say(avoid, dials)}" for hazard, avoid in dangers]
    return one_side(card, made, dials, told, [*notes, *filter(None, [by_hand(card)])])


def by_hand(card: Card) -> str:
    """What the mark of a number set by hand means; empty where no number has it."""
    return words.BY_HAND_CARD if any(line.value.set_by for group in card.groups for line in group.lines) else ""


def phone_of(procedure: Procedure) -> str:
    """The emergency number, as the files of the user say it; empty where it is not known."""
    dials = procedure.title.dials
    return next((say(one.answer, dials) for one in procedure.safety_review.emergency if one.id == PHONE and one.answer), "")


def card_of(procedure: Procedure) -> Card:
    """The card of a sheet that has one."""
    if procedure.card is None:
        raise LookupError("this sheet has no card")
    return procedure.card


def messages(procedure: Procedure) -> tuple[Caution, ...]:
    """The dangers that stand on the card in full, in its order."""
    every = [*procedure.job_cautions]
    for phase in procedure.phases:
        every += [*phase.cautions, *(caution for step in phase.steps for caution in step.cautions)]
    told = {caution.id: caution for caution in every}
    return tuple(told[name] for name in card_of(procedure).messages)


def figured(text: Text, dials: Dials) -> Markup:
    """A text whose numbers are set as large as any other of the card, in the system of the dials alone.

    >>> figured(("stock of ", "4 mm"), "metric")
    Markup('stock of <span class="figure">4 mm</span>')
    """
    pieces: list[Markup] = []
    for piece in text:
        if isinstance(piece, str):
            # A size of a tool is a word of the user's own: its digits are read as any other.
            pieces += [_FIGURE.format(part) if at % 2 else escape(part) for at, part in enumerate(_NUMBER.split(piece))]
        else:
            pieces.append(_FIGURE.format(read(piece, dials).whole))
    return Markup("").join(pieces)


def labelled(row: Row, dials: Dials) -> Markup:
    """The label of a row; lever and numbers in it are set as large as the numbers."""
    label = figured(row.label, dials)
    if row.lever_in_words:
        return Markup('{}: <b class="lever-in-words">{}</b>').format(label, row.lever)
    return Markup('{} <span class="figure lever">{}</span>').format(label, row.lever) if row.lever else label


def goes_with(procedure: Procedure) -> tuple[str, str]:
    """Which sheet the card belongs to, and that it is no more than its card."""
    title = procedure.title
    # Who reads the card alone must see that it was made under rules of the shop.
    rules = f" {RULES.format(rules=title.knowledge_version)}" if procedure.shop_rules else ""
    sheet = GOES_WITH.format(number=title.number, revision=title.revision, checksum=title.checksum)
    # What nobody approved yet says so where it is read, as the footer does.
    standing = "" if title.status == "approved" else f" {title.standing.capitalize()}."
    return f"{sheet}{rules}{standing}", card_of(procedure).pointer


@lru_cache(maxsize=2)
def _style(large: bool) -> Markup:
    def read(name: str) -> str:
        return (templates_folder() / name).read_text(encoding="utf-8")

    return Markup("\n".join([enlarged(read("card.css")), read("card-large.css")]) if large else read("card.css"))


def to_card_markdown(procedure: Procedure) -> str:
    """The card as Markdown: the same words and numbers in the same order."""
    return "\n\n".join(_markdown(procedure)) + "\n"


def _markdown(procedure: Procedure) -> Iterable[str]:
    from tailtrue.render.glossary import terms
    from tailtrue.render.plain import bold, bullets, heading, literal, table

    card = card_of(procedure)
    title = procedure.title
    dials = title.dials
    yield heading(1, f"{TITLE}: {title.machine}")
    yield literal(" ".join(goes_with(procedure)))
    yield bullets(
        f"{bold('DANGER')} {bold(sentence(one.hazard))} {literal(say(one.avoid[0], dials))}" for one in messages(procedure)
    )
    for called in (card.start, *card.besides):
        yield heading(2, called.title)
        yield bullets(f"{literal(line.item)} {bold(line.state)}{_blank(line.unit, dials)}" for line in called.lines)
        yield literal(f"{called.ends_with}.")
    if card.notes:
        yield bullets(f"{bold(say(note.label, dials))}: {literal(say(note.value, dials))}" for note in card.notes)
    rows = [
        (
            literal(f"{block.title} ({block.steps})"), literal(" ".join(filter(None, (say(row.label, dials), row.lever)))),
            "____" if row.write else literal(row.number), literal(row.unit),
        )
        for block in blocks(card, dials, settings_of(procedure.drawings))
        for row in block.rows
    ]  # fmt: skip
    if rows:
        yield table(("Operation (step)", "Set", "Number", "Unit"), rows)
    if mark := by_hand(card):
        yield literal(mark)
    if procedure.look_up is not None:
        yield from _look_up_markdown(procedure.look_up, dials)
    yield heading(2, card.steps_title)
    yield bullets(
        f"{literal(line.step)} {bold(START) + ' ' if line.starts else ''}{literal(line.text)}" for line in card.steps
    )
    yield literal(f"{START} {card.list_first}. {card.ends_with}." if _starts(card) else f"{card.ends_with}.")
    yield bold(card.interrupted)
    yield heading(2, words.HEADINGS["stop_at_once"])
    yield bullets(literal(say(line, dials)) for line in procedure.stop_at_once)
    yield from terms(words.HEADINGS["glossary"], card.glossary, dials)
    yield f"{bold('Emergency')} {literal(card.emergency)}: {bold(phone) if (phone := phone_of(procedure)) else '______'}"


def _blank(unit: str, dials: Dials) -> str:
    """A place for a value; a state is called out and not written."""
    return f" ____ {unit_beside(unit, dials)}" if unit else ""


def _starts(card: Card) -> bool:
    """Whether a line has the mark of a start."""
    return any(line.starts for line in card.steps)


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
