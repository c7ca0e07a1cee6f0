"""Sheets on which a second chuck is used and not fitted, is another one than it is called, or leaves no room behind."""

from collections.abc import Callable
from dataclasses import replace
from functools import cache

from shops import EXAMPLES
from tailtrue.advise import advise, shop_for, tree_of
from tailtrue.parts import Figure
from tailtrue.procedure import Step

from .broken import breaks
from .changed import Job, changed_step, sheet_of, valued

CHUCK_DRIVES = {"crib.drive": "chuck-jaw", "crib.headstock_centre": "soft"}


@cache
def _rework() -> Job:
    advice = advise(EXAMPLES / "fernhill" / "rework.toml", instead={"job.found_in_chuck": False})
    return tree_of(advice), shop_for(advice)


def _cast() -> Job:
    return sheet_of(EXAMPLES / "fernhill" / "job-cast.toml")


def _without(fact: str) -> Callable[[Step], Step]:
    def bare(step: Step) -> Step:
        lines = tuple(
            line for line in step.settings if not any(isinstance(one, Figure) and one.fact == fact for one in line.value)
        )
        return step.model_copy(update={"settings": lines})

    return bare


def _called(job: Job, tool: str, name: str) -> Job:
    tree, given = job
    needs = tuple(need.model_copy(update={"name": (name,)}) if need.id == tool else need for need in tree.needs)
    return tree.model_copy(update={"needs": needs}), given


@breaks("V311", "step 3.1")
def scroll_chuck_where_the_jaws_move_one_by_one() -> Job:
    return _called(_rework(), "independent-chuck", "160 mm three-jaw chuck, for the blanks")


@breaks("V311", "step 5.1")
def blanks_out_of_round_in_a_scroll_chuck() -> Job:
    return _called(_cast(), "four-jaw-chuck", "160 mm three-jaw chuck, for the blanks")


@breaks("V311", "step 5.1")
def lathe_that_has_no_chuck_with_independent_jaws() -> Job:
    tree, given = _cast()
    return tree, replace(given, independent_chucks={})


@breaks("V311", "step 3.1", also="V80")
def chuck_fitted_without_its_limit_of_speed() -> Job:
    return changed_step(_rework(), "rework-fit-chuck", _without("rework.chuck_speed_limit"))


@breaks("V311", "step 3.1", also="V315 V80 V82")
def chuck_told_faster_than_its_mark() -> Job:
    return changed_step(_rework(), "rework-fit-chuck", valued("rework.chuck_speed_limit", 2500.0))


@breaks("V311", "step 4.1", also="V15")
def chuck_that_no_step_has_fitted() -> Job:
    def idle(step: Step) -> Step:
        return step.model_copy(update={"tools": ("board",)})

    return changed_step(_rework(), "rework-fit-chuck", idle)


@breaks("V312", "step 4.1")
def collar_set_against_the_face_of_the_chuck() -> Job:
    return changed_step(_rework(), "set-bore-true", valued("rework.room_behind", 0.0))


@breaks("V312", "step 4.1")
def room_behind_the_collar_not_told() -> Job:
    return changed_step(_rework(), "set-bore-true", _without("rework.room_behind"))


@breaks("V312", "step 4.1", also="V80")
def collar_that_stands_out_nobody_knows_how_far() -> Job:
    return changed_step(_rework(), "set-bore-true", _without("rework.stands_out"))


@breaks("V314", "step 7.2")
def centre_put_into_the_taper_behind_the_chuck() -> Job:
    path = EXAMPLES / "fernhill" / "job.toml"
    return tree_of(advise(path)), replace(shop_for(advise(path)), chuck_drives=True)


@breaks("V314", "step 3.2", also="V15")
def point_that_nothing_grips() -> Job:
    advice = advise(EXAMPLES / "fernhill" / "use-bar.toml", instead=CHUCK_DRIVES)
    job = tree_of(advice), shop_for(advice)

    def let_go(step: Step) -> Step:
        return step.model_copy(update={"tools": ("headstock-centre", "chuck", "wipes")})

    return changed_step(job, "grip-soft-point", let_go)


def _without_limit(job: Job, fact: str) -> Job:
    tree, given = job
    kept = tuple(row for row in tree.limits if not any(isinstance(one, Figure) and one.fact == fact for one in row.limit))
    assert len(kept) == len(tree.limits) - 1
    return tree.model_copy(update={"limits": kept}), given


@breaks("V315", "step 5.1")
def limits_without_the_chuck_of_the_blanks() -> Job:
    return _without_limit(_cast(), "blank.chuck_speed_limit")


@breaks("V315", "step 3.1")
def limits_without_the_chuck_of_the_collar() -> Job:
    return _without_limit(_rework(), "rework.chuck_speed_limit")


@breaks("V315", "step 1.2")
def limits_that_tell_another_speed_of_the_chuck() -> Job:
    tree, given = _rework()
    told = tuple(
        row.model_copy(
            update={
                "limit": tuple(
                    one.model_copy(update={"value": 1500.0})
                    if isinstance(one, Figure) and one.fact == "chuck.speed_limit"
                    else one
                    for one in row.limit
                )
            }
        )
        for row in tree.limits
    )
    return tree.model_copy(update={"limits": told}), given
