"""Entries of the knowledge as plain data, and plain data as entries again.

Plain are words, numbers, yes and no, nothing, and lists, tuples, sets and mappings of these. An entry becomes the number
of its class in a closed table, its plain fields, and the shapes of those fields that hold other entries; what is made
anew is an instance of a class of that table and nothing else, so no data can call for code. What was one entry in two
places is one entry again. Functions are not packed: whatever holds them stands outside, and is named.

A shape is the number of an entry, a tuple of shapes, a mapping to shapes, a list of one plain value, or the word for a
list and its shapes.
"""

from collections.abc import Mapping, Sequence
from dataclasses import is_dataclass
from functools import cached_property
from pathlib import Path
from types import MappingProxyType
from typing import Any

from pydantic import BaseModel

_LEAVES = frozenset({str, int, float, bool, type(None)})
_LIST = "list"
_set = object.__setattr__


class Unpackable(TypeError):
    """Something in the data is neither plain nor of a known class."""


class _Packer:
    def __init__(self, classes: Sequence[type], outside: Sequence[Any], folder: Path) -> None:
        self.numbers = {one: number for number, one in enumerate(classes)}
        self.known: dict[int, int] = {id(one): number for number, one in enumerate(outside)}
        # The entries are held fast while they are packed, so that no number of an object comes twice.
        self.held: list[Any] = list(outside)
        self.also_held: list[Any] = []
        self.entries: list[tuple[Any, ...]] = []
        self.folder = folder
        # Equal words and equal entries that never change are packed once: there are many, and the most are empty.
        self.words: dict[str, str] = {}
        self.equal: dict[tuple[int, str], int] = {}

    def shape(self, value: Any) -> Any:
        """The shape of a value; a list of one for what is plain."""
        kind = type(value)
        if kind is str:
            return [self.words.setdefault(value, value)]
        if kind in _LEAVES:
            return [value]
        if id(value) in self.known:
            return self.known[id(value)]
        if kind in self.numbers:
            return self._entry(value)
        if isinstance(value, Path):
            return self._folder(value)
        if kind is frozenset or kind is set:
            if not all(type(one) in _LEAVES for one in value):
                raise Unpackable("a set of other things than words and numbers")
            return [value]
        if kind in (tuple, list):
            inner = tuple(self.shape(one) for one in value)
            if all(type(one) is list and len(one) == 1 for one in inner):
                return [kind(one[0] for one in inner)]
            return inner if kind is tuple else [_LIST, inner]
        if kind in (dict, MappingProxyType):
            if not all(type(key) in (str, tuple) for key in value):
                raise Unpackable("a mapping by other things than words")
            shapes = {self._key(key): self.shape(one) for key, one in value.items()}
            if all(type(one) is list and len(one) == 1 for one in shapes.values()):
                return [{key: one[0] for key, one in shapes.items()}]
            return shapes
        raise Unpackable(f"{kind.__module__}.{kind.__name__} is not packed")

    def _folder(self, value: Path) -> int:
        if value != self.folder:
            raise Unpackable("the name of another folder")
        return 0

    def _entry(self, value: Any) -> int:
        plain: dict[str, Any] = {}
        shapes: list[tuple[str, Any]] = []
        for name, one in _fields(value).items():
            # What is only remembered is found again.
            if isinstance(vars(type(value)).get(name), cached_property):
                continue
            shape = self.shape(one)
            is_plain = type(shape) is list and len(shape) == 1
            plain[name] = shape[0] if is_plain else None
            if not is_plain:
                shapes.append((name, shape))
        said = tuple(sorted(value.__pydantic_fields_set__)) if isinstance(value, BaseModel) else None
        entry = (self.numbers[type(value)], plain, tuple(shapes), said)
        number = len(self.held)
        if said is None:
            number = self.equal.setdefault((entry[0], repr(entry)), number)
        self.known[id(value)] = number
        if number == len(self.held):
            self.entries.append(entry)
            self.held.append(value)
        else:
            self.also_held.append(value)
        return number

    def _key(self, key: Any) -> Any:
        return self.words.setdefault(key, key) if type(key) is str else key


def _fields(value: Any) -> Mapping[str, Any]:
    """The fields of an entry by name, in their order."""
    fields: Mapping[str, Any] = value._asdict() if hasattr(type(value), "_asdict") else vars(value)
    return fields


def pack(value: Any, classes: Sequence[type], outside: Sequence[Any], folder: Path) -> tuple[Any, ...]:
    """A value as plain data. `outside` are things that are named and not packed; the folder itself is one of them.

    Raises Unpackable for anything else that is not plain.
    """
    packer = _Packer(classes, (folder, *outside), folder)
    root = packer.shape(value)
    return tuple(packer.entries), root


def unpack(packed: tuple[Any, ...], classes: Sequence[type], outside: Sequence[Any], folder: Path) -> Any:
    """The value that was packed."""
    entries, root = packed
    made: list[Any] = [folder, *outside]
    tuples = frozenset(number for number, one in enumerate(classes) if issubclass(one, tuple))
    for number, fields, shapes, said in entries:
        for name, shape in shapes:
            fields[name] = made[shape] if type(shape) is int else _made(shape, made)
        if number in tuples:
            made.append(tuple.__new__(classes[number], fields.values()))
            continue
        one = object.__new__(classes[number])
        _set(one, "__dict__", fields)
        if said is not None:
            _set(one, "__pydantic_fields_set__", set(said))
            _set(one, "__pydantic_extra__", None)
            _set(one, "__pydantic_private__", None)
        made.append(one)
    return _made(root, made)


def _made(shape: Any, made: list[Any]) -> Any:
    kind = type(shape)
    if kind is int:
        return made[shape]
    if kind is tuple:
        return tuple([_made(one, made) for one in shape])
    if kind is dict:
        return {key: _made(one, made) for key, one in shape.items()}
    return shape[0] if len(shape) == 1 else [_made(one, made) for one in shape[1]]


def packed_classes(modules: Sequence[Any]) -> tuple[type, ...]:
    """The classes of entries that stand in these modules, in a fixed order."""
    return tuple(
        value
        for module in modules
        for _, value in sorted(vars(module).items())
        if isinstance(value, type)
        and value.__module__ == module.__name__
        and (is_dataclass(value) or issubclass(value, BaseModel | tuple))
    )


def outside_of(computed: Mapping[str, Any]) -> tuple[Any, ...]:
    """What holds functions and stands outside: the computed facts, and what each says of itself."""
    ways = [computed[name] for name in sorted(computed)]
    return (*ways, *(way.spec for way in ways))
