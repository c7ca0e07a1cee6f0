"""Many unlike shops: each gets an inspected procedure or a refusal with a reason, never anything else."""

import tempfile
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings

from random_shops import BARS, COLLARS, SPEEDS, shops, write
from shops import EXAMPLES, ROOT
from tailtrue.advise import advise, make_procedure
from tailtrue.errors import Refused
from tailtrue.procedure import Procedure


def settled(one: dict[str, Any]) -> Procedure | Refused:
    with tempfile.TemporaryDirectory() as folder:
        try:
            return make_procedure(write(Path(folder), one))
        except Refused as refused:
            return refused


@settings(max_examples=120, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(shops())
def test_every_shop_gets_a_sheet_or_a_reason(one: dict[str, Any]) -> None:
    came = settled(one)
    if isinstance(came, Refused):
        assert came.problems
        assert all(problem.wrong and problem.do for problem in came.problems)
    else:
        assert came.phases


def test_the_sweep_reaches_sheets_and_refusals() -> None:
    """The sweep is worth nothing when it only ever refuses: these two lie on either side."""
    plain = {
        "dials": "metric", "swing_over_bed": 300, "swing_over_cross_slide": 180, "between_centres": 600,
        "spindle_bore": 38, "spindle_length": 400, "speeds": SPEEDS[1], "feeds": [0.05, 0.1, 0.2], "motor": 1100,
        "taper": "MT3", "reads": "diameter", "division": 0.05, "side": "front", "steady": False, "marked": 1800,
        "body": 160, "jaws": 25, "tool": "HSS", "centre": "live", "head": "hard", "drive": "drive-plate", "spacer": 12,
        "drills": "tapers", "micrometers": [(0, 25), (25, 50), (50, 75)], "resolution": 0.001, "gauge": "telescoping",
        "bar": BARS[0], "bar_d": 22, "bar_l": 380, "collar": COLLARS[0], "collar_d": 60, "collar_l": 80,
        "measured": True, "accuracy": "good", "coarse": False, "set_over": "two-screws", "bottle": True, "kit": [], "wish": None, "doubt": None,
    }  # fmt: skip
    assert isinstance(settled(plain), Procedure)
    assert isinstance(settled(plain | {"between_centres": 300, "bar_l": 380, "spindle_bore": 20}), Refused)


@pytest.mark.parametrize("collar", COLLARS)
@pytest.mark.parametrize("bar", BARS)
def test_every_steel_with_every_collar_metal_is_reached(bar: str, collar: str, tmp_path: Path) -> None:
    """Speeds, feeds, drilling and bond are known for each pair: what refuses is a figure, never a hole in a table."""
    for path in (EXAMPLES / "fernhill").iterdir():
        text = path.read_text(encoding="utf-8")
        text = text.replace("steel-low-carbon-cold-drawn", bar).replace("aluminium-6082-t6", collar)
        text = text.replace("activator = false", "activator = true")
        (tmp_path / path.name).write_text(text, encoding="utf-8")
    judged = advise(tmp_path / "job.toml")
    if judged.case.value("joint.retaining_compound.catch_margin") < 1:
        # On stainless steel a bond carries half, and this shop has no other joint for it.
        assert bar.startswith("stainless")
        assert [one.id for one in judged.refused] == ["bond-too-weak"]
        return
    assert not judged.refused, judged.refused
    # Each metal of both lists has its sheets written; a sheet of every pair would say no more.
    if (BARS.index(bar) - COLLARS.index(collar)) % 4 == 0:
        assert make_procedure(tmp_path / "job.toml").phases


def test_each_metal_has_its_sheets_written() -> None:
    pairs = [(bar, collar) for i, bar in enumerate(BARS) for j, collar in enumerate(COLLARS) if (i - j) % 4 == 0]
    assert {bar for bar, _ in pairs} == set(BARS)
    assert {collar for _, collar in pairs} == set(COLLARS)


def test_the_examples_are_in_the_documentation() -> None:
    readme = (ROOT / "README.md").read_text(encoding="utf-8")
    for name in ("fernhill", "quarry-road", "cinder-lane", "ropewalk"):
        assert f"docs/examples/{name}" in readme
