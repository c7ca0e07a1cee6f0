"""Sheets on which a shop's words take something from the shipped ones, or ask for what maims."""

from dataclasses import replace

from tailtrue.procedure import Finding

from .broken import breaks
from .changed import Job, with_caution, with_step
from .sample_shop_words import OURS, SHIPPED, SIGNED, caution_said, laid, step_said


@breaks("V460", "step 4.1, caution bar-drops")
def shop_words_in_place_of_the_shipped() -> Job:
    return caution_said(OURS)


@breaks("V460", "step 4.1, caution bar-drops")
def shipped_line_of_a_caution_gone() -> Job:
    return caution_said(*SHIPPED[1:], OURS)


@breaks("V460", "step 4.1, caution bar-drops")
def line_of_the_shop_that_passes_for_shipped() -> Job:
    return caution_said(*SHIPPED, OURS, of_shop=0)


@breaks("V460", "step 4.1, caution bar-drops")
def shipped_line_that_passes_for_the_shops() -> Job:
    return caution_said(*SHIPPED, OURS, of_shop=2)


@breaks("V460", "step 4.1")
def sentence_of_a_step_replaced() -> Job:
    return step_said(("Lay the dog beside it.",))


@breaks("V460", "step 4.1, caution bar-drops")
def lines_of_a_shop_that_has_no_rule() -> Job:
    return with_caution("4.1", of_shop=1)


@breaks("V461", "step 4.1, caution bar-drops")
def chip_pulled_by_hand() -> Job:
    return caution_said(*SHIPPED, ("Pull the chip away by hand while the spindle turns.",))


@breaks("V461", "step 4.1, caution bar-drops")
def work_measured_while_it_turns() -> Job:
    return caution_said(*SHIPPED, ("Measure the work while it turns slowly.",))


@breaks("V461", "step 4.1, caution bar-drops")
def rag_at_turning_work() -> Job:
    return caution_said(("Hold a rag to the turning work.",), of_shop=0, kind="add")


@breaks("V461", "step 4.1, caution bar-drops")
def rag_at_work_that_nobody_stopped() -> Job:
    return caution_said(*SHIPPED, ("Wipe the bar with a rag.",))


@breaks("V461", "step 4.1, caution bar-drops")
def guard_swung_away() -> Job:
    return caution_said(*SHIPPED, ("Swing the guard away.",))


@breaks("V461", "step 4.1, caution bar-drops")
def gloves_put_on() -> Job:
    return caution_said(*SHIPPED, ("Wear thick gloves.",))


@breaks("V461", "step 4.1, caution bar-drops")
def chuck_braked_by_hand() -> Job:
    return caution_said(*SHIPPED, ("Stop the chuck by hand.",))


@breaks("V461", "step 4.1, caution bar-drops")
def stop_forbidden() -> Job:
    return caution_said(*SHIPPED, ("Never stop the spindle for it.",))


@breaks("V461", "step 4.1")
def chip_pulled_by_hand_in_a_step() -> Job:
    return step_said(("Put the bar between the centres.",), ("Take the chips off by hand.",))


@breaks("V461", "findings")
def rag_in_a_note() -> Job:
    tree, givens = caution_said(*SHIPPED, OURS)
    note = Finding(level="note", text=("Hold a rag to the turning work.",), shop_rule=SIGNED)
    return tree.model_copy(update={"findings": (*tree.findings, note)}), givens


@breaks("V461", "step 4.3")
def words_of_the_shop_where_the_spindle_turns() -> Job:
    cut = ("Cut both collars toward the headstock.",)
    job = with_step("4.3", text=(cut, ("Watch the chip.",)), of_shop=1, shop_rule=SIGNED)
    tree, givens = laid(job, "reword", "skim-collars", "step")
    return tree, replace(givens, kept={("step", "skim-collars"): (cut,)})
