"""A computed fact takes its figure from a formula with a range and a check; by itself it only adds, takes away and chooses."""

import ast
from pathlib import Path

import pytest

import tailtrue.computed

_FILES = sorted(Path(tailtrue.computed.__path__[0]).glob("*.py"))
_OPERATORS = (ast.Mult, ast.Div, ast.Pow, ast.FloorDiv, ast.Mod)
_FORMULAS_IN_DISGUISE = {"sqrt", "hypot", "ceil", "floor", "prod", "pi"}

_TRIED = "a candidate is tried against a share, a safety or a margin of a table; what is printed of it comes from a formula"
_COUNT = "a count of pieces or of pecks, each timed by a formula"

# Where arithmetic stands and may stay, with the reason.
_EXPLAINED = {
    "blank_collet.collet_serves": "answers yes or no",
    "collar_source._against": _TRIED,
    "collar_source._plate": _TRIED,
    "collar_source._too_narrow_for_halves": "answers yes or no",
    "drills.demand": _TRIED,
    "faceplate.bore_margin": _TRIED,
    "holding.soft_jaws_fit": "answers yes or no",
    "holding.stub_serves": "answers yes or no",
    "drill_planner._asks": _TRIED,
    "drill_planner._by_rule": _TRIED,
    "drill_planner._deep": _TRIED,
    "drill_planner.feeds_for": _TRIED,
    "drill_planner.speed": _TRIED,
    "joint_clamp._drawn": _TRIED,
    "joint_clamp.found": _TRIED,
    "joint_grip._fit": _TRIED,
    "joint_pins.__init__": _TRIED,
    "joint_pins.found": _TRIED,
    "joint_pins.across": _TRIED,
    "joint_screws.found": _TRIED,
    "material._in_all": _COUNT,
    "middle_collar.sag": "a list of loads, one for each collar",
    "operation.limited_speed": "a speed is compared with what is still borne, and not printed",
    "slug.corners_sawn": _COUNT,
    "slug.corners_turned": _COUNT,
    "setover.cut_far": "answers yes or no",
    "setover.taper": "the inch of a taper in inches for each foot, which comes as a length",
    "speed_table.surface_band": "a speed of the table that another operation scales; the band goes into a formula",
    "times._pecked": _COUNT,
    "times.collar_turning": _COUNT,
    "times.cool_roughing": "a count of waits, each from a table",
    "times.handling": "minutes of a table into seconds",
    "times.skim": _COUNT,
    "visit_rounds.share_is": "answers with a word",
    "visit_rounds.swapped": "answers yes or no",
    "visit_rounds.turned_round": "answers yes or no",
    "visit_rounds.worse": "answers yes or no",
}


def _reckons(node: ast.AST) -> bool:
    if isinstance(node, ast.BinOp | ast.AugAssign):
        return isinstance(node.op, _OPERATORS)
    return isinstance(node, ast.Name) and node.id in _FORMULAS_IN_DISGUISE


def _found(source: str, room: str) -> set[str]:
    """The innermost functions in which something is multiplied, divided or raised."""
    found: set[str] = set()

    def walk(node: ast.AST, inside: str) -> None:
        if isinstance(node, ast.FunctionDef):
            inside = node.name
        if _reckons(node):
            found.add(f"{room}.{inside}")
        for child in ast.iter_child_nodes(node):
            walk(child, inside)

    walk(ast.parse(source), "")
    return found


def test_no_fact_multiplies_divides_or_raises_by_itself() -> None:
    found = set().union(*(_found(path.read_text(encoding="utf-8"), path.stem) for path in _FILES))
    assert found == set(_EXPLAINED)


@pytest.mark.parametrize(
    "wrong", ["return 2 * depth", "return length / width", "return size ** 2", "total *= share", "return hypot(a, b)"]
)
def test_arithmetic_is_noticed(wrong: str) -> None:
    assert _found(f"def depth_of_cut():\n    {wrong}\n", "room") == {"room.depth_of_cut"}


def test_sums_and_choices_are_no_arithmetic() -> None:
    assert _found("def left(a, b):\n    return max(0.0, a - b) + min(a, b)\n", "room") == set()
