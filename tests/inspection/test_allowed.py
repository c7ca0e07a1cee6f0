"""What looks like a fault and is none."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from tailtrue.inspection import inspect
from tailtrue.parts import Limits, Setting
from tailtrue.procedure import Drawing, Hold, Step

from .changed import (
    Job,
    reviewed_anew,
    step,
    with_check,
    with_line,
    with_look_up,
    with_sheet,
    with_shop,
    with_step,
    with_steps,
    with_title,
)
from .sample import procedure, shop
from .sample_pieces import caution, figure, mm
from .sample_record import SPACING, SPAN, record


def variable_speed() -> Job:
    plain = tuple(one for one in procedure().drawings if one.kind != "speed-plate")
    givens = with_shop(speeds=(), speed_settings=(), speed_from=100.0, speed_to=2000.0)[1]
    return with_sheet(drawings=plain)[0], givens


def speed_exactly_at_its_cap() -> Job:
    changed, givens = with_shop()
    caps = tuple(replace(cap, limit_per_min=500.0) if cap.phases == ("test",) else cap for cap in givens.speed_caps)
    return changed, replace(givens, speed_caps=caps)


def feed_converted_from_inches() -> Job:
    return with_shop(feeds=(0.05 * (1 + 1e-9), 0.1))


def diameter_dial_halves_the_depth() -> Job:
    """A dial that reads diameter moves the tool half of what it shows."""
    changed, givens = with_shop(dial_reads="diameter", dial_division_mm=0.1)
    text = changed.model_dump_json().replace("reads radius", "reads diameter")
    return type(changed).model_validate_json(text), givens


def tool_at_the_rear_with_its_own_words() -> Job:
    table = procedure().look_up
    ways = {"larger_at_tailstock": table.smaller_at_tailstock, "smaller_at_tailstock": table.larger_at_tailstock}
    changed, _ = with_look_up(**ways)
    drawings = tuple(_with_the_tool_behind(one) for one in changed.drawings)
    changed = changed.model_copy(update={"record": record().model_copy(update=ways), "drawings": drawings})
    return changed, with_shop(tool_side="rear")[1]


def _with_the_tool_behind(drawing: Drawing) -> Drawing:
    said = {**drawing.said, "tool_side": "rear"} if "tool_side" in drawing.said else drawing.said
    labels = dict(drawing.labels)
    if "larger" in labels:
        labels |= {"larger": labels["smaller"], "smaller": labels["larger"]}
    return drawing.model_copy(update={"said": said, "labels": labels})


def bar_length_stands_in_for_the_span() -> Job:
    drawing = procedure().drawing
    dimensions = {name: one for name, one in drawing.dimensions.items() if name != "centres.span"}
    return with_sheet(drawing=drawing.model_copy(update={"dimensions": dimensions}))


def number_in_a_label_of_the_user() -> Job:
    changed, _ = with_step("4.1", text=(("Take the bar from Rack 7, 25 mm shelf.",),))
    return changed, with_shop(labels=(*shop().labels, "Rack 7, 25 mm shelf"))[1]


def reference_to_another_step() -> Job:
    return with_step("4.1", text=(("Repeat from step 2.3 to 2.5, twice at most.",),))


def piece_of_the_phase_by_name() -> Job:
    return with_step(
        "2.1", text=(("Isolate the lathe. Run the carriage back. Put collar 1 in the chuck, collar 2 on the bench.",),)
    )


def none_of_them_in_a_sentence() -> Job:
    return with_step("4.1", text=(("None of the jaws may touch it.",),))


def gloves_while_isolated() -> Job:
    danger = step("1.1").cautions[0]
    return with_step("1.1", cautions=(danger, caution("edges", "caution", "grip-in-chuck", wear=("gloves",))))


def caution_on_an_earlier_step_of_the_phase() -> Job:
    told = (("Isolate the lathe.",), *step("2.4").text)
    return with_step("2.4", machine="isolated", text=told, activities=(*step("2.4").activities, "grip-in-chuck"))


def isolated_before_the_bar_is_tried() -> Job:
    told = ("IF the bore is in size, THEN isolate the lathe. Put the bar in.",)
    return with_step("2.7", text=(*step("2.7").text, told))


def tools_and_dial_touched_at_rest() -> Job:
    told = ("Take the boring bar off. Fit the chamfer tool. Bring the tailstock up. Take the drill chuck out of the quill.",)
    return with_step("2.7", text=(*step("2.7").text, told))


def hold_on_the_clamping_itself() -> Job:
    held = Hold(text=("Nobody restores power.",), releases="a second person", go_back_to="move-tailstock")
    return with_step("5.3", hold=held)


def limit_on_a_step_that_does_not_turn() -> Job:
    return with_line("2.1", Setting(label=("highest speed",), value=(figure("chuck.speed_limit", 1800, "1/min", "speed"),)))


def doubt_of_exactly_half_the_band() -> Job:
    limits = Limits(low=mm("bore.head_low", 22.03125, "fit"), high=mm("bore.head_high", 22.0625, "fit"))
    return with_check("2.7", limits=limits, uncertainty=mm("bore.gauge_uncertainty", 0.015625, "fit"))


def sheet_that_nobody_approved_yet() -> Job:
    return with_title(approver="", machine_detail=())


def _only_recorded(one: Step) -> Step:
    checks = tuple(
        check.model_copy(update={"text": ("Record only: somebody else saw the cut.",)})
        if "In limits" in str(check.text)
        else check
        for check in one.checks
    )
    return one.model_copy(update={"checks": checks})


def no_verdict_and_none_claimed() -> Job:
    changed, givens = with_steps(_only_recorded)
    look_up = changed.look_up.model_copy(update={"verdict_possible": False, "inside": None, "outside": None})
    changed = changed.model_copy(update={"look_up": look_up})
    paper = record()
    left, small, close, *rest = paper.rows
    moved = tuple(
        row.model_copy(
            update={"do": "move", "move": mm("lookup.table.move", row.difference.value / 2 * SPAN / SPACING, "difference")}
        )
        for row in (small, close)
    )
    scales = paper.scales.model_copy(update={"again": None})
    paper = paper.model_copy(update={"rows": (left, *moved, *rest), "scales": scales})
    return changed.model_copy(update={"record": paper}), givens


def sheet_whose_number_is_a_bare_one() -> Job:
    changed, givens = with_shop(labels=("Workshop bench 4 in the corner", "14"))
    return type(changed).model_validate_json(changed.model_dump_json().replace("SW-L2-014", "14")), givens


def hand_work_once_the_spindle_is_stopped_by_name() -> Job:
    told = ("Share the rest over three cuts. Stop the spindle to measure after each.",)
    return with_step("2.6", text=(*step("2.6").text, told))


def caution_that_must_be_said_of_something_not_done() -> Job:
    return with_shop(must_say={"saw-stock": frozenset({"round-bar-rolls"})})


def caution_that_must_be_said_in_an_earlier_phase() -> Job:
    return with_shop(must_say={"measure": frozenset({"lever-bumped"})})


def what_holds_at_any_lathe_told_at_the_back() -> Job:
    gloves, chips = procedure().job_cautions
    return with_sheet(job_cautions=(gloves, chips.model_copy(update={"at_back": True})))


def more_than_ten_up_front_that_all_maim() -> Job:
    many = tuple(caution(f"grave-{word}", "warning", "turning") for word in "abcdefghij")
    return reviewed_anew(with_sheet(job_cautions=(procedure().job_cautions[0], *many)))


SOUND: tuple[Callable[[], Job], ...] = (
    variable_speed, speed_exactly_at_its_cap, feed_converted_from_inches, diameter_dial_halves_the_depth,
    tool_at_the_rear_with_its_own_words, bar_length_stands_in_for_the_span, number_in_a_label_of_the_user,
    reference_to_another_step, piece_of_the_phase_by_name, none_of_them_in_a_sentence, gloves_while_isolated,
    caution_on_an_earlier_step_of_the_phase, isolated_before_the_bar_is_tried, tools_and_dial_touched_at_rest,
    hold_on_the_clamping_itself, limit_on_a_step_that_does_not_turn,
    doubt_of_exactly_half_the_band, sheet_that_nobody_approved_yet, no_verdict_and_none_claimed, sheet_whose_number_is_a_bare_one,
    hand_work_once_the_spindle_is_stopped_by_name,
    what_holds_at_any_lathe_told_at_the_back, more_than_ten_up_front_that_all_maim,
    caution_that_must_be_said_of_something_not_done, caution_that_must_be_said_in_an_earlier_phase,
)  # fmt: skip


@pytest.mark.parametrize("make", SOUND, ids=lambda make: make.__name__)
def test_a_sound_sheet_passes(make: Callable[[], Job]) -> None:
    assert inspect(*reviewed_anew(make())).failures == ()
