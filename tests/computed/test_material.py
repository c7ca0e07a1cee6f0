"""What is bought and used up, against figures worked by hand."""

from typing import Any

import pytest

from tailtrue.computed.registry import Limited, register
from tailtrue.tables import Row, Table

_USED = {"compound_waste": "4", "compound_step": "0.5"}
TABLE = Table("used", tuple(Row("used", 2, {"name": name, "value": value}) for name, value in _USED.items()))
FIGURES: list[tuple[str, tuple[Any, ...], float]] = [
    ("bar.buy_length", (403.0, 2.0), 405),
    ("collar.buy_length", ("round", 38.0, 80.0, 2.0, 2, 40.0), 120),
    # 130 mm of stock, three blanks of 33 mm and three cuts of 3 mm
    ("collar.left_over", (130.0, 33.0, 3.0, 3), 22),
    # square slugs of 80 mm lie side by side on the plate
    ("collar.buy_length", ("slab", 40.0, 80.0, 2.0, 2, 40.0), 204),
    ("collar.buy_length", ("slab", 40.0, 80.0, 2.0, 3, 40.0), 286),
    # 25 mm round, 400 mm long: 196.350 cm3 at 7850 kg/m3
    ("bar.buy_mass", (25.0, 400.0, 7850.0), 1.54134),
    ("bar.finished_mass", (25.0, 400.0, 7850.0), 1.54134),
    # 75 mm round, 80 mm long: 353.429 cm3 at 2700 kg/m3
    ("collar.buy_mass", ("round", 75.0, 0.0, 90.0, 80.0, 2700.0), 0.954259),
    # tube 75 mm over 20 mm, 80 mm long: 328.296 cm3
    ("collar.buy_mass", ("round", 75.0, 20.0, 90.0, 80.0, 2700.0), 0.886399),
    # strip of plate 80 mm wide, 40 mm thick, 164 mm long: 524.8 cm3
    ("collar.buy_mass", ("slab", 80.0, 0.0, 40.0, 164.0, 2700.0), 1.41696),
    # two rings 70 mm over 25 mm, 35 mm wide: 235.030 cm3 at 2700 kg/m3
    ("collar.finished_mass", (70.0, 35.0, 25.0, 2700.0, 2), 0.634582),
    # two seats of 2750 mm2, 0.1 mm per side, and four times that: 2200 mm3, up to the next half of a millilitre
    ("consume.compound", (2750.0, 0.2, 2, TABLE), 2.5),
    # three seats: 3300 mm3
    ("consume.compound", (2750.0, 0.2, 3, TABLE), 3.5),
]


@pytest.mark.parametrize(("name", "given", "figure"), FIGURES)
def test_an_amount_is_that_worked_by_hand(name: str, given: tuple[Any, ...], figure: float) -> None:
    made = register()[name].function(*given)
    assert (made.value if isinstance(made, Limited) else made) == pytest.approx(figure, rel=1e-4)
