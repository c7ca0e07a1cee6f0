"""`why`, `why-not` and `compare` as their user meets them."""

import json
import re
from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest
from typer.testing import CliRunner, Result

from shops import EXAMPLES, shop
from tailtrue.cli import app

FERNHILL = EXAMPLES / "fernhill" / "job.toml"
QUARRY = EXAMPLES / "quarry-road" / "job.toml"


def run(*words: object) -> Result:
    return CliRunner().invoke(app, [str(word) for word in words])


def data(*words: object) -> dict[str, Any]:
    done = run(*words, "--json")
    assert done.exit_code == 0, done.output
    found: dict[str, Any] = json.loads(done.stdout)
    return found


def test_a_computed_fact_is_told_with_rule_value_formula_and_sources() -> None:
    text = run("why", FERNHILL, "skim.speed").stdout
    rule, value, made, formula, sources = (
        text.index(part) for part in ("1000 v / (pi D)", "450", "Made from", "Formula", "Sources")
    )
    assert rule < value < made < formula < sources
    assert "common practice" in text


def test_a_speed_is_told_beside_what_books_print() -> None:
    text = " ".join(run("why", QUARRY, "bar.facing.speed").stdout.replace("\xa0", " ").split())
    assert "advised here for turn-rough, HSS: 80 ft/min" in text
    # The course sheet prints 80 to 100 ft/min for mild steel with a tool of high speed steel.
    assert "mild steel 1018/1020: 80 ft/min (24 m/min) to 100 ft/min" in text
    assert "open course in lathe and mill work" in text
    assert "coated" not in text


def test_the_drills_are_told_beside_what_books_print() -> None:
    text = " ".join(run("why", QUARRY, "hole.ladder").stdout.replace("\xa0", " ").split())
    # The drilling guide prints 150 to 300 ft/min for ordinary brass and bronze.
    assert "ordinary brass and bronze: 150 ft/min (46 m/min) to 300 ft/min" in text


def test_the_bounds_of_a_length_are_told_the_tightest_first() -> None:
    weighed = next(part for part in data("why", FERNHILL, "bar.length")["parts"] if part["title"] == "What was weighed")
    lines = [line["text"].replace("\xa0", " ") for line in weighed["lines"]]
    # Fifteen diameters of 25 mm; six tenths of 750 mm; 600 mm of stock less 1.5 mm on both ends.
    assert lines[0].endswith("bends and chatters: 375.0 mm (14.76 in)")
    assert any(line.endswith("distance between centres: 450.0 mm (17.72 in)") for line in lines)
    assert any(line.endswith("facing at both ends: 597.0 mm (23.50 in)") for line in lines)


def test_what_the_job_asks_for_was_not_weighed(tmp_path: Path) -> None:
    job = shop(tmp_path, "fernhill", ("job", 'accuracy = "good"', 'accuracy = "good"\nbar_length = "350 mm"'))
    assert "What was weighed" not in run("why", job, "bar.length").stdout


def test_with_parts_comes_what_it_was_made_from_each_once() -> None:
    lines = next(part for part in data("why", FERNHILL, "skim.speed", "--parts")["parts"] if part["title"] == "Made from")
    texts = [line["text"] for line in lines["lines"]]
    assert len(texts) == len(set(texts))
    assert any("(lathe.swing_over_bed)" in text for text in texts)
    assert max(line["depth"] for line in lines["lines"]) >= 2


def test_the_system_of_the_dials_leads() -> None:
    assert "collars: 1.94 in (49.2" in run("why", QUARRY, "skim.speed").stdout.replace("\xa0", " ")
    assert "collars: 69.0 mm (2.72" in run("why", FERNHILL, "skim.speed").stdout.replace("\xa0", " ")


@pytest.mark.parametrize("words", [("why", "skim.speed", "--parts"), ("why-not", "collar.hold"), ("why", "working-alone")])
def test_no_line_is_longer_than_a_window(words: tuple[str, ...]) -> None:
    lines = run(words[0], QUARRY, *words[1:]).stdout.splitlines()
    assert 0 < max(map(len, lines)) <= 100


def test_what_was_said_is_shown_with_its_line() -> None:
    assert "as you said: 20 degC (job.toml:17)" in run("why", FERNHILL, "job.temperature").stdout


def test_what_is_not_known_says_what_is_missing_and_how_to_find_it_out() -> None:
    found = data("why", QUARRY, "lathe.tailstock_mass")
    assert found["known"] is False
    assert found["missing"] == ["lathe.tailstock_mass"]
    assert "a scale under it" in run("why", QUARRY, "lathe.tailstock_mass").stdout


def test_a_step_says_where_it_stands_what_it_needs_and_what_needs_it() -> None:
    found = data("why", FERNHILL, "bond")
    assert found["numbers"] == ["6.4"]
    text = run("why", FERNHILL, "bond").stdout
    assert "dry fitted, made by 6.3 Try it dry" in text
    assert "bonded, needed by 6.5 Let the bond cure" in text


def test_step_numbers_are_those_of_the_sheet() -> None:
    from tailtrue.advise import make_procedure

    tree = make_procedure(QUARRY)
    numbers: dict[str, list[str]] = {}
    for phase in tree.phases:
        for step in phase.steps:
            numbers.setdefault(step.id, []).append(step.number)
    for name in ("restore-power", "fit-soft-centre", "skim-collars"):
        assert data("why", QUARRY, name)["numbers"] == numbers[name]


def test_the_cautions_that_are_told_as_shown_are_those_of_the_sheet() -> None:
    from tailtrue.advise import knowledge, make_procedure

    tree = make_procedure(FERNHILL)
    printed = {one.id for one in tree.job_cautions}
    for phase in tree.phases:
        printed |= {one.id for one in phase.cautions}
        printed |= {one.id for step in phase.steps for one in step.cautions}
    from tailtrue.advise import advise
    from tailtrue.cli.explain import side_of
    from tailtrue.explaining.why import why

    side = side_of(advise(FERNHILL))
    told = {one.file.id for one in knowledge().cautions if why(side, one.file.id).data["holds"]}
    assert told == printed


def test_an_answer_that_was_not_chosen_names_what_failed_and_what_to_change() -> None:
    found = data("why-not", FERNHILL, "collar.hold=jaws")
    assert [one["fact"] for one in found["failed"]] == ["collar.stands_out"]
    text = " ".join(run("why-not", FERNHILL, "collar.hold=jaws").stdout.split())
    assert "What would have to be otherwise" in text
    assert "follows from lathe.dials, lathe.chucks, job.collar_width" in text


def test_what_is_so_is_said_to_be_so() -> None:
    assert "It is what was chosen here." in run("why-not", FERNHILL, "collar.hold=jaws-and-spacer").stdout
    assert "It is in the plan: 6.4." in run("why-not", FERNHILL, "bond").stdout


def test_a_caution_printed_because_something_is_not_known_says_so() -> None:
    text = " ".join(run("why-not", QUARRY, "spindle-runs-on").stdout.split())
    assert "because this is not known: time the spindle takes to come to rest" in text


def test_a_step_left_out_says_which_condition_failed() -> None:
    found = data("why-not", FERNHILL, "fit-soft-centre")
    assert [one["fact"] for one in found["failed"]] == ["centre.head"]


@pytest.mark.parametrize("command", ["why", "why-not"])
def test_an_unknown_name_is_a_matter_of_usage_and_the_nearest_are_named(command: str) -> None:
    done = run(command, FERNHILL, "skim.spede")
    assert done.exit_code == 2
    assert "skim.speed" in done.stderr


@pytest.mark.parametrize("name", ["collar.hold=glue", "skim.speed=3", ""])
def test_an_answer_that_does_not_exist_is_a_matter_of_usage(name: str) -> None:
    assert run("why-not", FERNHILL, name).exit_code == 2


def test_a_job_that_is_refused_is_explained_all_the_same(tmp_path: Path) -> None:
    job = shop(tmp_path, "fernhill", ("lathe", 'stop = "tested"', 'stop = "untested"'))
    done = run("why", job, "stop-missing-or-untested")
    assert done.exit_code == 0
    assert "this job is refused" in done.stdout
    assert "No procedure is printed for this job as it stands" in done.stdout
    assert data("why", job, "skim.speed")["known"] is True


def test_files_that_cannot_be_used_end_with_their_code(tmp_path: Path) -> None:
    job = shop(tmp_path, "fernhill", ("job", "minor = false", "minor = 3"))
    assert run("why", job, "skim.speed").exit_code == 4
    assert run("compare", job).exit_code == 4


def test_a_job_compared_with_itself_is_the_same() -> None:
    assert data("compare", FERNHILL)["same"] is True
    assert "Nothing differs." in run("compare", FERNHILL).stdout


def test_a_changed_fact_is_followed_to_numbers_steps_and_cautions() -> None:
    found = data(
        "compare", FERNHILL, "--set", "crib.headstock_centre=soft", "--set", "job.alone=yes", "--set", "job.place=home"
    )
    said = {one["name"]: (one["before"], one["after"]) for one in found["said"]}
    assert said["job.alone"] == ("no", "yes")
    assert "soft-point/fit-soft-centre" in [one["id"] for one in found["steps"]["come"]]
    assert "centres/fit-hard-centre" in [one["id"] for one in found["steps"]["gone"]]
    assert "working-alone" in [one["id"] for one in found["cautions"]["come"]]


def test_numbers_stand_by_phase_in_the_order_of_the_work() -> None:
    found = data("compare", FERNHILL, "--set", "stock.bars=[{label='b', material='steel-low-carbon-cold-drawn', "
                 "diameter='20 mm', length='500 mm', finish='cold-drawn'}]")  # fmt: skip
    from tailtrue.advise import knowledge

    order = ["The whole job", *(phase.file.title for phase in knowledge().routes["make-and-use-bar"].phases)]
    phases = [one["phase"] for one in found["numbers"]]
    assert phases == [title for title in order if title in phases]
    assert len(phases) > 1


def titles(page: str) -> list[str]:
    lines = page.splitlines()
    return [line for before, line in pairwise(lines) if not before and not line.startswith(" ")]


THINNER = ("--set", "stock.bars=[{label='b', material='steel-low-carbon-cold-drawn', diameter='20 mm', length='500 mm', "
           "finish='cold-drawn'}]", "--set", "job.collar_width='25 mm'")  # fmt: skip


def test_the_gravest_comes_first_and_what_is_many_is_counted() -> None:
    page = run("compare", FERNHILL, *THINNER).stdout
    order = ["Said otherwise", "Reasons to refuse, new", "Choices", "Cautions, no longer", "Findings, no longer",
             "Steps, no longer", "The whole job"]  # fmt: skip
    found = titles(page)
    assert [title for title in found if title in order] == order
    assert any(re.fullmatch(r"  - and \d+ more", line) for line in page.splitlines())
    assert re.search(r"^Behind the sheet: \d+ numbers that no page of this job prints differ$", page, re.MULTILINE)
    assert page.endswith("Everything, row by row: the same with --all\n")


def test_every_row_is_listed_when_it_is_asked_for() -> None:
    page = run("compare", FERNHILL, *THINNER, "--all").stdout
    assert not re.search(r"^  - and \d+ more$", page, re.MULTILINE)
    listed = page.split("Behind the sheet\n", 1)[1]
    behind = data("compare", FERNHILL, *THINNER)["behind"]
    assert len(re.findall(r"^  - ", listed, re.MULTILINE)) == len(behind)


def test_a_number_whose_printed_digits_are_the_same_does_not_show() -> None:
    found = data("compare", FERNHILL, "--set", "job.accuracy=fine")
    rows = [row for group in found["numbers"] for row in group["facts"]] + found["behind"]
    leading = [(re.sub(r" \([^)]* in\)", "", row["before"]), re.sub(r" \([^)]* in\)", "", row["after"])) for row in rows]
    assert leading
    assert all(was != now for was, now in leading)


def test_numbers_of_other_routes_are_not_counted_to_this_job() -> None:
    found = data("compare", FERNHILL, "--set", "job.accuracy=fine")
    (whole,) = [one["facts"] for one in found["numbers"] if one["phase"] == "The whole job"]
    assert {one["name"] for one in whole} == {"align.limit"}


OTHER_EDGE = ("--set", "crib.tool_material=carbide")


def test_the_time_of_job_phase_and_step_is_laid_beside() -> None:
    found = {one["name"]: one for one in data("compare", FERNHILL, *OTHER_EDGE)["times"]}
    assert {"job", "collars"} < found.keys()
    assert any(name.startswith("collars/") for name in found)
    page = run("compare", FERNHILL, *OTHER_EDGE).stdout
    assert "\nTime\n" in page
    assert " ".join(found["job"]["before"].split()) in " ".join(page.split())


def test_no_time_is_compared_with_that_of_a_sheet_that_is_not_printed() -> None:
    assert data("compare", FERNHILL, "--set", "lathe.chuck_guard=none")["times"] == []


def test_one_side_refused_is_said_with_the_reason_and_the_rest_is_compared() -> None:
    found = data("compare", FERNHILL, "--set", "lathe.chuck_guard=none", "--set", "job.accuracy=general")
    assert found["printed"] == {"before": True, "after": False}
    assert "chuck-guard-missing" in [one["id"] for one in found["refusals"]["come"]]
    assert found["numbers"]
    assert "no procedure is printed: The lathe has no chuck guard" in " ".join(
        run("compare", FERNHILL, "--set", "lathe.chuck_guard=none").stdout.split()
    )


def test_another_lathe_can_be_set(tmp_path: Path) -> None:
    job = shop(tmp_path, "fernhill")
    other = (tmp_path / "fernhill" / "lathe.toml").read_text(encoding="utf-8").replace('"330 mm"', '"300 mm"')
    (tmp_path / "fernhill" / "other.toml").write_text(other, encoding="utf-8")
    said = {one["name"] for one in data("compare", job, "--set", "job.lathe=other.toml")["said"]}
    assert said == {"job.lathe", "lathe.swing_over_bed"}


@pytest.mark.parametrize(
    ("said", "code", "words"),
    [
        ("job.accuracy", 2, "says no value"),
        ("job.acuracy=fine", 2, "job.accuracy"),
        ("skim.speed=300", 2, "lathe.speeds"),
        ("collar.hold=jaws", 2, "is decided by rule"),
        ("limit.quill_share=0.2", 2, "is a limit"),
        ("job.accuracy=best", 4, "is not one of the choices"),
        ("job.bar_length=300", 4, "has no unit"),
        ("job.bar_length=3 mm", 4, "is not plausible"),
        ("job.alone=maybe", 4, "neither yes nor no"),
        ("lathe.speed_from=50 1/min", 4, "said in two ways"),
        ("crib.drills=all", 4, "is not a list"),
    ],
)
def test_a_fact_that_cannot_be_set_is_refused_with_what_to_do(said: str, code: int, words: str) -> None:
    done = run("compare", FERNHILL, "--set", said)
    assert done.exit_code == code, done.output
    assert words in done.stderr
    assert "--set" in done.stderr or "two ways" in words


def test_a_fact_set_twice_is_refused() -> None:
    done = run("compare", FERNHILL, "--set", "job.alone=yes", "--set", "job.alone=no")
    assert done.exit_code == 2
    assert "is set twice" in done.stderr


@pytest.mark.parametrize("command", ["why", "why-not"])
@pytest.mark.parametrize(
    ("asked", "near"),
    [
        ("bond.nonsense", "nearest: bond"),
        ("working-alone.title", "nearest: working-alone"),
        ("skim.speed.nonsense", "nearest: skim.speed"),
        ("skim.sped", "nearest: skim.speed"),
        ("bar.stock.lenth", "nearest: bar.stock_length"),
        ("tables", "a name looks like skim.speed"),
    ],
)
def test_a_name_that_nothing_has_answers_for_nothing_else(command: str, asked: str, near: str) -> None:
    done = run(command, FERNHILL, asked)
    assert done.exit_code == 2
    assert done.stdout == ""
    assert f"{asked}: nothing has this name" in done.stderr
    assert near in done.stderr


@pytest.mark.parametrize(("column", "of"), [("align.table.move", "align.table"), ("chuck.used.body", "chuck.used")])
def test_a_column_of_a_table_is_explained_with_its_table(column: str, of: str) -> None:
    assert data("why", FERNHILL, column)["name"] == of


def test_the_joint_of_a_bar_on_hand_is_stated_and_not_chosen() -> None:
    text = " ".join(run("why", EXAMPLES / "fernhill" / "use-bar.toml", "joint.method").stdout.split())
    assert "this job chooses nothing" in text
    assert "Here it is retaining compound. What settled it: the stock file says so." in text
    assert "The others" not in text
    assert "Because" not in text


def test_no_answer_is_weighed_for_the_joint_of_a_bar_on_hand() -> None:
    for asked in ("joint.method", "joint.method=set-screws"):
        found = data("why-not", EXAMPLES / "fernhill" / "use-bar.toml", asked)
        assert found["stated"] == "joint.fixed_by"


def test_the_joint_of_a_bar_of_which_nobody_told_it_is_not_known(tmp_path: Path) -> None:
    shop(tmp_path, "fernhill", ("stock", r'^fixed_by = "retaining-compound"\n', ""))
    text = " ".join(run("why", tmp_path / "fernhill" / "use-bar.toml", "joint.method").stdout.split())
    assert "Not known here. Nobody told how the collars of this bar are fixed" in text
    assert "slip fit with retaining compound" not in text


def test_the_joint_of_a_bar_to_be_made_is_chosen() -> None:
    assert "Here: slip fit with retaining compound" in " ".join(run("why", FERNHILL, "joint.method").stdout.split())


def test_a_size_that_cannot_be_weighed_says_which_and_why(tmp_path: Path) -> None:
    # Slower than both speeds nothing turns, so what the motor drives at the speed of the skim is not known.
    too_fast = ("lathe", r"^speeds = .*?^speed_settings = .*?$", 'speeds = ["1500 1/min", "1800 1/min"]')
    job = shop(tmp_path, "fernhill", too_fast)
    text = " ".join(run("why-not", job, "skim.depth_bound=band").stdout.split())
    assert "a size that it is held against is not known: what the motor drives; the slowest speed of this lathe" in text
