"""The nearest known word to one that is not known, whatever its capitals, hyphens or underscores."""

import difflib
import re
from collections.abc import Iterable

_MOST_LISTED = 12
_MOST_NEAR = 12
_SURE = 0.6
_SURE_OF_NUMBERS = 0.3
_NUMBER = re.compile(r"[0-9]+(?:\.[0-9]+)?")


def closest(word: str, known: Iterable[str], sure: float = _SURE) -> str | None:
    """The known word that looks most like this one, or nothing when none comes near.

    A number in a word weighs more than its letters: of words as near, those with the same numbers come first, then those
    whose numbers are nearest.

    >>> closest("Cam lock", ["threaded", "cam-lock"])
    'cam-lock'
    >>> closest("2MT", ["MT1", "MT2", "MT3", "MT4"])
    'MT2'
    """
    asked = _plain(word)[:80]
    plain = {_plain(one): one for one in known}
    # The letters of a word with numbers may stand about them in another order.
    cutoff = _SURE_OF_NUMBERS if sure <= _SURE and _numbers(asked) else sure
    near = difflib.get_close_matches(asked, list(plain), n=_MOST_NEAR, cutoff=cutoff)
    alike = {one: difflib.SequenceMatcher(None, one, asked).ratio() for one in near}
    fit = [one for one in near if alike[one] >= sure or _numbers(one) == _numbers(asked)]
    best = min(fit, key=lambda one: (*_apart(_numbers(one), _numbers(asked)), -alike[one]), default=None)
    return None if best is None else plain[best]


def _numbers(word: str) -> tuple[float, ...]:
    return tuple(float(number) for number in _NUMBER.findall(word))


def _apart(found: tuple[float, ...], asked: tuple[float, ...]) -> tuple[bool, float]:
    if not asked or len(found) != len(asked):
        return bool(asked), 0.0
    return found != asked, sum(abs(one - other) for one, other in zip(found, asked, strict=True))


def all_of(words: Iterable[str]) -> str:
    """A list of words that belong together, as a sentence has it.

    >>> all_of(["A", "B", "C"])
    'A, B and C'
    """
    listed = list(words)
    return listed[0] if len(listed) == 1 else f"{', '.join(listed[:-1])} and {listed[-1]}"


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
