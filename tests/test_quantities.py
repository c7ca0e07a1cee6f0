"""The door of quantities: what goes through, what is refused and in which words, and that nothing is ever guessed."""

import os
import re
import subprocess
import sys
from fractions import Fraction
from typing import Any

import pint
import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from tailtrue.errors import FactsWrong, Problem
from tailtrue.places import knowledge_folder
from tailtrue.quantities import FAST, NUMBER, OFFERED, kind_of, read_quantity, system_of, units_of

REGISTRY: Any = pint.UnitRegistry(non_int_type=Fraction)

# How the units library spells what people write otherwise. A turn is a count here and an angle there.
SPELT = {
    '"': "inch", "rpm": "1/min", "rev/min": "1/min", "r/min": "1/min", "min-1": "1/min", "mm/rev": "mm",
    "in/rev": "inch", "thou/rev": "thou", "N mm": "N*mm", "N m": "N*m", "Nm": "N*m", "lbf in": "lbf*inch",
    "lbf ft": "lbf*ft", "N/mm2": "N/mm**2", "°C": "degC", "°F": "degF", "": "dimensionless", "%": "percent",
    "1": "dimensionless", "um": "micrometer", "µm": "micrometer", "in": "inch", "h": "hour",
}  # fmt: skip

PAIRS = [(canonical, spelling) for canonical, (_, spellings) in FAST.items() for spelling in spellings]


@pytest.mark.parametrize(("canonical", "spelling"), PAIRS)
@pytest.mark.parametrize("number", [Fraction(1), Fraction(7, 2)])
def test_the_fast_table_agrees_with_the_units_library(canonical: str, spelling: str, number: Fraction) -> None:
    said = REGISTRY.Quantity(number, REGISTRY.parse_units(SPELT.get(spelling, spelling)))
    wanted = said.to(REGISTRY.parse_units(SPELT.get(canonical, canonical))).magnitude
    assert read_quantity(f"{float(number)} {spelling}", canonical) == float(wanted)


@pytest.mark.parametrize(
    ("text", "unit", "size"),
    [
        ("25.4 mm", "mm", 25.4),
        ("25.4mm", "mm", 25.4),
        (".5 in", "mm", 12.7),
        ("1 in", "mm", 25.4),
        ('1"', "mm", 25.4),
        ("1\u2033", "mm", 25.4),
        ("1/2 in", "mm", 12.7),
        ("1 1/2 in", "mm", 38.1),
        ("1-1/2 in", "mm", 38.1),
        ('1-1/2"', "mm", 38.1),
        ('9/16"', "mm", 14.2875),
        ("1\u00a01/2\u00a0in", "mm", 38.1),
        ("10 thou", "mm", 0.254),
        ("2 µm", "mm", 0.002),
        ("2 \u03bcm", "mm", 0.002),
        ("-3 mm", "mm", -3.0),
        ("\u22123 mm", "mm", -3.0),
        ("500 1/min", "1/min", 500.0),
        ("500 rpm", "1/min", 500.0),
        ("500 rev/min", "1/min", 500.0),
        ("500 min⁻¹", "1/min", 500.0),
        ("0.004 in/rev", "mm/rev", 0.1016),
        ("0.5 hp", "W", 372.8499357911351),
        ("1/2 hp", "W", 372.8499357911351),
        ("0.75 kW", "W", 750.0),
        ("20 N/mm²", "MPa", 20.0),
        ("5 N·m", "N mm", 5000.0),
        ("24 h", "s", 86400.0),
        ("68 °F", "degC", 20.0),
        ("-40 degF", "degC", -40.0),
        ("50 %", "1", 0.5),
        ("0.5", "1", 0.5),
    ],
)
def test_what_people_write(text: str, unit: str, size: float) -> None:
    assert read_quantity(text, unit) == size


@pytest.mark.parametrize(
    ("text", "unit", "wrong", "do"),
    [
        ("25,4 mm", "mm", "the decimal mark must be a point", "write 25.4 mm"),
        ("1.000,5 mm", "mm", "the decimal mark must be a point", "write 1000.5 mm"),
        (
            "1,000 mm",
            "mm",
            "the decimal mark must be a point",
            "write 1000 mm or 1.000 mm, whichever is meant",
        ),
        ("0,125 in", "mm", "the decimal mark must be a point", "write 0.125 in"),
        ("0,0005", "mm", "the decimal mark must be a point", "write 0.0005 mm or 0.0005 in"),
        ("1,5,2 mm", "mm", "the decimal mark must be a point", "write for example 12.5 mm"),
        ("1 000", "mm", "digits must not be grouped", "write 1000 mm or 1000 in"),
        ("3 4/4 in", "mm", "has a fraction of one or more behind a whole number", "write 4 in"),
        ("68 F", "degC", "'F' is no unit of temperature that is known here", "write 68 degF"),
        ("12", "mm", "has no unit", "write 12 mm or 12 in"),
        ("1 1/2", "mm", "has no unit", "write 1 1/2 mm or 1 1/2 in"),
        ("500", "1/min", "has no unit", "write 500 1/min or 500 rpm"),
        (
            "2 mil",
            "mm",
            "mil is said for a thousandth of an inch and for a millimetre",
            "write 2 thou or 2 mm",
        ),
        ("7/8-14", "mm", "is a thread, not a length", "write the size in mm, in or thou"),
        ("7/8-14 UNF", "mm", "is a thread, not a length", "write the size in mm, in or thou"),
        ("M10 x 1.5", "mm", "is a thread, not a length", "write the size in mm, in or thou"),
        ("No. 7", "mm", "is a drill by number or letter, not a length", "write the size in mm, in or thou"),
        ("#7", "mm", "is a drill by number or letter, not a length", "write the size in mm, in or thou"),
        ("1 000 mm", "mm", "digits must not be grouped", "write 1000 mm"),
        ("12 kg", "mm", "kg is a mass, and a length is needed", "use mm, in or thou"),
        ("0.1 mm", "mm/rev", "mm is a length, and a feed per turn is needed", "use mm/rev or in/rev"),
        ("3 lb", "N", "lb is a mass, and a force is needed", "use N or lbf"),
        ("12 MM", "mm", "'MM' is no unit of length that is known here", "write 12 mm"),
        ("25 Mm", "mm", "'Mm' is no unit of length that is known here", "write 25 mm"),
        ("20 mPa", "MPa", "'mPa' is no unit of pressure that is known here", "write 20 MPa"),
        ("500 RPM", "1/min", "'RPM' is no unit of count per minute that is known here", "write 500 rpm"),
        ("12 rad", "mm", "'rad' is no unit of length that is known here", "use mm, in or thou"),
        ("38-40 mm", "mm", "holds more than one number", "write for example 12.5 mm"),
        ("38 mm (1.5 in)", "mm", "holds more than one number", "write for example 12.5 mm"),
        ("2 ft 6 in", "mm", "holds more than one number", "write for example 12.5 mm"),
        ("65-1800 rpm", "1/min", "holds more than one number", "write for example 12.5 1/min"),
        ("20 C", "degC", "'C' is no unit of temperature that is known here", "write 20 degC"),
        ("1 3/2 in", "mm", "has a fraction of one or more behind a whole number", "write 2 1/2 in"),
        ("1/0 in", "mm", "has a fraction over nought", "write for example 12.5 mm"),
        ("thick", "mm", "is not a number with a unit", "write for example 12.5 mm"),
        ("5. mm", "mm", "is not a number with a unit", "write for example 12.5 mm"),
        ("1.2.3 mm", "mm", "is not a number with a unit", "write for example 12.5 mm"),
        (" ", "mm", "is empty", "write for example 12.5 mm"),
        ("1" * 70 + " mm", "mm", "is too long for a quantity", "write for example 12.5 mm"),
    ],
)
def test_what_is_refused_and_how(text: str, unit: str, wrong: str, do: str) -> None:
    with pytest.raises(FactsWrong) as caught:
        read_quantity(text, unit)
    (problem,) = caught.value.problems
    assert (problem.said, problem.wrong, problem.do) == (text, wrong, do)
    assert str(caught.value) == f"{wrong}; {do}"


@pytest.mark.parametrize("text", ["1e3 mm", "½ in", "1--2 mm", "1 mm 2", "2*3 mm", "1 mm + 1 mm", "5001/min", "٣ mm"])
def test_no_expression_is_worked_out(text: str) -> None:
    with pytest.raises(FactsWrong):
        read_quantity(text, "1/min" if "min" in text else "mm")


@pytest.mark.parametrize(
    ("text", "unit", "size"),
    [
        ("1 yd", "mm", 914.4),
        ("2 bar", "MPa", 0.2),
        ("1 week", "s", 604800.0),
        ("300 kelvin", "degC", 26.85),
        ("1 kgf", "N", 9.80665),
    ],
)
def test_a_rarer_unit_goes_through_the_units_library(text: str, unit: str, size: float) -> None:
    assert read_quantity(text, unit) == pytest.approx(size, rel=1e-12)


@pytest.mark.parametrize("text", ["5 rps", "5 Hz", "30 rad/s", "5 turn/min", "5 degree/s"])
def test_a_turn_is_a_count_and_no_angle(text: str) -> None:
    # The units library would read these with or without a factor of two pi.
    with pytest.raises(FactsWrong, match="no unit of count per minute"):
        read_quantity(text, "1/min")


def test_the_units_library_is_loaded_only_for_a_rarer_unit() -> None:
    code = (
        "import sys; from tailtrue.quantities import read_quantity as read; read('1 1/2 in', 'mm');"
        "early = 'pint' in sys.modules; read('1 yd', 'mm'); print(early, 'pint' in sys.modules)"
    )
    done = subprocess.run(
        [sys.executable, "-c", code],
        env={**os.environ, "PYTHONPATH": os.pathsep.join(sys.path)},
        capture_output=True,
        text=True,
        check=True,
    )
    assert done.stdout.split() == ["False", "True"]


def test_every_canonical_unit_says_what_it_measures_and_offers_its_own_spellings() -> None:
    for canonical in FAST:
        assert kind_of(canonical)
        assert set(OFFERED[canonical]) <= set(units_of(canonical))


sizes = st.decimals(min_value=0, max_value=10_000, places=4, allow_nan=False, allow_infinity=False)


@given(sizes)
def test_inches_and_millimetres_agree(size: object) -> None:
    inches = read_quantity(f"{size} in", "mm")
    assert inches == float(Fraction(str(size)) * Fraction(254, 10))
    assert read_quantity(f"{inches!r} mm" if "e" not in repr(inches) else f"{inches:.20f} mm", "mm") == pytest.approx(inches)


@given(st.integers(0, 99), st.integers(1, 63), st.sampled_from([2, 4, 8, 16, 32, 64]), st.sampled_from([" ", "-"]))
def test_a_mixed_fraction_is_the_sum_of_its_parts(whole: int, over: int, under: int, joint: str) -> None:
    text = f"{whole}{joint}{over}/{under} in"
    if over >= under:
        with pytest.raises(FactsWrong):
            read_quantity(text, "mm")
    else:
        assert read_quantity(text, "mm") == float((whole + Fraction(over, under)) * Fraction(254, 10))


@given(st.text(), st.sampled_from(sorted(FAST)))
@example("1/2/3 mm", "mm")
@example("1 mm**9**9**9", "mm")
@example("1 __import__", "mm")
def test_any_text_is_read_or_refused_in_words(text: str, unit: str) -> None:
    problems: tuple[Problem, ...] = ()
    try:
        assert isinstance(read_quantity(text, unit), float)
    except FactsWrong as refused:
        problems = refused.problems
    for problem in problems:
        assert problem.wrong
        assert problem.do
        assert problem.said == text


SHAPED = st.from_regex(r"[-+]?[0-9]{0,4}[ ./,-]{0,2}[0-9]{0,4}[ ./,-]?[0-9]{0,3} ?[A-Za-zµ\"%/*^0-9]{0,7}", fullmatch=True)


@given(SHAPED, st.sampled_from(sorted(FAST)))
@example("-  0", "1")
def test_what_goes_through_is_the_number_that_stands_there(text: str, unit: str) -> None:
    """An independent and simple reading of the number: nothing that was let in may mean something else."""
    try:
        size = read_quantity(text, unit)
    except FactsWrong:
        return
    assert "," not in text
    number = re.match(r"\s*[-+]? *(?:(\d+)[ -])??(?:(\d+)/(\d+)|(\d*\.?\d+))(?![\d.])", text)
    assert number is not None
    whole, over, under, plain = number.groups()
    stands = Fraction(plain) if plain else int(whole or 0) + Fraction(int(over), int(under))
    if stands and unit != "degC":
        factor = Fraction(abs(size)) / stands
        spelling = text[number.end() :].strip()
        if spelling in FAST[unit][1]:
            assert float(factor) == pytest.approx(float(FAST[unit][1][spelling]))


@given(st.text(alphabet="0123456789", min_size=1, max_size=6), st.text(alphabet="0123456789", min_size=1, max_size=4))
def test_a_comma_is_never_accepted(before: str, after: str) -> None:
    for unit in ("mm", "in", '"', "thou"):
        with pytest.raises(FactsWrong, match="decimal mark"):
            read_quantity(f"{before},{after} {unit}", "mm")


def test_every_unit_that_a_fact_of_the_user_may_have_is_in_the_table_held_against_the_units_library() -> None:
    text = "".join(path.read_text(encoding="utf-8") for path in sorted(knowledge_folder().glob("**/facts.toml")))
    units = set(re.findall(r'^unit = "([^"]*)"', text, re.MULTILINE)) | set(re.findall(r'[{,] unit = "([^"]*)"', text))
    # An angle has a door of its own, which reads degrees and nothing else, so there is nothing to convert.
    assert {"mm", "1/min", "s"} <= units <= {*FAST, "deg"}
    assert {canonical for canonical, _ in PAIRS} == set(FAST)
    assert sum(len(spellings) for _, spellings in FAST.values()) == len(PAIRS) == len(set(PAIRS))
    # A spelling that is explained to the units library is one that people may write, or a unit kept inside.
    written = {spelling for _, spellings in FAST.values() for spelling in spellings}
    assert set(SPELT) <= written | set(FAST)


def offered(text: str, unit: str) -> tuple[str, ...]:
    """Every whole quantity that a refusal says to write, read from its words; none where the text was taken."""
    try:
        read_quantity(text, unit)
    except FactsWrong as refused:
        (problem,) = refused.problems
        do = problem.do.removesuffix(", whichever is meant")
        if do.startswith("use "):
            number = re.match(NUMBER, text.strip())
            assert number is not None
            return tuple(f"{number[0]} {one}" for one in re.split(", | or ", do.removeprefix("use ")))
        if do.startswith("write the size in "):
            return ()
        return tuple(do.removeprefix("write ").removeprefix("for example ").split(" or "))
    return ()


SLIPS = [
    "0,0005", "0,0005 in", "25,4 mm", "1,000", "1.000,5", "12", "1 1/2", "2 mil", "1 000", "12 MM", "20 C", "20 c", "70 f", "3/2/1",
    "1 3/2 in", "1 3/2", "1/0 in", "thick", "", "12 kg", "5 N", "3 mm", "1.5 HP", "0,5 %", "-1,5 degC", "500 U/min", "10 mm.", "7 RPM",
]  # fmt: skip


@pytest.mark.parametrize("unit", sorted(FAST))
@pytest.mark.parametrize("slip", SLIPS)
def test_what_is_advised_is_accepted_when_it_is_typed(slip: str, unit: str) -> None:
    for advised in offered(slip, unit):
        assert isinstance(read_quantity(advised, unit), float), advised


@pytest.mark.parametrize("slip", SLIPS)
def test_a_slip_is_answered_with_something_to_type_in_every_unit_that_it_does_not_fit(slip: str) -> None:
    # A slip that fits one unit is taken there: 3 mm is a length, 12 a number without a unit.
    assert sum(bool(offered(slip, unit)) for unit in FAST) >= len(FAST) - 1


@given(SHAPED, st.sampled_from(sorted(FAST)))
@example("0/0.", "1")
def test_what_is_advised_for_any_text_is_accepted_when_it_is_typed(text: str, unit: str) -> None:
    for advised in offered(text, unit):
        assert isinstance(read_quantity(advised, unit), float), advised


@pytest.mark.parametrize(
    ("text", "system"),
    [("1 1/2 in", "inch"), ('3/4"', "inch"), ("10 thou", "inch"), ("25 mm", "metric"), ("5 kg", "metric"), ("12", ""),
     ("24 h", ""), ("500 rpm", ""), ("50 %", ""), ("0.5 kW", "metric"), ("68 degF", "inch"), ("unmarked", "")],
)  # fmt: skip
def test_the_system_that_a_quantity_is_written_in(text: str, system: str) -> None:
    assert system_of(text) == system
