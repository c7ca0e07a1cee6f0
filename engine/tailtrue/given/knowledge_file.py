"""Reading one TOML file of the knowledge against its shape; every fault with its file and line."""

from collections.abc import Collection, Iterator
from pathlib import Path
from typing import Any, TypeVar, get_args

from pydantic import BaseModel, ValidationError

from tailtrue.errors import KnowledgeInvalid, Problem
from tailtrue.given.plain_faults import plain_fault
from tailtrue.given.suggest import closest
from tailtrue.given.toml_file import TomlFile, read_toml
from tailtrue.tables import source_keys

Shaped = TypeVar("Shaped", bound=BaseModel)


def knowledge_toml(folder: Path, name: str) -> TomlFile:
    """A file of a knowledge folder. Raises KnowledgeInvalid when it cannot be read."""
    file = read_toml(folder / name, f"knowledge/{name}")
    if isinstance(file, Problem):
        raise KnowledgeInvalid((file,))
    return file


def shaped(
    model: type[Shaped], file: TomlFile, problems: list[Problem], path: tuple[str | int, ...] = (),
    known: Collection[str] = (), by_people: bool = False,
) -> Shaped | None:  # fmt: skip
    """A file, or what stands in it at a path, held against its shape; None, with the problems noted, when it does not fit.

    `known` are the names to suggest for a misspelt key, where they are not those of the shape itself. A file that is
    written `by_people` is answered in their words, with the keys of the very place.
    """
    tables: Any = file.tables
    for step in path:
        tables = tables[step]
    try:
        return model.model_validate(tables)
    except ValidationError as faults:
        for fault in faults.errors():
            keys = (*path, *(part for part in fault["loc"] if part != "str"))
            where, said = file.place(*keys), ".".join(map(str, keys))
            if by_people:
                problems.append(plain_fault(fault, keys, where, _keys_at(model, fault["loc"])))
            elif fault["type"] == "extra_forbidden":
                close = closest(str(keys[-1]), known or model.model_fields)
                do = f"a key named '{close}' exists" if close else "take it out"
                problems.append(Problem(where, said, f"unknown key '{keys[-1]}'", do))
            elif fault["type"] == "missing":
                problems.append(Problem(where, said, "not given", "add it"))
            else:
                problems.append(Problem(where, said, "does not fit", str(fault["msg"]).lower()))
        return None


def _keys_at(model: type[BaseModel], path: tuple[int | str, ...]) -> Collection[str]:
    """The keys that may stand where the last one of this path stands; none where its shape is not to be told."""
    shape: type[BaseModel] | None = model
    for key in path[:-1]:
        if isinstance(key, str) and shape is not None:
            field = shape.model_fields.get(key)
            shape = _shape_in(field.annotation) if field is not None else None
    return () if shape is None else shape.model_fields


def _shape_in(annotation: Any) -> type[BaseModel] | None:
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        return annotation
    return next((found for one in get_args(annotation) if (found := _shape_in(one)) is not None), None)


def source_problems(file: TomlFile, known: Collection[str]) -> Iterator[Problem]:
    """Every source that a file names anywhere and nobody knows."""
    for path, written in _sources(file.tables, ()):
        for key in source_keys(written):
            if key not in known:
                yield Problem(file.place(*path), ".".join(map(str, path)), *unknown_source(key))


def unknown_source(key: str) -> tuple[str, str]:
    """What is wrong with a source that nobody knows, and what to do.

    >>> unknown_source("hearsay")[0]
    "source 'hearsay' is not in sources.toml"
    """
    return f"source '{key}' is not in sources.toml", "add it, or use memory"


def _sources(found: Any, path: tuple[str | int, ...]) -> Iterator[tuple[tuple[str | int, ...], str]]:
    if isinstance(found, dict):
        for key, one in found.items():
            if key in ("source", "sources"):
                yield from ((((*path, key)), written) for written in ([one] if isinstance(one, str) else one))
            else:
                yield from _sources(one, (*path, key))
    elif isinstance(found, list):
        for number, one in enumerate(found):
            yield from _sources(one, (*path, number))
