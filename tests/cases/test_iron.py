"""Collars of cast iron, sawn round: dry, with a mask, and the dust drawn off in the chuck as between centres."""

from pathlib import Path

import pytest

from shops import EXAMPLES, shop
from tailtrue.advise import make_procedure
from tailtrue.procedure import Procedure, Step

IRON = EXAMPLES / "ropewalk" / "job-iron.toml"
DUSTY = {"cut-collar", "bore", "drill", "skim"}


@pytest.fixture(scope="module")
def sheet() -> Procedure:
    return make_procedure(IRON)


def steps(sheet: Procedure) -> list[Step]:
    return [step for phase in sheet.phases for step in phase.steps]


def words(step: Step) -> str:
    return " ".join("".join(map(str, line)) for line in step.text)


def test_the_nozzle_is_clamped_before_the_first_cut_in_the_chuck_and_again_between_centres(sheet: Procedure) -> None:
    clamps = [place for place, step in enumerate(steps(sheet)) if "Clamp the nozzle" in words(step)]
    assert [steps(sheet)[place].id for place in clamps] == ["draw-off-dust", "set-tool"]
    cuts = [place for place, step in enumerate(steps(sheet)) if step.machine == "turning" and DUSTY & set(step.activities)]
    assert steps(sheet)[cuts[0]].id == "face-blank"
    assert clamps[0] < cuts[0] < clamps[1]
    assert steps(sheet)[clamps[0]].machine == "isolated"


def test_nothing_wet_is_put_on_iron_and_a_mask_is_on(sheet: Procedure) -> None:
    cuts = [step for step in steps(sheet) if step.machine == "turning" and {"bore", "drill", "skim"} & set(step.activities)]
    told = [("".join(map(str, line.label)), "".join(map(str, line.value))) for step in cuts for line in step.settings]
    fluids = {value for label, value in told if label == "cutting fluid"}
    assert fluids == {"dry, with a mask on"}
    assert all("cutting-fluid" not in step.tools for step in cuts)
    warned = [caution for phase in sheet.phases for step in phase.steps for caution in (*phase.cautions, *step.cautions)
              if caution.id == "iron-dust"]  # fmt: skip
    assert warned
    assert "mask that filters fine dust" in warned[0].protective_equipment


def test_the_cleaner_is_on_the_list_with_every_step_that_uses_it(sheet: Procedure) -> None:
    (need,) = [need for need in sheet.needs if need.id == "vacuum"]
    assert list(need.used_at) == [step.number for step in steps(sheet) if "vacuum" in step.tools]
    assert len(need.used_at) == 2


def test_without_a_cleaner_nothing_speaks_of_a_nozzle(tmp_path: Path) -> None:
    shop(tmp_path, "ropewalk", ("crib-iron", "vacuum = true\n", ""))
    found = make_procedure(tmp_path / "ropewalk" / "job-iron.toml")
    assert not [step.id for step in steps(found) if "nozzle" in words(step)]


def test_facing_a_side_of_iron_takes_minutes_and_its_first_cut_gets_under_the_skin(sheet: Procedure) -> None:
    """Common practice: the first cut on cast iron is a millimetre or more, for a lighter one rubs on the skin."""
    face = next(step for step in steps(sheet) if step.id == "face-blank")
    told = {figure.fact: figure.value for line in face.settings for text in (line.value, line.reason)
            for figure in text if not isinstance(figure, str)}  # fmt: skip
    assert told["collar.first_depth"] >= 1
    assert told["collar.first_rough_cuts"] * told["collar.first_depth"] + told["collar.facing.depth"] == pytest.approx(
        told["collar.facing_stock"]
    )
    assert face.time is not None
    assert face.time.high.value < 25 * 60
