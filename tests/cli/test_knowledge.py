"""The check of the rule base as its author meets it: every room is read, every fault named with its file and line."""

import shutil
from pathlib import Path

import pytest
from typer.testing import CliRunner

from tailtrue import places
from tailtrue.cli import app
from tailtrue.places import knowledge_folder

BROKEN = [
    # file, what stands there, what is written instead, the line that must be told, what must be said of it
    ("alignment/log_rules.toml", "run = 8", "rum = 8", "rum = 8", "unknown key 'rum'"),
    ("alignment/log_rules.toml", 'often = "30 days"', 'often = "30 mm"', "30 mm", "is a length"),
    ("alignment/log_rules.toml", 'sources = ["common-practice"]\n\n# A', 'sources = ["hearsay"]\n\n# A', "hearsay", "'hearsay'"),
    ("alignment/log_agreement.toml", "[move]", "[moves]", "[moves]", "is read by nothing"),
    ("alignment/log_agreement.toml", 'value = "0.005 mm"', 'value = "0.005 s"', "", "give a quantity in mm"),
    ("alignment/log_record.toml", 'source = "common-practice"', 'source = "hearsay"', "hearsay", "'hearsay'"),
    ("alignment/log_record.toml", 'name = "record.operator"', 'name = "record.worker"', "", "has no place in a record"),
    ("alignment/log_record.toml", 'name = "record.operator"', 'name = "lathe.operator"', "", "write record.key"),
    ("alignment/log_record.toml", 'name = "record.operator"', 'name = "record.lathe"', "", "has this name already"),
    ("diagnosis/causes.toml", "{{ it.size }}", "{{ it.limit }}", "", "nothing fills 'it.limit' here"),
    ("diagnosis/causes.toml", 'id = "headstock"', 'id = "bed-twist"', "", "another cause has this id"),
    ("diagnosis/causes.toml", 'usual = "0.012 mm"', 'usual = "0.012 kg"', "", "bed-twist: 0.012 kg over 300 mm"),
    ("diagnosis/causes.toml", 'sources = ["common-practice"]', 'sources = ["hearsay"]', "hearsay", "'hearsay'"),
    ("diagnosis/tests.toml", 'with = "between_centres"', 'with = "between_ends"', "between_ends", "no test has this id"),
    ("diagnosis/tests.toml", 'id = "level"', 'id = "spirit_level"', "", "level: no test has this id"),
    ("diagnosis/keys.toml", 'most = "500 mm"', 'most = "500 N"', "", "500 N"),
    ("diagnosis/keys.toml", 'name = "tail"\n', 'name = "head"\n', "", "another key has this name"),
    ("diagnosis/weighing.toml", 'value = "300 mm"', 'value = "300 s"', "", "give a quantity in mm"),
    ("diagnosis/weighing.toml", "[closure]", "[closing]", "[closing]", "is read by nothing"),
    ("diagnosis/weighing.toml", "[closure]", "[closing]", "", "closure: is read and not there"),
    ("diagnosis/says.toml", "[cannot_tell]", "[cannot_say]", "[cannot_say]", "is read by nothing"),
    ("diagnosis/says.toml", "{{ the.share }}", "{{ the.weight }}", "", "use the.cause, the.share"),
    ("diagnosis/says.toml", "{{ the.rivals }}", "{{ why the.rivals }}", "", "nothing fills 'the.rivals' here"),
    ("diagnosis/signatures.csv", "tool-wear,between", "tool-ware,between", "tool-ware", "no cause has this id"),
    ("diagnosis/signatures.csv", "; cut_order_reversed;", "; cut_order;", "; cut_order;", "no test has this id"),
    ("diagnosis/doubts.csv", ",memory,", ",hearsay,", ",hearsay,", "'hearsay'"),
    ("alignment/accuracy.csv", ",precision,", ",exact,", ",exact,", "no limit of a class has this id"),
    ("alignment/log_says.toml", "[drift]", "[wander]", "[wander]", "is read by nothing"),
    ("alignment/log_says.toml", "{{ the.change }}", "{{ the.news }}", "", "nothing fills 'the.news' here"),
    ("alignment/log_says.toml", "{{ the.change }}", "{{ the change }}", "", "a brace that is not a place"),
    ("record/fields.csv", "lathe,lathe.name", "lathe,lathe.nmae", "lathe.nmae", "no fact is named 'lathe.nmae'"),
    ("record/fields.csv", "identity,span,", "identity,spam,", "identity,spam", "a record says no such thing"),
    ("record/fields.csv", "lathe.name,known", "lathe.name,knwon", "knwon", "is no kind of a place"),
    ("record/fields.csv", "lathe,lathe.name,known", "lathe,,known", "lathe,,known", "is known, but from no fact"),
    ("record/fields.csv", "skim,", "skin,", "skin,", "is no part of the paper"),
    ("visit/set_up.csv", "bar_orientation,", "bar_orientaton,", "bar_orientaton", "a record says no such thing"),
    ("visit/set_up.csv", "bar_orientation,common-practice", "bar_orientation,hearsay", "hearsay", "'hearsay'"),
    ("visit/facts.toml", 'sources = ["common-practice"]', 'sources = ["hearsay"]', "", "'hearsay'"),
    ("setover/facts.toml", 'id = "setover.large"', 'id = "bar.length"', "", "a fact has this name already"),
    ("setover/says.toml", "{{ setover.amount }}", "{{ setover.amuont }}", "", "no fact is named 'setover.amuont'"),
    ("tag/says.toml", 'id = "out-of-limits"', 'id = "in-limits"', "", "two lines that are said have this id"),
    ("explain/says.toml", "{{ truing.span }}", "{{ truing.spam }}", "", "no fact is named 'truing.spam'"),
]  # fmt: skip


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    copy = tmp_path / "knowledge"
    shutil.copytree(knowledge_folder(), copy)
    monkeypatch.setattr(places, "_folder", lambda name: tmp_path / name)
    return copy


@pytest.mark.parametrize(("file", "old", "new", "line", "says"), BROKEN, ids=[f"{one[0]}: {one[4]}" for one in BROKEN])
def test_a_fault_is_told_with_its_file_and_line(folder: Path, file: str, old: str, new: str, line: str, says: str) -> None:
    path = folder / file
    text = path.read_text(encoding="utf-8")
    assert old in text
    broken = text.replace(old, new)
    path.write_text(broken, encoding="utf-8")
    done = CliRunner().invoke(app, ["knowledge", "check"])
    assert done.exit_code == 3
    assert says in done.stderr
    numbers = [number for number, one in enumerate(broken.splitlines(), 1) if line and line in one]
    assert f"knowledge/{file}{f':{numbers[0]}: ' if line else ''}" in done.stderr


def test_faults_of_two_rooms_are_told_together(folder: Path) -> None:
    for name, old, new in (("alignment/log_rules", "run = 8", "rum = 8"), ("diagnosis/says", "[order]", "[ordre]")):
        path = folder / f"{name}.toml"
        path.write_text(path.read_text(encoding="utf-8").replace(old, new), encoding="utf-8")
    done = CliRunner().invoke(app, ["knowledge", "check"])
    assert "unknown key 'rum'" in done.stderr
    assert "ordre: is read by nothing" in done.stderr
