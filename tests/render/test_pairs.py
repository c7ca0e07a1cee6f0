"""The ends of a band stay in order on paper, in the system of the dials and in the other one."""

import re
from decimal import Decimal
from functools import cache
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tailtrue.advise import make_procedure
from tailtrue.parts import Figure, Rounding
from tailtrue.render.html import to_html
from tailtrue.render.markdown import to_markdown
from tailtrue.render.values import value_line
from tailtrue.render.words import say

EXAMPLES = Path(__file__).parents[2] / "docs" / "examples"
JOBS = [
    "fernhill/job.toml", "quarry-road/job.toml", "fernhill/rework.toml", "quarry-road/use-bar.toml",
    "fernhill/job-plate.toml",
]  # fmt: skip
_NUMBER = r"(\d+(?:\.\d+)?)\s(mm|in)"
_BAND = re.compile(rf"{_NUMBER}(?: \({_NUMBER}\))? to {_NUMBER}(?: \({_NUMBER}\))?")


def _fit(value: float, bound: str, rounding: Rounding = "fit") -> Figure:
    return Figure.model_validate(
        {"fact": f"fit.{bound}", "value": value, "unit": "mm", "rounding": rounding, "bound": bound}
    )


def _ends(words: str) -> list[tuple[Decimal, Decimal]]:
    """The two ends of each band in a text, in each system that it is printed in."""
    found = []
    for one in _BAND.finditer(words):
        low, _, low_other, _, high, _, high_other, _ = one.groups()
        found.append((Decimal(low), Decimal(high)))
        if low_other and high_other:
            found.append((Decimal(low_other), Decimal(high_other)))
    return found


@settings(max_examples=300, deadline=None)
@given(
    low=st.floats(min_value=1.0, max_value=60.0),
    more=st.one_of(st.just(0.0), st.floats(min_value=0.0, max_value=0.05)),
    rounding=st.sampled_from(["fit", "size", "length"]),
    dials=st.sampled_from(["metric", "inch"]),
)
def test_no_band_is_printed_inverted(low: float, more: float, rounding: Rounding, dials: str) -> None:
    text = (_fit(low, "least", rounding), " to ", _fit(low + more, "most", rounding))
    ends = _ends(say(text, dials))  # type: ignore[arg-type]
    assert len(ends) == 2
    assert all(least <= most for least, most in ends)
    line = value_line(text, dials)  # type: ignore[arg-type]
    assert line is not None
    for words in (line.number, line.other.partition("\N{NO-BREAK SPACE}")[0]):
        least, most = map(Decimal, words.split(" to "))
        assert least <= most


def test_a_narrow_band_has_more_digits_where_it_would_cross_and_nowhere_else() -> None:
    text = (_fit(0.0397, "least"), " to ", _fit(0.0403, "most"))
    assert say(text, "metric").replace("\N{NO-BREAK SPACE}", " ") == "0.040 mm (0.00157 in) to 0.040 mm (0.00158 in)"
    wide = (_fit(0.03, "least"), " to ", _fit(0.05, "most"))
    assert say(wide, "metric").replace("\N{NO-BREAK SPACE}", " ") == "0.030 mm (0.0012 in) to 0.050 mm (0.0019 in)"


def test_two_ends_that_are_one_number_are_printed_as_one() -> None:
    text = (_fit(0.04, "least"), " to ", _fit(0.04, "most"))
    assert say(text, "metric").replace("\N{NO-BREAK SPACE}", " ") == "0.040 mm (0.0016 in) to 0.040 mm (0.0016 in)"


@cache
def _papers(job: str) -> tuple[str, str]:
    tree = make_procedure(EXAMPLES / job)
    return to_markdown(tree), re.sub(r"<[^>]+>", "", to_html(tree))


@pytest.mark.parametrize("job", JOBS)
def test_every_band_of_a_paper_is_in_order_in_both_systems(job: str) -> None:
    for page in _papers(job):
        ends = _ends(page)
        assert ends
        # Where work goes from a large to a small size the text says from and to; no such range is a band.
        assert [pair for pair in ends if pair[0] > pair[1]] == []
