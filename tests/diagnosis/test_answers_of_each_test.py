"""What a sweep, fresh skims, clamping and repeated tests add to an answer, and when they are left out."""

from pathlib import Path

import pytest

from diagnosis.files import CLAMPED, THREE, again, centres, chucked, diagnosed, level, sweep, told


def test_a_sweep_alone_cannot_tell_a_low_tailstock_from_a_drooping_axis(tmp_path: Path) -> None:
    found = diagnosed(tmp_path, sweep(top="-0.050", bottom="0.050"))
    assert found.answer == "cannot-tell"
    assert {"height", "headstock-pitch"} <= set(found.rivals)
    assert found.next_test is not None
    assert found.next_test.id == "height"


def test_a_sweep_takes_the_droop_off(tmp_path: Path) -> None:
    both = sweep(top="0.006", bottom="-0.006") + '[height]\nhead = "0 mm"\ntail = "0 mm"\n'
    assert diagnosed(tmp_path, both).estimates["headstock-pitch"].value == pytest.approx(0.0, abs=1e-9)


def test_a_sweep_that_does_not_close_is_left_out(tmp_path: Path) -> None:
    found = diagnosed(tmp_path, sweep(rear="-0.030") + centres())
    assert found.left_out == {"sweep": pytest.approx(0.030)}
    assert "The sweep was left out: front and rear together differ from top and bottom by 0.030 mm" in told(found, "first")
    assert found.answer == "nothing"
    assert not diagnosed(tmp_path, sweep(rear="-0.004") + centres()).left_out


SWEPT = """
[sweep]
front = "0 mm"
top = "-0.010 mm"
rear = "-0.030 mm"
bottom = "-0.019 mm"
sag = "0.006 mm"
where = "{where}"
"""


@pytest.mark.parametrize(("where", "offset"), [("outside", 0.015), ("bore", -0.015)])
def test_the_signs_of_a_bore_are_reversed(tmp_path: Path, where: str, offset: float) -> None:
    """Worked sweep: 0, -10, -30, -19 um stand 15 um toward the operator on the outside."""
    text = SWEPT.format(where=where) + chucked() + level()
    assert diagnosed(tmp_path, text).estimates["tailstock"].value == pytest.approx(offset, abs=3e-4)


INDICATED = """
[indicator_on_collars]
tool_side_head = "0 mm"
tool_side_tail = "{near} mm"
far_side_head = "0 mm"
far_side_tail = "{far} mm"
"""


def test_the_far_side_of_fresh_skims_reads_the_whole_difference(tmp_path: Path) -> None:
    text = centres(tail="69.640") + INDICATED.format(near="0.000", far="0.040")
    found = diagnosed(tmp_path, text)
    assert found.estimates["tailstock"].value == pytest.approx(-0.025)
    assert found.best.chance_of_worse == pytest.approx(1.0, abs=0.1)


def test_fresh_skims_that_differ_on_the_side_of_the_tool_are_left_out(tmp_path: Path) -> None:
    found = diagnosed(tmp_path, centres() + INDICATED.format(near="0.020", far="0.040"))
    assert found.left_out == {"indicator_on_collars": pytest.approx(0.020)}
    assert "it changed by 0.020 mm" in told(found, "first")
    assert not diagnosed(tmp_path, centres() + INDICATED.format(near="0.004", far="0.000")).left_out
    said = INDICATED.format(near="0.020", far="0.000").rstrip() + '\ngive_or_take = "0.012 mm"\n'
    assert not diagnosed(tmp_path, centres() + said).left_out


def test_readings_a_turn_of_the_thimble_apart_are_left_out(tmp_path: Path) -> None:
    found = diagnosed(tmp_path, centres(tail="70.105") + level())
    assert found.left_out == {"between_centres": pytest.approx(0.505)}
    assert "close to whole or half turns of the thimble" in told(found, "first")
    assert "Move the tailstock" not in told(found)


def test_a_tailstock_that_does_not_come_back_stops_every_move(tmp_path: Path) -> None:
    loose = CLAMPED.format(clamped='"0.020 mm", "-0.010 mm", "0.004 mm", "-0.018 mm", "0.010 mm"')
    found = diagnosed(tmp_path, centres(tail="69.680") + chucked() + level() + loose)
    assert "clamping" in found.named
    said = told(found, "do")
    assert "Do not move the tailstock yet: a tailstock that does not come back to its place comes first." in said
    assert "with a standard deviation of 0.015 mm (0.0006 in); more than 0.004 mm" in told(found, "found")


def test_a_tailstock_that_comes_back_aside_is_told_to_aim_off(tmp_path: Path) -> None:
    firm = CLAMPED.format(clamped='"0.008 mm", "0.008 mm", "0.009 mm", "0.008 mm", "0.008 mm"')
    found = diagnosed(tmp_path, firm)
    assert (found.answer, found.named) == ("nothing", ())
    assert "Clamping carries the centre 0.008 mm (0.0003 in) into the plunger" in told(found, "found")


@pytest.mark.parametrize(("kind", "tail", "cause"), [
    ("centre_turned", "69.572", "eccentric-centre"), ("bar_turned_end_for_end", "69.572", "centre-holes"),
    ("more_spring_passes", "69.607", "soft-end"),
])  # fmt: skip
def test_what_changes_with_one_thing_belongs_to_it(tmp_path: Path, kind: str, tail: str, cause: str) -> None:
    first = centres(tail="69.628") if cause != "soft-end" else centres(tail="69.624")
    assert next(iter(diagnosed(tmp_path, first + again(kind, tail)).weights)) == cause


def test_a_difference_that_changes_its_side_with_the_order_is_wear_of_the_tool(tmp_path: Path) -> None:
    first = centres(tail="69.607").rstrip() + '\ncut_first = "head"\n'
    assert next(iter(diagnosed(tmp_path, first + again("cut_order_reversed", "69.593")).weights)) == "tool-wear"
    # Without the order nobody can say so.
    assert "tool-wear" not in diagnosed(tmp_path, centres(tail="69.607") + again("cut_order_reversed", "69.593")).weights


def test_a_place_that_changes_with_clamping_is_the_clamping(tmp_path: Path) -> None:
    found = diagnosed(tmp_path, centres() + again("clamped_anew", "69.624") + again("more_spring_passes", "69.600"))
    assert found.named == ("clamping",)


def test_a_third_collar_off_the_line_is_no_fault_of_the_tailstock(tmp_path: Path) -> None:
    text = THREE.format(tail="69.600", middle="69.618")
    found = diagnosed(tmp_path, text)
    assert {"bar-bends", "bowed-path"} <= {*found.rivals, *found.named}
    assert found.next_test is not None
    assert found.next_test.id == "more_spring_passes"
    stays = diagnosed(tmp_path, text + again("more_spring_passes", "69.600") + 'middle = ["69.618 mm", "69.618 mm"]\n')
    assert stays.named == ("bowed-path",)
    assert "No setting of the tailstock cures it" in told(stays, "do")
    fades = diagnosed(tmp_path, text + again("more_spring_passes", "69.600") + 'middle = ["69.604 mm", "69.604 mm"]\n')
    assert fades.named == ("bar-bends",)


def test_readings_that_no_cause_explains_get_no_cause(tmp_path: Path) -> None:
    wild = (
        centres(tail="69.640") + again("clamped_anew", "69.570") + again("more_spring_passes", "69.520")
        + again("centre_turned", "69.680") + again("bar_turned_end_for_end", "69.450")
        + again("cut_order_reversed", "69.710")
    )  # fmt: skip
    found = diagnosed(tmp_path, wild)
    assert (found.answer, found.named, found.rivals, found.next_test) == ("unexplained", (), (), None)
    assert "None of the known causes explains these readings together" in told(found, "answer")
    assert "Move" not in told(found)
    assert told(found, "do") == ""
