"""Numbers that a job file sets by hand: ``[[override]]`` with fact, value, reason and initials; every fault at once."""

from collections.abc import Mapping
from typing import Any

from tailtrue.facts import SetByHand, Settable
from tailtrue.given.entries import Catalogue, GivenFact
from tailtrue.given.quoting import harmless, pair
from tailtrue.given.reading import Reading
from tailtrue.given.suggest import closest, one_of
from tailtrue.given.values import Unfit, text_of
from tailtrue.quantities import OFFERED, QuantityWrong, read_quantity

TABLE = "override"
KEYS = ("fact", "value", "reason", "initials")
_LONGEST_INITIALS = 8
_LEAST_REASON = 2  # words: one word is no reason that anybody can judge later


class OverrideReading(Reading):
    """The overrides of one job file; its problems join those of the file."""

    def overrides(self) -> dict[str, SetByHand]:
        """Every number that can be used, by the name of its fact."""
        rows = self.file.tables.get(TABLE, [])
        if not isinstance(rows, list) or not all(isinstance(row, Mapping) for row in rows):
            self._wrong((TABLE,), harmless(TABLE), "is not a list of tables", f"write each below a line [[{TABLE}]]")
            return {}
        found: dict[str, SetByHand] = {}
        for number, row in enumerate(rows):
            one = self._one(row, (TABLE, number))
            fact = str(row.get("fact", ""))
            if fact in (str(earlier.get("fact", "")) for earlier in rows[:number]):
                self._wrong((TABLE, number, "fact"), pair("fact", fact), "is set a second time", "keep one of the two")
            elif one is not None:
                found[one.fact] = one
        return found

    def _one(self, row: Mapping[str, Any], path: tuple[str | int, ...]) -> SetByHand | None:
        before = len(self.problems)
        for key in row:
            if key not in KEYS:
                close = closest(key, KEYS)
                do = f"a key named '{close}' exists" if close else f"keys here are {', '.join(KEYS)}"
                self._wrong((*path, key), pair(key, row[key]), f"unknown key '{harmless(key)}'", do)
        texts = {key: self._text(row, key, path) for key in ("reason", "initials")}
        settable = self._settable(row, path)
        value = self._value(settable, row, path) if settable else None
        if settable is None or value is None or len(self.problems) > before:
            return None
        said = str(row["value"]).strip()
        return SetByHand(settable.fact, value, said, texts["reason"], texts["initials"], self.file.place(*path, "fact"))

    def _text(self, row: Mapping[str, Any], key: str, path: tuple[str | int, ...]) -> str:
        if key not in row:
            self._wrong(path, f"[[{TABLE}]]", f"names no {key}", f"add {key} = {_EXAMPLE[key]}")
            return ""
        try:
            text = text_of(row[key])
        except Unfit as unfit:
            self._wrong((*path, key), pair(key, row[key]), unfit.wrong, unfit.do)
            return ""
        if key == "initials" and (len(text) > _LONGEST_INITIALS or not any(c.isalpha() for c in text)):
            wrong = f"is no initials: letters, {_LONGEST_INITIALS} characters at most"
            self._wrong((*path, key), pair(key, text), wrong, f"write {key} = {_EXAMPLE[key]}")
        if key == "reason" and len(text.split()) < _LEAST_REASON:
            self._wrong((*path, key), pair(key, text), "is no reason", "say in a few words why the number is changed")
        return text

    def _settable(self, row: Mapping[str, Any], path: tuple[str | int, ...]) -> Settable | None:
        fact = row.get("fact")
        if not isinstance(fact, str) or not fact.strip():
            where = (*path, "fact") if "fact" in row else path
            self._wrong(
                where, pair("fact", fact) if "fact" in row else f"[[{TABLE}]]", "names no fact", 'add fact = "skim.speed"'
            )
            return None
        if (found := self.catalogue.settable.get(fact)) is None:
            self._wrong((*path, "fact"), pair("fact", fact), *_not_settable(fact, self.catalogue))
        return found

    def _value(self, settable: Settable, row: Mapping[str, Any], path: tuple[str | int, ...]) -> float | None:
        if "value" not in row:
            self._wrong(
                path, f"[[{TABLE}]]", "names no value", f'add value = "1 {OFFERED[settable.unit][0]}", with your number'
            )
            return None
        raw = row["value"]
        try:
            value = _quantity(raw, settable)
        except Unfit as unfit:
            self._wrong((*path, "value"), pair("value", raw), unfit.wrong, unfit.do)
            return None
        return value


_EXAMPLE = {"reason": '"the belt slips above this"', "initials": '"RK"'}


def _quantity(raw: Any, settable: Settable) -> float:
    units = one_of(OFFERED[settable.unit][:2])
    if not isinstance(raw, str):
        raise Unfit("is not a quantity", f"write a number with its unit in quotes, in {units}")
    try:
        value = read_quantity(raw, settable.unit)
    except QuantityWrong as wrong:
        fits = tuple(one for one in wrong.offers if settable.least <= read_quantity(one, settable.unit) <= settable.most)
        problem = wrong.problems[0]
        do = (
            wrong.offering(fits[:2]) if fits else f"write a number with its unit, in {units}" if wrong.offers else problem.do
        )
        raise Unfit(problem.wrong, do) from wrong
    if not settable.least <= value <= settable.most:
        raise Unfit("is not plausible here", "look at the unit and the decimal point")
    return value


def _not_settable(fact: str, catalogue: Catalogue) -> tuple[str, str]:
    """What is wrong with a name that cannot be set by hand, and what to do."""
    given: GivenFact | None = catalogue.facts.get(fact)
    if given is not None:
        return (
            "is not worked out: you give it yourself",
            f"change {given.key} in the {given.file} file, below [{given.file}]",
        )
    if fact.startswith("limit."):
        return "is a limit, not a number of this job", "tighten it in the rules of the shop"
    close = closest(fact, catalogue.settable)
    near = f"'{close}' comes nearest; " if close else ""
    if fact in catalogue.worked_out:
        return "follows from other numbers and cannot be set by hand", f"{near}change what it is worked out from"
    return "no fact is named so", f"{near}the page on overriding lists what can be set by hand"
