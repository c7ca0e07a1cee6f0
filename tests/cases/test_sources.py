"""Collars from every source: what is made of it, how it is held, what is refused, from whole jobs."""

import itertools
from math import radians, tan
from pathlib import Path

import pytest

from shops import EXAMPLES, shop
from tailtrue.advise import advise, make_procedure, procedure_of
from tailtrue.errors import FactsWrong, Refused
from tailtrue.parts import Figure
from tailtrue.procedure import Procedure, Step
from tailtrue.render.card import messages

Change = tuple[str, str, str]
JOBS = [("fernhill", "plate"), ("fernhill", "cast"), ("fernhill", "bored"), ("quarry-road", "tube")]


def job_of(folder: Path, name: str, source: str, *changes: Change) -> Path:
    return shop(folder, name, *changes).with_name(f"job-{source}.toml" if source else "job.toml")


def made(folder: Path, name: str, source: str, *changes: Change) -> Procedure:
    return make_procedure(job_of(folder, name, source, *changes))


def steps(sheet: Procedure) -> list[Step]:
    return [step for phase in sheet.phases for step in phase.steps]


def names(sheet: Procedure) -> list[str]:
    return [step.id for step in steps(sheet)]


def refused(job: Path) -> set[str]:
    with pytest.raises(Refused):
        make_procedure(job)
    return {one.id for one in advise(job).refused}


def setting(sheet: Procedure, step: str, fact: str) -> Figure:
    found = next(one for one in steps(sheet) if one.id == step)
    return next(piece for line in found.settings for piece in line.value if isinstance(piece, Figure) and piece.fact == fact)


def chosen(sheet: Procedure, choice: str) -> str:
    return next(one.chosen for one in sheet.choices if one.id == choice)


@pytest.mark.parametrize(("name", "source"), JOBS, ids=[source for _, source in JOBS])
def test_each_shipped_source_makes_an_inspected_sheet(name: str, source: str) -> None:
    sheet = make_procedure(EXAMPLES / name / f"job-{source}.toml")
    assert "bond" in names(sheet)
    judged = next(choice for choice in sheet.choices if choice.id == "collar.source")
    assert len(judged.alternatives) == 5
    assert sum(one.verdict == "chosen" for one in judged.alternatives) == 1


def test_round_bar_comes_before_everything_else(tmp_path: Path) -> None:
    stock = (EXAMPLES / "fernhill" / "stock-plate.toml").read_text(encoding="utf-8")
    plate = stock[stock.index("[[stock.collar_plates]]") :]
    job = job_of(tmp_path, "fernhill", "", ("stock", r"\Z", "\n" + plate))
    assert advise(job).case.value("collar.made_from") == "sawn-bar"
    assert "pick-stock" in names(make_procedure(job))


def test_the_job_may_ask_for_another_source(tmp_path: Path) -> None:
    stock = (EXAMPLES / "fernhill" / "stock-plate.toml").read_text(encoding="utf-8")
    plate = stock[stock.index("[[stock.collar_plates]]") :]
    changes = (("stock", r"\Z", "\n" + plate), ("job", r"\Z", '\ncollar_source = "plate"\n'))
    assert chosen(made(tmp_path, "fernhill", "", *changes), "collar.source") == "square slugs of plate"


def test_a_bar_too_thin_is_passed_over_for_a_tube_that_serves(tmp_path: Path) -> None:
    case = advise(job_of(tmp_path, "quarry-road", "tube")).case
    judged = {one["label"]: one["verdict"] for one in case.value("collar.offers")}
    assert judged == {"1 1/4 in brass round": "does not serve", "1 3/4 in by 5/8 in aluminium tube": "fits"}
    assert case.value("collar.made_from") == "tube"


def test_a_thicker_bar_of_doubtful_surface_is_left_in_the_rack(tmp_path: Path) -> None:
    case = advise(job_of(tmp_path, "quarry-road", "tube")).case
    assert case.value("bar.diameter") == pytest.approx(19.05)
    assert [one["verdict"] for one in case.value("bar.offers")] == ["chosen", "left"]


def test_a_slug_is_held_in_four_jaws_and_turned_round_by_halves(tmp_path: Path) -> None:
    order = names(made(tmp_path, "fernhill", "plate"))
    marks = ["saw-slugs", "change-to-four-jaw", "hold-slug", "turn-band", "grip-band", "face-blank", "turn-rest",
             "reseat-four-jaw", "drill-blank", "bore-rough"]  # fmt: skip
    assert [one for one in order if one in marks] == marks


LEFT_ON = ("crib", 'saw = "bandsaw"', 'saw = "bandsaw"\nsaw_takes_slugs = false')


def test_the_corners_of_a_slug_set_speed_and_swing(tmp_path: Path) -> None:
    """Geometry: the diagonal of a square is the square root of two times its side."""
    sheet = made(tmp_path, "fernhill", "plate", LEFT_ON)
    corner = setting(sheet, "saw-slugs", "collar.stock_diameter").value * 2**0.5
    case = advise(job_of(tmp_path / "again", "fernhill", "plate", LEFT_ON)).case
    assert case.value("collar.corner_diameter") == pytest.approx(corner)
    assert "saw-corners" not in names(sheet)
    narrow = job_of(tmp_path / "narrow", "fernhill", "plate", ("lathe", '"195 mm"', '"120 mm"'), LEFT_ON)
    assert "collar-does-not-swing" in refused(narrow)


def test_a_machinist_saws_the_corners_off_before_he_turns_a_slug(tmp_path: Path) -> None:
    """Geometry: across the corners of an octagon it is 1.082 of its flats, of a square 1.414. Four fifths less to knock off."""
    square = advise(job_of(tmp_path / "square", "fernhill", "plate", LEFT_ON)).case
    sheet = made(tmp_path, "fernhill", "plate")
    order = names(sheet)
    assert order.index("saw-slugs") < order.index("saw-corners") < order.index("deburr-sawn") < order.index("hold-slug")
    case = advise(job_of(tmp_path / "octagon", "fernhill", "plate")).case
    circle, flats = case.value("collar.corner_diameter"), case.value("collar.stock_diameter")
    # Cut a millimetre outside their lines the corners stand a little further out.
    assert 1.082 * flats < circle < 1.082 * flats + 2
    assert case.value("collar.band_passes") < square.value("collar.band_passes") / 3
    assert case.value("time.band") < square.value("time.band") / 3


def test_a_slug_that_swings_only_without_its_corners_is_sawn(tmp_path: Path) -> None:
    narrow = advise(job_of(tmp_path, "fernhill", "plate", ("lathe", '"195 mm"', '"110 mm"')))
    assert "saw-corners" in names(procedure_of(narrow))
    assert narrow.case.value("collar.corners") == "sawn-off"
    assert narrow.case.value("collar.square_circle") > narrow.case.value("collar.swing_limit")


@pytest.mark.parametrize(("saw", "tool", "corners"), [
    ("bandsaw", "carbide", "sawn-off"), ("hacksaw", "HSS", "sawn-off"), ("hacksaw", "carbide", "left-on"),
])  # fmt: skip
def test_a_small_tough_slug_is_sawn_by_hand_only_where_the_lathe_is_slow(
    tmp_path: Path, saw: str, tool: str, corners: str
) -> None:
    small = (
        ("stock-plate", '"80 mm"', '"52 mm"'), ("stock-plate", "aluminium-6082-t6", "bronze-bearing"),
        ("crib", 'saw = "bandsaw"', f'saw = "{saw}"'), ("crib", 'tool_material = "HSS"', f'tool_material = "{tool}"'),
    )  # fmt: skip
    assert advise(job_of(tmp_path, "fernhill", "plate", *small)).case.value("collar.corners") == corners


def test_a_square_of_iron_too_large_for_the_slowest_speed_is_sawn(tmp_path: Path) -> None:
    iron = ("stock-plate", "aluminium-6082-t6", "iron-grey"), ("stock-plate", '"80 mm"', '"70 mm"')
    sawn = advise(job_of(tmp_path / "sawn", "fernhill", "plate", *iron))
    assert sawn.case.value("collar.square.speed") is None
    assert sawn.case.value("collar.corners") == "sawn-off"
    assert "saw-corners" in names(procedure_of(sawn))
    assert refused(job_of(tmp_path / "on", "fernhill", "plate", *iron, LEFT_ON))


def test_halves_of_a_blank_leave_grip_and_meet_each_other(tmp_path: Path) -> None:
    case = advise(job_of(tmp_path, "fernhill", "cast")).case
    width, grip, band = (case.value(f"collar.{name}") for name in ("saw_width", "band_grip", "band_length"))
    assert band + (width - grip) >= width
    assert grip <= band
    assert grip >= 10


def test_a_draft_of_three_degrees_is_gripped_on_a_turned_band_for_everything_but_the_band(tmp_path: Path) -> None:
    """Common practice: a cast blank with about 3 degrees of draft is held on a band made parallel, never on its draft."""
    large = 78 + 2 * 42 * tan(radians(3))
    sheet = made(tmp_path, "fernhill", "cast", ("stock-cast", '"82.5 mm"', f'"{large:.2f} mm"'))
    order = names(sheet)
    first = order.index("hold-casting")
    assert order[first : first + 4] == ["hold-casting", "start-raw", "first-pass-raw", "tighten-raw"]
    assert all(
        order.index(work) > order.index("grip-band") for work in ("face-blank", "spot-blank", "drill-blank", "bore-rough")
    )


def test_a_draft_is_never_put_into_a_three_jaw_chuck(tmp_path: Path) -> None:
    for source in ("cast", "plate"):
        job = job_of(tmp_path / source, "fernhill", source, ("lathe", r"\[\[lathe.chucks\]\]\nlabel = \"200 mm.*\Z", ""))
        assert "no-independent-chuck" in refused(job)


@pytest.mark.parametrize("state", ["flawed", "not-looked"])
def test_a_casting_not_seen_to_be_sound_is_refused(tmp_path: Path, state: str) -> None:
    assert "casting-not-sound" in refused(job_of(tmp_path, "fernhill", "cast", ("stock-cast", '"sound"', f'"{state}"')))


def test_one_blank_alone_is_refused(tmp_path: Path) -> None:
    assert "blanks-not-two" in refused(job_of(tmp_path, "fernhill", "bored", ("stock-bored", "count = 2", "count = 1")))


def test_the_raw_blank_turns_no_faster_than_unbalance_and_its_own_chuck_allow(tmp_path: Path) -> None:
    """Mechanics: 0.3 of the weight at 1 mm of eccentricity is reached at 518 1/min, 30 / pi sqrt(0.3 g / e)."""
    case = advise(job_of(tmp_path, "fernhill", "cast")).case
    assert case.value("collar.unbalance_speed") == pytest.approx(518, abs=1)
    slow = job_of(tmp_path / "slow", "fernhill", "cast", ("lathe", '"1500 1/min"', '"150 1/min"'))
    sheet = make_procedure(slow)
    assert setting(sheet, "turn-band", "collar.band.speed").value <= 150
    assert setting(sheet, "spot-blank", "collar.spotting.speed").value <= 150


def test_a_hole_that_is_there_is_bored_and_not_drilled(tmp_path: Path) -> None:
    sheet = made(tmp_path, "fernhill", "bored")
    order = names(sheet)
    assert "gauge-hole" in order
    assert not {"drill-blank", "spot-blank", "fit-spotting-drill", "start-to-drill"} & set(order)
    assert chosen(sheet, "bore.make") == "bored out from the hole that is there"


def test_no_drill_is_needed_for_a_blank_that_has_a_hole(tmp_path: Path) -> None:
    few = ("crib", r"\[\[crib.drills\]\].*?(?=\[\[crib.boring)", '[[crib.drills]]\nsizes = ["60 mm"]\nshank = "MT3"\n\n')
    assert "bore-rough" in names(made(tmp_path, "fernhill", "bored", few))
    assert "no-drill-to-begin-with" in refused(job_of(tmp_path / "solid", "fernhill", "plate", few))


def test_a_bore_that_fits_the_measured_bar_is_left_alone(tmp_path: Path) -> None:
    sheet = made(tmp_path, "fernhill", "bored", ("stock-bored", '"22 mm"', '"25.03 mm"'))
    assert "keep-bore" in names(sheet)
    assert not {"bore-rough", "bore-finish", "set-boring-bar"} & set(names(sheet))


@pytest.mark.parametrize("bore", ["24.6 mm", "25.2 mm"])
def test_a_hole_between_too_small_and_fitting_is_refused(tmp_path: Path, bore: str) -> None:
    job = job_of(tmp_path, "fernhill", "bored", ("stock-bored", '"22 mm"', f'"{bore}"'))
    assert "hole-too-large" in refused(job)


def test_a_bore_that_would_fit_is_not_taken_on_trust_before_the_bar_is_measured(tmp_path: Path) -> None:
    job = job_of(
        tmp_path, "fernhill", "bored", ("stock-bored", '"22 mm"', '"25.03 mm"'), ("job-bored", r"^measured_\w+ = .*?\n", "")
    )
    assert "hole-too-large" in refused(job)


def test_a_reamer_in_the_tailstock_is_judged_and_never_taken(tmp_path: Path) -> None:
    for said, reason in (
        ("false", "not so here: the tailstock has been proved in line"),
        ("true", "a reamer has a fixed size"),
    ):
        sheet = made(tmp_path / said, "fernhill", "", ("job", r"\Z", f"\ntailstock_proved = {said}\n"))
        judged = {one.name: one for choice in sheet.choices if choice.id == "bore.make" for one in choice.alternatives}
        assert judged["reamed from the tailstock"].verdict == "no"
        assert judged["reamed from the tailstock"].reason.startswith(reason)
        assert judged["drilled, then bored"].verdict == "chosen"


def test_a_blank_behind_the_jaws_is_faced_against_a_spacer_that_comes_out_before_the_start(tmp_path: Path) -> None:
    """Common practice: about 1/2 in of spacer behind a blank of about 1 1/2 in that would sit behind the jaw faces."""
    changes = (
        ("lathe", 'jaw_depth = "32 mm"', 'jaw_depth = "36 mm"'), ("crib", 'spacer = "12 mm"', 'spacer = "1/2 in"'),
        ("stock", '"25 mm"\nlength', '"30 mm"\nlength'), ("job", r"^measured_\w+ = .*?\n", ""),
    )  # fmt: skip
    sheet = made(tmp_path, "fernhill", "", *changes, ("crib", r"to = \"3(0|2) mm\"$", 'to = "40 mm"'))
    order = [step.id for step in steps(sheet) if step.id in ("hold-blank-spacer", "spacer-out", "face-blank")]
    assert order == ["hold-blank-spacer", "spacer-out", "face-blank"]


def test_500_a_minute_bores_aluminium_to_an_inch(tmp_path: Path) -> None:
    """Common practice: 500 1/min is acceptable from 7/8 to 1 in with a carbide-tipped 3/4 in bar on a 12 in lathe."""
    case = advise(
        job_of(
            tmp_path, "fernhill", "", ("lathe", r"^speeds = .*?$", 'speeds = ["65 1/min", "180 1/min", "300 1/min", "500 1/min"]'),
            ("lathe", r"^speed_settings = .*?\n", ""),
            ("crib", 'shank = "16 mm"\nreach', 'shank = "3/4 in"\nreach'), ("stock", '"25 mm"', '"1 in"'),
            ("job", r"^measured_\w+ = .*?\n", ""),
        )
    ).case  # fmt: skip
    assert case.value("collar.boring.speed") == pytest.approx(500)


def test_founder_sizes_stand_only_on_a_sheet_that_asks_for_them(tmp_path: Path) -> None:
    """Foundry reckoning for a finished 75 by 35 with 3 mm a surface and 2 degrees, from geometry: see the calc tests."""
    assert "for-the-founder" in names(made(tmp_path, "fernhill", "cast"))
    plain = made(tmp_path / "plain", "fernhill", "cast", ("job-cast", r"^(cast_collars|cast_metal|founder) = .*?\n", ""))
    assert "for-the-founder" not in names(plain)


def test_the_card_at_the_lathe_tells_both_chucks_and_leaves_molten_metal_to_the_founder(tmp_path: Path) -> None:
    sheet = made(tmp_path, "fernhill", "cast")
    limits = {line.value.fact: line.value.value for group in sheet.card.groups for line in group.lines}
    assert limits["chuck.speed_limit"] == 2500
    assert limits["blank.chuck_speed_limit"] == 1500
    assert "water-under-molten-metal" not in {caution.id for caution in messages(sheet)}
    assert any(caution.id == "water-under-molten-metal" for phase in sheet.phases
               for caution in (*phase.cautions, *(one for step in phase.steps for one in step.cautions)))  # fmt: skip


def test_sizes_of_the_casting_hold_the_collar_and_its_allowance(tmp_path: Path) -> None:
    case = advise(job_of(tmp_path, "fernhill", "cast")).case
    small, large, height = (case.value(f"casting.{name}") for name in ("small", "large", "height"))
    assert small == pytest.approx(case.value("collar.diameter") + 6)
    assert height == pytest.approx(case.value("collar.width") + 8)
    assert large - small == pytest.approx(2 * height * tan(radians(2)))
    assert case.value("casting.pattern_small") == pytest.approx(small * 1.013)


@pytest.mark.parametrize(
    ("change", "stop"),
    [
        (("job-cast", 'cast_metal = "ingot"', 'cast_metal = "scrap"'), "casting-unknown-metal"),
        (("job-cast", r'^cast_metal = "ingot"\n', ""), "casting-unknown-metal"),
        (("job-cast", "founder = true", "founder = false"), "casting-without-a-founder"),
        (("job-cast", r"^founder = true\n", ""), "casting-without-a-founder"),
        (("job-cast", "alone = false", "alone = true"), "casting-without-a-founder"),
    ],
)
def test_molten_metal_without_what_it_needs_is_refused(tmp_path: Path, change: Change, stop: str) -> None:
    assert stop in refused(job_of(tmp_path, "fernhill", "cast", change))


@pytest.mark.parametrize("material", ["acetal", "nylon", "pvc-rigid"])
def test_plastic_is_refused_with_its_reason(tmp_path: Path, material: str) -> None:
    job = job_of(tmp_path, "fernhill", "bored", ("stock-bored", '"aluminium-6082-t6"', f'"{material}"'))
    with pytest.raises(Refused, match="no use as a collar"):
        make_procedure(job)


def test_magnesium_is_refused_for_its_swarf(tmp_path: Path) -> None:
    """NFPA 660: water on burning magnesium makes it worse."""
    job = job_of(tmp_path, "fernhill", "plate", ("stock-plate", '"aluminium-6082-t6"', '"magnesium"'))
    with pytest.raises(FactsWrong, match="its swarf burns and water feeds the fire"):
        make_procedure(job)


def test_no_stock_for_collars_at_all_is_a_missing_fact(tmp_path: Path) -> None:
    with pytest.raises(FactsWrong, match="collar_bars or collar_plates"):
        make_procedure(job_of(tmp_path, "fernhill", "", ("stock", r"\[\[stock.collar_bars\]\].*\Z", "")))


def test_a_source_that_is_not_in_stock_is_refused(tmp_path: Path) -> None:
    job = job_of(tmp_path, "fernhill", "", ("job", r"\Z", '\ncollar_source = "tube"\n'))
    assert "source-not-in-stock" in refused(job)


SIZES = list(itertools.product(("60 mm", "78 mm", "150 mm"), ("16 mm", "28 mm", "60 mm"), ("18 mm", "22 mm", "30 mm")))


@pytest.mark.parametrize(("across", "wide", "bore"), SIZES)
def test_every_size_is_a_sound_sheet_or_a_refusal(tmp_path: Path, across: str, wide: str, bore: str) -> None:
    large = f"{float(across.split()[0]) * 1.05:.1f} mm"
    jobs = [
        ("plate", (("stock-plate", '"80 mm"', f'"{across}"'), ("stock-plate", '"40 mm"', f'"{wide}"'))),
        ("cast", (("stock-cast", '"78 mm"', f'"{across}"'), ("stock-cast", '"82.5 mm"', f'"{large}"'),
                  ("stock-cast", '"42 mm"', f'"{wide}"'))),
        ("bored", (("stock-bored", '"70 mm"', f'"{across}"'), ("stock-bored", '"30 mm"', f'"{wide}"'),
                   ("stock-bored", '"22 mm"', f'"{bore}"'))),
    ]  # fmt: skip
    for source, changes in jobs:
        job = job_of(tmp_path / source, "fernhill", source, *changes)
        if advise(job).refused:
            with pytest.raises(Refused):
                make_procedure(job)
        else:
            assert make_procedure(job).phases


def test_tools_go_through_a_blank_as_it_was_faced_and_into_the_room_behind_it(tmp_path: Path) -> None:
    # Geometry: faced to 30 mm, a 23 mm drill with a 118 degree point, 3 mm to break through; jaws 30 mm deep hold 17 mm.
    sheet = made(tmp_path, "fernhill", "cast")
    point = 23 / 2 / tan(radians(59))
    assert setting(sheet, "face-blank-to-width", "collar.width").value == 30
    assert setting(sheet, "drill-blank", "hole.travel_needed").value == pytest.approx(30 + point + 3)
    assert setting(sheet, "drill-blank", "blank.room_behind").value == 30 - 17 > point + 3 + 1
    assert setting(sheet, "set-boring-bar", "bore.overhang").value == 35


@pytest.mark.parametrize("source", ["cast", "plate"])
def test_four_jaws_without_room_or_hole_behind_the_blank_are_refused(tmp_path: Path, source: str) -> None:
    stop = "tools-run-into-the-independent-chuck"
    deep, given = '(grips_to = "140 mm"\n)jaw_depth = "30 mm"', r"\1"
    unmeasured = job_of(tmp_path / "a", "fernhill", source, ("lathe", deep, given))
    assert stop in refused(unmeasured)
    shallow = job_of(tmp_path / "b", "fernhill", source, ("lathe", deep, rf'{given}jaw_depth = "24 mm"'))
    assert stop in refused(shallow)
    small = job_of(tmp_path / "c", "fernhill", source, ("lathe", deep, rf'{given}through_bore = "25 mm"'))
    assert stop in refused(small)
    sheet = made(tmp_path / "d", "fernhill", source, ("lathe", deep, rf'{given}through_bore = "60 mm"'))
    assert setting(sheet, "drill-blank", "hole.comes_out").value > 9


@pytest.mark.parametrize(("source", "passes"), [("cast", 7), ("plate", 22)])
def test_a_raw_blank_is_made_round_from_its_highest_place_in_passes(tmp_path: Path, source: str, passes: int) -> None:
    # Cast: 82.5 mm at the large end, 1 mm out of true, to 73 mm at 0.825 mm a side. Plate: the diagonal of 80 mm to 79 mm.
    sheet = made(tmp_path, "fernhill", source, LEFT_ON)
    assert setting(sheet, "turn-band", "collar.band_passes").value == passes
    work = [step for step in steps(sheet) if step.id in {"first-pass-raw", "turn-band"}]
    words = " ".join(piece for step in work for line in step.text for piece in line if isinstance(piece, str))
    assert words.index("highest place") < words.index("Take one pass") < words.index("Go on in equal passes")
