"""The sheet numbers of the shipped examples: a printed sheet is told from every other one by its number."""

import tomllib
from collections import Counter

from shops import EXAMPLES


def test_no_two_shipped_jobs_have_one_sheet_number() -> None:
    tables = [tomllib.loads(path.read_text(encoding="utf-8")) for path in sorted(EXAMPLES.glob("*/*.toml"))]
    numbers = Counter(table["job"]["number"] for table in tables if "job" in table)
    assert len(numbers) > 20
    assert [number for number, count in numbers.items() if count > 1] == []


def test_a_sheet_of_rework_names_a_sheet_of_its_own_shop() -> None:
    for folder in EXAMPLES.iterdir():
        jobs = [tomllib.loads(path.read_text(encoding="utf-8")).get("job", {}) for path in folder.glob("*.toml")]
        numbers = {job.get("number") for job in jobs}
        assert {job["rework_sheet"] for job in jobs if "rework_sheet" in job} <= numbers
