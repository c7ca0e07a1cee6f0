"""Sheets of a bar with three collars on which one of them is missing, misplaced, or read out of order."""

from collections.abc import Callable
from dataclasses import replace
from functools import cache
from typing import Any

from shops import EXAMPLES
from tailtrue.advise import advise, shop_for, tree_of
from tailtrue.parts import Check, Figure
from tailtrue.procedure import Phase, Step

from .broken import breaks
from .changed import Job, figure_of, sheet_of

_READ = "read-three-collars"


@cache
def _certified() -> Job:
    bar = {
        "label": "test bar 2, rack A", "material": "steel-low-carbon-cold-drawn", "diameter": "30 mm", "length": "340 mm",
        "cone": "6.6 mm", "pilot": "3.15 mm", "collar_material": "aluminium-6082-t6", "collar_diameter": "67.4 mm",
        "collar_width": "25 mm", "station": "48 mm", "fixed_by": "retaining-compound",
    }  # fmt: skip
    path = EXAMPLES / "fernhill" / "re-certify.toml"
    advice = advise(path, instead={"job.third_collar": True, "stock.test_bars": [bar]})
    return tree_of(advice), shop_for(advice)


def _certified_with(phase: str, step: str, change: Callable[[Step], Step]) -> Job:
    tree, shop = _certified()
    phases = tuple(
        one.model_copy(update={"steps": tuple(change(each) if each.id == step else each for each in one.steps)})
        if one.id == phase
        else one
        for one in tree.phases
    )
    return tree.model_copy(update={"phases": phases}), shop


def _job() -> Job:
    return sheet_of(EXAMPLES / "fernhill" / "job-three.toml")


def _phases(change: Callable[[Phase], Phase]) -> Job:
    tree, shop = _job()
    return tree.model_copy(update={"phases": tuple(change(phase) for phase in tree.phases)}), shop


def _step(name: str, change: Callable[[Step], Step]) -> Job:
    return _phases(
        lambda phase: phase.model_copy(
            update={"steps": tuple(change(step) if step.id == name else step for step in phase.steps)}
        )
    )


def _drawn(**sizes: float | None) -> Job:
    tree, shop = _job()
    assert tree.drawing is not None
    dimensions = dict(tree.drawing.dimensions)
    for key, value in sizes.items():
        name = key.replace("_", ".", 1)
        if value is None:
            del dimensions[name]
        else:
            dimensions[name] = figure_of(dimensions[name], value=value)
    return tree.model_copy(update={"drawing": tree.drawing.model_copy(update={"dimensions": dimensions})}), shop


def _read(change: Callable[[Check], Check]) -> Job:
    def changed(step: Step) -> Step:
        return step.model_copy(update={"checks": tuple(change(check) for check in step.checks)})

    return _step(_READ, changed)


def _setting(name: str, fact: str, value: float) -> Job:
    def other(piece: Any) -> Any:
        return piece.model_copy(update={"value": value}) if isinstance(piece, Figure) and piece.fact == fact else piece

    def changed(step: Step) -> Step:
        lines = tuple(
            line.model_copy(update={"value": tuple(map(other, line.value)), "reason": tuple(map(other, line.reason))})
            for line in step.settings
        )
        return step.model_copy(update={"settings": lines})

    return _step(name, changed)


@breaks("V205", "cut list, collar blank")
def two_blanks_sawn_for_three_collars() -> Job:
    tree, shop = _job()
    cuts = tuple(cut.model_copy(update={"count": 2}) if cut.count == 3 else cut for cut in tree.cut_list)
    return tree.model_copy(update={"cut_list": cuts}), shop


@breaks("V205", "phase 5", "V46 V621 V650")
def a_third_collar_that_is_not_bored() -> Job:
    return _phases(lambda phase: phase.model_copy(update={"each": phase.each[:2]}) if phase.number == "5" else phase)


@breaks("V205", "this job, Collars")
def two_collars_told_at_the_front() -> Job:
    tree, shop = _job()
    facts = tuple(
        line.model_copy(update={"value": ("two, aluminium",)}) if line.label == ("Collars",) else line for line in tree.facts
    )
    return tree.model_copy(update={"facts": facts}), shop


@breaks("V205", "cut list, collar blank", "V206 V207 V219")
def three_on_the_sheet_and_two_asked_for() -> Job:
    tree, shop = _job()
    return tree, replace(shop, third_collar=False)


@breaks("V206", "drawing")
def third_collar_off_the_middle() -> Job:
    return _drawn(third_station=200.0)


@breaks("V206", "drawing")
def third_collar_not_drawn() -> Job:
    return _drawn(third_station=None)


@breaks("V206", "drawing")
def collars_not_equally_far_apart() -> Job:
    return _drawn(third_apart=120.0)


@breaks("V207", "step 9.7")
def middle_read_only_once() -> Job:
    return _read(
        lambda check: (
            check.model_copy(update={"blanks": check.blanks[:4] + check.blanks[5:]}) if len(check.blanks) == 6 else check
        )
    )


@breaks("V207", "step 9.7")
def ends_read_before_the_middle() -> Job:
    def swapped(check: Check) -> Check:
        if len(check.blanks) != 6:
            return check
        head, middle, tail, *back = check.blanks
        return check.model_copy(update={"blanks": (head, tail, middle, *back)})

    return _read(swapped)


@breaks("V207", "step 9.7")
def no_place_for_the_deviation_of_the_middle() -> Job:
    return _step(_READ, lambda step: step.model_copy(update={"checks": step.checks[:2]}))


@breaks("V207", "record", also="V190")
def record_without_the_middle() -> Job:
    tree, shop = _job()
    assert tree.record is not None
    blocks = tuple(block for block in tree.record.blocks if block.id != "middle")
    return tree.model_copy(update={"record": tree.record.model_copy(update={"blocks": blocks})}), shop


@breaks("V219", "card")
def card_that_reads_two_collars() -> Job:
    tree, shop = _job()
    assert tree.card is not None
    notes = tuple(
        note.model_copy(update={"value": ("stop, let cool, read head, tail, tail, head.",)})
        if note.label == ("After the skim",)
        else note
        for note in tree.card.notes
    )
    return tree.model_copy(update={"card": tree.card.model_copy(update={"notes": notes})}), shop


@breaks("V208", "step 9.7", "V112 V80")
def allowance_smaller_than_its_parts() -> Job:
    return _setting(_READ, "third.allowance", 0.001)


@breaks("V209", "bore, middle", "V80 V381")
def middle_bore_that_does_not_pass_the_end_seat() -> Job:
    return _setting("bore-finish", "bore.middle_low", 29.97)


@breaks("V221", "step 6.4")
def middle_seat_gets_compound_with_the_others() -> Job:
    said = (("Put a ring of compound round each seat.",), ("Push each collar on from its own end.",))
    return _step("bond-middle", lambda step: step.model_copy(update={"text": said}))


@breaks("V221", "step 6.5")
def ends_do_not_follow_the_middle() -> Job:
    return _step("bond", lambda step: step.model_copy(update={"text": (("Push each collar on to its mark.",),)}))


@breaks("V223", "cut list, collar blank")
def short_end_in_the_saw_vice_with_no_packing() -> Job:
    return _step("saw-blanks", lambda step: step.model_copy(update={"settings": step.settings[:1]}))


@breaks("V223", "cut list, collar blank")
def stock_bought_without_what_the_vice_holds() -> Job:
    tree, shop = _job()
    cuts = tuple(
        cut.model_copy(update={"buy": figure_of(cut.buy, value=108.0)}) if cut.piece == "collar blank" and cut.buy else cut
        for cut in tree.cut_list
    )
    return tree.model_copy(update={"cut_list": cuts}), shop


@breaks("V223", "cut list, bar")
def sliver_sawn_off_the_bar() -> Job:
    tree, shop = _of_two()
    needs = tuple(
        need.model_copy(update={"detail": tuple(map(_short, need.detail))}) if need.id == "bar-stock" else need
        for need in tree.needs
    )
    return tree.model_copy(update={"needs": needs}), shop


def _short(piece: Any) -> Any:
    """The sawn bar is 378 mm long: the 2 mm over are less than the blade takes."""
    length = isinstance(piece, Figure) and piece.fact == "bar.stock_length"
    return piece.model_copy(update={"value": 380.0}) if length else piece


def _of_two() -> Job:
    return sheet_of(EXAMPLES / "fernhill" / "job.toml")


@breaks("V550", "steps", "V207")
def middle_read_in_one_round_of_a_certificate() -> Job:
    def of_two(step: Step) -> Step:
        checks = tuple(
            check.model_copy(update={"blanks": tuple(one for one in check.blanks if "middle" not in one.label)})
            for check in step.checks
        )
        return step.model_copy(update={"checks": checks})

    return _certified_with("end-for-end", _READ, of_two)


@breaks("V550", "step 5.8")
def middle_of_both_rounds_not_compared() -> Job:
    return _certified_with(
        "end-for-end", "compare-swap", lambda step: step.model_copy(update={"checks": (step.checks[0], *step.checks[2:])})
    )


def _with_places(wanted: Callable[[str], bool]) -> Job:
    tree, shop = _certified()
    assert tree.work_record is not None
    blocks = tuple(
        block.model_copy(update={"entries": tuple(place for place in block.entries if wanted(place.label))})
        for block in tree.work_record.blocks
    )
    return tree.model_copy(update={"work_record": tree.work_record.model_copy(update={"blocks": blocks})}), shop


@breaks("V550", "work record, rounds")
def record_of_three_collars_with_places_for_two() -> Job:
    return _with_places(lambda label: label not in ("middle, first", "middle, second"))


@breaks("V550", "work record, rounds")
def record_without_the_deviation_of_the_middle() -> Job:
    return _with_places(lambda label: not label.startswith("middle less"))
