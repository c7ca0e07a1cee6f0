"""Times on paper: at each phase, in the table by phase, with the unit once where both ends share it."""

from pathlib import Path

import pytest

from tailtrue.advise import make_procedure
from tailtrue.parts import Figure
from tailtrue.procedure import Phase, Procedure, Span
from tailtrue.render import to_html, to_markdown
from tailtrue.render.times import attended, phase_clause, step_clause

from .reading import read_page

EXAMPLES = Path(__file__).parents[2] / "docs" / "examples"


@pytest.fixture(scope="module")
def tree() -> Procedure:
    return make_procedure(EXAMPLES / "fernhill" / "job.toml")


def span(low: float, high: float, waiting: float | None = None) -> Span:
    def seconds(value: float) -> Figure:
        return Figure(fact="time", value=value, unit="s", rounding="time")

    return Span(low=seconds(low), high=seconds(high), waiting=None if waiting is None else seconds(waiting))


@pytest.mark.parametrize(
    ("low", "high", "words"),
    [
        (1200, 3300, "20 to 55 min"),
        (2700, 5100, "45 min to 1 h 25 min"),
        (3600, 7200, "1 to 2 h"),
        (10500, 20400, "2 h 55 min to 5 h 40 min"),
        (300, 300, "5 min"),
        (60, 180, "1 to 3 min"),
        (96, 240, "1 to 4 min"),
        (60, 60, "60 s"),
        (30, 120, "30 s to 2 min"),
        (60, 90, "60 to 90 s"),
    ],
)
def test_a_span_is_said_with_its_units(low: float, high: float, words: str) -> None:
    assert attended(span(low, high), "metric").replace("\u00a0", " ") == words


def test_a_phase_says_for_which_pieces_and_what_waits(tree: Procedure) -> None:
    phase: Phase = tree.phases[0].model_copy(update={"each": ("end A", "end B"), "time": span(1200, 3300, 86400)})
    said = phase_clause(phase, "inch").replace("\u00a0", " ")
    assert said == "Takes about 20 to 55 min for end A and end B together, and a wait of 24 h."
    assert phase_clause(phase.model_copy(update={"time": None}), "inch") == ""


def test_every_phase_and_the_total_stand_in_the_table_of_times(tree: Procedure) -> None:
    page, text = to_html(tree), to_markdown(tree)
    table = next(read_page(page).all(kind="times"))
    said = {next(row.all("th")).words: [cell.words for cell in row.all("td")] for row in table.all("tr")}
    assert tree.time is not None
    for phase in tree.phases:
        assert phase.time is not None
        assert said[f"{phase.number} {phase.title}"][0] == attended(phase.time, "metric")
        assert phase_clause(phase, "metric") in page
        assert phase_clause(phase, "metric") in text
    assert said["Together"][0] == attended(tree.time.total, "metric")


def test_every_step_has_its_time_at_its_head_and_those_of_a_phase_come_to_its_time(tree: Procedure) -> None:
    page, text = read_page(to_html(tree)), to_markdown(tree)
    heads = {step.attributes["aria-labelledby"]: step for step in page.all("section", "step")}
    for phase in tree.phases:
        low = high = 0.0
        for step in phase.steps:
            assert step.time is not None
            (told,) = heads[f"step-{step.number}"].all("span", "lasts")
            assert told.words == step_clause(step, "metric")
            assert told.words.startswith(attended(step.time, "metric"))
            assert ("each" in told.words.split()) == (len(phase.each) > 1)
            assert f", {told.words})" in text
            low += step.time.low.value * (len(phase.each) or 1)
            high += step.time.high.value * (len(phase.each) or 1)
        # Told in steps of five minutes, rounded up.
        assert phase.time is not None
        assert low <= phase.time.low.value < low + 300
        assert high <= phase.time.high.value < high + 300


def test_a_wait_stands_beside_the_time_of_its_step(tree: Procedure) -> None:
    step = tree.phases[0].steps[0]
    assert step.time is not None
    waits = step.time.model_copy(update={"waiting": span(60, 60, 86400).waiting})
    assert step_clause(step.model_copy(update={"time": waits}), "metric").endswith(" + 24 h".replace(" h", "\u00a0h"))
    assert step_clause(step.model_copy(update={"time": None}), "metric") == ""
