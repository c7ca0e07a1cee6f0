"""The files with rules of a shop, read: which there are for a job, what each says and where, their fingerprint."""

import hashlib
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

from tailtrue.errors import KnowledgeInvalid, Problem
from tailtrue.given.knowledge_file import shaped
from tailtrue.given.toml_file import TomlFile, read_toml
from tailtrue.store.overlay_models import (
    EntryFile,
    ShopRulesFile,
)

KINDS = ("add", "tighten", "reword", "disable")


@dataclass(frozen=True)
class Layer:
    """One file of shop rules."""

    file: TomlFile
    rules: ShopRulesFile

    def place(self, kind: str, number: int) -> str:
        """File and line of an entry."""
        return self.file.place(kind, number)


@dataclass(frozen=True)
class Layers:
    """All files of shop rules that lie over one knowledge, and a short fingerprint of them."""

    files: tuple[Layer, ...]
    version: str


def read_layers(paths: Sequence[Path], beside: Path) -> Layers:
    """Rule files read; they are named as seen from the folder `beside`. Raises KnowledgeInvalid with every fault."""
    problems: list[Problem] = []
    layers = [layer for path in paths if (layer := _read(path, _shown(path, beside), problems))]
    if problems:
        raise KnowledgeInvalid(problems)
    digest = hashlib.sha256()
    for layer, path in zip(layers, paths, strict=True):
        digest.update(layer.file.shown.encode())
        digest.update(path.read_bytes())
    return Layers(tuple(layers), digest.hexdigest()[:8])


def _shown(path: Path, beside: Path) -> str:
    try:
        return path.relative_to(beside).as_posix()
    except ValueError:
        return path.name


def _read(path: Path, shown: str, problems: list[Problem]) -> Layer | None:
    toml = read_toml(path, shown, "mend the name; it is looked for beside the job file")
    if isinstance(toml, Problem):
        problems.append(toml)
        return None
    before = len(problems)
    rules = shaped(ShopRulesFile, toml, problems, by_people=True)
    if rules is None:
        return None
    layer = Layer(toml, rules)
    for kind in KINDS:
        entries: Sequence[EntryFile] = getattr(rules, kind)
        for number, entry in enumerate(entries):
            problems += _unsaid(layer.place(kind, number), kind, entry)
    if not any(getattr(rules, kind) for kind in KINDS):
        problems.append(
            Problem(shown, "", "holds no rule", f"write entries below {', '.join(f'[[{kind}]]' for kind in KINDS)}")
        )
    return layer if len(problems) == before else None


def _unsaid(where: str, kind: str, entry: EntryFile) -> Iterator[Problem]:
    for name, text in (("reason", entry.reason), ("by", entry.by)):
        if not text.strip() or not text.isprintable() or "{{" in text:
            yield Problem(
                where, f"[[{kind}]] {name}", "is empty, or holds what cannot be printed", "write it on one line, in words"
            )
