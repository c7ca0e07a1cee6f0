"""Sheets that let a bar stand loose, send work back without power, or fit, mark, read and warm something wrong."""

import re
from collections.abc import Callable
from dataclasses import replace

from shops import EXAMPLES
from tailtrue.parts import Blank, Check, Figure, Node
from tailtrue.procedure import Procedure, Step

from .broken import breaks
from .changed import Job, sheet_of, step, with_step
from .sample_pieces import mm

_SHRUNK, _STUB, _SOFT = "ropewalk/job", "tannery-lane/job-stub", "tannery-lane/job"
_HOLDS = "joint.shrink_fit.holds_a_catch_to"


def _job(name: str) -> Job:
    return sheet_of(EXAMPLES / f"{name}.toml")


def _where(name: str, wanted: str) -> str:
    return next(f"step {one.number}" for phase in _job(name)[0].phases for one in phase.steps if one.id == wanted)


def _with(name: str, wanted: str, change: Callable[[Step], Step]) -> Job:
    tree, givens = _job(name)
    phases = tuple(
        phase.model_copy(update={"steps": tuple(change(one) if one.id == wanted else one for one in phase.steps)})
        for phase in tree.phases
    )
    return tree.model_copy(update={"phases": phases}), givens


def _said(name: str, wanted: str, old: str, new: str) -> Job:
    """One step with some words of it said otherwise; the words must be there."""

    def change(one: Step) -> Step:
        text = tuple(tuple(p.replace(old, new) if isinstance(p, str) else p for p in line) for line in one.text)
        assert text != one.text
        return one.model_copy(update={"text": text})

    return _with(name, wanted, change)


def _without_warmth(part: str) -> Job:
    """The sheet of the shrunk collars, one paper of it silent on how warm they may be cut."""
    tree, givens = _job(_SHRUNK)
    changed: Procedure = _silent(tree, part)
    return changed, givens


def _silent(tree: Procedure, part: str) -> Procedure:
    lines = getattr(tree, part)
    kept = tuple(one for one in lines if _HOLDS not in _facts(one))
    assert len(kept) < len(lines)
    return tree.model_copy(update={part: kept})


def _facts(part: object) -> set[str]:
    if isinstance(part, Figure):
        return {part.fact}
    inside = part if isinstance(part, tuple) else vars(part).values() if isinstance(part, Node) else ()
    return {fact for one in inside for fact in _facts(one)}


@breaks("V345", "limits")
def warmth_left_out_of_the_limits() -> Job:
    return _without_warmth("limits")


@breaks("V345", "care of the bar")
def warmth_left_out_of_the_care() -> Job:
    return _without_warmth("care")


@breaks("V345", "card")
def warmth_left_out_of_the_card() -> Job:
    tree, givens = _job(_SHRUNK)
    card = tree.card
    assert card is not None
    notes = tuple(one for one in card.notes if _HOLDS not in _facts(one))
    groups = tuple(
        group.model_copy(update={"lines": tuple(line for line in group.lines if line.value.fact != _HOLDS)})
        for group in card.groups
    )
    return tree.model_copy(update={"card": card.model_copy(update={"notes": notes, "groups": groups})}), givens


@breaks("V345", "record")
def warmth_left_out_of_the_record() -> Job:
    tree, givens = _job(_SHRUNK)
    record = tree.record
    assert record is not None
    blocks = tuple(
        block.model_copy(update={"entries": tuple(one for one in block.entries if _HOLDS not in _facts(one))})
        for block in record.blocks
    )
    return tree.model_copy(update={"record": record.model_copy(update={"blocks": blocks})}), givens


@breaks("V336", _where(_SOFT, "try-soft-jaws"))
def sent_back_to_the_start_check_without_power() -> Job:
    return _said(_SOFT, "try-soft-jaws", "go back to step 7.2, where power comes back", "go back to the start check")


@breaks("V336", _where(_SHRUNK, "rough-collars"))
def cooled_and_started_again_without_power() -> Job:
    def change(one: Step) -> Step:
        old = r"the cooling step again and every line after it, from step [\d.]+"
        lines = tuple(
            line.model_copy(
                update={
                    "reason": tuple(
                        re.sub(old, "the cooling step again, then the start check", p) if isinstance(p, str) else p
                        for p in line.reason
                    )
                }
            )
            for line in one.settings
        )
        assert lines != one.settings
        return one.model_copy(update={"settings": lines})

    return _with(_SHRUNK, "rough-collars", change)


@breaks("V347", "step 2.4", also="V32 V89 V111 V125 V480")
def rear_tool_fitted_upright() -> Job:
    changed, givens = with_step("2.4", text=(*step("2.4").text, ("Fit the turning tool.",)))
    return changed, replace(givens, tool_side="rear")


@breaks("V347", "step 2.4", also="V480")
def front_tool_told_to_go_in_upside_down() -> Job:
    return with_step("2.4", text=(*step("2.4").text, ("Fit the turning tool upside down.",)))


@breaks("V348", _where(_SHRUNK, "rehearse-shrink"))
def bar_stands_loose_under_a_hot_collar() -> Job:
    return _said(_SHRUNK, "rehearse-shrink", "Clamp bar to block and block to bench.", "")


@breaks("V348", _where(_SHRUNK, "shrink-collars"))
def bar_turned_over_and_left_loose() -> Job:
    return _said(_SHRUNK, "shrink-collars", "Clamp it in its block again. ", "")


@breaks("V349", "step 1.1")
def hundredths_asked_of_a_rule() -> Job:
    check = Check(text=("Cone ", mm("bar.diameter", 22.0, "size"), " across."), blanks=(Blank(label="cone", unit="mm"),))
    return with_step("1.1", checks=(check,))


@breaks("V350", _where(_STUB, "take-collar-to-stub"))
def collar_marked_on_the_face_that_seats() -> Job:
    return _said(_STUB, "take-collar-to-stub", "on the rim: a burr on a face seats it crooked", "on the face that is cut")
