"""Tolerance classes: ranges, letters, grades, delta, and what is refused."""

from dataclasses import FrozenInstanceError
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tailtrue import standards
from tailtrue.calc.iso286 import Iso286
from tailtrue.calc.size_table import SizeTable
from tailtrue.calc.validity import OutOfRange

TABLE = standards.iso286()
GRADES = ["01", "0", *map(str, range(1, 19))]
SIZES = [2, 5, 8, 12, 16, 20, 27, 35, 45, 60, 75, 90, 110, 130, 150, 180]
MIRRORED_EVERYWHERE = "abcdefgh"
MIRRORED_WHEN_COARSE = ["p", "r", "s", "t", "u", "v", "x", "y", "z", "za", "zb", "zc"]

every_size = st.floats(3.001, 180)


def tiny(**changed: list[dict[str, str]]) -> Iso286:
    span = {"over_mm": "0", "upto_incl_mm": "10"}
    letter = {"kind": "hole", "type": "upper", "grade_low": "6", "grade_high": "7"}
    parts: dict[str, list[dict[str, str]]] = {
        "grades": [{**span, "IT6": "10", "IT7": "16"}],
        "shafts": [{**span, "g": "-4"}],
        "holes": [{**span, "P": "-12", "H": "0"}],
        "deltas": [{**span, "IT6": "2.5"}],
        "letters": [
            {**letter, "designation": "P", "series": "P", "delta": "1"},
            {**letter, "designation": "H", "type": "lower", "series": "H", "delta": "0"},
            {**letter, "designation": "JS", "type": "both", "series": "", "delta": "0"},
            {**letter, "designation": "g", "kind": "shaft", "series": "g", "delta": "0"},
        ],
    }
    return Iso286.of(**{**parts, **changed})


def test_each_kind_of_letter_is_read_from_the_rows_handed_in() -> None:
    table = tiny()
    assert table.limits("P6", 5) == (5, -19.5, -9.5)
    assert table.limits("H7", 5) == (5, 0, 16)
    assert table.limits("JS7", 5) == (5, -8, 8)
    assert table.limits("g6", 5) == (5, -14, -4)


def test_delta_that_is_not_in_the_table_is_not_taken_as_nought() -> None:
    with pytest.raises(
        OutOfRange, match=r"^class P7 is not defined in the table over 0 to 10 mm \(delta\); choose another class$"
    ):
        tiny().limits("P7", 5)


@pytest.mark.parametrize(
    ("name", "table"),
    [
        ("H7", "fundamental deviation of holes"),
        ("g7", "fundamental deviation of shafts"),
        ("JS7", "standard tolerance grade"),
    ],
)
def test_each_table_has_a_name_of_its_own(name: str, table: str) -> None:
    span = {"over_mm": "0", "upto_incl_mm": "20"}
    grades = (
        [{**span, "IT6": "10", "IT7": "16"}] if name != "JS7" else [{**span, "upto_incl_mm": "10", "IT6": "10", "IT7": "16"}]
    )
    with pytest.raises(OutOfRange, match=f"^{table} is not defined at 11 mm; the table goes from over 0 to 10 mm"):
        tiny(grades=grades).limits(name, 11)


def test_an_empty_cell_of_the_grades_is_not_nought() -> None:
    empty = [{"over_mm": "0", "upto_incl_mm": "10", "IT6": "10", "IT7": ""}]
    with pytest.raises(
        OutOfRange, match=r"^grade 7 is not defined in the table over 0 to 10 mm \(standard tolerance grade\)"
    ):
        tiny(grades=empty).limits("H7", 5)


def test_the_table_cannot_be_changed() -> None:
    with pytest.raises(FrozenInstanceError):
        TABLE.letters = ()  # type: ignore[misc]


def test_loading_happens_once() -> None:
    assert standards.iso286() is TABLE


@pytest.mark.parametrize(
    ("name", "said"),
    [
        ("H7/g6", r"^tolerance class 'H7/g6' cannot be read; write a letter and a grade: H7 for a hole, g6 for a shaft$"),
        ("7H", "^tolerance class '7H' cannot be read"),
        ("H 7", "^tolerance class 'H 7' cannot be read"),
        ("H007", "^tolerance class 'H007' cannot be read"),
        ("H", "^tolerance class 'H' cannot be read"),
        ("7", "^tolerance class '7' cannot be read"),
        ("", "^tolerance class '' cannot be read"),
        ("Js7", "^the table has no letter Js for a hole; it has A, B, C, D, E, F, G, H, JS, J, K, M, N, P, R, S, "),
        ("j6", "^the table has no letter j for a shaft; it has a, b, c, d, e, f, g, h, js, k, m, n, p, r, s, t, u, v, "),
        ("ef7", "^the table has no letter ef for a shaft"),
        ("i7", "^the table has no letter i for a shaft"),
        ("H19", "^class H19: there is no grade 19; grades are 01, 0, 1, 2, "),
        ("J5", "^class J5 is not defined in the table; it has J in grades 6 to 8$"),
        ("J9", "^class J9 is not defined in the table; it has J in grades 6 to 8$"),
        ("P2", "^class P2 is not defined in the table; it has P in grades 3 to 18$"),
    ],
)
def test_what_is_no_class_is_refused_in_words(name: str, said: str) -> None:
    with pytest.raises(OutOfRange, match=said):
        TABLE.limits(name, 25)


@pytest.mark.parametrize(
    ("name", "size", "said"),
    [
        (
            "t6",
            24,
            r"^class t6 is not defined in the table over 18 to 24 mm \(fundamental deviation of shafts\); choose another class$",
        ),
        ("T7", 24, "^class T7 is not defined in the table over 18 to 24 mm"),
        ("v6", 14, "^class v6 is not defined in the table over 10 to 14 mm"),
        ("y6", 18, "^class y6 is not defined in the table over 14 to 18 mm"),
        ("K9", 3.001, "^class K9 is not defined in the table over 3 to 6 mm"),
        ("J7", 50.1, "^class J7 is not defined in the table over 50 to 65 mm"),
        (
            "H7",
            180.001,
            r"^fundamental deviation of holes is not defined at 180\.001 mm; the table goes from over 1 to 180 mm",
        ),
        ("g6", 1, "^fundamental deviation of shafts is not defined at 1 mm; the table goes from over 1 to 180 mm"),
        ("js6", 500.001, r"^standard tolerance grade is not defined at 500\.001 mm; the table goes from over 0 to 500 mm"),
        ("js6", 0, "^standard tolerance grade is not defined at 0 mm"),
        ("js6", float("nan"), "^standard tolerance grade is not defined at nan mm"),
        ("js6", float("inf"), "^standard tolerance grade is not defined at inf mm"),
    ],
)
def test_cells_that_are_not_in_the_table_are_refused(name: str, size: float, said: str) -> None:
    with pytest.raises(OutOfRange, match=said):
        TABLE.limits(name, size)


def test_the_ends_of_the_table_belong_to_it_or_not() -> None:
    assert TABLE.limits("H7", 180).upper_um == 40
    assert TABLE.limits("H7", 1.001).upper_um == 10
    assert TABLE.limits("js7", 500) == (500, -31.5, 31.5)


def test_a_size_is_not_pushed_over_a_limit_by_its_binary_form() -> None:
    assert TABLE.limits("H7", 30.000000000000004).upper_um == 21
    assert TABLE.limits("H7", 30.0000000004).upper_um == 21
    assert TABLE.limits("H7", 30.000000004).upper_um == 25


@pytest.mark.parametrize("designation", ["H7/G6", "h7/g6", "g6/H7", "H7/H7", "g6/g6"])
def test_a_fit_is_a_hole_and_then_a_shaft(designation: str) -> None:
    with pytest.raises(OutOfRange, match=f"^fit '{designation}' is not a hole and a shaft; capital letters are holes"):
        TABLE.fit(designation, 25)


@pytest.mark.parametrize("designation", ["H7", "H7/", "H7-g6", "H7/g6/g6"])
def test_a_fit_needs_two_classes(designation: str) -> None:
    with pytest.raises(OutOfRange, match=r"^tolerance class .* cannot be read"):
        TABLE.fit(designation, 25)


def test_a_grade_is_a_word_of_the_list() -> None:
    assert TABLE.width_um("01", 25) == 0.6
    assert TABLE.width_um("18", 25) == 3300
    with pytest.raises(OutOfRange, match=r"^there is no grade 19; grades are 01, 0, 1, "):
        TABLE.width_um("19", 25)


def test_limits_widen_with_the_grade() -> None:
    for size in SIZES:
        widths = [TABLE.width_um(grade, size) for grade in GRADES]
        assert all(one < other for one, other in pairwise(widths))


@given(grade=st.sampled_from(GRADES), small=st.floats(0.01, 500), large=st.floats(0.01, 500))
def test_limits_never_narrow_with_the_size(grade: str, small: float, large: float) -> None:
    small, large = sorted((small, large))
    assert TABLE.width_um(grade, small) <= TABLE.width_um(grade, large)


@given(size=every_size, name=st.sampled_from(["H7", "g6", "js5", "P6", "P9", "k6", "k9", "N9", "M7", "zc11", "A11", "JS01"]))
def test_the_two_limits_are_a_grade_apart(size: float, name: str) -> None:
    zone = TABLE.limits(name, size)
    grade = name.lstrip("AHJMNPSabcdefghjkmnpqrstuvwxyz")
    assert zone.upper_um - zone.lower_um == pytest.approx(TABLE.width_um(grade, size), abs=1e-9)


def test_holes_mirror_shafts_where_the_rule_says_so() -> None:
    compared = 0
    for size in SIZES:
        for letter in MIRRORED_EVERYWHERE:
            hole, shaft = TABLE.limits(f"{letter.upper()}7", size), TABLE.limits(f"{letter}7", size)
            assert (hole.lower_um, hole.upper_um) == (-shaft.upper_um, -shaft.lower_um)
        for letter in MIRRORED_WHEN_COARSE:
            try:
                shaft = TABLE.limits(f"{letter}8", size)
            except OutOfRange:
                with pytest.raises(OutOfRange):
                    TABLE.limits(f"{letter.upper()}8", size)
                continue
            hole = TABLE.limits(f"{letter.upper()}8", size)
            assert (hole.lower_um, hole.upper_um) == (-shaft.upper_um, -shaft.lower_um)
            compared += 1
    assert compared > 150


@pytest.mark.parametrize("letter", ["k", "m", "n", "p", "r", "s", "u", "x", "z"])
def test_twins_on_hole_and_on_shaft_basis_fit_alike(letter: str) -> None:
    """This is what delta is for: the hole one grade coarser than the shaft."""
    for size in SIZES[1:]:
        hole_basis = TABLE.fit(f"H7/{letter}6", size)
        shaft_basis = TABLE.fit(f"{letter.upper()}7/h6", size)
        assert hole_basis == shaft_basis


def test_delta_is_the_step_between_two_grades() -> None:
    for size in SIZES[1:]:
        for grade in range(3, 9):
            step = TABLE.width_um(str(grade), size) - TABLE.width_um(str(grade - 1), size)
            assert TABLE.deltas.number(f"IT{grade}", size, "delta") == pytest.approx(step, abs=1e-9)
    assert all(TABLE.deltas.number(f"IT{grade}", 3, "delta") == 0 for grade in range(3, 9))


@given(size=every_size)
def test_letters_stand_in_order(size: float) -> None:
    uppers = [TABLE.limits(f"{letter}7", size).upper_um for letter in "abcdefgh"]
    assert all(one < other for one, other in pairwise(uppers))
    lowers = [
        TABLE.limits(f"{letter}7", size).lower_um
        for letter in ("k", "m", "n", "p", "r", "s", "u", "x", "z", "za", "zb", "zc")
    ]
    assert all(one < other for one, other in pairwise(lowers))


@given(size=every_size, shaft=st.sampled_from(["h6", "g6", "k6", "p6"]), hole=st.sampled_from(["H", "JS", "K", "N"]))
def test_a_tighter_bore_never_has_more_clearance(size: float, shaft: str, hole: str) -> None:
    tight, loose = TABLE.fit(f"{hole}6/{shaft}", size), TABLE.fit(f"{hole}8/{shaft}", size)
    assert tight.largest_clearance_mm <= loose.largest_clearance_mm
    assert TABLE.fit(f"P7/{shaft}", size).largest_clearance_mm < TABLE.fit(f"H7/{shaft}", size).largest_clearance_mm


def test_every_letter_rule_reads_a_column_that_exists() -> None:
    for meaning in TABLE.letters:
        if meaning.bound != "both":
            assert meaning.column in TABLE.deviations[meaning.kind].rows[0]


def test_no_column_of_deviations_is_left_unread() -> None:
    for kind, table in TABLE.deviations.items():
        read = {meaning.column for meaning in TABLE.letters if meaning.kind == kind}
        assert set(table.rows[0]) - read == {"over_mm", "upto_incl_mm", "source", "checked_on"}


@pytest.mark.parametrize(
    ("ranges", "said"),
    [
        ([("0", "3"), ("4", "6")], "^sizes: the range over 0 to 3 mm does not join the next at 4$"),
        ([("0", "3"), ("2", "6")], "does not join the next at 2$"),
        ([("3", "3")], "^sizes: the range over 3 to 3 mm does not join"),
        ([], "^sizes: the table has no rows$"),
    ],
)
def test_a_table_with_gaps_or_overlaps_is_not_built(ranges: list[tuple[str, str]], said: str) -> None:
    with pytest.raises(ValueError, match=said):
        SizeTable.of("sizes", "mm", [{"over_mm": low, "upto_incl_mm": high} for low, high in ranges])


def test_rows_may_come_in_any_order() -> None:
    rows = [{"over_in": "1", "upto_incl_in": "2", "x": "7"}, {"over_in": "0", "upto_incl_in": "1", "x": "5"}]
    table = SizeTable.of("sizes", "in", rows)
    assert [table.number("x", size, "x") for size in (0.5, 1, 1.5, 2)] == [5, 5, 7, 7]
    with pytest.raises(OutOfRange, match=r"^class y is not defined in the table over 1 to 2 in \(sizes\)"):
        table.number("y", 2, "class y")
    with pytest.raises(
        OutOfRange, match=r"^sizes is not defined at 2.1 in; the table goes from over 0 to 2 in, the last included$"
    ):
        table.row(2.1)
    with pytest.raises(OutOfRange, match=r"^sizes is not defined at 0 in"):
        table.row(0)
