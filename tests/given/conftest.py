"""A shop that does not exist: four good files, and ways to spoil them."""

from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from tailtrue.errors import FactsWrong, Problem
from tailtrue.given.catalogue import Catalogue, load_catalogue
from tailtrue.given.read import read_job
from tailtrue.places import knowledge_folder

JOB = """\
[job]
shop = "Millpond workshop"
number = "TB-007"
revision = "A"
date = 2026-03-31
lathe = "lathe.toml"
crib = "crib.toml"
stock = "stock.toml"
place = "home"
operator = "experienced"
minor = false
alone = "no"
bar = "bar 25"
"""

LATHE = """\
[lathe]
name = "Green lathe"
dials = "metric"
swing_over_bed = "280 mm"
between_centres = "600 mm"
spindle_bore = "26 mm"
spindle_nose = "cam-lock"
speeds = [
    "65 1/min", "180 rpm",
    "450 rev/min",
]
motor_power = "1 1/2 hp"
drive = "belt"
tailstock_taper = "MT3"
quill_travel = "90 mm"
set_over = "two-screws"
dial_reads = "radius"
dial_division = "0.02 mm"
tool_side = "front"
chuck_guard = "hinged"
stop = "tested"

[[lathe.chucks]]
label = "three-jaw 160"
jaws = 3
kind = "scroll"
body = "160 mm"
marked_speed = "2000 1/min"
grips_to = "110 mm"

[[lathe.chucks]]
label = "old four-jaw"
jaws = 4
kind = "independent"
body = '6 1/4"'
marked_speed = "unmarked"
grips_to = "4 in"
"""

CRIB = """\
[crib]
name = "Drawers"
tool_material = "HSS"
drill_chuck_to = "13 mm"
centre_drills = ["A 2.5", "no. 3"]
tailstock_centre = "dead"
headstock_centre = "soft"
dog_from = "12 mm"
dog_to = "38 mm"
dog_kind = "bent-tail"
drive = "drive-plate"
compound_gap = "0.15 mm"
compound_cure = "24 h"
saw = "bandsaw"
bore_gauges = [{ kind = "telescoping", from = "19 mm", to = "32 mm" }]
outside_micrometers = []

[[crib.boring_bars]]
shank = "12 mm"
reach = "60 mm"
least_bore = "16 mm"
material = "steel"
tip = "carbide"

[[crib.drills]]
set = "metric-1-13-by-0.5"
shank = "straight"

[[crib.drills]]
sizes = ["16 mm", "7/8 in"]
shank = "MT2"
"""

STOCK = """\
[[stock.bars]]
label = "bar 25"
material = "steel-low-carbon-cold-drawn"
diameter = "25 mm"
length = "500 mm"
finish = "cold-drawn"

[[stock.collar_bars]]
label = "round 75"
material = "aluminium-6082-t6"
diameter = "75 mm"
length = "100 mm"
"""

GOOD = {"job": JOB, "lathe": LATHE, "crib": CRIB, "stock": STOCK}

Spoil = tuple[str, str, str]
Problems = Callable[..., tuple[Problem, ...]]


@pytest.fixture(scope="session")
def catalogue() -> Catalogue:
    return load_catalogue(knowledge_folder())


@pytest.fixture
def shop(tmp_path: Path) -> Iterator[Path]:
    """A folder with four good files; whatever reads them leaves nothing else behind."""
    folder = tmp_path / "shop"
    folder.mkdir()
    for kind, text in GOOD.items():
        (folder / f"{kind}.toml").write_text(text, encoding="utf-8")
    before = sorted(folder.iterdir())
    yield folder
    assert sorted(folder.iterdir()) == before


def spoil(shop: Path, *spoils: Spoil) -> None:
    """Put something else in a file for something that must stand there once."""
    for kind, old, new in spoils:
        path = shop / f"{kind}.toml"
        text = path.read_text(encoding="utf-8")
        assert text.count(old) == 1, old
        path.write_text(text.replace(old, new), encoding="utf-8")


@pytest.fixture
def problems(shop: Path, catalogue: Catalogue) -> Problems:
    """The problems of the shop's files after some spoiling."""

    def of(*spoils: Spoil) -> tuple[Problem, ...]:
        spoil(shop, *spoils)
        with pytest.raises(FactsWrong) as caught:
            read_job(shop / "job.toml", catalogue)
        return caught.value.problems

    return of


@pytest.fixture
def lines(problems: Problems) -> Callable[..., list[str]]:
    """The same as the user reads them: one sentence each."""

    def of(*spoils: Spoil) -> list[str]:
        return [f"{p.where}: {p.said}: {p.wrong}; {p.do}" for p in problems(*spoils)]

    return of
