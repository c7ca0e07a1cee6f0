"""`why` and `why-not` asked with what stands on the paper: a number, a label, a word that several things have."""

import re

import pytest

from cli.test_explain import FERNHILL, data, run
from shops import EXAMPLES
from tailtrue.advise import make_procedure
from tailtrue.procedure import Procedure
from tailtrue.render.words import say

WEIR = EXAMPLES / "weir-cottage" / "job.toml"


@pytest.fixture(scope="module")
def sheet() -> Procedure:
    return make_procedure(FERNHILL)


def test_every_printed_step_number_leads_to_the_step_that_is_printed_there(sheet: Procedure) -> None:
    from tailtrue.advise import advise
    from tailtrue.cli.explain import side_of
    from tailtrue.explaining.why import why

    side = side_of(advise(FERNHILL))
    for phase in sheet.phases:
        assert why(side, phase.number).name == phase.id
        for step in phase.steps:
            told = why(side, step.number)
            assert (told.name, told.label) == (step.id, step.title)
            assert step.number in told.data["numbers"]


def test_every_printed_setting_and_check_is_found_by_the_number_of_its_step_and_its_label(sheet: Procedure) -> None:
    from tailtrue.advise import advise
    from tailtrue.cli.explain import side_of
    from tailtrue.explaining.why import why

    side = side_of(advise(FERNHILL))
    for phase in sheet.phases:
        for step in phase.steps:
            labels = [say(one.label, sheet.title.dials) for one in step.settings]
            labels += [say(one.text, sheet.title.dials) for one in step.checks]
            for label in labels:
                if labels.count(label) == 1:
                    assert why(side, f"{step.number} {label}").kind in ("fact", "decision", "setting", "check", "limit")


@pytest.mark.parametrize("asked", ["5.10", "step 5.10", " 5.10 "])
def test_a_step_number_is_answered_by_why_and_why_not(asked: str) -> None:
    assert data("why", FERNHILL, asked)["name"] == "face-blank-to-width"
    assert "It is in the plan: 5.10." in run("why-not", FERNHILL, asked).stdout


def test_a_phase_tells_its_steps_by_number_and_name() -> None:
    found = data("why", FERNHILL, "phase 5")
    assert (found["kind"], found["name"]) == ("phase", "collars")
    assert dict(zip(found["numbers"], found["steps"], strict=True))["5.10"] == "face-blank-to-width"


def test_a_setting_that_tells_one_fact_leads_to_it() -> None:
    assert data("why", FERNHILL, "5.10 speed")["name"] == "collar.widening.speed"


def test_a_setting_without_a_fact_tells_why_and_where() -> None:
    found = data("why", WEIR, "bar goes into the spindle")
    assert found["kind"] == "setting"
    assert found["numbers"]
    assert "from the chuck side" in found["met"]


@pytest.mark.parametrize(
    ("asked", "said"),
    [
        ("5.99", "phase 5 has steps 5.1 to 5.26"),
        ("99.1", "the phases are 1 to 11"),
        ("44", "the phases are 1 to 11"),
        ("5.10 no such label", "its lines are: speed; "),
        ("5.26 speed", "step 5.26 has no line of this label"),
    ],
)
@pytest.mark.parametrize("command", ["why", "why-not"])
def test_what_is_not_printed_says_what_is(command: str, asked: str, said: str) -> None:
    done = run(command, FERNHILL, asked)
    assert done.exit_code == 2
    assert said in done.stderr


@pytest.mark.parametrize("asked", ["mandrel", "speed"])
def test_a_word_that_several_things_have_lists_names_that_are_answered_when_typed(asked: str) -> None:
    done = run("why-not", FERNHILL, asked)
    assert done.exit_code == 2
    names = re.findall(r"^  (?:'([^']+)'|(\S+))  ", done.stderr, re.MULTILINE)
    assert len(names) > 2
    for quoted, plain in names:
        answered = run("why-not", FERNHILL, quoted or plain)
        assert answered.exit_code == 0, answered.output


def test_a_word_that_several_things_have_names_the_answers_of_choices_first() -> None:
    lines = run("why-not", FERNHILL, "mandrel").stderr.splitlines()
    assert lines[2].startswith("  collar.hold=stub-mandrel  on a stub mandrel")
    assert lines[-1].endswith("--list prints all names")
