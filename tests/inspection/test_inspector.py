"""The inspection fails closed, says the same twice, and never breaks, whatever stands on the sheet."""

import ast
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

import tailtrue.inspection
from tailtrue.inspection import RULES, inspect
from tailtrue.inspection.rule import Fault, Rule
from tailtrue.inspection.sheet import Sheet
from tailtrue.parts import Figure, Node
from tailtrue.procedure import Procedure

from .sample import procedure, shop

TreePath = tuple[str | int, ...]


def _raises(_: Sheet) -> Iterator[Fault]:
    yield Fault("step 1.1", "something is wrong before it breaks")
    raise ZeroDivisionError("by nothing")


def test_a_rule_that_breaks_is_a_failure_and_the_others_still_judge() -> None:
    report = inspect(procedure(), shop(), (Rule("X01", _raises, "house rule: test"), *RULES))
    assert [failure.rule for failure in report.failures] == ["X01", "X01"]
    assert report.failures[0].where == "step 1.1"
    assert "could not be judged (ZeroDivisionError: by nothing)" in report.failures[1].what


def test_a_sheet_that_cannot_be_read_is_a_failure() -> None:
    (failure,) = inspect(object(), shop()).failures  # type: ignore[arg-type]
    assert failure.rule == "V00"
    assert failure.what.startswith("the sheet could not be read (TypeError")


def test_a_shop_that_is_not_known_lets_nothing_pass() -> None:
    assert not inspect(procedure(), None).ok  # type: ignore[arg-type]


TREE = {
    "tailtrue.record_sheet",
    "tailtrue.parts",
    "tailtrue.procedure",
    "tailtrue.review",
    "tailtrue.shop_sheet",
    "tailtrue.work_record",
}


def test_the_inspection_imports_the_tree_and_the_standard_library_alone() -> None:
    folder = Path(tailtrue.inspection.__file__).parent
    for path in folder.glob("*.py"):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            names = [node.module or ""] if isinstance(node, ast.ImportFrom) else []
            names += [alias.name for alias in node.names] if isinstance(node, ast.Import) else []
            for name in names:
                own = name in TREE or name.startswith("tailtrue.inspection")
                assert own or name.split(".")[0] in sys.stdlib_module_names, f"{path.name} imports {name}"


def _places(part: object, path: TreePath = ()) -> Iterator[TreePath]:
    """Every place of a tree, from the top."""
    yield path
    if isinstance(part, Node):
        for name in type(part).model_fields:
            yield from _places(getattr(part, name), (*path, name))
    elif isinstance(part, tuple):
        for index, value in enumerate(part):
            yield from _places(value, (*path, index))
    elif isinstance(part, dict):
        for key, value in part.items():
            yield from _places(value, (*path, key))


def _get(part: Any, path: TreePath) -> Any:
    for key in path:
        part = getattr(part, str(key)) if isinstance(part, Node) else part[key]
    return part


def _put(part: Any, path: TreePath, value: Any) -> Any:
    """The tree with one place changed."""
    if not path:
        return value
    key, *rest = path
    inner = _put(_get(part, (key,)), tuple(rest), value)
    if isinstance(part, Node):
        return part.model_copy(update={str(key): inner})
    if isinstance(part, dict):
        return {**part, key: inner}
    return (*part[: int(key)], inner, *part[int(key) + 1 :])


SAMPLE = procedure()
PLACES = [path for path in _places(SAMPLE) if path]
LISTS = [path for path in PLACES if isinstance(_get(SAMPLE, path), tuple) and len(_get(SAMPLE, path)) > 1]
FIGURES = [path for path in PLACES if isinstance(_get(SAMPLE, path), Figure)]
NUMBERS = st.one_of(st.floats(), st.sampled_from([0.0, -1.0, 1e-320, 1e308]))


def _other(value: object) -> st.SearchStrategy[Any]:
    """Another value of the same kind."""
    if isinstance(value, bool):
        return st.just(not value)
    if isinstance(value, int):
        return st.integers(-10, 10)
    if isinstance(value, float):
        return NUMBERS
    if isinstance(value, str):
        return st.one_of(st.text(max_size=30), st.sampled_from(["", "{{", "None", "turning", "reads radius", "9 mm"]))
    if isinstance(value, Figure):
        return NUMBERS.map(lambda number: value.model_copy(update={"value": number}))
    if isinstance(value, tuple):
        return st.one_of(st.just(()), st.permutations(value).map(tuple), st.just((*value, *value)))
    if isinstance(value, dict):
        return st.just({})
    return st.just(value)


@st.composite
def changed_sheets(draw: st.DrawFn) -> Procedure:
    """The sample with some of its places changed at random."""
    sheet: Any = SAMPLE
    for path in draw(st.lists(st.sampled_from(PLACES), min_size=1, max_size=6)):
        try:
            value = _get(sheet, path)
        except (IndexError, KeyError, AttributeError, TypeError):
            continue  # an earlier change took this place away
        sheet = _put(sheet, path, draw(_other(value)))
    return sheet  # type: ignore[no-any-return]


@settings(deadline=None, max_examples=300, suppress_health_check=[HealthCheck.too_slow])
@given(changed_sheets())
def test_no_change_breaks_the_inspector(sheet: Procedure) -> None:
    report = inspect(sheet, shop())
    assert all("could not be" not in failure.what for failure in report.failures)
    assert report == inspect(sheet, shop())


def test_a_row_of_trouble_without_its_cells_breaks_no_rule() -> None:
    report = inspect(_put(SAMPLE, ("if_it_goes_wrong",), ((),)), shop())
    assert all("could not be" not in failure.what for failure in report.failures)


@settings(deadline=None, max_examples=100, suppress_health_check=[HealthCheck.too_slow])
@given(st.sampled_from(LISTS), st.data())
def test_no_order_breaks_the_inspector(path: TreePath, data: st.DataObject) -> None:
    order = tuple(data.draw(st.permutations(_get(SAMPLE, path))))
    report = inspect(_put(SAMPLE, path, order), shop())
    assert all("could not be" not in failure.what for failure in report.failures)


@settings(deadline=None, max_examples=60)
@given(st.sampled_from(FIGURES), st.sampled_from([float("nan"), float("inf"), float("-inf")]))
def test_no_number_that_is_none_passes(path: TreePath, wrong: float) -> None:
    figure = _get(SAMPLE, path).model_copy(update={"value": wrong})
    report = inspect(_put(SAMPLE, path, figure), shop())
    assert "V66" in {failure.rule for failure in report.failures}
