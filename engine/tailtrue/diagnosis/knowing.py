"""What the knowledge says of causes and tests: loaded once, held against its shape."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from typing import Annotated, Any, Literal, TypeVar

from pydantic import BaseModel, BeforeValidator, ConfigDict, Field, ValidationError

from tailtrue.errors import FactsWrong, KnowledgeInvalid, Problem
from tailtrue.facts import FactSpec
from tailtrue.given.entries import Catalogue, GivenFact
from tailtrue.given.references import References
from tailtrue.given.shapes import FieldShape
from tailtrue.given.toml_file import TomlFile, read_toml
from tailtrue.places import knowledge_folder
from tailtrue.quantities import read_quantity
from tailtrue.wording import Wording, read_wording

_ROOM = "diagnosis"
Words = Annotated[Wording, BeforeValidator(read_wording)]
Sources = Annotated[list[str], Field(min_length=1)]
Shaped = TypeVar("Shaped", bound=BaseModel)


class _Shape(BaseModel):
    model_config = ConfigDict(extra="forbid", frozen=True, arbitrary_types_allowed=True)


class Cause(_Shape):
    """One cause: its name in the formulas, how large and how common it is, its words."""

    id: str
    unknown: str
    name: str
    kind: Literal["slope", "length"]
    main: bool
    usual: str
    over: str = ""
    chance: float = Field(gt=0, lt=1)
    order: int
    positive: bool = False
    explains: str
    plus: Words
    minus: Words | None = None
    action: str
    sources: Sources

    @property
    def usual_size(self) -> float:
        """How large it commonly is, either way. [mm, or mm for each mm]"""
        size = read_quantity(self.usual, "mm")
        return size / read_quantity(self.over, "mm") if self.kind == "slope" else size


class Test(_Shape):
    """One kind of test; `with` names the test that it changes one thing of. Stations are shares of the planned length."""

    __test__ = False  # no test of the test runner

    id: str
    name: str
    shows: str
    cannot: str
    with_: str = Field(default="", alias="with")
    minutes: int = Field(gt=0)
    needs: str
    caution: str
    stations: list[float] = []
    sources: Sources


class _Key(FieldShape):
    of: list[str]


class _Figure(_Shape):
    value: str
    unit: str
    why: str
    sources: Sources


class _Say(_Shape):
    text: Words
    sources: Sources


class _Causes(_Shape):
    cause: list[Cause]


class _Tests(_Shape):
    test: list[Test]


class _Keys(_Shape):
    key: list[_Key]


@dataclass(frozen=True)
class Known:
    """Everything that the knowledge says for a diagnosis."""

    causes: Mapping[str, Cause]
    tests: Mapping[str, Test]
    keys: Catalogue
    figures: Mapping[str, float]
    says: Mapping[str, Wording]


@cache
def known() -> Known:
    """The knowledge of causes and tests. Raises KnowledgeInvalid with the first file that is wrong."""
    keys = _shaped(_Keys, _file("keys"))
    facts: dict[str, GivenFact] = {}
    for row in keys.key:
        for table in row.of:
            facts[f"{table}.{row.name}"] = _fact(row, table)
    return Known(
        {one.id: one for one in _shaped(_Causes, _file("causes")).cause},
        {one.id: one for one in _shaped(_Tests, _file("tests")).test},
        Catalogue(facts, (), (), (), {}, References(knowledge_folder())),
        {name: _size(one) for name, one in _each(_Figure, _file("weighing")).items()},
        {name: one.text for name, one in _each(_Say, _file("says")).items()},
    )


def _file(name: str) -> TomlFile:
    file = read_toml(knowledge_folder() / _ROOM / f"{name}.toml", f"knowledge/{_ROOM}/{name}.toml")
    if isinstance(file, Problem):
        raise KnowledgeInvalid((file,))
    return file


def _shaped(model: type[Shaped], file: TomlFile, tables: Any = None) -> Shaped:
    try:
        return model.model_validate(file.tables if tables is None else tables)
    except ValidationError as faults:
        raise KnowledgeInvalid(
            Problem(file.place(*fault["loc"]), ".".join(map(str, fault["loc"])), str(fault["msg"]).lower(), "mend it")
            for fault in faults.errors()
        ) from faults


def _each(model: type[Shaped], file: TomlFile) -> dict[str, Shaped]:
    return {name: _shaped(model, file, rows) for name, rows in file.tables.items()}


def _size(one: _Figure) -> float:
    return float(one.value) if one.unit == "1" else read_quantity(one.value, one.unit)


def _fact(row: _Key, table: str) -> GivenFact:
    try:
        least, most = (read_quantity(one, row.unit) if one else None for one in (row.least, row.most))
    except FactsWrong as wrong:
        raise KnowledgeInvalid(wrong.problems) from wrong
    spec = FactSpec(
        f"{table}.{row.name}", row.type, row.label, "given", row.unit, choices=tuple(row.choices), least=least, most=most,
        how=row.how, sources=(row.source,),
    )  # fmt: skip
    return GivenFact(spec, row.ask, row.typical, least_said=row.least, most_said=row.most, fewest=row.fewest)
