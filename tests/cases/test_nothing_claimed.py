"""What a sheet says of a bar from the rack: nothing that nobody stated, and nothing of how it would be made today."""

from pathlib import Path

import pytest

from tailtrue.advise import make_procedure

EXAMPLES = Path(__file__).parents[2] / "docs" / "examples"
# Of how a bar and its collars are made and joined.
OF_MAKING = {
    "joint.method", "collar.source", "bar.hold", "collar.hold", "collar.second_face_hold", "bore.gauge", "bore.fine_feed",
    "bore.make", "hole.way", "hole.holder", "bar.seats", "saw.who",
}  # fmt: skip
ON_HAND = (
    "fernhill/use-bar", "fernhill/use-bar-by-indicator", "fernhill/re-certify", "fernhill/taper-and-return", "fernhill/height-and-droop",
    "fernhill/chucked-bar-test", "quarry-road/use-bar", "quarry-road/taper-and-return",
)  # fmt: skip


@pytest.mark.parametrize("name", ON_HAND)
def test_a_bar_on_hand_is_not_told_how_it_was_made(name: str) -> None:
    tree = make_procedure(EXAMPLES / f"{name}.toml")
    assert not OF_MAKING & {choice.id for choice in tree.choices}
    words = tree.model_dump_json()
    assert "How are the collars fixed to the bar?" not in words
    assert "What are the collars made from?" not in words
    assert "the bar is sawn first" not in words
    near = " ".join(f"{one.id} {one.title}" for one in tree.safety_review.near_misses)
    assert "blank" not in near


@pytest.mark.parametrize("name", ["fernhill/job", "fernhill/make-bar", "quarry-road/job"])
def test_a_sheet_that_makes_the_bar_tells_all_of_it(name: str) -> None:
    told = {choice.id for choice in make_procedure(EXAMPLES / f"{name}.toml").choices}
    assert told >= OF_MAKING
