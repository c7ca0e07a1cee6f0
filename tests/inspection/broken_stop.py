"""Sheets on which the tool runs toward the dog and nothing stands in its way."""

from .broken import breaks
from .changed import Job, step, with_setting, with_step


@breaks("V471", "step 4.3")
def feed_toward_the_dog_with_no_stop() -> Job:
    return with_step("4.1", text=(("Put the bar between the centres.",),), settings=())


@breaks("V471", "step 4.1")
def stop_behind_the_dog() -> Job:
    return with_setting("4.1", 0, value=10.5)


@breaks("V471", "step 4.1")
def stop_inside_the_collar() -> Job:
    return with_setting("4.1", 0, value=-1.0)


@breaks("V471", "step 4.1")
def stop_in_a_room_that_is_not_told() -> Job:
    (line,) = step("4.1").settings
    return with_step("4.1", settings=(line.model_copy(update={"reason": ()}),))
