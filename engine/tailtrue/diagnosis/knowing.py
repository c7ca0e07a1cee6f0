"""What the knowledge says of causes and tests: loaded once, held against its shape."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Annotated, Any, Literal

from pydantic import BaseModel, ConfigDict, Field

from tailtrue.errors import KnowledgeInvalid, Problem
from tailtrue.given.entries import Catalogue, GivenFact
from tailtrue.given.figures_file import figures_in
from tailtrue.given.knowledge_file import knowledge_toml, shaped
from tailtrue.given.making import FactMaker
from tailtrue.given.references import References
from tailtrue.given.said_file import Words, said_in
from tailtrue.given.shapes import FieldShape
from tailtrue.given.toml_file import TomlFile
from tailtrue.places import knowledge_folder
from tailtrue.quantities import read_quantity
from tailtrue.wording import Wording

FILES = tuple(f"diagnosis/{name}.toml" for name in ("causes", "tests", "keys", "weighing", "says"))
Sources = Annotated[list[str], Field(min_length=1)]


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
    """The knowledge of causes and tests that ships with the engine. Raises KnowledgeInvalid."""
    return load_known(knowledge_folder())


def load_known(folder: Path) -> Known:
    """The knowledge of causes and tests of a knowledge folder. Raises KnowledgeInvalid with everything that is wrong."""
    problems: list[Problem] = []
    causes, tests, keys, weighing, says = (knowledge_toml(folder, name) for name in FILES)
    found = Known(
        _by_id(shaped(_Causes, causes, problems), "cause", causes, problems),
        _by_id(shaped(_Tests, tests, problems), "test", tests, problems),
        Catalogue(_keys(keys, References(folder), problems), (), (), (), (), {}, References(folder)),
        figures_in(weighing, problems),
        said_in(says, problems),
    )  # fmt: skip
    if problems:
        raise KnowledgeInvalid(problems)
    return found


def _by_id(shape: Any, key: str, file: TomlFile, problems: list[Problem]) -> dict[str, Any]:
    found: dict[str, Any] = {}
    for number, one in enumerate(getattr(shape, key) if shape is not None else ()):
        if one.id in found:
            problems.append(Problem(file.place(key, number), one.id, f"another {key} has this id", "rename one"))
        found[one.id] = one
    return found


def _keys(file: TomlFile, references: References, problems: list[Problem]) -> dict[str, GivenFact]:
    facts: dict[str, GivenFact] = {}
    shape = shaped(_Keys, file, problems)
    for number, row in enumerate(shape.key if shape is not None else ()):
        maker = FactMaker(file.place("key", number), references, (), problems)
        for table in row.of:
            one = maker.one(row.model_copy(update={"name": f"{table}.{row.name}"}))
            if one.spec.name in facts:
                problems.append(Problem(maker.where, one.spec.name, "another key has this name", "rename one"))
            facts[one.spec.name] = one
    return facts
