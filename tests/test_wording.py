"""Texts with places for facts."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tailtrue.parts import Figure
from tailtrue.wording import Place, read_wording


def figure(place: Place) -> tuple[Figure]:
    return (Figure(fact=place.name, value=1.0, unit="mm", rounding="length"),)


def test_places_are_found_and_filled() -> None:
    wording = read_wording("Set {{ skim.speed }}, {{ why skim.speed }}.")
    assert [(place.name, place.wants) for place in wording.places()] == [("skim.speed", "value"), ("skim.speed", "why")]
    filled = wording.fill(figure)
    assert [piece if isinstance(piece, str) else piece.fact for piece in filled] == [
        "Set ", "skim.speed", ", ", "skim.speed", ".",
    ]  # fmt: skip


def test_a_pointer_is_filled_with_a_number_and_nowhere_without_one() -> None:
    wording = read_wording(
        "Go back to step {{ opens decide decide-fixed }}, to {{ step read-collars }}, to {{ step grip start before turn }}."
    )
    assert [(one.steps, one.opens, one.before) for one in wording.pointers()] == [
        (("decide", "decide-fixed"), True, ""), (("read-collars",), False, ""), (("grip", "start"), False, "turn"),
    ]  # fmt: skip
    filled = wording.fill(figure, lambda one: "9.1" if one.opens else "9.2" if one.before else "9.7")
    assert filled == ("Go back to step 9.1, to 9.7, to 9.2.",)
    assert wording.words == "Go back to step X, to X, to X."
    with pytest.raises(ValueError, match="no sheet gives step decide or decide-fixed a number"):
        wording.fill(figure)


@pytest.mark.parametrize(
    "text", ["Set {{ skim }}.", "Set {{skim.speed}.", "Set }} now.", "{{ 1 + 1 }}", "{{ a.b | upper }}"]
)
def test_a_brace_that_is_no_place_is_refused(text: str) -> None:
    with pytest.raises(ValueError, match="holds a brace"):
        read_wording(text)


@given(st.text(alphabet=st.characters(exclude_characters="{}"), max_size=60))
def test_text_without_places_stays_as_it_is(text: str) -> None:
    assert "".join(str(piece) for piece in read_wording(text).fill(figure)) == text
