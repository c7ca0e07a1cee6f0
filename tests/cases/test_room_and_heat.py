"""Room for the drill behind a spacer, how warm a shrunk joint is cut, and waits, states and chips told where they belong."""

from math import pi, radians, tan
from pathlib import Path

import pytest

from shops import EXAMPLES, shop
from tailtrue.advise import advise, make_procedure
from tailtrue.errors import Refused
from tailtrue.parts import Figure, Setting
from tailtrue.procedure import Procedure, Step


def step(sheet: Procedure, name: str) -> Step:
    return next(step for phase in sheet.phases for step in phase.steps if step.id == name)


def figures(line: Setting) -> dict[str, float]:
    return {piece.fact: piece.value for text in (line.value, line.reason) for piece in text if isinstance(piece, Figure)}


def told(sheet: Procedure, name: str) -> dict[str, float]:
    return {fact: value for line in step(sheet, name).settings for fact, value in figures(line).items()}


def test_a_spacer_too_thin_for_the_drill_point_is_refused(tmp_path: Path) -> None:
    # Geometry: the last drill, 23 mm with a 118 degree point, comes 6.9 mm out and 3 mm more to break through.
    thin = ("crib", 'spacer = "12 mm"', 'spacer = "10 mm"')
    no_hole = ("lathe", r'through_bore = "\d+ mm"\n', "")
    with pytest.raises(Refused) as refused:
        make_procedure(shop(tmp_path, "fernhill", thin, no_hole))
    (stop,) = [one for one in refused.value.problems if one.where == "blank-cannot-be-gripped"]
    assert "drill needs room" in stop.wrong
    needed = advise(tmp_path / "fernhill" / "job.toml").case.value("collar.spacer_least")
    assert needed == pytest.approx(23 / 2 / tan(radians(59)) + 3 + 1)


def test_with_room_behind_it_the_sheet_tells_the_room_and_the_drill(tmp_path: Path) -> None:
    sheet = make_procedure(shop(tmp_path, "fernhill", ("lathe", r'through_bore = "\d+ mm"\n', "")))
    found = told(sheet, "drill-blank")
    assert found["hole.comes_out"] == pytest.approx(23 / 2 / tan(radians(59)) + 3)
    assert found["crib.spacer"] > found["hole.comes_out"]


def test_a_hole_in_the_chuck_takes_a_drill_that_the_spacer_leaves_no_room_for(tmp_path: Path) -> None:
    sheet = make_procedure(shop(tmp_path, "fernhill", ("crib", 'spacer = "12 mm"', 'spacer = "9 mm"')))
    found = told(sheet, "drill-blank")
    assert found["blank.hole"] == 40
    assert "crib.spacer" not in found


def test_a_shrunk_joint_is_cut_no_warmer_than_it_still_holds_a_catch() -> None:
    # Lame for a solid bar in a ring, worked apart from the engine: what is left of the interference at that
    # temperature, on the worn collar and with the low friction, turns with just the torque of a catch.
    made = EXAMPLES / "ropewalk" / "job.toml"
    sheet, case = make_procedure(made), advise(made).case
    for name in ("cool-for-roughing", "cool-for-pass"):
        found = told(sheet, name)
        holds, lets_go = found["joint.shrink_fit.holds_a_catch_to"], found["joint.shrink_fit.lets_go_at"]
        assert case.value("job.temperature") < holds < lets_go
    tables = case.knowledge.tables
    bar, worn, width = (case.value(name) for name in ("bar.diameter", "skim.worn_out_at", "collar.width"))
    steel = tables["materials/materials"].one(material=case.value("bar.material"))
    brass = tables["materials/materials"].one(material=case.value("collar.material"))
    friction = tables["joints/friction"].one(family="brass", situation="shrunk-dry").number("friction_low")
    of_fits = tables["joints/interference"]
    rough, share = (of_fits.one(name=one).number("value") for one in ("roughness-rz", "roughness-loss-rz-cautious"))
    loss = 2 * rough * share / 1000  # um
    warm = holds - case.value("job.temperature")
    left = (
        case.value("joint.shrink_fit.interference_least")
        - loss
        - bar * warm * (brass.number("expansion_per_k") - steel.number("expansion_per_k"))
    )
    ring = (worn**2 + bar**2) / (worn**2 - bar**2) + brass.number("poisson")
    solid = 1 - steel.number("poisson")
    pressure = left / bar / (ring / brass.number("modulus_mpa") + solid / steel.number("modulus_mpa"))
    torque = friction * pressure * pi * bar * width * bar / 2
    assert torque == pytest.approx(case.value("joint.catch_torque"), rel=1e-6)


def test_a_chucked_piece_is_told_how_long_it_cools() -> None:
    assert "time.cool" in told(make_procedure(EXAMPLES / "fernhill" / "chucked-bar-test.toml"), "cool-piece")


@pytest.mark.parametrize("name", ["fernhill", "quarry-road"])
def test_rework_leaves_the_lathe_isolated(name: str) -> None:
    last = step(make_procedure(EXAMPLES / name / "rework.toml"), "go-back")
    assert last.machine == "isolated"
    lines = " ".join(piece for line in last.text for piece in line if isinstance(piece, str))
    assert "Isolate the lathe." in lines
    assert "brings power back" in lines


def test_chips_of_brass_are_cautioned_where_brass_is_cut() -> None:
    sheet = make_procedure(EXAMPLES / "quarry-road" / "job.toml")
    where = {
        phase.id for phase in sheet.phases for part in (phase, *phase.steps) for one in part.cautions
        if one.id == "brittle-chips"
    }  # fmt: skip
    assert where == {"collars", "turn-collars"}


def test_a_screwed_nose_is_cautioned_for_whatever_is_screwed_on() -> None:
    # Between centres the nose carries the driver: what unwinds there is no chuck.
    sheet = make_procedure(EXAMPLES / "quarry-road" / "job.toml")
    found = {one.harm for phase in sheet.phases for part in (phase, *phase.steps) for one in part.cautions
             if one.id == "screwed-chuck-unwinds"}  # fmt: skip
    assert found == {"Chuck, faceplate or driver unwinds and drops or flies off."}


@pytest.mark.parametrize(("name", "step_mm"), [("quarry-road", 0.00254), ("fernhill", 0.001)])
def test_limits_as_they_are_written_add_up(name: str, step_mm: float) -> None:
    # Limit down, doubt up, in down, out up: what is in adds up to the digit, what is out is never less than the sum.
    case = advise(EXAMPLES / name / "job.toml").case
    limit, doubt, inside, outside = (case.value(f"align.{one}") for one in ("limit", "uncertainty", "inside", "outside"))
    whole = [int(limit / step_mm + 1e-6), -int(-doubt / step_mm - 1 + 1e-6), round(inside / step_mm, 6)]
    assert whole[0] - whole[1] == whole[2]
    written_out = -int(-outside / step_mm - 1 + 1e-6)
    assert 0 <= written_out - (whole[0] + whole[1]) <= 1


@pytest.mark.parametrize(
    ("bore", "hole", "rear"),
    [
        ("38 mm", 'through_bore = "40 mm"\n', False),
        ("80 mm", 'through_bore = "40 mm"\n', True),
        ("80 mm", 'through_bore = "82 mm"\n', False),
        ("38 mm", "", True),
    ],
)
def test_a_bush_thicker_than_the_hole_of_the_chuck_goes_in_from_the_rear(
    tmp_path: Path, bore: str, hole: str, rear: bool
) -> None:
    wide = ("lathe", 'spindle_bore = "38 mm"', f'spindle_bore = "{bore}"')
    sheet = make_procedure(shop(tmp_path, "fernhill", wide, ("lathe", 'through_bore = "40 mm"\n', hole)))
    lines = [line.value for line in step(sheet, "hold-bar-bore").settings]
    assert (("from the rear",) in lines) is rear


def test_a_chuck_that_drives_grips_the_point_and_takes_no_hard_centre(tmp_path: Path) -> None:
    # The body of the chuck stands before the spindle taper: a centre pushed home in it ends behind the jaws.
    drives = ("crib", 'drive = "drive-plate"', 'drive = "chuck-jaw"')
    with pytest.raises(Refused) as refused:
        make_procedure(shop(tmp_path / "hard", "fernhill", drives))
    assert [one.where for one in refused.value.problems] == ["hard-centre-behind-a-chuck"]
    soft = ("crib", 'headstock_centre = "hard"', 'headstock_centre = "soft"')
    sheet = make_procedure(shop(tmp_path / "soft", "fernhill", drives, soft))
    point = step(sheet, "grip-soft-point")
    assert {"chuck", "chuck-key"} <= set(point.tools)
    assert all(one.id != "fit-soft-centre" for phase in sheet.phases for one in phase.steps)
    slow = ("lathe", '(body = "160 mm"\nmarked_speed = )"2500 1/min"', r'\1"700 1/min"')
    with pytest.raises(Refused) as refused:
        make_procedure(shop(tmp_path / "slow", "fernhill", drives, soft, slow))
    assert "slow-chuck-as-driver" in [one.where for one in refused.value.problems]
