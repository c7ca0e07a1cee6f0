"""Arrows between rooms run one way."""

import ast
from pathlib import Path

import pytest

PACKAGE = Path(__file__).parents[1] / "engine" / "tailtrue"

# room: the rooms it may import, besides itself
MAY = {
    "calc": set(),
    "truth": set(),
    "places": set(),
    "parts": set(),
    "record_sheet": {"parts"},
    "work_record": {"parts", "record_sheet"},
    "review": {"parts"},
    "shop_sheet": {"parts"},
    "procedure": {"parts", "record_sheet", "review", "shop_sheet", "work_record"},
    "papers": {"parts", "procedure"},
    "sourcing": set(),
    "printed": {"calc", "tables"},
    "tables": {"sourcing"},
    "standards": {"calc", "places", "tables"},
    "errors": set(),
    "kept": set(),
    "quantities": {"errors"},
    "wording": {"parts"},
    "facts": set(),
    "conditions": {"errors", "facts", "quantities", "truth"},
    "decisions": {"conditions", "facts", "truth", "wording"},
    "given": {"errors", "facts", "places", "quantities", "tables", "wording"},
    "computed": {"calc", "facts", "printed", "quantities", "tables"},
    "store": {
        "computed", "conditions", "decisions", "errors", "facts", "given", "kept", "parts", "printed", "procedure", "quantities", "review", "sourcing", "tables",
        "truth", "wording",
    },
    "case": {"calc", "computed", "conditions", "decisions", "facts", "store", "tables"},
    "plan": {"case", "conditions", "errors", "facts", "store", "truth"},
    "assemble": {
        "case", "conditions", "decisions", "facts", "plan", "parts", "procedure", "quantities", "record_sheet", "review", "shop_sheet", "store", "truth", "wording", "work_record",
    },
    "refusals": {"assemble", "case", "conditions", "errors", "explaining", "facts", "parts", "procedure", "render", "store", "truth", "wording"},
    "inspection": {"parts", "procedure", "record_sheet", "review", "shop_sheet", "work_record"},
    "render": {"kept", "papers", "places", "parts", "procedure", "record_sheet", "review", "shop_sheet", "work_record"},
    "shop": {"facts", "given", "inspection", "quantities", "shop_caps", "store"},
    "shop_caps": {"given", "inspection", "store"},
    "documents": {"errors", "parts", "procedure", "render"},
    "overriding": {"assemble", "case", "facts", "parts", "refusals"},
    "advise": {
        "overriding", "assemble", "case", "errors", "explaining", "facts", "given", "inspection", "log", "truing", "places", "plan", "parts", "procedure",
        "refusals", "render", "review", "shop", "store", "truth",
    },
    "truing": {
        "assemble", "calc", "case", "errors", "facts", "given", "log", "papers", "parts", "procedure", "quantities", "refusals",
        "record_sheet", "render", "store", "tables", "truth",
    },
    "log": {"calc", "errors", "facts", "given", "places", "parts", "procedure", "quantities", "render", "store", "wording"},
    "diagnosis": {
        "calc", "case", "errors", "facts", "given", "places", "parts", "procedure", "quantities", "tables", "wording",
    },
    "explaining": {
        "assemble", "case", "computed", "conditions", "decisions", "errors", "facts", "given", "parts", "plan", "printed",
        "procedure", "quantities", "render", "store", "tables", "truth", "wording",
    },
    "sweeping": {
        "advise", "assemble", "case", "conditions", "errors", "facts", "given", "log", "plan", "procedure", "quantities",
        "store", "tables", "truing", "truth",
    },
    "reference": {"conditions", "decisions", "facts", "given", "printed", "store", "tables", "wording"},
    "cli": {
        "advise", "case", "diagnosis", "documents", "errors", "explaining", "facts", "given", "log", "places", "parts", "procedure", "quantities",
        "papers", "reference", "refusals", "render", "store", "sweeping", "truing",
    },
    "__main__": {"cli"},
    "__init__": set(),
}  # fmt: skip


def room_of(path: Path) -> str:
    return path.relative_to(PACKAGE).parts[0].removesuffix(".py")


def imported(path: Path) -> set[str]:
    rooms = set()
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        names = [node.module or ""] if isinstance(node, ast.ImportFrom) else []
        names += [alias.name for alias in node.names] if isinstance(node, ast.Import) else []
        if isinstance(node, ast.ImportFrom) and node.module == "tailtrue":
            names = [f"tailtrue.{alias.name}" for alias in node.names]
        rooms |= {name.split(".")[1] for name in names if name.startswith("tailtrue.")}
    return rooms


def test_every_room_is_on_the_map() -> None:
    assert {room_of(path) for path in PACKAGE.rglob("*.py")} == set(MAY)


@pytest.mark.parametrize("room", sorted(MAY))
def test_a_room_imports_only_what_it_may(room: str) -> None:
    for path in PACKAGE.rglob("*.py"):
        if room_of(path) == room:
            forbidden = imported(path) - MAY[room] - {room}
            assert not forbidden, f"{path.name} imports {forbidden}"


def test_the_map_has_no_circle() -> None:
    done: set[str] = set()
    while left := set(MAY) - done:
        free = {room for room in left if MAY[room] <= done}
        assert free, f"a circle among {sorted(left)}"
        done |= free
