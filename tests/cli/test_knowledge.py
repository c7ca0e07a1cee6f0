"""The check of the rule base as its author meets it: every room is read, every fault named with its file and line."""

import json
import shutil
from collections.abc import Sequence
from pathlib import Path

import pytest
from typer.testing import CliRunner

from planted import Planted, each, is_told, plant
from tailtrue import places
from tailtrue.cli import app
from tailtrue.errors import Problem
from tailtrue.places import knowledge_folder

# A fault of reading ends the reading of its room, so the faults of a group are those that are told in one check.
GROUPS: list[list[Planted]] = [
    # file, what stands there, what is written instead, the place that must be told, what must be said of it
    [
        ("alignment/log_rules.toml", "run = 8", "rum = 8", "alignment/log_rules.toml: rum = 8", "chart.rum: unknown key 'rum'"),
        ("alignment/log_rules.toml", 'often = "30 days"', 'often = "30 mm"', "alignment/log_rules.toml: 30 mm", "recheck.often: does not fit: value error, mm is a length, and a time is needed; use s, min, h or day"),
        ("diagnosis/causes.toml", "{{ it.size }}", "{{ it.limit }}", "diagnosis/causes.toml: [[cause]]", "bed-twist: nothing fills 'it.limit' here: use it.size, it.doubt, it.over"),
        ("diagnosis/causes.toml", 'usual = "0.012 mm"', 'usual = "0.012 kg"', "diagnosis/causes.toml: [[cause]]", "bed-twist: 0.012 kg over 300 mm: is no usual size"),
        ("diagnosis/causes.toml", 'sources = ["common-practice"]', 'sources = ["hearsay"]', "diagnosis/causes.toml: hearsay", "cause.0.sources: source 'hearsay' is not in sources.toml"),
        ("diagnosis/tests.toml", 'with = "between_centres"', 'with = "between_ends"', "diagnosis/tests.toml: between_ends", "cut_order_reversed: between_ends: no test has this id"),
        ("diagnosis/tests.toml", 'id = "level"', 'id = "spirit_level"', 'diagnosis/keys.toml: [[key]]\nname = "stations"\nof = ["level"]', "stations: level: no test has this id"),
        ("diagnosis/tests.toml", 'id = "level"', 'id = "spirit_level"', 'diagnosis/tests.toml: [[test]]\nid = "spirit_level"', "spirit_level: no key of knowledge/diagnosis/keys.toml belongs to it"),
        ("diagnosis/weighing.toml", "[closure]", "[closing]", "diagnosis/weighing.toml: [closing]", "closing: is read by nothing"),
        ("diagnosis/weighing.toml", "[closure]", "[closing]", "diagnosis/weighing.toml", "closure: is read and not there"),
        ("diagnosis/says.toml", "[cannot_tell]", "[cannot_say]", "diagnosis/says.toml: [cannot_say]", "cannot_say: is read by nothing"),
        ("diagnosis/says.toml", "{{ the.share }}", "{{ the.weight }}", "diagnosis/says.toml: [named]", "named: nothing fills 'the.weight' here: use the.cause, the.share"),
        ("diagnosis/signatures.csv", "tool-wear,between", "tool-ware,between", "diagnosis/signatures.csv: tool-ware", "tool-ware: no cause has this id"),
        ("diagnosis/signatures.csv", "; cut_order_reversed;", "; cut_order;", "diagnosis/signatures.csv: ; cut_order;", "cut_order: no test has this id"),
        ("alignment/accuracy.csv", ",precision,", ",exact,", "alignment/accuracy.csv: ,exact,", "exact: no limit of a class has this id"),
    ],
    [
        ("alignment/log_rules.toml", 'sources = ["common-practice"]\n\n# A', 'sources = ["hearsay"]\n\n# A', "alignment/log_rules.toml: hearsay", "chart.sources: source 'hearsay' is not in sources.toml"),
        ("alignment/log_record.toml", 'source = "common-practice"', 'source = "hearsay"', "alignment/log_record.toml: hearsay", "fact.0.source: source 'hearsay' is not in sources.toml"),
        ("diagnosis/causes.toml", 'id = "headstock"', 'id = "bed-twist"', 'diagnosis/causes.toml: [[cause]]\nid = "bed-twist"\nunknown = "headstock yaw"', "bed-twist: another cause has this id"),
        ("diagnosis/keys.toml", 'most = "500 mm"', 'most = "500 N"', "diagnosis/keys.toml: [[key]]", "between_centres.head: 500 N: N is a force, and a length is needed; use mm, in or thou"),
        ("diagnosis/keys.toml", 'name = "tail"\n', 'name = "head"  # again\n', 'diagnosis/keys.toml: [[key]]\nname = "head"  # again', "between_centres.head: another key has this name"),
        ("diagnosis/weighing.toml", 'value = "300 mm"', 'value = "300 s"', "diagnosis/weighing.toml: [over_metric]", "300 s: s is a time, and a length is needed; use mm, in or thou: give a quantity in mm"),
        ("alignment/log_says.toml", "[drift]", "[wander]", "alignment/log_says.toml: [wander]", "wander: is read by nothing"),
        ("alignment/log_says.toml", "{{ the.change }}", "{{ the.news }}", "alignment/log_says.toml: [since_change]", "since_change: nothing fills 'the.news' here: use the.change"),
    ],
    [
        ("alignment/log_agreement.toml", "[move]", "[moves]", "alignment/log_agreement.toml: [moves]", "moves: is read by nothing"),
        ("diagnosis/says.toml", "{{ the.rivals }}", "{{ why the.rivals }}", "diagnosis/says.toml: [cannot_tell]", "cannot_tell: nothing fills 'the.rivals' here: use the.rivals"),
    ],
    [
        ("alignment/log_agreement.toml", 'value = "0.005 mm"', 'value = "0.005 s"', "alignment/log_agreement.toml: [move]", "0.005 s: s is a time, and a length is needed; use mm, in or thou: give a quantity in mm"),
    ],
    [
        ("alignment/log_record.toml", 'name = "record.operator"', 'name = "record.worker"', 'alignment/log_record.toml: [[fact]]\nname = "record.worker"', "record.worker: has no place in a record: mend the name or its unit"),
        ("alignment/log_record.toml", 'name = "record.bar"', 'name = "lathe.bar"', 'alignment/log_record.toml: [[fact]]\nname = "lathe.bar"', "lathe.bar: is no name of a given fact: write record.key"),
        ("alignment/log_record.toml", 'name = "record.state"', 'name = "record.lathe"  # again', 'alignment/log_record.toml: [[fact]]\nname = "record.lathe"  # again', "record.lathe: a fact has this name already"),
    ],
    [
        ("diagnosis/doubts.csv", ",memory,", ",hearsay,", "diagnosis/doubts.csv: ,hearsay,", "source 'hearsay' is not in sources.toml"),
        ("visit/set_up.csv", "bar_orientation,common-practice", "bar_orientation,hearsay", "visit/set_up.csv: hearsay", "source 'hearsay' is not in sources.toml"),
        ("visit/facts.toml", 'sources = ["common-practice"]', 'sources = ["hearsay"]', 'visit/facts.toml: id = "visit.head_readings"', "visit.head_readings: source 'hearsay' is not in sources.toml"),
        ("setover/says.toml", "{{ setover.amount }}", "{{ setover.amuont }}", 'setover/says.toml: id = "set-over"', "set-over: no fact is named 'setover.amuont'"),
        ("tag/says.toml", 'id = "out-of-limits"', 'id = "in-limits"  # again', 'tag/says.toml: id = "in-limits"  # again', "in-limits: two lines that are said have this id"),
        ("explain/says.toml", "{{ truing.span }}", "{{ truing.spam }}", 'explain/says.toml: id = "nothing-at-the-headstock"', "nothing-at-the-headstock: no fact is named 'truing.spam'"),
    ],
    [
        ("alignment/log_says.toml", "{{ the.change }}", "{{ the change }}", 'alignment/log_says.toml: text = "since a change ({{ the change }})"', "holds a brace that is not a place for a fact"),
    ],
    [
        ("record/fields.csv", "lathe,lathe.name", "lathe,lathe.nmae", "record/fields.csv: lathe.nmae", "designation lathe.nmae: no fact is named 'lathe.nmae'"),
        ("record/fields.csv", "identity,span,", "identity,spam,", "record/fields.csv: identity,spam", "name spam: a record says no such thing"),
        ("record/fields.csv", "truing.bar,known", "truing.bar,knwon", "record/fields.csv: truing.bar,knwon", "kind knwon: is no kind of a place: write one of known, rule, blank"),
        ("record/fields.csv", "limit,truing.limit,known", "limit,,known", "record/fields.csv: identity,limit,,known", "name limit: is known, but from no fact: name the fact as its designation"),
        ("record/fields.csv", "skim,", "skin,", "record/fields.csv: skin,", "set skin: is no part of the paper: write one of set-up, skim, measuring, visit, moves, end"),
        ("visit/set_up.csv", "bar_orientation,", "bar_orientaton,", "visit/set_up.csv: bar_orientaton", "name bar_orientaton: a record says no such thing"),
    ],
    [
        ("setover/facts.toml", 'id = "setover.large"', 'id = "bar.length"', 'setover/facts.toml: id = "bar.length"', "bar.length: a fact has this name already"),
    ],
]  # fmt: skip


def told(folder: Path) -> Sequence[Problem]:
    """What the command tells of a rule base."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(places, "_folder", lambda name: folder.parent / name)
        done = CliRunner().invoke(app, ["knowledge", "check", "--json"])
    assert done.exit_code == 3
    problems = json.loads(done.stdout)["errors"]
    return [Problem(one["where"], one["said"], one["wrong"], one["do"]) for one in problems]


@pytest.mark.parametrize(("fault", "group"), each(*GROUPS))
def test_a_fault_is_told_with_its_file_and_line(fault: Planted, group: tuple[Planted, ...]) -> None:
    is_told(told, fault, group)


def test_faults_of_two_rooms_are_told_together(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    folder = tmp_path / "knowledge"
    shutil.copytree(knowledge_folder(), folder)
    monkeypatch.setattr(places, "_folder", lambda name: tmp_path / name)
    plant(folder, "alignment/log_rules.toml", "run = 8", "rum = 8")
    lines = plant(folder, "diagnosis/says.toml", "[order]", "[ordre]").splitlines()
    done = CliRunner().invoke(app, ["knowledge", "check"])
    assert done.exit_code == 3
    assert "knowledge/alignment/log_rules.toml:5: chart.rum: unknown key 'rum'\n  take it out\n" in done.stderr
    assert f"knowledge/diagnosis/says.toml:{lines.index('[ordre]') + 1}: ordre: is read by nothing\n" in done.stderr
