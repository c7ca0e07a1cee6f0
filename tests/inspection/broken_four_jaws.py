"""Sheets of the shipped examples whose drawings of blank, grip, bar or centre hole have one size wrong."""

from typing import Any

from shops import EXAMPLES
from tailtrue.parts import Figure
from tailtrue.procedure import Step

from .broken import breaks
from .changed import Job, on_step, sheet_of


def _job(name: str) -> Job:
    return sheet_of(EXAMPLES / "fernhill" / f"{name}.toml")


def _with_size(job: str, drawing: str, name: str, value: float) -> Job:
    tree, shop = _job(job)
    one = next(one for one in tree.drawings if one.id == drawing)
    wrong = one.dimensions[name].model_copy(update={"value": value})
    changed = one.model_copy(update={"dimensions": {**one.dimensions, name: wrong}})
    return tree.model_copy(update={"drawings": tuple(changed if two is one else two for two in tree.drawings)}), shop


@breaks("V87", "drawing slug-blank", also="V86")
def slug_that_loses_more_than_it_has() -> Job:
    return _with_size("job-plate", "slug-blank", "second_face", 11.0)


@breaks("V87", "drawing slug-blank", also="V86")
def slug_whose_corners_lie_inside_its_flats() -> Job:
    return _with_size("job-plate", "slug-blank", "corners", 79.0)


@breaks("V87", "drawing cast-blank", also="V86")
def casting_that_is_larger_at_its_small_end() -> Job:
    return _with_size("job-cast", "cast-blank", "large", 77.0)


@breaks("V87", "drawing slug-in-jaws", also="V86")
def slug_that_stands_out_further_than_its_grip_leaves() -> Job:
    return _with_size("job-plate", "slug-in-jaws", "standing_out", 28.0)


@breaks("V87", "drawing slug-in-jaws", also="V86")
def band_that_runs_into_the_jaws() -> Job:
    return _with_size("job-plate", "slug-in-jaws", "band", 26.0)


@breaks("V87", "drawing casting-in-jaws", also="V86")
def band_turned_larger_than_the_casting() -> Job:
    return _with_size("job-cast", "casting-in-jaws", "band_diameter", 79.0)


@breaks("V87", "drawing blank-on-band", also="V86")
def grip_longer_than_its_band() -> Job:
    return _with_size("job-plate", "blank-on-band", "band", 15.0)


@breaks("V86", "drawing boring-reach-four-jaws")
def room_behind_a_band_that_is_not_that_of_the_sheet() -> Job:
    return _with_size("job-plate", "boring-reach-four-jaws", "behind", 19.0)


@breaks("V87", "drawing centre-hole", also="V86")
def cone_deeper_than_its_angle_lets_it_be() -> Job:
    return _with_size("job", "centre-hole", "cone_depth", 2.4)


@breaks("V87", "drawing centre-hole", also="V86")
def centre_hole_that_ends_in_its_cone() -> Job:
    return _with_size("job", "centre-hole", "depth", 1.5)


@breaks("V87", "drawing centre-hole", also="V86")
def centre_hole_of_another_angle() -> Job:
    return _with_size("job", "centre-hole", "angle", 82.0)


@breaks("V85", "drawing centre-hole", also="V86")
def angle_in_millimetres() -> Job:
    tree, shop = _job("job")
    one = next(one for one in tree.drawings if one.id == "centre-hole")
    wrong = one.dimensions["angle"].model_copy(update={"unit": "mm"})
    changed = one.model_copy(update={"dimensions": {**one.dimensions, "angle": wrong}})
    return tree.model_copy(update={"drawings": tuple(changed if two is one else two for two in tree.drawings)}), shop


def _with_bar(name: str, value: float) -> Job:
    tree, shop = _job("job")
    assert tree.drawing is not None
    wrong = tree.drawing.dimensions[name].model_copy(update={"value": value})
    drawing = tree.drawing.model_copy(update={"dimensions": {**tree.drawing.dimensions, name: wrong}})
    return tree.model_copy(update={"drawing": drawing}), shop


@breaks("V381", "drawing")
def centre_hole_of_the_bar_of_another_angle() -> Job:
    return _with_bar("centre_hole.angle", 75.0)


@breaks("V381", "drawing")
def limits_that_the_bar_is_outside_of() -> Job:
    return _with_bar("bar.least", 25.01)


@breaks("V381", "drawing")
def limits_that_no_step_gives() -> Job:
    return _with_bar("bar.largest", 25.02)


@breaks("V381", "drawing", also="V112")
def bore_that_no_step_cuts() -> Job:
    return _with_bar("bore_a.largest", 25.02)


@breaks("V622", "step 2.3")
def corners_that_no_line_saws_off() -> Job:
    def still_on(one: Step) -> Step:
        return one.model_copy(update={"text": (("Mark both lengths from each corner on one face.",),)})

    return on_step(_job("job-plate"), "saw-corners", still_on)


@breaks("V622", "step 2.3")
def octagon_that_swings_less_than_its_corners() -> Job:
    def nearer(piece: Any) -> Any:
        leg = isinstance(piece, Figure) and piece.fact == "collar.corner_leg"
        return piece.model_copy(update={"value": 15.0}) if leg else piece

    def less(one: Step) -> Step:
        lines = tuple(line.model_copy(update={"value": tuple(map(nearer, line.value))}) for line in one.settings)
        return one.model_copy(update={"settings": lines})

    return on_step(_job("job-plate"), "saw-corners", less)
