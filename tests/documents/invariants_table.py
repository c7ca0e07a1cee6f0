"""The page that shows what holds of every paper, and where it is tested.

.venv/bin/python tests/documents/invariants_table.py
"""

import csv
import re
from pathlib import Path

HERE = Path(__file__).parent
PAGE = HERE.parents[1] / "docs" / "invariants.md"
_HEAD = """# What holds of every paper

Made from `tests/documents/invariants.csv` and the tests beside it with
`.venv/bin/python tests/documents/invariants_table.py`; do not edit it by hand.

Papers: P procedure, C card, R safety review, S standing procedure, I record. The numbers are those of the invariants.
The rules of the inspection have numbers of their own, and the two need not match. The tests run for every shipped
example, for four shops near them, and for jobs of every route near the starts of the sweep.

| invariant | what holds | papers | rules of the inspection | tests | kept | source |
| --- | --- | --- | --- | --- | --- | --- |
"""


def rows() -> list[dict[str, str]]:
    """The invariants as they stand in the table."""
    with (HERE / "invariants.csv").open(newline="", encoding="utf-8") as lines:
        return list(csv.DictReader(lines, delimiter="|"))


def tests() -> dict[str, list[str]]:
    """Test files by the invariant that a test of them names."""
    found: dict[str, list[str]] = {}
    for path in sorted(HERE.glob("test_*.py")):
        for number in sorted(set(re.findall(r"^def test_v(\d\d)_", path.read_text(encoding="utf-8"), re.MULTILINE))):
            found.setdefault(f"V{number}", []).append(path.name)
    return found


def page() -> str:
    """The whole page."""
    where = tests()
    lines = [
        f"| {one['id']} | {one['holds']} | {one['papers']} | {', '.join(one['rules'].split())} "
        f"| {', '.join(f'`{name}`' for name in where[one['id']])} | {one['kept']} | {one['source']} |"
        for one in rows()
    ]
    return _HEAD + "\n".join(lines) + "\n"


if __name__ == "__main__":
    PAGE.write_text(page(), encoding="utf-8")
