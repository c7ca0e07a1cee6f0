"""A bore is opened on a sheet of rework by whatever sets the last cut on the sheet that was left."""

import re
from pathlib import Path

import pytest

from shops import shop
from tailtrue.advise import advise, make_procedure, shop_for
from tailtrue.assemble.reasons import figures
from tailtrue.inspection import inspect

SWIVELS = ("lathe", r"^set_over = ", "top_slide_swivels = true\nset_over = ")
FINE = ("crib", r"^(indicator_division = )[^\n]*$", r'\1"0.0001 in"')

FOUR_JAW = (
    "lathe", r"\Z",
    '\n[[lathe.chucks]]\nlabel = "6 in four-jaw chuck"\njaws = 4\nkind = "independent"\nbody = "6 in"\n'
    'marked_speed = "1500 1/min"\ngrips_to = "5 in"\njaw_depth = "1 in"\ncondition = "good"\n',
)  # fmt: skip


def rework(folder: Path, *changes: tuple[str, str, str], chuck: bool = True, read: float = 0.7465) -> Path:
    """The home shop in inches, its bar at 0.7490 in, and a bore of 0.7465 in: the wanted band is narrower than a division."""
    shop(folder, "quarry-road", *changes)
    path = folder / "quarry-road" / "rework.toml"
    text = re.sub(r"^found.*\n", "", path.read_text(encoding="utf-8"), flags=re.MULTILINE)
    bore, bar = (f'["{size:.4f} in"' + f', "{size:.4f} in"' * more + "]" for size, more in ((read, 2), (0.7490, 5)))
    path.write_text(
        f'{text}\nfound = "bore-under-size"\nfound_at = "end-a"\nfound_front = {bore}\nfound_rear = {bore}\n'
        f"measured_head = {bar}\nmeasured_tail = {bar}\nfound_collars_on = false\n"
        f"found_in_chuck = {'true' if chuck else 'false'}\n",
        encoding="utf-8",
    )
    return path


@pytest.mark.parametrize(("changes", "way"), [
    ((), "half-divisions"), ((SWIVELS,), "top-slide-set-over"), ((FINE,), "indicator-on-the-slide"),
])  # fmt: skip
def test_the_making_sheets_own_fine_setting_opens_the_bore(
    tmp_path: Path, changes: tuple[tuple[str, str, str], ...], way: str
) -> None:
    path = rework(tmp_path, *changes)
    advice = advise(path)
    case = advice.case
    assert case.value("bore.fine_feed") == way
    assert case.value("bore.dial_step") > case.value("bore.window")
    assert case.value("rework.way") == "open-the-bore"
    cuts = case.value("rework.cuts")
    opened = cuts[-1]["least_after"]
    # Twice what the tool moves, from the bore as found; inside the two sizes, and a whole number of steps.
    assert opened == pytest.approx(0.7465 * 25.4 + 2 * sum(cut["depth"] for cut in cuts), abs=1e-6)
    assert case.value("rework.low") <= opened <= case.value("rework.high")
    steps = sum(cut["depth"] for cut in cuts) * 2 / case.value("bore.fine_step")
    assert steps == pytest.approx(round(steps))
    assert all(cut["depth"] <= case.value("bore.finish_depth") + 1e-9 for cut in cuts)
    tree = make_procedure(path)
    step = next(step for phase in tree.phases for step in phase.steps if step.id == "rework-bore")
    told = {figure.fact for figure in figures(step)}
    assert "bore.fine_step" in told
    assert ("bore.slide_angle" in {figure.fact for figure in figures(tree.phases)}) == (way == "top-slide-set-over")
    assert inspect(tree, shop_for(advice)).ok


def test_four_thou_under_is_two_thou_a_side(tmp_path: Path) -> None:
    """Trade check value: four thousandths under wants two thousandths a side, told as depth and as what the bore reads then."""
    path = rework(tmp_path, read=0.7475)
    case = advise(path).case
    middle = (case.value("rework.low") + case.value("rework.high")) / 2
    assert middle - 0.7475 * 25.4 == pytest.approx(0.004 * 25.4, abs=0.0003 * 25.4)
    step = next(one for phase in make_procedure(path).phases for one in phase.steps if one.id == "rework-bore")
    depths = [one.value for one in figures(step) if one.fact == "rework.cuts.depth"]
    assert sum(depths) == pytest.approx(0.002 * 25.4)
    after = [one.value for one in figures(step) if one.fact == "rework.cuts.least_after"]
    assert after[-1] == pytest.approx(0.7515 * 25.4)


@pytest.mark.parametrize(("changes", "step"), [
    ((SWIVELS, FINE), "rework-set-slide-over"), ((FINE,), "rework-set-slide-indicator"),
])  # fmt: skip
def test_a_bore_set_true_anew_has_its_fine_setting_set_anew(
    tmp_path: Path, changes: tuple[tuple[str, str, str], ...], step: str
) -> None:
    path = rework(tmp_path, *changes, FOUR_JAW, chuck=False)
    assert advise(path).case.value("rework.way") == "set-it-true-and-open-it"
    steps = [one.id for phase in make_procedure(path).phases for one in phase.steps]
    set_anew = {"rework-set-slide-over", "rework-set-slide-indicator"} & set(steps)
    assert set_anew == {step}
    assert all(steps.index("set-bore-true") < steps.index(one) < steps.index("rework-bore-trued") for one in set_anew)


def test_a_depth_that_nothing_in_the_shop_sets_fails_inspection(tmp_path: Path) -> None:
    path = rework(tmp_path)
    tree, given = make_procedure(path), shop_for(advise(path))
    phases = tuple(
        phase.model_copy(
            update={
                "steps": tuple(
                    step.model_copy(
                        update={
                            "settings": tuple(
                                line for line in step.settings if "bore.fine_step" not in {one.fact for one in figures(line)}
                            )
                        }
                    )
                    for step in phase.steps
                )
            }
        )
        for phase in tree.phases
    )
    found = {failure.rule for failure in inspect(tree.model_copy(update={"phases": phases}), given).failures}
    assert "V60" in found
