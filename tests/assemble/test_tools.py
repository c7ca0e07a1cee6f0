"""The tools of a step: what is cut dry asks for no fluid."""

from pathlib import Path

import pytest

from shops import EXAMPLES
from tailtrue.advise import make_procedure

FERNHILL = EXAMPLES / "fernhill"


@pytest.mark.parametrize(("collar", "wet"), [("brass-free-cutting", False), ("aluminium-6082-t6", True)])
def test_fluid_stands_at_the_collar_steps_only_where_the_collars_are_cut_wet(tmp_path: Path, collar: str, wet: bool) -> None:
    for path in FERNHILL.iterdir():
        text = path.read_text(encoding="utf-8").replace("aluminium-6082-t6", collar)
        (tmp_path / path.name).write_text(text, encoding="utf-8")
    steps = [step for phase in make_procedure(tmp_path / "job.toml").phases for step in phase.steps]
    with_fluid = {step.id for step in steps if "cutting-fluid" in step.tools}
    assert {"face-bar", "centre-bar"} <= with_fluid
    assert ({"face-blank", "drill-blank", "bore-rough", "true-collars", "skim-collars"} <= with_fluid) is wet
    assert wet or with_fluid == {"face-bar", "centre-bar"}
