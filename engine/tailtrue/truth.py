"""Three truths: yes, no, and not known (Kleene's strong logic)."""

from collections.abc import Iterable
from enum import StrEnum


class Truth(StrEnum):
    """The truth of a condition."""

    YES = "yes"
    NO = "no"
    UNKNOWN = "unknown"

    @classmethod
    def of(cls, held: bool) -> "Truth":
        """Yes or no for a plain comparison."""
        return cls.YES if held else cls.NO


def all_of(parts: Iterable[Truth]) -> Truth:
    """Yes when every part is; no as soon as one is no, whatever is not known.

    >>> all_of([Truth.YES, Truth.UNKNOWN])
    <Truth.UNKNOWN: 'unknown'>
    >>> all_of([Truth.NO, Truth.UNKNOWN])
    <Truth.NO: 'no'>
    """
    found = Truth.YES
    for part in parts:
        if part is Truth.NO:
            return part
        if part is Truth.UNKNOWN:
            found = part
    return found


def any_of(parts: Iterable[Truth]) -> Truth:
    """Yes as soon as one part is; no when every part is no.

    >>> any_of([Truth.NO, Truth.UNKNOWN])
    <Truth.UNKNOWN: 'unknown'>
    """
    found = Truth.NO
    for part in parts:
        if part is Truth.YES:
            return part
        if part is Truth.UNKNOWN:
            found = part
    return found


def negated(part: Truth) -> Truth:
    """No for yes, yes for no; what is not known stays so."""
    if part is Truth.UNKNOWN:
        return part
    return Truth.NO if part is Truth.YES else Truth.YES
