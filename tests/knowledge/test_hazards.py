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
