"""A paper that was asked for by name is made or refused, never dropped; `--set` takes the key of a file."""

from pathlib import Path

import pytest

from shops import EXAMPLES, tailtrue
from tailtrue.advise import make_procedure
from tailtrue.documents import read_wanted, write_documents
from tailtrue.errors import UsageError

REWORK = EXAMPLES / "fernhill" / "rework.toml"


@pytest.mark.parametrize("only", ["procedure,record", "record"])
def test_a_paper_that_the_job_does_not_have_is_refused_beside_others(tmp_path: Path, only: str) -> None:
    # Every route has all five papers; one that comes to be without a record says so.
    sheet = make_procedure(REWORK).model_copy(update={"record": None, "work_record": None})
    with pytest.raises(UsageError, match="has no record"):
        write_documents(sheet, tmp_path / "out", read_wanted(only, "md", large=False))
    assert not list(tmp_path.glob("out/*"))


@pytest.mark.parametrize(
    "route", ["make-bar", "re-certify", "use-bar", "taper-and-return", "chucked-bar-test", "height-and-droop"]
)
def test_every_route_has_its_record(tmp_path: Path, route: str) -> None:
    done = tailtrue("make", EXAMPLES / "fernhill" / f"{route}.toml", "--out", tmp_path, "--only", "record", "--format", "md")
    assert done.returncode == 0, done.stderr
    assert [path.name for path in tmp_path.iterdir()] == ["record.md"]


def test_without_a_wish_the_papers_that_there_are_are_made(tmp_path: Path) -> None:
    done = tailtrue("make", REWORK, "--out", tmp_path, "--format", "md")
    assert done.returncode == 0, done.stderr
    assert {path.name for path in tmp_path.iterdir()} == {"procedure.md", "card.md", "safety.md", "record.md", "sop.md"}


def test_the_help_names_every_paper() -> None:
    told = " ".join(tailtrue("make", "--help").stdout.split())
    assert "procedure, card, safety, record, sop" in told


def test_a_key_of_the_job_file_is_taken_for_its_fact() -> None:
    by_key = tailtrue("compare", EXAMPLES / "fernhill" / "job.toml", "--set", "joint_wish=set-screws")
    by_name = tailtrue("compare", EXAMPLES / "fernhill" / "job.toml", "--set", "job.joint_wish=set-screws")
    assert by_key.stdout == by_name.stdout
    assert by_key.returncode == by_name.returncode
    assert "no given fact has this name" not in by_key.stderr


def test_a_key_that_more_than_one_file_has_is_not_guessed() -> None:
    done = tailtrue("compare", EXAMPLES / "fernhill" / "job.toml", "--set", "name=x")
    assert done.returncode == 2
    assert "no given fact has this name" in done.stderr
