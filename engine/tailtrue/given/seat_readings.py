"""Readings of one piece, taken at several places: in one system, to the division of the instrument, none standing apart."""

import re
from collections.abc import Iterator, Mapping
from statistics import median
from typing import TYPE_CHECKING

from tailtrue.errors import Problem
from tailtrue.given.entries import Catalogue, ReadTogether
from tailtrue.given.quoting import as_written
from tailtrue.quantities import read_quantity, system_of

if TYPE_CHECKING:
    from tailtrue.given.reading import GivenValue

_BETWEEN = ", "
_NUMBER = re.compile(r"(?:[0-9]+[ -])?(?:(?P<part>[0-9]+)/(?P<of>[0-9]+)|[0-9]*(?:\.(?P<digits>[0-9]*))?)\s*(?P<unit>.*)")
_NAMES = {"inch": "inches", "metric": "millimetres"}
_PLACES = (
    "first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth", "eleventh", "twelfth",
)  # fmt: skip
_INCH, _MM = "in", "mm"
_SPARE = 1 + 1e-9  # what floats may add to a division


def reading_problems(catalogue: Catalogue, values: Mapping[str, "GivenValue"]) -> Iterator[Problem]:
    """What is wrong with lists of readings that belong together."""
    for tie in catalogue.read_together:
        said = {name: values[name] for name in tie.lists if name in values}
        yield from _two_systems(said)
        for name, found in said.items():
            key = catalogue.facts[name].key
            yield from _too_coarse(key, found, values.get(tie.read_with))
            yield from _apart(key, found, tie)


def _texts(found: "GivenValue") -> list[str]:
    return found.said.split(_BETWEEN)


def _two_systems(said: Mapping[str, "GivenValue"]) -> Iterator[Problem]:
    first = ""
    for name, found in said.items():
        for text in _texts(found):
            system = system_of(text)
            first = first or system
            if system and system != first:
                wrong = f"is in {_NAMES[system]}, the readings before it are in {_NAMES[first]}"
                do = "write every reading of one bar in one system, as the micrometer shows it"
                yield Problem(found.where, f"{name.split('.', 1)[1]}: {as_written(text)}", wrong, do)
                return


def _too_coarse(key: str, found: "GivenValue", instruments: "GivenValue | None") -> Iterator[Problem]:
    """The first reading with fewer digits than any micrometer that covers it shows."""
    for text, size in zip(_texts(found), found.value, strict=True):
        here = [one for one in (instruments.value if instruments else ()) if one["from"] <= size <= one["to"]]
        division = max((one["resolution"] for one in here), default=None)
        step = _step(text)
        if division is not None and step is not None and step > division * _SPARE:
            unit = _INCH if system_of(text) == "inch" else _MM
            shown, written = (f"{one / read_quantity(f'1 {unit}', _MM):.4g} {unit}" for one in (division, step))
            wrong = f"is too coarse: it is written to {written}, and the micrometer for it shows {shown}"
            do = "write every digit that the micrometer shows, a nought at the end too; a size from a label is no reading"
            yield Problem(found.where, f"{key}: {as_written(text)}", wrong, do)
            return


def _step(text: str) -> float | None:
    """The size of the last place that was written, in mm."""
    match = _NUMBER.fullmatch(text.strip())
    if match is None:
        return None
    unit = read_quantity(f"1 {match['unit']}", _MM)
    if match["of"]:
        return unit / int(match["of"])
    return float(unit * 10.0 ** -len(match["digits"] or ""))


def _apart(key: str, found: "GivenValue", tie: ReadTogether) -> Iterator[Problem]:
    """The one reading that stands apart while all others agree."""
    for place, size in enumerate(found.value):
        others = [*found.value[:place], *found.value[place + 1 :]]
        off = abs(size - median(others)) if others else 0.0
        if off > tie.apart >= max(others, default=0.0) - min(others, default=0.0):
            text = _texts(found)[place]
            unit, digits = (_INCH, 4) if system_of(text) == "inch" else (_MM, 3)
            nth = _PLACES[place] if place < len(_PLACES) else f"number {place + 1}"
            wrong = f"stands {off / read_quantity(f'1 {unit}', _MM):.{digits}f} {unit} from the others"
            do = "measure there again and mend the reading; if it stands, the bar is damaged there: use another"
            yield Problem(found.where, f"{key}, {nth}: {as_written(text)}", wrong, do)
