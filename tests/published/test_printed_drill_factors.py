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
    factor = thrust_shaw_oxford(20, float(row["feed_mm"]), 10, pilot_ratio=0.2) / 10**0.8
    assert factor == pytest.approx(float(row["printed_ff"]), abs=6e-4)


@pytest.mark.parametrize("row", _DIAMETERS, ids=[row["diameter_mm"] for row in _DIAMETERS])
def test_diameter_factors(row: dict[str, str]) -> None:
    diameter = float(row["diameter_mm"])
    thrust = thrust_shaw_oxford(20, 1, diameter, pilot_ratio=0.2)  # 0.05 * 20 = 1, f^0.8 = 1
    torque = torque_shaw_oxford(40, 1, diameter, torque_factor=1)  # 0.025 * 40 = 1
    assert torque == pytest.approx(float(row["printed_fm"]), rel=3e-3)
    if diameter == _MISPRINTED_DIAMETER:
        assert thrust == pytest.approx(5.70, abs=0.005)
    else:
        assert thrust == pytest.approx(float(row["printed_ft"]), abs=0.0101)
