"""The record of work that is no test of the tailstock, as a part of the tree: sides, tables, places to write in."""

from pydantic import Field

from tailtrue.parts import Figure, Node, Term, Text
from tailtrue.record_sheet import Block


class Way(Node):
    """What was read, and on which side something stands or is set."""

    case: Text
    side: Text


class LookLine(Node):
    """One line of a table: its numbers under the heads, and what it says in words."""

    cells: tuple[Figure | None, ...]
    says: str | None = None


class LookTable(Node):
    """What is read, and what follows; the last head is that of the words, where a table has them."""

    id: str
    title: str
    heads: tuple[Text, ...]
    says: str | None = Field(default=None, description="head of the words of each line, where there are any")
    lines: tuple[LookLine, ...]


class WorkRecord(Node):
    """Everything that stands on the paper."""

    id: str = Field(description="the route that it belongs to")
    title: str
    of: str = Field(description="what the record is of: a bar, a lathe, a piece")
    subject: str
    safety: tuple[Text, ...]
    ways: tuple[Way, ...]
    tables: tuple[LookTable, ...]
    told: tuple[Text, ...] = Field(description="how the tables are read, and what they cannot tell")
    fill: tuple[Text, ...]
    known: tuple[tuple[str, Text], ...]
    blocks: tuple[Block, ...]
    verify: tuple[Text, ...]
    keep: tuple[Text, ...]
    log: tuple[Text, ...]
    glossary: tuple[Term, ...] = Field(default=(), description="terms that the record uses")
