"""Ends of a bar centred at the bench: whether it serves, how fast the press may turn, and what the collars lose."""

from math import pi
from typing import Any

import pytest

from tailtrue.advise import knowledge
from tailtrue.computed.registry import Limited, register

ROOMY = (True, 40.0, 700.0, 0.01, 25.0, 333.0, 10.0)


def made(name: str, *given: Any) -> Any:
    entry = register()[name]
    assert len(given) == len(entry.needs) + len(entry.tables)
    found = entry.function(*given)
    return found.value if isinstance(found, Limited) else found


def but(place: int, value: Any) -> tuple[Any, ...]:
    return (*ROOMY[:place], value, *ROOMY[place + 1 :])


@pytest.mark.parametrize(
    ("given", "serves"),
    [
        (ROOMY, True),
        (but(0, False), False),
        (but(0, None), False),
        (but(1, None), False),
        (but(1, 25.0), True),
        (but(1, 24.9), False),
        (but(2, None), False),
        (but(2, 343.0), True),
        (but(2, 342.9), False),
        (but(3, None), False),
    ],
)
def test_the_bench_serves_with_press_plate_room_and_caliper(given: tuple[Any, ...], serves: bool) -> None:
    assert made("bench.serves", *given) is serves


class _Row:
    def __init__(self, **cells: float) -> None:
        self.cells = cells

    def number(self, name: str) -> float:
        return self.cells[name]


class _Table:
    """A table that gives the one row asked for, and has no shares of another operation."""

    def one(self, **_keys: str) -> _Row:
        return _Row(low_m_min=15.0, high_m_min=25.0)

    def where(self, **_keys: str) -> list[_Row]:
        return []


@pytest.mark.parametrize(
    ("most", "step", "expected"), [(5000.0, 10.0, 1440.0), (1000.0, 10.0, 1000.0), (5000.0, 100.0, 1400.0)]
)
def test_the_press_turns_a_centre_drill_at_its_surface_speed(most: float, step: float, expected: float) -> None:
    """20 m/min on the mean of 2.5 and 6.3 mm."""
    assert 1000 * 20 / (pi * 4.4) == pytest.approx(1446.9, abs=0.1)
    assert made("bench.press_speed", "steel", 2.5, 6.3, most, step, _Table(), _Table()) == pytest.approx(expected)


@pytest.mark.parametrize(("hold", "off"), [("bench", 1.75), ("four-jaw", 1.0), (None, 1.0)])
def test_a_collar_on_a_bar_centred_at_the_bench_loses_what_the_bar_runs_out(hold: str | None, off: float) -> None:
    holdings = knowledge().tables["machines/holdings"]
    assert made("collar.clean_up", hold, 1.0, 0.75, holdings) == off


def test_four_places_find_at_least_seven_tenths_of_what_a_hole_lies_off() -> None:
    """The direction of the offset may lie half-way between two places: the wall then differs by its cosine of 45 degrees."""
    limits = knowledge().limits
    assert limits["limit.bench_wall"].value / 0.5**0.5 < limits["limit.bench_run_out"].value


@pytest.mark.parametrize(("bar", "most"), [(None, 0.05), ({}, 0.05), ({"run_out": 0.3}, 0.35)])
def test_a_bar_made_at_the_bench_is_held_against_what_it_ran_out_when_new(bar: dict[str, float] | None, most: float) -> None:
    assert made("bar.middle_run_out", bar, 0.05) == pytest.approx(most)
