"""A third collar in the middle: on every paper where it may be, refused with the figures where it may not."""

from pathlib import Path

import pytest

from shops import EXAMPLES, FACEPLATE, shop
from tailtrue.advise import advise, make_procedure
from tailtrue.errors import Refused
from tailtrue.procedure import Procedure, Step

THREE = EXAMPLES / "fernhill" / "job-three.toml"
_WISH = ("job", r'^temperature = "20 degC"', 'temperature = "20 degC"\nthird_collar = true')
_NOT_MEASURED = ("job", r"^measured_\w+ = .*?\]\n", "")


def step(sheet: Procedure, name: str) -> Step:
    return next(step for phase in sheet.phases for step in phase.steps if step.id == name)


def stops(folder: Path, *changes: tuple[str, str, str]) -> dict[str, str]:
    """What the shop with a thin bar is refused, and why."""
    with pytest.raises(Refused) as refused:
        make_procedure(shop(folder, "fernhill", _WISH, _NOT_MEASURED, *changes))
    return {one.where: one.wrong for one in refused.value.problems}


def stout(folder: Path, *changes: tuple[str, str, str]) -> Path:
    """The job of the stout bar, with changes to its files."""
    shop(folder, "fernhill", *changes)
    return folder / "fernhill" / "job-three.toml"


def test_three_collars_stand_half_way_and_are_bought_bored_turned_and_read() -> None:
    sheet = make_procedure(THREE)
    assert sheet.drawing is not None
    assert sheet.record is not None
    assert sheet.card is not None
    sizes = {name: figure.value for name, figure in sheet.drawing.dimensions.items()}
    assert sizes["third.station"] == sizes["bar.length"] / 2
    assert sizes["third.apart"] == sizes["third.station"] - sizes["collar.station"]
    cut = next(one for one in sheet.cut_list if one.piece == "collar blank")
    assert cut.count == 3
    assert cut.buy is not None
    assert cut.buy.value > 3 * sizes["collar.width"]
    assert next(phase for phase in sheet.phases if phase.id == "collars").each == ("collar 1", "collar 2", "collar 3")
    read = [blank.label.split(",")[0] for blank in step(sheet, "read-three-collars").checks[0].blanks]
    assert read == ["headstock end", "middle", "tailstock end", "tailstock end", "middle", "headstock end"]
    assert "middle" in {block.id for block in sheet.record.blocks}
    told = {line.value.fact for group in sheet.card.groups for line in group.lines}
    assert {"bore.middle_low", "third.allowance"} <= told


def test_the_move_is_that_of_the_two_ends_alone() -> None:
    case = advise(THREE).case
    rows = case.value("align.table")
    row = next(one for one in rows if one["move"] is not None)
    # Similar triangles: half the difference of the end collars, carried from their distance to that of the centres.
    assert row["move"] == pytest.approx(row["difference"] / 2 * case.value("align.span") / case.value("collar.spacing"))


def test_a_bar_turned_end_for_end_has_its_collars_at_the_same_places() -> None:
    value = advise(THREE).case.value
    places = (value("collar.station"), value("third.station"), value("bar.length") - value("collar.station"))
    turned = sorted(value("bar.length") - place for place in places)
    assert turned == pytest.approx(sorted(places))


def test_two_collars_are_read_as_two() -> None:
    sheet = make_procedure(EXAMPLES / "fernhill" / "job.toml")
    ids = {step.id for phase in sheet.phases for step in phase.steps}
    assert "read-collars" in ids
    assert "read-three-collars" not in ids
    assert sheet.drawing is not None
    assert "third.station" not in sheet.drawing.dimensions
    assert "all three collars" not in sheet.model_dump_json()


def test_the_middle_bore_passes_the_largest_bar_on_its_way() -> None:
    value = advise(THREE).case.value
    way = max(*value("job.measured_middle"), *value("job.measured_tail"))
    assert value("bore.middle_low") >= way + value("bore.gap_least")
    assert value("bore.middle_high") <= min(value("job.measured_middle")) + value("bore.gap_largest")


def test_a_thin_bar_is_refused_with_what_it_bends(tmp_path: Path) -> None:
    found = stops(tmp_path)
    assert "gives way by 0.006\u00a0mm" in found["third-collar-bends"]
    assert "0.003\u00a0mm" in found["third-collar-bends"]


def test_bending_in_the_middle_is_that_of_a_beam_on_two_supports() -> None:
    # Any text on strength of materials (memory): F L^3 / (48 E I), and the diameter changes by twice that.
    value = advise(THREE).case.value
    inertia = 3.141592653589793 * value("bar.diameter") ** 4 / 64
    bend = value("skim.radial_force") * value("align.span") ** 3 / (48 * value("bar.modulus") * inertia)
    assert value("third.bend_on_diameter") == pytest.approx(2 * bend)


def test_short_stock_is_refused_with_its_length(tmp_path: Path) -> None:
    job = stout(tmp_path, ("stock-three", r'length = "130 mm"', 'length = "38 mm"'))
    with pytest.raises(Refused) as refused:
        make_procedure(job)
    found = {one.where: one.wrong for one in refused.value.problems}
    assert "60.0\u00a0mm" in found["third-collar-stock-short"]
    assert "38.0\u00a0mm" in found["third-collar-stock-short"]


def test_stock_for_three_narrow_collars_makes_them_narrower(tmp_path: Path) -> None:
    job = stout(tmp_path, ("stock-three", r'length = "130 mm"', 'length = "70 mm"'))
    value = advise(job).case.value
    assert 3 * (value("collar.width") + 2 * value("collar.facing_stock")) + 2 * value("limit.saw_kerf") <= 70


def test_a_middle_that_was_not_measured_is_refused(tmp_path: Path) -> None:
    job = stout(tmp_path, ("job-three", r"^measured_middle = .*?\]\n", ""))
    with pytest.raises(Refused) as refused:
        make_procedure(job)
    assert "third-collar-seat-not-measured" in {one.where for one in refused.value.problems}


def test_without_any_reading_the_bores_are_worked_out_at_the_bench(tmp_path: Path) -> None:
    sheet = make_procedure(stout(tmp_path, ("job-three", r"^measured_\w+ = .*?\]\n", "")))
    labels = ["".join(map(str, line.label)) for line in step(sheet, "bore-finish-unmeasured").settings]
    assert any(label.startswith("collar 3") for label in labels)


@pytest.mark.parametrize(
    ("change", "stop"),
    [
        (("job-three", r"^accuracy", 'do = "height-and-droop"\naccuracy'), "third-collar-on-another-sheet"),
        (("job-three", r"^accuracy", 'bar_length = "170 mm"\naccuracy'), "third-collar-has-no-room"),
    ],
    ids=lambda one: one if isinstance(one, str) else "",
)
def test_where_it_may_not_be_it_is_refused(tmp_path: Path, change: tuple[str, str, str], stop: str) -> None:
    job = stout(tmp_path, change)
    with pytest.raises(Refused) as refused:
        make_procedure(job)
    assert stop in {one.where for one in refused.value.problems}


def certified(folder: Path, diameter: str) -> Path:
    """The bar on the rack, of this thickness and with a third collar, certified anew."""
    shop(
        folder, "fernhill", ("re-certify", r"^accuracy", "third_collar = true\naccuracy"),
        ("stock", r'diameter = "25 mm"\nlength = "340 mm"', f'diameter = "{diameter}"\nlength = "340 mm"'),
    )  # fmt: skip
    return folder / "fernhill" / "re-certify.toml"


def test_a_stout_bar_is_certified_with_its_middle_as_a_control(tmp_path: Path) -> None:
    sheet = make_procedure(certified(tmp_path, "30 mm"))
    ids = [step.id for phase in sheet.phases for step in phase.steps]
    assert ids.count("read-three-collars") == 2
    assert "read-collars" not in ids
    compared = ["".join(map(str, check.text)) for check in step(sheet, "compare-swap").checks]
    assert any(text.startswith("Middle less the mean of both ends") for text in compared)
    assert sheet.work_record is not None
    rounds = next(block for block in sheet.work_record.blocks if block.id == "rounds")
    read = [place.label.split(",")[0] for place in rounds.entries if ", first" in place.label or ", second" in place.label]
    assert read == ["H", "middle", "T", "T", "middle", "H"]


def test_a_thin_bar_is_certified_by_its_ends_alone(tmp_path: Path) -> None:
    with pytest.raises(Refused) as refused:
        make_procedure(certified(tmp_path, "25 mm"))
    assert [one.where for one in refused.value.problems] == ["third-collar-bends"]


def test_the_decision_tells_why_a_third_may_not_be(tmp_path: Path) -> None:
    case = advise(shop(tmp_path, "fernhill", _WISH, _NOT_MEASURED)).case
    assert case.value("collar.count") is None


def test_collars_held_by_set_screws_are_two(tmp_path: Path) -> None:
    with pytest.raises(Refused) as refused:
        make_procedure(shop(tmp_path, "cinder-lane", ("job", r"^number", "third_collar = true\nnumber")))
    (stop,) = [one for one in refused.value.problems if one.where == "third-collar-not-bonded"]
    assert "set screws" in stop.wrong


def test_how_far_off_the_bar_may_read_counts_the_middle_seat_too(tmp_path: Path) -> None:
    """Sizes in steps of 0.005: a middle that reads 29.960 at the least takes 30.045 at the most, and 30.005 at the least."""
    readings = ", ".join(['"29.960 mm"'] * 3 + ['"29.968 mm"'] * 3)
    shop(tmp_path, "fernhill", ("job-three", r"^measured_middle = .*?\]", f"measured_middle = [{readings}]"))
    job = tmp_path / "fernhill" / "job-three.toml"
    case = advise(job).case
    assert case.value("bore.middle_high") - case.value("bore.middle_low") == pytest.approx(0.040)
    assert case.value("bore.window") == pytest.approx(0.040)
    assert case.value("bore.bar_slack") == pytest.approx(0.010)
    make_procedure(job)


PLATE = (
    "stock-three",
    r"\[\[stock\.collar_bars\]\].*",
    '[[stock.collar_plates]]\nlabel = "plate"\nmaterial = "aluminium-6082-t6"\nthickness = "40 mm"\nwidth = "80 mm"\nlength = "260 mm"\n',
)


def test_three_squares_of_one_plate_become_three_collars(tmp_path: Path) -> None:
    sheet = make_procedure(stout(tmp_path, PLATE))
    cut = next(one for one in sheet.cut_list if one.piece == "square slug")
    assert cut.count == 3
    sawn = step(sheet, "saw-slugs")
    assert "three squares" in " ".join("".join(map(str, line)) for line in sawn.text)
    # Two ways across the flats of each.
    assert [blank.count for check in sawn.checks for blank in check.blanks] == [6]
    assert [blank.label for blank in step(sheet, "saw-corners").checks[0].blanks] == ["slug 1", "slug 2", "slug 3"]
    assert next(phase for phase in sheet.phases if phase.id == "collars").each == ("collar 1", "collar 2", "collar 3")


def test_a_plate_for_two_squares_gives_no_third_collar_so_thick(tmp_path: Path) -> None:
    short = (PLATE[0], PLATE[1], PLATE[2].replace("260 mm", "170 mm"))
    with pytest.raises(Refused):
        make_procedure(stout(tmp_path, short))


def test_slugs_on_the_faceplate_give_no_third_collar(tmp_path: Path) -> None:
    no_four_jaw = ("lathe", r'\[\[lathe.chucks\]\]\nlabel = "200 mm four-jaw chuck".*?condition = "good"\n', "")
    said = "\n".join(f"{name} = {value}" for name, value in FACEPLATE.items())
    crib = ("crib", "compressed_air = true", f"compressed_air = true\n{said}")
    with pytest.raises(Refused) as refused:
        make_procedure(stout(tmp_path, PLATE, no_four_jaw, crib))
    assert "third-collar-not-sawn" in [one.where for one in refused.value.problems]
