"""Which files with rules of a shop there are for a job."""

from collections.abc import Iterator
from pathlib import Path

RULES_FOLDER = "rules"
SHOP_SOURCE = "shop-rule"


def rule_files(job: Path, named: str) -> tuple[Path, ...]:
    """The rule files of a job: all of the folder `rules` beside it, and the file or folder that the job names."""
    found = list(_in_folder(job.parent / RULES_FOLDER)) if (job.parent / RULES_FOLDER).is_dir() else []
    if named:
        below = job.parent / named
        found += files_of(below)
    return tuple({path.resolve(): path for path in found}.values())


def files_of(path: Path) -> tuple[Path, ...]:
    """A rule file, or every one of a folder."""
    return tuple(_in_folder(path)) if path.is_dir() else (path,)


def _in_folder(folder: Path) -> Iterator[Path]:
    yield from sorted(folder.glob("*.toml"))
