"""How often a verdict at the lathe is wrong: simulated visits judged by the computed facts themselves.

The lathe is that of tests/simulated_lathe.py, which shares no formula with the engine. What else disturbs a visit is
drawn here: each half width of the budget as a flat distribution, the scatter of the hand, the digits of the instrument.
To print the rates: cd tests && ../.venv/bin/python -m truing.rates
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from functools import cache
from pathlib import Path
from random import Random
from statistics import fmean
from typing import Any

from simulated_lathe import SimulatedLathe
from tailtrue.advise import advise
from tailtrue.case import Case
from tailtrue.computed import visit as facts
from tailtrue.computed import visit_rounds as rounds
from tailtrue.tables import Table
from tailtrue.truing.history import Before

JOB = Path(__file__).parents[2] / "docs" / "examples" / "fernhill" / "job.toml"
VISITS = 10_000
_SEED = 20261125
_DIAMETER = 65.2
_MOST_ROUNDS = 8


@dataclass(frozen=True)
class Bar:
    """The bar and the limits of a job."""

    span: float
    head: float
    tail: float
    limit: float
    expansion: float
    doubts: Table
    usual: Table
    another_day: Table


@dataclass(frozen=True)
class Visit:
    """Readings of one simulated visit, and the difference that the tailstock alone would have cut."""

    truth: float
    at_head: tuple[float, ...]
    at_tail: tuple[float, ...]


@dataclass(frozen=True)
class Rates:
    """Shares of wrong verdicts."""

    outside: int  # visits whose true difference is beyond the limit
    wrong_passes: int  # of these, judged inside
    inside: int
    wrong_fails: int  # of the visits within the limit, judged outside
    unclear: int  # of all, too close to say
    at_limit: int  # visits within a hundredth of the limit, on either side
    wrong_at_limit: int

    @property
    def wrong_pass_share(self) -> float:
        """Of visits that ought not to pass."""
        return self.wrong_passes / self.outside

    @property
    def wrong_fail_share(self) -> float:
        """Of visits that ought not to fail."""
        return self.wrong_fails / self.inside

    @property
    def wrong_at_limit_share(self) -> float:
        """Of visits as near the limit as can be, where a verdict is hardest."""
        return self.wrong_at_limit / self.at_limit


@cache
def case() -> Case:
    """The case of the example shop."""
    return advise(JOB).case


@cache
def bar() -> Bar:
    """The bar of the example shop."""
    value, tables = case().value, case().knowledge.tables
    return Bar(
        value("truing.span"), value("truing.head_station"), value("truing.tail_station"), value("truing.limit"),
        value("collar.expansion"), tables["alignment/uncertainty"], tables["alignment/repeatability"],
        tables["visit/doubts"],
    )  # fmt: skip


def lathe_with(difference: float) -> SimulatedLathe:
    """A lathe whose tailstock alone makes a difference: found by cutting, since a lathe is straight this near to line."""
    one = bar()
    head, tail = SimulatedLathe(offset=0.01).diameters_between_centres(one.span, (one.head, one.tail), _DIAMETER / 2)
    return SimulatedLathe(offset=0.01 * difference / (tail - head))


def read(lathe: SimulatedLathe, hand: Random, diameter: float = _DIAMETER, count: int = 2, step: float = 0.001) -> Visit:
    """One skim and the readings of it, everything disturbing it drawn anew."""
    one = bar()
    stations = (one.head, one.tail)
    clean = lathe.diameters_between_centres(one.span, stations, diameter / 2)

    def flat(name: str) -> float:
        half = one.doubts.one(component=name).number("value")
        return hand.uniform(-half, half)

    worn = replace(lathe, wear_for_each_collar=flat("tool_wear") / 2)
    head, tail = worn.diameters_between_centres(one.span, stations, diameter / 2)
    tail += flat("residual_deflection") + diameter * one.expansion * flat("collar_temperature_difference")
    head, tail = head + flat("form"), tail + flat("form")
    usual = one.usual.within(step, "over_mm", "upto_mm", instrument="micrometer")
    tail += hand.uniform(-1, 1) * usual.number("local_error_mm")
    scatter = usual.number("repeatability_mm")

    def readings(size: float) -> tuple[float, ...]:
        return tuple(round(round(hand.gauss(size, scatter) / step) * step, 6) for _ in range(count))

    return Visit(clean[1] - clean[0], readings(head), readings(tail))


def judged(visit: Visit, step: float = 0.001) -> dict[str, Any]:
    """What the computed facts say of a visit."""
    one = bar()
    head, tail = fmean(visit.at_head), fmean(visit.at_tail)
    usual = facts.usual("micrometer", step, one.usual)
    whole = facts.budget("micrometer", usual, step, head, one.expansion, 0.0, visit.at_head, visit.at_tail, one.doubts)
    difference, unsure = facts.difference("micrometer", head, tail), facts.uncertainty(whole)
    return {
        "visit.head": head,
        "visit.tail": tail,
        "visit.difference": difference,
        "visit.uncertainty": unsure,
        "visit.verdict": facts.judged("micrometer", difference, unsure, one.limit, 0.5),
        "visit.toward_tool": facts.toward_tool(difference, one.span, one.head, one.tail),
        "visit.scatter_ratio": facts.scatter_ratio(facts.scatter_seen(visit.at_head, visit.at_tail) or 0.0, usual),
    }


def slipped(visit: Visit) -> bool:
    """Whether turns of the thimble are seen in a visit."""
    thimble = case().knowledge.tables["measuring/thimble"]
    found = judged(visit)["visit.difference"]
    return facts.turned_within("micrometer", "metric", visit.at_head, visit.at_tail, thimble) or facts.turned_between(
        "micrometer", "metric", found, thimble
    )


def before_of(visit: Visit) -> Before:
    """A simulated visit, for the next one to be held against."""
    found = judged(visit)
    return Before(
        found["visit.head"], found["visit.tail"], found["visit.uncertainty"], found["visit.toward_tool"],
        found["visit.verdict"], "2026-03-02", 1,
    )  # fmt: skip


def against(first: Visit, second: Visit) -> dict[str, bool]:
    """What the computed facts say of a visit against the one before."""
    one, was, now = bar(), before_of(first), judged(second)
    before, after = was.tail_mm - was.head_mm, now["visit.difference"]
    change = rounds.change_doubt(now["visit.uncertainty"], was.uncertainty_mm)
    size = rounds.size_doubt(change, now["visit.head"], one.expansion, one.another_day, one.doubts)
    sizes = (now["visit.head"], now["visit.tail"], was.head_mm, was.tail_mm)
    return {
        "worse": rounds.worse(after, before, change),
        "swapped": bool(rounds.swapped("micrometer", "micrometer", after, before, *sizes, change, size)),
        "turned_round": rounds.turned_round(after, before, change),
        "grown": (rounds.grown_by("micrometer", "micrometer", *sizes) or 0.0) > size,
        "skimmed": bool(rounds.skimmed("micrometer", "micrometer", *sizes, size)),
    }


def visits(count: int, seed: int = _SEED) -> Iterator[Visit]:
    """Visits to lathes from far inside to far outside their limit, on both sides."""
    hand = Random(seed)
    for _ in range(count):
        difference = hand.uniform(-2, 2) * bar().limit
        yield read(lathe_with(difference), hand, count=hand.choice((1, 2, 3)))


def at_the_limit(count: int, seed: int = _SEED) -> Iterator[Visit]:
    """Visits to lathes whose true difference is the limit itself, give or take a hundredth of it."""
    hand = Random(seed + 1)
    for _ in range(count):
        difference = hand.choice((-1, 1)) * hand.uniform(0.99, 1.01) * bar().limit
        yield read(lathe_with(difference), hand, count=hand.choice((1, 2, 3)))


def measure(count: int = VISITS) -> Rates:
    """Count wrong verdicts."""
    limit = bar().limit

    def wrong(visit: Visit) -> tuple[bool, str]:
        return abs(visit.truth) > limit, str(judged(visit)["visit.verdict"])

    found = [wrong(one) for one in visits(count)]
    near = [wrong(one) for one in at_the_limit(count // 4)]
    return Rates(
        outside=sum(out for out, _ in found),
        wrong_passes=sum(out and said == "inside" for out, said in found),
        inside=sum(not out for out, _ in found),
        wrong_fails=sum(not out and said == "outside" for out, said in found),
        unclear=sum(said == "too-close" for _, said in found),
        at_limit=len(near),
        wrong_at_limit=sum(said == ("inside" if out else "outside") for out, said in near),
    )


@dataclass(frozen=True)
class Ends:
    """How whole sessions end: readings, a move, a fresh skim, readings, until the tailstock is said to be in line."""

    sessions: int
    ended_in: int
    wrongly: int  # of these, truly out
    rounds: float  # visits of a session on the average


def sessions(count: int = VISITS, seed: int = _SEED) -> Ends:
    """Sessions from clearly out to the verdict; each move achieves most of its aim, and clamping adds its own."""
    hand, one = Random(seed + 2), bar()
    ended = wrongly = made = 0
    for _ in range(count):
        truth, diameter = out_of_limits(hand), _DIAMETER
        for _ in range(_MOST_ROUNDS):
            made += 1
            found = judged(read(lathe_with(truth), hand, diameter))
            diameter -= hand.uniform(0.06, 0.2)
            if found["visit.verdict"] == "inside":
                ended += 1
                wrongly += abs(truth) > one.limit
                break
            # Too close to say is settled by another skim; outside, by a move.
            if found["visit.verdict"] == "outside":
                moved = found["visit.toward_tool"] * hand.uniform(0.7, 1.1) + hand.gauss(0, 0.002)
                truth -= 2 * moved * (one.tail - one.head) / one.span
    return Ends(count, ended, wrongly, made / count)


def out_of_limits(hand: Random) -> float:
    """A difference that is clearly out, either way."""
    return hand.choice((-1, 1)) * hand.uniform(2, 6) * bar().limit


def two_rounds(hand: Random, achieved: Callable[[Random], float]) -> tuple[Visit, Visit]:
    """A visit, a move that achieves a share of what was asked, a fresh skim that cleans up both collars, another visit."""
    first = out_of_limits(hand)
    before, after = lathe_with(first), lathe_with(first * (1 - achieved(hand)))
    stations = (bar().head, bar().tail)
    sizes = [one.diameters_between_centres(bar().span, stations, _DIAMETER / 2) for one in (before, after)]
    grown = max(new - old for old, new in zip(*sizes, strict=True))
    return read(before, hand), read(after, hand, _DIAMETER - max(0.0, grown) - hand.uniform(0.06, 0.2))


def table(rates: Rates, ends: Ends) -> list[str]:
    """The rates as rows of a page."""
    return [
        "| of 10 000 simulated visits | share |",
        "| --- | --- |",
        f"| out of limits, judged IN | {100 * rates.wrong_pass_share:.2f} % |",
        f"| in limits, judged OUT | {100 * rates.wrong_fail_share:.2f} % |",
        f"| too close to say | {100 * rates.unclear / (rates.outside + rates.inside):.0f} % |",
        f"| right at the limit (2500 visits), judged to the wrong side | {100 * rates.wrong_at_limit_share:.1f} % |",
        "",
        f"Of {ends.sessions} simulated sessions, each begun clearly out, {ends.ended_in} ended IN limits after "
        f"{ends.rounds:.1f} visits on the average; {ends.wrongly} of these were truly out. "
        f"The others were too close to say for {_MOST_ROUNDS} visits.",
    ]


if __name__ == "__main__":
    print("\n".join(table(measure(), sessions())))
