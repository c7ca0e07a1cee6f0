"""The formulas stand alone: they import the standard library and each other; general mathematics only where it is used."""

import ast
import re
import sys
from pathlib import Path

import pytest

import tailtrue.calc

_FILES = sorted(Path(tailtrue.calc.__path__[0]).glob("*.py"))


_GENERAL = {"numpy", "scipy"}  # slow to import: inside a function only, so that the main job does not pay for them


@pytest.mark.parametrize("path", _FILES, ids=[path.stem for path in _FILES])
def test_imports_stay_inside(path: Path) -> None:
    tree = ast.parse(path.read_text(encoding="utf-8"))
    inside = {
        id(node) for function in ast.walk(tree) if isinstance(function, ast.FunctionDef) for node in ast.walk(function)
    }
    for node in ast.walk(tree):
        names = [alias.name for alias in node.names] if isinstance(node, ast.Import) else []
        if isinstance(node, ast.ImportFrom):
            assert node.level == 0
            names = [node.module or ""]
        for name in names:
            general = id(node) in inside and name.split(".")[0] in _GENERAL
            assert general or name.startswith("tailtrue.calc.") or name.split(".")[0] in sys.stdlib_module_names, name


def test_package_exports_nothing_by_itself() -> None:
    body = ast.parse((Path(tailtrue.calc.__path__[0]) / "__init__.py").read_text(encoding="utf-8")).body
    assert [type(node) for node in body] == [ast.Expr]


def test_the_map_names_every_module_and_no_other() -> None:
    named = re.findall(r"`([a-z]\w*)`", tailtrue.calc.__doc__ or "")
    assert sorted(named) == sorted(path.stem for path in _FILES if path.stem != "__init__")
