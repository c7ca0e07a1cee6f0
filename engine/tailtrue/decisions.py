"""Decisions: rows of conditions that answer one question, every alternative judged and kept for showing."""

from dataclasses import dataclass
from typing import Literal, NamedTuple

from tailtrue.conditions import Condition, Get, Judged
from tailtrue.facts import Fact, FactSpec, NotKnown
from tailtrue.truth import Truth
from tailtrue.wording import Wording

_NOTHING = Wording(())


@dataclass(frozen=True)
class DecisionRow:
    """One way to answer: when it holds, why it is good, and where that comes from.

    With `never_taken` (the reason) it is judged and shown beside the choice, and is never the choice.
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


@dataclass(frozen=True)
class Decision:
    """A question with its rows. `unique`: at most one row can hold. `priority`: the first that holds.

    `concerns` names what a route has to do with so that its paper tells the answer; none: every paper tells it.
    """

    spec: FactSpec
    question: str
    hit: Literal["unique", "priority"]
    rows: tuple[DecisionRow, ...]
    where: str
    concerns: tuple[str, ...] = ()

    def names(self) -> frozenset[str]:
        """The facts its rows read."""
        return frozenset().union(*(row.when.names() for row in self.rows))


class JudgedRow(NamedTuple):
    """A row with its judgement and whether it won."""

    row: DecisionRow
    judged: Judged
    chosen: bool


class Outcome(NamedTuple):
    """What came of a decision: the fact, and every row judged."""

    fact: Fact | NotKnown
    rows: tuple[JudgedRow, ...]

    @property
    def beside(self) -> tuple[str, ...]:
        """The alternatives that hold and are never taken."""
        return tuple(one.row.then for one in self.rows if one.row.never_taken and one.judged.truth is Truth.YES)


def decide(decision: Decision, get: Get) -> Outcome:
    """Judge every row, then let the hit policy choose.

    An earlier row that cannot be judged stops the choice (it might be the right one) unless the row says that it may
    be passed over. A row that is never taken neither wins nor stops the choice.
    """
    judged = [(row, row.when.judge(get)) for row in decision.rows]
    read = tuple(sorted(decision.names()))
    won: DecisionRow | None = None
    for row, result in judged:
        if row.never_taken:
            continue
        if result.truth is Truth.YES:
            won = row
            break
        if result.truth is Truth.UNKNOWN and row.if_unknown == "ask":
            return Outcome(NotKnown(decision.spec, result.missing, read=read), _rows(judged, None))
    if won is None:
        fact: Fact | NotKnown = NotKnown(decision.spec, trouble=f"{decision.question} No way fits.", read=read)
    else:
        fact = Fact(decision.spec, won.then, read, won.sources, won.why)
    return Outcome(fact, _rows(judged, won))


def _rows(judged: list[tuple[DecisionRow, Judged]], won: DecisionRow | None) -> tuple[JudgedRow, ...]:
    return tuple(JudgedRow(row, result, row is won) for row, result in judged)
