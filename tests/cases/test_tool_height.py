"""A tool comes to centre height by what this shop can trust, and the steps that fit it say by what."""

from pathlib import Path

from tailtrue.procedure import Procedure

from .test_choices import Change, made, plain


def line(sheet: Procedure, step: str, words: str) -> str:
    said = [plain(text) for phase in sheet.phases for one in phase.steps if one.id == step for text in one.text]
    return next(text for text in said if words in text)


LATHE: Change = ("lathe", "tool_side =", 'tool_post = "quick-change"\ntailstock_height_right = true\ntool_side =')
CRIB: Change = ("crib", "compressed_air =", "height_gauge = true\ncompressed_air =")


def test_a_tailstock_under_test_sets_no_tool(tmp_path: Path) -> None:
    # Common practice: the headstock centre lies on the axis; a tailstock under suspicion hands its own fault on.
    sheet = made(tmp_path, "fernhill")
    assert "the point of the headstock centre" in line(sheet, "fit-tailstock-centre", "centre height")
    assert "a trial face without a pip" in line(sheet, "hold-blank-spacer", "centre height")
    assert line(sheet, "set-boring-bar", "centre height").endswith("or a hair above.")
    assert "from the facing tool" in line(sheet, "set-boring-bar", "that height")
    shown = next(one for one in sheet.choices if one.id == "tool.height_centres")
    left = {way.name: way.reason for way in shown.alternatives if way.verdict != "chosen"}
    assert left["the point of the tailstock centre"] == "its height is in doubt"
    assert left["a rule nipped between tip and bar"] == "the tip bruises a finished bar"


def test_a_tailstock_found_right_sets_the_tools_and_the_post_lifts_its_own_way(tmp_path: Path) -> None:
    sheet = made(tmp_path, "fernhill", LATHE)
    fitted = line(sheet, "fit-tailstock-centre", "centre height")
    assert "shown by the point of the tailstock centre. Lift it by the screw of its holder." in fitted
    assert "from the tailstock centre" in line(sheet, "set-boring-bar", "that height")


def test_a_tool_at_the_rear_is_sprung_the_other_way(tmp_path: Path) -> None:
    # Common practice: upside down behind the work, with the spindle forward, the cut lifts the tip.
    sheet = made(tmp_path, "fernhill", ("lathe", 'tool_side = "front"', 'tool_side = "rear"'))
    assert line(sheet, "set-boring-bar", "centre height").endswith("or a hair below.")


def test_a_ready_bored_blank_has_no_middle_that_could_show_a_pip(tmp_path: Path) -> None:
    rule = made(tmp_path / "rule", "fernhill", job="job-bored.toml")
    gauge = made(tmp_path / "gauge", "fernhill", CRIB, job="job-bored.toml")
    assert "a rule nipped at the rough rim" in line(rule, "hold-blank-spacer", "centre height")
    assert "a height gauge" in line(gauge, "hold-blank-spacer", "centre height")
