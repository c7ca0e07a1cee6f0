"""Collars too far apart for a diagnosis: the tailstock is brought near first."""

from pathlib import Path

from diagnosis.files import centres
from shops import EXAMPLES, tailtrue

JOB = EXAMPLES / "fernhill" / "job.toml"


def diagnosed(tmp_path: Path, head: str, tail: str) -> tuple[int, str]:
    path = tmp_path / "tests.toml"
    path.write_text(centres(head=head, tail=tail), encoding="utf-8")
    done = tailtrue("diagnose", JOB, path)
    return done.returncode, done.stdout + done.stderr


def test_nothing_is_blamed_for_collars_more_than_a_millimetre_apart(tmp_path: Path) -> None:
    code, text = diagnosed(tmp_path, "68.600", "69.923")
    assert code == 4
    assert "[between_centres]: has collars 1.323 mm apart; a diagnosis holds up to 0.12 mm" in text
    assert "bring the tailstock near" in text
    assert "explains" not in text


def test_the_bound_is_that_of_a_tailstock_far_out(tmp_path: Path) -> None:
    assert diagnosed(tmp_path, "69.600", "69.719")[0] == 0
    assert diagnosed(tmp_path, "69.600", "69.721")[0] == 4
