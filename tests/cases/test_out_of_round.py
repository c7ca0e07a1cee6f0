"""Round stock that is out of round: three jaws up to a limit, four jaws up to another, and beyond that no sheet."""

from pathlib import Path

import pytest

from shops import shop
from tailtrue.advise import Advice, advise, make_procedure
from tailtrue.parts import Figure

Change = tuple[str, str, str]


def uneven(size: str) -> Change:
    return ("stock", '(label = "70 mm aluminium round, rack D".*?)length', rf'\1out_of_round = "{size}"\nlength')


def asked(folder: Path, *changes: Change) -> Advice:
    return advise(shop(folder, "fernhill", *changes))


@pytest.mark.parametrize(
    ("size", "hold", "chuck"),
    [
        ("0 mm", "jaws-and-spacer", "160 mm three-jaw chuck"),
        ("0.5 mm", "jaws-and-spacer", "160 mm three-jaw chuck"),
        ("0.51 mm", "four-jaw", "200 mm four-jaw chuck"),
        ("2 mm", "four-jaw", "200 mm four-jaw chuck"),
    ],
)
def test_farther_out_of_round_than_three_jaws_hold_goes_into_four(tmp_path: Path, size: str, hold: str, chuck: str) -> None:
    advice = asked(tmp_path, uneven(size))
    assert advice.refused == ()
    assert advice.case.value("collar.hold") == hold
    assert advice.case.value("blank.chuck_label") == chuck


def test_beyond_four_jaws_nothing_is_printed_and_both_limits_are_told(tmp_path: Path) -> None:
    (stop,) = [one for one in asked(tmp_path, uneven("2.1 mm")).refused if one.id == "blank-too-far-out-of-round"]
    assert [piece.value for piece in stop.text if isinstance(piece, Figure)] == pytest.approx([2.1, 0.508, 2.0])
    assert any("out_of_round" in str(way) for way in stop.way_out)


def test_without_a_four_jaw_chuck_it_is_refused(tmp_path: Path) -> None:
    no_chuck = ("lathe", r'\[\[lathe.chucks\]\]\nlabel = "200 mm four-jaw.*', "")
    assert "no-independent-chuck" in {one.id for one in asked(tmp_path, uneven("1 mm"), no_chuck).refused}


def test_the_sheet_turns_a_band_first_and_sets_the_blank_with_an_indicator(tmp_path: Path) -> None:
    sheet = make_procedure(shop(tmp_path, "fernhill", uneven("1 mm")))
    names = [step.id for phase in sheet.phases for step in phase.steps]
    marks = ["saw-blanks", "change-to-four-jaw", "hold-uneven", "turn-band", "grip-band", "turn-rest", "reseat-four-jaw"]
    assert [one for one in names if one in marks] == marks
    assert not {"hold-blank-spacer", "hold-casting", "hold-slug", "reseat-spacer"} & set(names)
    phase = next(phase for phase in sheet.phases if any(step.id == "hold-uneven" for step in phase.steps))
    told = {caution.id for caution in phase.cautions} | {one.id for step in phase.steps for one in step.cautions}
    assert "raw-blank-out-of-balance" in told


def test_the_blank_is_gripped_and_swung_by_its_largest_and_made_round_within_its_smallest(tmp_path: Path) -> None:
    case = asked(tmp_path, uneven("1.5 mm")).case
    assert case.value("collar.gripped_diameter") == pytest.approx(71.5)
    assert case.value("collar.corner_diameter") == pytest.approx(71.5)
    assert case.value("collar.blank_diameter") == pytest.approx(68)


def test_in_three_jaws_all_that_it_is_out_of_round_slows_the_spindle(tmp_path: Path) -> None:
    """Half the run-out, twice the force of unbalance: the speed falls with the root of it."""
    near, far = (
        asked(tmp_path / size, uneven(f"{size} mm")).case.value("collar.unbalance_speed") for size in ("0.2", "0.4")
    )
    assert near / far == pytest.approx(2**0.5)
    assert asked(tmp_path / "round").case.value("collar.run_out") == pytest.approx(0.1)
