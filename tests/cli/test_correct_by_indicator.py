"""`tailtrue correct --indicator`, `true` and `log` with visits that an indicator read: kept whole, by every command."""

import json
import subprocess
from pathlib import Path
from typing import Any

import pytest

from shops import shop, tailtrue
from truing.rounds import SET_UP

# As an indicator reads them: no zero of a micrometer, another instrument.
SET_UP_BY_INDICATOR = SET_UP.replace('instrument_zero_error = "0 mm"\n', "").replace("micrometer 4", "indicator 2")
READ = 'head = ["0 mm", "0.002 mm"]\ntail = ["0.042 mm", "0.044 mm"]\norder = "HTTH"\nstate = "as found"\n'
FOUND = ("--head", "0 mm, 0.002 mm", "--tail", "0.042 mm, 0.044 mm", "--order", "HTTH", "--state", "as-found")
BETTER = ("--head", "0 mm, 0.002 mm", "--tail", "0.008 mm, 0.010 mm", "--order", "HTTH", "--state", "as-left")


@pytest.fixture
def job(tmp_path: Path) -> Path:
    micrometer = ("crib", r'\[\[crib.outside_micrometers\]\]\nfrom = "50 mm".*?\n\n', "")
    return shop(tmp_path, "fernhill", micrometer).with_name("use-bar.toml")


def file(job: Path, text: str) -> Path:
    path = job.parent / "visit.toml"
    path.write_text(text, encoding="utf-8")
    return path


def said(done: subprocess.CompletedProcess[str]) -> str:
    assert done.returncode == 0, done.stderr
    return " ".join(done.stdout.split())


def kept(job: Path) -> list[dict[str, Any]]:
    records: list[dict[str, Any]] = json.loads(said(tailtrue("log", "list", job, "--json")))["records"]
    return [one["record"] for one in records]


def test_a_visit_read_with_an_indicator_is_a_full_record(job: Path) -> None:
    visit = file(job, SET_UP_BY_INDICATOR + READ + "date = 2026-03-02\n")
    assert "Kept as record 1 of the alignment log." in said(
        tailtrue("correct", job, "--indicator", "--from", visit, "--keep")
    )
    (found,) = kept(job)
    assert (found["read_by"], found["instrument"]) == ("indicator", "indicator 2")
    assert [one["said"] for one in found["readings"]] == ["0 mm", "0.042 mm", "0.044 mm", "0.002 mm"]
    assert found["judgement"]["verdict"] == "outside"
    assert found["judgement"]["difference_mm"] == pytest.approx(0.042)
    assert "instrument_zero_error_mm" not in found
    assert "collar_diameter_after_mm" not in found
    assert "outside, by indicator" in said(tailtrue("log", "list", job))
    assert "what read the collars: indicator" in said(tailtrue("log", "show", job, 1))


def test_its_doubt_is_more_than_that_of_a_micrometer(job: Path) -> None:
    by_indicator = json.loads(said(tailtrue("correct", job, "--indicator", *FOUND, "--json")))
    with_micrometer = shop(job.parent / "other", "fernhill").with_name("use-bar.toml")
    sizes = ("--head", "67.312 mm, 67.314 mm", "--tail", "67.354 mm, 67.356 mm", "--order", "HTTH", "--state", "as-found")
    by_micrometer = json.loads(said(tailtrue("correct", with_micrometer, *sizes, "--json")))
    doubts = [found["figures"]["visit.uncertainty"] for found in (by_indicator, by_micrometer)]
    assert doubts[0] > doubts[1]


def test_the_file_may_say_what_read_them_and_the_option_is_not_needed(job: Path) -> None:
    visit = file(job, SET_UP_BY_INDICATOR + READ + 'read_by = "indicator"\n')
    assert "Kept as record 1" in said(tailtrue("correct", job, "--from", visit, "--keep"))
    assert kept(job)[0]["read_by"] == "indicator"
    other = job.parent / "second"
    second = shop(other, "fernhill").with_name("use-bar.toml")
    assert "Added as record 1." in said(tailtrue("log", "add", second, "--from", visit))
    assert kept(second)[0]["judgement"] == kept(job)[0]["judgement"]


def test_file_and_option_must_name_the_same_instrument(job: Path) -> None:
    visit = file(job, SET_UP_BY_INDICATOR + READ + 'read_by = "micrometer"\n')
    done = tailtrue("correct", job, "--indicator", "--from", visit, "--keep")
    assert (done.returncode, done.stdout) == (2, "")
    line = len(visit.read_text(encoding="utf-8").splitlines())
    assert f'visit.toml:{line}: read_by = "micrometer": stands with --indicator' in done.stderr


def test_no_visit_file_is_needed_once_the_set_up_is_in_the_log(job: Path) -> None:
    said(
        tailtrue(
            "correct", job, "--indicator", "--from", file(job, SET_UP_BY_INDICATOR + READ), "--keep", "--date", "2026-03-02"
        )
    )
    words = ("--as-before", "--initials", "CD", "--say", "room=21 degC", "--say", "spindle_warm=20 min", "--keep")
    told = said(tailtrue("correct", job, "--indicator", *BETTER, *words, "--date", "2026-03-02T10:00"))
    assert "Kept as record 2" in told
    assert "On 2026-03-02 the tailstock end was larger by 0.042 mm" in told
    assert kept(job)[1]["instrument"] == "indicator 2"


def test_an_instrument_of_the_other_kind_is_not_taken_over(job: Path) -> None:
    with_micrometer = shop(job.parent / "other", "fernhill").with_name("use-bar.toml")
    sizes = (
        READ.replace("0 mm", "67.312 mm").replace("0.002", "67.313").replace("0.042", "67.355").replace("0.044", "67.354")
    )
    said(tailtrue("correct", with_micrometer, "--from", file(job, SET_UP + sizes), "--keep", "--date", "2026-03-02"))
    words = ("--as-before", "--initials", "CD", "--say", "room=21 degC", "--say", "spindle_warm=20 min", "--keep")
    done = tailtrue("correct", with_micrometer, "--indicator", *BETTER, *words)
    assert done.returncode == 4
    assert "instrument: not given, and the log guesses nothing" in done.stderr
    told = said(tailtrue("correct", with_micrometer, "--indicator", *BETTER, *words, "--say", "instrument=indicator 2"))
    assert "Kept as record 2" in told
    # Diameters before and readings from a zero now: the change of the difference counts, no size is compared.
    assert "has grown" not in told
    assert "not skimmed" not in told
    assert "On 2026-03-02 the tailstock end was larger by 0.042 mm" in told


def test_a_micrometer_after_an_indicator_sees_no_growth_either(job: Path) -> None:
    both = shop(job.parent / "other", "fernhill").with_name("use-bar.toml")
    said(tailtrue("correct", both, "--indicator", "--from", file(job, SET_UP_BY_INDICATOR + READ), "--keep"))
    sizes = ("--head", "67.212 mm, 67.213 mm", "--tail", "67.221 mm, 67.220 mm", "--order", "HTTH", "--state", "as-left")
    told = json.loads(said(tailtrue("correct", both, *sizes, "--json")))
    assert told["advice"] != "read-again"
    assert not any(remark["bars_move"] for remark in told["remarks"])


def test_far_past_the_mark_and_another_larger_end_are_seen_by_indicator(job: Path) -> None:
    said(tailtrue("correct", job, "--indicator", "--from", file(job, SET_UP_BY_INDICATOR + READ), "--keep"))
    turned = ("--head", "0.042 mm, 0.044 mm", "--tail", "0 mm, 0.002 mm", "--order", "HTTH", "--json")
    for state, remark in (("as-left", "went-past"), ("as-found", "turned-round-unmoved")):
        told = json.loads(said(tailtrue("correct", job, "--indicator", *turned, "--state", state)))
        assert remark in [one["id"] for one in told["remarks"] if one["bars_move"]]


def test_the_zero_of_a_micrometer_is_refused_with_its_line(job: Path) -> None:
    visit = file(job, SET_UP + READ)
    done = tailtrue("correct", job, "--indicator", "--from", visit, "--keep")
    assert (done.returncode, done.stdout) == (4, "")
    line = SET_UP.splitlines().index('instrument_zero_error = "0 mm"') + 1
    assert f'visit.toml:{line}: instrument_zero_error = "0 mm": belongs to a micrometer' in done.stderr
    assert not (job.parent / "alignment-log.sqlite").exists()


def test_a_word_for_the_instrument_that_is_not_known_is_one_fault(job: Path) -> None:
    visit = file(job, SET_UP_BY_INDICATOR + READ + 'read_by = "dial gauge"\n')
    done = tailtrue("correct", job, "--from", visit, "--keep")
    assert (done.returncode, done.stdout) == (4, "")
    assert 'read_by = "dial gauge": is not one of the choices' in done.stderr
    assert "write micrometer or indicator" in done.stderr
    assert "instrument_zero_error" not in done.stderr


def test_diameters_are_no_readings_of_an_indicator(job: Path) -> None:
    done = tailtrue("correct", job, "--indicator", "--head", "67.312 mm, 67.313 mm", "--tail", "67.355 mm, 67.354 mm")
    assert (done.returncode, done.stdout) == (4, "")
    assert "67.312 mm: is a diameter; an indicator reads from a zero of its own" in done.stderr


def test_readings_alike_stand_aside_with_advice_that_can_be_followed(job: Path) -> None:
    alike = READ.replace("0.042", "0.001").replace("0.044", "0.002")
    visit = file(job, SET_UP_BY_INDICATOR + alike + "date = 2026-03-02\n")
    done = tailtrue("correct", job, "--indicator", "--from", visit, "--keep")
    assert done.returncode == 4
    assert "answer what stands under FIRST, then keep it" in done.stdout
    (row,) = json.loads(said(tailtrue("log", "list", job, "--unread", "--json")))["unread"]
    assert "indicator, H 0 mm; T 0.001 mm; T 0.002 mm; H 0.002 mm" in row["text"]
    assert [fault["do"] for fault in row["faults"]] == ["answer this, then keep the visit anew"]
    assert "say that it was read twice" in row["faults"][0]["wrong"]
    told = said(tailtrue("correct", job, "--indicator", "--from", visit, "--keep", "--read-twice"))
    assert "Kept as record 1" in told


def test_what_a_caliper_read_stands_aside_without_a_visit_file(job: Path) -> None:
    done = tailtrue(
        "correct", job, "--caliper", "--keep", "--head", "67.30 mm", "--tail", "67.35 mm", "--date", "2026-03-02"
    )
    assert done.returncode == 4, done.stderr
    assert "NOT KEPT as a record: a caliper cannot judge the limit" in done.stdout
    (row,) = json.loads(said(tailtrue("log", "list", job, "--unread", "--json")))["unread"]
    assert row["faults"][0]["do"] == "read both collars with a micrometer, or note the coarse move on the sheet only"


@pytest.mark.parametrize("form", ["csv", "json"])
def test_a_copy_of_the_log_brings_it_into_another_one(job: Path, form: str) -> None:
    said(tailtrue("correct", job, "--indicator", "--from", file(job, SET_UP_BY_INDICATOR + READ), "--keep"))
    out = job.parent / f"log.{form}"
    said(tailtrue("log", "export", job, "--out", out))
    other = shop(job.parent / "other", "fernhill").with_name("use-bar.toml")
    assert "Added 1; known already 0" in said(tailtrue("log", "import", other, out))
    assert kept(other) == kept(job)
    assert "read with an indicator; each check give or take" in said(tailtrue("log", "chart", other))
