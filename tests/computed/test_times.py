"""Times of cutting against figures worked by hand from feed and speed; what is planned comes from a table of the test."""

from typing import Any

import pytest

from tailtrue.computed.registry import register
from tailtrue.tables import Row, Table

_PLANNED = {
    "approach": 2, "run_out": 3, "way_back": 10, "set_dial": 20, "peck": 8, "skim_runs": 2, "cool": 900,
    "round_to": 300, "round_total_to": 900, "learner_factor": 2,
}  # fmt: skip
PLANNING = Table(
    "time/planning", tuple(Row("time/planning", 2, {"name": name, "value": str(value)}) for name, value in _PLANNED.items())
)
LADDER = (
    {"size": (10.0, "10 mm"), "speed": 600.0, "hand_feed": 0.1},
    {"size": (20.0, "20 mm"), "speed": 300.0, "hand_feed": 0.2},
)
# Name, needs in their order, seconds. A pass over 35 mm is 40 mm with its travels, 4 s back, 20 s for the dial.
CUTS: list[tuple[str, tuple[Any, ...], float]] = [
    ("time.bar_facing", (20.0, 1.5, 0.5, 0.1, 600.0), 3 * (12 / 0.1 / 10 + 1.2 + 20)),
    # Two roughing cuts and the light one; then the light one alone.
    ("time.collar_facing", (80.0, 2.0, 0.1, 0.05, 300.0), 2 * (42 / 0.1 / 5 + 4.2 + 20) + 42 / 0.05 / 5 + 4.2 + 20),
    ("time.collar_facing", (80.0, 0.0, 0.1, 0.05, 300.0), 42 / 0.05 / 5 + 4.2 + 20),
    ("time.bar_centring", (6.0, 2.5, 0.05, 600.0), 6 / 0.05 / 10 + 3 * 8),
    ("time.collar_spotting", (2.5, 0.05, 600.0), 2.5 / 0.05 / 10 + 8),
    ("time.bore_rough", (35.0, 300.0, 4, 0.05, 0.1), 4 * (40 / 0.1 / 5 + 4 + 20)),
    ("time.bore_rough", (35.0, 300.0, 4, 0.05, None), 4 * (40 / 0.05 / 5 + 4 + 20)),
    ("time.bore_rough", (35.0, 300.0, 0, 0.05, 0.1), 40 / 0.1 / 5 + 4 + 20),
    ("time.bore_finish", (35.0, 300.0, 3.0, 0.05, 0.1), 4 * (40 / 0.1 / 5 + 4 + 20)),
    ("time.collar_turning", (2, 35.0, 300.0, 3, 0.05, 0.1), 6 * (40 / 0.1 / 5 + 4 + 20)),
    ("time.truing", (2, 35.0, 300.0, 0.1), 2 * (40 / 0.1 / 5 + 4 + 20)),
    ("time.skim", (3, 35.0, 300.0, 0.1), 6 * (40 / 0.1 / 5 + 4 + 20)),
    # Points of 118 degrees are 3.004 mm and 6.009 mm long; 28 mm are three pecks and two.
    ("time.drilling", (LADDER, 25.0, 3.0, 118.0), 31.004 / 0.1 / 10 + 34.009 / 0.2 / 5 + (3 + 2) * 8),
    ("time.cool", (), 900),
    ("time.learner_factor", (), 2),
]


@pytest.mark.parametrize(("name", "given", "seconds"), CUTS)
def test_a_time_is_that_worked_by_hand(name: str, given: tuple[Any, ...], seconds: float) -> None:
    assert register()[name].function(*given, PLANNING) == pytest.approx(seconds, rel=1e-4)


def test_handling_comes_in_seconds_from_a_table_in_minutes() -> None:
    row = Row("time/handling", 2, {"handling": "grip", "low_min": "3", "high_min": "8"})
    made = register()["time.handling"].function(Table("time/handling", (row,)))
    assert made == ({"kind": "grip", "low": 180.0, "high": 480.0},)
