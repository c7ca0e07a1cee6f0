"""Sheets whose card breaks what a page at the headstock must hold: few messages, short lines in order, a way back, an end."""

from typing import Any

from .broken import breaks
from .changed import Job, with_sheet
from .sample import procedure


def _card(**changes: Any) -> Job:
    return with_sheet(card=procedure().card.model_copy(update=changes))


def _start(place: int, **changes: Any) -> Job:
    start = procedure().card.start
    lines = tuple(line.model_copy(update=changes) if at == place else line for at, line in enumerate(start.lines))
    return _card(start=start.model_copy(update={"lines": lines}))


def _step(place: int, **changes: Any) -> Job:
    return _card(
        steps=tuple(
            line.model_copy(update=changes) if at == place else line for at, line in enumerate(procedure().card.steps)
        )
    )


@breaks("V250", "card")
def start_called_out_without_the_gloves() -> Job:
    start = procedure().card.start
    lines = tuple(line for line in start.lines if line.item != "gloves")
    return _card(start=start.model_copy(update={"lines": lines}))


@breaks("V430", "card")
def card_with_four_messages() -> Job:
    return _card(messages=(*procedure().card.messages, procedure().card.messages[0]))


@breaks("V430", "card")
def message_of_the_card_that_is_no_danger() -> Job:
    return _card(messages=("chips", *procedure().card.messages[1:]))


@breaks("V430", "card")
def danger_that_the_card_neither_tells_nor_keeps_off() -> Job:
    return _card(messages=procedure().card.messages[:-1])


@breaks("V431", "card")
def line_said_to_keep_off_a_danger_that_it_does_not_name() -> Job:
    return _start(0, answers=("gloves-at-the-spindle",))


@breaks("V431", "card")
def line_said_to_keep_off_a_danger_that_no_line_can() -> Job:
    return _start(1, answers=("abrasive-cloth",))


@breaks("V431", "card")
def killer_line_with_a_way_round() -> Job:
    return _start(3, state="shut, or N/A")


@breaks("V432", "card")
def card_with_no_line_to_do() -> Job:
    return _card(steps=procedure().card.steps[:1] * 16)


@breaks("V432", "card")
def line_of_the_card_for_steps_that_are_not_there() -> Job:
    return _step(0, step="9.9")


@breaks("V432", "card")
def lines_of_the_card_out_of_order() -> Job:
    first, second, *rest = procedure().card.steps
    return _card(steps=(second, first, *rest))


@breaks("V432", "card")
def start_on_the_way_of_a_line_that_is_not_marked() -> Job:
    place = next(at for at, line in enumerate(procedure().card.steps) if line.starts)
    return _step(place, starts=False)


@breaks("V432", "card")
def line_marked_as_a_start_where_nothing_turns() -> Job:
    place = next(at for at, line in enumerate(procedure().card.steps) if not line.starts)
    return _step(place, starts=True)


@breaks("V433", "card")
def line_of_the_card_that_is_no_sentence() -> Job:
    return _step(0, text="The first phase")


@breaks("V433", "card")
def line_of_the_card_with_a_number_of_its_own() -> Job:
    return _step(0, text="Set the speed to 900.")


@breaks("V433", "card")
def line_of_the_card_as_long_as_a_step() -> Job:
    return _step(0, text=f"Do {'this and ' * 11}that.")


@breaks("V434", "card")
def whoever_is_called_away_goes_on_where_they_were() -> Job:
    return _card(interrupted="Called away? Stop the spindle. Go on.")


@breaks("V434", "card")
def whoever_is_called_away_leaves_the_spindle_turning() -> Job:
    return _card(interrupted="Called away? Go back one line.")


@breaks("V434", "card")
def mark_of_a_start_that_sends_nowhere() -> Job:
    return _card(list_first="look first")


@breaks("V434", "card")
def lines_to_do_without_an_end() -> Job:
    return _card(ends_with="Go on")


@breaks("V434", "card")
def card_that_stands_in_for_the_procedure() -> Job:
    return _card(pointer="This is all you need.")


@breaks("V434", "card")
def emergency_that_calls_before_it_stops() -> Job:
    return _card(emergency="Call. Press the stop. Isolate the lathe.")


@breaks("V434", "card")
def more_stop_conditions_than_anybody_reads() -> Job:
    return with_sheet(stop_at_once=procedure().stop_at_once * 7)
