"""The back of the sheet: of the ways that were judged those that came near, columns of a table with their first."""

import pytest

from shops import EXAMPLES
from tailtrue.advise import make_procedure
from tailtrue.parts import Figure
from tailtrue.procedure import Procedure
from tailtrue.render import to_html, to_markdown
from tailtrue.render.back import near_ways, worked_out

from .reading import read_page
from .sample import procedure

CARRIES = Figure(fact="press.torque", value=22900.0, unit="N mm", rounding="torque")


def sheet(*, with_figure: bool) -> Procedure:
    """The sample; of the way that its shop rules out a figure speaks, or none."""
    tree = procedure("metric")
    (choice,) = tree.choices
    ways = tuple(
        way.model_copy(update={"figures": ("Carries ", CARRIES, ".") if with_figure else ()}) if way.verdict == "no" else way
        for way in choice.alternatives
    )
    return tree.model_copy(update={"choices": (choice.model_copy(update={"alternatives": ways}),)})


@pytest.mark.parametrize("with_figure", [False, True])
def test_what_is_ruled_out_by_a_word_stands_in_the_markdown_alone(with_figure: bool) -> None:
    tree = sheet(with_figure=with_figure)
    assert ("the shop has no press" in read_page(to_html(tree)).words) == with_figure
    assert "the shop has no press" in to_markdown(tree)


def test_what_would_do_and_what_is_not_known_is_told() -> None:
    (choice,) = procedure("metric").choices
    assert [way.verdict for way in near_ways(choice)] == ["fits", "unknown"]


def test_a_choice_may_ask_that_each_of_its_ways_is_told() -> None:
    (choice,) = sheet(with_figure=False).choices
    told = near_ways(choice.model_copy(update={"every_way": True}))
    assert [way.verdict for way in told] == ["no", "fits", "unknown"]


def test_what_was_chosen_names_its_own_sources() -> None:
    tree = make_procedure(EXAMPLES / "fernhill" / "job.toml")
    choice = next(one for one in tree.choices if one.id == "joint.method")
    chosen = next(way for way in choice.alternatives if way.verdict == "chosen")
    assert set(chosen.sources) < set(choice.sources)


def test_the_columns_of_a_table_stand_together_with_how_they_came_about() -> None:
    groups = worked_out(make_procedure(EXAMPLES / "fernhill" / "job.toml"))
    (drills,) = [group for group in groups if any(one.fact.startswith("hole.ladder.") for one in group)]
    assert len(drills) > 1
    assert len({one.how for one in drills}) == 1
