"""A name of the trade that stands for several metals is answered with those metals, not with a list of all."""

import shutil
from pathlib import Path

import pytest

from shops import EXAMPLES, ROOT, tailtrue
from tailtrue.tables import read_table

NAMES = read_table(ROOT / "knowledge" / "words" / "trade_names.csv", "words/trade_names").rows
MATERIALS = {row.text("material") for row in read_table(ROOT / "knowledge" / "materials" / "materials.csv", "m").rows}


def answer(tmp_path: Path, named: str, material: str) -> list[str]:
    shutil.copytree(EXAMPLES / "quarry-road", tmp_path / "shop")
    stock = tmp_path / "shop" / "stock.toml"
    text = stock.read_text(encoding="utf-8")
    assert f'material = "{named}"' in text
    stock.write_text(text.replace(f'material = "{named}"', f'material = "{material}"', 1), encoding="utf-8")
    done = tailtrue("check", tmp_path / "shop" / "job.toml")
    assert done.returncode == 4
    return done.stderr.splitlines()


@pytest.mark.parametrize(
    ("named", "material", "meant"),
    [
        ("steel-low-carbon-cold-drawn", "drill rod", "tool-steel-o1 or tool-steel-w1"),
        ("steel-low-carbon-cold-drawn", "Silver Steel", "tool-steel-w1"),
        ("brass-free-cutting", "brass", "brass-free-cutting"),
        ("brass-free-cutting", "cast iron", "iron-grey"),
    ],
)
def test_the_metals_that_the_name_may_mean_are_offered(tmp_path: Path, named: str, material: str, meant: str) -> None:
    said = answer(tmp_path, named, material)
    place = next(number for number, line in enumerate(said) if f"{material} is {meant}" in line)
    assert said[place + 1].strip().startswith(f"write {meant}")


def test_a_name_of_metals_for_the_other_piece_is_not_offered(tmp_path: Path) -> None:
    said = answer(tmp_path, "steel-low-carbon-cold-drawn", "brass")
    place = next(number for number, line in enumerate(said) if "none of it serves as bar stock" in line)
    assert "brass-free-cutting" not in said[place + 1]


def test_every_name_means_materials_that_are_there_and_stands_once() -> None:
    meant = {one.strip() for row in NAMES for one in row.text("choices").split(";")}
    assert meant <= MATERIALS
    names = [row.text("name").casefold() for row in NAMES]
    assert len(set(names)) == len(names)
    assert not set(names) & MATERIALS
