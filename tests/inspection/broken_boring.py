"""Sheets that bore past what adds up, go back to a cut round the start check, or drill brass with hooked lips."""

from shops import EXAMPLES
from tailtrue.advise import advise, shop_for, tree_of
from tailtrue.parts import Blank, Check, Setting
from tailtrue.procedure import Step

from .broken import breaks
from .changed import Job, step, with_line, with_step
from .sample_pieces import caution, figure, mm


def _line(*figures: object) -> Setting:
    return Setting(label=("for this cut",), value=figures)


def _roughed(passes: int, each: float) -> Job:
    """From the drill of 20 mm to 21.7 mm."""
    return with_line(
        "2.6",
        _line(
            figure("bore.rough_passes", passes, "1", "count"), mm("bore.rough_cut", each, "depth"), mm("bore.rough_to", 21.7)
        ),
    )


@breaks("V270", "step 2.7", also="V336")
def back_to_the_cut_with_hands_at_the_chuck() -> Job:
    return with_step("2.7", text=(*step("2.7").text, ("IF the bore is too small, THEN go back to the last cuts.",)))


@breaks("V270", "step 2.7")
def hold_that_goes_back_to_the_cut() -> Job:
    hold = step("2.4").hold
    assert hold is not None
    return with_step("2.7", hold=hold.model_copy(update={"go_back_to": "bore-finish"}))


@breaks("V271", "step 2.6", also="V24")
def passes_that_stop_short_of_the_size() -> Job:
    return _roughed(2, 0.3)


@breaks("V271", "step 2.6", also="V24")
def passes_that_run_past_the_size() -> Job:
    return _roughed(4, 0.3)


@breaks("V271", "step 2.6", also="V24")
def last_cuts_that_do_not_reach_the_window() -> Job:
    line = _line(
        figure("bore.finish_cuts", 3, "1", "count"), mm("bore.finish_depth", 0.05, "depth"), mm("bore.rough_to", 21.7)
    )
    return with_line("2.6", line)


@breaks("V272", "step 2.4", also="V24")
def fine_indicator_set_before_the_roughing() -> Job:
    changed, givens = _roughed(3, 0.3)
    told = ("Set the plunger against the cross slide.",)
    phases = tuple(
        phase.model_copy(
            update={
                "steps": tuple(
                    one.model_copy(update={"text": (*one.text, told)}) if one.number == "2.4" else one for one in phase.steps
                )
            }
        )
        for phase in changed.phases
    )
    return changed.model_copy(update={"phases": phases}), givens


@breaks("V273", "step 2.3")
def brass_drilled_with_lips_nobody_saw_to() -> Job:
    return with_step("2.3", cautions=(*step("2.3").cautions, caution("drill-screws-into-brass", "warning", "drill")))


@breaks("V274", "step 2.6")
def size_written_down_and_nothing_to_read_it() -> Job:
    return with_step("2.6", checks=(Check(text=("Bore, spindle stopped.",), blanks=(Blank(label="bore", unit="mm"),)),))


@breaks("V275", "step 2.6", also="V24 V232")
def angle_finer_than_a_scale_of_degrees() -> Job:
    return with_line("2.6", _line(figure("bore.slide_angle", 5.74, "deg", "angle")))


@breaks("V275", "step 2.6", also="V24 V232")
def angle_that_nothing_proves() -> Job:
    return with_line("2.6", _line(figure("bore.slide_angle", 5.75, "deg", "angle")))


@breaks("V275", "step 2.6", also="V24 V232")
def proof_of_another_angle() -> Job:
    proof = (
        mm("bore.proof_wind", 1.0, "depth"), mm("bore.proof_least", 0.18, "depth"), mm("bore.proof_most", 0.22, "depth")
    )  # fmt: skip
    return with_line("2.6", _line(figure("bore.slide_angle", 5.75, "deg", "angle"), *proof))


@breaks("V276", "step 2.4", also="V24")
def bar_let_off_by_half_the_window() -> Job:
    return with_line("2.4", _line(mm("bore.bar_slack", 0.03, "fit")))


@breaks("V319", "step 5.11", also="V15")
def telescoping_gauge_that_nothing_reads() -> Job:
    path = EXAMPLES / "quarry-road" / "job-tube.toml"
    tree, shop = tree_of(advise(path)), shop_for(advise(path))

    def bare(step: Step) -> Step:
        kept = tuple(tool for tool in step.tools if tool != "caliper-work")
        return step.model_copy(update={"tools": kept}) if step.id == "gauge-hole" else step

    phases = tuple(phase.model_copy(update={"steps": tuple(map(bare, phase.steps))}) for phase in tree.phases)
    return tree.model_copy(update={"phases": phases}), shop
