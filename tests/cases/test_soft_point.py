"""A soft headstock centre is turned where it sits, each time that it is put in, before anything hangs on it."""

from math import pi
from pathlib import Path

import pytest

from shops import shop
from tailtrue.advise import make_procedure
from tailtrue.errors import Refused
from tailtrue.parts import Figure
from tailtrue.procedure import Procedure, Step

SOFT = ("crib", 'headstock_centre = "hard"', 'headstock_centre = "soft"\nsoft_centre_diameter = "25 mm"')
DRIVES = ("crib", 'drive = "drive-plate"', 'drive = "chuck-jaw"')
TURNED = ["set-slide-to-point", "restore-power", "start-check", "turn-point", "finish-point"]


def _names(sheet: Procedure, phase: str) -> list[str]:
    return [step.id for one in sheet.phases if one.id == phase for step in one.steps]


def _step(sheet: Procedure, name: str) -> Step:
    return next(step for phase in sheet.phases for step in phase.steps if step.id == name)


def _told(sheet: Procedure, name: str, fact: str) -> float:
    return next(
        one.value
        for line in _step(sheet, name).settings
        for one in line.value
        if isinstance(one, Figure) and one.fact == fact
    )


def _text(step: Step) -> str:
    return " ".join("".join(map(str, line)) for line in step.text)


@pytest.mark.parametrize("job", ["job", "make-bar", "use-bar", "re-certify", "taper-and-return"])
@pytest.mark.parametrize(("changes", "fitted"), [((SOFT,), "fit-soft-centre"), ((SOFT, DRIVES), "grip-soft-point")])
def test_the_point_is_turned_between_its_seat_and_the_work(
    tmp_path: Path, job: str, changes: tuple[tuple[str, str, str], ...], fitted: str
) -> None:
    sheet = make_procedure(shop(tmp_path, "fernhill", *changes).with_name(f"{job}.toml"))
    steps = _names(sheet, "soft-point")
    assert steps[steps.index(fitted) :] == [fitted, *TURNED]
    order = [step.id for phase in sheet.phases for step in phase.steps]
    assert order.index("finish-point") < order.index("fit-tailstock-centre")
    assert not {"fit-hard-centre"} & set(order)


def test_speed_and_angle_follow_from_the_point(tmp_path: Path) -> None:
    thin = make_procedure(shop(tmp_path / "thin", "fernhill", SOFT).with_name("use-bar.toml"))
    thick_crib = (SOFT[0], SOFT[1], SOFT[2].replace("25 mm", "50 mm"))
    thick = make_procedure(shop(tmp_path / "thick", "fernhill", thick_crib).with_name("use-bar.toml"))
    # Half of the 60 degrees of ISO 866 centre holes.
    assert _told(thin, "set-slide-to-point", "point.slide_angle") == 30
    fast, slow = (_told(sheet, "turn-point", "point.turning.speed") for sheet in (thin, thick))
    assert slow < fast <= 800
    # High-speed steel on mild steel: no faster than 100 ft/min.
    assert pi * 25 * fast / 1000 <= 100 * 0.3048
    assert pi * 50 * slow / 1000 <= 100 * 0.3048


def test_silver_steel_is_turned_slower_than_mild_steel(tmp_path: Path) -> None:
    mild = (SOFT[0], SOFT[1], SOFT[2].replace("25 mm", "20 mm"))
    tool = (SOFT[0], SOFT[1], mild[2] + '\nsoft_centre_metal = "tool-steel"')
    speeds = [
        _told(make_procedure(shop(tmp_path / str(place), "fernhill", one).with_name("use-bar.toml")), "turn-point",
              "point.turning.speed")
        for place, one in enumerate((tool, mild))
    ]  # fmt: skip
    assert speeds[0] < speeds[1]


def test_the_slide_goes_back_and_the_point_stays(tmp_path: Path) -> None:
    sheet = make_procedure(shop(tmp_path, "fernhill", SOFT, DRIVES).with_name("use-bar.toml"))
    done = _step(sheet, "finish-point")
    assert done.machine == "isolated"
    assert "back in line with the bed" in _text(done)
    assert "Mark the point at jaw one" in _text(done)
    shown = {one.id for phase in sheet.phases for step in phase.steps for one in step.cautions}
    assert "top-slide-near-the-jaws" in shown


@pytest.mark.parametrize("job", ["job", "use-bar", "taper-and-return"])
def test_a_top_slide_that_stays_in_line_turns_no_point(tmp_path: Path, job: str) -> None:
    fixed = ("lathe", 'tool_side = "front"', 'tool_side = "front"\ntop_slide_swivels = false')
    with pytest.raises(Refused) as refused:
        make_procedure(shop(tmp_path, "fernhill", SOFT, fixed).with_name(f"{job}.toml"))
    assert "soft-point-without-a-swivelling-slide" in [one.where for one in refused.value.problems]


def test_where_nobody_said_that_the_slide_swivels_the_step_asks(tmp_path: Path) -> None:
    asked = make_procedure(shop(tmp_path / "asked", "fernhill", SOFT).with_name("use-bar.toml"))
    swivels = ("lathe", 'tool_side = "front"', 'tool_side = "front"\ntop_slide_swivels = true')
    said = make_procedure(shop(tmp_path / "said", "fernhill", SOFT, swivels).with_name("use-bar.toml"))
    assert "does not swivel" in _text(_step(asked, "set-slide-to-point"))
    assert "does not swivel" not in _text(_step(said, "set-slide-to-point"))
