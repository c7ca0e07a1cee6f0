"""The two printed columns of the power constants, inch and metric, give one power for one cut (units proved by pint)."""

import csv
from pathlib import Path

import pint
import pytest

from tailtrue.calc.cut_power import power_from_constant
from tailtrue.calc.cutting import removal_rate

_TABLE = Path(__file__).parent / "data" / "power_constants.csv"
_UNITS = pint.UnitRegistry()


def _rows() -> list[dict[str, str]]:
    with _TABLE.open(newline="", encoding="utf-8") as lines:
        return list(csv.DictReader(lines))


_ROWS = _rows()


def test_table_is_whole() -> None:
    assert len(_ROWS) == 42


@pytest.mark.parametrize("row", _ROWS, ids=[f"{row['metal']} {row['hardness_hb']}" for row in _ROWS])
def test_inch_and_metric_columns_agree(row: dict[str, str]) -> None:
    assert row["source"]
    cut = {"surface_speed_m_min": 30.0, "depth_mm": 1.0, "feed_mm": 0.3}
    volume = removal_rate(**cut) * _UNITS("cm**3/min")
    inch = (float(row["printed_hp"]) * _UNITS("hp/(in**3/min)") * volume).to("W").magnitude
    metric = power_from_constant(float(row["printed_kw"]) * 1000, **cut)
    # Both columns are rounded to a hundredth: of a kW per cm3/s, and of a hp per in3/min, which is 0.027 of the other.
    rounding = (0.005 + 0.005 * 2.73) * 1000 * removal_rate(**cut) / 60
    assert metric == pytest.approx(inch, abs=rounding)
