"""Sheets for a learner and for a supervised shop: who releases the holds, what is marked, who may do the work."""

import re
from pathlib import Path

import pytest

from shops import shop
from tailtrue.advise import make_procedure
from tailtrue.procedure import Procedure

_BETWEEN = ("job", "use-bar", "make-bar", "re-certify", "taper-and-return")


def _sheet(folder: Path, job: str, operator: str) -> Procedure:
    shop(folder, "fernhill", (job, '^operator = "trained"', f'operator = "{operator}"'))
    return make_procedure(folder / "fernhill" / f"{job}.toml")


@pytest.mark.parametrize("job", _BETWEEN)
def test_a_learner_gets_a_sheet_and_releases_none_of_its_holds(tmp_path: Path, job: str) -> None:
    tree = _sheet(tmp_path, job, "learner")
    held = [step.hold.releases for phase in tree.phases for step in phase.steps if step.hold]
    assert held
    # Whoever signs a certificate answers for it by name.
    assert all(re.search("supervisor|instructor|whoever signs the certificate", one) for one in held)
    steps = [step for phase in tree.phases for step in phase.steps]
    turning = [step for step in steps if step.machine == "turning" and {"facing", "drill", "bore"} & set(step.activities)]
    assert all(step.who == "supervised" for step in turning)
    assert all(step.who == "supervised" for step in steps if "start-check" in step.activities)
    assert "A learner, only with the supervisor" in str(tree.who_may)


@pytest.mark.parametrize("job", _BETWEEN)
def test_a_supervised_sheet_leaves_no_second_look_to_one_alone(tmp_path: Path, job: str) -> None:
    tree = _sheet(tmp_path, job, "experienced")
    held = {step.id: step.hold.releases for phase in tree.phases for step in phase.steps if step.hold}
    assert held["check-person"].startswith("the supervisor")
    assert not any(re.search(r"\balone\b|nobody else|\byou\b", one) for one in held.values())


def test_the_saw_is_left_to_whom_the_sheet_gives_it(tmp_path: Path) -> None:
    def sawn(folder: Path, *changes: tuple[str, str, str]) -> set[str]:
        shop(folder, "fernhill", *changes)
        tree = make_procedure(folder / "fernhill" / "job.toml")
        assert tree.sop is not None
        rows = [row for row in tree.sop.who if "aw" in row.title]
        steps = {step.number for phase in tree.phases for step in phase.steps if "saw-stock" in step.activities}
        return {
            who for row in rows for who in ("any", "supervised", "staff") for one in getattr(row, who) if one.number in steps
        }

    young = ("job", "^minor = false", "minor = true")
    assert sawn(tmp_path / "trained") == {"any"}
    assert sawn(tmp_path / "learner", ("job", '^operator = "trained"', 'operator = "learner"')) == {"supervised"}
    assert sawn(tmp_path / "young", young) == {"staff"}
