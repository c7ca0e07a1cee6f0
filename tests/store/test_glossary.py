"""The glossary is held against itself."""

import pytest

from tailtrue.store.knowledge import Term
from tailtrue.store.models import TermFile
from tailtrue.store.word_checks import glossary_problems

GOOD = {"id": "quill", "term": "quill", "meaning": "A sleeve that moves.", "sources": ["memory"]}


def faults(*entries: dict[str, object]) -> list[str]:
    terms = [Term(TermFile.model_validate(GOOD | entry), "words/glossary.toml:1") for entry in entries]
    return [problem.wrong for problem in glossary_problems(terms, {"memory"})]


def test_a_sound_glossary_has_no_fault() -> None:
    assert faults({"id": "bed", "term": "bed"}, {}) == []


@pytest.mark.parametrize(
    ("entry", "wrong"),
    [
        ({"meaning": "One of 2 sleeves."}, "a number is typed into its meaning"),
        ({"meaning": "word " * 20 + "end."}, "has more than 20 words"),
        ({"meaning": "A sleeve"}, "its meaning is no whole sentence"),
        ({"id": "other"}, "stands for 'quill' too"),
        ({"id": "bed", "term": "bed"}, "stands after 'quill'"),
    ],
)
def test_a_fault_is_found(entry: dict[str, object], wrong: str) -> None:
    assert faults({}, entry)[:1] == [wrong] if "id" in entry else wrong in faults(entry)


def test_a_source_that_nobody_knows_is_found() -> None:
    assert len(faults({"sources": ["hearsay"]})) == 1
