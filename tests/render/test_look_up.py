"""The look-up table on sheet and card: what is too close to say is read again, and nothing is moved for it."""

from pathlib import Path

import pytest

from shops import EXAMPLES, tailtrue
from tailtrue.parts import Figure
from tailtrue.procedure import LookUp, Move
from tailtrue.render.look_up import look_up_columns

SAID = {
    "procedure.md": "| **read again** |", "card.md": "| read again |",
    "procedure.html": "<td>read again</td>", "card.html": '<td class="said">read again</td>',
}  # fmt: skip


def _mm(value: float) -> Figure:
    return Figure(fact="align.table", value=value, unit="mm", rounding="difference")


def _table(outside: float | None) -> LookUp:
    moves = ((0.01, None), (0.014, 0.01), (0.02, 0.015), (0.03, 0.022))
    return LookUp(
        rows=tuple(Move(difference=_mm(one), move=None if move is None else _mm(move)) for one, move in moves),
        larger_at_tailstock="toward you",
        smaller_at_tailstock="away from you",
        inside=_mm(0.012) if outside else None,
        outside=_mm(outside) if outside else None,
        leave=_mm(0.012),
        verdict_possible=bool(outside),
    )


def test_what_is_too_close_to_say_is_read_again() -> None:
    assert look_up_columns(_table(0.02), "metric")[1].numbers == (None, "read again", "read again", "0.022")


def test_without_a_verdict_every_difference_beyond_the_doubt_has_its_move() -> None:
    assert look_up_columns(_table(None), "metric")[1].numbers == (None, "0.010", "0.015", "0.022")


def test_sheet_and_card_of_an_example_say_read_again_as_the_record_does(tmp_path: Path) -> None:
    done = tailtrue("make", EXAMPLES / "fernhill" / "use-bar.toml", "--out", tmp_path)
    assert done.returncode == 0, done.stderr
    for name, said in SAID.items():
        assert said in (tmp_path / name).read_text(encoding="utf-8"), name
    for name in ("procedure.md", "record.md"):
        words = (tmp_path / name).read_text(encoding="utf-8")
        for rule in (
            "Between two lines take the nearer one.",
            "on take the nearer one with a number.",
            "Beyond the end of the table",
        ):
            assert words.count(rule) == 1, (name, rule)


@pytest.mark.parametrize("inside", [0.012, 0.0125])
def test_what_is_surely_in_limits_is_left_alone(inside: float) -> None:
    table = _table(0.02).model_copy(update={"inside": _mm(inside)})
    assert look_up_columns(table, "metric")[1].numbers[0] is None
