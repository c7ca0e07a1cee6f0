"""Tables of screws and pins against the figures of their sources, in the units in which those are printed."""

import csv
from itertools import pairwise
from math import pi
from pathlib import Path

import pytest

from tailtrue.calc.joints import joint_torque
from tailtrue.calc.pins import pin_shear_force
from tailtrue.calc.screws import screw_holding, screw_preload, screws_hold, thread_shear

_JOINTS = Path(__file__).parents[2] / "knowledge" / "joints"
_POUND_FORCE_N = 4.4482216152605
_INCH_MM = 25.4


def _rows(name: str) -> list[dict[str, str]]:
    with (_JOINTS / f"{name}.csv").open(newline="", encoding="utf-8") as lines:
        return list(csv.DictReader(lines))


_SCREWS = {row["designation"]: row for row in _rows("set_screws")}
_FACTORS = {row["name"]: float(row["value"]) for row in _rows("set_screw_factors")}
_INCH = [name for name in _SCREWS if not name.startswith("M")]
_METRIC = [name for name in _SCREWS if name.startswith("M")]

# Inches, threads per inch, pound-inches (public metal torque chart), pounds high (Mechanical Engineering Design,
# table 7-4, memory), pounds low (public chart of cup-pointed set screws).
_PRINTED_INCH = {
    "No. 6-32": (0.138, 32, 10, 250, 100),
    "No. 8-32": (0.164, 32, 20, 385, 150),
    "No. 10-24": (0.190, 24, 36, 540, 200),
    "1/4 in-20": (0.250, 20, 87, 1000, 400),
    "5/16 in-18": (0.3125, 18, 165, 1500, 700),
    "3/8 in-16": (0.375, 16, 290, 2000, 1000),
}


def _high(name: str) -> float:
    return _PRINTED_INCH[name][3] * _POUND_FORCE_N


def _held(name: str, end: str) -> float:
    """By its chart, or where the charts lack the thread by the rule."""
    row = _SCREWS[name]
    if name in _PRINTED_INCH:
        return _high(name) if end == "high" else float(row["holding_low_n"])
    return screw_holding(float(row["torque_nmm"]), float(row["major_mm"]), _FACTORS[f"holding-ratio-{end}"])


def test_table_of_inch_screws_has_no_other_rows() -> None:
    assert list(_PRINTED_INCH) == _INCH
    assert _METRIC == ["M3", "M4", "M5", "M6", "M8", "M10"]


@pytest.mark.parametrize("name", _PRINTED_INCH)
def test_inch_screw_is_as_printed(name: str) -> None:
    inches, threads, pound_inches, _, low = _PRINTED_INCH[name]
    row = _SCREWS[name]
    assert float(row["major_mm"]) == pytest.approx(inches * _INCH_MM, rel=1e-3)
    assert float(row["pitch_mm"]) == pytest.approx(_INCH_MM / threads, abs=1e-4)
    assert float(row["torque_nmm"]) == pytest.approx(pound_inches * _POUND_FORCE_N * _INCH_MM, rel=2e-3)
    assert float(row["holding_low_n"]) == pytest.approx(low * _POUND_FORCE_N, rel=1e-3)


@pytest.mark.parametrize("name", _INCH)
def test_sources_of_holding_force_differ_by_more_than_two(name: str) -> None:
    assert 2 <= _high(name) / float(_SCREWS[name]["holding_low_n"]) <= 2.75


@pytest.mark.parametrize("name", _INCH)
def test_rule_for_other_threads_never_claims_more_than_the_chart_behind_it(name: str) -> None:
    row = _SCREWS[name]
    claimed = screw_holding(float(row["torque_nmm"]), float(row["major_mm"]), _FACTORS["holding-ratio-high"])
    assert 0.74 < claimed / _high(name) < 1.01


@pytest.mark.parametrize("name", _METRIC)
def test_metric_screws_have_no_chart_and_hold_by_the_rule(name: str) -> None:
    assert not _SCREWS[name]["holding_low_n"]
    assert _held(name, "low") / _held(name, "high") == pytest.approx(0.4)


@pytest.mark.parametrize("name", _SCREWS)
def test_low_chart_with_two_and_high_chart_with_eight_both_stay_below_the_force_of_the_screw(name: str) -> None:
    row = _SCREWS[name]
    press = screw_preload(float(row["torque_nmm"]), float(row["major_mm"]), _FACTORS["nut-factor"])
    for end in ("low", "high"):
        held = screws_hold(_held(name, end), [0], [], _FACTORS[f"safety-{end}-chart"], 25)
        assert held.axial_n < 0.2 * press


@pytest.mark.parametrize("name", _SCREWS)
def test_thread_in_aluminium_stands_its_reduced_torque_where_it_is_long_enough(name: str) -> None:
    """60 MPa of shear is what the table of pins gives aluminium (memory)."""
    row = _SCREWS[name]
    press = screw_preload(float(row["torque_nmm"]), float(row["major_mm"]), _FACTORS["nut-factor"])
    soft = _FACTORS["soft-thread-torque"] * press
    thread = float(row["major_mm"])
    assert thread_shear(soft, thread, _FACTORS["aluminium-engagement"] * thread) < 60


def test_tap_drill_is_the_thread_less_its_pitch_or_a_little_more() -> None:
    for row in _SCREWS.values():
        left = float(row["major_mm"]) - float(row["tap_drill_mm"])
        assert 0.8 * float(row["pitch_mm"]) <= left <= 1.03 * float(row["pitch_mm"]), row["designation"]


# Kilonewtons of double shear. Dowels: metric dowel-pin data sheet, ASME B18.8.5M; spring pins: data sheets to ISO 8752
# and ISO 8751.
_PRINTED_PINS = {
    "hardened-dowel": {3: 14.8, 4: 26.4, 5: 41.2, 6: 59.4, 8: 105, 10: 165},
    "slotted-spring-heavy": {
        2: 2.82, 2.5: 4.38, 3: 6.32, 3.5: 9.06, 4: 11.24, 4.5: 15.36, 5: 17.54, 6: 26.04, 8: 42.76,
    },
    "coiled-spring-light": {2: 1.5, 2.5: 2.3, 3: 3.3, 3.5: 4.5, 4: 5.7, 5: 9, 6: 13, 8: 23},
}  # fmt: skip


def test_pins_are_as_printed() -> None:
    found: dict[str, dict[float, float]] = {}
    for row in _rows("pins"):
        if row["source"] == "memory":
            continue  # nothing printed stands behind it
        found.setdefault(row["type"], {})[float(row["diameter_mm"])] = float(row["double_shear_n"]) / 1000
    assert found == _PRINTED_PINS


@pytest.mark.parametrize(("kind", "diameter", "newton_metres"), [
    ("hardened-dowel", 3, 185.0), ("hardened-dowel", 10, 2062.5), ("slotted-spring-heavy", 2, 35.2),
    ("slotted-spring-heavy", 4, 140.5), ("slotted-spring-heavy", 8, 534.5), ("coiled-spring-light", 2.5, 28.7),
    ("coiled-spring-light", 8, 287.5),
])  # fmt: skip
def test_torque_of_a_pin_on_a_25_mm_bar(kind: str, diameter: float, newton_metres: float) -> None:
    """Derived from the printed shear: half the bar is the arm."""
    [row] = [row for row in _rows("pins") if row["type"] == kind and float(row["diameter_mm"]) == diameter]
    assert joint_torque(float(row["double_shear_n"]), 25) / 1000 == pytest.approx(newton_metres, abs=0.06)


def test_stronger_pins_are_thicker_and_hollow_ones_weaker() -> None:
    for kind, sizes in _PRINTED_PINS.items():
        assert all(one < other for one, other in pairwise(sizes.values())), kind
        for diameter, kilonewtons in sizes.items():
            solid = pin_shear_force(1050, diameter) / 1000
            assert kilonewtons < 1.011 * solid, (kind, diameter)
            if kind != "hardened-dowel":
                assert kilonewtons * 1000 < 0.9 * 2 * 1050 * pi * diameter**2 / 4


def test_friction_for_holding_is_the_low_one() -> None:
    rows = _rows("friction")
    assert all(0.05 <= float(row["friction_low"]) <= 0.2 for row in rows)
    # DIN 7190-1, as reproduced in a public help page: aluminium shrunk on steel dry 0.10 to 0.15.
    shrunk = {row["family"]: row["friction_low"] for row in rows if row["situation"] == "shrunk-dry"}
    assert shrunk["aluminium"] == "0.1"
