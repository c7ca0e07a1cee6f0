"""Good files of an invented shop: what the engine gets from them."""

from pathlib import Path
from typing import Any

import pytest

from tailtrue.given.catalogue import Catalogue
from tailtrue.given.read import Given, read_job

from .conftest import spoil


@pytest.fixture
def given_facts(shop: Path, catalogue: Catalogue) -> Given:
    return read_job(shop / "job.toml", catalogue)


@pytest.mark.parametrize(
    ("name", "value", "where", "said", "origin"),
    [
        ("job.date", "2026-03-31", "job.toml:5", "2026-03-31", "said"),
        ("job.minor", False, "job.toml:11", "no", "said"),
        ("job.alone", False, "job.toml:12", "no", "said"),
        ("lathe.swing_over_bed", 280.0, "lathe.toml:4", "280 mm", "said"),
        ("lathe.speeds", (65.0, 180.0, 450.0), "lathe.toml:8", "65 1/min, 180 rpm, 450 rev/min", "said"),
        ("lathe.motor_power", 1118.5498073734054, "lathe.toml:12", "1 1/2 hp", "said"),
        ("lathe.dial_division", 0.02, "lathe.toml:18", "0.02 mm", "said"),
        ("crib.compound_cure", 86400.0, "crib.toml:13", "24 h", "said"),
        ("crib.centre_drills", ("A 2.5", "no. 3"), "crib.toml:5", "A 2.5, no. 3", "said"),
        ("crib.outside_micrometers", (), "crib.toml:16", "none", "said"),
        ("crib.bore_gauges", ({"kind": "telescoping", "from": 19.0, "to": 32.0},), "crib.toml:15", "1 listed", "said"),
        (
            "crib.drills",
            ({"set": "metric-1-13-by-0.5", "shank": "straight"}, {"sizes": ("16 mm", "7/8 in"), "shank": "MT2"}),
            "crib.toml:25",
            "2 listed",
            "said",
        ),
    ],
)
def test_what_was_said(given_facts: Given, name: str, value: Any, where: str, said: str, origin: str) -> None:
    found = given_facts.values[name]
    assert (found.value, found.where, found.said, found.origin) == (value, where, said, origin)


def test_records_hold_plain_values(given_facts: Given) -> None:
    first, second = given_facts.value("lathe.chucks")
    assert first["marked_speed"] == 2000.0
    assert first["jaws"] == 3
    assert second["marked_speed"] == "unmarked"
    assert second["body"] == 158.75
    assert "jaw_depth" not in first
    assert given_facts.text_of("lathe.chucks") == "three-jaw 160, old four-jaw"
    with pytest.raises(TypeError):
        first["jaws"] = 4


def test_what_was_not_said_is_absent_or_a_shown_default(given_facts: Given, catalogue: Catalogue) -> None:
    assert "lathe.swing_over_cross_slide" not in given_facts.values
    assert given_facts.value("lathe.swing_over_cross_slide") is None
    assert given_facts.text_of("lathe.swing_over_cross_slide") == ""
    assert given_facts.place_of("lathe.swing_over_cross_slide") == ""
    nose = given_facts.values["crib.nose_radius"]
    assert (nose.value, nose.said, nose.origin) == (0.4, "0.4 mm", "default")
    assert nose.where.startswith("knowledge/facts.toml:")
    defaulted = {name for name, value in given_facts.values.items() if value.origin == "default"}
    assert defaulted == {name for name, fact in catalogue.facts.items() if fact.ask == "default"}


def test_every_value_has_its_catalogue_entry(given_facts: Given, catalogue: Catalogue) -> None:
    assert set(given_facts.values) <= set(catalogue.specs())


def test_all_four_files_are_named(given_facts: Given, shop: Path) -> None:
    assert given_facts.files == tuple(shop / f"{kind}.toml" for kind in ("job", "lathe", "crib", "stock"))
    assert given_facts.place_of("stock.bars") == "stock.toml:1"


def test_what_is_said_in_the_job_goes_before_a_default(shop: Path, catalogue: Catalogue) -> None:
    spoil(shop, ("job", 'place = "home"', 'place = "home"\ntemperature = "59 degF"\ncoarse_use = "Yes"'))
    given_facts = read_job(shop / "job.toml", catalogue)
    assert given_facts.value("job.temperature") == 15.0
    assert given_facts.values["job.temperature"].origin == "said"
    assert given_facts.value("job.coarse_use") is True


def test_words_of_tables_may_be_written_loosely(shop: Path, catalogue: Catalogue) -> None:
    spoil(shop, ("crib", '"A 2.5", "no. 3"', '"a2.5", "No.3"'))
    assert read_job(shop / "job.toml", catalogue).value("crib.centre_drills") == ("A 2.5", "no. 3")


def test_files_may_lie_in_folders_and_end_lines_in_any_way(shop: Path, catalogue: Catalogue) -> None:
    text = (shop / "lathe.toml").read_text(encoding="utf-8")
    (shop / "lathe.toml").write_bytes(b"\xef\xbb\xbf" + text.replace("\n", "\r\n").encode())
    spoil(shop, ("job", '"lathe.toml"', '"../shop/lathe.toml"'))
    given_facts = read_job(shop / "job.toml", catalogue)
    assert given_facts.place_of("lathe.chuck_guard") == "../shop/lathe.toml:20"


def test_readings_of_the_bar_are_taken_as_said(shop: Path, catalogue: Catalogue) -> None:
    six = '["0.98310 in", "0.98307 in", "0.98305 in", "0.98310 in", "0.98300 in", "0.98312 in"]'
    spoil(shop, ("job", 'place = "home"', f'place = "home"\nmeasured_head = {six}\nmeasured_tail = {six}'))
    assert read_job(shop / "job.toml", catalogue).value("job.measured_tail")[4] == pytest.approx(24.9682)
