"""What stands on the step list of a move for this lathe and crib, and slips of the hand that must not pass for a reading."""

from pathlib import Path
from shutil import copytree

import pytest

from tailtrue.advise import advise
from tailtrue.case import Case
from tailtrue.errors import ReadingsWrong, report
from tailtrue.facts import Fact
from tailtrue.render.words import say
from tailtrue.truing.trials import judge_clamping
from tailtrue.truing.typed import read_lists
from tailtrue.truing.visit import Visit, judge_visit

FERNHILL = Path(__file__).parents[2] / "docs" / "examples" / "fernhill"
METRIC = advise(FERNHILL / "job.toml").case
HEAD, TAIL = "69.612 mm, 69.613 mm", "69.655 mm, 69.654 mm"


def changed(**facts: object) -> Case:
    names = {name.replace("__", "."): value for name, value in facts.items()}
    return METRIC.with_said({name: Fact(METRIC.knowledge.catalogue[name], value) for name, value in names.items()})


def visit(case: Case = METRIC, head: str = HEAD, tail: str = TAIL, **also: object) -> Visit:
    return judge_visit(
        case, read_lists(head, tail, "HTTH"), also={f"visit.{name}": one for name, one in also.items()}, kind="micrometer"
    )


def steps(found: Visit) -> list[str]:
    return [say(line.text, "metric").replace("\u00a0", " ") for line in found.part("steps")]


def place(told: list[str], words: str) -> int:
    (found,) = (number for number, one in enumerate(told) if words in one)
    return found


def test_the_steps_of_a_move_stand_in_a_safe_order() -> None:
    told = steps(visit())
    in_order = ("Isolate the lathe", "Slacken", "Stop when", "Tug the tailstock", "keys off the lathe", "restore power")
    assert [place(told, words) for words in in_order] == sorted(place(told, words) for words in in_order)
    assert "by hand" in told[place(told, "keys off the lathe")]


def test_a_lathe_with_one_screw_is_not_told_of_another() -> None:
    assert "Bring the other screw up to light contact." in steps(visit())
    assert "other" not in " ".join(steps(visit(changed(lathe__set_over="one-screw"))))


def test_without_an_indicator_none_is_set_or_read(tmp_path: Path) -> None:
    shop = Path(copytree(FERNHILL, tmp_path / "shop"))
    crib = (shop / "crib.toml").read_text(encoding="utf-8")
    (shop / "crib.toml").write_text(crib.replace('indicator_division = "0.002 mm"\n', ""), encoding="utf-8")
    told = steps(visit(advise(shop / "job.toml").case))
    assert "The crib has no indicator" in told[place(told, "Borrow one")]
    assert not [one for one in told if "read the indicator" in one or "Stand the indicator" in one]
    assert "Tug the tailstock" in told[place(told, "Clamp base and quill as in use")]


@pytest.mark.parametrize(("head", "skim"), [("50.310 mm", True), ("50.290 mm", False)])
def test_collars_that_bear_no_further_skim_are_not_skimmed(head: str, skim: bool) -> None:
    # A truing cut of 0.1 mm and a skim of 0.05 mm on each side cost 0.3 mm; the collars are worn out at 50 mm.
    found = visit(head=f"{head}, {head}", tail="50.350 mm, 50.350 mm")
    assert any("Skim both collars" in one for one in steps(found)) is skim
    assert any("Do not skim these collars again" in one for one in steps(found)) is not skim
    assert [one.id for one in found.remarks] == ["bar-nearly-worn-out" if skim else "bar-worn-out"]


@pytest.mark.parametrize("warm", [71.0, 240.0])
def test_a_collar_too_warm_to_be_reckoned_is_refused(warm: float) -> None:
    with pytest.raises(ReadingsWrong) as wrong:
        visit(head_temperature=warm, tail_temperature=20.0)
    assert "look at the thermometer" in report(wrong.value)


def test_a_collar_just_inside_what_can_be_reckoned_bars_the_move() -> None:
    assert [one.id for one in visit(head_temperature=70.0, tail_temperature=20.0).remarks] == ["collar-warm"]


@pytest.mark.parametrize("station", [20.0, 340.0])
def test_a_middle_collar_that_is_not_in_the_middle_is_refused(station: float) -> None:
    with pytest.raises(ReadingsWrong) as wrong:
        visit(middle_readings=(69.634, 69.635), middle_station=station)
    assert "to the middle of that collar" in report(wrong.value)


def test_one_reading_that_stands_twice_is_told_once() -> None:
    with pytest.raises(ReadingsWrong) as wrong:
        visit(tail="70.112 mm, 70.112 mm")
    assert report(wrong.value).count("70.112 mm") == 1


def test_an_indicator_reads_in_one_system_of_units() -> None:
    with pytest.raises(ReadingsWrong) as wrong:
        judge_clamping(METRIC, "0 mm, 0.0005 in, 0 mm, 0.012 mm", "released")
    assert "two systems of units" in report(wrong.value)


def test_readings_of_an_indicator_may_stand_close_together() -> None:
    close = judge_clamping(METRIC, "0.001 mm,0.004 mm,0.001 mm;0.005 mm", "released").case
    assert close.value("clamp.released") == (0.001, 0.001)
    assert close.value("clamp.clamped") == (0.004, 0.005)


def test_a_decimal_comma_of_an_indicator_is_never_taken_for_two_readings() -> None:
    with pytest.raises(ReadingsWrong) as wrong:
        judge_clamping(METRIC, "0 mm, 0,004 mm, 0 mm, 0,005 mm", "released")
    assert "the decimal mark must be a point" in report(wrong.value)


def test_an_order_that_does_not_fit_names_the_letters_wanted() -> None:
    with pytest.raises(ReadingsWrong) as wrong:
        read_lists("69.612 mm", "69.655 mm", "HTTH")
    assert "1 for the head and 1 for the tail" in report(wrong.value)
