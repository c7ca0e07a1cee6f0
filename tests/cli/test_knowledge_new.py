"""A new entry: a skeleton that the check refuses until it is filled in."""

import re
import shutil
from pathlib import Path

import pytest
from typer.testing import CliRunner

from tailtrue.cli import app
from tailtrue.places import knowledge_folder

NEW = {
    "rule": "a-new-stop",
    "caution": "a-new-hazard",
    "step": "a-new-step",
    "decision": "new.choice",
    "material": "new-brass",
}


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    copy = tmp_path / "knowledge"
    shutil.copytree(knowledge_folder(), copy)
    monkeypatch.setattr("tailtrue.places.knowledge_folder", lambda: copy)
    return copy


@pytest.mark.parametrize("kind", NEW)
def test_a_skeleton_is_refused_with_file_and_line_until_it_is_filled_in(kind: str, folder: Path) -> None:
    made = CliRunner().invoke(app, ["knowledge", "new", kind, NEW[kind]])
    assert made.exit_code == 0, made.output
    path = Path(made.stdout.splitlines()[0])
    assert path.is_relative_to(folder)
    checked = CliRunner().invoke(app, ["knowledge", "check"])
    assert checked.exit_code == 3
    place = f"knowledge/{path.relative_to(folder).as_posix()}"
    assert re.search(rf"{re.escape(place)}:\d+: .*is still to be filled in", checked.stderr)


@pytest.mark.parametrize("kind", NEW)
def test_a_skeleton_never_loads_even_unasked(kind: str, folder: Path) -> None:
    from tailtrue.errors import KnowledgeInvalid
    from tailtrue.store.load import load_knowledge

    CliRunner().invoke(app, ["knowledge", "new", kind, NEW[kind]])
    with pytest.raises(KnowledgeInvalid):
        load_knowledge(folder)


@pytest.mark.parametrize(
    ("kind", "name", "wrong"),
    [
        ("rule", "no-way-to-fix-the-collars", "has this id already"),
        ("step", "bond", "has this id already"),
        ("decision", "bore.gauge", "has this id already"),
        ("material", "steel-low-carbon-cold-drawn", "has this id already"),
        ("rule", "Not An Id", "is not an id"),
        ("decision", "gauge", "is not an id"),
        ("recipe", "soup", "is no kind of entry"),
    ],
)
def test_what_cannot_be_made_is_refused(kind: str, name: str, wrong: str, folder: Path) -> None:
    before = sorted(folder.rglob("*"))
    made = CliRunner().invoke(app, ["knowledge", "new", kind, name])
    assert made.exit_code == 2
    assert wrong in made.stderr
    assert sorted(folder.rglob("*")) == before


def test_a_file_that_is_there_is_not_overwritten(tmp_path: Path) -> None:
    taken = tmp_path / "mine.toml"
    taken.write_text("mine")
    assert CliRunner().invoke(app, ["knowledge", "new", "rule", "a-new-stop", "--out", str(taken)]).exit_code == 2
    assert taken.read_text() == "mine"


def test_every_column_of_the_table_of_materials_is_in_its_skeleton() -> None:
    from tailtrue.places import templates_folder

    row = (templates_folder() / "skeletons" / "material.csv").read_text(encoding="utf-8").splitlines()
    table = (knowledge_folder() / "materials" / "materials.csv").read_text(encoding="utf-8").splitlines()
    assert row[0] == table[0]
    assert row[0].count(",") == row[1].count(",")
