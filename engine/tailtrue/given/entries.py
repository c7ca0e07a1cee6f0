"""The catalogue of given facts: what a user may say, in which file, what is plausible, and how it is found out."""

from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass, field

from tailtrue.facts import FactSpec, Settable
from tailtrue.given.references import References
from tailtrue.given.shapes import Ask
from tailtrue.given.toml_file import TomlFile

FILES = ("job", "lathe", "crib", "stock")
DOES = "job.do"


@dataclass(frozen=True)
class Refers:
    """Where a word must be found: a column of a table, or a list in the user's own files."""

    table: str
    column: str
    role: str = ""
    also: str = ""

    @property
    def in_own_files(self) -> bool:
        """Whether this points into the user's files: those names have a dot, tables have a stroke."""
        return "." in self.table


@dataclass(frozen=True)
class Range:
    """Two quantities that go together, the smaller first."""

    low: str
    high: str


@dataclass(frozen=True)
class Ways:
    """Ways to say one thing; exactly one is taken, or one at least where `several` go together."""

    label: str
    ways: tuple[tuple[str, ...], ...]
    several: bool = False

    def names(self) -> tuple[str, ...]:
        """Every fact of every way."""
        return tuple(name for way in self.ways for name in way)

    def in_words(self) -> str:
        """The ways as a sentence has them, without the names of files."""
        return " or ".join(" and ".join(name.rsplit(".", 1)[-1] for name in way) for way in self.ways)


@dataclass(frozen=True)
class Spared:
    """What need not be said by a job that does one of these things and says all of `said`."""

    facts: tuple[str, ...]
    do: tuple[str, ...]
    said: tuple[str, ...] = ()


@dataclass(frozen=True)
class ReadTogether:
    """Lists of readings of one piece, the instruments that they are read with, and how far one may stand apart, in mm."""

    lists: tuple[str, ...]
    read_with: str
    apart: float


@dataclass(frozen=True)
class GivenFact:
    """One fact a user gives, or one field of a record."""

    spec: FactSpec
    ask: Ask
    typical: str = ""
    if_missing: str = ""
    default: str | bool | None = None
    least_said: str = ""
    most_said: str = ""
    words: tuple[str, ...] = ()
    reads_as: str = ""
    refers: Refers | None = None
    fewest: int = 1
    unique: bool = False
    never_from_class: bool = False
    most_words: int = 0  # of a text; nought for any number
    changes: str = ""
    words_if: str = ""  # when one of the words may be written
    owned: bool = False  # the size of a thing that is there: nobody changes it to get another result
    lever: str = "any"  # to which side somebody changes it to be rid of a refusal: any, more, less, none
    read_from: str = ""  # where alone it is read: no number is offered to copy
    typical_inch: str = ""  # where inch things are not metric ones converted: a division, a resolution
    stands_for: str = ""
    fields: Mapping[str, "GivenFact"] = field(default_factory=dict)
    one_way: tuple[Ways, ...] = ()
    ranges: tuple[Range, ...] = ()

    @property
    def file(self) -> str:
        """The kind of file it stands in."""
        return self.spec.name.split(".", 1)[0]

    @property
    def key(self) -> str:
        """Its key in that file."""
        return self.spec.name.rsplit(".", 1)[-1]

    def as_written(self, said: str) -> str | int:
        """What was said of it as a file has it: a count bare, anything else as a text."""
        return int(said) if self.spec.kind == "count" else said


@dataclass(frozen=True)
class MachineClass:
    """A class of lathes: what its owner may leave unsaid."""

    id: str
    label: str
    note: str
    sources: tuple[str, ...]
    file: TomlFile


@dataclass(frozen=True)
class Catalogue:
    """Every given fact, what ties facts together, the classes of lathes, and the tables that words must be found in.

    `settable` are the computed numbers that a job may set by hand, `worked_out` the names of all computed facts.
    """

    facts: Mapping[str, GivenFact]
    one_way: tuple[Ways, ...]
    ranges: tuple[Range, ...]
    together: tuple[tuple[str, ...], ...]
    entry_for_entry: tuple[tuple[str, str], ...]
    classes: Mapping[str, MachineClass]
    references: References
    settable: Mapping[str, Settable] = field(default_factory=dict)
    worked_out: frozenset[str] = frozenset()
    read_together: tuple[ReadTogether, ...] = ()
    spared: tuple[Spared, ...] = ()

    def specs(self) -> Mapping[str, FactSpec]:
        """The catalogue entry of every given fact by name."""
        return {name: fact.spec for name, fact in self.facts.items()}

    def of_file(self, file: str) -> dict[str, GivenFact]:
        """The facts of one kind of file by key."""
        return {fact.key: fact for fact in self.facts.values() if fact.file == file}

    def ways_of(self, file: str) -> Iterator[Ways]:
        """What must be said in one way, for one kind of file."""
        return (ways for ways in self.one_way if ways.names()[0].startswith(f"{file}."))

    def spared_in(self, does: str, said: Collection[str]) -> frozenset[str]:
        """The facts that a job of this kind need not say, which says these."""
        holding = (one for one in self.spared if does in one.do and set(one.said) <= set(said))
        return frozenset(name for one in holding for name in one.facts)

    def ever_spared(self) -> frozenset[str]:
        """The facts that some job need not say."""
        return frozenset(name for one in self.spared for name in one.facts)
