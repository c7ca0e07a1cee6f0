"""The nearest known word to one that is not known, whatever its capitals, hyphens or underscores."""

import difflib
import re
from collections.abc import Iterable

_MOST_LISTED = 12


def closest(word: str, known: Iterable[str], sure: float = 0.6) -> str | None:
    """The known word that looks most like this one, or nothing when none comes near.

    >>> closest("Cam lock", ["threaded", "cam-lock"])
    'cam-lock'
    """
    plain = {_plain(one): one for one in known}
    found = difflib.get_close_matches(_plain(word)[:80], list(plain), n=1, cutoff=sure)
    return plain[found[0]] if found else None


def one_of(words: Iterable[str]) -> str:
    """A list of words as a sentence has it.

    >>> one_of(["A", "B", "C"])
    'A, B or C'
    """
    listed = list(words)
    return listed[0] if len(listed) == 1 else f"{', '.join(listed[:-1])} or {listed[-1]}"


def some_of(words: Iterable[str]) -> str:
    """A list of words cut to what one reads, with how many more there are.

    >>> some_of(["A", "B"])
    'A, B'
    """
    listed = list(words)
    shown = ", ".join(listed[:_MOST_LISTED])
    more = len(listed) - _MOST_LISTED
    return f"{shown} and {more} more" if more > 0 else shown


def _plain(word: str) -> str:
    return re.sub(r"[\s_-]+", "-", word.strip().casefold())
