"""Terms of the trade are found by their words, on the paper that uses them and on no other."""

import pytest

from tailtrue.advise import knowledge
from tailtrue.assemble.glossary import glossary
from tailtrue.parts import Figure
from tailtrue.procedure import Finding
from tailtrue.store.knowledge import Term
from tailtrue.store.models import TermFile

QUILL = TermFile(id="quill", term="quill", meaning="A sleeve.", sources=["memory"])
RUN_OUT = TermFile(id="run-out", term="run-out", also=["runout"], meaning="A wobble.", sources=["memory"])
TERMS = tuple(Term(file, "knowledge/words/glossary.toml:1") for file in (QUILL, RUN_OUT))


def found(*text: str | Figure) -> list[tuple[str, str]]:
    finding = Finding(level="note", text=text, sources=("quill",))
    return [(entry.id, entry.seen_as) for entry in glossary(TERMS, (finding,))]


def test_a_word_is_found_whatever_its_case_and_in_the_plural() -> None:
    assert found("Clamp the Quill.") == [("quill", "quill")]
    assert found("Both quills are short.") == [("quill", "quill")]


def test_another_form_counts_and_is_told() -> None:
    assert found("Read the runout.") == [("run-out", "runout")]


def test_a_part_of_a_word_is_not_the_word() -> None:
    assert found("A quillon, a tranquill, a quill-like thing.") == []


def test_what_is_not_read_as_words_is_not_searched() -> None:
    assert found("Nothing.") == []


def test_a_figure_parts_two_words() -> None:
    figure = Figure(fact="a.b", value=1.0, unit="mm", rounding="length")
    assert found("qui", figure, "ll") == []


def test_terms_keep_the_order_of_the_glossary() -> None:
    assert [name for name, _ in found("Run-out of the quill.")] == ["quill", "run-out"]


@pytest.mark.parametrize(
    "words",
    ["Chips come off blue.", "The jaws hold the blank, and they hold it true.", "First turns at the slowest speed: steady."],
)
def test_a_word_of_another_sense_explains_nothing(words: str) -> None:
    finding = Finding(level="note", text=(words,), sources=("quill",))
    terms = [entry.id for entry in glossary(knowledge().glossary, (finding,))]
    assert not {"blue", "hold", "steady-rest"} & set(terms)


def test_the_same_words_in_their_own_sense_do() -> None:
    text = "Put marking blue on the centre. Wait at the hold. Set the fixed steady."
    finding = Finding(level="note", text=(text,), sources=("quill",))
    assert {"blue", "hold", "steady-rest"} <= {entry.id for entry in glossary(knowledge().glossary, (finding,))}
