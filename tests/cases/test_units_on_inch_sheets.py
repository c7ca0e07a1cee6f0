"""On an inch sheet no figure and no place to write in has a metric unit alone, on any paper of any inch example."""

import json
import re
from pathlib import Path

import pytest

from shops import ROOT, tailtrue

EXAMPLES = sorted(
    job
    for job in (ROOT / "docs" / "examples").glob("*/*.toml")
    if "[job]" in job.read_text(encoding="utf-8")
    and re.search(r'^dials = "inch"', (job.parent / "lathe.toml").read_text(encoding="utf-8"), re.MULTILINE)
)
METRIC = r"(?:mm³|mm²|mm2|mm/rev|mm/m|mm|µm|cm|N m|kN|N|MPa|°C|degC|kg/m³|kg|kW|W|m/min)"
ALONE = re.compile(rf"(?:[0-9]|_{{2,}}|(?:\\_){{2,}})\s?{METRIC}(?![A-Za-z0-9²³/])")


def alone(text: str) -> list[str]:
    """Metric units that no inch unit stands before: what stands in parentheses is said again."""
    plain = re.sub(r"\([^()]*\)", "", text.replace("\u00a0", " ").replace("\u202f", " "))
    return [plain[max(0, one.start() - 60) : one.end()] for one in ALONE.finditer(plain)]


def blanks(node: object) -> list[str]:
    """The unit of every place to write in."""
    if isinstance(node, dict):
        own = [str(one.get("unit", "")) for one in node.get("blanks", ())]
        return own + [unit for value in node.values() for unit in blanks(value)]
    return [unit for value in node for unit in blanks(value)] if isinstance(node, list) else []


def test_there_are_inch_examples() -> None:
    assert len(EXAMPLES) >= 4


@pytest.mark.parametrize("text", ["1140 mm² of seat", "bears 2.3 MPa", r"temperature \_\_\_ °C", "here 18.1 mm"])
def test_a_metric_unit_alone_is_found(text: str) -> None:
    assert alone(text)
    assert not alone(f"0.5 in ({text})")


@pytest.mark.parametrize("job", EXAMPLES, ids=lambda job: f"{job.parent.name}/{job.stem}")
def test_an_inch_sheet_has_no_metric_unit_alone(job: Path, tmp_path: Path) -> None:
    done = tailtrue("make", job, "--out", tmp_path)
    assert done.returncode == 0, done.stderr
    papers = sorted(tmp_path.glob("*.md"))
    assert {"procedure", "safety"} <= {one.stem for one in papers}
    assert {one.name: alone(one.read_text(encoding="utf-8")) for one in papers} == {one.name: [] for one in papers}
    units = set(blanks(json.loads((tmp_path / "procedure.json").read_text(encoding="utf-8"))))
    assert "in" in units
    assert units <= {"", "in", "degF", "lbf in", "1/min", "s", "in/rev"}
