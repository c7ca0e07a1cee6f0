"""What does not fit together in the knowledge of the safety review is found when it is loaded."""

import shutil
from pathlib import Path

import pytest

from tailtrue.errors import KnowledgeInvalid, report
from tailtrue.places import knowledge_folder
from tailtrue.store.load import load_knowledge

BROKEN = [
    # file, what stands there, what is written instead, what the report must say
    ("safety/matrix.toml", "high = 16", "high = 15", "the score 16 lies in no class or in two"),
    ("safety/matrix.toml", "low = 10", "low = 9", "the score 9 lies in no class or in two"),
    ("safety/matrix.toml", "instruct = 1", "instruct = 2", "lowers by more than one step"),
    ("safety/matrix.toml", "protect = 1\n", "", "does not name each kind of control"),
    ("safety/matrix.toml", '"mil-std-882e"', '"hearsay"', "source 'hearsay' is not in sources.toml"),
    ("safety/activities.toml", '"chuck-key", ', "", "no part of the safety review holds this activity"),
    ("safety/activities.toml", '["skim", "power-feed"]', '["skim", "bore"]', "stands in E and in I"),
    ("safety/chemicals.toml", 'id = "grease"', 'id = "tallow"', "is not in needs.toml"),
    ("safety/wear.toml", '["isolated"]', '["asleep"]', "should be 'isolated', 'stopped' or 'turning'"),
    ("safety/checks.toml", "killer = true", "kiler = true", "a field named 'killer' exists"),
    ("safety/checks.toml", "{{ lathe.slowest }}", "{{ lathe.slowset }}", "no fact is named 'lathe.slowset'"),
    ("safety/eliminations.toml", "crib.dog_kind is safety", "crib.dog_kind is safe", "'safe' is none"),
    ("safety/lines.toml", '"hse-indg73"', '"hearsay"', "source 'hearsay' is not in sources.toml"),
    ("safety/signatures.toml", 'part = "accepts"', 'part = "allows"', "should be 'accepts' or 'sign'"),
    ("steps/measure-bar.md", 'machine = "stopped"', 'machine = "turning"', "is done isolated or stopped, this step is turning"),
    ("steps/move-tailstock.md", 'machine = "isolated"', 'machine = "stopped"', "is done isolated, this step is stopped"),
    ("steps/hold-blank-jaws.md", 'machine = "isolated"', 'machine = "turning"', "this step is turning"),
    ("steps/check-centre.md", 'machine = "isolated"', 'machine = "turning"', "this step is turning"),
    ("safety/states.csv", "deburr,isolated stopped,", "deburr,isolated asleep,", "is no list of states of the machine"),
    ("safety/states.csv", "deburr,isolated", "debur,isolated", "nothing says in which state this may be done"),
    ("safety/states.csv", "chuck-key,isolated", "bond,isolated", "stands in two rows"),
    ("safety/not_met.toml", 'row = "GR-07"', 'row = "GR-08"', "is said not to be met, and a caution answers it"),
    ("safety/not_met.toml", 'row = "GR-07"', 'row = "GR-09"', "is no row of the list of hazards"),
    ("cautions/grinding.toml", 'row = "GR-02"', 'row = "GR-01"', "no caution answers this hazard"),
    ("safety/hazards.csv", "MC-01,", "MC-99,", "is not in the list of hazards"),
    ("safety/hazards.csv", "MC-02,", "MC-01,", "is named before"),
    ("safety/hazards.csv", "; gear-cover-open,", "; lead-screw-bare,", "names other cautions than those that answer this row"),
    ("cautions/grinding.toml", 'expect = "unknown"', 'expect = "silent"', "has no example that is unknown"),
    ("stops/safety.toml", 'expect = "unknown"', 'expect = "silent"', "has no example that is unknown"),
    ("cautions/start.toml", 'when = ["lathe.chuck_guard is interlocked"]', 'when = ["lathe.guard is yes"]', "lathe.guard"),
    ("cautions/tailstock.toml", 'held_at = "verify-tailstock"', 'held_at = "re-clamp"', "is no step with a hold"),
]  # fmt: skip


@pytest.mark.parametrize(("file", "old", "new", "says"), BROKEN, ids=[f"{row[0]}: {row[3]}" for row in BROKEN])
def test_a_fault_is_reported_with_its_file(tmp_path: Path, file: str, old: str, new: str, says: str) -> None:
    folder = tmp_path / "knowledge"
    shutil.copytree(knowledge_folder(), folder)
    path = folder / file
    text = path.read_text(encoding="utf-8")
    assert old in text
    path.write_text(text.replace(old, new), encoding="utf-8")
    with pytest.raises(KnowledgeInvalid) as refused:
        load_knowledge(folder)
    assert says in report(refused.value)
