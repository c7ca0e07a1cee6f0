"""One value of a user's file turned into a plain one: a number in its canonical unit, a word, yes or no."""

import re
from collections.abc import Iterable
from datetime import date, datetime
from math import isfinite
from typing import Any

from tailtrue.given.day import day_of
from tailtrue.given.entries import GivenFact, Refers
from tailtrue.given.own_units import band_said, typical_said, within
from tailtrue.given.references import References, roles_of
from tailtrue.given.suggest import closest, one_of, some_of
from tailtrue.quantities import OFFERED, QuantityWrong, System, is_quantity, read_quantity, system_of
from tailtrue.tables import Row

SPELLINGS = "words/spellings"
TRADE_NAMES = "words/trade_names"
REFUSED_ROLE = "refused"
_LONGEST_TEXT = 120
# A wrong material is worse than none, so a suggestion must look very much like what was written.
_SURE = 0.8
_NUMBER_SIGN = re.compile(r"^(?:#|n[or]\.?)(?=[0-9])")
_YES_NO = {"yes": True, "no": False}


class Unfit(Exception):
    """A value that cannot be used: what is wrong with it, what to do, and what would be taken in its place."""

    def __init__(self, wrong: str, do: str, instead: tuple[str, ...] = ()) -> None:
        self.wrong, self.do, self.instead = wrong, do, instead
        super().__init__(wrong)


def single(fact: GivenFact, raw: Any, references: References, system: System = "") -> tuple[Any, str]:
    """The plain value and the user's words for it; `system` is that of the file, for what is said where it is refused.

    Raises Unfit.
    """
    if fact.spec.kind == "quantity":
        return quantity(fact, raw, fact.spec.unit, system)
    return _READERS[fact.spec.kind](fact, raw, references)


def of_list(fact: GivenFact, raw: Any, references: References, system: System) -> tuple[Any, str]:
    """One entry of a list of quantities or texts.

    Raises Unfit.
    """
    if fact.spec.kind == "quantities" or fact.reads_as:
        size, said = quantity(fact, raw, fact.spec.unit or fact.reads_as, system)
        return (said, said) if fact.reads_as else (size, said)
    return _text(fact, raw, references)


def quantity(fact: GivenFact, raw: Any, unit: str, system: System) -> tuple[float | str, str]:
    """A quantity in a canonical unit, within what is plausible; or a word that is allowed in its place."""
    if isinstance(raw, str) and raw in fact.words:
        return raw, raw
    own = (system_of(raw) if isinstance(raw, str) else "") or system
    typical = "" if fact.read_from else typical_said(fact, unit, own)
    also = _or_a_word(fact) + (f"; typical: {typical}" if typical else "")
    band = band_said(fact, unit, own)
    if isinstance(raw, bool) or not isinstance(raw, str | int | float):
        raise Unfit("is not a quantity", f"write a number with its unit in quotes{also}")
    if isinstance(raw, float) and not isfinite(raw):
        raise Unfit("is not a number", f"{_of_the_band(band, ', in quotes')}{also}")
    if not isinstance(raw, str):
        fits = _plausible(fact, unit, own, (f"{raw} {one}" for one in OFFERED[unit]))
        offers = " or ".join(f'"{one}"' for one in fits)
        do = f"write {offers}, in quotes" if fits else _of_the_band(band, ", in quotes")
        raise Unfit("has no unit", f"{do}{also}")
    try:
        size = read_quantity(raw, unit)
    except QuantityWrong as wrong:
        problem = wrong.problems[0]
        fits = _plausible(fact, unit, own, wrong.offers)
        do = wrong.offering(fits) if fits else problem.do if not wrong.offers else _of_the_band(band)
        raise Unfit(problem.wrong, f"{do}{also}", () if wrong.example else fits) from wrong
    if not within(fact, size):
        raise Unfit(
            f"is not plausible here: {band} is",
            f"look at the unit and the decimal point; a true value beyond that is beyond these rules{also}",
        )
    return size, raw.strip()


def _or_a_word(fact: GivenFact) -> str:
    if not fact.words:
        return ""
    return f"; or{f', {fact.words_if},' if fact.words_if else ''} write {one_of(fact.words)}"


_MOST_OFFERED = 3


def _plausible(fact: GivenFact, unit: str, system: System, offers: Iterable[str]) -> tuple[str, ...]:
    """Those offers that would be taken, in the user's own system alone where that can be."""
    fits = []
    for one in offers:
        try:
            if within(fact, read_quantity(one, unit)):
                fits.append(one)
        except QuantityWrong:
            continue
    own = [one for one in fits if system_of(one) in (system, "")] if system else []
    return tuple(own or fits)[:_MOST_OFFERED]


def _of_the_band(band: str, how: str = "") -> str:
    return f"write a number with its unit{how}" + (f"; {band} is plausible" if band else "")


def _choice(fact: GivenFact, raw: Any, references: References) -> tuple[str, str]:
    if isinstance(raw, str) and raw in fact.spec.choices:
        return raw, raw
    if isinstance(raw, str) and (choice := _spelt(fact, raw, references)):
        return choice, raw.strip()
    allowed = f"write {one_of(fact.spec.choices)}"
    close = closest(raw, fact.spec.choices) if isinstance(raw, str) else None
    hint = f"; '{close}' comes nearest" if close and len(fact.spec.choices) > 2 else ""
    raise Unfit("is not one of the choices", f"{allowed}{hint}")


def spellings(fact: GivenFact, references: References) -> tuple[str, ...]:
    """Other ways in which the trade writes a choice of this fact."""
    return tuple(row.text("spelling") for row in references.rows(SPELLINGS) if row.text("choice") in fact.spec.choices)


def _spelt(fact: GivenFact, raw: str, references: References) -> str | None:
    wanted = _plain(raw.replace(".", ""))
    rows = (row for row in references.rows(SPELLINGS) if _plain(row.text("spelling").replace(".", "")) == wanted)
    return next((row.text("choice") for row in rows if row.text("choice") in fact.spec.choices), None)


def _yes_no(_fact: GivenFact, raw: Any, _references: References) -> tuple[bool, str]:
    if isinstance(raw, bool):
        return raw, "yes" if raw else "no"
    if isinstance(raw, str) and raw.strip().casefold() in _YES_NO:
        said = raw.strip().casefold()
        return _YES_NO[said], said
    raise Unfit("is neither yes nor no", "write true or false, without quotes")


def _count(fact: GivenFact, raw: Any, _references: References) -> tuple[int, str]:
    if isinstance(raw, bool) or not isinstance(raw, int):
        raise Unfit("is not a whole number", f"write {_numbers(fact)}, without quotes")
    if fact.spec.choices and str(raw) not in fact.spec.choices:
        raise Unfit("is not one of the choices", f"write {_numbers(fact)}")
    if not within(fact, raw):
        raise Unfit(f"is not plausible here: {band_said(fact, '', '')} is", "look at the number again")
    return raw, str(raw)


def _numbers(fact: GivenFact) -> str:
    return one_of(fact.spec.choices) if fact.spec.choices else "a number"


def _date(_fact: GivenFact, raw: Any, _references: References) -> tuple[str, str]:
    if isinstance(raw, date) and not isinstance(raw, datetime):
        return raw.isoformat(), raw.isoformat()
    try:
        return day_of(raw), str(raw).strip()
    except ValueError as wrong:
        raise Unfit(*wrong.args) from wrong


def _name(fact: GivenFact, raw: Any, references: References) -> tuple[str, str]:
    """A text of its own: on a sheet a size alone would look like one of the job, in one system of units only."""
    if isinstance(raw, str) and is_quantity(raw):
        raise Unfit("is a size, and says nothing of what it is", "write a word of what it is beside it")
    return _text(fact, raw, references)


def _text(fact: GivenFact, raw: Any, references: References) -> tuple[str, str]:
    if isinstance(raw, str) and not raw.strip():
        raise Unfit("is empty", f"write the {fact.spec.label}" + (f"; typical: {fact.typical}" if fact.typical else ""))
    text = text_of(raw)
    if fact.refers and not fact.refers.in_own_files:
        return _found(fact.refers, text, references), text
    if fact.most_words and len(text.split()) > fact.most_words:
        raise Unfit(f"has more than {fact.most_words} words, and stands in many sentences", "say it shorter")
    return text, text


def text_of(raw: Any) -> str:
    """One line of printable text.

    Raises Unfit.
    """
    if not isinstance(raw, str):
        raise Unfit("is not text", "write it in quotes")
    text = raw.strip()
    if not text:
        raise Unfit("is empty", "write it, or take the line out")
    if len(text) > _LONGEST_TEXT:
        raise Unfit(f"is longer than {_LONGEST_TEXT} characters", "say it shorter")
    if not all(c.isprintable() for c in text):
        raise Unfit("holds a line break or a character that cannot be printed", "write it on one line")
    if "{{" in text or "}}" in text:
        raise Unfit("holds double braces", "take them out")
    return text


def _found(refers: Refers, text: str, references: References) -> str:
    """The word as the table has it; capitals and spaces do not matter."""
    wanted = _plain(text)
    row = next((row for row in references.rows(refers.table) if _plain(row.text(refers.column)) == wanted), None)
    allowed = references.words(refers.table, refers.column, refers.role)
    if row is None and (meant := _trade_names(refers, text, references)):
        raise _of_the_trade(text, meant, allowed, refers)
    if row is None:
        raise Unfit("is not known here", _nearest(refers, text, references, allowed))
    roles = roles_of(row)
    if not refers.role or refers.role in roles or refers.also in roles:
        return row.text(refers.column)
    if REFUSED_ROLE in roles:
        raise Unfit(f"is refused as {refers.role} stock{_reason(row)}", f"use one of {some_of(allowed)}")
    raise Unfit(f"serves as {one_of(roles)} stock, not as {refers.role} stock", f"use one of {some_of(allowed)}")


def _trade_names(refers: Refers, text: str, references: References) -> tuple[str, ...]:
    """What the trade may mean by a name: words of the table that is referred to, or none."""
    there = references.words(refers.table, refers.column)
    row = next((row for row in references.rows(TRADE_NAMES) if _plain(row.text("name")) == _plain(text)), None)
    meant = (one.strip() for one in row.text("choices").split(";")) if row else ()
    return tuple(one for one in meant if one in there)


def _of_the_trade(text: str, meant: tuple[str, ...], allowed: tuple[str, ...], refers: Refers) -> Unfit:
    """A name of the trade may stand for several things that cut and bend unlike: the user says which."""
    serve = tuple(one for one in meant if one in allowed)
    wrong = f"is a name of the trade: {text.strip()} is {one_of(meant)}"
    if not serve:
        return Unfit(f"{wrong}, and none of it serves as {refers.role} stock", f"use one of {some_of(allowed)}")
    return Unfit(
        wrong, f"write {one_of(serve)}{', whichever the label or the supplier says' if len(serve) > 1 else ''}", serve
    )


def _reason(row: Row) -> str:
    """The first clause of the note of the row; what follows tells where its figures come from."""
    said = (row.cells.get("note") or row.cells.get("hazards") or "").split(";")[0].strip().rstrip(".")
    return f": {said}" if said else ""


def _nearest(refers: Refers, text: str, references: References, allowed: tuple[str, ...]) -> str:
    """What to use instead. Another name of the same thing is surer than a word that looks alike."""
    other = {_plain(name): row.text(refers.column) for row in references.rows(refers.table) for name in _other_names(row)}
    close = other.get(_plain(text)) or closest(text, allowed, _SURE)
    near = f"'{close}' comes nearest; " if close in allowed else ""
    return f"{near}use one of {some_of(allowed)}"


def _other_names(row: Row) -> tuple[str, ...]:
    return (row.cells.get("name") or "", *(row.cells.get("equivalents") or "").split(";"))


def _plain(word: str) -> str:
    """A word without capitals and spaces; a number sign is written no."""
    return _NUMBER_SIGN.sub("no.", re.sub(r"\s+", "", word).casefold())


_READERS = {
    "choice": _choice,
    "yes-no": _yes_no,
    "count": _count,
    "date": _date,
    "text": _name,
}
