"""What is looked at before anything is cut or bonded: unknown metal tried, scale off the seats, a chuck without a mark."""

from math import pi
from pathlib import Path

import pytest

from shops import shop
from tailtrue.advise import advise, make_procedure
from tailtrue.parts import Figure
from tailtrue.procedure import Procedure, Step

STEEL = ("stock", 'material = "steel-low-carbon-cold-drawn"', 'material = "unknown-steel"')
ALUMINIUM = ("stock", 'material = "aluminium-6082-t6"', 'material = "unknown-aluminium"')
_CUTS = {"saw-stock", "saw-collar-stock", "facing", "turning", "centre-drill", "drill", "bore", "skim"}


def _steps(sheet: Procedure) -> list[Step]:
    return [step for phase in sheet.phases for step in phase.steps]


def _order(sheet: Procedure) -> list[str]:
    return [step.id for step in _steps(sheet)]


def _made(folder: Path, job: str, *changes: tuple[str, str, str]) -> Procedure:
    return make_procedure(shop(folder, "fernhill", *changes).with_name(f"{job}.toml"))


@pytest.mark.parametrize("job", ["job", "make-bar"])
@pytest.mark.parametrize(("metal", "trial"), [(STEEL, "try-bar-metal"), (ALUMINIUM, "try-light-metal")])
def test_unknown_metal_is_tried_before_the_first_cut(
    tmp_path: Path, job: str, metal: tuple[str, str, str], trial: str
) -> None:
    sheet = _made(tmp_path, job, metal)
    steps, order = _steps(sheet), _order(sheet)
    first_cut = next(place for place, step in enumerate(steps) if _CUTS & set(step.activities))
    assert order.count(trial) == 1
    assert order.index(trial) < first_cut
    tried = steps[order.index(trial)]
    assert tried.machine == "isolated"
    assert "try-metal" in tried.activities
    # Nobody goes on by himself: what fails ends the piece, and the trial is made again of the next.
    assert tried.hold is not None
    assert tried.hold.go_back_to in (trial, tried.number)
    assert tried.checks


def test_metal_of_a_known_grade_is_not_tried(tmp_path: Path) -> None:
    assert not {"try-bar-metal", "try-light-metal"} & set(_order(_made(tmp_path, "job")))


def test_both_metals_unknown_are_both_tried(tmp_path: Path) -> None:
    order = _order(_made(tmp_path, "job", STEEL, ALUMINIUM))
    assert order.index("try-bar-metal") < order.index("try-light-metal") < order.index("saw-bar")


@pytest.mark.parametrize("finish", ["hot-rolled", "unknown"])
def test_scale_comes_off_the_seats_before_the_bond(tmp_path: Path, finish: str) -> None:
    sheet = _made(tmp_path, "job", ("stock", 'finish = "cold-drawn"', f'finish = "{finish}"'))
    steps, order = _steps(sheet), _order(sheet)
    bright = steps[order.index("brighten-seats")]
    # What is rubbed off changes the seat: it is measured after, and the bore is made to that.
    assert order.index("brighten-seats") < order.index("measure-bar") < order.index("degrease") < order.index("bond")
    assert bright.machine == "isolated"
    assert bright.hold is not None
    assert "abrasive-cloth" in bright.tools


@pytest.mark.parametrize("finish", ["cold-drawn", "ground", "turned"])
def test_a_bar_that_is_bright_is_left_as_it_is(tmp_path: Path, finish: str) -> None:
    sheet = _made(tmp_path, "job", ("stock", 'finish = "cold-drawn"', f'finish = "{finish}"'))
    assert "brighten-seats" not in _order(sheet)


def test_a_bar_whose_collars_are_on_is_not_rubbed(tmp_path: Path) -> None:
    rough = ("stock", 'finish = "cold-drawn"', 'finish = "hot-rolled"')
    used = _made(tmp_path, "use-bar", rough)
    assert "brighten-seats" not in _order(used)


def _unmarked(body: str) -> tuple[str, str, str]:
    return ("lathe", 'body = "160 mm"\nmarked_speed = "2500 1/min"', f'body = "{body}"\nmarked_speed = "unmarked"')


@pytest.mark.parametrize(
    ("body", "limit"), [("100 mm", 800), ("160 mm", 800), ("200 mm", 800), ("250 mm", 800), ("260 mm", 700), ("330 mm", 550)]
)
def test_a_chuck_without_a_mark_is_held_to_its_size(tmp_path: Path, body: str, limit: int) -> None:
    case = advise(shop(tmp_path, "fernhill", _unmarked(body))).case
    label = {one["label"]: one for one in case.value("lathe.chucks")}
    assert case.value("chuck.used") == label["160 mm three-jaw chuck"]
    assert case.value("chuck.speed_limit") == limit
    # Half of the 25 m/s that an iron body is commonly allowed at its rim.
    assert pi * float(body.split()[0]) / 1000 * limit / 60 <= 25 / 2


def test_nothing_turns_faster_in_a_chuck_without_a_mark(tmp_path: Path) -> None:
    held = {"prepare", "bar-ends", "collars", "stub"}
    for name, changes in (("marked", ()), ("unmarked", (_unmarked("160 mm"),))):
        sheet = _made(tmp_path / name, "job", *changes)
        speeds = [
            piece.value
            for phase in sheet.phases
            if phase.id in held
            for step in phase.steps
            if step.machine == "turning"
            for line in step.settings
            for piece in line.value
            if isinstance(piece, Figure) and piece.rounding == "speed"
        ]
        assert speeds
        # With its mark the same chuck is let run faster, or the limit would not be what holds it.
        assert (max(speeds) > 800) is (name == "marked")
