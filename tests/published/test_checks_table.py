"""The page of checks in the docs is the one that the figures and the knowledge make, and leaves nothing out."""

import csv
import re
from pathlib import Path

from oracles import ORACLES
from published import checks_table

_DATA = Path(__file__).parent / "data"


def _figures() -> list[dict[str, str]]:
    rows: list[dict[str, str]] = []
    for path in _DATA.glob("*.csv"):
        with path.open(newline="", encoding="utf-8") as lines:
            rows += [row for row in csv.DictReader(lines) if "function" in row]
    return rows


def _lines_of_formulas() -> list[list[str]]:
    lines = [
        line for line in checks_table.page().split("## Tables held as a whole")[0].splitlines() if line.startswith("| `")
    ]
    return [re.split(r" *(?<!\\)\| *", line)[1:-1] for line in lines]


def test_the_page_is_not_stale() -> None:
    made = checks_table.page()
    assert checks_table.PAGE.read_text(encoding="utf-8") == made, "run: .venv/bin/python tests/published/checks_table.py"


def test_every_figure_is_counted_once() -> None:
    counted = {"printed": 0, "worked": 0, "derived": 0}
    for line in _lines_of_formulas():
        for basis, cell in zip(counted, line[2:5], strict=True):
            counted[basis] += int(cell.split(" ")[0]) if cell else 0
    assert counted == {basis: sum(row["basis"] == basis for row in _figures()) for basis in counted}


def test_every_row_of_the_other_tables_is_counted_once() -> None:
    part = checks_table.page().split("## Tables held as a whole")[1].split("\n## ")[0]
    counted = {cells[1]: sum(int(cell.split(" ")[0]) for cell in cells[2:6] if cell)
               for cells in (re.split(r" *\| *", line) for line in part.splitlines()[4:] if line)}  # fmt: skip
    expected = {}
    for path in _DATA.glob("*.csv"):
        with path.open(newline="", encoding="utf-8") as lines:
            rows = list(csv.DictReader(lines))
        if "function" not in rows[0]:
            expected[path.stem.replace("_", " ")] = len(rows)
    assert counted == expected


def test_a_line_has_a_quantity_a_formula_and_the_sources_of_its_figures() -> None:
    lines = _lines_of_formulas()
    assert len(lines) > 100
    for line in lines:
        assert len(line) == 7
        assert line[0].endswith(".")
        assert line[1]
        assert bool(line[6]) == any(line[2:5])


def test_every_table_with_a_row_from_memory_is_named() -> None:
    unconfirmed = checks_table.page().split("## Figures nobody has confirmed")[1]
    for path in (checks_table.ROOT / "knowledge").rglob("*.csv"):
        with path.open(newline="", encoding="utf-8") as lines:
            recalled = sum(bool(re.search(r"(^|; *)memory\b", row["source"])) for row in csv.DictReader(lines))
        name = path.relative_to(checks_table.ROOT / "knowledge").with_suffix("").as_posix()
        found = re.search(rf"^\| {name} \| \d+ \| (\d+) \|", unconfirmed, re.MULTILINE)
        assert (int(found[1]) if found else 0) == recalled, name


def test_every_other_program_is_named_beside_its_formula() -> None:
    sections = re.split(r"^## (\w+)$", checks_table.page().split("## Tables held as a whole")[0], flags=re.MULTILINE)
    named = {}
    for module, text in zip(sections[1::2], sections[2::2], strict=True):
        for line in text.splitlines():
            if line.startswith("| `"):
                cells = re.split(r" *(?<!\\)\| *", line)[1:-1]
                named[f"{module}.{cells[0].split('`')[1]}"] = cells[5]
    assert {name for name, cell in named.items() if cell not in {"", "pint: units"}} == set(ORACLES)
    assert all(ORACLES[name].program in named[name] for name in ORACLES)
    assert {name for name, cell in named.items() if "pint: units" in cell} == set(checks_table.with_units())
    assert len(checks_table.with_units()) > 50
