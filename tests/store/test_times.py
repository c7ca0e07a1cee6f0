"""Every step has a time, of a row that is there and of facts that are times; a fault is told when the knowledge is loaded."""

import shutil
from pathlib import Path

import pytest

from tailtrue.errors import KnowledgeInvalid, report
from tailtrue.places import knowledge_folder
from tailtrue.store.load import load_knowledge

BROKEN = [
    ("steps/face-bar.md", 'time = { handling = "face", cutting = "time.bar_facing" }', "", "the step has no time"),
    ("steps/face-bar.md", 'handling = "face"', 'handling = "fase"', "is no row of knowledge/time/handling.csv"),
    ("steps/face-bar.md", '"time.bar_facing"', '"time.bar_fasing"', "is no fact that is a time"),
    ("steps/face-bar.md", '"time.bar_facing"', '"bar.facing.speed"', "is no fact that is a time"),
    ("steps/cure.md", '"joint.cure_wait"', '"joint.torque"', "is no fact that is a time"),
    ("steps/cure.md", "waiting =", "cutting =", "nothing is cut while the spindle stands"),
    ("time/handling.csv", "grip,3,8", "grip,9,8", "the least minutes are not above nothing and up to the most"),
    ("time/handling.csv", "grip,3,8", "grip,0,8", "the least minutes are not above nothing and up to the most"),
    ("time/handling.csv", "spacer,1,2", "grip,1,2", "stands in the table more than once"),
    ("time/handling.csv", "spacer,1,2", "sleep,1,2", "no step takes this time"),
    ("page.toml", "{{ time.learner_factor }}", "{{ time.lerner }}", "no fact is named 'time.lerner'"),
]


@pytest.mark.parametrize(("file", "old", "new", "says"), BROKEN)
def test_a_fault_of_the_times_is_reported(tmp_path: Path, file: str, old: str, new: str, says: str) -> None:
    folder = tmp_path / "knowledge"
    shutil.copytree(knowledge_folder(), folder)
    text = (folder / file).read_text(encoding="utf-8")
    assert old in text
    (folder / file).write_text(text.replace(old, new, 1), encoding="utf-8")
    with pytest.raises(KnowledgeInvalid) as wrong:
        load_knowledge(folder)
    assert says in report(wrong.value)
