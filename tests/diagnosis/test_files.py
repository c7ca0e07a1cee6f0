"""A file of tests: every fault at once with its line, in words; units typed; nothing guessed."""

from pathlib import Path

import pytest

from diagnosis.files import centres, chucked, diagnosed, faults, level, sweep
from tailtrue.diagnosis.knowing import known
from tailtrue.diagnosis.tests_file import TestsWrong, read_tests

WRONG = """
[between_centers]
head = ["69.612 mm"]

[chucked_bar]
stations = ["20 mm", "95"]
diameters = ["39,902 mm", "39.908 mm", "39.911 mm"]
stickout = "130 mm"
instrument = "caliper"

[level]
stations = ["0 mm"]
readings = ["0.02 mm", "3 degC/m"]
plus_is = "front high"

[more_spring_passes]
head = ["69.612 mm"]
"""


def test_every_fault_is_told_at_once_with_its_line(tmp_path: Path) -> None:
    found = faults(tmp_path, WRONG)
    for start in (
        "tests.toml:2: [between_centers]: is no test that is known here: 'between_centres' comes nearest; tests are ",
        'tests.toml:6: stations: "95": has no unit: write 95 mm',
        'tests.toml:7: diameters: "39,902 mm": the decimal mark must be a point: write ',
        "tests.toml:8: stickout = \"130 mm\": unknown key 'stickout': a key named 'stick_out' exists",
        'tests.toml:9: instrument = "caliper": is too coarse to tell these causes apart: read the collars with a micrometer',
        "tests.toml:5: bar_diameter of [chucked_bar]: not given: add bar_diameter = \"40 mm\" below [chucked_bar]",
        'tests.toml:12: stations = ["0 mm"]: holds 1, and at least 2 are needed',
        'tests.toml:13: "0.02 mm": is no reading of a level: write mm/m or thou/ft, such as "0.10 mm/m"',
        'tests.toml:13: "3 degC/m": degC is a temperature, and a length is needed: write mm/m or thou/ft',
        'tests.toml:14: plus_is = "front high": is not one of the choices: write front low or rear low',
        "tests.toml:16: tail of [more_spring_passes]: not given: add tail = ",
        "tests.toml:16: [more_spring_passes]: stands without [between_centres]: add [between_centres]",
    ):  # fmt: skip
        assert any(one.startswith(start) for one in found), (start, found)
    assert len(found) == 12
    lines = [int(one.split(":")[1]) for one in found]
    assert lines == sorted(lines)


@pytest.mark.parametrize(("text", "start"), [
    ("", "tests.toml: : holds no test: write a table for each test that was made, such as [between_centres]"),
    ('level = "flat"\n', 'tests.toml:1: level = "flat": is not one table: write its keys below one line [level]'),
    ('date = "today"\n', 'tests.toml:1: date = "today": is no test that is known here: tests are '),
    ("[level\n", "tests.toml:1: [level: cannot be read as TOML"),
    (level().replace('"0.00 mm/m", ', ""), 'tests.toml:4: readings = ["0.00 mm/m"]: holds 1, and at least 2'),
    (level().replace('"0 mm", "500 mm"', '"0 mm", "250 mm", "500 mm"'),
     'tests.toml:4: readings = ["0.00 mm/m", "0.00 mm/m"]: holds 2, and stations holds 3: write one for each'),
    (level().replace("500 mm", "0 mm"), 'tests.toml:3: stations = ["0 mm", "0 mm"]: are all one place'),
    (level("12.00"), 'tests.toml:4: "12.00 mm/m": is not plausible here: 10 mm/m at most is'),
    (level("0,10"), 'tests.toml:4: "0,10 mm/m": the decimal mark must be a point'),
    (centres().rstrip() + '\nmiddle = ["69.6 mm"]\n', "tests.toml:5: middle: stands without middle_station"),
    (centres().rstrip() + '\nmiddle = ["69.6 mm"]\nmiddle_station = "290 mm"\n',
     "tests.toml:2: middle_station: is not between the other two collars, at 30 mm and 270 mm: measure from"),
    (centres() + '[centre_turned]\nhead = ["69.6 mm"]\ntail = ["69.6 mm"]\nmiddle = ["69.6 mm"]\n',
     "tests.toml:8: middle: is not given in [between_centres]: add it there, or take it out here"),
    (centres("3.000"), 'tests.toml:3: head: "3.000 mm": is not plausible here: 5 mm to 500 mm is'),
    (sweep().replace('sag = "0.006 mm"\n', ""), "tests.toml:2: sag of [sweep]: not given"),
    (sweep(rear="0.100"), "tests.toml:2: [sweep]: contradicts itself"),
    (centres("20.000", "20.000").rstrip() + '\ntool_height = "3 mm"\n', "tests.toml:2: [between_centres]: height of the tool as a share"),
    ('[clamping]\nreleased = ["0 mm", "0 mm", "0 mm"]\nclamped = ["0 mm", "0 mm", "0 mm", "0 mm"]\n',
     'tests.toml:3: clamped = ["0 mm", "0 mm", "0 mm", "0 mm"]: holds 4, and released holds 3'),
])  # fmt: skip
def test_a_fault_is_told_in_words(tmp_path: Path, text: str, start: str) -> None:
    found = faults(tmp_path, text)
    assert found, text
    text = "tests.toml" + found[0].split("tests.toml", 1)[1]
    assert text.startswith(start), found


def test_what_is_right_has_no_fault(tmp_path: Path) -> None:
    assert faults(tmp_path, centres() + chucked() + level() + sweep()) == []


def test_a_file_that_is_not_there(tmp_path: Path) -> None:
    with pytest.raises(TestsWrong, match="there is no such file"):
        read_tests(tmp_path / "none.toml", known())


def test_inches_and_millimetres_say_the_same(tmp_path: Path) -> None:
    metric = diagnosed(tmp_path, centres("50.8000", "50.8508") + level("0.30"))
    inch = diagnosed(
        tmp_path,
        '[between_centres]\nhead = ["2.0000 in", "2.0000 in"]\ntail = ["2.0020 in", "2.0020 in"]\n'
        '[level]\nstations = ["0 mm", "500 mm"]\nreadings = ["0 thou/ft", "3.6 thou/ft"]\nplus_is = "front low"\n',
    )
    assert metric.estimates
    for name, estimate in metric.estimates.items():
        assert inch.estimates[name].value == pytest.approx(estimate.value, rel=1e-6), name


def unsure(folder: Path, text: str) -> float:
    return diagnosed(folder, text).estimates["tailstock"].standard_uncertainty


def test_more_readings_are_surer_and_coarse_ones_less_sure(tmp_path: Path) -> None:
    two = unsure(tmp_path, centres("69.600", "69.640"))
    one = unsure(tmp_path, '[between_centres]\nhead = ["69.600 mm"]\ntail = ["69.640 mm"]\n')
    coarse = unsure(tmp_path, centres("69.60", "69.64"))
    assert two < one
    assert two < coarse
    # u of one collar: scatter 1.5 um over root 2, 1 um beside, 1 um / root 12 of rounding; the move is 0.625 of dD.
    each = (1.5**2 / 2 + 1.0 + 1 / 12) ** 0.5 / 1000
    assert two == pytest.approx(each * 2**0.5 * 0.625)


def test_a_doubt_that_is_said_counts_in_place_of_the_usual_one(tmp_path: Path) -> None:
    said = unsure(tmp_path, centres("69.600", "69.640").rstrip() + '\ngive_or_take = "0.010 mm"\n')
    assert said == pytest.approx(0.005 * 2**0.5 * 0.625)


def test_the_height_of_the_centres_is_half_the_swing_where_it_is_not_said(tmp_path: Path) -> None:
    half = diagnosed(tmp_path, level("0.30"), height_of_centres_mm=165).estimates["bed-twist"].value
    said = diagnosed(tmp_path, level("0.30").rstrip() + '\nheight_of_centres = "330 mm"\n').estimates["bed-twist"].value
    assert said == pytest.approx(2 * half)


def test_a_tool_off_height_lets_the_height_of_the_tailstock_in(tmp_path: Path) -> None:
    """dD = -2 t h (b - a) / (R L): with the tool 1 mm high and h unknown, the offset is no longer settled."""
    plain = diagnosed(tmp_path, centres(tail="69.640"))
    high = diagnosed(tmp_path, centres(tail="69.640").rstrip() + '\ntool_height = "1 mm"\n')
    assert "tailstock" in plain.estimates
    assert "tailstock" not in high.estimates
