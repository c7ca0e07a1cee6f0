"""Classes of lathes: they fill what may be left unsaid, and never what only the owner can know."""

from collections.abc import Callable
from pathlib import Path

import pytest

from tailtrue.given.catalogue import Catalogue
from tailtrue.given.read import read_job

from .conftest import spoil

SPEEDS = 'speeds = [\n    "65 1/min", "180 rpm",\n    "450 rev/min",\n]\n'
NEVER = ("lathe.dial_reads", "lathe.tool_side", "lathe.chuck_guard", "lathe.stop", "lathe.chucks")


def from_class(shop: Path, name: str, *gone: str) -> None:
    spoil(
        shop,
        ("lathe", 'dials = "metric"', f'dials = "metric"\nstarts_from = "{name}"'),
        *(("lathe", one, "") for one in gone),
    )


def test_a_class_fills_what_was_not_said(shop: Path, catalogue: Catalogue) -> None:
    from_class(shop, "bench-230", SPEEDS, 'swing_over_bed = "280 mm"\n')
    given_facts = read_job(shop / "job.toml", catalogue)
    speeds = given_facts.values["lathe.speeds"]
    assert speeds.origin == "class"
    assert speeds.where == "knowledge/machines/bench-230.toml:8"
    assert speeds.value == (125.0, 210.0, 420.0, 620.0, 1000.0, 2000.0)
    assert given_facts.value("lathe.swing_over_bed") == 230.0


def test_what_was_said_goes_before_the_class(shop: Path, catalogue: Catalogue) -> None:
    from_class(shop, "bench-230")
    given_facts = read_job(shop / "job.toml", catalogue)
    assert given_facts.value("lathe.swing_over_bed") == 280.0
    assert given_facts.values["lathe.speeds"].origin == "said"


def test_a_variable_drive_keeps_the_list_of_the_class_out(shop: Path, catalogue: Catalogue) -> None:
    from_class(shop, "bench-230")
    spoil(shop, ("lathe", SPEEDS, 'speed_from = "100 rpm"\nspeed_to = "2000 rpm"\n'))
    given_facts = read_job(shop / "job.toml", catalogue)
    assert "lathe.speeds" not in given_facts.values
    assert given_facts.value("lathe.speed_to") == 2000.0


@pytest.mark.parametrize(
    "line", ['dial_reads = "radius"', 'tool_side = "front"', 'chuck_guard = "hinged"', 'stop = "tested"']
)
def test_no_class_answers_for_safety_or_for_the_dial(shop: Path, lines: Callable[..., list[str]], line: str) -> None:
    from_class(shop, "plain-bearing-240")
    (problem,) = lines(("lathe", f"{line}\n", ""))
    assert problem.startswith(f"lathe.toml: {line.split()[0]}: not given; add {line.split()[0]} = ")


def test_every_class_says_where_it_comes_from_and_leaves_the_rest_to_the_owner(catalogue: Catalogue) -> None:
    assert set(catalogue.classes) == {
        "mini-180", "bench-230", "light-300", "engine-350", "engine-410", "plain-bearing-240",
    }  # fmt: skip
    for machine in catalogue.classes.values():
        assert set(machine.sources) == {"memory", "common-practice"}
        assert machine.label
        assert machine.note
        said = {f"lathe.{key}" for key in machine.file.tables["lathe"]}
        assert said
        assert not said & {name for name, fact in catalogue.facts.items() if fact.never_from_class}
    assert all(catalogue.facts[name].never_from_class for name in NEVER)
