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


@pytest.mark.usefixtures("folder")
@pytest.mark.parametrize("kind", NEW)
def test_the_same_entry_made_twice_says_where_it_is_and_what_to_do(kind: str) -> None:
    path = Path(CliRunner().invoke(app, ["knowledge", "new", kind, NEW[kind]]).stdout.splitlines()[0])
    path.write_text(path.read_text() + "# begun\n")
    begun = path.read_text()
    again = CliRunner().invoke(app, ["knowledge", "new", kind, NEW[kind]])
    assert again.exit_code == 2
    assert isinstance(again.exception, SystemExit)
    assert re.search(
        rf"^{re.escape(str(path))}:\d+: {re.escape(NEW[kind])}: .*already; nothing was written$", again.stderr, re.M
    )
    assert "choose another" in again.stderr
    assert path.read_text() == begun


@pytest.mark.usefixtures("folder")
@pytest.mark.parametrize("kind", NEW)
def test_an_entry_still_to_be_filled_in_keeps_nobody_from_beginning_another(kind: str) -> None:
    made = [CliRunner().invoke(app, ["knowledge", "new", kind, name]) for name in (NEW[kind], f"{NEW[kind]}r")]
    assert [one.exit_code for one in made] == [0, 0]
    first, second = (Path(one.stdout.splitlines()[0]) for one in made)
    assert first != second
    assert NEW[kind] in first.read_text()
    assert f"{NEW[kind]}r" in second.read_text()


def test_no_id_of_the_knowledge_can_be_taken_twice(folder: Path) -> None:
    from tailtrue.errors import UsageError
    from tailtrue.places import templates_folder
    from tailtrue.store.load import load_knowledge
    from tailtrue.store.skeletons import skeleton

    known = load_knowledge(folder)
    rules = [one.file.id for one in (*known.cautions, *known.stops, *known.notes, *known.remarks)]
    materials = [row.text("material") for row in known.tables["materials/materials"].rows]
    taken = {"rule": rules, "step": known.steps, "decision": known.catalogue, "material": materials}
    for kind, names in taken.items():
        for name in names:
            with pytest.raises(UsageError, match="already"):
                skeleton(kind, name, folder, templates_folder())


def test_entries_can_be_begun_in_a_folder_of_ones_own(tmp_path: Path) -> None:
    for name in ("a-new-stop", "another-stop"):
        made = CliRunner().invoke(app, ["knowledge", "new", "rule", name, "--out", str(tmp_path)])
        assert made.exit_code == 0, made.output
    assert sorted(one.name for one in tmp_path.iterdir()) == ["a-new-stop.toml", "another-stop.toml"]
    assert CliRunner().invoke(app, ["knowledge", "new", "rule", "a-new-stop", "--out", str(tmp_path)]).exit_code == 2


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
