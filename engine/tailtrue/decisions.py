"""Decisions: rows of conditions that answer one question, every alternative judged and kept for showing."""

from dataclasses import dataclass
from functools import cached_property
from typing import Literal, NamedTuple

from tailtrue.conditions import Condition, Get, Judged
from tailtrue.facts import Fact, FactSpec, NotKnown
from tailtrue.truth import Truth
from tailtrue.wording import Wording

_NOTHING = Wording(())
Hit = Literal["unique", "priority", "least", "greatest"]
WEIGHED = ("least", "greatest")


@dataclass(frozen=True)
class DecisionRow:
    """One way to answer: when it holds, why it is good, and where that comes from.

    With `never_taken` (the reason) it is judged and shown beside the choice, and is never the choice. `gives` names the
    size that it comes to; where sizes are weighed, a row that `settles` the question is taken before any is.
    """

    then: str
    name: str
    when: Condition
    why: str
    sources: tuple[str, ...]
    if_unknown: Literal["ask", "pass-over"]
    figures: Wording = _NOTHING
    says: tuple[tuple[Condition, str], ...] = ()
    closed_by: str = ""
    never_taken: str = ""
    gives: str = ""
    settles: bool = False


class Stated(NamedTuple):
    """When this job chooses nothing, because it was done before: the fact that tells what was, and words for it."""

    fact: str
    when: Condition
    says: str


@dataclass(frozen=True)
class Decision:
    """A question with its rows. `unique`: at most one row can hold. `priority`: the first that holds.

    `least` and `greatest`: of the rows that hold, the one whose size is the least or the greatest.

    With `every_way` the printed sheet tells each row, also those that a word of the files rules out.

    `concerns` names what a route has to do with so that its paper tells the answer; none: every paper tells it.
    """

    spec: FactSpec
    question: str
    hit: Hit
    rows: tuple[DecisionRow, ...]
    where: str
    concerns: tuple[str, ...] = ()
    stated: Stated | None = None
    every_way: bool = False

    @cached_property
    def reads(self) -> tuple[str, ...]:
        """The facts its rows read, in order of the alphabet."""
        return tuple(sorted({row.gives for row in self.rows if row.gives}.union(*(row.when.names() for row in self.rows))))


class JudgedRow(NamedTuple):
    """A row with its judgement, whether it won, and of one that holds the size that it comes to."""

    row: DecisionRow
    judged: Judged
    chosen: bool
    size: Fact | NotKnown | None = None


class Outcome(NamedTuple):
    """What came of a decision: the fact, and every row judged."""

    fact: Fact | NotKnown
    rows: tuple[JudgedRow, ...]
    weighs: bool = False

    @property
    def beside(self) -> tuple[str, ...]:
        """The alternatives that hold and are never taken."""
        return tuple(one.row.then for one in self.rows if one.row.never_taken and one.judged.truth is Truth.YES)

    @property
    def won(self) -> JudgedRow | None:
        """The row that was taken."""
        return next((one for one in self.rows if one.chosen), None)

    @property
    def weighed(self) -> tuple[tuple[float, str], ...]:
        """The sizes that were held against each other, each with its row's name; none where nothing was weighed."""
        if not self.weighs or self.won is None or self.won.row.settles:
            return ()
        sized = (one for one in self.rows if not one.row.settles and not one.row.never_taken)
        return tuple((_value(one), one.row.name) for one in sized if isinstance(one.size, Fact))


def decide(decision: Decision, get: Get) -> Outcome:
    """Judge every row, then let the hit policy choose.

    An earlier row that cannot be judged stops the choice (it might be the right one) unless the row says that it may
    be passed over; so does one that holds and whose size is not known, where sizes are weighed. A row that is never taken
    neither wins nor stops the choice.
    """
    rows = [_judged(row, get) for row in decision.rows]
    won: JudgedRow | None = None
    for one in rows:
        row, truth, size = one.row, one.judged.truth, one.size
        if row.never_taken or truth is Truth.NO:
            continue
        weighed = decision.hit in WEIGHED and not row.settles
        if truth is Truth.UNKNOWN or (weighed and not isinstance(size, Fact)):
            if row.if_unknown == "ask":
                lacking = size if isinstance(size, NotKnown) else NotKnown(decision.spec, one.judged.missing)
                return Outcome(
                    NotKnown(decision.spec, lacking.missing, lacking.trouble, decision.reads, lacking.unlisted), tuple(rows)
                )
            continue
        if not weighed:
            won = one
            break
        if won is None or _before(decision.hit, one, won):
            won = one
    if won is None:
        fact: Fact | NotKnown = NotKnown(decision.spec, trouble=f"{decision.question} No way fits.", read=decision.reads)
    else:
        fact = Fact(decision.spec, won.row.then, decision.reads, won.row.sources, won.row.why)
    return Outcome(fact, tuple(one._replace(chosen=one is won) for one in rows), decision.hit in WEIGHED)


def _judged(row: DecisionRow, get: Get) -> JudgedRow:
    judged = row.when.judge(get)
    size = get(row.gives) if row.gives and judged.truth is Truth.YES else None
    return JudgedRow(row, judged, False, size)


def _before(hit: Hit, one: JudgedRow, won: JudgedRow) -> bool:
    """Whether the size of one binds before that of another; of equal ones the earlier row stays."""
    here, there = _value(one), _value(won)
    return here < there if hit == "least" else here > there


def _value(row: JudgedRow) -> float:
    return float(row.size.value) if isinstance(row.size, Fact) else 0.0
