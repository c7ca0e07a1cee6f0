"""What is wrong with an entry that a person wrote into a file of rules, in words: which entry and key, what is allowed."""

from collections.abc import Collection, Mapping
from typing import Any

from tailtrue.errors import Problem
from tailtrue.given.suggest import closest

Path = tuple[str | int, ...]

# What the reader of shapes calls a fault, what is wrong in words, and what to do; `{...}` are what it tells besides.
_WORDS: Mapping[str, tuple[str, str]] = {
    "missing": ("not given", "add a line {key} = ..."),
    "string_too_short": ("is too short", "write at least {min_length} letters"),
    "string_type": ("is not text", "write it in quotes"),
    "list_type": ("is not a list", "write it between [ and ]"),
    "too_short": ("holds too little", "write at least {min_length} of them"),
    "literal_error": ("is not one of the words for it", "write {expected}"),
    "int_type": ("is not a whole number", "write a whole number, without quotes"),
    "int_parsing": ("is not a whole number", "write a whole number, without quotes"),
    "bool_type": ("is neither yes nor no", "write true or false, without quotes"),
    "greater_than_equal": ("is too small", "write {ge} or more"),
    "less_than_equal": ("is too large", "write {le} or less"),
    "model_type": ("is not a table", "write its lines below a heading"),
    "date_from_datetime_parsing": ("is no day", "write year, month and day, such as 2026-03-31, without quotes"),
    "date_parsing": ("is no day", "write year, month and day, such as 2026-03-31, without quotes"),
    "date_type": ("is no day", "write year, month and day, such as 2026-03-31, without quotes"),
}


def plain_fault(fault: Mapping[str, Any], keys: Path, where: str, known: Collection[str]) -> Problem:
    """One fault of a shape for people.

    >>> fault = {"type": "missing", "msg": "Field required", "ctx": {}}
    >>> plain_fault(fault, ("add", 0, "by"), "rules.toml:3", ()).said
    'entry 1 of [[add]], by'
    """
    key = str(keys[-1])
    if fault["type"] == "extra_forbidden":
        close = closest(key, known)
        do = f"a key named '{close}' exists" if close else f"take it out; keys are {', '.join(sorted(known))}"
        return Problem(where, _said(keys), f"unknown key '{key}'", do)
    wrong, do = _WORDS.get(fault["type"], ("does not fit", str(fault["msg"]).lower()))
    return Problem(where, _said(keys), wrong, do.format(key=key, **fault.get("ctx", {})))


def _said(keys: Path) -> str:
    """The place in the file, counted from one."""
    said: list[str] = []
    for place, key in enumerate(keys):
        if isinstance(key, int):
            said[-1:] = [f"entry {key + 1} of {f'[[{keys[0]}]]' if place == 1 else said[-1]}"]
        else:
            said.append(key)
    return ", ".join(said)
