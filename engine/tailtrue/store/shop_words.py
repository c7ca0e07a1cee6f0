"""What a shop writes, held as shipped texts are: orders that begin with what to do, no vague word, no act that maims."""

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import NamedTuple

from tailtrue.errors import Problem
from tailtrue.store.overlay_models import AddFile, RewordFile
from tailtrue.store.reading_ease import (
    MOST_IN_REASON,
    VAGUE,
    VERBS,
    first_word,
    long_sentences,
    sentences,
    vague_problems,
)
from tailtrue.tables import Table
from tailtrue.wording import Wording

ACTS = "words/shop_acts"
_ANY = "*"
# These say that a control is left out. They hold against a ban too, and in a text that only tells.
_AGAINST_CONTROLS = ("allowed", "forbidden")
_TURNING = "turning"
_CLAUSE = re.compile(r"\s*(?:[;:]|,? and then\b|,? then\b|,? and\b|,? but\b|,)\s*", re.IGNORECASE)
_BAN = re.compile(r"\b(?:never|do not|don't|does not|must not|may not|cannot|nobody|no one)\b|^no\b", re.IGNORECASE)
_HALT = re.compile(
    r"\b(?:stop|isolate)\b(?=[^.]*\b(?:spindle|lathe|machine|power)\b)"
    r"|\b(?:spindle|lathe|machine|work|chuck) (?:is |has |stands? |are )?(?:stopped|still|isolated|off)\b|\bpower off\b",
    re.IGNORECASE,
)
_START = re.compile(r"^(?:start|run|switch on|let)\b.*\b(?:spindle|lathe|machine|chuck|it|work|bar)\b", re.IGNORECASE)
_HALTED = "stopped"


@dataclass(frozen=True)
class _Act:
    name: str
    verbs: re.Pattern[str] | None
    things: tuple[re.Pattern[str], ...]
    unless: re.Pattern[str] | None
    halted: bool
    write: str

    def found(self, clause: str) -> re.Match[str] | None:
        """The words in a clause that ask for this act."""
        verb = self.verbs.search(clause) if self.verbs else None
        if self.verbs and not verb:
            return None
        # What the verb stands for itself ("brush the work") is looked for behind it.
        met = [thing.search(clause, verb.end() if verb else 0) for thing in self.things]
        return None if not all(met) or (self.unless and self.unless.search(clause)) else verb or met[0]


def shop_word_problems(
    added: Iterable[tuple[AddFile, str]],
    reworded: Iterable[tuple[RewordFile, str]],
    tables: Mapping[str, Table],
) -> Iterator[Problem]:
    """The faults of every text of a shop."""
    known = {row.text("word") for row in tables[VERBS]}
    orders = {row.text("word") for row in tables[VERBS] if row.text("begins") == "order"}
    banned = tuple(_acts(tables[ACTS]))
    for one in _texts(added, reworded):
        for line in one.orders:
            if first_word(line) not in known:
                do = "begin with what to do: Stop, Keep, Never, IF, and the like"
                yield Problem(one.at, line[:60], f"'{first_word(line)}' is not the beginning of an order", do)
        yield from _banned(one.at, (*one.orders, *one.lines), banned, one.halted)
        begun = tuple(part for text in one.told for part in sentences(text) if first_word(part) in orders)
        yield from _banned(one.at, begun, banned, one.halted)
        yield from _banned(one.at, one.told, tuple(act for act in banned if act.name in _AGAINST_CONTROLS), one.halted)
        words = [(one.at, one.about, Wording((text,))) for text in one.told]
        yield from vague_problems(words, tables[VAGUE])
        yield from long_sentences(words, MOST_IN_REASON)


class _Said(NamedTuple):
    """What an entry says: orders, lines that may hold some, and what only tells; and whether nothing can turn there."""

    at: str
    about: str
    orders: tuple[str, ...]
    lines: tuple[str, ...]
    told: tuple[str, ...]
    halted: bool = False


def _texts(added: Iterable[tuple[AddFile, str]], reworded: Iterable[tuple[RewordFile, str]]) -> Iterator[_Said]:
    for new, at in added:
        if new.caution:
            one = new.caution
            told = (one.hazard, one.harm, *(control.text for control in one.controls), new.reason)
            yield _Said(at, one.id, tuple(one.avoid), (), told)
        if new.stop:
            yield _Said(at, new.stop.id, tuple(new.stop.way_out), (new.stop.text,), (new.stop.title, new.reason))
        if new.note:
            yield _Said(at, new.note.id, (), (new.note.text,), (new.reason,))
    for entry, at in reworded:
        orders, lines = ((), tuple(entry.text)) if entry.note else (tuple(entry.text), ())
        # No step that can be reworded is done with the spindle turning.
        about = entry.caution or entry.step or entry.note
        yield _Said(at, about, orders, lines, (entry.reason,), bool(entry.step))


def _banned(at: str, lines: Sequence[str], acts: Sequence[_Act], halted: bool) -> Iterator[Problem]:
    """Acts that are asked for with the spindle not stopped by a line before, or at all. Lines stand in their order."""
    turns = False
    for line in lines:
        for sentence in sentences(line):
            for clause in (part for part in _CLAUSE.split(sentence) if part):
                ban = _BAN.search(clause)
                if _HALT.search(clause) and not ban:
                    halted, turns = True, False
                elif _START.search(clause) and not ban:
                    halted, turns = False, True
                for act in acts:
                    if ban and act.name != _AGAINST_CONTROLS[1]:
                        continue
                    found = act.found(clause)
                    if found is None and turns and act.name == _TURNING and not _START.search(clause):
                        found = None if act.unless and act.unless.search(clause) else re.match(r"\S+", clause)
                    if found and not (halted and act.halted and act.name != _TURNING):
                        what = f"'{found[0]}' asks for what maims at a lathe, or takes a control away"
                        yield Problem(at, sentence[:60], what, act.write)
                        break


def _acts(table: Table) -> Iterator[_Act]:
    for row in table:
        verbs, unless = row.text("verbs"), row.text("unless")
        yield _Act(
            name=row.text("act"),
            verbs=None if verbs == _ANY else _words(verbs, r"(?:s|es|ing)?"),
            things=tuple(_words(group) for group in row.text("things").split(" + ")),
            unless=_words(unless) if unless else None,
            halted=_HALTED in unless,
            write=row.text("write"),
        )


def _words(cell: str, ending: str = "") -> re.Pattern[str]:
    words = "|".join(re.escape(word.strip()) for word in cell.split(";"))
    return re.compile(rf"\b(?:{words}){ending}\b", re.IGNORECASE)
