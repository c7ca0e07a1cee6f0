"""Sheets on which a new grip is touched on a live lathe, or turns fast at once."""

from .broken import breaks
from .changed import Job, step, with_step

_KEY, _SLOW, _BY_HAND, _POWER = 0, 1, 2, 3


def _told(*lines: int) -> Job:
    text = step("4.2").text
    return with_step("4.2", text=tuple(text[line] for line in lines))


@breaks("V472", "step 4.2")
def turn_by_hand_behind_the_power() -> Job:
    return _told(_KEY, _SLOW, _POWER, _BY_HAND)


@breaks("V472", "step 4.2")
def keys_touched_on_a_live_lathe() -> Job:
    return _told(_SLOW, _BY_HAND, _POWER, _KEY)


@breaks("V473", "step 4.3")
def first_turns_at_full_speed() -> Job:
    return _told(_KEY, _BY_HAND, _POWER)


@breaks("V473", "step 4.3")
def first_turns_of_which_nobody_says_how_slow() -> Job:
    lines = list(step("4.2").text)
    lines[_SLOW] = ("Set the speed for the first turns, spindle stopped.",)
    return with_step("4.2", text=tuple(lines))
