"""Sheets that send a hand beside the tool, leave a drill in the quill, file in the chuck, or count from nowhere."""

from tailtrue.parts import Setting

from .broken import breaks
from .changed import Job, step, with_line, with_step

# Words alone: the numbers of a depth are judged by other rules.
_BY_TOP_SLIDE = Setting(label=("depth of each cut, by the top slide",), value=("as before",))
_COUNTED = Setting(label=("depth per side",), value=("as before",), reason=("in divisions of the dial",))


def _told(number: str, *sentences: str) -> Job:
    return with_step(number, text=tuple((sentence,) for sentence in sentences))


@breaks("V340", "step 2.1", also="V480")
def blank_gripped_beside_the_tool() -> Job:
    return _told("2.1", "Seat the blank for collar 1 as in step 1.1.")


@breaks("V340", "step 2.1", also="V480")
def carriage_run_back_only_after_the_hands() -> Job:
    return _told("2.1", "Seat the blank for collar 1 as in step 1.1.", "Run the carriage back.")


@breaks("V340", "step 1.1")
def second_end_gripped_beside_the_tool() -> Job:
    """The carriage is back for the first end alone; the cut of that end brings the tool up again."""
    return with_step("1.1", text=(("Tighten the chuck. Run the carriage back.",),))


@breaks("V341", "step 2.6", also="V340")
def bore_cut_with_a_drill_in_the_tailstock() -> Job:
    return _told("2.4", "Measure at three places.")


@breaks("V342", "step 1.3")
def top_slide_sets_a_depth_and_the_saddle_is_free() -> Job:
    return with_line("1.3", _BY_TOP_SLIDE)


@breaks("V342", "step 2.6")
def bore_cut_with_the_saddle_locked() -> Job:
    return with_step("2.5", text=(*step("2.5").text, ("Lock the saddle.",)))


@breaks("V342", "step 4.1")
def carriage_wound_with_the_saddle_locked() -> Job:
    return with_step("4.1", text=(("Lock the saddle. Run the carriage back.",), ("Put the bar between the centres.",)))


@breaks("V343", "step 2.7")
def rim_filed_in_the_chuck() -> Job:
    return with_step("2.7", text=(*step("2.7").text, ("Break the rim all round with the file.",)))


@breaks("V343", "step 2.7")
def bench_told_only_after_the_filing() -> Job:
    return with_step("2.7", text=(*step("2.7").text, ("Break the rim with a file. Lay it on the bench.",)))


@breaks("V344", "step 4.3")
def depth_in_divisions_from_nowhere() -> Job:
    return with_line("4.3", _COUNTED)


@breaks("V344", "step 4.3")
def dial_zeroed_and_then_another_tool_fitted() -> Job:
    """The touch of one tool says nothing of the next."""
    zeroed = ("Touch the larger collar. Set the dial to zero.",)
    fitted = ("Stop the spindle. Fit the turning tool.",)
    return with_step("4.3", settings=(*step("4.3").settings, _COUNTED), text=(zeroed, fitted))
