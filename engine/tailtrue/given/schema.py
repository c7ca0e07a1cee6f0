"""JSON Schemas of the four files, for editors that complete and check while one types.

A schema knows the usual spellings of units and the words of this knowledge. It cannot know what ties two files together,
what is plausible, or a rarer unit; the reader does.
"""

from collections.abc import Iterable, Mapping
from typing import Any

from tailtrue.given.entries import FILES, Catalogue, GivenFact, Ways
from tailtrue.given.references import References
from tailtrue.given.values import spellings
from tailtrue.quantities import NUMBER, units_of

DIALECT = "https://json-schema.org/draft/2020-12/schema"
_CLASS_KEY = "starts_from"
_DATE = r"^[0-9]{4}-[0-9]{2}-[0-9]{2}$"

Schema = dict[str, Any]


def schemas(catalogue: Catalogue) -> dict[str, Schema]:
    """The schema of each kind of file by its name."""
    made = {kind: _file(catalogue, kind) for kind in FILES}
    made["job"]["properties"]["override"] = _overrides(catalogue)
    return made


def _overrides(catalogue: Catalogue) -> Schema:
    """Computed numbers set by hand in a job file."""
    text: Schema = {"type": "string", "minLength": 1}
    return {
        "type": "array",
        "description": "numbers set by hand in place of the computed ones",
        "items": {
            "type": "object",
            "properties": {
                "fact": {"enum": sorted(catalogue.settable)}, "value": text, "reason": text,
                "initials": {**text, "maxLength": 8},
            },
            "required": ["fact", "value", "reason", "initials"],
            "additionalProperties": False,
        },
    }  # fmt: skip


def _file(catalogue: Catalogue, kind: str) -> Schema:
    return {
        "$schema": DIALECT,
        "title": f"{kind} file",
        "type": "object",
        "properties": {kind: _table(catalogue, kind)},
        "required": [kind],
        "additionalProperties": False,
    }


def _table(catalogue: Catalogue, kind: str) -> Schema:
    facts = catalogue.of_file(kind)
    # A file does not tell what is done with it: what some job need not say is asked for by the reader alone.
    spared = catalogue.ever_spared()
    needed = [key for key, fact in facts.items() if fact.ask == "must" and fact.spec.name not in spared]
    ways = [_one_way(one) for one in catalogue.ways_of(kind) if not set(one.names()) <= spared]
    pairs = [[name.split(".", 1)[1] for name in names] for names in catalogue.together if names[0].startswith(f"{kind}.")]
    table: Schema = {
        "type": "object",
        "properties": {key: _fact(fact, catalogue.references) for key, fact in facts.items()},
        "additionalProperties": False,
    }
    if pairs:
        table["dependentRequired"] = {key: [o for o in keys if o != key] for keys in pairs for key in keys}
    if _CLASS_KEY not in facts:
        table["required"] = needed
        if ways:
            table["allOf"] = ways
        return table
    # What a class can fill in need not be said by the owner who names one.
    own = [key for key in needed if facts[key].never_from_class]
    rest: Schema = {"required": [key for key in needed if key not in own]}
    if ways:
        rest["allOf"] = ways
    table["required"] = own
    table["if"] = {"required": [_CLASS_KEY]}
    table["else"] = rest
    return table


def _one_way(ways: Ways) -> Schema:
    keys = [[name.rsplit(".", 1)[-1] for name in way] for way in ways.ways]
    if ways.several:
        return {"anyOf": [{"required": way} for way in keys]}
    return {"oneOf": [_only(way, [key for other in keys if other is not way for key in other]) for way in keys]}


def _only(way: Iterable[str], others: Iterable[str]) -> Schema:
    return {"required": list(way), "not": {"anyOf": [{"required": [key]} for key in others]}}


def _fact(fact: GivenFact, references: References) -> Schema:
    schema = _kind(fact, references)
    schema["description"] = _description(fact)
    if fact.default is not None:
        schema["default"] = fact.default
    if fact.typical:
        typical = fact.as_written(fact.typical)
        schema["examples"] = [[typical] if schema["type"] == "array" else typical]
    return schema


def _description(fact: GivenFact) -> str:
    parts = [fact.spec.label, fact.spec.how]
    if fact.if_missing:
        parts.append(f"when it is left out {fact.if_missing}")
    if fact.least_said and fact.most_said:
        parts.append(f"plausible from {fact.least_said} to {fact.most_said}")
    return "; ".join(parts)


def _kind(fact: GivenFact, references: References) -> Schema:
    kind = fact.spec.kind
    if kind == "quantity":
        return {"type": "string", "pattern": quantity_pattern(fact.spec.unit, fact.words)}
    if kind == "choice":
        return {"type": "string", "enum": [*fact.spec.choices, *spellings(fact, references)]}
    if kind == "yes-no":
        return {"type": ["boolean", "string"], "enum": [True, False, "yes", "no"]}
    if kind == "count":
        numbers = [int(choice) for choice in fact.spec.choices]
        return {"type": "integer", "enum": numbers} if numbers else {"type": "integer"}
    if kind == "date":
        return {"type": "string", "pattern": _DATE}
    if kind == "records":
        return {"type": "array", "minItems": fact.fewest, "items": _record(fact, references)}
    if kind in ("quantities", "texts"):
        unit = fact.spec.unit or fact.reads_as
        items = {"type": "string", "pattern": quantity_pattern(unit)} if unit else _text(fact, references)
        return {"type": "array", "minItems": fact.fewest, "items": items}
    return _text(fact, references)


def _text(fact: GivenFact, references: References) -> Schema:
    if fact.refers is None or fact.refers.in_own_files:
        return {"type": "string", "minLength": 1}
    table, column = fact.refers.table, fact.refers.column
    also = references.words(table, column, fact.refers.also) if fact.refers.also else ()
    return {"type": "string", "enum": [*references.words(table, column, fact.refers.role), *also]}


def _record(fact: GivenFact, references: References) -> Schema:
    fields: Mapping[str, GivenFact] = fact.fields
    record: Schema = {
        "type": "object",
        "properties": {key: _fact(one, references) for key, one in fields.items()},
        "required": [key for key, one in fields.items() if one.ask == "must"],
        "additionalProperties": False,
    }
    if fact.one_way:
        record["allOf"] = [_one_way(ways) for ways in fact.one_way]
    return record


def quantity_pattern(unit: str, words: Iterable[str] = ()) -> str:
    """A pattern for a quantity in a usual unit, or for a word that is allowed in its place.

    >>> import re
    >>> bool(re.search(quantity_pattern("mm"), "1-1/2 in")), bool(re.search(quantity_pattern("mm"), "25,4 mm"))
    (True, False)
    """
    spellings = sorted(units_of(unit), key=len, reverse=True)
    # A unit that begins with a digit stands apart from its number.
    apart = [rf"\s+{one}" for one in spellings if one[:1].isdigit()]
    joined = [one for one in spellings if not one[:1].isdigit()]
    units = "|".join([*apart, *(rf"\s*{one}" for one in joined)])
    allowed = "|".join([rf"\s*{NUMBER}(?:{units})\s*", *words])
    return f"^(?:{allowed})$"
