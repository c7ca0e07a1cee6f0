"""The closed forms of the drilling equations against the printed factors of Machinery's Handbook, 31st ed."""

import csv
from pathlib import Path

import pytest

from tailtrue.calc.drilling import thrust_shaw_oxford, torque_shaw_oxford

_TABLE = Path(__file__).parent / "data" / "drill_factors.csv"
_MISPRINTED_DIAMETER = 8.8  # mm; FT is printed 5.96 there, out of its own series


def _rows(table: str) -> list[dict[str, str]]:
    with _TABLE.open(newline="", encoding="utf-8") as lines:
        return [row for row in csv.DictReader(lines) if row["table"] == table]


_FEEDS, _DIAMETERS = _rows("feed"), _rows("diameter")


def test_table_is_whole() -> None:
    assert (len(_FEEDS), len(_DIAMETERS)) == (16, 25)


@pytest.mark.parametrize("row", _FEEDS, ids=[row["feed_mm"] for row in _FEEDS])
def test_feed_factor(row: dict[str, str]) -> None:
    # With a pilot and D = 10 mm the thrust is 0.05 Kd Ff D^0.8.
    factor = (
        thrust_shaw_oxford(
            20, float(row["feed_mm"]), 10, pilot_ratio=0.2, chisel_ratio=0.18, thrust_factor=1.355, chisel_thrust_factor=0.03
        )
        / 10**0.8
    )
    assert factor == pytest.approx(float(row["printed_ff"]), abs=6e-4)


@pytest.mark.parametrize("row", _DIAMETERS, ids=[row["diameter_mm"] for row in _DIAMETERS])
def test_diameter_factors(row: dict[str, str]) -> None:
    diameter = float(row["diameter_mm"])
    thrust = thrust_shaw_oxford(
        20, 1, diameter, pilot_ratio=0.2, chisel_ratio=0.18, thrust_factor=1.355, chisel_thrust_factor=0.03
    )  # 0.05 * 20 = 1, f^0.8 = 1
    torque = torque_shaw_oxford(40, 1, diameter, torque_factor=1, chisel_ratio=0.18)  # 0.025 * 40 = 1
    assert torque == pytest.approx(float(row["printed_fm"]), rel=3e-3)
    if diameter == _MISPRINTED_DIAMETER:
        assert thrust == pytest.approx(5.70, abs=0.005)
    else:
        assert thrust == pytest.approx(float(row["printed_ft"]), abs=0.0101)


# Inch equations and factors of the same pages; Kd, wear factor and the two answers of the example from memory.
_POUND_N, _INCH_MM = 4.4482216152605, 25.4


def _inch_thrust(kd: float, feed_in: float, diameter_in: float) -> float:
    cut = 2 * kd * feed_in**0.8 * diameter_in**0.8 * 1.355 * 1.3
    return (cut + kd * diameter_in**2 * 0.030 * 1.3) * _POUND_N


def _inch_torque(kd: float, feed_in: float, diameter_in: float) -> float:
    return kd * feed_in**0.8 * diameter_in**1.8 * 1.085 * 1.3 * _POUND_N * _INCH_MM


def test_inch_equations_give_the_printed_answers_of_the_example() -> None:
    assert _inch_thrust(24000, 0.008, 0.875) == pytest.approx(2313 * _POUND_N, rel=2e-3)
    assert _inch_torque(24000, 0.008, 0.875) == pytest.approx(559 * _POUND_N * _INCH_MM, rel=2e-3)


@pytest.mark.parametrize("feed_mm", [0.03, 0.1, 0.3])
@pytest.mark.parametrize("diameter_mm", [3.0, 10.0, 22.225, 45.0])
def test_metric_form_with_its_rounded_constants_stays_near_the_inch_form(diameter_mm: float, feed_mm: float) -> None:
    feed_in, diameter_in = feed_mm / _INCH_MM, diameter_mm / _INCH_MM
    thrust = thrust_shaw_oxford(
        24000, feed_mm, diameter_mm, wear_factor=1.3, chisel_ratio=0.18, thrust_factor=1.355, chisel_thrust_factor=0.03
    )
    torque = torque_shaw_oxford(24000, feed_mm, diameter_mm, wear_factor=1.3, chisel_ratio=0.18, torque_factor=1.085)
    assert thrust == pytest.approx(_inch_thrust(24000, feed_in, diameter_in), rel=0.015)
    assert torque == pytest.approx(_inch_torque(24000, feed_in, diameter_in), rel=0.01)
