"""How figures are printed: digits by kind, both systems from the canonical value, limits inward."""

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tailtrue.parts import Bound, Dials, Figure, Limits, Rounding
from tailtrue.render.numbers import (
    MINUS,
    NBSP,
    Shown,
    columns,
    limits_apart,
    other,
    read,
    show,
    show_limits,
    show_one,
)
from tailtrue.render.values import value_line

from .sample_pieces import figure, mm


def spaced(text: str) -> str:
    return text.replace(NBSP, " ")


@pytest.mark.parametrize(
    ("value", "rounding", "metric"),
    [
        (0.0127, "difference", "0.013 mm (0.0005 in)"),
        (0.0254, "difference", "0.025 mm (0.0010 in)"),
        (0.0508, "difference", "0.051 mm (0.0020 in)"),
        (0.01, "difference", "0.010 mm (0.0004 in)"),
        (0.02, "difference", "0.020 mm (0.0008 in)"),
        (0.025, "fit", "0.025 mm (0.0010 in)"),
        (0.05, "fit", "0.050 mm (0.0020 in)"),
        (25.4, "fit", "25.400 mm (1.0000 in)"),
        (0.018, "difference", "0.018 mm (0.0007 in)"),
        (0.05, "depth", "0.05 mm (0.002 in)"),
        (300.0, "length", "300.0 mm (11.81 in)"),
        (22.0, "size", "22.00 mm (0.866 in)"),
    ],
)
def test_lengths_follow_the_places_of_their_kind(value: float, rounding: Rounding, metric: str) -> None:
    shown = mm("x", value, rounding)
    assert spaced(show(shown, "metric")) == metric
    first, second = metric.rstrip(")").split(" (")
    assert spaced(show(shown, "inch")) == f"{second} ({first})"


@pytest.mark.parametrize(
    ("value", "unit", "rounding", "metric", "inch"),
    [
        (0.05, "mm/rev", "feed", "0.050 mm/rev (0.0020 in/rev)", "0.0020 in/rev (0.050 mm/rev)"),
        (310.0, "1/min", "speed", "310 rev/min", "310 rev/min"),
        (30.0, "m/min", "surface-speed", "30 m/min (100 ft/min)", "100 ft/min (30 m/min)"),
        (44.4822, "N", "force", "44 N", "10 lbf"),
        (1251.0, "N mm", "torque", "1.3 N m", "11 lbf in"),
        (7.44, "MPa", "pressure", "7.4 MPa", "1080 psi"),
        (205000.0, "MPa", "pressure", "205000 MPa", "29732735 psi"),
        (745.7, "W", "power", "746 W", "1.00 hp"),
        (1.134, "kg", "mass", "1.13 kg", "2.5 lb"),
        (20.0, "degC", "temperature", "20 °C (70 °F)", "70 °F (20 °C)"),
        (60.0, "deg", "angle", "60°", "60°"),
        (1.4908, "deg", "angle", "1.49°", "1.49°"),
        (3.0, "1", "count", "3", "3"),
        (3.3333333, "1", "ratio", "3.33", "3.33"),
        (28.0, "1", "ratio", "28", "28"),
        (1.0, "1", "ratio", "1", "1"),
        (1.004, "1", "ratio", "1.0", "1.0"),
        (0.9996, "1", "ratio", "1.0", "1.0"),
        (1234.4, "1", "ratio", "1234", "1234"),
        (0.0000117, "1/K", "ratio", "0.0000117 1/K", "0.0000117 1/K"),
        (7850.0, "kg/m3", "ratio", "7850 kg/m³", "0.284 lb/in³"),
        (0.0, "1", "ratio", "0", "0"),
    ],
)
def test_other_kinds(value: float, unit: str, rounding: Rounding, metric: str, inch: str) -> None:
    shown = figure("x", value, unit, rounding)
    assert (spaced(show(shown, "metric")), spaced(show(shown, "inch"))) == (metric, inch)


@pytest.mark.parametrize(
    ("seconds", "bound", "printed"),
    [
        (40.0, "nearest", "40 s"),
        (119.4, "nearest", "119 s"),
        (119.6, "nearest", "2 min"),
        (720.0, "nearest", "12 min"),
        (721.0, "least", "13 min"),
        (779.0, "most", "12 min"),
        (3599.0, "least", "1 h"),
        (11400.0, "nearest", "3 h 10 min"),
        (86400.0, "least", "24 h"),
        (86401.0, "least", "24 h 1 min"),
        (0.2, "nearest", "< 1 s"),
        (0.2, "least", "1 s"),
    ],
)
def test_time_is_read_as_on_a_clock(seconds: float, bound: Bound, printed: str) -> None:
    assert spaced(show(figure("x", seconds, "s", "time", bound), "metric")) == printed


def test_a_tool_is_printed_as_it_is_marked() -> None:
    drill = figure("hole.drill", 12.7, "mm", "tool", marked="1/2 in")
    assert show(drill, "metric") == show_one(drill, "inch") == "1/2 in"


def test_a_tool_without_a_marking_is_printed_as_a_size() -> None:
    assert spaced(show(figure("hole.drill", 12.7, "mm", "tool"), "inch")) == "0.500 in (12.70 mm)"


def test_limits_round_inward_in_each_system() -> None:
    """Half-even would give 0.9999 in, which is 25.3975 mm and outside."""
    band = Limits(low=mm("x", 25.384, "fit"), high=mm("x", 25.397, "fit"))
    assert spaced(show_limits(band, "metric")) == "25.384 mm to 25.397 mm (0.9994 in to 0.9998 in)"
    assert spaced(show_limits(band, "inch")) == "0.9994 in to 0.9998 in (25.384 mm to 25.397 mm)"


def test_one_sided_limits_say_so_and_no_limits_say_nothing() -> None:
    assert spaced(show_limits(Limits(low=mm("x", 12, "size")), "metric")) == "at least 12.00 mm (0.473 in)"
    assert spaced(show_limits(Limits(high=mm("x", 0.0299, "depth")), "metric")) == "at most 0.029 mm (0.0011 in)"
    force = figure("x", 99.9, "N", "force")
    assert limits_apart(Limits(high=force), "metric") == (f"at most 99{NBSP}N", "")
    assert show_limits(Limits(), "metric") == ""


def test_a_band_thinner_than_a_digit_gets_more_digits() -> None:
    band = Limits(low=mm("x", 25.3841, "fit"), high=mm("x", 25.3845, "fit"))
    assert spaced(show_limits(band, "metric")) == "25.3841 mm to 25.3845 mm (0.99938 in to 0.99938 in)"


@pytest.mark.parametrize("bound", ["most", "least", "nearest"])
def test_float_noise_moves_no_limit(bound: Bound) -> None:
    assert read(mm("x", 25.400000000000002, "fit", bound), "metric").number == "25.400"
    assert read(mm("x", 25.399999999999999, "fit", bound), "inch").number == "1.0000"
    assert read(mm("x", 0.1 + 0.2, "depth", bound), "metric").number == "0.30"


def test_nearest_is_half_even() -> None:
    assert read(mm("x", 2.5, "difference"), "metric").number == "2.500"
    assert read(figure("x", 2.5, "N", "force"), "metric").number == "2"
    assert read(figure("x", 3.5, "N", "force"), "metric").number == "4"
    assert read(mm("x", 0.0125 + 1e-17, "fit"), "metric").number == "0.012"


@pytest.mark.parametrize("rounding", ["difference", "fit"])
def test_something_is_never_printed_as_nothing(rounding: Rounding) -> None:
    assert spaced(show(mm("x", 0.0004, rounding), "metric")) == "< 0.001 mm (< 0.0001 in)"
    assert spaced(show(mm("x", 0.0005, rounding), "metric")) == "< 0.001 mm (< 0.0001 in)"
    assert spaced(show(mm("x", -0.0004, rounding), "metric")) == f"> {MINUS}0.001 mm (> {MINUS}0.0001 in)"
    assert spaced(show(mm("x", 0.0004, "depth"), "metric")) == "< 0.001 mm (< 0.0001 in)"
    assert spaced(show(mm("x", 0.0, rounding), "metric")) == "0.000 mm (0.0000 in)"


def test_a_small_limit_gets_digits_instead_of_being_loosened() -> None:
    assert spaced(show(mm("x", 0.00039, "difference", "most"), "metric")) == "0.0003 mm (0.00001 in)"


def test_a_minus_is_a_minus() -> None:
    assert spaced(show_one(mm("x", -0.018, "difference"), "metric")) == f"{MINUS}0.018 mm"


def test_no_number_is_refused() -> None:
    with pytest.raises(ValueError, match=r"bar\.length is nan, which is no number to print"):
        show(mm("bar.length", float("nan"), "length"), "metric")


def test_columns_share_one_unit() -> None:
    rows = [mm("x", 0.02, "difference"), None, mm("x", 0.0254, "difference")]
    assert columns(rows, "inch") == columns(iter(rows), "inch")
    column = columns(rows, "inch")
    assert (column.unit, column.numbers) == ("in", ("0.0008", None, "0.0010"))
    mixed = columns([mm("x", 1, "size"), figure("y", 2, "N", "force")], "metric")
    assert (mixed.unit, mixed.numbers) == ("", (f"1.00{NBSP}mm", f"2{NBSP}N"))


def test_values_come_apart_for_a_column_only_when_they_are_of_one_unit() -> None:
    speed = figure("x", 310, "1/min", "speed")
    line = value_line((speed,), "metric")
    assert line is not None
    assert (line.number, line.unit, line.other) == ("310", "rev/min", "")
    assert value_line(("about ", speed), "metric") is None
    assert value_line((), "metric") is None
    assert value_line((speed, " at ", mm("y", 1, "size")), "metric") is None


_LENGTHS = ("fit", "difference", "depth", "size", "length")
_SIZES = {"mm": Decimal(1), "in": Decimal("25.4")}
_values = st.floats(min_value=-3000, max_value=3000, allow_nan=False)


def as_mm(shown: Shown) -> tuple[Decimal, Decimal]:
    """A printed length in millimetres, and its last digit."""
    number = Decimal(shown.number.replace(MINUS, "-"))
    exponent = number.as_tuple().exponent
    assert isinstance(exponent, int)
    return number * _SIZES[shown.unit], Decimal(1).scaleb(exponent) * _SIZES[shown.unit]


@given(_values, st.sampled_from(_LENGTHS), st.sampled_from(["metric", "inch"]))
def test_rounding_inward_never_leaves_the_limit(value: float, rounding: Rounding, dials: Dials) -> None:
    exact = Decimal(repr(value))
    most, digit = as_mm(read(mm("x", value, rounding, "most"), dials))
    assert exact - digit < most <= exact + digit / 1_000_000
    least, digit = as_mm(read(mm("x", value, rounding, "least"), dials))
    assert exact - digit / 1_000_000 <= least < exact + digit


@given(_values, st.sampled_from(_LENGTHS), st.sampled_from(["metric", "inch"]))
def test_the_print_is_within_half_a_digit(value: float, rounding: Rounding, dials: Dials) -> None:
    shown = read(mm("x", value, rounding), dials)
    if shown.number[0] in "<>":
        bound, digit = as_mm(Shown(shown.number.split(NBSP)[1], shown.unit))
        assert 0 < abs(Decimal(repr(value))) <= digit / 2 + digit / 1_000_000
        assert bound == (digit if value > 0 else -digit)
    else:
        printed, digit = as_mm(shown)
        assert abs(printed - Decimal(repr(value))) <= digit / 2 + digit / 1_000_000


@given(st.floats(min_value=0.001, max_value=3000), st.sampled_from(_LENGTHS))
def test_the_second_system_comes_from_the_canonical_value(value: float, rounding: Rounding) -> None:
    shown = mm("x", value, rounding)
    assert other(shown, "metric") == read(shown, "inch")
    assert other(shown, "inch") == read(shown, "metric")


@given(
    st.floats(allow_nan=False, allow_infinity=False),
    st.sampled_from(
        [
            ("N", "force"),
            ("s", "time"),
            ("1", "ratio"),
            ("mm", "fit"),
            ("degC", "temperature"),
            ("odd", "size"),
        ]
    ),
    st.sampled_from(["nearest", "most", "least"]),
)
def test_every_finite_number_can_be_printed(value: float, kind: tuple[str, Rounding], bound: Bound) -> None:
    shown = Figure(fact="x", value=value, unit=kind[0], rounding=kind[1], bound=bound)
    for dials in ("metric", "inch"):
        assert any(letter.isdigit() for letter in show(shown, dials))


@pytest.mark.parametrize(
    ("depth", "dials", "printed"),
    [
        (0.05, "metric", "0.05 mm (0.002 in)"),
        (0.1, "metric", "0.10 mm (0.0039 in)"),
        # thirteen divisions of a dial that moves the tool a fortieth of a millimetre each
        (0.325, "metric", "0.325 mm (0.0128 in)"),
        (0.0254, "inch", "0.001 in (0.025 mm)"),
        (0.0127, "inch", "0.0005 in (0.013 mm)"),
    ],
)
def test_a_depth_shows_the_division_it_is_set_with(depth: float, dials: Dials, printed: str) -> None:
    assert spaced(show(mm("x", depth, "depth"), dials)) == printed
