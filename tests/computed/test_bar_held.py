"""What the grip does to the rest of the bar, each bound tried from both sides; lengths in mm."""

from typing import Any

import pytest

from tailtrue.advise import knowledge
from tailtrue.computed.registry import Limited, register

# Name, what it is made from in the order of its needs, and what comes out.
_ANSWERS: list[tuple[str, tuple[float, ...], Any]] = [
    # Out 37, faced 1.5, jaws 32: they grip from 35.5 to 69.
    ("bar.jaws_on_seat", (37.0, 1.5, 32.0, 37.5, 62.5), True),
    ("bar.jaws_on_seat", (37.0, 1.5, 32.0, 68.9, 90.0), True),
    ("bar.jaws_on_seat", (37.0, 1.5, 32.0, 69.0, 90.0), False),
    ("bar.jaws_on_seat", (37.0, 1.5, 32.0, 10.0, 35.6), True),
    ("bar.jaws_on_seat", (37.0, 1.5, 32.0, 10.0, 35.5), False),
    ("bar.far_jaws_on_seat", (32.0, 31.9), True),
    ("bar.far_jaws_on_seat", (32.0, 32.0), False),
    ("bar.inside", (378.0, 37.0), 341.0),
    # A bar of 25 in a bore of 38, and in one that it nearly fills; 2.5 diameters are 62.5.
    ("bar.loose_inside", (38.0, 25.0, 1.0, 341.0, 2.5), True),
    ("bar.loose_inside", (26.1, 25.0, 1.0, 341.0, 2.5), True),
    ("bar.loose_inside", (26.0, 25.0, 1.0, 341.0, 2.5), False),
    ("bar.loose_inside", (38.0, 25.0, 1.0, 62.6, 2.5), True),
    ("bar.loose_inside", (38.0, 25.0, 1.0, 62.5, 2.5), False),
    # A steel bar of 12 mm and 900 mm free whirls at 637 1/min (Euler beam theory): half of that. Not in the spindle: no limit.
    ("bar.inside_speed_limit", ("spindle-bore", 900.0, 12.0, 206000.0, 7850.0, 0.5, 2000.0), 318.5),
    ("bar.inside_speed_limit", ("collet", 900.0, 12.0, 206000.0, 7850.0, 0.5, 2000.0), 318.5),
    ("bar.inside_speed_limit", ("steady", 900.0, 12.0, 206000.0, 7850.0, 0.5, 2000.0), 2000.0),
    # A stub: as 2.5 diameters, 30 mm. (900 / 30) squared is 900 times as fast.
    ("bar.inside_speed_limit", ("collet", 10.0, 12.0, 206000.0, 7850.0, 0.5, 2000.0), 318.5 * 900),
    ("bar.pads_speed_limit", ("steady", 25.0, 30.0, 1800.0), 1000 * 30 / 3.141592653589793 / 25),
    ("bar.pads_speed_limit", ("spindle-bore", 25.0, 30.0, 1800.0), 1800),
    ("bar.bush_from_rear", (True, 80.0, "spindle-bore", 40.0, None), True),
    ("bar.bush_from_rear", (True, 38.0, "spindle-bore", 40.0, None), False),
    ("bar.bush_from_rear", (True, 40.0, "spindle-bore", 40.0, 30.0), False),
    ("bar.bush_from_rear", (True, 38.0, "spindle-bore", None, None), True),
    ("bar.bush_from_rear", (True, 38.0, "collet", 40.0, 30.0), True),
    ("bar.bush_from_rear", (False, 80.0, "spindle-bore", 40.0, None), False),
]


@pytest.mark.parametrize(("name", "said", "answer"), _ANSWERS)
def test_grip_against_seat_and_bore_is_as_worked_by_hand(name: str, said: tuple[float, ...], answer: Any) -> None:
    entry = register()[name]
    made = entry.function(*said, *(knowledge().tables[table] for table in entry.tables))
    assert (made.value if isinstance(made, Limited) else made) == pytest.approx(answer, rel=1e-3)
