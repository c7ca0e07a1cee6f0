"""Setting the tailstock over for a taper: what was typed, judged, and said in words."""

import re
from collections.abc import Callable, Collection, Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from tailtrue.case import Case
from tailtrue.errors import FactsWrong, Problem, ReadingsWrong
from tailtrue.facts import Fact
from tailtrue.papers import Section, SetOverTag
from tailtrue.parts import Text
from tailtrue.quantities import QuantityWrong, System, read_quantity
from tailtrue.refusals import refused
from tailtrue.truing.paper import head_of, lines_of, mend_first, needed, refused_by

_STOPS = "knowledge/stops/setover.toml"
_LENGTHS = ("large", "small", "length", "work_length", "travel", "cut_large", "cut_small", "cut_apart")
_WAYS = (("large", "small", "length"), ("per_foot",), ("ratio",), ("angle",))
_WAYS_SAID = "--large, --small and --length together, or one of --per-foot, --ratio and --angle"
_IN_JOB = "; or write it in the job file"
_OF_A_JOB = tuple(
    f"setover.{name}"
    for name in ("large", "small", "length", "work_length", "travel", "head_depth", "tail_depth", "small_end")
)
_CUT = ("cut_large", "cut_small", "cut_apart")
_RATIO = re.compile(r"1 ?: ?([0-9]+(?:\.[0-9]+)?)")
_ANGLE = re.compile(r"([0-9]+(?:\.[0-9]+)?) ?(?:deg|°) ?(half|included)")
_PARTS = (
    ("", "taper-found", False),
    ("", "taper-do", False),
    ("TAKE NOTE", "taper-warn", False),
    ("SET IT OVER", "taper-steps", True),
    ("TURN", "taper-turn", True),
    ("CHECK THE TAPER", "taper-check", False),
    ("BACK TO NOUGHT", "taper-back", True),
)


@dataclass(frozen=True)
class SetOver:
    """A set-over judged: its case for every figure, what is said, the tag, what must be mended first."""

    case: Case
    sections: tuple[Section, ...]
    tag: SetOverTag
    mend: tuple[Text, ...]


def said_in_job(case: Case) -> dict[str, Fact]:
    """What the job itself says of the taper that is wanted, by the name of the fact."""
    found = {name: case.get(name) for name in _OF_A_JOB}
    return {name: fact for name, fact in found.items() if isinstance(fact, Fact) and fact.where}


def read_taper(typed: Mapping[str, str], job: Mapping[str, Fact], system: System) -> dict[str, Any]:
    """Facts of a set-over from what was typed, by the name of the option; empty ones were not given.

    `job` holds what the job says already; it needs not be typed, and must not be typed otherwise. Raises FactsWrong with
    every fault at once.

    >>> read_taper({"ratio": "1:50", "work_length": "300 mm", "hole_depth": "3 mm", "small_end": "tailstock"}, {}, "metric")
    {'setover.work_length': 300.0, 'setover.ratio': 50.0, 'setover.small_end': 'tailstock', \
'setover.head_depth': 3.0, 'setover.tail_depth': 3.0}
    """
    given = {name: text.strip() for name, text in typed.items() if text.strip()}
    other_way = any(name in given for way in _WAYS[1:] for name in way)
    # A taper that is said in another way than in the job is told as that, and not as two ways typed.
    known = _options_of(job) - (set(_WAYS[0]) if other_way else set())
    faults: list[Problem] = list(_missing({*given, *known}))
    said: dict[str, Any] = {}

    def take(fact: str, name: str, read: Callable[[str], Any]) -> None:
        try:
            said[f"setover.{fact}"] = read(given[name])
        except QuantityWrong as wrong:
            faults.append(Problem(_option(name), wrong.problems[0].said, wrong.problems[0].wrong, wrong.do_in(system)))
        except FactsWrong as wrong:
            faults.extend(Problem(_option(name), one.said, one.wrong, one.do) for one in wrong.problems)

    for name in _LENGTHS:
        if name in given:
            take(name, name, _length)
    for fact, name, read in (
        ("per_foot", "per_foot", _length),
        ("ratio", "ratio", _ratio),
        ("half_angle_said", "angle", _half_angle),
        ("small_end", "small_end", _end),
    ):
        if name in given:
            take(fact, name, read)
    if "hole_depth" in given:
        take("head_depth", "hole_depth", lambda text: _depths(text)[0])
        if "setover.head_depth" in said:
            said["setover.tail_depth"] = _depths(given["hole_depth"])[1]
    faults += _otherwise(given, said, job)
    if faults:
        raise FactsWrong(faults)
    _plausible({**{name: fact.value for name, fact in job.items()}, **said}, job)
    return said


def _options_of(job: Mapping[str, Fact]) -> set[str]:
    """The options that what the job says takes the place of."""
    names = {name.split(".")[1] for name in job}
    return names | ({"hole_depth"} if {"head_depth", "tail_depth"} <= names else set())


def _otherwise(given: Mapping[str, str], said: Mapping[str, Any], job: Mapping[str, Fact]) -> Iterator[Problem]:
    """What is typed and stands otherwise in the job: nobody can tell which of the two is wanted."""
    do = "leave the option out, or mend the job file"
    for name, fact in job.items():
        if name in said and said[name] != fact.value:
            option = "hole_depth" if name.endswith("_depth") else name.split(".")[1]
            yield Problem(_option(option), given[option], f"stands otherwise in {fact.where}: {fact.said}", do)
    said_there = [job[f"setover.{name}"] for name in _WAYS[0] if f"setover.{name}" in job]
    for (name,) in _WAYS[1:]:
        if name in given and said_there:
            yield Problem(_option(name), given[name], f"the taper is said in {said_there[0].where} already", do)


def judge_setover(case: Case, said: Mapping[str, Any]) -> SetOver:
    """Judge a set-over on the lathe of a case.

    Raises Refused with every reason against it, FactsWrong when something is missing or beyond a formula.
    """
    here = case.with_values(said)
    if stopped := refused_by(here, _STOPS):
        raise refused(stopped, here)
    needed(here, "setover.amount", "setover.way", "setover.toward_tool", "truing.limit")
    if "setover.cut_large" in said:
        needed(here, "setover.after_cut", "setover.correction_way")
    sections = tuple(
        Section(title, lines, steps) for title, part, steps in _PARTS if (lines := lines_of(here, part))
    )  # fmt: skip
    tag = SetOverTag(
        head_of(here), lines_of(here, "settag-what"), lines_of(here, "settag-never"), lines_of(here, "settag-back")
    )  # fmt: skip
    return SetOver(here, sections, tag, mend_first(here))


def _missing(given: Collection[str]) -> list[Problem]:
    """What neither the command nor the job says."""
    faults = []
    ways = [way for way in _WAYS if any(name in given for name in way)]
    if len(ways) != 1:
        wrong = "the taper is not said" if not ways else "the taper is said in more than one way"
        faults.append(Problem("", "", wrong, f"give {_WAYS_SAID}{_IN_JOB}"))
    elif missing := [name for name in ways[0] if name not in given]:
        faults.append(Problem("", ", ".join(map(_option, missing)), "is not given", f"give {_WAYS_SAID}{_IN_JOB}"))
    for name, do in (
        ("work_length", 'give the length of the whole work over both faces, such as "300 mm"'),
        ("hole_depth", 'give how deep a centre enters each end, such as "3 mm", or "3 mm, 4 mm", headstock end first'),
        ("small_end", "say which end is to be small as the work lies in the lathe: tailstock or headstock"),
    ):
        if name not in given:
            faults.append(Problem("", _option(name), "is not given", f"{do}{_IN_JOB}"))
    cut = [name for name in _CUT if name not in given]
    if 0 < len(cut) < len(_CUT):
        do = "give both diameters that were read and the distance between them"
        faults.append(Problem("", ", ".join(map(_option, cut)), "is not given", do))
    return faults


def _plausible(said: Mapping[str, Any], job: Mapping[str, Fact]) -> None:
    faults = []
    for name, value in said.items():
        if isinstance(value, float) and value <= 0 and name not in ("setover.head_depth", "setover.tail_depth"):
            faults.append(Problem(_option(name.split(".")[1]), f"{value:g}", "is not more than nought", "look at it again"))
        elif isinstance(value, float) and value < 0:
            faults.append(Problem("--hole-depth", f"{value:g}", "is less than nought", "look at it again"))
    if faults:
        raise FactsWrong(faults)
    if "setover.large" in said and said["setover.small"] >= said["setover.large"]:
        do = "the larger diameter goes to --large; which end it is at is said by --small-end"
        where = job["setover.small"].where if "setover.small" in job else "--small"
        raise FactsWrong((Problem(where, f"{said['setover.small']:g} mm", "is not less than the large diameter", do),))
    if "setover.cut_large" in said and said["setover.cut_small"] >= said["setover.cut_large"]:
        wrong = "the end that is to be small was read as large as the other, or larger"
        do = "the tailstock stands over to the wrong side, or the readings are swapped: isolate, look, go back to nought"
        raise ReadingsWrong((Problem("--cut-small", f"{said['setover.cut_small']:g} mm", wrong, do),))


def _option(name: str) -> str:
    return f"--{name.replace('_', '-')}"


def _length(text: str) -> float:
    return read_quantity(text, "mm")


def _ratio(text: str) -> float:
    match = _RATIO.fullmatch(text)
    if match is None or float(match[1]) == 0:
        do = "write 1:50 for a diameter that loses one in fifty of length"
        raise FactsWrong((Problem("", text, "is no taper by ratio", do),))
    return float(match[1])


def _half_angle(text: str) -> float:
    match = _ANGLE.fullmatch(text)
    if match is None:
        do = 'say which angle it is: "1.5 deg half" between side and axis, or "3 deg included" between the two sides'
        raise FactsWrong((Problem("", text, "does not say which angle it is", do),))
    return float(match[1]) / (2 if match[2] == "included" else 1)


def _end(text: str) -> str:
    if text.casefold() not in ("tailstock", "headstock"):
        raise FactsWrong((Problem("", text, "is no end of the work", "write tailstock or headstock"),))
    return text.casefold()


def _depths(text: str) -> tuple[float, float]:
    parts = [part.strip() for part in re.split(r"[,;]\s", text)]
    if len(parts) > 2:
        raise FactsWrong((Problem("", text, "holds more than two depths", "write one, or headstock end and tailstock end"),))
    head, tail = _length(parts[0]), _length(parts[-1])
    return head, tail
