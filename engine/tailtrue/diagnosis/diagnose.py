"""One diagnosis from a job and a file of tests."""

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from tailtrue.case import Case
from tailtrue.diagnosis.answer import Diagnosis, answer
from tailtrue.diagnosis.knowing import known
from tailtrue.diagnosis.saying import Line, Teller
from tailtrue.diagnosis.setup import setup_of
from tailtrue.diagnosis.tests_file import read_tests


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
    return Told(found, Teller(found).lines())


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
