"""A slip in a file of shop rules is answered in plain words: the entry counted from one, its line, what is allowed."""

from pathlib import Path

import pytest

from shops import tailtrue

STOP = """[[add]]
reason = "the insurer asks for it"
by = "shop manager"

[add.stop]
id = "too-large"
title = "Too large"
when = [{when}]
text = "Not here."
way_out = ["Take a smaller one."]
"""


def told(tmp_path: Path, text: str) -> str:
    rules = tmp_path / "shop-rules.toml"
    rules.write_text(text, encoding="utf-8")
    done = tailtrue("knowledge", "check", "--with", rules)
    assert done.returncode == 3, done.stdout + done.stderr
    said = done.stdout + done.stderr
    assert "should have" not in said
    assert ".0." not in said
    return said


@pytest.mark.parametrize(
    ("text", "words"),
    [
        (
            '[[tighten]]\nlimit = "limit.blank_speed"\nvalue = "700 1/min"\nreason = "x"\nby = "RK"\n',
            ("shop-rules.toml:4", "entry 1 of [[tighten]], reason", "is too short", "write at least 3 letters"),
        ),
        (
            '[[tighten]]\nlimit = "limit.blank_speed"\nvalue = "700 1/min"\nreason = "worn jaws"\n',
            ("entry 1 of [[tighten]], by", "not given", "add a line by = ..."),
        ),
        (
            STOP.format(when='"collar.diameter larger than 90 mm"'),
            ("cannot be read as a condition", '"FACT > 90 mm"', '"FACT is one of A, B"'),
        ),
        (
            '[[disable]]\ncaution = "chips-stringy-long"\nreason = "we know"\nby = "RK"\n',
            ("no caution has this name", "nearest: ", "stringy-chips"),
        ),
    ],
)
def test_each_slip_is_told_in_words_with_what_is_allowed(tmp_path: Path, text: str, words: tuple[str, ...]) -> None:
    said = told(tmp_path, text)
    assert [one for one in words if one not in said] == []
