"""The explanation: its figures are those of the bar, and it never tells a move that is not to be made."""

from pathlib import Path
from typing import get_args

import pytest

from simulated_lathe import SimulatedLathe
from tailtrue.advise import advise
from tailtrue.case import Case
from tailtrue.facts import Fact
from tailtrue.render.explain_page import explain_html, plan_drawing
from tailtrue.render.words import say
from tailtrue.store.models import SayFile
from tailtrue.truing.explain import explain, explain_visit
from tailtrue.truing.typed import read_lists
from tailtrue.truing.visit import Visit, judge_visit

EXAMPLES = Path(__file__).parents[2] / "docs" / "examples"
ENGINE = Path(__file__).parents[2] / "engine" / "tailtrue"
METRIC = advise(EXAMPLES / "fernhill" / "job.toml").case


def changed(case: Case, **facts: object) -> Case:
    named = {name.replace("__", "."): value for name, value in facts.items()}
    return case.with_said({name: Fact(case.knowledge.catalogue[name], value) for name, value in named.items()})


MADE = changed(METRIC, job__bar_between_points=300.0, job__head_from_point=30.0, job__tail_from_point=270.0)


def visit(head: str, tail: str, case: Case = MADE) -> Visit:
    return judge_visit(case, read_lists(head, tail), kind="micrometer", also=None)


OUT = visit("69.842 mm, 69.842 mm", "69.882 mm, 69.882 mm")


def told(found: Visit) -> str:
    lines = [line for section in explain_visit(MADE, found).told for line in section.lines]
    return "\n".join(say(line, "metric").replace("\u00a0", " ") for line in lines)


def test_half_the_difference_leaves_what_a_simulated_lathe_leaves() -> None:
    difference = OUT.case.value("visit.difference")
    lathe = SimulatedLathe(offset=-OUT.case.value("visit.toward_tool"))
    near, far = lathe.diameters_between_centres(300, [30, 270])
    assert far - near == pytest.approx(difference, abs=1e-6)
    near, far = lathe.moved_toward_tool(difference / 2).diameters_between_centres(300, [30, 270])
    assert far - near == pytest.approx(OUT.case.value("lookup.half_leaves"), abs=1e-6)
    assert OUT.case.value("lookup.half_leaves") == pytest.approx(0.2 * difference)


def test_an_indicator_on_fresh_skims_reads_nothing_in_front_and_the_difference_behind() -> None:
    lathe = SimulatedLathe(offset=-0.025)
    cut = dict(zip((30, 270), lathe.diameters_between_centres(300, [30, 270]), strict=True))
    front = lathe.traverse(300, [30, 270], lambda station: cut[round(station)] / 2)
    rear = lathe.traverse(300, [30, 270], lambda station: cut[round(station)] / 2, on_far_side=True)
    assert front[1] - front[0] == pytest.approx(0, abs=1e-6)
    assert rear[1] - rear[0] == pytest.approx(cut[270] - cut[30], abs=1e-6)
    text = told(OUT)
    assert "reads nothing, whatever the tailstock does" in text
    assert "Here it would read 0.040 mm (0.0016 in) more at the tailstock end." in text


def test_the_figures_are_those_of_this_bar_and_this_visit() -> None:
    text = told(OUT)
    for part in (
        "Here the tailstock end is larger by 0.040 mm (0.0016 in). The tool stands at the front, so the centre has to go toward you by 0.025 mm",
        "their difference shows only 80 % of what the centre is off",
        "move = difference x 0.625 for this bar",
        "A difference at its limit, 0.016 mm",
        "is a centre 0.010 mm",
        "it takes out 80 % of the error and leaves 20 %",
        "Here half would be 0.020 mm (0.0008 in), which is 0.005 mm (0.0002 in) too little. The collars would still differ by 0.008 mm",
        "It cannot show a twisted bed or a crooked headstock",
        "Isolate the lathe before you measure or move",
    ):
        assert part in text, part


def test_without_readings_no_figure_of_a_visit_is_told() -> None:
    lines = " ".join(say(line, "metric") for section in explain(METRIC).told for line in section.lines)
    assert "Here " not in lines
    assert "74 %" in lines.replace("\u00a0", " ")
    page = explain_html(explain(METRIC))
    assert "larger: move" in page


def test_while_a_remark_bars_the_move_none_is_told() -> None:
    barred = visit("69.342 mm, 69.342 mm", "69.842 mm, 69.842 mm")
    assert barred.barred
    assert "Here " not in told(barred)
    assert "has to go" not in told(barred)
    assert explain_visit(MADE, barred).plan.move is None


@pytest.mark.parametrize("tail", ["69.846 mm, 69.846 mm", "69.856 mm, 69.856 mm"])
def test_what_is_left_alone_or_read_again_is_not_told_to_go(tail: str) -> None:
    found = visit("69.842 mm, 69.842 mm", tail)
    assert found.advice != "move"
    assert "has to go" not in told(found)
    assert "That does not ask for a move as it stands" in told(found)
    assert explain_visit(MADE, found).plan.move is None


@pytest.mark.parametrize("side", ["front", "rear"])
@pytest.mark.parametrize("larger", ["tailstock", "headstock"])
def test_the_drawing_points_the_way_that_the_advice_says(side: str, larger: str) -> None:
    case = changed(MADE, lathe__tool_side=side)
    pair = ("69.842 mm, 69.842 mm", "69.882 mm, 69.882 mm")
    found = visit(*(pair if larger == "tailstock" else reversed(pair)), case=case)
    way = {"toward-you": "toward you", "away-from-you": "away from you"}[found.case.value("visit.way")]
    svg = plan_drawing(explain_visit(case, found).plan, "metric")
    other = {"toward you": "away from you", "away from you": "toward you"}[way]
    assert f">{way}<" in svg
    assert f">{other}<" not in svg
    assert f"the collar at the {larger} end stands farther" in svg


@pytest.mark.parametrize(("dials", "words"), [("metric", "sizes in mm"), ("inch", "sizes in inches")])
def test_the_drawing_says_once_what_its_sizes_are_in(dials: str, words: str) -> None:
    svg = plan_drawing(explain(METRIC).plan, "inch" if dials == "inch" else "metric")
    assert svg.count(words) == 1


def test_the_page_is_told_in_words_and_names_the_lathe() -> None:
    page = explain_html(explain_visit(MADE, OUT))
    assert "<desc" in page
    assert "Lathe 2" in page
    assert page == explain_html(explain_visit(MADE, OUT))
    unsafe = changed(MADE, lathe__stop="untested")
    assert "DO NOT RUN THE LATHE" in explain_html(explain(unsafe))
    assert "DO NOT RUN THE LATHE" not in page


def test_every_part_of_what_is_said_has_lines_and_is_asked_for() -> None:
    """A line in a part that no paper prints would be lost without a word."""
    papers = ("record", "taper", "settag", "tag", "explain")
    parts = {part for part in get_args(SayFile.model_fields["part"].annotation) if part.split("-")[0] in papers}
    assert len(parts) > 20
    asked = "".join(path.read_text(encoding="utf-8") for path in ENGINE.rglob("*.py") if path.name != "models.py")
    assert {part for part in parts if f'"{part}"' not in asked} == set()
    assert parts <= {one.file.part for one in METRIC.knowledge.says}
