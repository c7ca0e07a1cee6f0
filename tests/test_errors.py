"""Errors as a person meets them."""

import importlib
import pkgutil
import re

import pytest

import tailtrue
import tailtrue.errors as room
from tailtrue.errors import (
    ExitCode,
    FactsWrong,
    InspectionFailed,
    KnowledgeInvalid,
    Problem,
    Refused,
    TailtrueError,
    UsageError,
    report,
)

ONE = Problem("job.toml:3", 'bar = "x"', "no such bar", "name one of the list")


@pytest.mark.parametrize(
    ("kind", "code"),
    [
        (TailtrueError, 1),
        (UsageError, 2),
        (KnowledgeInvalid, 3),
        (FactsWrong, 4),
        (Refused, 5),
        (InspectionFailed, 6),
    ],
)
def test_every_error_has_its_exit_code(kind: type[TailtrueError], code: int) -> None:
    assert kind([ONE]).exit_code == code
    assert kind([ONE]).exit_code is ExitCode(code)


def test_the_drawn_tree_is_the_real_one() -> None:
    for _, name, _ in pkgutil.walk_packages(tailtrue.__path__, "tailtrue."):
        if name != "tailtrue.__main__":
            importlib.import_module(name)
    drawn = dict(re.findall(r"── (\w+) +(\d)", room.__doc__ or ""))
    assert drawn == {kind.__name__: str(int(kind.exit_code)) for kind in _below(TailtrueError)}


def _below(kind: type[TailtrueError]) -> list[type[TailtrueError]]:
    return [one for child in kind.__subclasses__() for one in (child, *_below(child))]


def test_a_report_has_place_words_and_what_to_do() -> None:
    assert report(FactsWrong([ONE, Problem("lathe.toml", "stop", "not given", "")])) == (
        "no procedure yet: the facts need mending\n"
        'job.toml:3: bar = "x": no such bar\n'
        "  name one of the list\n"
        "lathe.toml: stop: not given"
    )


def test_a_report_stops_at_twenty_and_counts_the_rest() -> None:
    lines = report(FactsWrong([ONE] * 23)).splitlines()
    assert len(lines) == 1 + 2 * 20 + 1
    assert lines[-1] == "and 3 more"
    assert "more" not in report(FactsWrong([ONE] * 20)).splitlines()[-1].split()


def test_an_error_inside_another_one_is_a_sentence() -> None:
    assert str(FactsWrong([ONE])) == "no such bar; name one of the list"
    assert str(FactsWrong([ONE, ONE, ONE])) == "no such bar; name one of the list (and 2 more)"
    assert str(Refused([])) == "no procedure is printed for this job"
