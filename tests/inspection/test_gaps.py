"""What is left open is found, whatever things are called in the shop."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tailtrue.inspection.gaps import _OPEN, _SUSPECT, _open, _without

PIECES = st.sampled_from(
    [
        "{",
        "}",
        "%",
        "N",
        "None",
        "one",
        " of",
        "of the",
        "na",
        "n",
        "inf",
        "in",
        "f",
        "-",
        "?",
        "TBD",
        "TODO",
        "FIXME",
        "t",
        "th",
        "thin",
        "thing",
        "hing",
        "g",
        "i",
        "a",
        " ",
        "x",
    ]
)
WORDS = st.lists(PIECES, max_size=12).map("".join)
LABELS = st.lists(st.lists(PIECES, min_size=1, max_size=3).map("".join), max_size=4)


@given(WORDS, LABELS)
def test_the_first_look_passes_over_nothing(words: str, labels: list[str]) -> None:
    longest_first = sorted(labels, key=len, reverse=True)
    faults = list(_open("step 1", words, longest_first))
    left = _without(words, longest_first)
    assert bool(faults) == bool(_OPEN.search(left))


@pytest.mark.parametrize(
    "words", ["{{ bar }}", "}}", "{% if", "is None", "nan mm", "NaN", "TBD", "a TODO", "FIXME", "-inf mm", "inf", "???"]
)
def test_each_open_mark_is_suspect(words: str) -> None:
    assert any(mark in words for mark in _SUSPECT)
    assert [fault.where for fault in _open("step 1", words, [])] == ["step 1"]


def test_a_lathe_may_be_called_none() -> None:
    assert not list(_open("title block", "None for now", ["None for now"]))
    assert list(_open("title block", "None for now", []))
