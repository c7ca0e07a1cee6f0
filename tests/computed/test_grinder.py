"""Gaps at the bench grinder against 29 CFR 1910.215: (a)(4) an eighth of an inch at the rest, (b)(9) a quarter at the tongue."""

import pytest

from shops import EXAMPLES
from tailtrue.advise import advise
from tailtrue.quantities import read_quantity

PUBLISHED = {"grinder.rest": "1/8 in", "grinder.tongue": "1/4 in"}


@pytest.mark.parametrize(("shop", "printed"), [("fernhill", ("3 mm", "6 mm")), ("quarry-road", ("1/8 in", "1/4 in"))])
def test_a_gap_is_told_on_the_scale_of_the_shop_and_is_never_wider_than_the_rule(
    shop: str, printed: tuple[str, str]
) -> None:
    case = advise(EXAMPLES / shop / "job.toml").case
    for (name, rule), expected in zip(PUBLISHED.items(), printed, strict=True):
        size, marked = case.value(name)
        assert marked.replace("\u00a0", " ") == expected
        assert size == pytest.approx(read_quantity(marked, "mm"))
        assert size <= read_quantity(rule, "mm")
