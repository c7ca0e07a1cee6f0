"""What a joint is held against: a deep, coarse cut with a dull tool, in the toughest metal of its kind."""

import csv

import pytest

from tailtrue.computed.registry import register
from tailtrue.places import knowledge_folder
from tailtrue.tables import Row, Table

_CATCH = Table(
    "catch",
    tuple(Row("catch", 2, {"name": n, "value": v}) for n, v in {"depth": "1", "feed": "0.2", "dull_tool": "3"}.items()),
)


def _metals() -> list[dict[str, str]]:
    with (knowledge_folder() / "materials" / "materials.csv").open(encoding="utf-8", newline="") as lines:
        return list(csv.DictReader(lines))


_COLLARS = [row for row in _metals() if "collar" in row["roles"]]


def _torque(metal: dict[str, str], diameter: float) -> float:
    table = Table("materials", (Row("materials", 2, metal),))
    found: float = register()["joint.catch_torque"].function(metal["material"], diameter, _CATCH, table)
    return found


def test_a_catch_is_reckoned_with_the_high_constants() -> None:
    metal = {"material": "some", "kc11_low_mpa": "1000", "mc_low": "0", "kc11_high_mpa": "2000", "mc_high": "0"}
    # 2000 MPa on 0.2 mm2, three times for a dull tool, on a lever of 35 mm
    assert _torque(metal, 70) == pytest.approx(42000)


@pytest.mark.parametrize("metal", _COLLARS, ids=[row["material"] for row in _COLLARS])
def test_in_no_metal_of_a_collar_do_the_high_constants_ask_less_than_the_low(metal: dict[str, str]) -> None:
    low = metal | {"kc11_high_mpa": metal["kc11_low_mpa"], "mc_high": metal["mc_low"]}
    assert _torque(metal, 70) >= _torque(low, 70) > 0


def test_collars_were_found() -> None:
    assert len(_COLLARS) > 5
