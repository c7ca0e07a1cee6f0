"""Sheets that centre the ends of a bar at the bench, with one thing wrong."""

from collections.abc import Callable

from shops import EXAMPLES
from tailtrue.parts import Check
from tailtrue.procedure import Drawing, Step

from .broken import breaks
from .changed import Job, on_step, place_of, sheet_of, with_told

_DRILL, _LOOK = "drill-centre-bench", "check-centre-bench"


def _job() -> Job:
    return sheet_of(EXAMPLES / "weir-cottage" / "job-bench.toml")


def _where(step: str) -> str:
    return place_of(_job(), step)


def _with(step: str, change: Callable[[Step], Step]) -> Job:
    return on_step(_job(), step, change)


def _said(step: str, old: str, new: str) -> Job:
    def other(one: Step) -> Step:
        text = tuple(tuple(p.replace(old, new) if isinstance(p, str) else p for p in line) for line in one.text)
        assert text != one.text
        return one.model_copy(update={"text": text})

    return _with(step, other)


def _figures(step: str, fact: str, value: float) -> Job:
    return with_told(_job(), step, fact, value)


def _looser(check: Check) -> Check:
    if check.limits is None or check.limits.high is None:
        return check
    high = check.limits.high.model_copy(update={"value": 2.0})
    return check.model_copy(update={"limits": check.limits.model_copy(update={"high": high})})


@breaks("V411", _where(_DRILL), also="V90 V290")
def end_drilled_that_nobody_punched() -> Job:
    return _with("mark-centre", lambda one: one.model_copy(update={"activities": ("handle-stock",)}))


@breaks("V411", _where(_DRILL), also="V90 V290")
def bar_stood_up_with_nothing_that_holds_it() -> Job:
    return _with(_DRILL, lambda one: one.model_copy(update={"activities": ("centre-on-press",)}))


@breaks("V411", _where(_DRILL))
def plate_not_bolted_down() -> Job:
    return _said(_DRILL, "Bolt the angle plate to table or base.", "Set the angle plate on the table.")


@breaks("V411", _where(_DRILL))
def bar_clamped_once() -> Job:
    return _said(_DRILL, "Clamp the bar in the vee at two heights.", "Clamp the bar in the vee.")


@breaks("V411", _where(_DRILL))
def press_set_with_its_plug_in() -> Job:
    def plugged(one: Step) -> Step:
        text = tuple(tuple(p.replace("Pull the plug", "Look at the plug").replace("pull the plug", "look") if isinstance(p, str) else p
                           for p in line) for line in one.text)  # fmt: skip
        return one.model_copy(update={"text": text})

    return _with(_DRILL, plugged)


@breaks("V411", _where(_DRILL), also="V86")
def bar_longer_than_the_press_is_high() -> Job:
    return _figures(_DRILL, "crib.upright_height", 300.0)


@breaks("V411", _where(_DRILL))
def hole_looked_at_against_no_limit() -> Job:
    def bare(check: Check) -> Check:
        return check.model_copy(update={"limits": None})

    return _with(_LOOK, lambda one: one.model_copy(update={"checks": tuple(map(bare, one.checks))}))


@breaks("V621", _where(_LOOK), also="V651")
def both_ends_judged_and_one_written_down() -> Job:
    def fewer(one: Step) -> Step:
        first, *rest = one.checks
        return one.model_copy(update={"checks": (first.model_copy(update={"blanks": first.blanks[:1]}), *rest)})

    return _with(_LOOK, fewer)


@breaks("V411", _where(_DRILL), also="V156")
def hole_that_may_lie_far_off() -> Job:
    return _with(_LOOK, lambda one: one.model_copy(update={"checks": tuple(map(_looser, one.checks))}))


@breaks("V411", _where(_DRILL), also="V161 V79")
def end_faced_in_the_lathe_as_well() -> Job:
    return _with(_LOOK, lambda one: one.model_copy(update={"activities": (*one.activities, "facing")}))


@breaks("V260", _where(_DRILL))
def cone_that_no_centre_drill_cuts() -> Job:
    return _figures(_DRILL, "bar.centre_cone", 5.5)


@breaks("V412", "drawing collar-blank", also="V86 V401")
def collars_that_do_not_clean_up() -> Job:
    tree, shop = _job()

    def large(one: Drawing) -> Drawing:
        if one.kind != "collar-blank":
            return one
        wide = one.dimensions["diameter"].model_copy(update={"value": 59.0})
        return one.model_copy(update={"dimensions": {**one.dimensions, "diameter": wide}})

    return tree.model_copy(update={"drawings": tuple(map(large, tree.drawings))}), shop


@breaks("V87", "drawing bar-under-press", also="V86")
def bar_drawn_longer_than_the_room() -> Job:
    tree, shop = _job()

    def low(one: Drawing) -> Drawing:
        if one.kind != "bar-upright":
            return one
        height = one.dimensions["height"].model_copy(update={"value": 200.0})
        return one.model_copy(update={"dimensions": {**one.dimensions, "height": height}})

    return tree.model_copy(update={"drawings": tuple(map(low, tree.drawings))}), shop
