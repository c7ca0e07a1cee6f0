"""A slug or a casting that no independent chuck holds: clamped to the faceplate for its bore, turned on a stub after."""

from math import pi, sqrt
from pathlib import Path

import pytest

from shops import FACEPLATE, clamped, shop
from tailtrue.advise import advise, make_procedure
from tailtrue.errors import FactsWrong
from tailtrue.parts import Figure
from tailtrue.procedure import Procedure, Step


def steps(sheet: Procedure) -> list[Step]:
    return [step for phase in sheet.phases for step in phase.steps]


def figure(sheet: Procedure, step: str, fact: str) -> float:
    found = next(one for one in steps(sheet) if one.id == step)
    texts = [text for line in found.settings for text in (line.value, line.reason)]
    return next(piece.value for text in texts for piece in text if isinstance(piece, Figure) and piece.fact == fact)


@pytest.mark.parametrize("source", ["plate", "cast"])
def test_the_bore_is_made_on_the_plate_and_all_else_on_the_stub(tmp_path: Path, source: str) -> None:
    sheet = make_procedure(clamped(tmp_path, source))
    order = [one.id for one in steps(sheet)]
    marks = ["mark-middles", "fit-faceplate", "clamp-to-faceplate", "balance-faceplate", "spot-blank", "tighten-straps",
             "drill-blank", "tighten-straps", "bore-rough", "gauge-bore", "unclamp-collar", "change-from-faceplate", "turn-stub",
             "mount-raw-on-stub", "turn-rim-on-stub", "face-first-on-stub", "mount-on-stub", "face-on-stub", "change-to-centres",
             "rough-collars"]  # fmt: skip
    assert [one for one in order if one in marks] == marks
    assert not {"face-blank", "chamfer-bore", "turn-band", "change-to-four-jaw", "gauge-kept-bore"} & set(order)


def test_nothing_on_the_plate_turns_faster_than_a_blank_out_of_true_may(tmp_path: Path) -> None:
    """Mechanics: with the whole run-out of 1 mm as distance, 0.3 of the weight is reached at 60 sqrt(0.3 g / e) / 2 pi."""
    sheet = make_procedure(clamped(tmp_path, "plate"))
    most = 60 * sqrt(0.3 * 9.80665 / 0.001) / (2 * pi)
    phase = next(one for one in sheet.phases if one.id == "faceplate-bores")
    speeds = [
        piece.value for step in phase.steps for line in step.settings for piece in line.value
        if isinstance(piece, Figure) and piece.unit == "1/min"
    ]  # fmt: skip
    assert len(speeds) > 5
    assert max(speeds) <= most * (1 + 1e-9)


def test_the_boring_bar_reaches_past_straps_and_blank(tmp_path: Path) -> None:
    """Geometry: 40 mm of plate, 25 mm of straps in front of it, 5 mm past the far face."""
    sheet = make_procedure(clamped(tmp_path, "plate"))
    assert figure(sheet, "set-boring-bar", "bore.overhang") == pytest.approx(70)
    assert figure(sheet, "drill-blank", "crib.packing_height") > figure(sheet, "drill-blank", "hole.comes_out")


@pytest.mark.parametrize(
    ("other", "stop"),
    [
        ({"strap_count": "3"}, "faceplate-straps-not-even"),
        ({"strap_to_work": '"40 mm"', "strap_to_heel": '"8 mm"'}, "faceplate-straps-too-weak"),
        ({"faceplate_diameter": '"159 mm"'}, "faceplate-too-small"),
        ({"faceplate_diameter": '"331 mm"'}, "straps-do-not-swing"),
        ({"packing_height": '"10 mm"'}, "packing-too-low"),
        ({"left_out": "stub"}, "faceplate-needs-a-stub"),
        ({"stub_diameter": '"26 mm"'}, "faceplate-needs-a-stub"),
        ({"left_out": "faceplate"}, ""),
    ],
)
def test_what_does_not_hold_is_refused_in_its_own_words(tmp_path: Path, other: dict[str, str], stop: str) -> None:
    job = clamped(tmp_path, "plate", **other)
    if not stop:
        with pytest.raises(FactsWrong, match="faceplate"):
            advise(job)
        return
    assert stop in {one.id for one in advise(job).refused}


def test_a_chuck_that_holds_it_comes_before_the_plate(tmp_path: Path) -> None:
    said = "\n".join(f"{name} = {value}" for name, value in FACEPLATE.items())
    held = shop(tmp_path, "fernhill", ("crib", "compressed_air = true", said)).with_name("job-plate.toml")
    assert advise(held).case.value("collar.hold") == "four-jaw"


def test_a_slug_too_narrow_for_halves_goes_on_the_plate(tmp_path: Path) -> None:
    said = "\n".join(f"{name} = {value}" for name, value in FACEPLATE.items())
    thin = ("stock-plate", 'thickness = "40 mm"', 'thickness = "25 mm"')
    case = advise(shop(tmp_path, "fernhill", ("crib", "compressed_air = true", said), thin).with_name("job-plate.toml")).case
    assert case.value("collar.hold") == "faceplate"


def test_a_slug_whose_corners_stay_on_does_not_go_on_the_plate(tmp_path: Path) -> None:
    left_on = ("crib", 'saw = "bandsaw"', 'saw = "bandsaw"\nsaw_takes_slugs = false')
    advice = advise(clamped(tmp_path, "plate", left_on))
    assert "corners-stay-on-for-the-stub" in {one.id for one in advice.refused}
    assert "corners cannot be sawn off" in next(one["reason"] for one in advice.case.value("collar.offers"))


def test_no_screw_of_a_strap_is_drawn_past_the_proof_of_the_softest_class() -> None:
    """ISO 898-1: class 4.6 proves 225 MPa on the stress area pi/4 (d - 0.9382 p)^2; 0.12 is the least usual share of friction."""
    from tailtrue.advise import knowledge

    table = knowledge().tables["machines/strap_screws"]
    rows = table.where()
    assert len(rows) >= 7
    for row in rows:
        major, pitch, torque = (row.number(name) for name in ("major_mm", "pitch_mm", "torque_nmm"))
        assert torque / (0.12 * major) <= 225 * pi / 4 * (major - 0.9382 * pitch) ** 2
        assert torque / (0.12 * major) >= 0.8 * 225 * pi / 4 * (major - 0.9382 * pitch) ** 2
