"""What a fact is: its name, kind, unit, choices and words, wherever its value comes from."""

import difflib
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from typing import Any, Literal

Kind = Literal["quantity", "choice", "yes-no", "text", "count", "date", "records", "record", "quantities", "texts"]
Comes = Literal["given", "computed", "decided", "limit"]

Value = Any  # float, str, bool, int, tuple of these, or a mapping for a record


@dataclass(frozen=True)
class FactSpec:
    """The catalogue entry of one fact. `names` spell choices that lose a comma or a capital as ids.

    `as_said`: the rules picked the thing, and the number is the one that the user said of it.
    """

    name: str
    kind: Kind
    label: str
    comes: Comes
    unit: str = ""
    rounding: str = "ratio"
    bound: str = "nearest"
    choices: tuple[str, ...] = ()
    least: float | None = None
    most: float | None = None
    fields: Mapping[str, "FactSpec"] = field(default_factory=dict)
    where: str = ""
    how: str = ""
    sources: tuple[str, ...] = ()
    names: Mapping[str, str] = field(default_factory=dict)
    as_said: bool = False

    @property
    def is_number(self) -> bool:
        """Whether values can be compared by size."""
        return self.kind in ("quantity", "count")


@dataclass(frozen=True)
class Settable:
    """A computed number that a user may set by hand, and what it is held against.

    `safe` is the side to which it may go from what is worked out; without it the two bounds alone hold. `one_of` names a
    list of a user's file that it must be taken from, where the list was given; `whole` a size that it must hold a whole
    number of times.
    """

    fact: str
    unit: str
    least: float
    most: float
    safe: Literal["lower", "higher", ""]
    at_least: tuple[str, ...]
    at_most: tuple[str, ...]
    one_of: str
    whole: str
    why: str
    sources: tuple[str, ...]
    where: str


@dataclass(frozen=True)
class SetByHand:
    """A number that a user put in place of the computed one, with reason and initials."""

    fact: str
    value: float
    said: str
    reason: str
    initials: str
    where: str


@dataclass(frozen=True)
class Fact:
    """A value that is known, and what it was made from.

    Of a list that was said, `inside` holds place and words of each field, by number of the entry and key. `how` tells the
    way that was taken, where the fact can come about in several; the catalogue tells them all. `as_said`: the number is the
    one that the user said.
    """

    spec: FactSpec
    value: Value
    read: tuple[str, ...] = ()
    sources: tuple[str, ...] = ()
    limited_by: str = ""
    weighed: tuple[tuple[float, str], ...] = ()
    said: str = ""
    where: str = ""
    inside: Mapping[tuple[int, str], tuple[str, str]] = field(default_factory=dict)
    by_hand: SetByHand | None = None
    worked_out: Value = None
    how: str = ""
    as_said: bool = False

    @property
    def name(self) -> str:
        """The fact's name."""
        return self.spec.name

    @property
    def unsaid(self) -> bool:
        """Whether the user's files leave it out, and a usual value stands in for it."""
        return self.spec.comes == "given" and self.where.startswith("knowledge/")


@dataclass(frozen=True)
class NotKnown:
    """A value that is not known: which facts are missing, or what made it impossible to compute.

    `unlisted` is what a table has no row for, without the table: which fact asked which is for those who keep the tables.
    """

    spec: FactSpec
    missing: tuple[str, ...] = ()
    trouble: str = ""
    read: tuple[str, ...] = ()
    unlisted: str = ""


def nearest(name: str, known: Iterable[str]) -> str | None:
    """The known name that looks most like a misspelt one.

    >>> nearest("bar.lenght", ["bar.length", "bar.mass"])
    'bar.length'
    """
    found = difflib.get_close_matches(name, list(known), n=1, cutoff=0.6)
    return found[0] if found else None
