"""A blank in a collet: how deep it goes in, and when the collet holds it at all."""

from typing import Any

import pytest

from tailtrue.advise import knowledge
from tailtrue.computed.registry import Limited, register

# Closes on the blank, not on the bar; a hole of 62 mm, 30 mm long, 21 mm of grip, seven tenths to fill; a bar of 25 mm.
SOUND: tuple[Any, ...] = (59.0, 60.0, 60.0, 62.0, 30.0, 21.0, 0.7, 25.0, 4.0, False, "drive-plate")


def made(name: str, *given: Any) -> Any:
    entry = register()[name]
    assert len(given) == len(entry.needs)
    found = entry.function(*given, *(knowledge().tables[table] for table in entry.tables))
    return found.value if isinstance(found, Limited) else found


def but(place: int, value: Any) -> tuple[Any, ...]:
    return (*SOUND[:place], value, *SOUND[place + 1 :])


@pytest.mark.parametrize(
    ("given", "grip"),
    [
        ((30.0, 25.0, 4.0, 1.0), 21.0),
        ((18.0, 25.0, 4.0, 1.0), 18.0),
        ((30.0, 25.4, 4.0, 1.0), 21.0),
        ((30.0, 3.0, 4.0, 1.0), 0.0),
        ((None, 25.0, 4.0, 1.0), None),
    ],
)
def test_the_finished_face_still_stands_clear_of_the_collet(given: tuple[Any, ...], grip: float | None) -> None:
    assert made("collar.collet_grip", *given) == grip


@pytest.mark.parametrize(
    ("given", "serves"),
    [
        (SOUND, True),
        (but(0, None), False),
        (but(0, 25.0), False),
        (but(0, 25.1), True),
        (but(1, None), False),
        (but(1, 59.9), False),
        (but(2, 60.1), False),
        (but(2, 58.9), False),
        (but(3, None), False),
        (but(3, 29.0), True),
        (but(3, 28.9), False),
        (but(4, None), False),
        (but(4, 30.1), False),
        (but(5, None), False),
        (but(5, 20.9), False),
        (but(9, True), False),
        (but(10, "chuck-jaw"), False),
        (but(10, None), True),
    ],
)
def test_a_collet_holds_a_round_blank_that_fills_it(given: tuple[Any, ...], serves: bool) -> None:
    assert made("collar.collet_serves", *given) is serves


@pytest.mark.parametrize(
    ("in_collet", "collet", "most"),
    [(False, 900.0, 1800.0), (True, 900.0, 900.0), (True, 2500.0, 1800.0), (True, None, 1800.0)],
)
def test_the_blank_turns_no_faster_than_collet_chuck_and_chuck_are_marked(
    in_collet: bool, collet: float | None, most: float
) -> None:
    entry = register()["blank.chuck_speed_limit"]
    found = entry.function({"marked_speed": 1800.0}, in_collet, collet, None)
    assert isinstance(found, Limited)
    assert found.value == most
