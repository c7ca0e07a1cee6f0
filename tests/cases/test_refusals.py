"""Jobs that must not be printed: exit code, the reason with its figures, the way out, and nothing written."""

import json
from pathlib import Path

import pytest

from shops import shop, tailtrue
from tailtrue.advise import advise

REFUSED = [
    (
        "bar longer than the lathe takes",
        [("job", 'accuracy = "good"', 'accuracy = "good"\nbar_length = "700 mm"')],
        "bar-longer-than-the-lathe-takes",
        ["700", "657", "Leave the length of the bar out"],
    ),
    (
        "collar stock that does not swing over the cross slide",
        [("stock", 'diameter = "70 mm"', 'diameter = "120 mm"'), ("lathe", 'cross_slide = "195 mm"', 'cross_slide = "120 mm"')],
        "collar-does-not-swing",
        ["120", "110", "swings over the bed"],
    ),
    (
        "collar stock that no chuck grips",
        [("stock", 'diameter = "70 mm"', 'diameter = "120 mm"')],
        "collar-does-not-fit-the-chuck",
        ["120", "100", "larger chuck"],
    ),
    (
        "iron on a lathe whose slowest speed is too fast for high-speed steel",
        [("stock", '"aluminium-6082-t6"', '"iron-grey"'),
         ("lathe", r"^speeds = .*?\n", 'speeds = ["150 1/min", "300 1/min", "600 1/min", "1200 1/min"]\n'),
         ("lathe", r"^speed_settings = .*?\n", "")],
        "slowest-speed-too-fast",
        ["150", "70", "thinner stock", "carbide", "back gear"],
    ),
    (
        "a press that carries less than a catch",
        [("crib", 'compound_gap = .*activator = false\n', 'press_kind = "arbor"\npress_force = "30 kN"\npress_opening = "420 mm"\n')],
        "press-does-not-serve",
        ["30000", "0.927", "retaining compound"],
    ),
    (
        "hole in the chuck smaller than the bore",
        [("lathe", 'jaw_depth = "32 mm"', 'jaw_depth = "18 mm"'), ("lathe", 'through_bore = "40 mm"', 'through_bore = "24 mm"'),
         ("lathe", 'cam-lock"', 'cam-lock"\nsteady_from = "8 mm"\nsteady_to = "60 mm"')],
        "bore-runs-into-the-chuck",
        ["25.01", "24", "larger hole"],
    ),
    (
        "bar thicker than the spindle without a steady",
        [("lathe", 'spindle_bore = "38 mm"', 'spindle_bore = "20 mm"')],
        "bar-end-not-held",
        ["25", "20", "19.5", "0.5", "fixed steady", "spindle_bore"],
    ),
    (
        "bar of the very size of the hole in the chuck",
        [("lathe", 'through_bore = "40 mm"', 'through_bore = "25 mm"')],
        "bar-end-not-held",
        ["24.5", "the hole through the chuck", "through_bore"],
    ),
    (
        "bar that stands out behind the spindle",
        [("lathe", 'spindle_length = "430 mm"', 'spindle_length = "300 mm"')],
        "bar-stands-out-behind",
        ["300", "bar_length", "spindle_length"],
    ),
    (
        "length of the spindle not said",
        [("lathe", 'spindle_length = "430 mm"\n', "")],
        "spindle-length-not-said",
        ["chuck face to the rear end", "spindle_length in the lathe file"],
    ),
    (
        "no micrometer covers the collar",
        [("crib", r'\[\[crib.outside_micrometers\]\]\nfrom = "50 mm".*?\n\n', ""),
         ("crib", r'\[\[crib.outside_micrometers\]\]\nfrom = "25 mm".*?\n\n', ""),
         ("crib", 'indicator_division = "0.002 mm"\n', "")],
        "no-micrometer-covers-the-collar",
        ["69", "coarse use", "fine dial indicator"],
    ),
    (
        "an indicator too coarse for the limit",
        [("crib", r'\[\[crib.outside_micrometers\]\]\nfrom = "50 mm".*?\n\n', ""),
         ("crib", r'\[\[crib.outside_micrometers\]\]\nfrom = "25 mm".*?\n\n', ""),
         ("crib", 'indicator_division = "0.002 mm"', 'indicator_division = "0.01 mm"')],
        "indicator-too-coarse-for-the-collars",
        ["69", "in doubt by", "coarse use"],
    ),
    (
        "guard missing",
        [("lathe", 'chuck_guard = "interlocked"', 'chuck_guard = "none"')],
        "chuck-guard-missing",
        ["guard"],
    ),
    (
        "stop untested",
        [("lathe", 'stop = "tested"', 'stop = "untested"')],
        "stop-missing-or-untested",
        ["slowest speed and press it"],
    ),
    (
        "a minor without supervision",
        [("job", "minor = false", "minor = true"), ("job", "supervised = true", "supervised = false")],
        "minor-without-supervision",
        [],
    ),
    ("alone in a shared shop", [("job", "alone = false", "alone = true")], "alone-in-a-shared-shop", []),
    (
        "no boring bar",
        [("crib", r"\[\[crib.boring_bars\]\].*?(?=\[\[crib.outside)", '[[crib.boring_bars]]\nshank = "20 mm"\nreach = "80 mm"\nleast_bore = "26 mm"\nmaterial = "steel"\ntip = "HSS"\n\n')],
        "no-boring-bar-fits",
        ["23", "30"],
    ),
    (
        "too cold to cure",
        [("job", 'temperature = "20 degC"', 'temperature = "5 degC"')],
        "too-cold-to-cure",
        ["5", "15"],
    ),
    ("dog too small", [("crib", 'dog_to = "32 mm"', 'dog_to = "20 mm"')], "dog-does-not-fit", ["25", "20"]),
    (
        "nothing shows the move",
        [("crib", 'indicator_division = "0.002 mm"\n', "")],
        "nothing-shows-the-move",
        ["dial indicator"],
    ),
    (
        "a wished collar larger than its stock",
        [("job", 'accuracy = "good"', 'accuracy = "good"\ncollar_diameter = "75 mm"')],
        "collar-larger-than-its-stock",
        ["75", "69"],
    ),
    (
        "readings of another bar",
        [("job", r"24\.96(\d) mm", r"23.96\1 mm")],
        "bar-measures-otherwise",
        ["23.962", "25.00", "slip of half a turn"],
    ),
    (
        "colder than the bottle allows",
        [("crib", 'compound_cure = "24 h"', 'compound_cure = "24 h"\ncompound_least_temperature = "25 degC"')],
        "too-cold-to-cure",
        ["20", "25"],
    ),
    (
        "a learner on his own",
        [("job", 'operator = "trained"', 'operator = "learner"'), ("job", "supervised = true\n", "")],
        "learner-without-supervision",
        ["stand by"],
    ),
    (
        "a chuck that grips more than its body",
        [("lathe", 'grips_to = "100 mm"', 'grips_to = "300 mm"')],
        "chuck-figures-do-not-agree",
        ["300", "160"],
    ),
    (
        "a scroll chuck of four jaws alone",
        [("lathe", "jaws = 3", "jaws = 4")],
        "four-jaw-does-not-take-the-bar",
        ["lists no scroll chuck", "through_bore", "three-jaw scroll chuck"],
    ),
    (
        "drills that are all too large",
        [("crib", r'\[\[crib.drills\]\]\nset = .*?\n\n', ""), ("crib", r'sizes = \["16 mm", "20 mm", "23 mm"\]', 'sizes = ["30 mm"]'), ("crib", 'shank = "MT2"', 'shank = "MT3"')],
        "no-drill-to-begin-with",
        ["30.00 mm", "8.00 mm", "a larger one wants a pilot", "drill_chuck_to", "23.5"],
    ),
    (
        "drills that the tailstock does not hold",
        [("crib", r'\[\[crib.drills\]\]\nset = .*?\n\n', ""), ("crib", 'shank = "MT2"', 'shank = "MT4"')],
        "tailstock-holds-no-drill",
        ["MT3", "13", "drill_chuck_to"],
    ),
    (
        "a motor that drives no drill",
        [("crib", r'\[\[crib.drills\]\]\nset = .*?\n\n', ""), ("crib", r'sizes = \["16 mm", "20 mm", "23 mm"\]\nshank = "MT2"', 'sizes = ["8 mm"]\nshank = "straight"'),
         ("lathe", 'motor_power = "1.5 kW"', 'motor_power = "150 W"'), ("stock", '"aluminium-6082-t6"', '"iron-grey"')],
        "no-way-to-drill",
        ["8.00 mm", "2000 N given by the hand", "N m taken by its holder", "72 W there", "motor_power"],
    ),
    (
        "a bond that does not hold a tool that catches",
        [("crib", 'compound_cure = "24 h"', 'compound_cure = "24 h"\ncompound_strength = "1.5 MPa"')],
        "bond-too-weak",
        ["1.5 MPa", "as given", "1 or more is needed", "compound_strength in the crib file"],
    ),
    (
        "a centre drill that is too large",
        [("crib", r'centre_drills = \[.*?\]', 'centre_drills = ["A 6.3"]')],
        "no-centre-drill-fits",
        ["25"],
    ),
    (
        "a slowest speed far above the advised",
        [("lathe", r"speeds = \[.*?\]\nspeed_settings = \[.*?\]", 'speeds = ["900 1/min", "1800 1/min"]')],
        "slowest-speed-too-fast",
        ["900 rev/min", "70.0 mm", "passes the tool at", "Advised is", "HSS", "thinner stock"],
    ),
    ("no spacer for the jaws", [("crib", 'spacer = "12 mm"\n', "")], "blank-cannot-be-gripped", ["28", "32", "8", "22"]),
]  # fmt: skip


@pytest.mark.parametrize(("changes", "stop", "words"), [row[1:] for row in REFUSED], ids=[row[0] for row in REFUSED])
def test_a_refusal_says_why_with_figures_and_writes_nothing(
    tmp_path: Path, changes: list[tuple[str, str, str]], stop: str, words: list[str]
) -> None:
    job = shop(tmp_path, "fernhill", *changes)
    out = tmp_path / "out"
    done = tailtrue("make", job, "--out", out)
    assert done.returncode == 5, done.stdout + done.stderr
    assert stop in done.stderr
    for word in words:
        assert word in done.stderr.replace("\u00a0", " "), (word, done.stderr)
    assert "Traceback" not in done.stderr
    assert not out.exists()


def test_two_reasons_are_given_at_once_and_as_json(tmp_path: Path) -> None:
    job = shop(
        tmp_path, "fernhill",
        ("lathe", 'chuck_guard = "interlocked"', 'chuck_guard = "none"'), ("lathe", 'stop = "tested"', 'stop = "none"'),
    )  # fmt: skip
    done = tailtrue("check", job, "--json")
    assert done.returncode == 5
    said = json.loads(done.stdout)
    assert said["ok"] is False
    assert {error["where"] for error in said["errors"]} == {"chuck-guard-missing", "stop-missing-or-untested"}
    assert all(error["kind"] == "Refused" and error["do"] for error in said["errors"])


@pytest.mark.parametrize("key", ["chuck_guard", "stop", "dial_reads", "tool_side"])
def test_what_has_no_default_must_be_said(tmp_path: Path, key: str) -> None:
    job = shop(tmp_path, "fernhill", ("lathe", rf"^{key} = .*?\n", ""))
    done = tailtrue("make", job, "--out", tmp_path / "out")
    assert done.returncode == 4
    assert key in done.stderr
    assert not (tmp_path / "out").exists()


def test_unsaid_chuck_marking_is_a_missing_fact(tmp_path: Path) -> None:
    job = shop(tmp_path, "fernhill", ("lathe", r"^marked_speed = .*?\n", ""))
    done = tailtrue("make", job, "--out", tmp_path / "out")
    assert done.returncode == 4
    assert "marked_speed" in done.stderr


def test_coarse_use_prints_without_a_verdict(tmp_path: Path) -> None:
    job = shop(
        tmp_path, "fernhill",
        ("crib", r'\[\[crib.outside_micrometers\]\]\nfrom = "50 mm".*?\n\n', ""),
        ("crib", r'\[\[crib.outside_micrometers\]\]\nfrom = "25 mm".*?\n\n', ""),
        ("crib", 'indicator_division = "0.002 mm"', 'indicator_division = "0.01 mm"'),
        ("job", 'accuracy = "good"', 'accuracy = "good"\ncoarse_use = true'),
    )  # fmt: skip
    out = tmp_path / "out"
    done = tailtrue("make", job, "--out", out)
    assert done.returncode == 0, done.stderr
    look_up = json.loads((out / "procedure.json").read_text(encoding="utf-8"))["look_up"]
    assert look_up["verdict_possible"] is False
    assert look_up["inside"] is None


def test_unmarked_chuck_is_allowed_and_held_low(tmp_path: Path) -> None:
    job = shop(tmp_path, "fernhill", ("lathe", 'marked_speed = "2500 1/min"', 'marked_speed = "unmarked"'))
    done = tailtrue("check", job)
    assert done.returncode == 0, done.stderr
    assert "carries no speed mark" in done.stdout


def test_two_gauges_of_a_kind_and_the_one_that_holds_the_bore_is_taken(tmp_path: Path) -> None:
    """With a set of telescoping gauges the plan took the first and the inspection the last."""
    job = shop(
        tmp_path, "fernhill",
        ("crib", r'\[\[crib.bore_gauges\]\].*', '[[crib.bore_gauges]]\nkind = "telescoping"\nfrom = "12 mm"\nto = "32 mm"\n\n[[crib.bore_gauges]]\nkind = "telescoping"\nfrom = "30 mm"\nto = "50 mm"\n'),
    )  # fmt: skip
    done = tailtrue("make", job, "--out", tmp_path / "out")
    assert done.returncode == 0, done.stderr


def test_a_lathe_may_be_called_what_its_owner_likes(tmp_path: Path) -> None:
    job = shop(
        tmp_path,
        "fernhill",
        ("lathe", 'name = "Lathe 2"', 'name = "None"'),
        ("stock", "70 mm aluminium round, rack D", "TODO bar"),
    )
    done = tailtrue("make", job, "--out", tmp_path / "out")
    assert done.returncode == 0, done.stderr


def test_an_empty_lathe_file_is_said_once(tmp_path: Path) -> None:
    job = shop(tmp_path, "fernhill")
    (job.parent / "lathe.toml").write_text("", encoding="utf-8")
    done = tailtrue("check", job)
    assert done.returncode == 4
    assert "begin this file with the line [lathe]" in done.stderr
    assert "two ways" not in done.stderr


@pytest.mark.parametrize("job", ["use-bar", "taper-and-return"])
def test_a_dog_too_near_the_collar_of_a_bar_on_hand_is_refused(tmp_path: Path, job: str) -> None:
    # 25 mm of dog and half of a 25 mm collar leave 3.5 mm before a collar at 41 mm.
    path = shop(tmp_path, "fernhill", ("stock", '^station = "48 mm"', 'station = "41 mm"')).with_name(f"{job}.toml")
    answer = tailtrue("check", path)
    assert answer.returncode == 5
    assert "The dog comes too near the collar of the bar on hand" in answer.stdout + answer.stderr


def test_plain_jaws_of_a_chuck_whose_hole_nobody_measured_are_refused(tmp_path: Path) -> None:
    plain = (("lathe", 'jaw_depth = "32 mm"', 'jaw_depth = "15 mm"'), ("crib", 'spacer = "12 mm"\n', ""))
    measured = advise(shop(tmp_path / "measured", "fernhill", *plain))
    assert (measured.case.value("collar.hold"), measured.refused) == ("jaws", ())
    not_measured = advise(shop(tmp_path / "not", "fernhill", *plain, ("lathe", 'through_bore = "40 mm"\n', "")))
    (refusal,) = not_measured.refused
    assert refusal.id == "bore-runs-into-the-chuck"
    assert "Not known: hole through the chuck" in str(refusal.text)


def test_a_spacer_makes_room_where_the_hole_of_the_chuck_is_too_small_for_the_tools(tmp_path: Path) -> None:
    narrow = (
        ("lathe", 'jaw_depth = "32 mm"', 'jaw_depth = "24 mm"'),
        ("lathe", 'through_bore = "40 mm"', 'through_bore = "24 mm"'),
    )
    steady = ("lathe", "fixed_down = true", 'fixed_down = true\nsteady_from = "8 mm"\nsteady_to = "60 mm"')
    spaced = advise(shop(tmp_path / "spaced", "fernhill", *narrow, steady))
    assert (spaced.case.value("collar.hold"), spaced.refused) == ("jaws-and-spacer", ())
    without = advise(shop(tmp_path / "without", "fernhill", *narrow, steady, ("crib", 'spacer = "12 mm"\n', "")))
    (refusal,) = without.refused
    assert refusal.id == "bore-runs-into-the-chuck"
    assert any("spacer" in str(way) for way in refusal.way_out)
