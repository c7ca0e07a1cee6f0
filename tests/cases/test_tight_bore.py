"""Half to one thousandth over the measured bar slides on and may be bonded: a sheet says so, and cuts no more."""

import re
from pathlib import Path

import pytest

from shops import EXAMPLES, shop
from tailtrue.advise import advise, make_procedure, shop_for
from tailtrue.assemble.reasons import figures
from tailtrue.calc.joints import bond_torque
from tailtrue.inspection import inspect

BAR = 0.7490


def rework(folder: Path, front: float, rear: float, found: str = "bore-under-size") -> Path:
    """The home shop in inches, its bar at 0.7490 in, a bore read so at its two ends."""
    shop(folder, "quarry-road")
    path = folder / "quarry-road" / "rework.toml"
    text = re.sub(r"^found.*\n", "", path.read_text(encoding="utf-8"), flags=re.MULTILINE)
    sizes = {name: [f"{size:.4f} in"] * count for name, size, count in
             (("found_front", front, 3), ("found_rear", rear, 3), ("measured_head", BAR, 6), ("measured_tail", BAR, 6))}  # fmt: skip
    lines = "\n".join(f"{name} = {readings}".replace("'", '"') for name, readings in sizes.items())
    path.write_text(
        f'{text}\nfound = "{found}"\nfound_at = "end-a"\nfound_in_chuck = true\nfound_collars_on = false\n{lines}\n',
        encoding="utf-8",
    )
    return path


@pytest.mark.parametrize(("front", "rear", "found"), [
    (0.7495, 0.7495, "bore-under-size"), (0.7498, 0.7498, "bore-under-size"), (0.7500, 0.7500, "bore-under-size"),
    (0.7500, 0.7495, "bore-tapered"), (0.7500, 0.7496, "bore-bell-mouthed"),
])  # fmt: skip
def test_half_to_one_thou_over_the_bar_is_bonded_and_not_opened(
    tmp_path: Path, front: float, rear: float, found: str
) -> None:
    """Trade check value: a gap of half to one thousandth of an inch on diameter may be bonded."""
    path = rework(tmp_path, front, rear, found)
    assert advise(path).case.value("rework.way") == "bond-it-tight"
    tree = make_procedure(path)
    titles = [step.title for phase in tree.phases for step in phase.steps]
    assert "Leave the bore tight, and bond it" in titles
    assert not any(step.machine == "turning" for phase in tree.phases for step in phase.steps)
    told = {figure.fact: figure.value for figure in figures(tree)}
    assert told["rework.gap_least"] == pytest.approx((min(front, rear) - BAR) * 25.4, abs=1e-4)
    assert told["rework.gap_found"] == pytest.approx((max(front, rear) - BAR) * 25.4, abs=1e-4)
    hold = tree.phases[-1].steps[-1].hold
    assert hold is not None
    assert hold.goes_on[0].step == "gauge-bore"
    assert inspect(tree, shop_for(advise(path))).ok


@pytest.mark.parametrize("found", [0.7491, 0.7493])
def test_less_than_a_bond_takes_is_opened(tmp_path: Path, found: float) -> None:
    assert advise(rework(tmp_path, found, found)).case.value("rework.way") != "bond-it-tight"


def test_a_chattered_bore_is_cut_however_tight_it_is(tmp_path: Path) -> None:
    assert advise(rework(tmp_path, 0.7498, 0.7498, "bore-chattered")).case.value("rework.way") != "bond-it-tight"


def test_the_bond_is_reckoned_for_the_gap_that_is_there(tmp_path: Path) -> None:
    """Public sheets of retaining compounds: the thinner film is the stronger one, up to the gap of the grade."""
    case = advise(rework(tmp_path, 0.7498, 0.7498)).case
    gap, shear = case.value("rework.tight_gap"), case.value("rework.tight_shear")
    assert gap == pytest.approx(case.value("rework.gap_found") + case.value("bore.gauge_uncertainty"))
    assert gap < case.value("joint.retaining_compound.largest")
    assert shear >= case.value("joint.shear")
    carried = bond_torque(shear, case.value("bar.diameter"), case.value("collar.width"))
    assert case.value("rework.tight_torque") == pytest.approx(carried)
    assert case.value("rework.tight_margin") >= case.value("joint.catch_margin")


@pytest.mark.parametrize("name", ["fernhill/job", "quarry-road/job"])
def test_the_making_sheet_tells_it_where_the_bore_is_gauged(name: str) -> None:
    tree = make_procedure(EXAMPLES / f"{name}.toml")
    step = next(step for phase in tree.phases for step in phase.steps if step.id == "gauge-bore")
    line = next(line for line in step.settings if "still good" in "".join(map(str, line.label)))
    assert any(figure.fact == "bore.usable_add" for figure in figures(line))
    assert "bond it" in "".join(str(piece) for piece in line.reason)
