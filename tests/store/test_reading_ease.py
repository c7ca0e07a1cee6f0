"""Texts can be read at a machine."""

from dataclasses import replace

import pytest

from tailtrue.advise import knowledge
from tailtrue.store.checks import all_reasons, all_texts
from tailtrue.store.reading_ease import (
    MOST_IN_REASON,
    MOST_WORDS,
    VAGUE,
    VERBS,
    long_sentences,
    order_problems,
    second_orders,
    vague_problems,
)
from tailtrue.wording import read_wording


def test_a_line_that_tells_nobody_to_do_a_thing_is_found() -> None:
    known = knowledge()
    step = replace(known.steps["bond"], sentences=(read_wording("The collar goes on."),))
    (problem,) = order_problems([step], known.tables[VERBS])
    assert problem.where == step.where
    assert problem.wrong == "'the' is not the beginning of an order"


@pytest.mark.parametrize("line", ["Push it on.", "IF it sticks, THEN stop.", "Never strike it.", "At end B, face it."])
def test_an_order_a_case_a_ban_and_a_place_may_begin(line: str) -> None:
    known = knowledge()
    step = replace(known.steps["bond"], sentences=(read_wording(line),))
    assert list(order_problems([step], known.tables[VERBS])) == []


@pytest.mark.parametrize(
    "line",
    ["Hold the bar, draw the quill back.", "Touch the face, then feed by hand.", "Stop the spindle and measure after each.",
     "Mark it and put a pad on its end.", "Withdraw the tool; lift it out."],
)  # fmt: skip
def test_a_second_order_in_one_sentence_is_found(line: str) -> None:
    known = knowledge()
    step = replace(known.steps["bond"], sentences=(read_wording(line),))
    (problem,) = second_orders([step], known.tables[VERBS])
    assert problem.do == "one action a sentence: begin a new one here"


@pytest.mark.parametrize(
    "line",
    ["Let bar, collars, micrometer and gauge lie side by side.", "Wipe seat and bore dry.", "Take off rings and watch.",
     "IF it wanders, THEN draw it over.", "Look at every key and clamp.", "Push the tailstock back, clear of your elbow."],
)  # fmt: skip
def test_things_that_are_called_like_an_order_are_none(line: str) -> None:
    known = knowledge()
    step = replace(known.steps["bond"], sentences=(read_wording(line),))
    assert list(second_orders([step], known.tables[VERBS])) == []


@pytest.mark.parametrize("words", ["Tighten it slightly.", "Clean as required.", "Use suitable oil."])
def test_a_vague_word_is_found(words: str) -> None:
    assert len(list(vague_problems([("place", "id", read_wording(words))], knowledge().tables[VAGUE]))) == 1


def test_a_vague_word_inside_another_is_none() -> None:
    assert not list(vague_problems([("place", "id", read_wording("Etch it."))], knowledge().tables[VAGUE]))


@pytest.mark.parametrize("most", [MOST_WORDS, MOST_IN_REASON])
def test_a_sentence_of_more_words_than_are_allowed_is_long(most: int) -> None:
    just, over = "word " * (most - 1) + "end. ", "word " * most + "end."
    assert list(long_sentences([("place", "id", read_wording(just * 2))], most)) == []
    (problem,) = long_sentences([("place", "id", read_wording(just + over))], most)
    assert (problem.where, problem.wrong) == ("place", f"has more than {most} words")


def test_a_place_for_a_fact_counts_as_one_word() -> None:
    assert not list(long_sentences([("place", "id", read_wording("{{ why bar.length }} " * MOST_WORDS))], MOST_WORDS))


def test_what_stands_on_paper_and_the_reasons_are_held_to_their_limits() -> None:
    known = knowledge()
    long = read_wording("word " * 21)
    caution = replace(known.cautions[0], avoid=(long,))
    assert list(long_sentences(all_texts(replace(known, cautions=(caution,))), MOST_WORDS))
    row = replace(known.decisions["centre.head"].rows[0], why="word " * 26)
    decision = replace(known.decisions["centre.head"], rows=(row,))
    assert list(long_sentences(all_reasons(replace(known, decisions={"centre.head": decision})), MOST_IN_REASON))
