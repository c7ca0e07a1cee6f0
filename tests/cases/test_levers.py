"""A refusal names what somebody would change to be rid of it: to the side to which it can be changed."""

import json
from pathlib import Path
from typing import Any

from typer.testing import CliRunner

from shops import shop
from tailtrue.cli import app

SHORT = ("stock", 'length = "110 mm"', 'length = "40 mm"')


def levers(job: Path) -> dict[str, list[dict[str, Any]]]:
    done = CliRunner().invoke(app, ["check", str(job), "--json"])
    assert done.exit_code == 5, done.output
    return {error["where"]: error.get("hangs_on", []) for error in json.loads(done.stdout)["errors"]}


def test_short_stock_asks_for_longer_stock(tmp_path: Path) -> None:
    told = levers(shop(tmp_path, "fernhill", SHORT))["blank-cannot-be-gripped"]
    needed = {one["key"]: one["needed"] for one in told}
    assert needed["collar_bars, entry 1, length"].endswith(" or more would do")


def test_stock_that_is_long_enough_is_not_asked_to_be_shorter(tmp_path: Path) -> None:
    told = levers(shop(tmp_path, "fernhill", ("crib", r'spacer = "[^"]*"', 'spacer = "3 mm"')))
    assert told["blank-cannot-be-gripped"]
    assert all("length" not in one["key"] for one in told["blank-cannot-be-gripped"])


def test_a_micrometer_is_not_asked_to_cover_less(tmp_path: Path) -> None:
    told = levers(shop(tmp_path, "fernhill", SHORT))
    assert any(told.values())
    assert all("outside_micrometers" not in one["key"] for rows in told.values() for one in rows)
