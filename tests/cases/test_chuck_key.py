"""A chuck key that nobody told of is taken for the worse one: it stays in the chuck."""

from pathlib import Path

import pytest

from shops import shop
from tailtrue.advise import make_procedure

KEY = r'^chuck_key = "plain"\n'


@pytest.mark.parametrize(
    ("key", "warned"),
    [('chuck_key = "plain"\n', True), ("", True), ('chuck_key = "self-ejecting"\n', False)],
    ids=["plain", "not told", "pushed out by a spring"],
)
def test_the_sheet_warns_of_a_key_that_is_not_known_to_push_itself_out(tmp_path: Path, key: str, warned: bool) -> None:
    sheet = make_procedure(shop(tmp_path, "quarry-road", ("lathe", KEY, key)))
    found = ["".join(str(piece) for piece in one.text) for one in sheet.findings if one.level == "attention"]
    assert any("Take it out before your hand leaves it" in one for one in found) == warned
