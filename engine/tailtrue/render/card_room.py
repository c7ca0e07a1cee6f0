"""How the card fills its one side: sizes of letters, where notes, words of the trade and names of settings stand."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import product
from textwrap import wrap

from tailtrue.parts import Dials
from tailtrue.procedure import Card
from tailtrue.render.card_rows import Block, Columns, Layout, Row, laid_out, room_below, with_key
from tailtrue.render.letters import lines_filled, width
from tailtrue.render.words import say

_MM = 72 / 25.4  # points
_NOTE = 1.1  # height of a note under the numbers, in rows
# Heights of what stands beside the numbers, in mm: headings and box, a list that is called and a line of it, a step and a
# second line of it, a line of a note; and the letters that a line holds.
_LISTS, _CALLED, _CALL, _STEP, _STEP_LINE, _NOTE_LINE = 25.0, 11.5, 4.4, 5.25, 3.4, 3.9
_NOTE_LETTERS, _STEP_LETTERS = 40, 38
_FULL = 198.0  # above this the notes leave the lists, where the numbers have room for them
_ROOM = 201.0  # what numbers and lists, settings and words below them share with three lines of dangers, in mm
_USUAL = 189.0  # of that, what the rows of a layout are reckoned for
_DANGER, _DANGER_LETTER, _DANGER_ROOM = 3.75, 9.5, 160.0  # height of a line, size of its letters in points, its width in mm
_DANGERS = 3
_WORD, _WORD_LINE, _BESIDE, _BELOW = 9.0, 3.28, 63.0, 184.0  # size of the letters, a line of them, its width in both places
_NAME, _NAME_LINE, _NAME_ROOM = 9.5, 3.5, 38.0  # size of the letters of the name of a setting, its line, its width
_SETTING, _RULE = 5.6, 0.5  # height of the number beside it, and of what is round both
SETTINGS_ABREAST = 3
START = "\u25ba"  # before a line on whose way the spindle turns


@dataclass(frozen=True)
class Side:
    """What stands where on the one side."""

    layout: Layout
    columns: Columns
    settings: tuple[Row, ...] = ()  # names of lever or belt that stand once for each speed, over the whole width
    notes_left: bool = False  # under the numbers
    words_beside: bool = False
    words_below: bool = False
    fits: bool = True


def one_side(card: Card, made: tuple[Block, ...], dials: Dials, dangers: Iterable[str], notes: Sequence[str]) -> Side:
    """The largest letters that leave the card on one side, `dangers` and `notes` being told above and below the numbers.

    Long names of settings go to a table of their own before the words of the trade, which the sheet tells, are left out.
    """
    room = _ROOM - _DANGER * (_lines(dangers, _DANGER_LETTER, _DANGER_ROOM, bold=True) - _DANGERS)
    words = " ".join(f"{term.term} {say(term.meaning, dials)}" for term in card.glossary)
    keyed = tuple(dict.fromkeys([((), made), with_key(made)]))
    for explained, (settings, blocks), beside in product((words, ""), keyed, (True, False)):
        below = 0.0 if beside else _WORD_LINE * _lines([explained], _WORD, _BELOW)
        left = room - _strip(settings) - below
        layout, columns = laid_out(blocks, dials, left - _USUAL)
        free = room_below(layout, columns, left - _USUAL)
        notes_left = _list_height(card, notes) > min(left, _FULL) and free >= _NOTE * len(card.notes)
        lists = _list_height(card, () if notes_left else notes)
        lists += _WORD_LINE * _lines([explained], _WORD, _BESIDE) if beside else 0.0
        if free >= 0 and lists <= left:
            return Side(layout, columns, settings, notes_left, beside and bool(explained), bool(below))
    settings, blocks = keyed[-1]
    layout, columns = laid_out(blocks, dials, _ROOM)  # one side does not hold it: the card says so
    return Side(layout, columns, settings, words_below=bool(words), fits=False)


def _lines(texts: Iterable[str], letter: float, room: float, *, bold: bool = False) -> int:
    """The lines that texts take, each from a new line; size of the letters in points, room in mm."""
    wide = room * _MM / letter
    return sum(lines_filled((width(word, bold=bold) for word in text.split()), wide) for text in texts)


def _list_height(card: Card, notes: Iterable[str]) -> float:
    """How high the lists stand, in mm, with these notes below them."""
    lines = sum(len(wrap(note, _NOTE_LETTERS)) for note in notes)
    called = sum(_CALLED + _CALL * len(one.lines) for one in (card.start, *card.besides))
    again = sum(len(wrap(f"{START * line.starts}{line.text} {line.step}", _STEP_LETTERS)) - 1 for line in card.steps)
    return _LISTS + called + _STEP * len(card.steps) + _STEP_LINE * again + _NOTE_LINE * lines


def _strip(settings: tuple[Row, ...]) -> float:
    """How high the table of the names of settings stands, in mm."""
    names = [_NAME_LINE * _lines(["".join(map(str, row.label))], _NAME, _NAME_ROOM, bold=True) for row in settings]
    abreast = (names[at : at + SETTINGS_ABREAST] for at in range(0, len(names), SETTINGS_ABREAST))
    return sum(_RULE + max(_SETTING, *row) for row in abreast)
