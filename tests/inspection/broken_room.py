"""Sheets on which the drill strikes the chuck, or a shrunk joint is cut too warm."""

from collections.abc import Callable
from dataclasses import replace
from typing import Any

from shops import EXAMPLES
from tailtrue.advise import advise, shop_for, tree_of
from tailtrue.parts import Blank, Check, Figure, Setting
from tailtrue.procedure import Step

from .broken import breaks
from .changed import Job, sheet_of


def _job(name: str) -> Job:
    return sheet_of(EXAMPLES / name / "job.toml")


def _lines(name: str, wanted: str, change: Callable[[tuple[Setting, ...]], tuple[Setting, ...]]) -> Job:
    tree, shop = _job(name)
    phases = tuple(
        phase.model_copy(
            update={
                "steps": tuple(
                    step.model_copy(update={"settings": change(step.settings)}) if step.id == wanted else step
                    for step in phase.steps
                )
            }
        )
        for phase in tree.phases
    )
    return tree.model_copy(update={"phases": phases}), shop


def _valued(node: Any, fact: str, value: float) -> Any:
    if isinstance(node, Figure):
        return node.model_copy(update={"value": value}) if node.fact == fact else node
    if isinstance(node, tuple):
        return tuple(_valued(one, fact, value) for one in node)
    if isinstance(node, Setting):
        return node.model_copy(
            update={name: _valued(getattr(node, name), fact, value) for name in ("label", "value", "reason")}
        )
    return node


def _without(fact: str) -> Callable[[tuple[Setting, ...]], tuple[Setting, ...]]:
    return lambda lines: tuple(
        line for line in lines if not any(isinstance(piece, Figure) and piece.fact == fact for piece in line.value)
    )


@breaks("V203", "step 5.17")
def drill_that_strikes_the_chuck_behind_a_thin_spacer() -> Job:
    return _lines("fernhill", "drill-blank", lambda lines: _valued(lines, "crib.spacer", 5.0))


@breaks("V203", "step 5.17")
def room_behind_the_blank_not_told() -> Job:
    return _lines("fernhill", "drill-blank", _without("crib.spacer"))


@breaks("V204", "step 6.6")
def cooling_that_does_not_say_when_a_catch_is_held() -> Job:
    return _lines("ropewalk", "cool-collars", _without("joint.shrink_fit.holds_a_catch_to"))


@breaks("V204", "step 6.6")
def catch_held_warmer_than_the_joint_itself() -> Job:
    return _lines("ropewalk", "cool-collars", lambda lines: _valued(lines, "joint.shrink_fit.holds_a_catch_to", 60.0))


def _steps(change: Callable[[tuple[Step, ...]], tuple[Step, ...]]) -> Job:
    tree, shop = _job("ropewalk")
    phases = tuple(phase.model_copy(update={"steps": change(phase.steps)}) for phase in tree.phases)
    return tree.model_copy(update={"phases": phases}), shop


@breaks("V220", "step 8.5")
def roughing_that_no_cool_reading_goes_before() -> Job:
    def bare(step: Step) -> Step:
        return step.model_copy(update={"checks": ()}) if step.id == "cool-for-roughing" else step

    return _steps(lambda steps: tuple(map(bare, steps)))


@breaks("V220", "step 8.5")
def thermometer_in_hand_while_the_spindle_may_turn() -> Job:
    asked = Check(text=("As cool as the shop before each pass.",), blanks=(Blank(label="warmest seen", unit="degC"),))

    def warm(step: Step) -> Step:
        return step.model_copy(update={"checks": (*step.checks, asked)}) if step.id == "rough-collars" else step

    return _steps(lambda steps: tuple(map(warm, steps)))


@breaks("V222", "findings")
def thin_joint_that_no_finding_tells_of() -> Job:
    tree, shop = _job("ropewalk")
    kept = tuple(one for one in tree.findings if "Thin margin" not in str(one.text[0]))
    assert len(kept) < len(tree.findings)
    return tree.model_copy(update={"findings": kept}), shop


@breaks("V222", "step 8.5", also="V80 V81")
def thin_joint_roughed_too_deep() -> Job:
    return _lines("ropewalk", "rough-collars", lambda lines: _valued(lines, "collar.turning_cut", 1.0))


def _on_hand(fixed: str) -> Job:
    """A sheet for a bonded bar on hand, laid beside a stock file that says otherwise."""
    path = EXAMPLES / "fernhill" / "use-bar.toml"
    return tree_of(advise(path)), replace(shop_for(advise(path)), fixed_by=fixed)


@breaks("V266", "facts", also="V630")
def collars_told_as_bonded_that_set_screws_hold() -> Job:
    return _on_hand("set-screws")


@breaks("V266", "facts", also="V220 V630")
def collars_told_as_bonded_that_nobody_knows_of() -> Job:
    return _on_hand("")


@breaks("V220", "step 4.5", also="V266")
def shrunk_on_collars_of_a_bar_on_hand_cut_warm() -> Job:
    return _on_hand("shrink-fit")
