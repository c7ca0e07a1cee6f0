"""Sheets of the other routes: made from the shipped examples, with one thing wrong."""

from collections.abc import Callable
from dataclasses import replace
from typing import Any

from shops import EXAMPLES
from tailtrue.parts import Figure, Node, Setting, Text
from tailtrue.procedure import Procedure, Step

from .broken import breaks
from .changed import Job, sheet_of


def _job(name: str) -> Job:
    return sheet_of(EXAMPLES / "fernhill" / f"{name}.toml")


def _with_steps(name: str, change: Callable[[Step], Step]) -> Job:
    tree, shop = _job(name)
    phases = tuple(phase.model_copy(update={"steps": tuple(change(step) for step in phase.steps)}) for phase in tree.phases)
    return tree.model_copy(update={"phases": phases}), shop


def _with_lines(name: str, wanted: str, change: Callable[[Setting], Setting]) -> Job:
    def changed(step: Step) -> Step:
        if step.id != wanted:
            return step
        return step.model_copy(update={"settings": tuple(change(line) for line in step.settings)})

    return _with_steps(name, changed)


def _swapped(line: Setting, one: str, other: str) -> Setting:
    words = {one: other, other: one}

    def turned(text: Text) -> Text:
        return tuple(
            next((piece.replace(old, new) for old, new in words.items() if old in piece), piece)
            if isinstance(piece, str)
            else piece
            for piece in text
        )

    return line.model_copy(update={"label": turned(line.label), "value": turned(line.value)})


def _figures(tree: Procedure, fact: str, value: float) -> Procedure:
    def walk(node: Any) -> Any:
        if isinstance(node, Figure):
            return node.model_copy(update={"value": value}) if node.fact == fact else node
        if isinstance(node, tuple):
            return tuple(walk(one) for one in node)
        if isinstance(node, dict):
            return {name: walk(one) for name, one in node.items()}
        if isinstance(node, Node):
            return node.model_copy(update={name: walk(getattr(node, name)) for name in type(node).model_fields})
        return node

    return walk(tree)  # type: ignore[no-any-return]


def _without(name: str, *steps: str) -> Job:
    tree, shop = _job(name)
    phases = tuple(
        phase.model_copy(update={"steps": tuple(step for step in phase.steps if step.id not in steps)})
        for phase in tree.phases
    )
    return tree.model_copy(update={"phases": phases}), shop


@breaks("V140", "step 4.3")
def spindle_that_turns_where_no_limit_of_speed_is_known() -> Job:
    tree, shop = _job("chucked-bar-test")
    caps = tuple(replace(cap, phases=tuple(one for one in cap.phases or () if one != "relieve")) for cap in shop.speed_caps)
    return tree, replace(shop, speed_caps=caps)


@breaks("V141", "step 3.3")
def set_over_reckoned_over_the_taper_alone() -> Job:
    tree, shop = _job("taper-and-return")
    return _figures(tree, "setover.amount", 1.0), shop


@breaks("V330", "step 4.4")
def taper_that_runs_under_the_dog() -> Job:
    tree, shop = _job("taper-and-return")
    assert shop.taper is not None
    return tree, replace(shop, taper=replace(shop.taper, dog_mm=40.0))


@breaks("V330", "step 4.4")
def taper_whose_end_nobody_marks() -> Job:
    return _with_steps(
        "taper-and-return", lambda step: step.model_copy(update={"settings": ()}) if step.id == "mount-work" else step
    )


@breaks("V330", "step 4.4")
def taper_longer_than_the_work_beside_the_dog() -> Job:
    tree, shop = _job("taper-and-return")
    return _figures(tree, "setover.clear_of_dog", 160.0), shop


def _accepting(name: str, wanted: str, less_mm: float) -> Job:
    """A sheet on which one step accepts collars thinner by so much."""

    def changed(step: Step) -> Step:
        if step.id != wanted:
            return step
        checks = tuple(
            check.model_copy(update={"limits": check.limits.model_copy(update={"low": _less(check.limits.low, less_mm)})})
            if check.limits is not None and check.limits.low is not None else check
            for check in step.checks
        )  # fmt: skip
        return step.model_copy(update={"checks": checks})

    return _with_steps(name, changed)


def _less(figure: Figure, mm: float) -> Figure:
    return figure.model_copy(update={"value": figure.value - mm})


def _unchecked(name: str, wanted: str) -> Job:
    return _with_steps(name, lambda step: step.model_copy(update={"checks": ()}) if step.id == wanted else step)


def _worded(name: str, wanted: str, old: str, new: str) -> Job:
    """A sheet on which the words of one step are others."""

    def changed(step: Step) -> Step:
        if step.id != wanted:
            return step
        assert any(old in piece for text in step.text for piece in text if isinstance(piece, str))
        lines = tuple(
            tuple(piece.replace(old, new) if isinstance(piece, str) else piece for piece in text) for text in step.text
        )
        return step.model_copy(update={"text": lines})

    return _with_steps(name, changed)


@breaks("V334", "step 2.1")
def arm_on_a_jaw_that_is_opened_later() -> Job:
    return _worded("height-and-droop", "fit-arm", "to the chuck body or its face, never to a jaw", "to a jaw or the body")


@breaks("V334", "step 2.1")
def arm_that_must_be_set_anew_for_the_quill() -> Job:
    return _worded("height-and-droop", "fit-arm", "a short bar as thick as the quill", "the short bar")


@breaks("V335", "step 5.2")
def chips_where_nothing_was_cut() -> Job:
    return _worded("height-and-droop", "wipe-lathe", "Wipe the ways.", "Brush the chips away. Wipe the ways.")


@breaks("V338", "step 9.6", also="V480")
def tag_taken_off_that_may_be_either() -> Job:
    return _worded("taper-and-return", "restore", "Take the do-not-start tag off.", "Take the tag off.")


@breaks("V338", "step 5.5")
def tag_listed_that_nobody_hangs() -> Job:
    tree, shop = _with_steps(
        "taper-and-return",
        lambda step: step.model_copy(update={"tools": ("tag",)}) if step.number == "5.5" else step,
    )
    needs = tuple(
        need.model_copy(update={"used_at": ("5.5", *need.used_at)}) if need.id == "tag" else need for need in tree.needs
    )
    return tree.model_copy(update={"needs": needs}), shop


@breaks("V337", "step 3.4", also="V125")
def second_screw_that_the_tailstock_does_not_have() -> Job:
    tree, shop = _worded(
        "taper-and-return",
        "re-clamp",
        "Bring both set-over screws up until they bear.",
        "Bring both set-over screws up now.",
    )
    return tree, replace(shop, set_over="one-screw")


@breaks("V337", "step 3.4")
def screws_that_the_lathe_file_counts_and_the_line_asks() -> Job:
    asks = "Bring up the set-over screws where there are two."
    return _worded("taper-and-return", "re-clamp", "Bring both set-over screws up until they bear.", asks)


@breaks("V339", "step 4.4")
def dial_set_at_the_end_that_stays_large() -> Job:
    return _worded("taper-and-return", "turn-taper", "Touch the work where the taper is to be small", "Touch the larger end")


@breaks("V328", "limits")
def limit_that_the_steps_of_the_sheet_go_beyond() -> Job:
    tree, shop = _job("chucked-bar-test")
    return _figures(tree, "limit.chucked_overhang", 2.5), shop


@breaks("V331", "step 2.2", also="V442")
def certificate_that_accepts_collars_for_one_skim_alone() -> Job:
    return _accepting("re-certify", "inspect-bar", 0.3)


@breaks("V331", "step 2.2")
def test_that_accepts_collars_that_are_worn_out() -> Job:
    return _accepting("use-bar", "inspect-bar", 0.3)


@breaks("V332", "step 5.6")
def round_after_round_without_a_measure() -> Job:
    return _unchecked("use-bar", "restore")


@breaks("V332", "step 5.6")
def round_that_begins_on_collars_that_are_worn_out() -> Job:
    return _accepting("use-bar", "restore", 0.1)


@breaks("V333", "step 5.4")
def second_skim_on_collars_that_nobody_measured() -> Job:
    return _unchecked("re-certify", "turn-end-for-end")


@breaks("V142", "step 3.3")
def set_over_to_the_wrong_side() -> Job:
    return _with_lines("taper-and-return", "set-over", lambda line: _swapped(line, "toward you", "away from you"))


@breaks("V142", "step 5.3")
def set_back_to_the_wrong_side() -> Job:
    return _with_lines("taper-and-return", "set-back", lambda line: _swapped(line, "toward you", "away from you"))


@breaks("V143", "step 3.3")
def tag_that_comes_off_without_a_hold() -> Job:
    return _with_steps(
        "taper-and-return", lambda step: step.model_copy(update={"hold": None}) if step.id == "tag-off" else step
    )


@breaks("V144", "step 3.1")
def free_end_longer_than_the_piece_allows() -> Job:
    tree, shop = _job("chucked-bar-test")
    return _figures(tree, "chucked.stand_out", 210.0), shop


@breaks("V145", "step 6.1")
def wrong_foot_of_the_lathe() -> Job:
    return _with_lines("chucked-bar-test", "level-feet", lambda line: _swapped(line, "front foot", "rear foot"))


@breaks("V146", "drawing")
def bar_on_hand_drawn_as_it_was_planned() -> Job:
    tree, shop = _job("use-bar")
    return tree, replace(shop, bar_on_hand={**shop.bar_on_hand, "collar.diameter": 69.0})


@breaks("V75", "step 4.5")
def old_bond_that_nobody_looks_over() -> Job:
    return _with_steps("use-bar", lambda step: step.model_copy(update={"hold": None}) if step.id == "inspect-bar" else step)


@breaks("V41", "whole sheet")
def table_that_belongs_to_another_route() -> Job:
    tree, shop = _job("use-bar")
    return tree, replace(shop, parts=shop.parts - {"look-up"})


@breaks("V41", "whole sheet")
def sheet_without_its_drawing() -> Job:
    tree, shop = _job("make-bar")
    return tree.model_copy(update={"drawing": None}), shop


def _with_drawing(name: str, **labels: str) -> Job:
    tree, shop = _job("taper-and-return")
    drawings = tuple(
        one.model_copy(update={"labels": {**one.labels, **labels}}) if one.id == name else one for one in tree.drawings
    )
    return tree.model_copy(update={"drawings": drawings}), shop


@breaks("V380", "drawing tailstock-set-over")
def arrow_of_the_set_over_the_wrong_way() -> Job:
    return _with_drawing("tailstock-set-over", way="away from you")


@breaks("V380", "drawing tailstock-set-back")
def arrow_of_the_return_as_for_the_set_over() -> Job:
    return _with_drawing("tailstock-set-back", way="toward you")


@breaks("V380", "drawing tailstock-set-over")
def set_over_drawn_where_nothing_is_set_over() -> Job:
    tree, shop = _job("taper-and-return")
    place = next(step.number for phase in tree.phases for step in phase.steps if step.id == "mount-work")
    drawings = tuple(
        one.model_copy(update={"place": place}) if one.id == "tailstock-set-over" else one for one in tree.drawings
    )
    return tree.model_copy(update={"drawings": drawings}), shop


@breaks("V380", "drawing taper-work")
def work_drawn_aslant_the_wrong_way() -> Job:
    return _with_drawing("taper-work", way="away from you")


@breaks("V380", "drawing taper-work")
def small_end_drawn_at_the_other_end() -> Job:
    tree, shop = _job("taper-and-return")
    said = {"tool_side": "front", "small_end": "headstock"}
    drawings = tuple(one.model_copy(update={"said": said}) if one.id == "taper-work" else one for one in tree.drawings)
    return tree.model_copy(update={"drawings": drawings}), shop


@breaks("V125", "drawing tailstock-set-over")
def screws_of_the_set_over_taken_for_each_other() -> Job:
    tree, shop = _job("taper-and-return")
    toward, away = shop.screws
    said = {"screw_toward": away, "screw_away": toward}
    drawings = tuple(
        one.model_copy(update={"said": {**one.said, **said}}) if one.id == "tailstock-set-over" else one
        for one in tree.drawings
    )
    return tree.model_copy(update={"drawings": drawings}), shop


@breaks("V506", "step 2.1", also="V79")
def arm_held_as_if_it_were_work_for_a_cut() -> Job:
    def changed(step: Step) -> Step:
        return step.model_copy(update={"activities": ("sweep", "grip-in-chuck")}) if step.id == "fit-arm" else step

    return _with_steps("height-and-droop", changed)


@breaks("V506", "standing procedure", also="V109")
def speed_limit_for_a_spindle_that_stands_still() -> Job:
    tree, known = _with_steps("height-and-droop", lambda step: step)
    turned, _ = _with_steps("use-bar", lambda step: step)
    assert tree.sop is not None
    assert turned.sop is not None
    row = next(row for row in turned.sop.limits if row.label == "Speed with the chuck")
    sop = tree.sop.model_copy(update={"limits": (*tree.sop.limits, row)})
    return tree.model_copy(update={"sop": sop}), known


def _without_limit(name: str, fact: str) -> Job:
    """The shipped sheet whose standing procedure tells one limit less."""
    tree, known = _with_steps(name, lambda step: step)
    assert tree.sop is not None
    left = tuple(
        row for row in tree.sop.limits if not any(isinstance(one, Figure) and one.fact == fact for one in row.limit)
    )
    assert len(left) < len(tree.sop.limits)
    return tree.model_copy(update={"sop": tree.sop.model_copy(update={"limits": left})}), known


@breaks("V507", "standing procedure")
def set_over_with_no_limit() -> Job:
    return _without_limit("taper-and-return", "setover.amount")


@breaks("V507", "standing procedure")
def angle_of_the_centres_with_no_limit() -> Job:
    return _without_limit("taper-and-return", "setover.steepest_half_angle")


@breaks("V507", "standing procedure", also="V190")
def skim_of_the_bands_as_deep_as_you_like() -> Job:
    return _without_limit("chucked-bar-test", "chucked.skim.depth")
