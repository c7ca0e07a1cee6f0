"""Where the knowledge and the templates are, in a checkout or in an installed wheel."""

from pathlib import Path

_PACKAGE = Path(__file__).resolve().parent
_CHECKOUT = _PACKAGE.parent.parent


def _folder(name: str) -> Path:
    inside = _PACKAGE / f"_{name}"
    return inside if inside.is_dir() else _CHECKOUT / name


def knowledge_folder() -> Path:
    """The folder of rules, tables, steps and routes.

    >>> (knowledge_folder() / "sources.toml").is_file()
    True
    """
    return _folder("knowledge")


def templates_folder() -> Path:
    """The folder of page templates and style sheets."""
    return _folder("templates")
