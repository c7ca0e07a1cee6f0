"""What `tailtrue correct` and `true` say of keeping, of readings that count no more and of what still lacks, in inches."""

import re
import shlex
import subprocess
from pathlib import Path

import pytest

from shops import ROOT, shop, tailtrue

NOT_KEPT = "Not kept: the next call will not know of this one. Use `true`, or --keep."
FOUND = ("--head", "1.8410 in, 1.8411 in", "--tail", "1.8425 in, 1.8425 in", "--order", "HTTH")
SET_UP = """\
[record]
initials = "AB"
bar_orientation = "A at headstock"
tool_height_error = "0 in"
tool = "HSS"
speed = "470 1/min"
feed = "0.0021 in/rev"
depth_per_side = "0.002 in"
spring_passes = 2
cut_order = "T then H"
feed_direction = "toward headstock"
headstock_centre = "soft turned in place"
tailstock_centre = "dead"
tailstock_centre_id = "centre 1"
quill_extension = "1.5 in"
quill_clamped = true
tailstock_position = "18 in"
room = "66 degF"
spindle_warm = "15 min"
instrument = "micrometer 2"
instrument_zero_error = "0 in"
state = "as found"
"""


@pytest.fixture
def job(tmp_path: Path) -> Path:
    return shop(tmp_path, "quarry-road")


def said(done: subprocess.CompletedProcess[str]) -> str:
    assert done.returncode == 0, done.stderr
    return " ".join(done.stdout.split())


def set_up(job: Path) -> Path:
    path = job.parent / "visit.toml"
    path.write_text(SET_UP, encoding="utf-8")
    return path


def in_session(job: Path, lines: list[str], *words: object) -> subprocess.CompletedProcess[str]:
    command = [ROOT / ".venv" / "bin" / "tailtrue", "true", job, *words]
    text = "\n".join(lines) + "\n"
    return subprocess.run(
        [str(one) for one in command], input=text, capture_output=True, text=True, check=False, timeout=120
    )  # fmt: skip


@pytest.mark.parametrize("readings", [FOUND, ("--head", "1.8425 in, 1.8425 in", "--tail", "1.8425 in, 1.8425 in")])
def test_a_visit_that_is_not_kept_says_so_at_its_end(job: Path, readings: tuple[str, ...]) -> None:
    assert said(tailtrue("correct", job, *readings)).endswith(NOT_KEPT)


def test_a_kept_visit_does_not_say_that_it_was_not_kept(job: Path) -> None:
    words = said(tailtrue("correct", job, *FOUND, "--from", set_up(job), "--keep"))
    assert words.endswith("Kept as record 1 of the alignment log.")
    assert "Not kept" not in words


def test_a_caliper_is_not_told_to_keep_what_makes_no_record(job: Path) -> None:
    words = said(tailtrue("correct", job, "--caliper", "--head", "1.841 in", "--tail", "1.850 in"))
    assert words.endswith("Use `true`: it holds each round against the last.")


def test_a_session_without_keeping_says_at_both_ends_that_nothing_is_recorded(job: Path) -> None:
    done = in_session(job, ["1.8425 in"] * 4)
    words = said(done)
    assert "Type q to stop. Each round is held against the one before, and nothing is recorded" in words
    assert "What was kept" not in words
    assert words.endswith("write readings and result on the record sheet.")
    assert "Nothing was recorded" in words
    assert not (job.parent / "alignment-log.sqlite").exists()


def test_a_coarse_indicator_gives_a_hint_and_no_move_to_a_mark(job: Path) -> None:
    apart = ("--indicator", "--head", "0 in, 0 in", "--tail", "0.0022 in, 0.0022 in", "--order", "HTTH")
    words = said(tailtrue("correct", job, *apart))
    assert "NO VERDICT" in words
    assert "MOVE THE TAILSTOCK" not in words
    assert "As a hint: the tailstock goes toward you by about 0.0017 in" in words
    assert "read the fresh skims with a finer instrument" in words
    assert "Expected after a move to the mark" not in words


@pytest.mark.parametrize("more", [(), ("--read-twice",)])
def test_readings_of_one_collar_far_apart_bar_the_move_whatever_was_said(job: Path, more: tuple[str, ...]) -> None:
    apart = ("--head", "1.8410 in, 1.8446 in", "--tail", "1.8425 in, 1.8425 in", "--order", "HTTH")
    words = said(tailtrue("correct", job, *apart, *more))
    assert "DO NOT MOVE THE TAILSTOCK YET" in words
    assert "TOO CLOSE TO SAY" not in words
    assert "these readings count no more" in words
    assert "--read-twice" not in words


def test_what_reading_anew_can_answer_shows_the_option_for_it(job: Path) -> None:
    far = ("--head", "1.8410 in, 1.8411 in", "--tail", "1.8495 in, 1.8495 in", "--order", "HTTH")
    words = said(tailtrue("correct", job, *far))
    assert "DO NOT MOVE THE TAILSTOCK YET" in words
    assert "give this command the new readings and --read-twice" in words
    assert "MOVE THE TAILSTOCK toward you" in said(tailtrue("correct", job, *far, "--read-twice"))


def asked_for(stderr: str) -> list[str]:
    """The parts of the command that the message gives to paste."""
    found = re.search(r"add (--.*?)(?: \(or|;)", " ".join(stderr.split()))
    assert found is not None, stderr
    return shlex.split(found.group(1))


def test_what_the_last_record_does_not_say_is_given_as_parts_to_paste(job: Path) -> None:
    said(tailtrue("correct", job, *FOUND, "--from", set_up(job), "--keep", "--date", "2026-03-02"))
    next_one = ("--head", "1.8290 in, 1.8291 in", "--tail", "1.8294 in, 1.8294 in", "--order", "HTTH", "--keep")
    plain = tailtrue("correct", job, *next_one)
    assert plain.returncode == 4
    parts = asked_for(plain.stderr)
    assert parts[0] == "--as-before"
    assert "room=... degF" in parts
    assert "spindle_warm=... min" in parts
    again = tailtrue("correct", job, *next_one, "--as-before")
    assert again.returncode == 4
    assert asked_for(again.stderr) == parts[1:]
    assert "--as-before" not in again.stderr
    true_values = {"--initials": "CD", "--state": "as-left", "room": "68 degF", "spindle_warm": "20 min",
                   "instrument_zero_error": "0 in"}  # fmt: skip
    filled = []
    for part in parts:
        key = part.partition("=")[0]
        filled.append(f"{key}={true_values[key]}" if "=" in part else true_values[filled[-1]] if part == "..." else part)
    assert "Kept as record 2" in said(tailtrue("correct", job, *next_one, *filled))


def test_parts_that_were_pasted_with_their_dots_are_refused(job: Path) -> None:
    parts = asked_for(tailtrue("correct", job, *FOUND, "--keep").stderr)
    done = tailtrue("correct", job, *FOUND, "--keep", *parts)
    assert done.returncode == 2
    for name in ("--initials ...", "--say room=... degF", "--state ..."):
        assert f"{name}: still has its dots" in done.stderr
    assert not (job.parent / "alignment-log.sqlite").exists()
