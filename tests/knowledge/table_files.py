"""Tables of the knowledge as they stand in their files."""

import csv
from pathlib import Path

KNOWLEDGE = Path(__file__).resolve().parents[2] / "knowledge"
PATHS = {path.relative_to(KNOWLEDGE).with_suffix("").as_posix(): path for path in sorted(KNOWLEDGE.rglob("*.csv"))}
Rows = list[dict[str, str]]


def read(name: str) -> Rows:
    with PATHS[name].open(encoding="utf-8", newline="") as opened:
        return list(csv.DictReader(opened))


def used(*roles: str) -> Rows:
    return [row for row in read("materials/materials") if set(row["roles"].split("; ")) & set(roles)]
