"""Whatever a diagnosis says in these tests, it says with just the words and figures that the entry is declared to have."""

from collections.abc import Mapping

import pytest

from tailtrue.diagnosis.entries import FILLED_WITH
from tailtrue.diagnosis.saying import Line, Teller
from tailtrue.parts import Figure


@pytest.fixture(autouse=True)
def as_declared(monkeypatch: pytest.MonkeyPatch) -> None:
    said = Teller._said

    def held(
        teller: Teller, name: str, part: str, words: Mapping[str, str] | None = None,
        figures: Mapping[str, Figure] | None = None,
    ) -> Line:  # fmt: skip
        assert {*(words or {}), *(figures or {})} == set(FILLED_WITH[name]), name
        return said(teller, name, part, words, figures)

    monkeypatch.setattr(Teller, "_said", held)
