"""The order of steps is proved for the job at hand: a hole in it is a refusal to print."""

import shutil
from pathlib import Path

import pytest

from shops import EXAMPLES
from tailtrue.advise import advise, make_procedure
from tailtrue.errors import KnowledgeInvalid, report
from tailtrue.places import knowledge_folder
from tailtrue.plan import make_plan, walk
from tailtrue.store.load import load_knowledge

JOB = EXAMPLES / "fernhill" / "job.toml"


def changed(tmp_path: Path, file: str, old: str, new: str) -> Path:
    folder = tmp_path / "knowledge"
    shutil.copytree(knowledge_folder(), folder)
    path = folder / file
    text = path.read_text(encoding="utf-8")
    assert old in text
    path.write_text(text.replace(old, new), encoding="utf-8")
    return folder


def test_a_step_before_what_it_needs_is_refused(tmp_path: Path) -> None:
    folder = changed(
        tmp_path, "routes/make-and-use-bar.toml", '"mark-seats", "degrease", "dry-fit", "dry-fit-three"',
        '"mark-seats", "dry-fit", "degrease", "dry-fit-three"',
    )  # fmt: skip
    with pytest.raises(KnowledgeInvalid) as refused:
        make_procedure(JOB, load_knowledge(folder))
    said = report(refused.value)
    assert "dry-fit" in said
    assert "needs 'joint-clean'" in said
    assert "made only by: degrease" in said


def test_a_route_without_its_end_is_refused(tmp_path: Path) -> None:
    folder = changed(tmp_path, "routes/make-and-use-bar.toml", '"collars-fixed", ', '"collars-fixed", "lathe-sold", ')
    with pytest.raises(KnowledgeInvalid) as refused:
        make_procedure(JOB, load_knowledge(folder))
    assert "ends without 'lathe-sold'" in report(refused.value)


def test_what_was_ended_is_gone(tmp_path: Path) -> None:
    folder = changed(tmp_path, "steps/cure.md", 'makes = ["collars-fixed"]', 'makes = ["collars-fixed"]\nends = ["bonded"]')
    make_procedure(JOB, load_knowledge(folder))
    folder = changed(
        tmp_path / "b",
        "steps/mark-seats.md",
        'makes = ["seats-marked"]',
        'makes = ["seats-marked"]\nends = ["collar-done:collar 1", "seats-marked"]',
    )
    path = folder / "steps" / "degrease.md"
    path.write_text(
        path.read_text(encoding="utf-8").replace(
            'needs = ["seats-marked"]', 'needs = ["seats-marked", "collar-done:collar 1"]'
        ),
        encoding="utf-8",
    )
    with pytest.raises(KnowledgeInvalid) as refused:
        make_procedure(JOB, load_knowledge(folder))
    assert "needs 'collar-done:collar 1'" in report(refused.value)


def test_a_phase_for_each_collar_is_walked_for_each() -> None:
    judged = advise(JOB)
    plan = make_plan(judged.case, judged.case.knowledge.routes["make-and-use-bar"])
    bored = [each for step, each in walk(plan) if step.file.id == "bore-rough"]
    assert bored == ["collar 1", "collar 2"]
    assert "hold-bar-steady" not in {step.file.id for step, _ in walk(plan)}


def test_a_step_to_go_on_at_that_the_other_sheet_lacks_is_refused(tmp_path: Path) -> None:
    folder = changed(tmp_path, "steps/go-back.md", 'at = ["gauge-bore", "gauge-kept-bore"]', 'at = ["sweep-quill"]')
    with pytest.raises(KnowledgeInvalid) as refused:
        make_procedure(EXAMPLES / "fernhill" / "rework.toml", load_knowledge(folder))
    said = report(refused.value)
    assert "go-back" in said
    assert "has no step to go on at: sweep-quill" in said
