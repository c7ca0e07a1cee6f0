"""The schemas in the docs are the ones that the command prints."""

import json
from pathlib import Path

import pytest

from shops import tailtrue

FOLDER = Path(__file__).parents[1] / "docs" / "schemas"


@pytest.mark.parametrize("name", ["lathe", "crib", "stock", "job", "procedure"])
def test_a_published_schema_is_not_stale(name: str) -> None:
    printed = json.loads(tailtrue("schema").stdout)[name]
    published = json.loads((FOLDER / f"{name}.schema.json").read_text(encoding="utf-8"))
    assert published == printed, "run: tailtrue schema --out docs/schemas"
