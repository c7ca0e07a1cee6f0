"""What is wrong in the texts of the standing procedure is found when they are loaded."""

import shutil
from pathlib import Path

import pytest

from tailtrue.errors import KnowledgeInvalid, report
from tailtrue.places import knowledge_folder
from tailtrue.store.load import load_knowledge

BROKEN = [
    ("lines.toml", "Switch off. Isolate.", "Switch off for 3 turns.", "a number is typed into a sentence"),
    ("lines.toml", "Switch off. Isolate.", "Carefully switch off.", "tells nobody what to do"),
    ("lines.toml", "Switch off. Isolate.", "Switch " + "it " * 20 + "off.", "has more than 20 words"),
    ("lines.toml", "{{ lathe.slowest }}", "{{ lathe.slowset }}", "no fact is named 'lathe.slowset'"),
    ("lines.toml", 'part = "waste"', 'part = "rubbish"', "should be 'first'"),
    ("lines.toml", 'part = "after"', 'part = "before"', "keep 12 at most"),
    ("lines.toml", '"nfpa-660"', '"hearsay"', "source 'hearsay' is not in sources.toml"),
    ("lines.toml", 'id = "after-off"', 'id = "after-tool"', "two entries have this id"),
    ("lines.toml", "lathe.spindle_nose is threaded", "lathe.spindle_nose is screwed", "'screwed' is none"),
    ("limits.toml", 'beyond = "A thin', 'beyonds = "A thin', "a field named 'beyond' exists"),
    ("limits.toml", 'back = "Do not skim. Make new collars."', 'back = ""', "at least 1 character"),
    ("machine.toml", 'machine = "turning"', 'machine = "running"', "should be 'isolated'"),
    ("emergency.toml", 'seen = "Heavy bleeding"', 'seen = "Bleeding"', "the sheet's table has no such line"),
    ("page.toml", 'route = "use-bar"', 'route = "use-bars"', "has no [[paper]] with its title"),
    ("lines.toml", 'activities = ["free-end"]', 'activities = ["free-ends"]', "belongs on no paper"),
    ("page.toml", 'name = "job.author"', 'name = "job.writer"', "no fact is named 'job.writer'"),
    ("page.toml", 'high = ["What happened"', 'high = ["What was it"', "is no place of the form 'incident'"),
    ("page.toml", "roster_rows = 20", "roster_rows = 9", "greater than or equal to 15"),
    ("page.toml", 'source = "puwer-1998"', 'source = "hearsay"', "is not in sources.toml"),
]  # fmt: skip


@pytest.mark.parametrize(("file", "old", "new", "says"), BROKEN, ids=[f"{row[0]}: {row[3]}" for row in BROKEN])
def test_a_fault_is_reported_with_its_file(tmp_path: Path, file: str, old: str, new: str, says: str) -> None:
    folder = tmp_path / "knowledge"
    shutil.copytree(knowledge_folder(), folder)
    path = folder / "sop" / file
    text = path.read_text(encoding="utf-8")
    assert old in text
    path.write_text(text.replace(old, new), encoding="utf-8")
    with pytest.raises(KnowledgeInvalid) as refused:
        load_knowledge(folder)
    said = report(refused.value)
    assert says in said
    assert "knowledge/sop/" in said
