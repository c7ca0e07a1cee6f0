"""The numbers of the card, one a line: their decimal points stand under each other, and their letters fill the page."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from functools import cache
from itertools import combinations_with_replacement, groupby, pairwise
from types import MappingProxyType

from tailtrue.parts import Bound, Dials, Figure, Text
from tailtrue.procedure import Card, CardGroup, LookUp
from tailtrue.render import words
from tailtrue.render.figures.speed_plate import Setting
from tailtrue.render.letters import lines_filled, width
from tailtrue.render.look_up import look_up_columns
from tailtrue.render.numbers import NBSP, Shown, read
from tailtrue.render.paper import unit_beside

_HEADING = 0.8  # height of a heading, in rows
_HEADS = 1.3  # height of the heads of two columns, which take two lines
_WRITTEN = 1.35  # height of a place to write in
_SPLIT = 0.6  # rows that a column may be longer rather than split a block
_WAY = 11.0  # least size of the letters that say a way, in points
_DIGIT = 0.556  # width of a digit, in its size
_SHORT_LEVER = 4  # letters; a longer name stands below the label in letters of its size
_LEVER_GAP = 5.5  # before and after a short one, with its rule, in points
_LEVER_LETTER = 9.5  # least size of the letters of a longer one, in points
_BAR = 7.0  # before the label of what turns, in points
_RULE = 0.4  # between rows, in points
_MOST_SIDES = 3
_MM = 72 / 25.4  # points
Columns = tuple[tuple["Block", ...], ...]


@dataclass(frozen=True)
class Layout:
    """One way to fill the room of the numbers: columns side by side, and the sizes of letters in points."""

    name: str
    columns: int
    rows: float  # that a column has room for
    number: float
    label: float
    column: float  # its width, in points
    unit: float  # width of the units
    lead: float = 0.86  # height of the line of a number, in its size

    @property
    def pitch(self) -> float:
        """From a row to the next, with its rule, in points."""
        return self.number * self.lead + _RULE


# The largest that holds a job is taken. Seventeen points are read from where the operator stands.
LAYOUTS = (
    Layout("one n26", 1, 22.5, 26, 14, 334, 48),
    Layout("one n24", 1, 24.5, 24, 14, 334, 48),
    Layout("one n22", 1, 26.8, 22, 14, 334, 48),
    Layout("one n20", 1, 29.5, 20, 14, 334, 48),
    Layout("one n18", 1, 33.0, 18, 14, 334, 48),
    Layout("two n17", 2, 35.7, 17, 9.5, 166, 34),
    Layout("two n17 tight", 2, 38.3, 17, 9.5, 166, 34, 0.80),
)


# Large print: its sides follow each other, two columns on each.
LARGE = Layout("", 2, 22.0, 26, 16, 255, 60)


@dataclass(frozen=True)
class Row:
    """One number: its digits, its unit, and how many digits are wanting to its right to stand under the others.

    Without a number it is a line of words, or a place to write in.
    """

    label: Text
    number: str
    unit: str
    wanting: float = 0.0
    height: float = 1.0  # in rows of a label of one line
    lever: str = ""  # how lever or belt stands, the end of the label
    speed: bool = False
    large: bool = False  # the label is a number too
    cell: str = ""  # words in the place of a number
    write: bool = False  # a place to write in stands there
    bound: Bound = "nearest"  # whether it is the least or the most that may be

    def ends(self, before: "Row") -> bool:
        """Whether this is the most of what the row before has the least of: nothing parts the two."""
        return (before.bound, self.bound) == ("least", "most")

    @property
    def lever_in_words(self) -> bool:
        """Whether lever or belt has a name that is too long to stand between label and number."""
        return len(self.lever) > _SHORT_LEVER

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
    heads: tuple[str, ...] = ()  # over the two columns of a table that is looked up; they take the place of the title

    @property
    def heading(self) -> float:
        """The height of what stands over the rows, in rows."""
        return _HEADS if self.heads else _HEADING if self.title else 0.0


def blocks(
    card: Card, dials: Dials, settings: Mapping[Setting, str] = MappingProxyType({}), look_up: LookUp | None = None
) -> tuple[Block, ...]:
    """The groups of a card and the look-up table, set so that decimal points stand under each other all over the card.

    `settings` say how lever or belt stands for the speed of a work.
    """
    made = [_block(group, dials, settings) for group in card.groups]
    made += _moves(look_up, dials) if look_up else []
    most = max((_decimals(row.number) for block in made for row in block.rows), default=0)
    return tuple(
        replace(
            block, rows=tuple(replace(row, wanting=_wanting(row.number, most)) if row.number else row for row in block.rows)
        )
        for block in made
    )


def _block(group: CardGroup, dials: Dials, settings: Mapping[Setting, str]) -> Block:
    rows: list[Row] = []
    last: Figure | None = None
    for line in group.lines:
        label, size = line.label, None
        if len(label) > 1 and isinstance(label[-1], Figure):
            # What runs at a speed, a drill, is a number of its own; several at one speed stand under it.
            label, size = (words.SPEED_OF_IT,), _size(label, dials)
        if size is None or line.value != last:
            one = read(line.value, dials)
            speed = line.value.rounding == "speed"
            lever = settings.get((line.value.fact, line.value.value), "")
            rows.append(Row(label, one.number, one.unit, lever=lever, speed=speed, bound=line.value.bound))
        last = None
        if size is not None:
            rows.append(size)
            last = line.value
    rows += [Row((place.label,), "", unit_beside(place.unit, dials), height=_WRITTEN, write=True) for place in group.places]
    steps = (*(line.step for line in group.lines), *(place.step for place in group.places))
    return Block(group.title, ", ".join(dict.fromkeys(steps)), tuple(rows))


def _size(label: Text, dials: Dials) -> Row:
    """The size at the end of a label as a row; of a tool it is a word that ends with its unit."""
    *name, figure = label
    shown = read(figure, dials) if isinstance(figure, Figure) else Shown("", "")
    number, _, unit = shown.number.replace(NBSP, " ").partition(" ")
    return Row(tuple(name), number, shown.unit or unit)


def _moves(look_up: LookUp, dials: Dials) -> list[Block]:
    """The way in each case, and the look-up table: a difference, and the move for it.

    What is left alone and what is read again stand at its top, each as one band with its limit.
    """
    differences, moves = look_up_columns(look_up, dials)
    ways = [Row((f"{case}: {way}",), "", "") for case, way in words.directions(look_up)]
    ways += [Row(text, "", "") for text in words.when_to_leave(look_up) if not look_up.verdict_possible]
    rows = [
        Row((f"{word} ", read(limit, dials).number), "", "", large=True, cell=cell)
        for word, limit, cell in words.bands(look_up)
    ]
    for difference, move in zip(differences.numbers, moves.numbers, strict=True):
        if move is not None and move != words.READ_AGAIN:
            rows.append(Row((str(difference),), move, "", large=True))
    heads = (f"{words.DIFFER},{NBSP}{differences.unit}", f"{words.second_column(look_up)[1]}, {moves.unit}")
    return [Block("", "", tuple(ways)), Block("", "", tuple(rows), heads)]


def _decimals(number: str) -> int:
    return len(number.partition(".")[2])


def _wanting(number: str, most: int) -> float:
    """The digits wanting after a number; a decimal point is half as wide as a digit.

    >>> _wanting("0.050", 3), _wanting("0.05", 3), _wanting("450", 3), _wanting("450", 0)
    (0.0, 1.0, 3.5, 0.0)
    """
    missing = most - _decimals(number)
    return missing + (0.5 if most and "." not in number else 0.0)


def laid_out(made: tuple[Block, ...], dials: Dials, more: float = 0.0) -> tuple[Layout, Columns]:
    """The largest letters that hold every number, else the smallest, and the blocks in columns.

    There is so much more room than usual, in mm, or less.
    """
    for layout in LAYOUTS:
        columns = side_by_side(tuple(_sized(block, layout, dials) for block in made), layout.columns)
        if room_below(layout, columns, more) >= 0:
            break
    return layout, columns


def with_key(made: tuple[Block, ...]) -> tuple[tuple[Row, ...], tuple[Block, ...]]:
    """The long names of settings told once, each beside its speed, and the blocks without them."""
    told = {(row.number, row.unit): row for block in made for row in block.rows if row.lever_in_words}
    plain = tuple(
        replace(block, rows=tuple(replace(row, lever="") if row.lever_in_words else row for row in block.rows))
        for block in made
    )
    rows = sorted(told.values(), key=lambda row: float(row.number))
    return tuple(Row((row.lever,), row.number, row.unit) for row in rows), plain


def large_sides(made: tuple[Block, ...], dials: Dials) -> tuple[tuple[tuple[Block, ...], ...], ...]:
    """The blocks in large print: as few sides as hold them, each with its columns."""
    sized = tuple(_sized(block, LARGE, dials) for block in made)
    sides = 1
    while room_below(LARGE, columns := side_by_side(sized, sides * LARGE.columns)) < 0 and sides < _MOST_SIDES:
        sides += 1
    return tuple(columns[at : at + LARGE.columns] for at in range(0, len(columns), LARGE.columns))


def room_below(layout: Layout, columns: Columns, more: float = 0.0) -> float:
    """The rows that are free below the longest column, with so many mm more or less than usual."""
    return layout.rows + more * _MM / layout.pitch - max((_length(column) for column in columns), default=0.0)


def _length(column: tuple[Block, ...]) -> float:
    return sum(block.heading + sum(row.height for row in block.rows) for block in column)


def _sized(block: Block, layout: Layout, dials: Dials) -> Block:
    """Rows with their heights: a long label has more than one line."""
    widest = max((len(row.number) + row.wanting for row in block.rows if row.number), default=0.0)
    beside = layout.column - layout.unit - widest * _DIGIT * layout.number - 6
    return replace(block, rows=tuple(replace(row, height=_height(row, layout, beside, dials)) for row in block.rows))


def _height(row: Row, layout: Layout, beside: float, dials: Dials) -> float:
    if not (row.number or row.cell or row.write):
        return _height_of_words(row, layout, dials)
    room = beside if row.number or row.write else layout.column - 6
    if row.lever and not row.lever_in_words:
        room -= width(row.lever, bold=True) * layout.number + _LEVER_GAP
    said = "".join(piece if isinstance(piece, str) else read(piece, dials).whole for piece in row.label)
    said += f", {row.unit}" if row.write else ""
    lines = lines_filled(map(width, said.split()), room / layout.label) * layout.label / layout.pitch
    if row.lever_in_words:
        # A row that turns has a bar before its label; the lever goes on in the line of the label.
        size = max(_LEVER_LETTER, layout.label)
        wide = [width(word, bold=True) for word in f"{said}: {row.lever}".split()]
        lines = lines_filled(wide, (room - _BAR) / size) * size * 1.02 / layout.pitch
    return max(_WRITTEN if row.write else 1.0, lines)


def _height_of_words(row: Row, layout: Layout, dials: Dials) -> float:
    """Words alone are bold, in letters of their own size; a figure among them makes its line as high as a number."""
    size = max(_WAY, layout.label)
    said = "".join(piece if isinstance(piece, str) else read(piece, dials).whole for piece in row.label)
    lines = lines_filled((width(word, bold=True) for word in said.split()), (layout.column - 6) / size)
    figures = sum(isinstance(piece, Figure) for piece in row.label)
    return (lines * size * 1.05 + figures * max(0.0, layout.number * 0.9 - size * 1.05)) / layout.pitch


def side_by_side(made: tuple[Block, ...], columns: int) -> tuple[tuple[Block, ...], ...]:
    """The blocks in columns, in order, cut so that the longest column is short and few blocks go on in the next one."""
    rows = [(place, row) for place, block in enumerate(made) for row in block.rows]

    @cache  # the same stretches come back in most of the cuts
    def length(start: int, end: int) -> float:
        return sum(row.height for _, row in rows[start:end]) + sum(
            made[place].heading for place in {place for place, _ in rows[start:end]}
        )

    def cost(cut: tuple[int, ...]) -> float:
        split = sum(1 for at in cut if 0 < at < len(rows) and rows[at - 1][0] == rows[at][0])
        return max(length(start, end) for start, end in pairwise((0, *cut, len(rows)))) + _SPLIT * split

    whole = [at for at in range(len(rows) + 1) if not (0 < at < len(rows) and rows[at][1].ends(rows[at - 1][1]))]
    cut = min(combinations_with_replacement(whole, columns - 1), key=cost)
    return tuple(tuple(_regrouped(made, rows[start:end])) for start, end in pairwise((0, *cut, len(rows))))


def _regrouped(made: tuple[Block, ...], rows: list[tuple[int, Row]]) -> Iterator[Block]:
    for place, group in groupby(rows, key=lambda pair: pair[0]):
        yield replace(made[place], rows=tuple(row for _, row in group))
