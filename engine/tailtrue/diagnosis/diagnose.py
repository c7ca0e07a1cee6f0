"""One diagnosis from a job and a file of tests."""

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from statistics import fmean
from typing import Any

from tailtrue.case import Case
from tailtrue.diagnosis.answer import Diagnosis, answer
from tailtrue.diagnosis.knowing import known
from tailtrue.diagnosis.model import CUT
from tailtrue.diagnosis.saying import Line, Teller
from tailtrue.diagnosis.setup import setup_of
from tailtrue.diagnosis.tests_file import TestsWrong, read_tests
from tailtrue.errors import Problem


@dataclass(frozen=True)
class Told:
    """A diagnosis and everything that is said of it."""

    found: Diagnosis
    lines: tuple[Line, ...]

    def part(self, name: str) -> tuple[Line, ...]:
        """The lines of one part."""
        return tuple(line for line in self.lines if line.part == name)


def diagnose(case: Case, tests: Path) -> Told:
    """Read a file of tests and say what it shows of the lathe of a case.

    Raises TestsWrong with every fault of the file, FactsWrong where the job does not say what is needed.
    """
    knowledge = known()
    found = answer(read_tests(tests, knowledge), setup_of(case), knowledge)
    _near_enough(found, float(case.value("limit.far_out")))
    return Told(found, Teller(found).lines())


def _near_enough(found: Diagnosis, most_mm: float) -> None:
    """Beyond the usual sizes of causes their weights mean nothing: whichever may be largest would be blamed."""
    faults = []
    for kind in CUT:
        if kind not in found.made or kind in found.left_out:
            continue
        apart = abs(fmean(found.made[kind]["tail"]) - fmean(found.made[kind]["head"]))
        if apart > most_mm:
            wrong = f"has collars {apart:.3f} mm apart; a diagnosis holds up to {most_mm:g} mm"
            do = "read both again; if it stands, bring the tailstock near (tailtrue correct says how far), skim, test again"
            faults.append(Problem(found.made.places[kind], f"[{kind}]", wrong, do))
    if faults:
        raise TestsWrong(faults)


def as_data(found: Diagnosis) -> Mapping[str, Any]:
    """Figures of a diagnosis, lengths in mm and slopes in mm for each mm, doubts with k = 2."""
    return {
        "answer": found.answer,
        "named": list(found.named),
        "cannot_tell": list(found.rivals),
        "weights": dict(found.weights),
        "left_over": {
            "chi_squared": found.best.chi_squared,
            "spare_readings": found.best.freedom,
            "chance_of_worse": found.best.chance_of_worse,
        },
        "estimates": {
            name: {"value": one.value, "doubt": 2 * one.standard_uncertainty} for name, one in found.estimates.items()
        },
        "verdicts": {name: one.verdict for name, one in found.judged.items()},
        "not_settled": list(found.not_settled),
        "left_out": dict(found.left_out),
        "next_test": None if found.next_test is None else found.next_test.id,
    }
