"""Sheets on which a belt is moved with the power on, or a speed is set with no start check behind it."""

from dataclasses import replace

from tailtrue.procedure import Step

from .broken import breaks
from .changed import Job, step, with_line, with_steps
from .sample_pieces import speed

_MOVED = "Isolate the lathe. Set the slowest speed for the first turns. Close the belt cover."


def _on_a_belt_lathe(number: str, line: str) -> Job:
    """The sample on a lathe with a belt, which each start check moves soundly, but for one line of one."""

    def moved(one: Step) -> Step:
        said = line if one.number == number else _MOVED
        return one.model_copy(update={"text": tuple((said,) if "speed" in str(text) else text for text in one.text)})

    tree, shop = with_steps(lambda one: moved(one) if one.id == "start-check" else one)
    return tree, replace(shop, belt=True)


@breaks("V560", "step 2.5")
def belt_moved_with_the_power_on() -> Job:
    return _on_a_belt_lathe("2.5", "Set the slowest speed for the first turns. Close the belt cover.")


@breaks("V560", "step 2.5")
def belt_isolated_behind_the_move() -> Job:
    return _on_a_belt_lathe("2.5", "Set the slowest speed for the first turns. Isolate the lathe. Close the belt cover.")


@breaks("V560", "step 2.5")
def cover_left_open() -> Job:
    return _on_a_belt_lathe("2.5", "Isolate the lathe. Set the slowest speed for the first turns.")


@breaks("V560", "step 2.5", also="V472")
def cover_closed_behind_the_power() -> Job:
    line = "Isolate the lathe. Set the slowest speed for the first turns. Restore power. Close the belt cover."
    return _on_a_belt_lathe("2.5", line)


@breaks("V561", "step 1.3", also="V24 V126")
def second_speed_within_one_cut() -> Job:
    assert step("1.3").machine == "turning"
    return with_line("1.3", speed("bar.slower", 500))
