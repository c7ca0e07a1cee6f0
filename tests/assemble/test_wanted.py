"""What kept an alternative from holding: in words, sizes as figures in both units."""

import re
from pathlib import Path

import pytest

from tailtrue.advise import make_procedure
from tailtrue.parts import Figure
from tailtrue.procedure import Alternative, Procedure
from tailtrue.render import to_html

EXAMPLES = Path(__file__).parents[2] / "docs" / "examples"


@pytest.fixture(scope="module", params=["fernhill", "quarry-road"])
def sheet(request: pytest.FixtureRequest) -> Procedure:
    return make_procedure(EXAMPLES / request.param / "job.toml")


def ways(sheet: Procedure, choice: str) -> dict[str, Alternative]:
    return {way.name: way for one in sheet.choices if one.id == choice for way in one.alternatives}


def test_no_reason_carries_a_sign_or_a_word_of_the_files(sheet: Procedure) -> None:
    reasons = [
        way.reason
        for one in sheet.choices
        for way in one.alternatives
        if way.reason.startswith(("wants", "not so", "so it"))
    ]
    assert len(reasons) > 20
    assert not [
        reason for reason in reasons if re.search(r"[<>=]|\d mm|\b(chuck-jaw|jaws-and-spacer|drive-plate)\b", reason)
    ]


def test_what_is_or_is_not_so_is_told_once(sheet: Procedure) -> None:
    assert ways(sheet, "collar.source")["cast blanks"].reason == "the stock list has none that serves"
    assert ways(sheet, "saw.who")["an adult of the shop"].reason == "not so here: the operator is under age"


def test_a_size_that_falls_short_is_told_as_a_figure_beside_what_is_wanted(sheet: Procedure) -> None:
    jaws = ways(sheet, "collar.hold")["in the jaws against the chuck face"]
    assert jaws.verdict == "no"
    here, wanted = (one for one in jaws.figures if isinstance(one, Figure))
    assert (here.fact, wanted.fact, here.unit) == ("collar.stands_out", "limit.face_clearance", "mm")
    assert here.value < wanted.value
    assert "at least" in jaws.reason


def test_a_way_that_is_left_shows_its_figures_on_the_page(sheet: Procedure) -> None:
    page = to_html(sheet)
    back = re.sub(r"\s+", " ", re.sub(r"<[^>]+>", "", page[page.index('id="choices"') : page.index('id="derivations"')]))
    pressed = back[back.index("collar pressed on") :]
    assert pressed.startswith("collar pressed on (no):")
    assert "times a catch" in pressed[: pressed.index("split collar")]
