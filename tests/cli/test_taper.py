"""A taper by set-over, as its user asks for it."""

import json
from pathlib import Path

import pytest

from shops import EXAMPLES, shop, tailtrue

JOB = EXAMPLES / "fernhill" / "job.toml"
WORK = ("--work-length", "250 mm", "--hole-depth", "3 mm", "--small-end", "tailstock")


def test_it_says_how_far_and_which_way_and_writes_the_tag(tmp_path: Path) -> None:
    done = tailtrue("taper", JOB, "--large", "30 mm", "--small", "26 mm", "--length", "100 mm", *WORK, "--out", tmp_path)
    assert done.returncode == 0, done.stderr
    flat = " ".join(done.stdout.replace("\u00a0", " ").split())
    assert "SET THE TAILSTOCK OVER toward you by 4.879 mm" in flat
    assert flat.index("SET IT OVER") < flat.index("CHECK THE TAPER") < flat.index("BACK TO NOUGHT")
    assert "TAILSTOCK SET OVER" in (tmp_path / "set-over-tag.html").read_text(encoding="utf-8")
    assert [path.name for path in tmp_path.iterdir()] == ["set-over-tag.html"]


def test_without_out_nothing_is_written(tmp_path: Path) -> None:
    before = sorted(tmp_path.rglob("*"))
    done = tailtrue("taper", JOB, "--ratio", "1:50", *WORK)
    assert done.returncode == 0
    assert "Made:" not in done.stdout
    assert sorted(tmp_path.rglob("*")) == before


@pytest.mark.parametrize(
    ("option", "said"), [("--per-foot", "0.24 in"), ("--ratio", "1:50"), ("--angle", "0.5729387 deg half")]
)
def test_each_way_to_say_the_taper(option: str, said: str) -> None:
    found = json.loads(tailtrue("taper", JOB, option, said, *WORK, "--json").stdout)
    assert found["figures"]["setover.amount"] == pytest.approx(244 / 100, rel=1e-4)
    assert (found["way"], found["ok"]) == ("toward-you", True)


def test_the_check_after_a_cut(tmp_path: Path) -> None:
    cut = ("--cut-large", "29.000 mm", "--cut-small", "27.900 mm", "--cut-apart", "50 mm")
    found = json.loads(tailtrue("taper", JOB, "--ratio", "1:50", *WORK, *cut, "--json").stdout)
    assert (found["after_cut"], found["correction_way"]) == ("back", "away-from-you")
    # 1.1 over 50 is 0.022; the set-over for it less that for 0.02, times 244 / 2
    assert found["figures"]["setover.correction"] == pytest.approx(-0.244, rel=1e-3)
    del tmp_path


def test_refusals_and_faults_end_with_their_codes(tmp_path: Path) -> None:
    job = shop(tmp_path, "fernhill", ("lathe", 'set_over = "two-screws"', 'set_over = "none"'))
    refused = tailtrue("taper", job, "--ratio", "1:50", *WORK, "--out", tmp_path / "out")
    assert refused.returncode == 5
    assert "This tailstock cannot be set over" in refused.stderr
    assert "top slide" in refused.stderr
    assert not (tmp_path / "out").exists()
    wrong = tailtrue("taper", JOB, "--ratio", "50")
    assert wrong.returncode == 4
    for part in ("--ratio: 50", "--small-end", "--hole-depth", "--work-length"):
        assert part in wrong.stderr
    assert tailtrue("taper", JOB, "--angle", "3 deg", *WORK).returncode == 4


WANTED = EXAMPLES / "fernhill" / "taper-and-return.toml"


def test_what_the_job_says_of_the_taper_need_not_be_said_again() -> None:
    found = json.loads(tailtrue("taper", WANTED, "--json").stdout)
    typed = json.loads(tailtrue("taper", JOB, "--large", "30 mm", "--small", "28 mm", "--length", "100 mm", *WORK,
                                "--travel", "8 mm", "--json").stdout)  # fmt: skip
    assert found["ok"]
    assert found["figures"]["setover.amount"] == typed["figures"]["setover.amount"] == pytest.approx(244 / 100, rel=1e-3)


def test_the_check_after_a_cut_is_added_to_what_the_job_says() -> None:
    cut = ("--cut-large", "29.000 mm", "--cut-small", "27.900 mm", "--cut-apart", "50 mm")
    found = json.loads(tailtrue("taper", WANTED, *cut, "--json").stdout)
    assert (found["after_cut"], found["correction_way"]) == ("back", "away-from-you")


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (("--large", "31 mm"), "--large: 31 mm: stands otherwise in taper-and-return.toml:19: 30 mm"),
        (("--hole-depth", "4 mm"), "--hole-depth: 4 mm: stands otherwise in taper-and-return.toml:23: 3 mm"),
        (("--small-end", "headstock"), "--small-end: headstock: stands otherwise in taper-and-return.toml:26: tailstock"),
        (("--ratio", "1:50"), "--ratio: 1:50: the taper is said in taper-and-return.toml:19 already"),
    ],
)
def test_what_is_typed_otherwise_than_in_the_job_is_refused(words: tuple[str, ...], says: str) -> None:
    done = tailtrue("taper", WANTED, *words)
    assert (done.returncode, done.stdout) == (4, "")
    assert says in done.stderr
    assert "leave the option out, or mend the job file" in done.stderr
    # A depth for both ends is told for each of them.
    assert len(done.stderr.splitlines()) == (5 if words[0] == "--hole-depth" else 3)


def test_the_same_again_is_no_fault() -> None:
    done = tailtrue("taper", WANTED, "--large", "3 cm", "--hole-depth", "3 mm", "--small-end", "Tailstock")
    assert done.returncode == 0, done.stderr


def test_half_a_taper_in_the_job_is_completed_or_told(tmp_path: Path) -> None:
    job = shop(tmp_path, "fernhill", ("taper-and-return", 'taper_length = "100 mm"\n', "")).with_name(
        "taper-and-return.toml"
    )
    done = tailtrue("taper", job)
    assert done.returncode == 4
    assert "--length" in done.stderr
    assert "or write it in the job file" in done.stderr
    assert tailtrue("taper", job, "--length", "100 mm").returncode == 0
