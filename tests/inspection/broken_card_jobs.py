"""Sheets whose card lacks what its job needs: a reading carried, a size to finish to, the way back, a list, a stop."""

from collections.abc import Callable
from typing import Any

from shops import EXAMPLES
from tailtrue.procedure import Card, CardGroup

from .broken import breaks
from .changed import Job, sheet_of

_TAPER, _HEIGHT, _BENCH = "fernhill/taper-and-return", "fernhill/height-and-droop", "weir-cottage/job-bench"


def _job(name: str) -> Job:
    return sheet_of(EXAMPLES / f"{name}.toml")


def _card(name: str, change: Callable[[Card], dict[str, Any]]) -> Job:
    tree, given = _job(name)
    assert tree.card is not None
    return tree.model_copy(update={"card": tree.card.model_copy(update=change(tree.card))}), given


def _groups(name: str, change: Callable[[CardGroup], CardGroup]) -> Job:
    return _card(name, lambda card: {"groups": tuple(change(group) for group in card.groups)})


def _without(name: str, fact: str) -> Job:
    def change(group: CardGroup) -> CardGroup:
        return group.model_copy(update={"lines": tuple(line for line in group.lines if line.value.fact != fact)})

    return _groups(name, change)


def _back(**changes: Any) -> Job:
    def change(group: CardGroup) -> CardGroup:
        if group.title != "Set back":
            return group
        return group.model_copy(update={"lines": tuple(line.model_copy(update=changes) for line in group.lines)})

    return _groups(_TAPER, change)


def _stops(name: str, *words: str) -> Job:
    tree, given = _job(name)
    return tree.model_copy(update={"stop_at_once": (*tree.stop_at_once[:2], *((one,) for one in words))}), given


@breaks("V530", "card")
def droop_without_a_place_on_the_card() -> Job:
    return _groups(_HEIGHT, lambda group: group.model_copy(update={"places": ()}))


@breaks("V530", "card")
def place_in_another_unit_than_its_reading() -> Job:
    def change(group: CardGroup) -> CardGroup:
        return group.model_copy(update={"places": tuple(one.model_copy(update={"unit": ""}) for one in group.places)})

    return _groups(_HEIGHT, change)


@breaks("V530", "card")
def place_for_a_reading_of_another_step() -> Job:
    def change(group: CardGroup) -> CardGroup:
        return group.model_copy(update={"places": tuple(one.model_copy(update={"step": "1.1"}) for one in group.places)})

    return _groups(_TAPER, change)


@breaks("V531", "card")
def taper_without_its_small_end() -> Job:
    return _without(_TAPER, "setover.small")


@breaks("V531", "card")
def taper_without_its_passes() -> Job:
    return _without(_TAPER, "setover.passes")


@breaks("V531", "card")
def bar_centred_on_a_press_without_its_speed() -> Job:
    return _without(_BENCH, "bench.press_speed")


@breaks("V532", "card")
def tailstock_set_back_the_way_it_came() -> Job:
    return _back(label=("toward you",))


@breaks("V532", "card")
def set_over_without_the_way_back() -> Job:
    return _card(_TAPER, lambda card: {"groups": tuple(group for group in card.groups if group.title != "Set back")})


@breaks("V533", "card")
def press_started_without_its_list() -> Job:
    return _card(_BENCH, lambda _: {"besides": ()})


@breaks("V533", "card")
def list_of_a_press_without_its_guard() -> Job:
    def change(card: Card) -> dict[str, Any]:
        (press,) = card.besides
        lines = tuple(line for line in press.lines if "guard" not in line.item)
        return {"besides": (press.model_copy(update={"lines": lines}),)}

    return _card(_BENCH, change)


@breaks("V533", "card")
def list_of_a_press_where_none_is_used() -> Job:
    other = _job(_BENCH)[0].card
    assert other is not None
    return _card(_TAPER, lambda _: {"besides": other.besides})


@breaks("V534", "stop at once")
def centre_that_runs_dry_where_nothing_turns() -> Job:
    return _stops(_HEIGHT, "The tailstock centre runs dry.")


@breaks("V534", "stop at once")
def chips_where_nothing_turns() -> Job:
    return _stops(_HEIGHT, "Chips wrap round the work.")


@breaks("V534", "stop at once")
def work_between_centres_that_no_dry_centre_stops() -> Job:
    return _stops(_TAPER)
