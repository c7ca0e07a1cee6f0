"""The shipped examples, made as their user makes them."""

import json
from pathlib import Path
from typing import Any

import jsonschema
import pytest

from shops import EXAMPLES, cold, shop, tailtrue
from tailtrue.procedure import Procedure

DIALS = {
    "fernhill": "metric", "quarry-road": "inch", "cinder-lane": "inch", "ropewalk": "metric", "tannery-lane": "metric",
    "weir-cottage": "metric",
}  # fmt: skip
NAMES = sorted(path.parent.name for path in EXAMPLES.glob("*/job.toml"))


@pytest.fixture(scope="module", params=NAMES)
def made(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> tuple[str, Path]:
    out = tmp_path_factory.mktemp("sheets")
    done = cold("make", EXAMPLES / request.param / "job.toml", "--out", out)
    assert done.returncode == 0, done.stderr
    return request.param, out


def tree(out: Path) -> dict[str, Any]:
    return dict(json.loads((out / "procedure.json").read_text(encoding="utf-8")))


def figure(procedure: dict[str, Any], fact: str) -> dict[str, Any]:
    found = []

    def walk(node: Any) -> None:
        if isinstance(node, dict):
            if node.get("fact") == fact and "rounding" in node:
                found.append(node)
            for value in node.values():
                walk(value)
        elif isinstance(node, list):
            for value in node:
                walk(value)

    walk(procedure)
    assert found, fact
    return dict(found[0])


def test_there_are_a_metric_and_an_inch_example(made: tuple[str, Path]) -> None:
    name, out = made
    assert tree(out)["title"]["dials"] == DIALS[name]


def test_all_documents_are_there_and_nothing_else(made: tuple[str, Path]) -> None:
    names = ["card.html", "card.md", "procedure.html", "procedure.json", "procedure.md"]
    names += ["record.html", "record.md", "safety.html", "safety.md"]
    # Only a shared shop has a standing procedure unless it asks for one.
    names += [] if made[0] in ("quarry-road", "weir-cottage") else ["sop.html", "sop.md"]
    assert sorted(path.name for path in made[1].iterdir()) == names


def test_the_json_keeps_to_the_published_schema(made: tuple[str, Path]) -> None:
    schema = json.loads(tailtrue("schema").stdout)["procedure"]
    jsonschema.Draft202012Validator.check_schema(schema)
    jsonschema.validate(tree(made[1]), schema)
    with pytest.raises(jsonschema.ValidationError):
        jsonschema.validate(tree(made[1]) | {"speed": 3}, schema)
    assert Procedure.model_validate_json((made[1] / "procedure.json").read_text(encoding="utf-8"))


def test_made_twice_it_is_the_same_to_the_byte(made: tuple[str, Path], tmp_path: Path) -> None:
    name, out = made
    again = tmp_path / "again"
    assert tailtrue("make", EXAMPLES / name / "job.toml", "--out", again).returncode == 0
    for path in out.iterdir():
        assert path.read_bytes() == (again / path.name).read_bytes()


def test_what_the_sheet_must_hold(made: tuple[str, Path]) -> None:
    text = (made[1] / "procedure.html").read_text(encoding="utf-8")
    procedure = tree(made[1])
    for words in (
        procedure["title"]["machine"], procedure["title"]["number"], procedure["title"]["checksum"],
        procedure["title"]["knowledge_version"], procedure["look_up"]["larger_at_tailstock"].split(":")[1].strip(),
        "Do not start if", "Stop at once if", "Cut list", "If it goes wrong", "Sources", "<svg",
    ):  # fmt: skip
        assert words in text, words


def test_the_inch_lathe_drills_no_larger_than_half_an_inch_and_never_reams(tmp_path: Path) -> None:
    out = tmp_path / "out"
    assert tailtrue("make", EXAMPLES / "quarry-road" / "job.toml", "--out", out).returncode == 0
    procedure = tree(out)
    drills = [step for phase in procedure["phases"] for step in phase["steps"] if step["id"] == "drill-blank"]
    sizes = [
        piece["value"] for setting in drills[0]["settings"] for piece in setting["label"] if isinstance(piece, dict)
    ]  # fmt: skip
    assert sizes == sorted(sizes)
    assert max(sizes) <= 12.7
    activities = {activity for phase in procedure["phases"] for step in phase["steps"] for activity in step["activities"]}
    assert not any("ream" in activity for activity in activities)


def test_unmeasured_bar_prints_the_rule_and_blanks_and_no_bore(tmp_path: Path) -> None:
    job = shop(tmp_path, "fernhill", ("job", r"^measured_(head|tail) = .*?\n", ""))
    assert tailtrue("make", job, "--out", tmp_path / "out").returncode == 0
    procedure = tree(tmp_path / "out")
    steps = {step["id"]: step for phase in procedure["phases"] for step in phase["steps"]}
    assert "bore-finish" not in steps
    assert steps["measure-bar"]["hold"]
    assert all(check["limits"] is None for check in steps["gauge-bore"]["checks"])
    assert [blank["label"] for blank in steps["measure-bar"]["checks"][1]["blanks"]] == [
        "smallest bore", "largest bore",
    ]  # fmt: skip
    assert "bore.head_low" not in (tmp_path / "out" / "procedure.json").read_text(encoding="utf-8")


def test_measured_bar_sets_the_bore(tmp_path: Path) -> None:
    job = shop(tmp_path, "fernhill")
    assert tailtrue("make", job, "--out", tmp_path / "out").returncode == 0
    procedure = tree(tmp_path / "out")
    # largest reading 24.965, least gap 0.025, doubt of an inside micrometer 0.009: up to a whole step of 0.005
    assert figure(procedure, "bore.head_low")["value"] == pytest.approx(25.000)
    # least reading 24.962, largest gap 0.100, doubt 0.009: down to a whole step
    assert figure(procedure, "bore.head_high")["value"] == pytest.approx(25.050)


@pytest.mark.parametrize(("side", "larger"), [("front", "toward you"), ("rear", "away from you")])
def test_the_direction_follows_the_side_of_the_tool(tmp_path: Path, side: str, larger: str) -> None:
    """US Coast Guard engine examination and Jones 1914: the centre moves toward the tool when its own end is large."""
    job = shop(tmp_path, "fernhill", ("lathe", 'tool_side = "front"', f'tool_side = "{side}"'))
    assert tailtrue("make", job, "--out", tmp_path / "out").returncode == 0
    assert larger in tree(tmp_path / "out")["look_up"]["larger_at_tailstock"]


def test_inch_and_millimetre_files_give_the_same_lathe(tmp_path: Path) -> None:
    plain = shop(tmp_path / "a", "fernhill")
    mixed = shop(
        tmp_path / "b",
        "fernhill",
        ("lathe", '"330 mm"', '"12.99212598425197 in"'),
        ("stock", '"25 mm"', '"0.98425196850394 in"'),
    )
    values = []
    for job in (plain, mixed):
        out = job.parent / "out"
        assert tailtrue("make", job, "--out", out).returncode == 0
        values.append(
            [figure(tree(out), name)["value"] for name in ("bar.length", "collar.diameter", "skim.speed", "align.limit")]
        )
    assert values[0] == pytest.approx(values[1], rel=1e-9)


def test_a_depth_is_whole_divisions_of_the_dial(made: tuple[str, Path]) -> None:
    name, out = made
    procedure = tree(out)
    radial = {
        "fernhill": 0.025, "quarry-road": 0.0254, "cinder-lane": 0.0254, "ropewalk": 0.025, "tannery-lane": 0.01,
        "weir-cottage": 0.02,
    }[name]  # fmt: skip
    for fact in (
        "skim.depth",
        "skim.truing_depth",
        "bore.rough_cut",
        "collar.boring.depth",
        "bore.finish_depth",
        "collar.turning_cut",
    ):
        divisions = figure(procedure, fact)["value"] / radial
        assert divisions == pytest.approx(round(divisions), abs=1e-6)
        assert round(divisions) >= 1


def test_the_roughing_passes_of_a_drilled_bore_reach_the_size_to_rough_to_with_none_to_spare(tmp_path: Path) -> None:
    assert tailtrue("make", EXAMPLES / "fernhill" / "job.toml", "--out", tmp_path).returncode == 0
    procedure = tree(tmp_path)
    drilled = max(row["value"] for row in _figures(procedure, "hole.ladder.size"))
    cut, passes, to = (figure(procedure, f"bore.rough_{name}")["value"] for name in ("cut", "passes", "to"))
    assert drilled + 2 * cut * (passes - 1) < to <= drilled + 2 * cut * passes + 1e-9
    card = (tmp_path / "card.md").read_text(encoding="utf-8")
    rows = [row.split(" | ") for row in card.splitlines() if row.startswith("| Bore, rough")]
    assert [row[1:3] for row in rows][1:3] == [["depth per side", f"{cut:.2f}"], ["divisions", str(round(cut / 0.025))]]


def _figures(node: Any, fact: str) -> list[dict[str, Any]]:
    if isinstance(node, list):
        return [found for value in node for found in _figures(value, fact)]
    if not isinstance(node, dict):
        return []
    below = [found for value in node.values() for found in _figures(value, fact)]
    return [node, *below] if node.get("fact") == fact and "rounding" in node else below
