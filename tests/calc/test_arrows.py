"""The formulas stand alone: they import the standard library and each other, nothing else."""

import ast
import sys
from pathlib import Path

import pytest

import tailtrue.calc

_FILES = sorted(Path(tailtrue.calc.__path__[0]).glob("*.py"))


@pytest.mark.parametrize("path", _FILES, ids=[path.stem for path in _FILES])
def test_imports_stay_inside(path: Path) -> None:
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        names = [alias.name for alias in node.names] if isinstance(node, ast.Import) else []
        if isinstance(node, ast.ImportFrom):
            assert node.level == 0
            names = [node.module or ""]
        for name in names:
            assert name.startswith("tailtrue.calc.") or name.split(".")[0] in sys.stdlib_module_names, name


def test_package_exports_nothing_by_itself() -> None:
    body = ast.parse((Path(tailtrue.calc.__path__[0]) / "__init__.py").read_text(encoding="utf-8")).body
    assert [type(node) for node in body] == [ast.Expr]
