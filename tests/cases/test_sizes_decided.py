"""Sizes that a table decides: what binds is told with its size, and each size that does not is told beside it."""

from pathlib import Path

import pytest

from tailtrue.advise import advise, procedure_of
from tailtrue.facts import Fact

EXAMPLES = Path(__file__).parents[2] / "docs" / "examples"


@pytest.mark.parametrize("shop", ["fernhill", "quarry-road"])
@pytest.mark.parametrize("name", ["bar.length_bound", "collar.diameter_bound", "collar.width_bound", "skim.depth_bound"])
def test_no_size_beside_the_chosen_one_is_smaller(shop: str, name: str) -> None:
    case = advise(EXAMPLES / shop / "job.toml").case
    outcome = case.outcome(name)
    assert outcome.won is not None
    assert isinstance(outcome.won.size, Fact)
    sizes = [size for size, _ in outcome.weighed]
    assert len(sizes) > 1
    assert outcome.won.size.value == min(sizes)


def test_a_wish_is_taken_whole_and_nothing_is_weighed() -> None:
    raw = {"job.bar_length": "301 mm", "job.collar_width": "21 mm"}
    case = advise(EXAMPLES / "fernhill" / "job.toml", instead=raw).case
    assert case.value("bar.length") == 301.0
    assert case.value("collar.width") == 21.0
    assert case.outcome("bar.length_bound").weighed == ()


def test_the_back_of_the_sheet_tells_each_size() -> None:
    tree = procedure_of(advise(EXAMPLES / "fernhill" / "job.toml"))
    choice = next(one for one in tree.choices if one.id == "bar.length_bound")
    told = {way.name: way.size.value for way in choice.alternatives if way.size is not None}
    # The bar is 25 mm thick, the lathe takes 750 mm between centres, the stock is 600 mm long.
    assert told["stiffness: a longer bar bends and chatters"] == 15 * 25.0
    assert told["a share of the distance between centres"] == pytest.approx(0.6 * 750.0)
    assert told["the stock, less facing at both ends"] == 600.0 - 2 * 1.5
    assert (choice.chosen, choice.weighed, choice.settles) == (
        "stiffness: a longer bar bends and chatters",
        "least",
        "bar.length",
    )


@pytest.mark.parametrize(
    ("bed", "headstock", "first"),
    [
        ("not-tested", "not-tested", "test-first"),
        ("twisted", "in-line", "bed"),
        ("not-tested", "out-of-line", "level-first"),
        ("free-of-twist", "out-of-line", "headstock"),
        ("free-of-twist", "in-line", "tailstock"),
    ],
)
def test_what_is_put_right_first_follows_from_what_was_tested(bed: str, headstock: str, first: str) -> None:
    raw = {"lathe.bed_tested": bed, "lathe.headstock_tested": headstock}
    advice = advise(EXAMPLES / "fernhill" / "use-bar.toml", instead=raw)
    assert advice.case.value("truing.order") == first
    tree = procedure_of(advice)
    waits = any("leave the tailstock" in str(one.text) for one in tree.findings)
    assert waits is (first in ("bed", "level-first", "headstock"))


def test_each_bar_that_is_left_is_told_what_the_other_has_over_it() -> None:
    bars = [
        {"label": name, "material": "steel-low-carbon-cold-drawn", "diameter": size, "length": "600 mm", "finish": finish}
        for name, size, finish in (
            ("black", "32 mm", "hot-rolled"), ("thin", "20 mm", "ground"), ("drawn", "25 mm", "cold-drawn"),
            ("ground", "25 mm", "ground"), ("second", "25 mm", "ground"),
        )
    ]  # fmt: skip
    case = advise(EXAMPLES / "fernhill" / "job.toml", instead={"stock.bars": bars}).case
    told = {one["label"]: (one["verdict"], one["reason"]) for one in case.value("bar.offers")}
    assert told["ground"][0] == "chosen"
    assert len({reason for _, reason in told.values()}) == len(bars)
    assert told["black"][1].startswith("thicker, but")
    assert told["thin"][1].startswith("thinner")
    assert told["drawn"][1].startswith("as thick, but less even")
    assert told["second"][1].startswith("alike")
