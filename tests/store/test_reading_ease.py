"""Texts can be read at a machine."""

from dataclasses import replace

import pytest

from tailtrue.advise import knowledge
from tailtrue.store.reading_ease import VAGUE, VERBS, long_sentences, order_problems, vague_problems
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


@pytest.mark.parametrize("words", ["Tighten it slightly.", "Clean as required.", "Use suitable oil."])
def test_a_vague_word_is_found(words: str) -> None:
    assert len(list(vague_problems([("place", "id", read_wording(words))], knowledge().tables[VAGUE]))) == 1


def test_a_vague_word_inside_another_is_none() -> None:
    assert not list(vague_problems([("place", "id", read_wording("Etch it."))], knowledge().tables[VAGUE]))


def test_a_sentence_of_more_than_twenty_words_is_long() -> None:
    text = read_wording("word " * 21 + "end. " + "word " * 19 + "end.")
    assert long_sentences([("place", "id", text)]) == 1
