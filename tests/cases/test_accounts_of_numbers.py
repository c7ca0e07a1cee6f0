"""How each number came about: every account gives numbers with their units, a list as a list, a column from least to most."""

import re
from pathlib import Path

import pytest

from tailtrue.advise import make_procedure
from tailtrue.parts import Figure

EXAMPLES = Path(__file__).parents[2] / "docs" / "examples"


@pytest.mark.parametrize("name", ["fernhill/job", "quarry-road/job", "fernhill/use-bar"])
def test_no_account_is_a_bare_list_or_points_elsewhere(name: str) -> None:
    tree = make_procedure(EXAMPLES / f"{name}.toml")
    for made in tree.derivations:
        words = "".join(piece for piece in made.value if isinstance(piece, str))
        assert "table" not in words, made.label
        assert not re.search(r"[(\[]\s*\d", words), made.label
    speeds = next(made for made in tree.derivations if made.fact == "lathe.speeds")
    told = [piece for piece in speeds.value if isinstance(piece, Figure)]
    assert len(told) > 1
    assert all(one.unit == "1/min" for one in told)
    assert [one.value for one in told] == sorted(one.value for one in told)


def test_a_column_is_told_from_its_least_to_its_most() -> None:
    tree = make_procedure(EXAMPLES / "fernhill" / "use-bar.toml")
    assert tree.look_up is not None
    made = next(one for one in tree.derivations if one.fact == "align.table.difference")
    differences = [row.difference.value for row in tree.look_up.rows]
    assert [piece.value for piece in made.value if isinstance(piece, Figure)] == [min(differences), max(differences)]
