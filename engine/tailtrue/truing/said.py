"""What was typed of a record, as readings and facts of a visit."""

from typing import Any

from tailtrue.errors import Problem, ReadingsWrong
from tailtrue.log.typed import Typed
from tailtrue.truing.typed import Collar, Reading, Readings, checked, read_one

_COLLARS: dict[str, Collar] = {"H": "head", "T": "tail"}


def readings_of(typed: Typed, from_zero: bool) -> Readings:
    """The readings of both end collars that were not rejected.

    Raises ReadingsWrong with every fault at once.
    """
    taken = [one for letter, one in _kept(typed, from_zero) if letter in _COLLARS]
    return checked(Readings(tuple(taken), in_order=typed.in_order))


def facts_of(typed: Typed) -> dict[str, Any]:
    """What else of it bears on the judgement.

    Raises ReadingsWrong.
    """
    content = typed.content
    found: dict[str, Any] = {}
    middle = tuple(one.diameter_mm for letter, one in _kept(typed) if letter == "M")
    if middle:
        found["visit.middle_readings"] = middle
    if "mid_station" in content:
        found["visit.middle_station"] = content["mid_station"]
    if "state" in content:
        found["visit.state"] = content["state"].replace(" ", "-")
    if content.get("moves"):
        found["visit.moved"] = abs(sum(one["clamped"]["mm"] - one["before"]["mm"] for one in content["moves"]))
    if middle and "mid_station" not in content:
        do = "give --middle-station (mid_station in a file): headstock centre to the middle of that collar"
        raise ReadingsWrong((Problem(typed.shown, "a collar in the middle", "was read, but not where it sits", do),))
    return found


def _kept(typed: Typed, from_zero: bool = True) -> list[tuple[str, Reading]]:
    faults: list[Problem] = []
    found = []
    for number, one in enumerate(typed.content.get("readings", ())):
        if "rejected" in one:
            continue
        where = typed.places["readings"].problem((number,), "", "").where
        try:
            # Of a third collar only the size counts, whatever collar it is called here.
            read = read_one(_COLLARS.get(one["collar"], "head"), one["said"], from_zero)
        except ReadingsWrong as wrong:
            faults += [Problem(where, fault.said, fault.wrong, fault.do) for fault in wrong.problems]
            continue
        found.append((one["collar"], Reading(read.collar, read.said, read.diameter_mm, where)))
    if faults:
        raise ReadingsWrong(faults)
    return found
