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
    seen = set(parts)
    if Truth.NO in seen:
        return Truth.NO
    return Truth.UNKNOWN if Truth.UNKNOWN in seen else Truth.YES


def any_of(parts: Iterable[Truth]) -> Truth:
    """Yes as soon as one part is; no when every part is no.

    >>> any_of([Truth.NO, Truth.UNKNOWN])
    <Truth.UNKNOWN: 'unknown'>
    """
    seen = set(parts)
    if Truth.YES in seen:
        return Truth.YES
    return Truth.UNKNOWN if Truth.UNKNOWN in seen else Truth.NO


def negated(part: Truth) -> Truth:
    """No for yes, yes for no; what is not known stays so."""
    return {Truth.YES: Truth.NO, Truth.NO: Truth.YES}.get(part, Truth.UNKNOWN)
