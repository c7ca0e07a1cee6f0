"""Every formula says what it is, in one fixed order, with a unit on every value and an example that runs."""

import doctest
import importlib
import inspect
import pkgutil
import re
from collections.abc import Callable
from typing import Any

import pytest

import tailtrue.calc

# `validity` holds the checks that formulas call, and no formula.
_MODULES = [name for _, name, _ in pkgutil.iter_modules(tailtrue.calc.__path__) if name != "validity"]
_HEADINGS = ["Parameters", "Returns", "Valid for", "Source"]
_UNITS = {
    "1", "mm", "mm2", "mm3", "mm4", "cm3/min", "mm/rev", "m/min", "m/s", "1/min", "1/K", "K", "degC", "deg", "mm/mm", "mm/m",
    "m/s2", "ml", "N", "N/mm", "N mm", "MPa", "W", "J", "s", "min", "km", "um", "um/km", "kg", "kg/m3", "g mm", "mm/s", "mm2/min",
}  # fmt: skip


def _formulas() -> list[Callable[..., Any]]:
    """Public functions of the formulas, and public methods and properties of their classes."""
    found: list[Callable[..., Any]] = []
    for name in _MODULES:
        module = importlib.import_module(f"tailtrue.calc.{name}")
        for label, member in vars(module).items():
            if label.startswith("_") or getattr(member, "__module__", "") != module.__name__:
                continue
            if inspect.isfunction(member):
                found.append(member)
            elif inspect.isclass(member):
                found += [_plain(inner) for own, inner in vars(member).items() if not own.startswith("_") and _plain(inner)]
    return found


def _plain(member: Any) -> Any:
    """The function behind a method, class method or property; None for anything else."""
    if isinstance(member, property):
        return member.fget
    if isinstance(member, classmethod | staticmethod):
        return member.__func__
    return member if inspect.isfunction(member) else None


def _asked(formula: Callable[..., Any]) -> list[str]:
    """What a caller hands over; a property is asked nothing."""
    return [name for name in inspect.signature(formula).parameters if name not in ("self", "cls")]


_FORMULAS = {f"{formula.__module__.rsplit('.', 1)[1]}.{formula.__qualname__}": formula for formula in _formulas()}


def _sections(formula: Callable[..., Any]) -> dict[str, str]:
    text = inspect.getdoc(formula) or ""
    parts = re.split(r"^(\S[^\n]*)\n(-{3,})$", text, flags=re.MULTILINE)
    assert all(len(rule) == len(heading) for heading, rule in zip(parts[1::3], parts[2::3], strict=True))
    return {"": parts[0], **dict(zip(parts[1::3], parts[3::3], strict=True))}


def _entries(section: str) -> list[str]:
    """Entries of a section; indented lines belong to the entry above."""
    return re.sub(r"\n\s+", " ", section.strip()).splitlines()


def _parameters(formula: Callable[..., Any]) -> str:
    return _sections(formula).get("Parameters", "")


def test_formulas_were_found() -> None:
    assert len(_FORMULAS) > 300
    assert {"cutting.spindle_speed", "iso286.Iso286.limits", "fits.Fit.kind", "estimation.Fit.of"} <= set(_FORMULAS)


def headings_stand_in_order(formula: Callable[..., Any]) -> None:
    headings = _HEADINGS if _asked(formula) else _HEADINGS[1:]
    assert list(_sections(formula)) == ["", *headings]
    assert all(text.strip() for text in _sections(formula).values())


def sentence_then_formula(formula: Callable[..., Any]) -> None:
    sentence, written, rest = [*_sections(formula)[""].strip().split("\n\n"), ""][:3]
    assert sentence.endswith(".")
    assert sentence[0].isupper()
    assert "\n" not in sentence
    assert re.search(r"[=<:]", written)
    assert rest == ""


def parameters_match_the_signature_and_carry_units(formula: Callable[..., Any]) -> None:
    entries = [re.fullmatch(r"(\w+) : (\S.*\.) \[(.+)\]", line) for line in _entries(_parameters(formula))]
    assert all(entries)
    assert [entry[1] for entry in entries if entry] == _asked(formula)
    assert {entry[3] for entry in entries if entry} <= _UNITS


def unit_agrees_with_the_name(formula: Callable[..., Any]) -> None:
    endings = {
        "_mm": {"mm", "mm/rev"}, "_mpa": {"MPa"}, "_n": {"N"}, "_nmm": {"N mm"}, "_per_min": {"1/min"},
        "_m_min": {"m/min"}, "_m_s": {"m/s"}, "_deg": {"deg"}, "_kg": {"kg"}, "_kg_m3": {"kg/m3"},
        "_per_k": {"1/K"}, "_change_k": {"K"}, "available": {"1/min"}, "_degc": {"degC"}, "_n_per_mm": {"N/mm"},
        "_mm_per_mm": {"mm/mm"}, "_mm_per_m": {"mm/m"}, "_um_per_km": {"um/km"}, "_km": {"km"}, "_s": {"s"}, "_min": {"min"},
        "_w": {"W"}, "_j": {"J"}, "_g_mm": {"g mm"}, "_mm2": {"mm2"}, "_mm3": {"mm3"}, "_mm4": {"mm4"}, "_um": {"um"},
        "_mm_s": {"mm/s"}, "_m_s2": {"m/s2"}, "_mm2_min": {"mm2/min"},
    }  # fmt: skip
    for line in _entries(_parameters(formula)):
        name, unit = line.split(" : ")[0], line.rsplit("[", 1)[1].rstrip("]")
        longest = max((ending for ending in endings if name.endswith(ending)), key=len, default="")
        allowed = endings.get(longest, {"1"})
        assert unit in allowed, line


def result_carries_a_unit(formula: Callable[..., Any]) -> None:
    text = re.sub(r"\s+", " ", _sections(formula)["Returns"].strip())
    found = re.fullmatch(r"\S.*\. \[(.+)\]", text)
    assert found
    # A record or a row of results of unlike kinds names the unit of each in its order.
    assert set(found[1].split(", ")) <= _UNITS


def example_stands_last_and_runs(formula: Callable[..., Any]) -> None:
    assert ">>> " in _sections(formula)["Source"]
    assert ">>> " not in "".join(text for heading, text in _sections(formula).items() if heading != "Source")
    module = importlib.import_module(formula.__module__)
    runner = doctest.DocTestRunner(verbose=False)
    for example in doctest.DocTestFinder(recurse=False).find(formula, globs=dict(vars(module))):
        runner.run(example)
    assert runner.tries >= 1
    assert runner.failures == 0


@pytest.mark.parametrize("formula", _FORMULAS.values(), ids=_FORMULAS)
def test_a_formula_says_what_it_is(formula: Callable[..., Any]) -> None:
    headings_stand_in_order(formula)
    sentence_then_formula(formula)
    parameters_match_the_signature_and_carry_units(formula)
    unit_agrees_with_the_name(formula)
    result_carries_a_unit(formula)
    example_stands_last_and_runs(formula)
