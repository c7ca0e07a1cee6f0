"""A refusal ends with what the user said that it hangs on: file, line, his words, and the figure that would do."""

import json
import re
from pathlib import Path
from typing import Any

import pytest
from typer.testing import CliRunner

from cases.test_refusals import REFUSED
from shops import shop, tailtrue
from tailtrue.advise import advise
from tailtrue.cli import app
from tailtrue.errors import Refused

CASES = [(row[0], row[1]) for row in REFUSED]
# What a lathe is divided in, and on which side its tool stands: nobody turns that round for a test bar.
NEVER = {"lathe.dials", "lathe.dial_reads", "lathe.tool_side"}

Hanging = dict[str, list[dict[str, str]]]


def errors(job: Path) -> list[dict[str, Any]]:
    done = CliRunner().invoke(app, ["check", str(job), "--json"])
    assert done.exit_code == 5, done.output
    return list(json.loads(done.stdout)["errors"])


def hanging(job: Path) -> Hanging:
    return {error["where"]: error.get("hangs_on", []) for error in errors(job)}


@pytest.mark.parametrize("changes", [row[1] for row in CASES], ids=[row[0] for row in CASES])
def test_every_refusal_names_what_it_hangs_on(tmp_path: Path, changes: list[tuple[str, str, str]]) -> None:
    """What was said or is missing, never what the lathe is; a figure that would do does, and brings no other refusal."""
    job = shop(tmp_path, "fernhill", *changes)
    told = hanging(job)
    each_names_what_was_said_or_what_is_missing(job, told)
    assert not NEVER & {one["fact"] for rows in told.values() for one in rows}
    each_figure_that_would_do_does(job, told)


def each_names_what_was_said_or_what_is_missing(job: Path, hanging: Hanging) -> None:
    for stop, told in hanging.items():
        assert told, stop
        for one in told:
            at = re.fullmatch(r"(\w+\.toml):([0-9]+)", one["where"])
            if at is None:
                assert one["said"] == "not given" or one["said"].startswith("not said, so "), one
                continue
            line = (job.parent / at[1]).read_text(encoding="utf-8").splitlines()[int(at[2]) - 1]
            key = one["key"].split(", ")[-1]
            assert line.startswith((f"{key} = ", f"[[{one['fact']}]]")), (line, one)
            said = {'"yes"': "true", '"no"': "false"}.get(one["said"], one["said"].strip('"')[:20].rstrip("."))
            assert line.startswith("[[") or said in line.replace('", "', ", "), (line, one)


def each_figure_that_would_do_does(job: Path, hanging: Hanging) -> None:
    """Each figure is written at its line: that reason falls, and none comes in its place."""
    before = {one.id for one in advise(job).refused}
    for stop, told in hanging.items():
        if stop not in before:
            continue
        for one in told:
            match = re.fullmatch(r"(?:one of )?(.+?)(?: or (?:more|less))? would do", one["needed"])
            if match is None:
                assert not one["needed"].endswith("would do"), one
                continue
            name, _, number = one["where"].partition(":")
            path = job.parent / name
            text = path.read_text(encoding="utf-8")
            lines = text.splitlines()
            if number:
                lines[int(number) - 1] = f'{lines[int(number) - 1].partition(" = ")[0]} = "{match[1]}"'
            else:
                # A wish that was not said has no line yet.
                lines.insert(lines.index("[job]") + 1, f'{one["key"]} = "{match[1]}"')
            path.write_text("\n".join(lines), encoding="utf-8")
            after = {reason.id for reason in advise(job).refused}
            path.write_text(text, encoding="utf-8")
            assert stop not in after, one
            assert after <= before, one


def test_the_page_for_the_terminal_ends_each_reason_with_it(tmp_path: Path) -> None:
    job = shop(tmp_path, "fernhill", ("crib", 'dog_to = "32 mm"', 'dog_to = "20 mm"'))
    done = tailtrue("make", job, "--out", tmp_path / "out")
    line = (job.parent / "crib.toml").read_text(encoding="utf-8").splitlines().index('dog_to = "20 mm"') + 1
    assert "  this hangs on:\n" in done.stderr
    assert f'    crib.toml:{line} dog_to: "20 mm"; one of 25 mm or more would do' in done.stderr.splitlines()


def test_the_figure_is_in_the_units_of_what_was_written(tmp_path: Path) -> None:
    job = shop(tmp_path, "quarry-road", ("crib", 'dog_to = "1 in"', 'dog_to = "1/2 in"'))
    (told,) = [one for one in hanging(job)["dog-does-not-fit"] if one["fact"] == "crib.dog_to"]
    assert told["needed"] == "one of 0.75 in or more would do"


@pytest.mark.parametrize(
    ("changes", "stop"),
    [
        ([("lathe", 'chuck_guard = "interlocked"', 'chuck_guard = "none"')], "chuck-guard-missing"),
        ([("lathe", 'grips_to = "100 mm"', 'grips_to = "300 mm"')], "chuck-figures-do-not-agree"),
        ([("job", "minor = false", "minor = true"), ("job", "supervised = true", "supervised = false")], "minor-without-supervision"),
    ],
)  # fmt: skip
def test_nothing_is_advised_for_what_the_lathe_is_or_who_works(
    tmp_path: Path, changes: list[tuple[str, str, str]], stop: str
) -> None:
    told = hanging(shop(tmp_path, "fernhill", *changes))[stop]
    assert told
    assert all(one["needed"] == "" for one in told)


def test_what_was_not_said_is_told_as_a_line_to_add(tmp_path: Path) -> None:
    job = shop(tmp_path, "fernhill", ("lathe", 'spindle_length = "430 mm"\n', ""))
    told = hanging(job)["spindle-length-not-said"][0]
    assert (told["where"], told["said"]) == ("lathe.toml", "not given")
    assert told["needed"].startswith('add spindle_length = "')
    assert "below [lathe]" in told["needed"]


@pytest.mark.parametrize(("jaws", "wanted", "line"), [("1 in", "0.29 in", "0.5 in"), ("1.7 in", "0.99 in", "... in")])
def test_a_usual_size_is_offered_only_where_it_would_do(tmp_path: Path, jaws: str, wanted: str, line: str) -> None:
    job = shop(
        tmp_path,
        "quarry-road",
        ("crib", '^spacer = "3/8 in"\n', ""),
        ("lathe", 'jaw_depth = "1 in"', f'jaw_depth = "{jaws}"'),
    )
    refused = next(one for one in errors(job) if one["where"] == "blank-cannot-be-gripped")
    assert f"at least {wanted}" in refused["wrong"].replace("\N{NO-BREAK SPACE}", " ")
    told = next(one for one in refused["hangs_on"] if one["fact"] == "crib.spacer")
    assert f'add spacer = "{line}" below [crib]' in told["needed"]


def test_what_was_said_is_sought_only_where_it_is_told(tmp_path: Path) -> None:
    """Explaining and comparing refused jobs does not pay for it."""
    advice = advise(shop(tmp_path, "fernhill", ("crib", 'dog_to = "32 mm"', 'dog_to = "20 mm"')))
    asked: list[str] = []
    read = advice.case.with_other
    advice.case.with_other = lambda more: asked.extend(more) or read(more)  # type: ignore[method-assign, func-returns-value]
    error = advice.refusal(advice.refused)
    assert isinstance(error, Refused)
    assert asked == []
    assert error.hangs_on(0)
    assert asked


def test_a_collar_wished_too_thin_is_told_so_and_no_micrometer_is_blamed(tmp_path: Path) -> None:
    no_indicator = ("crib", 'indicator_division = "0.002 mm"\n', "")
    for wish in ("28 mm", "40 mm"):
        job = shop(
            tmp_path / wish, "fernhill", ("job", 'accuracy = "good"', f'accuracy = "good"\ncollar_diameter = "{wish}"'),
            no_indicator,
        )  # fmt: skip
        found = hanging(job)
        assert {"collar-too-thin"} <= set(found) <= {"collar-too-thin", "nothing-shows-the-move"}
        assert {"job.collar_diameter": "47 mm or more would do"}.items() <= {
            one["fact"]: one["needed"] for one in found["collar-too-thin"]
        }.items()


def test_stock_too_thin_for_a_collar_is_told_so_and_no_micrometer_is_blamed(tmp_path: Path) -> None:
    job = shop(tmp_path, "fernhill", ("stock", 'diameter = "70 mm"', 'diameter = "40 mm"'),
               ("crib", 'indicator_division = "0.002 mm"\n', ""))  # fmt: skip
    found = hanging(job)
    assert "collar-too-thin" in found
    assert "no-micrometer-covers-the-collar" not in found


PINS = (
    "crib",
    "compressed_air = true",
    'compressed_air = true\ndrill_press = true\n\n[[crib.pins]]\ntype = "hardened-dowel"\ndiameter = "8 mm"\n'
    'length = "40 mm"\ndrill_reach = "150 mm"\n',
)


def test_a_size_that_nobody_asked_for_is_told_with_the_figure_that_would_do(tmp_path: Path) -> None:
    """Of a weak bond and a thick pin neither is the one way: a wider collar takes the pin, and the job may ask for that."""
    weak = ("crib", 'compound_cure = "24 h"', 'compound_cure = "24 h"\ncompound_strength = "9 MPa"')
    job = shop(tmp_path, "fernhill", PINS, weak)
    told = {one["fact"]: one for one in hanging(job)["bond-too-weak"]}["job.collar_width"]
    assert (told["where"], told["said"]) == ("job.toml", "not said, so 25 mm is taken")
    assert told["needed"] == "30 mm or more would do"
    text = job.read_text(encoding="utf-8")
    for width, refused in (("29 mm", True), ("30 mm", False)):
        job.write_text(text.replace("[job]", f'[job]\ncollar_width = "{width}"'), encoding="utf-8")
        assert ("bond-too-weak" in {one.id for one in advise(job).refused}) is refused


def test_where_no_one_value_frees_the_job_what_moves_the_sizes_is_named(tmp_path: Path) -> None:
    """An uneven bar and a coarse gauge together: neither shop temperature nor cure has to do with the room of a bore."""
    gauge = (
        "crib",
        r"\[\[crib\.bore_gauges\]\].*",
        '[[crib.bore_gauges]]\nkind = "bore-gauge"\nfrom = "12 mm"\nto = "32 mm"\ndoubt = "0.03 mm"\n',
    )
    uneven = ", ".join(['"24.900 mm", "24.980 mm"'] * 3)
    bar = ("job", r"measured_head = .*?\]", f"measured_head = [{uneven}]")
    told = hanging(shop(tmp_path, "fernhill", gauge, bar))["bar-uneven-or-gauge-coarse"]
    assert [one["fact"] for one in told] == ["job.measured_head", "crib.compound_gap", "crib.bore_gauges"]
