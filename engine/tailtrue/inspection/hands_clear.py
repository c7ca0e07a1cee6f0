"""Where the tool stands while hands are at the work: carriage back, saddle free or locked, no drill in the quill."""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Placed, Sheet
from tailtrue.inspection.spelt import BY_TOP_SLIDE, words_of

_HANDS = frozenset(
    {
        "grip-in-chuck", "grip-in-collet", "grip-in-soft-jaws", "mount-on-stub", "spacer-behind-work", "jaw-change",
        "plug-in-jaws", "plug-out", "mount-between-centres",
    }
)  # fmt: skip
_DRILLS = frozenset({"drill", "centre-drill"})
# The saddle travels in these cuts. In the others the top slide sets the depth, and a saddle that creeps digs the tool in.
_ALONG = frozenset({"skim", "power-feed", "bore", "first-cut-raw", "turn-stub", "bore-jaws"})

# What moves, as a step says it. The order of the words in a step is the order of the work.
_SAID = (
    ("lock", re.compile(r"\block the saddle\b", re.IGNORECASE)),
    ("free", re.compile(r"\bunlock the saddle\b", re.IGNORECASE)),
    ("back", re.compile(r"\brun the carriage back\b|\bwind the saddle (?:well )?clear\b", re.IGNORECASE)),
    ("near", re.compile(r"\bwind the saddle (?:by hand )?(?:from|up)\b|\btool at (?:its nearest|each)\b", re.IGNORECASE)),
    ("near", re.compile(r"\bwind the boring bar through\b", re.IGNORECASE)),
    ("empty", re.compile(r"\btake [^.]*\bout of the quill\b", re.IGNORECASE)),
)
_PART = (
    r"(?:(?:bar|collar|blank|piece|work|slug|casting|stub|plug|spacer)s?\b"
    r"|jaws?\b|dog\b|end [AB]\b|(?<!drill )(?<!its )chuck\b)"
)
_HAND = re.compile(
    rf"\b(?:grip|take|lift|hold|pull|push|put|slide|seat|mount|tap|tighten|ease|open|close|fit) (?:[\w-]+ ){{0,4}}?{_PART}"
    r"|\btighten [^.]*\bkey positions?\b|\bfeel the tailstock centre\b",
    re.IGNORECASE,
)
_FILE = re.compile(r"\bwith (?:a|the) (?:\w+ )?file\b|(?:^|[.] )File\b")
_BENCH = re.compile(r"\bbench\b|\bvice\b", re.IGNORECASE)


@dataclass
class _Lathe:
    """What is known of the carriage and the quill; nothing is, until a step says it."""

    locked: bool = False
    back: bool = False
    drill: bool = False

    def do(self, what: str) -> None:
        """One move that a step asks for."""
        if what in ("lock", "free"):
            self.locked = what == "lock"
        elif what in ("back", "near"):
            self.back = what == "back"
        else:
            self.drill = False


def hands_clear(sheet: Sheet) -> Iterator[Fault]:
    """Before a hand goes to the chuck or between the centres the carriage is back and no drill is in the quill."""
    lathe, found = _Lathe(), {}
    for placed in sheet.worked:
        words = placed.words
        hand = _HANDS & set(placed.step.activities) and placed.step.machine != "turning"
        moves = _moves(words)
        at = _first_hand(words, moves)
        for place, what in moves:
            if place < at:
                lathe.do(what)
        if hand and not lathe.back:
            found[Fault(placed.where, "hands go to the work, and nothing has run the carriage back since the last cut")] = 0
        if hand and lathe.drill:
            found[Fault(placed.where, "hands go to the work, and a drill still stands in the quill")] = 0
        for place, what in moves:
            if place >= at:
                lathe.do(what)
        if placed.step.machine == "turning":
            if _DRILLS & set(placed.step.activities):
                lathe.drill = True
            else:
                lathe.back = False
    yield from found


def drill_out_of_the_quill(sheet: Sheet) -> Iterator[Fault]:
    """No tool but the drill itself cuts while a drill stands in the quill, its point toward the arm."""
    lathe, found = _Lathe(), {}
    for placed in sheet.worked:
        for _, what in _moves(placed.words):
            lathe.do(what)
        if placed.step.machine != "turning":
            continue
        if _DRILLS & set(placed.step.activities):
            lathe.drill = True
        elif lathe.drill:
            found[Fault(placed.where, "another tool cuts, and a drill still stands in the quill")] = 0
    yield from found


def saddle_as_the_cut_asks(sheet: Sheet) -> Iterator[Fault]:
    """The saddle is locked where the top slide sets the depth, free where the cut runs along, and free when it is wound."""
    lathe, found = _Lathe(), {}
    for placed in sheet.worked:
        for _, what in _moves(placed.words):
            if lathe.locked and what in ("back", "near") and not _nearest(placed):
                found[Fault(placed.where, "the carriage is wound, and the saddle is locked")] = 0
            lathe.do(what)
        if placed.step.machine != "turning":
            continue
        by_top_slide = any(BY_TOP_SLIDE.search(words_of(line.label, "#")) for line in placed.step.settings)
        if by_top_slide and not lathe.locked:
            found[Fault(placed.where, "the top slide sets the depth, and the saddle is not locked")] = 0
        if lathe.locked and not by_top_slide and _ALONG & set(placed.step.activities):
            found[Fault(placed.where, "the cut runs along the bed, and the saddle is still locked")] = 0
    yield from found


def filed_off_the_lathe(sheet: Sheet) -> Iterator[Fault]:
    """A file is used at the bench; what is filed has left the lathe."""
    for placed in sheet.steps:
        words = placed.words
        for one in _FILE.finditer(words):
            end = words.find(".", one.end())
            if not _BENCH.search(words[: end if end >= 0 else len(words)]):
                yield Fault(placed.where, "a file is used, and nothing says that it is used at the bench")


def _first_hand(words: str, moves: tuple[tuple[int, str], ...]) -> int:
    """Where in a step a hand first goes to the work; where no word tells, before the tool comes near."""
    first = _HAND.search(words)
    return first.start() if first else next((place for place, what in moves if what == "near"), len(words))


def _nearest(placed: Placed) -> bool:
    # A look round at a start check leaves the saddle where it is.
    return "start-check" in placed.step.activities


@lru_cache(maxsize=4096)
def _moves(words: str) -> tuple[tuple[int, str], ...]:
    return tuple(sorted((one.start(), what) for what, pattern in _SAID for one in pattern.finditer(words)))
