"""Which centre drill makes the holes of the bar."""

from typing import Any

import pytest

from tailtrue.advise import knowledge
from tailtrue.computed.registry import register


@pytest.mark.parametrize(
    ("owned", "bar", "centre", "chosen"),
    [
        # The cone that is drilled counts: of A 3.15 that is 5.5 mm, under a third of 18 mm; its largest is 6.7 mm.
        (("A 3.15",), 18.0, "live", "A 3.15"),
        (("A 3.15",), 16.0, "live", None),
        (("A 2", "A 3.15"), 22.0, "live", "A 2"),
        (("A 2", "A 3.15"), 22.0, "dead", "A 3.15"),
        (("A 3.15", "A 2"), 16.0, "dead", "A 2"),
    ],
)
def test_the_hole_suits_the_bar_and_bears_on_a_dead_centre(
    owned: tuple[str, ...], bar: float, centre: str, chosen: str | None
) -> None:
    entry = register()["bar.centre_drill"]
    tables = knowledge().tables
    found: Any = entry.function(owned, bar, 0.34, 0.67, 60.0, centre, *(tables[name] for name in entry.tables))
    assert found.value == chosen
