"""Two tests beside that of the collars: whether clamping repeats, and the bar turned end for end."""

import re
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from tailtrue.assemble.filling import Filler
from tailtrue.case import Case
from tailtrue.errors import FactsWrong, Problem, ReadingsWrong, UsageError
from tailtrue.papers import Section
from tailtrue.parts import Text
from tailtrue.quantities import read_quantity
from tailtrue.render.words import say
from tailtrue.truing.paper import head_of, lines_of, mend_first, needed
from tailtrue.truing.typed import Reading, place_of, read_lists, systems
from tailtrue.truing.visit import Visit, judge_visit

_FEWEST_CYCLES = 2
# A comma between digits may be a decimal mark; behind a unit, or before a space, it is none.
_BETWEEN = re.compile(r"\s*[,;]\s+|(?<=[A-Za-z\"'])\s*[,;]\s*")
_PARTS = (("", "found"), ("", "do"), ("TAKE NOTE", "limits"))


@dataclass(frozen=True)
class Trial:
    """A judged test: its case for every figure, what is said, what must be mended first."""

    case: Case
    sections: tuple[Section, ...]
    mend: tuple[Text, ...]


def judge_clamping(case: Case, indicator: str, begins: str) -> Trial:
    """Judge readings of an indicator on the quill, released and clamped by turns.

    Raises ReadingsWrong or FactsWrong.
    """
    if begins not in ("released", "clamped"):
        raise UsageError((Problem("", f"--begins {begins}", "is no state of the tailstock", "write released or clamped"),))
    read, step = _indicator("--indicator", indicator)
    # What is read clamped before the first release belongs to no cycle.
    cycles = read[1:] if begins == "clamped" else read
    if len(cycles) % 2 or len(cycles) < 2 * _FEWEST_CYCLES:
        do = f"read released, clamped, released, clamped and so on, {_FEWEST_CYCLES} cycles or more, five are better"
        raise ReadingsWrong((Problem("--indicator", indicator, "does not hold whole cycles", do),))
    said = {"clamp.released": cycles[::2], "clamp.clamped": cycles[1::2], "clamp.step": _step(case, step)}
    here = case.with_values(said)
    if not here.value("clamp.believed"):
        most = say(("lie more than ", Filler(here).figure("limit.indicator_apart"), " apart"), head_of(here).dials)
        do = "a quill that is clamped moves by hundredths: look for a slip in writing, or an indicator that was knocked"
        raise ReadingsWrong((Problem("--indicator", indicator, most, do),))
    needed(here, "clamp.verdict", "lookup.limit_move")
    return _trial(here, "clamp")


def judge_reversal(case: Case, collars: Mapping[str, str], indicator: Mapping[str, str], side: str) -> Trial:
    """Judge the bar as it is and turned end for end, by its collars, by an indicator, or both.

    `collars` has head, tail, turned_head and turned_tail; `indicator` has first and turned, each the reading at the
    headstock collar and that at the tailstock collar. Raises ReadingsWrong, FactsWrong or UsageError.
    """
    faults = [_half(collars, "--head, --tail, --turned-head and --turned-tail")]
    faults.append(_half({**indicator, "side": side}, "--indicator, --turned-indicator and --side"))
    if not any(collars.values()) and not any(indicator.values()):
        do = "give --head, --tail, --turned-head and --turned-tail, or --indicator, --turned-indicator and --side"
        faults.append(Problem("", "", "there are no readings", do))
    if side and side not in ("front", "rear"):
        faults.append(Problem("", f"--side {side}", "is no side of the bar", "write front, where you stand, or rear"))
    if found := [one for one in faults if one]:
        raise UsageError(found)
    said: dict[str, Any] = {}
    if any(collars.values()):
        for way, head, tail in (("first", "head", "tail"), ("turned", "turned_head", "turned_tail")):
            visit = judge_visit(case, read_lists(collars[head], collars[tail]), "micrometer", {"visit.read_twice": False})
            _hangs_together(visit, way)
            said[f"reverse.{way}_difference"] = visit.case.value("visit.difference")
            said[f"reverse.{way}_doubt"] = visit.case.value("visit.uncertainty")
    if any(indicator.values()):
        said["reverse.side"] = side
        steps = []
        for way, option in (("first", "--indicator"), ("turned", "--turned-indicator")):
            read, step = _indicator(option, indicator[way])
            if len(read) != 2:
                do = 'give the reading at the headstock collar, then that at the tailstock collar: "0 mm, 0.018 mm"'
                raise ReadingsWrong((Problem(option, indicator[way], "is not two readings", do),))
            said[f"reverse.{way}_indicator"] = read[1] - read[0]
            steps.append(step)
        said["reverse.step"] = _step(case, *steps)
    here = case.with_values(said)
    needed(here, *(["reverse.collars"] if any(collars.values()) else []))
    needed(here, *(["reverse.way", "reverse.move_doubt"] if any(indicator.values()) else []))
    return _trial(here, "reverse")


def _trial(case: Case, room: str) -> Trial:
    sections = tuple(
        Section(title, lines, False) for title, part in _PARTS if (lines := lines_of(case, f"{room}-{part}"))
    )  # fmt: skip
    return Trial(case, sections, mend_first(case))


def _half(given: Mapping[str, str], names: str) -> Problem | None:
    if not any(given.values()) or all(given.values()):
        return None
    return Problem("", "", "the readings of only one way round are given", f"give {names} together")


def _hangs_together(visit: Visit, way: str) -> None:
    dials = head_of(visit.case).dials
    where = "the bar as it is" if way == "first" else "the bar turned"
    faults = [Problem(where, one.id, say(one.text, dials), "") for one in visit.remarks if one.bars_move]
    if faults:
        raise ReadingsWrong(faults)


def _step(case: Case, *typed: float) -> float:
    """One division of the indicator, or what was written down where that is coarser. [mm]"""
    step = max((*typed, float(case.value("crib.indicator_division") or 0.0)))
    if step == 0:
        do = "write indicator_division into the crib file, or every digit of the readings"
        raise FactsWrong((Problem("", "division of the indicator", "is not said", do),))
    return step


def _indicator(option: str, text: str) -> tuple[tuple[float, ...], float]:
    """Readings of a dial indicator, and the last place that was written down. [mm]"""
    pieces = [piece for piece in _BETWEEN.split(text.strip()) if piece]
    faults, read = [], []
    for piece in pieces:
        try:
            read.append(read_quantity(piece, "mm"))
        except FactsWrong as wrong:
            faults += [Problem(option, piece, one.wrong, one.do) for one in wrong.problems]
    if not pieces:
        faults.append(Problem(option, text, "has no reading", 'write each with its unit: "0 mm, 0.004 mm"'))
    if not faults and len(systems(Reading("head", piece, size) for piece, size in zip(pieces, read, strict=True))) > 1:
        faults.append(Problem(option, text, "stands in two systems of units", "read one indicator, in its own unit"))
    if faults:
        raise ReadingsWrong(faults)
    # A nought says nothing of the digits that are read.
    return tuple(read), min((place_of(piece) for piece, size in zip(pieces, read, strict=True) if size), default=0.0)
