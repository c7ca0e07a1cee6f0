"""Inch fits: ranges of each class, limits in mm, and what is refused."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tailtrue import standards
from tailtrue.calc.b41 import B41
from tailtrue.calc.validity import OutOfRange

TABLE = standards.b41()
INCH = 25.4


def row(name: str, over: str, upto: str, *limits: str) -> dict[str, str]:
    columns = ("hole_lower_thou", "hole_upper_thou", "shaft_lower_thou", "shaft_upper_thou")
    return {
        "class": name,
        "over_in": over,
        "upto_incl_in": upto,
        "source": f"page {over}",
        **dict(zip(columns, limits, strict=True)),
    }


def test_thousandths_become_micrometres() -> None:
    table = B41.of([row("RC4", "0.71", "1.19", "0.1", "1.2", "-1.6", "-0.8")])
    hole, shaft, source = table.limits("RC4", INCH)
    assert hole == (25.4, 2.54, 30.48)
    assert shaft == (25.4, -40.64, -20.32)
    assert source == "page 0.71"
    assert table.fit("RC4", INCH) == (0.02286, 0.07112)


def test_the_upper_end_of_a_range_belongs_to_it() -> None:
    limits = ("0", "1", "-1", "0")
    table = B41.of([row("X", "0.40", "0.71", *limits), row("X", "0.71", "1.19", *limits), row("Y", "0.40", "0.56", *limits)])
    assert table.limits("X", 0.71 * INCH).source == "page 0.40"
    assert table.limits("X", 18.034).source == "page 0.40"
    assert table.limits("X", 18.035).source == "page 0.71"
    with pytest.raises(OutOfRange, match=r"^class Y is not defined at 0\.6 in; the table goes from over 0\.4 to 0\.56 in"):
        table.limits("Y", 0.6 * INCH)


@pytest.mark.parametrize("name", ["RC10", "rc4", "H7", ""])
def test_a_class_that_is_not_there_is_refused(name: str) -> None:
    with pytest.raises(OutOfRange, match=f"^the table has no class '{name}'; it has RC1, RC2, RC3, "):
        TABLE.limits(name, INCH)


def test_beyond_the_table_there_is_nothing() -> None:
    assert TABLE.fit("RC1", 3.15 * INCH).kind == "clearance"
    for size_in in (0.40, 3.151):
        with pytest.raises(
            OutOfRange, match=f"^class RC1 is not defined at {size_in:g} in; the table goes from over 0.4 to 3.15 in"
        ):
            TABLE.limits("RC1", size_in * INCH)


def test_every_kind_of_fit_is_what_its_name_says() -> None:
    kinds = {"RC": {"clearance"}, "LC": {"clearance"}, "LT": {"transition"}, "LN": {"interference"}, "FN": {"interference"}}
    for name, table in TABLE.classes.items():
        found = {TABLE.fit(name, float(line["upto_incl_in"]) * INCH).kind for line in table.rows}
        assert found <= kinds[name[:2]], name


@given(
    size_in=st.floats(0.401, 3.15),
    pair=st.sampled_from([("RC1", "RC9"), ("RC4", "RC5"), ("LC2", "LC5"), ("FN2", "FN1"), ("LN3", "LN2")]),
)
def test_a_looser_class_never_has_less_clearance(size_in: float, pair: tuple[str, str]) -> None:
    tight, loose = (TABLE.fit(name, size_in * INCH) for name in pair)
    assert tight.largest_clearance_mm < loose.largest_clearance_mm
    assert tight.least_clearance_mm <= loose.least_clearance_mm


@given(size_in=st.floats(0.401, 3.15), name=st.sampled_from(sorted(TABLE.classes)))
def test_hole_basis_and_limits_in_order(size_in: float, name: str) -> None:
    try:
        hole, shaft, source = TABLE.limits(name, size_in * INCH)
    except OutOfRange:
        assert name == "FN3"
        assert size_in <= 0.95
        return
    assert hole.lower_um == 0 < hole.upper_um
    assert shaft.lower_um < shaft.upper_um
    assert source


def test_loading_happens_once() -> None:
    assert standards.b41() is TABLE
