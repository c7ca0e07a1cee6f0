"""`tailtrue correct`, `true`, `clamp-test` and `reverse-test` as their user meets them."""

import json
import signal
import subprocess
import sys
import time
from pathlib import Path
from typing import Any

import pytest

from shops import ROOT, shop, tailtrue
from truing.rounds import SET_UP

READ = 'head = ["69.612 mm", "69.613 mm"]\ntail = ["69.655 mm", "69.654 mm"]\norder = "HTTH"\n'
FOUND = ("--head", "69.612 mm, 69.613 mm", "--tail", "69.655 mm, 69.654 mm", "--order", "HTTH")
BETTER = ("--head", "69.512 mm, 69.513 mm", "--tail", "69.521 mm, 69.520 mm", "--order", "HTTH")
WORSE = ("--head", "69.512 mm, 69.513 mm", "--tail", "69.597 mm, 69.596 mm", "--order", "HTTH")


@pytest.fixture
def job(tmp_path: Path) -> Path:
    return shop(tmp_path, "fernhill")


def file(job: Path, text: str) -> Path:
    path = job.parent / "visit.toml"
    path.write_text(text, encoding="utf-8")
    return path


def said(done: subprocess.CompletedProcess[str]) -> str:
    assert done.returncode == 0, done.stderr
    return " ".join(done.stdout.split())


def log_of(job: Path) -> Path:
    return job.parent / "alignment-log.sqlite"


def kept(job: Path) -> list[dict[str, Any]]:
    records: list[dict[str, Any]] = json.loads(said(tailtrue("log", "list", job, "--json")))["records"]
    return records


def test_nothing_is_kept_unless_that_is_asked_for(job: Path) -> None:
    assert "MOVE THE TAILSTOCK toward you" in said(tailtrue("correct", job, *FOUND))
    assert not log_of(job).exists()


def test_a_visit_from_a_file_is_kept_and_the_next_is_held_against_it(job: Path) -> None:
    visit = file(job, SET_UP + READ + 'state = "as found"\ndate = 2026-03-02\n')
    assert "Kept as record 1 of the alignment log." in said(tailtrue("correct", job, "--from", visit, "--keep"))
    same_set_up = ("--as-before", "--initials", "CD", "--say", "room=21 degC", "--say", "spindle_warm=20 min",
                   "--say", "instrument_zero_error=0 mm")  # fmt: skip
    moved = ("--state", "as-left", "--moved", "0 mm, 0.029 mm, 0.028 mm", "--date", "2026-03-02T10:00")
    words = said(tailtrue("correct", job, *BETTER, *moved, "--keep", *same_set_up))
    assert "On 2026-03-02 the tailstock end was larger by 0.042 mm" in words
    assert "The last move brought 81 % of the correction" in words
    assert "Kept as record 2" in words
    shown = said(tailtrue("log", "show", job, 2))
    assert "after clamping 0.028 mm" in shown
    assert "how far the quill stands out: 40.0 mm (1.57 in)" in shown
    assert "who made the test: CD" in shown


def test_a_wrong_way_is_barred_and_not_kept(job: Path) -> None:
    visit = file(job, SET_UP + READ + 'state = "as found"\n')
    said(tailtrue("correct", job, "--from", visit, "--keep"))
    set_up = file(job, SET_UP)
    done = tailtrue("correct", job, *WORSE, "--state", "as-left", "--from", set_up, "--keep")
    assert done.returncode == 4
    assert "it went the wrong way" in " ".join(done.stdout.split())
    assert "STEP BY STEP" not in done.stdout
    assert "NOT KEPT" in done.stdout
    told = json.loads(tailtrue("correct", job, *WORSE, "--state", "as-left", "--from", set_up, "--keep", "--json").stdout)
    assert (told["advice"], told["kept"]) == ("read-again", None)
    assert len(kept(job)) == 1


def test_a_barred_visit_leaves_its_readings_as_an_unread_row(job: Path) -> None:
    visit = file(job, SET_UP + READ.replace("69.655", "69.155") + 'state = "as found"\ndate = 2026-03-02\n')
    for _ in range(2):
        done = tailtrue("correct", job, "--from", visit, "--keep")
        assert done.returncode == 4
        assert "NOT KEPT as a record" in done.stdout
        assert "unread row 1" in done.stdout
    (row,) = json.loads(said(tailtrue("log", "list", job, "--unread", "--json")))["unread"]
    assert "H 69.612 mm; T 69.155 mm; T 69.654 mm; H 69.613 mm" in row["text"]
    assert row["text"].startswith("2026-03-02, AB, Lathe 2")
    assert row["faults"]
    words = said(tailtrue("log", "list", job, "--unread"))
    assert "visit.toml, readings: " in words
    assert kept(job) == []


def test_what_a_caliper_read_is_no_record_and_is_not_lost(job: Path) -> None:
    visit = file(job, SET_UP + READ + 'state = "as found"\ndate = 2026-03-02\n')
    done = tailtrue("correct", job, "--from", visit, "--keep", "--caliper")
    assert done.returncode == 4
    assert "NOT KEPT as a record: a caliper cannot judge the limit" in done.stdout
    (row,) = json.loads(said(tailtrue("log", "list", job, "--unread", "--json")))["unread"]
    assert "H 69.612 mm; T 69.655 mm" in row["text"]
    assert "caliper" in row["faults"][0]["wrong"]
    assert kept(job) == []


def test_the_same_visit_kept_twice_adds_nothing_and_says_so(job: Path) -> None:
    visit = file(job, SET_UP + READ + 'state = "as found"\ndate = 2026-03-02\n')
    first = said(tailtrue("correct", job, "--from", visit, "--keep"))
    again = said(tailtrue("correct", job, "--from", visit, "--keep"))
    known = "This visit is record 1 of the alignment log already; nothing was added."
    assert again == first.replace("Kept as record 1 of the alignment log.", known)
    assert len(kept(job)) == 1
    later = file(job, SET_UP + READ + 'state = "as found"\ndate = 2026-03-03\n')
    assert "Kept as record 2" in said(tailtrue("correct", job, "--from", later, "--keep"))


def test_the_same_visit_without_a_date_is_not_kept_twice(job: Path) -> None:
    visit = file(job, SET_UP + READ + 'state = "as found"\n')
    said(tailtrue("correct", job, "--from", visit, "--keep"))
    again = tailtrue("correct", job, "--from", visit, "--keep")
    assert again.returncode == 4
    words = " ".join(again.stdout.split())
    assert "MOVE THE TAILSTOCK toward you" in words
    assert "NOT KEPT: record 1 of" in words
    assert "keep it with its own date: --date" in words
    assert len(kept(job)) == 1
    assert "Kept as record 2" in said(tailtrue("correct", job, "--from", visit, "--keep", "--date", "2026-03-03"))
    time.sleep(1.1)  # within one second it would be the same record, word for word
    added = tailtrue("log", "add", job, "--from", visit)
    assert (added.returncode, added.stdout) == (4, "")
    assert "record 1 of" in added.stderr
    assert "has the same readings, lathe, bar and state, and this test was given no date" in added.stderr
    assert len(kept(job)) == 2


def test_what_was_struck_out_may_be_kept_anew_without_a_date(job: Path) -> None:
    visit = file(job, SET_UP + READ + 'state = "as found"\n')
    said(tailtrue("log", "add", job, "--from", visit))
    said(tailtrue("log", "strike", job, 1, "--reason", "wrong room", "--initials", "AB"))
    time.sleep(1.1)  # within one second it would be the same record
    assert said(tailtrue("log", "add", job, "--from", visit)) == "Added as record 2."


def test_a_barred_visit_without_a_date_stands_aside_once(job: Path) -> None:
    visit = file(job, SET_UP + READ.replace("69.655", "69.155") + 'state = "as found"\n')
    for _ in range(2):
        assert "unread row 1" in tailtrue("correct", job, "--from", visit, "--keep").stdout
    assert len(json.loads(said(tailtrue("log", "list", job, "--unread", "--json")))["unread"]) == 1


def test_a_log_without_a_single_byte_is_an_empty_log(job: Path) -> None:
    log_of(job).touch()
    assert "Earlier visits" not in said(tailtrue("correct", job, *FOUND))
    visit = file(job, SET_UP + READ + 'state = "as found"\n')
    assert "Kept as record 1" in said(tailtrue("correct", job, "--from", visit, "--keep"))
    other = shop(job.parent / "other", "fernhill")
    log_of(other).touch()
    assert said(tailtrue("log", "add", other, "--from", visit)) == "Added as record 1."


def test_readings_without_their_last_digits_are_told_as_such() -> None:
    inch = ROOT / "docs" / "examples" / "quarry-road" / "job.toml"
    done = tailtrue("correct", inch, "--head", "1.98 in", "--tail", "1.99 in")
    assert (done.returncode, done.stdout) == (4, "")
    assert "1.98 in, 1.99 in: are too coarse: they were written to 0.01 in" in done.stderr
    assert "write every digit that the micrometer shows" in done.stderr
    assert "alignment/" not in done.stderr
    metric = ROOT / "docs" / "examples" / "fernhill" / "job.toml"
    coarse = tailtrue("correct", metric, "--head", "69.6 mm", "--tail", "69.7 mm")
    assert "they were written to 0.1 mm" in coarse.stderr


def test_what_was_struck_out_counts_no_more(job: Path) -> None:
    visit = file(job, SET_UP + READ + 'state = "as found"\n')
    said(tailtrue("correct", job, "--from", visit, "--keep"))
    said(tailtrue("log", "strike", job, 1, "--reason", "wrong bar", "--initials", "AB"))
    assert "wrong way" not in said(tailtrue("correct", job, *WORSE, "--state", "as-left"))


def test_what_is_missing_is_named_at_once_and_nothing_is_recorded(job: Path) -> None:
    done = tailtrue("correct", job, *FOUND, "--keep", "--initials", "AB")
    assert (done.returncode, done.stdout) == (4, "")
    assert "nothing was added to the alignment log" in done.stderr
    for key in ("state", "quill_extension", "quill_clamped", "tailstock_centre_id", "room", "instrument_zero_error"):
        assert key in done.stderr
    assert "operator" not in done.stderr.split("not given")[0]
    assert not log_of(job).exists()


def test_every_fault_of_a_visit_file_is_told_with_its_line(job: Path) -> None:
    visit = file(
        job, SET_UP.replace('"40 mm"', '"40"').replace("quill_clamped", "quil_clamped") + READ.replace("HTTH", "HT")
    )
    done = tailtrue("correct", job, "--from", visit, "--keep")
    assert (done.returncode, done.stdout) == (4, "")
    assert 'visit.toml:15: quill_extension = "40": has no unit' in done.stderr
    assert "visit.toml:16" in done.stderr
    assert 'visit.toml:24: order = "HT": does not fit the readings' in done.stderr
    assert not log_of(job).exists()
    as_json = json.loads(tailtrue("correct", job, "--from", visit, "--json").stdout)
    assert (as_json["ok"], as_json["errors"][0]["where"]) == (False, "visit.toml:15")


@pytest.mark.parametrize(
    ("words", "code", "says"),
    [
        (("--as-before",), 2, "finds no earlier record"),
        (("--say", "quill=40 mm"), 4, "unknown key 'quill'"),
        (("--say", "quill_extension"), 2, "cannot be used"),
        (("--say", "quill_extension=40"), 4, "--say quill_extension: quill_extension = 40"),
        (("--state", "left"), 4, "--state: state"),
        (("--moved", "0 mm, 0.02 mm"), 4, "write three readings on one line, with commas"),
        (("--moved", "0 mm, 0.02 mm, 0.02 mm, 0.01 mm"), 4, "write three readings on one line, with commas"),
        (("--date", "2.3.26", "--keep"), 4, "is no date"),
        (("--date", "2.3.26"), 4, "is no date"),
        (("--date", "2096-11-24", "--keep"), 4, "is in the future"),
        (("--date", "2096-11-24"), 4, "is in the future"),
        (("--middle", "69.634 mm, 69.635 mm"), 4, "does not fit the readings"),
    ],
)
def test_an_option_that_cannot_be_used_is_told(job: Path, words: tuple[str, ...], code: int, says: str) -> None:
    done = tailtrue("correct", job, *FOUND, *words)
    assert (done.returncode, done.stdout) == (code, "")
    assert says in done.stderr
    assert "Traceback" not in done.stderr
    assert not log_of(job).exists()


def test_one_thing_said_in_the_file_and_beside_it_is_refused(job: Path) -> None:
    done = tailtrue("correct", job, "--from", file(job, SET_UP + READ), "--initials", "CD")
    assert done.returncode == 4
    assert "--initials: operator" in done.stderr
    assert "is said in visit.toml as well" in done.stderr


def test_faults_of_the_set_up_and_of_the_readings_are_told_together(job: Path) -> None:
    visit = file(job, SET_UP.replace('"450 1/min"', '"500 1/min"') + READ.replace("69.655", "69,655"))
    for words in ((), ("--keep",)):
        done = tailtrue("correct", job, "--from", visit, *words)
        assert (done.returncode, done.stdout) == (4, "")
        assert 'speed = "500 1/min": is no speed of this lathe' in done.stderr
        assert "69,655 mm: the decimal mark must be a point" in done.stderr
    options = tailtrue("correct", job, "--head", "69,612 mm", "--tail", "69.655 mm", "--say", "quill=3")
    assert "unknown key 'quill'" in options.stderr
    assert "the decimal mark must be a point" in options.stderr


def test_a_third_collar_is_judged_from_options(job: Path) -> None:
    words = said(
        tailtrue("correct", job, "--head", "69.612 mm, 69.613 mm", "--middle", "69.655 mm, 69.654 mm", "--tail",
                 "69.655 mm, 69.654 mm", "--middle-station", "186 mm", "--order", "HMTTMH")
    )  # fmt: skip
    assert "The collar in the middle is larger by" in words
    assert "No setting of the tailstock cures that" in words


def test_a_log_that_cannot_be_read_does_not_keep_the_move_back_but_is_told(job: Path) -> None:
    log_of(job).write_text("no log", encoding="utf-8")
    words = said(tailtrue("correct", job, *FOUND))
    assert "Earlier visits were not looked at" in words
    assert "MOVE THE TAILSTOCK" in words
    done = tailtrue("correct", job, "--from", file(job, SET_UP + READ + 'state = "as found"\n'), "--keep")
    assert done.returncode == 4
    assert log_of(job).read_text(encoding="utf-8") == "no log"


def test_the_log_takes_the_same_file_and_the_judgement_of_the_engine(job: Path) -> None:
    visit = file(job, SET_UP + READ + 'state = "as found"\ndate = 2026-03-02\n')
    assert said(tailtrue("log", "add", job, "--from", visit)) == "Added as record 1."
    said(tailtrue("correct", shop(job.parent / "other", "fernhill"), "--from", visit, "--keep"))
    other = json.loads(said(tailtrue("log", "list", job.parent / "other" / "fernhill" / "job.toml", "--json")))["records"]
    assert kept(job) == other


def test_the_log_refuses_a_visit_file_whose_readings_do_not_hang_together(job: Path) -> None:
    visit = file(job, SET_UP + READ.replace("69.655", "69.155") + 'state = "as found"\n')
    done = tailtrue("log", "add", job, "--from", visit)
    assert done.returncode == 4
    assert "thimble-turn-on-a-collar" in done.stderr
    assert not log_of(job).exists()


def at_prompt(job: Path, lines: list[str], *words: object) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, "-m", "tailtrue", "true", str(job), *map(str, words)],
        input="".join(f"{line}\n" for line in lines), capture_output=True, text=True, check=False, cwd=ROOT,
    )  # fmt: skip


FAR = ["69.612 mm", "69.654 mm", "69.655 mm", "69.613 mm"]
NEAR = ["69.512 mm", "69.521 mm", "69.520 mm", "69.513 mm"]


def test_rounds_at_the_prompt_end_in_limits_and_are_kept(job: Path) -> None:
    lines = ["69.612", *FAR, "0 mm, 0.028 mm, 0.027", "0 mm, 0.028 mm, 0.027 mm", *NEAR]
    done = at_prompt(job, lines, "--from", file(job, SET_UP), "--keep")
    words = said(done)
    assert "ROUND 1, as found" in words
    assert "ROUND 2, as left" in words
    assert "Done." in words
    assert words.endswith("Kept in the alignment log: record 1, 2.")
    assert "69.612: has no unit" in done.stderr
    assert "has no unit" in done.stderr.split("moves")[-1]
    first, second = (one["record"] for one in kept(job))
    assert (first["state"], second["state"]) == ("as found", "as left")
    assert second["moves"][0]["clamped"]["said"] == "0.027 mm"


@pytest.mark.parametrize("typed", ["0.028 mm", "0 mm, 0.028 mm", "0 mm, , 0.027 mm", "0 mm, 0.03 mm, 0.03 mm, 0 mm"])
def test_an_indicator_that_is_not_three_readings_is_asked_for_again_in_words(job: Path, typed: str) -> None:
    lines = [*FAR, typed, "0 mm, 0.028 mm, 0.027 mm", *NEAR]
    done = at_prompt(job, lines, "--from", file(job, SET_UP), "--keep")
    assert done.stderr == "not taken: write all three on one line, with commas: before, released, clamped\n"
    assert said(done).endswith("Kept in the alignment log: record 1, 2.")


@pytest.mark.parametrize("lines", [[*FAR], [*FAR, "q"], [*FAR, "", "69.512 mm"], [*FAR, "", "69.512 mm", "Q"]])
def test_what_was_kept_stays_when_the_input_ends_or_somebody_stops(job: Path, lines: list[str]) -> None:
    words = said(at_prompt(job, lines, "--from", file(job, SET_UP), "--keep"))
    assert words.endswith("Stopped. Kept in the alignment log: record 1.")
    assert len(kept(job)) == 1


def test_stopping_before_the_first_round_keeps_nothing_and_says_so(job: Path) -> None:
    words = said(at_prompt(job, ["q"], "--from", file(job, SET_UP), "--keep"))
    assert words.endswith("Stopped. Nothing was kept in the alignment log.")
    assert not log_of(job).exists()


def test_an_interrupt_loses_nothing_that_was_kept(job: Path) -> None:
    command = [sys.executable, "-u", "-m", "tailtrue", "true", str(job), "--from", str(file(job, SET_UP)), "--keep"]
    with subprocess.Popen(command, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True, cwd=ROOT) as running:
        assert running.stdin is not None
        running.stdin.write("".join(f"{line}\n" for line in FAR))
        running.stdin.flush()
        until = time.monotonic() + 60
        while not log_of(job).exists() and time.monotonic() < until:
            time.sleep(0.1)
        time.sleep(1.0)
        running.send_signal(signal.SIGINT)
        out, _ = running.communicate(timeout=60)
    assert running.returncode == 0
    assert "Kept in the alignment log: record 1." in out
    assert len(kept(job)) == 1


def test_readings_that_are_not_enough_are_joined_by_more_and_kept_once(job: Path) -> None:
    close = ["69.6120 mm", "69.6270 mm", "69.6270 mm", "69.6120 mm"]
    done = at_prompt(job, [*close, *close, "q"], "--from", file(job, SET_UP), "--keep")
    words = said(done)
    assert "these readings count too" in words
    (one,) = kept(job)
    assert len(one["record"]["readings"]) in (4, 8)
    assert one["record"]["judgement"]["verdict"] in ("inside", "too close to say")


def test_a_barred_round_is_read_anew(job: Path) -> None:
    wrong = ["69.512 mm", "69.596 mm", "69.597 mm", "69.513 mm"]
    words = said(at_prompt(job, [*FAR, "", *wrong, *wrong, "q"], "--from", file(job, SET_UP), "--keep"))
    assert "it went the wrong way" in words
    assert "read both collars anew" in words
    assert "The last move went the wrong way" in words
    assert words.endswith("record 1, 2. Readings that make no record stand there as unread row 1.")
    (row,) = json.loads(said(tailtrue("log", "list", job, "--unread", "--json")))["unread"]
    assert "H 69.512 mm; T 69.596 mm" in row["text"]


def test_what_a_session_lacks_is_told_before_anything_is_read(job: Path) -> None:
    done = at_prompt(job, FAR, "--keep", "--initials", "AB")
    assert (done.returncode, done.stdout) == (4, "")
    assert "quill_extension" in done.stderr
    done = at_prompt(job, FAR, "--from", file(job, SET_UP + READ))
    assert done.returncode == 2
    assert "it is asked for round by round" in done.stderr


def test_without_keeping_a_session_writes_nothing(job: Path) -> None:
    before = sorted(job.parent.iterdir())
    assert "Done." in said(at_prompt(job, [*FAR, "", *NEAR]))
    assert sorted(job.parent.iterdir()) == before


def test_the_clamp_test_is_printed_in_words_and_as_json(job: Path) -> None:
    readings = "0 mm, 0.004 mm, 0.001 mm, 0.005 mm, 0 mm, 0.004 mm"
    words = said(tailtrue("clamp-test", job, "--indicator", readings))
    assert "Over 3 cycles clamping carries the quill into the indicator by 0.004 mm" in words
    told = json.loads(said(tailtrue("clamp-test", job, "--indicator", readings, "--json")))
    assert told["verdict"] == "good"
    assert told["figures"]["clamp.cycles"] == 3
    assert tailtrue("clamp-test", job, "--indicator", "0 mm").returncode == 4


def test_the_bar_turned_end_for_end_is_printed_in_words_and_as_json(job: Path) -> None:
    turned = ("--indicator", "0 mm, 0.018 mm", "--turned-indicator", "0 mm, 0.006 mm", "--side", "front")
    assert "the lathe makes 0.012 mm (0.0005 in) and the bar itself 0.006 mm" in said(tailtrue("reverse-test", job, *turned))
    told = json.loads(said(tailtrue("reverse-test", job, *turned, "--json")))
    assert (told["way"], told["collars"]) == ("away-from-you", None)
    assert tailtrue("reverse-test", job).returncode == 2
