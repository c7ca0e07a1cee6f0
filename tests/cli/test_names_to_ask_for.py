"""Things are asked for by the name in a file, by the words on paper, or by an answer; and all names can be listed."""

import json

import pytest

from shops import EXAMPLES, tailtrue

JOB = EXAMPLES / "quarry-road" / "job.toml"


@pytest.mark.parametrize(
    ("asked", "name"),
    [
        ("third_collar", "job.third_collar"),
        ("third collar", "job.third_collar"),
        ("collar diameter", "collar.diameter"),
        ("joint=set-screws", "joint.method=set-screws"),
        ("set-screws", "joint.method=set-screws"),
        ("no_volt_release", "lathe.no_volt_release"),
    ],
)
def test_why_takes_the_words_that_people_have(asked: str, name: str) -> None:
    done = tailtrue("why", JOB, asked)
    assert done.returncode == 0, done.stderr
    assert f"({name})" in " ".join(done.stdout.split("\n\n")[0].split())


def test_why_not_takes_an_answer_alone() -> None:
    done = tailtrue("why-not", JOB, "set-screws")
    assert done.returncode == 0, done.stderr
    assert "joint.method=set-screws" in done.stdout


def test_a_name_that_is_not_there_is_answered_with_those_that_share_its_words() -> None:
    done = tailtrue("why", JOB, "loose screws")
    assert done.returncode == 2
    assert "nothing has this name" in done.stderr
    assert "screw" in done.stderr.rpartition("nearest:")[2]


def test_every_name_is_listed_by_kind() -> None:
    done = tailtrue("why", JOB, "--list", "--json")
    assert done.returncode == 0
    names = json.loads(done.stdout)["names"]
    assert set(names) == {"fact", "decision", "limit", "step", "caution", "stop", "note"}
    assert "lathe.no_volt_release" in names["fact"]
    assert "starts-again-by-itself" in names["stop"]
    method = next(one for one in names["decision"] if one.startswith("joint.method = "))
    assert "set-screws" in method
    shown = tailtrue("why", JOB, "--list").stdout.splitlines()
    assert "stop:" in shown
    assert "  starts-again-by-itself" in shown


def test_without_a_name_it_is_said_what_to_write() -> None:
    done = tailtrue("why", JOB)
    assert done.returncode == 2
    assert "--list" in done.stderr
