"""The schemas, held against the reader: good files pass both, and what one refuses for its shape the other does too."""

import tomllib
from datetime import date
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from jsonschema import Draft202012Validator

from tailtrue.errors import FactsWrong
from tailtrue.given.catalogue import Catalogue
from tailtrue.given.schema import quantity_pattern, schemas
from tailtrue.quantities import FAST, read_quantity

from .conftest import GOOD, Problems, Spoil


@pytest.fixture(scope="module")
def validators(catalogue: Catalogue) -> dict[str, Draft202012Validator]:
    made = schemas(catalogue)
    for schema in made.values():
        Draft202012Validator.check_schema(schema)
    return {kind: Draft202012Validator(schema) for kind, schema in made.items()}


def as_json(value: Any) -> Any:
    if isinstance(value, dict):
        return {key: as_json(one) for key, one in value.items()}
    if isinstance(value, list):
        return [as_json(one) for one in value]
    return value.isoformat() if isinstance(value, date) else value


@pytest.mark.parametrize("kind", list(GOOD))
def test_good_files_pass(validators: dict[str, Draft202012Validator], kind: str) -> None:
    assert not [error.message for error in validators[kind].iter_errors(as_json(tomllib.loads(GOOD[kind])))]


BAD: list[Spoil] = [
    ("lathe", '"280 mm"', '"25,4 mm"'),
    ("lathe", '"280 mm"', "280"),
    ("lathe", '"280 mm"', '"280"'),
    ("lathe", '"280 mm"', '"280 kg"'),
    ("lathe", '"280 mm"', '"2 mil"'),
    ("lathe", "swing_over_bed", "swing_over_bd"),
    ("lathe", 'tool_side = "front"\n', ""),
    ("lathe", 'tool_side = "front"', 'tool_side = "Front"'),
    ("lathe", "jaws = 3", "jaws = 5"),
    ("lathe", 'marked_speed = "unmarked"\n', ""),
    ("lathe", '"unmarked"', '"unmarkd"'),
    ("lathe", 'stop = "tested"', 'stop = "tested"\nspeed_from = "100 rpm"'),
    ("lathe", 'stop = "tested"', 'stop = "tested"\nsteady_from = "8 mm"'),
    ("lathe", 'speeds = [\n    "65 1/min", "180 rpm",\n    "450 rev/min",\n]\n', ""),
    ("lathe", 'speeds = [\n    "65 1/min", "180 rpm",\n    "450 rev/min",\n]', 'speed_from = "100 rpm"'),
    ("lathe", "[lathe]", "colour = 1\n[lathe]"),
    ("crib", '"A 2.5"', '"A 2.6"'),
    ("crib", '"metric-1-13-by-0.5"', '"metric"'),
    ("crib", 'set = "metric-1-13-by-0.5"', 'set = "metric-1-13-by-0.5"\nsizes = ["3 mm"]'),
    ("crib", 'set = "metric-1-13-by-0.5"', ""),
    ("crib", '"7/8 in"', '"No. 7"'),
    ("crib", "outside_micrometers = []\n", ""),
    ("stock", "aluminium-6082-t6", "magnesium"),
    ("stock", "aluminium-6082-t6", "unknown-steel"),
    ("job", "2026-03-31", '"31.3.2026"'),
    ("job", '"no"', '"maybe"'),
    ("job", 'revision = "A"', 'revision = "A"\nmeasured_head = ["25 mm"]'),
    ("job", 'shop = "Millpond workshop"', "shop = 3"),
]


@pytest.mark.parametrize("spoiled", BAD, ids=lambda one: one[2][:40])
def test_bad_files_are_refused_by_schema_and_reader(
    validators: dict[str, Draft202012Validator], problems: Problems, spoiled: Spoil
) -> None:
    kind, old, new = spoiled
    assert list(validators[kind].iter_errors(as_json(tomllib.loads(GOOD[kind].replace(old, new)))))
    assert problems(spoiled)


def test_a_class_takes_over_what_it_may(validators: dict[str, Draft202012Validator]) -> None:
    lathe = tomllib.loads(GOOD["lathe"])
    for key in ("speeds", "swing_over_bed"):
        del lathe["lathe"][key]
    assert list(validators["lathe"].iter_errors(lathe))
    lathe["lathe"]["starts_from"] = "bench-230"
    assert not list(validators["lathe"].iter_errors(lathe))
    del lathe["lathe"]["dial_reads"]
    assert list(validators["lathe"].iter_errors(lathe))


def test_everything_is_described_and_closed(catalogue: Catalogue) -> None:
    def tables(schema: Any) -> list[Any]:
        if not isinstance(schema, dict):
            return []
        own = [schema] if schema.get("type") == "object" else []
        return own + [deeper for one in schema.values() for deeper in tables(one)]

    for kind, schema in schemas(catalogue).items():
        assert schema["$schema"] == "https://json-schema.org/draft/2020-12/schema"
        assert schema["title"] == f"{kind} file"
        assert all(table["additionalProperties"] is False for table in tables(schema))
        for one in schema["properties"][kind]["properties"].values():
            assert one["description"]


def test_examples_pass_their_own_schema(catalogue: Catalogue) -> None:
    for kind, schema in schemas(catalogue).items():
        for key, one in schema["properties"][kind]["properties"].items():
            for example in one.get("examples", []):
                few = {**one, "minItems": 1} if "minItems" in one else one
                assert Draft202012Validator(few).is_valid(example), key


SHAPED = st.from_regex(r"[-+]?[0-9]{0,3}[ ./,-]{0,2}[0-9]{0,3}[ ./,-]?[0-9]{0,3} ?[A-Za-z\"%/0-9]{0,6}", fullmatch=True)


@given(st.sampled_from(sorted(FAST)), SHAPED)
def test_what_the_pattern_lets_in_the_reader_reads(unit: str, text: str) -> None:
    if not Draft202012Validator({"pattern": quantity_pattern(unit)}).is_valid(text):
        return
    wrong = ""
    try:
        read_quantity(text, unit)
    except FactsWrong as refused:
        wrong = refused.problems[0].wrong
    # A pattern knows no arithmetic: a fraction over nought or of one and more.
    assert not wrong or "fraction" in wrong
