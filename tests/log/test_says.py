"""What a chart of the log says is filled with just the words that its line is declared to have."""

import ast
from pathlib import Path

import tailtrue.log
from tailtrue.log.says import FILLED_WITH, said

ROOM = Path(tailtrue.log.__file__).parent


def test_every_line_is_said_with_the_words_it_is_declared_to_have() -> None:
    found = {}
    for path in ROOM.glob("*.py"):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id == "said":
                (name,) = node.args
                assert isinstance(name, ast.Constant)
                found[name.value] = {f"the.{one.arg}" for one in node.keywords}
    assert found == {name: set(words) for name, words in FILLED_WITH.items()}


def test_a_line_is_filled_with_numbers_and_words() -> None:
    assert said("again", days=30, day="2026-02-04", why="it is time") == (
        "Check again within 30 days, by 2026-02-04: it is time."
    )
