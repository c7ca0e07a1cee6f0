"""Every rule finds the sheet that breaks it, names the place, and leaves sound sheets alone."""

import re

import pytest

from tailtrue.inspection import RULES, Report, inspect

from . import (
    broken_again,
    broken_answered,
    broken_bar_ends,
    broken_bar_in_place,
    broken_belt,
    broken_bench,
    broken_bench_ends,
    broken_blank_collet,
    broken_bond,
    broken_boring,
    broken_by_hand,
    broken_card,
    broken_card_jobs,
    broken_castings,
    broken_cautions,
    broken_choices,
    broken_clamped,
    broken_documents,
    broken_drawings,
    broken_dust,
    broken_each_piece,
    broken_first_turns,
    broken_fixed,
    broken_four_jaw_bar,
    broken_four_jaws,
    broken_from_stopped,
    broken_grammar,
    broken_hands,
    broken_heavy_chuck,
    broken_held_words,
    broken_holding,
    broken_holds,
    broken_in_order,
    broken_iron,
    broken_joints,
    broken_moved,
    broken_named_tools,
    broken_on_hand,
    broken_on_the_nose,
    broken_other_chuck,
    broken_pairs,
    broken_paper,
    broken_places,
    broken_power,
    broken_record,
    broken_record_named,
    broken_restart,
    broken_review,
    broken_rework,
    broken_rework_end,
    broken_room,
    broken_rounds,
    broken_routes,
    broken_set_over_shown,
    broken_settled,
    broken_shop,
    broken_shop_words,
    broken_skims,
    broken_slide,
    broken_soft_point,
    broken_sop,
    broken_standing,
    broken_states,
    broken_still,
    broken_still_sheet,
    broken_stock,
    broken_stop,
    broken_supervised,
    broken_swapped,
    broken_taken,
    broken_third,
    broken_through,
    broken_tight,
    broken_time,
    broken_too_close,
    broken_tool_height,
    broken_unsaid,
    broken_up_front,
    broken_watched,
    broken_ways_back,
    broken_words,
    broken_work_record,
)
from .broken import BROKEN, Broken
from .sample import procedure, shop
from .sample_shop_words import OURS, SHIPPED, caution_said, step_said

PARTS = (
    broken_again,
    broken_answered,
    broken_bar_ends,
    broken_bar_in_place,
    broken_belt,
    broken_bench,
    broken_bench_ends,
    broken_blank_collet,
    broken_bond,
    broken_boring,
    broken_by_hand,
    broken_card,
    broken_card_jobs,
    broken_castings,
    broken_cautions,
    broken_choices,
    broken_clamped,
    broken_documents,
    broken_drawings,
    broken_dust,
    broken_each_piece,
    broken_first_turns,
    broken_fixed,
    broken_four_jaw_bar,
    broken_four_jaws,
    broken_from_stopped,
    broken_grammar,
    broken_hands,
    broken_heavy_chuck,
    broken_held_words,
    broken_holding,
    broken_holds,
    broken_in_order,
    broken_iron,
    broken_joints,
    broken_moved,
    broken_named_tools,
    broken_on_hand,
    broken_on_the_nose,
    broken_other_chuck,
    broken_pairs,
    broken_paper,
    broken_places,
    broken_power,
    broken_record,
    broken_record_named,
    broken_restart,
    broken_review,
    broken_rework,
    broken_rework_end,
    broken_room,
    broken_rounds,
    broken_routes,
    broken_set_over_shown,
    broken_settled,
    broken_shop,
    broken_shop_words,
    broken_skims,
    broken_slide,
    broken_soft_point,
    broken_sop,
    broken_standing,
    broken_states,
    broken_still,
    broken_still_sheet,
    broken_stock,
    broken_stop,
    broken_supervised,
    broken_swapped,
    broken_third,
    broken_through,
    broken_taken,
    broken_tight,
    broken_time,
    broken_too_close,
    broken_tool_height,
    broken_unsaid,
    broken_up_front,
    broken_watched,
    broken_ways_back,
    broken_words,
    broken_work_record,
)


def test_words_of_a_shop_beside_the_shipped_ones_pass() -> None:
    for job in (caution_said(*SHIPPED, OURS), step_said(("Put the bar between the centres.",), ("Lay the dog beside it.",))):
        assert inspect(*job).failures == ()


def test_the_sample_passes() -> None:
    report = inspect(procedure(), shop())
    assert report.failures == ()
    assert report.ok


@pytest.mark.parametrize("broken", BROKEN, ids=lambda broken: broken.name)
def test_a_broken_sheet_fails(broken: Broken) -> None:
    report = inspect(*broken.make())
    assert not report.ok
    found = {failure.rule for failure in report.failures}
    assert found == {broken.rule} | broken.also
    assert broken.where in {failure.where for failure in report.failures if failure.rule == broken.rule}
    each_is_a_sentence_for_people(report)


def each_is_a_sentence_for_people(report: Report) -> None:
    for failure in report.failures:
        assert re.match(r'[a-z"0-9]', failure.what), failure.what
        assert not failure.what.endswith(" ")
        assert len(failure.what.split()) >= 3
        assert "could not be judged" not in failure.what
        assert failure.where.strip()
        assert failure.source == next(rule.source for rule in RULES if rule.id == failure.rule)


def test_every_rule_has_a_sheet_that_breaks_it() -> None:
    assert {broken.rule for broken in BROKEN} == {rule.id for rule in RULES}


def test_every_rule_has_its_own_id_and_says_what_it_rests_on() -> None:
    assert len({rule.id for rule in RULES}) == len(RULES)
    assert all(re.fullmatch(r"V\d{2,3}", rule.id) and ":" in rule.source for rule in RULES)


def test_every_broken_sheet_is_registered() -> None:
    for part in PARTS:
        made = {name for name, value in vars(part).items() if getattr(value, "__module__", "") == part.__name__}
        public = {name for name in made if not name.startswith("_")}
        assert public == {broken.make.__name__ for broken in BROKEN if broken.make.__module__ == part.__name__}
