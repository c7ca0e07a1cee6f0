"""Cautions against a list of hazards of this work that was made from the rules and reports named in its rows.

Severity and likelihood are estimates of the trade; signal words follow ANSI Z535, sign codes ISO 7010, the order of
controls ISO 12100.
"""

import csv
from collections.abc import Mapping
from pathlib import Path

import pytest

from tailtrue.advise import knowledge
from tailtrue.store.models import CautionFile

with (Path(__file__).parent / "data" / "hazards.csv").open(encoding="utf-8", newline="") as opened:
    HAZARDS = list(csv.DictReader(opened))
NOT_MET = {file.row for file, _ in knowledge().safety.not_met}
MET = [hazard for hazard in HAZARDS if hazard["row"] not in NOT_MET]
_ORDER = ("eliminate", "substitute", "guard", "instruct", "protect")


def cautions_of(row: str) -> list[CautionFile]:
    return [caution.file for caution in knowledge().cautions if caution.file.row == row]


def as_listed(file: CautionFile, hazard: Mapping[str, str]) -> bool:
    worn = " ".join(file.protective_equipment)
    eyes = {"": True, "glasses": "safety glasses" in worn, "shield": "face shield" in worn}[hazard["eyes"]]
    return (
        (str(file.severity), str(file.likelihood), file.signal)
        == (hazard["severity"], hazard["likelihood"], hazard["signal"])
        and set(file.signs) >= set(hazard["signs"].split())
        and {control.level for control in file.controls} >= set(hazard["controls"].split())
        and eyes
    )


@pytest.mark.parametrize("hazard", MET, ids=[hazard["row"] for hazard in MET])
def test_a_hazard_is_answered_as_it_is_listed(hazard: Mapping[str, str]) -> None:
    found = cautions_of(hazard["row"])
    assert found
    assert any(as_listed(file, hazard) for file in found), [(file.id, file.severity, file.likelihood) for file in found]
    assert {file.signal for file in found} <= {hazard["signal"]}


def test_all_of_the_list_is_answered_but_what_no_step_meets() -> None:
    assert {hazard["row"] for hazard in HAZARDS} - {caution.file.row for caution in knowledge().cautions} == NOT_MET
    assert len(MET) >= 130


@pytest.mark.parametrize("file", [caution.file for caution in knowledge().cautions], ids=lambda file: str(file.id))
def test_the_strongest_control_stands_first(file: CautionFile) -> None:
    """ISO 12100: design, then safeguards, then information."""
    places = [_ORDER.index(control.level) for control in file.controls]
    assert places == sorted(places)


# What no work may start with, as lists of stop conditions for lathes have it, by the row of the hazard.
MUST_STOP = {
    "MC-01": "a stop that is missing or untried",
    "MC-02": "a chuck without a guard",
    "MC-06": "a lathe that starts again by itself",
    "WH-03": "jaws past the body of the chuck",
    "WH-04": "too short a grip",
    "WH-05": "a chuck whose speed nobody read",
    "WH-06": "a draft or a skin in three jaws",
    "WH-11": "a joint that would slip",
    "WH-12": "a screw or pin that stands proud, or that the tool meets",
    "ST-01": "a bar that stands out behind the headstock without support",
    "PE-01": "lone work in a shared shop",
    "PE-04": "a minor without supervision",
    "EN-08": "a learner without supervision",
    "CA-01": "casting without a founder",
    "CA-02": "a melt of unknown metal",
    "CA-04": "a blank with holes or cracks",
    "BC-05": "a bar that bends under the cut",
}


@pytest.mark.parametrize("row", MUST_STOP)
def test_what_no_work_may_start_with_is_a_stop(row: str) -> None:
    """A rule refuses, and its examples show it refusing, letting pass, and not knowing."""
    stops = [stop.file for stop in knowledge().stops if stop.file.row == row]
    assert stops
    assert all({"fires", "silent"} <= {example.expect for example in stop.example} for stop in stops)


@pytest.mark.parametrize(
    ("metal", "role"), [("magnesium", "refused"), ("acetal", "weighed; refused"), ("pvc-rigid", "weighed; refused")]
)
def test_metal_that_burns_is_refused_at_the_door_and_stock_that_creeps_is_no_collar(metal: str, role: str) -> None:
    """Magnesium swarf burns and water feeds it: not cut in this job. What creeps is read, judged and left out."""
    assert knowledge().tables["materials/materials"].one(material=metal).text("roles") == role
