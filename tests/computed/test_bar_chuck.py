"""Which chuck grips the bar, and how fast it may turn there, against what a lathe hand would pick."""

from typing import Any

import pytest

from tailtrue.advise import knowledge
from tailtrue.computed.registry import Limited, register

THREE = {"label": "three", "jaws": 3, "kind": "scroll", "body": 160.0, "grips_to": 100.0, "through_bore": 40.0}
FOUR = {
    "label": "four", "jaws": 4, "kind": "independent", "body": 200.0, "grips_to": 140.0, "through_bore": 45.0, "jaw_depth": 30.0,
}  # fmt: skip
SMALL = {**FOUR, "label": "small", "body": 125.0, "grips_to": 80.0, "through_bore": 30.0}
NARROW = {**SMALL, "through_bore": 20.0}
SCROLL_FOUR = {**SMALL, "kind": "scroll"}
UNMEASURED = {key: value for key, value in FOUR.items() if key != "through_bore"}


def made(name: str, *given: Any) -> Any:
    entry = register()[name]
    assert len(given) == len(entry.needs)
    found = entry.function(*given, *(knowledge().tables[name] for name in entry.tables))
    return found.value if isinstance(found, Limited) else found


@pytest.mark.parametrize(
    ("chuck", "diameter", "bore", "takes"),
    [
        (FOUR, 25.0, 38.0, True),
        (FOUR, 25.0, 26.0, True),
        (FOUR, 25.0, 25.9, False),
        ({**FOUR, "through_bore": 26.0}, 25.0, 38.0, True),
        ({**FOUR, "through_bore": 25.9}, 25.0, 38.0, False),
        (UNMEASURED, 25.0, 38.0, False),
        ({**FOUR, "grips_to": 25.0}, 25.0, 38.0, True),
        ({**FOUR, "grips_to": 24.9}, 25.0, 38.0, False),
        (None, 25.0, 38.0, False),
    ],
)
def test_a_four_jaw_takes_a_bar_that_goes_through_with_room(
    chuck: dict[str, Any] | None, diameter: float, bore: float, takes: bool
) -> None:
    assert made("bar.four_jaw_takes", chuck, diameter, bore, 1.0) is takes


@pytest.mark.parametrize(
    ("chucks", "of_blanks", "picked"),
    [
        ((THREE, FOUR, SMALL), None, SMALL),
        ((THREE, FOUR, SMALL), FOUR, FOUR),
        ((THREE, FOUR, SMALL), THREE, SMALL),
        ((THREE, FOUR, NARROW), NARROW, FOUR),
        ((THREE, NARROW), None, NARROW),
        ((THREE, SCROLL_FOUR), None, None),
        ((THREE,), THREE, None),
    ],
)
def test_of_the_independent_chucks_one_that_takes_the_bar_is_picked_and_rather_that_of_the_blanks(
    chucks: tuple[dict[str, Any], ...], of_blanks: dict[str, Any] | None, picked: dict[str, Any] | None
) -> None:
    assert made("bar.four_jaw", chucks, 25.0, 38.0, 1.0, of_blanks) == picked


def test_the_four_jaw_grips_the_bar_where_it_is_set_true_and_nowhere_else() -> None:
    assert made("bar.chuck", "four-jaw", THREE, FOUR) == FOUR
    assert made("bar.chuck", "four-jaw", THREE, None) == THREE
    assert made("bar.chuck", "spindle-bore", THREE, FOUR) == THREE
    assert made("bar.chuck", None, THREE, FOUR) == THREE
    assert (made("bar.chuck_hole", FOUR), made("bar.chuck_hole", UNMEASURED)) == (45.0, None)
    assert (made("bar.chuck_jaw_depth", FOUR, 25.0), made("bar.chuck_jaw_depth", THREE, 25.0)) == (30.0, 25.0)


def test_a_chuck_is_changed_only_for_another_one() -> None:
    assert made("bar.chuck_change", FOUR, THREE) is True
    assert made("bar.chuck_change", FOUR, FOUR) is False
    assert made("blank.chuck_stays", "four-jaw", "four", "four") is True
    assert made("blank.chuck_stays", "four-jaw", "four", "small") is False
    assert made("blank.chuck_stays", "collet", "four", "four") is False
    assert made("blank.chuck_stays", None, "four", "four") is True


@pytest.mark.parametrize(
    ("given", "most"),
    [
        (("collet", False, False, 1800.0, 3500.0, None, None), 3500),
        (("collet", False, False, 1800.0, None, None, None), None),
        (("steady", False, False, 1800.0, 3500.0, 1800.0, None), 1800),
        (("four-jaw", True, False, 1800.0, None, 1500.0, 300.0), 1500),
        (("four-jaw", True, True, 1800.0, None, 1500.0, 300.0), 300),
        (("four-jaw", True, False, 1800.0, None, None, 300.0), None),
        (("four-jaw", False, True, 1200.0, None, 1500.0, 300.0), 1200),
    ],
)
def test_the_bar_turns_no_faster_than_the_chuck_that_grips_it(given: tuple[Any, ...], most: float | None) -> None:
    assert made("bar.hold_speed_limit", *given) == most


@pytest.mark.parametrize(
    ("given", "picked"),
    [
        (((THREE, FOUR), THREE, False, 25.0, FOUR), THREE),
        (((THREE, FOUR), FOUR, True, 25.0, FOUR), THREE),
        (((FOUR,), FOUR, True, 25.0, FOUR), FOUR),
        (((SCROLL_FOUR,), None, True, 25.0, None), None),
    ],
)
def test_a_lathe_with_no_scroll_chuck_uses_its_four_jaw(given: tuple[Any, ...], picked: dict[str, Any] | None) -> None:
    assert made("chuck.used", *given) == picked
    if picked is not None:
        assert made("chuck.kind", picked) == picked["kind"]


@pytest.mark.parametrize(
    ("given", "width"),
    [
        ((22.0, 1.5, False, 100.0, False, 10.0, 4.0, 1.0), 25.0),
        ((22.0, 1.5, False, 100.0, True, 10.0, 4.0, 1.0), 28.0),
        ((22.0, 1.5, False, 100.0, True, 10.0, 4.0, 0.79375), 2 * (4 + 13 * 0.79375)),
        ((35.0, 1.5, False, 100.0, True, 10.0, 4.0, 1.0), 38.0),
        ((22.0, 1.5, True, 42.0, True, 10.0, 4.0, 1.0), 42.0),
    ],
)
def test_a_blank_held_by_halves_is_sawn_wide_enough_for_either_grip(given: tuple[Any, ...], width: float) -> None:
    assert made("collar.saw_width", *given) == pytest.approx(width)
