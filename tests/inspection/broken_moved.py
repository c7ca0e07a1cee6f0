"""Sheets that send a hand into the chuck where the spindle can start."""

from .broken import breaks
from .changed import Job, allowed_anywhere, step, with_step


def _told(number: str, sentence: str) -> Job:
    """A step with one more sentence at its end; the list of states knows nothing of words."""
    return with_step(number, text=(*step(number).text, (sentence,)))


@breaks("V230", "step 2.7")
def collar_taken_out_with_power_on() -> Job:
    return _told("2.7", "Take the collar out. Lay it on the bench.")


@breaks("V230", "step 2.7")
def blank_turned_round_with_power_on() -> Job:
    return _told("2.7", "Turn the blank the other way round.")


@breaks("V230", "step 2.7")
def jaws_eased_with_power_on() -> Job:
    return _told("2.7", "Ease all three jaws.")


@breaks("V230", "step 2.7")
def quill_drawn_back_with_power_on() -> Job:
    return _told("2.7", "Draw back the quill.")


@breaks("V230", "step 2.7")
def isolated_only_after_the_bar_is_out() -> Job:
    return _told("2.7", "Take the bar out. Isolate the lathe.")


@breaks("V230", "step 2.7", also="V15")
def key_used_with_power_on() -> Job:
    return with_step("2.7", tools=(*step("2.7").tools, "chuck-key"))


@breaks("V231", "step 2.6")
def tool_changed_while_it_turns() -> Job:
    return _told("2.6", "Change the boring bar.")


@breaks("V160", "step 2.1")
def blank_gripped_with_the_power_on() -> Job:
    """The list of states allows it here; the rule knows by itself."""
    return allowed_anywhere(with_step("2.1", machine="stopped"))
