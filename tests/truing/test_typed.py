"""Readings as people type them: what is understood, and what is refused with what to write instead."""

from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tailtrue.errors import ReadingsWrong, report
from tailtrue.truing.typed import MOST_READINGS, read_lists, read_one, read_table, temperatures, typed_step


def refused(head: str, tail: str, order: str = "") -> str:
    with pytest.raises(ReadingsWrong) as wrong:
        read_lists(head, tail, order)
    return report(wrong.value)


def test_lists_of_both_collars() -> None:
    readings = read_lists("49.612 mm, 49.613 mm", "49.655 mm; 49.654 mm")
    assert readings.of("head") == (49.612, 49.613)
    assert readings.of("tail") == (49.655, 49.654)
    assert readings.order == ""


def test_inch_readings_come_in_millimetres() -> None:
    assert read_lists("1.9532 in", '1.9540"').of("head") == pytest.approx((49.61128,))


def test_a_unit_written_once_goes_for_all() -> None:
    assert read_lists("49.612, 49.613 mm", "49.655, 49.654, 49.650 mm").of("tail") == (49.655, 49.654, 49.650)


def test_order_puts_the_readings_in_their_row() -> None:
    readings = read_lists("49.612 mm, 49.613 mm", "49.655 mm, 49.654 mm", "h t-t h")
    assert readings.order == "HTTH"
    assert [one.said for one in readings.taken] == ["49.612 mm", "49.655 mm", "49.654 mm", "49.613 mm"]


@pytest.mark.parametrize("order", ["HT", "HHTT T", "HTXH", "HTTHH"])
def test_an_order_that_does_not_fit_is_refused(order: str) -> None:
    said = refused("49.612 mm, 49.613 mm", "49.655 mm, 49.654 mm", order)
    assert "does not fit the readings" in said
    assert "2 for the head and 2 for the tail" in said


def test_decimal_commas_are_never_taken_for_two_readings() -> None:
    said = refused("49,612 mm", "49,655 mm, 49,654 mm")
    assert said.count("the decimal mark must be a point") == 2


@pytest.mark.parametrize("typed", ["1,98in", "1,98 in", "49,612mm,49,613mm", " 1 ,98in"])
def test_what_was_typed_comes_back_letter_by_letter(typed: str) -> None:
    with pytest.raises(ReadingsWrong) as wrong:
        read_lists(typed, "49.655 mm")
    assert [problem.said for problem in wrong.value.problems] == [typed]


@pytest.mark.parametrize("read", [
    lambda text: read_lists(text, "0 mm", from_zero=True).of("head"),
    lambda text: (read_one("head", text, from_zero=True).diameter_mm,),
    lambda text: read_table(f"collar,reading\nhead,{text}\ntail,0 mm", "a.csv", from_zero=True).of("head"),
])  # fmt: skip
def test_an_indicator_may_read_nought_and_less(read: Callable[[str], tuple[float, ...]]) -> None:
    assert read("-0.004 mm") == (-0.004,)
    assert read("0 mm") == (0,)


@pytest.mark.parametrize(
    ("head", "word"),
    [("", "has no reading"), ("49.612", "has no unit"), ("forty", "not a number"), ("-3 mm", "is no diameter"),
     ("0 mm", "is no diameter"), ("12 mil", "mil is said for"), ("3 kg", "a length is needed")],
)  # fmt: skip
def test_what_is_no_reading_is_refused(head: str, word: str) -> None:
    assert word in refused(head, "49.655 mm")


def test_two_systems_do_not_come_from_one_instrument() -> None:
    said = refused("49.612 mm", "1.9532 in")
    assert "49.612 mm and 1.9532 in" in said
    assert "one micrometer" in said


def test_faults_of_both_collars_come_at_once() -> None:
    said = refused("x", "y")
    assert "head: x" in said
    assert "tail: y" in said


def test_too_many_readings_are_refused() -> None:
    many = ", ".join(["49.612 mm"] * MOST_READINGS)
    assert f"at most {MOST_READINGS}" in refused(many, "49.655 mm")
    assert len(read_lists(", ".join(["49.612 mm"] * (MOST_READINGS - 1)), "49.655 mm").taken) == MOST_READINGS


def test_a_table_keeps_the_order() -> None:
    readings = read_table("reading,collar\n49.612 mm,head\n\n49.655 mm,T\n49.654 mm,Tailstock\n49.613 mm,h\n", "a.csv")
    assert readings.order == "HTTH"
    assert readings.of("tail") == (49.655, 49.654)


def test_a_table_names_every_bad_row() -> None:
    with pytest.raises(ReadingsWrong) as wrong:
        read_table("collar,reading\nhead,49.612 mm\nmiddle,49.6 mm\ntail\ntail,49.6.1 mm\n", "a.csv")
    said = report(wrong.value)
    assert "a.csv:3: middle: is no collar of this bar" in said
    assert "a.csv:4: tail: has not two cells" in said
    assert "a.csv:5: 49.6.1 mm" in said


@pytest.mark.parametrize("text", ["", "head,49.6 mm\n", "collar,reading,note\n"])
def test_a_table_without_its_heading_is_refused(text: str) -> None:
    with pytest.raises(ReadingsWrong, match="does not name the two columns"):
        read_table(text, "a.csv")


def test_a_table_with_one_collar_is_refused() -> None:
    with pytest.raises(ReadingsWrong) as wrong:
        read_table("collar,reading\nhead,49.612 mm\n", "a.csv")
    assert "tail: has no reading" in report(wrong.value)


def test_one_reading_at_a_prompt() -> None:
    assert read_one("tail", " 49.655 mm ", from_zero=False).diameter_mm == 49.655
    with pytest.raises(ReadingsWrong):
        read_one("tail", "49.655", from_zero=False)


@pytest.mark.parametrize(
    ("head", "step"),
    [("49.61 mm", 0.01), ("49.610 mm", 0.001), ("1.9532 in", 0.00254), ("50 mm", 1.0), ("1953.2 thou", 0.00254)],
)
def test_the_last_place_is_what_the_instrument_showed(head: str, step: float) -> None:
    assert typed_step(read_lists(head, head)) == pytest.approx(step)


def test_temperatures_of_both_collars_or_none() -> None:
    assert temperatures("", "", system="") == {}
    assert temperatures("20 degC", "77 degF", system="") == {"visit.head_temperature": 20.0, "visit.tail_temperature": 25.0}
    with pytest.raises(ReadingsWrong) as wrong:
        temperatures("20 degC", "", system="")
    assert "temperature, tail" in report(wrong.value)


@given(
    st.lists(st.integers(40_000, 60_000), min_size=1, max_size=6),
    st.lists(st.integers(40_000, 60_000), min_size=1, max_size=6),
)
def test_what_is_typed_is_what_is_read(head: list[int], tail: list[int]) -> None:
    def typed(sizes: list[int]) -> str:
        return ", ".join(f"{size / 1000:.3f} mm" for size in sizes)

    readings = read_lists(typed(head), typed(tail))
    assert readings.of("head") == pytest.approx([size / 1000 for size in head], abs=1e-9)
    assert readings.of("tail") == pytest.approx([size / 1000 for size in tail], abs=1e-9)
