"""The knowledge of causes and tests hangs together: nothing dead, nothing unsourced, no number typed into a sentence."""

import re
import shutil
import tomllib
from pathlib import Path

import pytest

from tailtrue.calc import causes as geometry
from tailtrue.diagnosis import model
from tailtrue.diagnosis.knowing import known, load_known
from tailtrue.errors import KnowledgeInvalid
from tailtrue.places import knowledge_folder
from tailtrue.tables import read_tables, source_keys

FOLDER = knowledge_folder() / "diagnosis"
KNOWN = known()
TABLES = read_tables(knowledge_folder())
ROOM = Path(__file__).parents[2] / "engine" / "tailtrue" / "diagnosis"
ENGINE = "".join(path.read_text(encoding="utf-8") for path in ROOM.glob("*.py"))


def entries() -> list[tuple[str, dict[str, object]]]:
    found: list[tuple[str, dict[str, object]]] = []
    for path in sorted(FOLDER.glob("*.toml")):
        for name, rows in tomllib.loads(path.read_text(encoding="utf-8")).items():
            listed = rows if isinstance(rows, list) else [rows]
            found += ((f"{path.name} {row.get('id', row.get('name', name))}", row) for row in listed)
    return found


@pytest.mark.parametrize(("where", "row"), entries(), ids=lambda one: one if isinstance(one, str) else "")
def test_every_entry_names_a_source_that_exists(where: str, row: dict[str, object]) -> None:
    with (knowledge_folder() / "sources.toml").open("rb") as opened:
        sources = tomllib.load(opened)
    written = row.get("sources") or [row["source"]]
    assert isinstance(written, list)
    assert written, where
    assert {key for one in written for key in source_keys(str(one))} <= set(sources), where


@pytest.mark.parametrize(("where", "row"), entries(), ids=lambda one: one if isinstance(one, str) else "")
def test_no_number_is_typed_into_a_sentence(where: str, row: dict[str, object]) -> None:
    texts = [row.get(key, "") for key in ("text", "plus", "minus", "explains", "action", "shows", "cannot", "caution")]
    for text in texts:
        assert not re.search(r"[0-9]", str(text).replace("ISO 1708", "")), where


def test_every_cause_has_a_name_in_the_formulas() -> None:
    names = {value for key, value in vars(geometry).items() if key.isupper()}
    for cause in KNOWN.causes.values():
        assert cause.unknown in names or cause.id in ENGINE, cause.id
    assert len({one.unknown for one in KNOWN.causes.values()}) == len(KNOWN.causes)


def test_signatures_speak_of_causes_and_tests_that_exist() -> None:
    for row in TABLES["diagnosis/signatures"]:
        assert row.text("component") in KNOWN.causes
        assert set(row.listed("situation")) <= set(KNOWN.tests)


def test_a_cause_shows_in_a_test_in_one_way() -> None:
    said = [(row.text("component"), kind) for row in TABLES["diagnosis/signatures"] for kind in row.listed("situation")]
    assert len(said) == len(set(said))


def test_every_test_is_read_and_modelled() -> None:
    tables = {name.split(".")[0] for name in KNOWN.keys.facts}
    assert tables == set(KNOWN.tests)
    assert set(model.CUT) < set(KNOWN.tests)
    assert all(not one.with_ or one.with_ in KNOWN.tests for one in KNOWN.tests.values())


def test_every_key_of_a_file_is_used() -> None:
    keys = {name.split(".")[1] for name in KNOWN.keys.facts}
    ends = {"tool_side_head", "tool_side_tail", "far_side_head", "far_side_tail"}
    assert not [key for key in keys - ends if f'"{key}"' not in ENGINE]


def test_everything_that_is_said_is_said_somewhere() -> None:
    fixed = {"good", "bad", "close"} | {f"tailstock_{one}" for one in ("good", "bad", "close")} | {"nothing", "unexplained"}
    assert not [name for name in set(KNOWN.says) - fixed if f'"{name}"' not in ENGINE]


def test_every_figure_is_used() -> None:
    over = {"over_metric", "over_inch"}
    assert not [name for name in set(KNOWN.figures) - over if f'"{name}"' not in ENGINE]


def test_level_comes_before_headstock_before_tailstock() -> None:
    order = {one.id: one.order for one in KNOWN.causes.values()}
    assert order["clamping"] < order["bed-twist"] < order["headstock"] < order["tailstock"]


def test_the_limits_that_lie_on_one_side_begin_at_nought() -> None:
    lower = {row.text("name"): row.number("lower") for row in TABLES["diagnosis/limits"]}
    assert {name for name, one in lower.items() if one == 0} == {"headstock", "height", "headstock-pitch"}


def test_a_usual_slope_is_its_size_over_its_length() -> None:
    assert KNOWN.causes["headstock"].usual_size == pytest.approx(0.015 / 300)
    assert KNOWN.causes["tailstock"].usual_size == pytest.approx(0.05)


def test_broken_knowledge_is_told_with_its_file(tmp_path: Path) -> None:
    shutil.copytree(FOLDER, tmp_path / "diagnosis")
    path = tmp_path / "diagnosis" / "causes.toml"
    path.write_text(path.read_text(encoding="utf-8").replace("chance = 0.3", "chance = 3"), encoding="utf-8")
    with pytest.raises(KnowledgeInvalid) as found:
        load_known(tmp_path)
    (problem,) = found.value.problems
    assert problem.where.startswith("knowledge/diagnosis/causes.toml:")
    assert "less than 1" in problem.do
