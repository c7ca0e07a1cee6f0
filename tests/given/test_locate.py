"""Lines of keys, held against the standard reader and against what an eye sees."""

import tomllib
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tailtrue.given.locate import Lines, locate

TEXT = '''\
# a comment with [brackets] and = signs
title = "a [[title]] # not a comment"

[lathe] # behind a heading
"quoted key" = 1
'literal.key' = 2
a.b . c = 3
speeds = [
  "65 1/min", # one ] two
  # nothing here
  "110 1/min",
  [ 1,
    2 ],
]
long = """
line [x]
""quotes"" and \\""" escaped
"""
raw = \'\'\'
[[no]] = "x"
\'\'\'
after = true

[[lathe.chucks]]
label = "one"
inline = { from = "1 mm", to = [1,
  2] }
[lathe.chucks.deeper]
x = 1

[[lathe.chucks]]
label = "two"
[[lathe.chucks.jaws]]
n = 1
[[lathe.chucks.jaws]]
n = 2

["odd \\u0041 table"]
end = 1979-05-27
'''


@pytest.mark.parametrize(
    ("path", "line"),
    [
        (("title",), 2),
        (("lathe",), 4),
        (("lathe", "quoted key"), 5),
        (("lathe", "literal.key"), 6),
        (("lathe", "a", "b", "c"), 7),
        (("lathe", "speeds"), 8),
        (("lathe", "speeds", 0), 9),
        (("lathe", "speeds", 1), 11),
        (("lathe", "speeds", 2, 1), 13),
        (("lathe", "long"), 15),
        (("lathe", "raw"), 19),
        (("lathe", "after"), 22),
        (("lathe", "chucks"), 24),
        (("lathe", "chucks", 0, "label"), 25),
        (("lathe", "chucks", 0, "inline", "to", 1), 27),
        (("lathe", "chucks", 0, "deeper", "x"), 29),
        (("lathe", "chucks", 1), 31),
        (("lathe", "chucks", 1, "label"), 32),
        (("lathe", "chucks", 1, "jaws", 1, "n"), 36),
        (("odd A table", "end"), 39),
    ],
)
def test_lines(path: tuple[str | int, ...], line: int) -> None:
    tomllib.loads(TEXT)
    assert locate(TEXT).by_path[path] == line


def test_a_path_that_is_not_there_has_the_line_of_what_holds_it() -> None:
    lines = locate(TEXT)
    assert lines.line("lathe", "chucks", 1, "marked_speed") == 31
    assert lines.line("nothing") == 1
    assert Lines({}).line("a", 1) == 1


def paths(value: Any, path: tuple[str | int, ...] = ()) -> set[tuple[str | int, ...]]:
    """Every path in what the standard reader made."""
    items = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
    return {path} - {()} | {deeper for key, one in items for deeper in paths(one, (*path, key))}


def test_every_path_of_the_standard_reader_is_found() -> None:
    assert paths(tomllib.loads(TEXT)) == set(locate(TEXT).by_path)


words = st.text(alphabet="abc-_ \"\\\n#[]{}=,.'", max_size=12)
keys = st.text(alphabet="abc", min_size=1, max_size=3) | words
scalars = st.booleans() | st.integers(-99, 99) | words
inner = st.recursive(scalars, lambda one: st.lists(one, max_size=3) | st.dictionaries(keys, one, max_size=3), max_leaves=6)


def quoted(word: str) -> str:
    return '"' + "".join(f"\\u{ord(c):04x}" if c in '"\\\n' else c for c in word) + '"'


def as_toml(value: Any) -> str:
    if isinstance(value, bool):
        return str(value).lower()
    if isinstance(value, int):
        return str(value)
    if isinstance(value, str):
        return quoted(value)
    if isinstance(value, list):
        return "[ # kept\n" + "".join(f"  {as_toml(one)},\n" for one in value) + "]"
    return "{" + ", ".join(f"{quoted(key)} = {as_toml(one)}" for key, one in value.items()) + "}"


@given(st.dictionaries(keys, inner, max_size=4))
def test_whatever_is_written_is_found_where_it_stands(tables: dict[str, Any]) -> None:
    entries = [f"{quoted(key)} = {as_toml(one)}\n" for key, one in tables.items()]
    text = "".join(entries)
    assert tomllib.loads(text) == tables
    lines = locate(text)
    assert paths(tables) == set(lines.by_path)
    for number, key in enumerate(tables):
        assert lines.line(key) == 1 + "".join(entries[:number]).count("\n")
