"""The record of a test as it stands in the tree: look-up table of the bar, what is known, and places to write in."""

from typing import Literal

from pydantic import Field

from tailtrue.parts import Figure, Limits, Node, Term, Text

Do = Literal["leave", "again", "move"]
Kind = Literal["blank", "readings", "way", "moves", "wide"]
Part = Literal["set-up", "skim", "measuring", "visit", "moves", "end"]


class Scales(Node):
    """What the scales show: the differences from end to end, the factor of this bar, where the tailstock stays."""

    least: Figure
    most: Figure
    factor: Figure
    leave: Figure
    again: Figure | None


class TableRow(Node):
    """One line of the table: the difference, what to do, the move where there is one."""

    difference: Figure
    do: Do
    move: Figure | None


class Place(Node):
    """A place to write in: what, in which unit, which words to tick, what is planned. Without a unit it takes words.

    What is judged there has its band, what it is read with, and how well that reads.
    """

    label: str
    unit: str = ""
    choices: tuple[str, ...] = ()
    planned: Text = ()
    words: bool = Field(default=False, description="words are written here, and no number")
    kind: Kind = "blank"
    limits: Limits | None = None
    read_with: Text = ()
    resolution: Figure | None = None
    uncertainty: Figure | None = None


class Block(Node):
    """Places that belong together, one under the other, each as often as there are columns."""

    id: str
    title: str
    columns: tuple[str, ...]
    entries: tuple[Place, ...]


class RecordSheet(Node):
    """Everything that stands on the paper. Where nothing can be moved, a move is how far the centre stands off."""

    bar: str
    can_move: bool
    larger_at_tailstock: str
    smaller_at_tailstock: str
    rows: tuple[TableRow, ...]
    scales: Scales
    safety: tuple[Text, ...]
    read: tuple[Text, ...]
    scales_read: tuple[Text, ...]
    cannot: tuple[Text, ...]
    fill: tuple[Text, ...]
    known: tuple[tuple[str, Text], ...]
    places: dict[Part, tuple[Place, ...]]
    verify: tuple[Text, ...]
    blocks: tuple[Block, ...]
    keep: tuple[Text, ...]
    glossary: tuple[Term, ...] = Field(default=(), description="terms that the record uses")
