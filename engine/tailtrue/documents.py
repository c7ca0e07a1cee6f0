"""Writing the documents of a procedure, all or none."""

import os
import tempfile
from collections.abc import Mapping
from pathlib import Path

from tailtrue.errors import Problem, UsageError
from tailtrue.procedure import Procedure
from tailtrue.render import to_html, to_markdown


def write_documents(procedure: Procedure, out: Path) -> tuple[Path, ...]:
    """Write HTML, Markdown and JSON into a folder.

    Every text is made and lies on the disk under another name before the first document changes, so that a full disk
    or a forbidden folder leaves what was there before. Raises UsageError when the folder cannot be written.
    """
    texts = {
        "procedure.html": to_html(procedure),
        "procedure.md": to_markdown(procedure),
        "procedure.json": procedure.model_dump_json(indent=2) + "\n",
    }
    return write_all(texts, out)


def write_all(texts: Mapping[str, str], out: Path) -> tuple[Path, ...]:
    """Write texts into files of a folder by name, all or none; UsageError when that cannot be done."""
    laid: list[tuple[str, Path]] = []
    try:
        out.mkdir(parents=True, exist_ok=True)
        for name, text in texts.items():
            if (out / name).is_dir():
                raise IsADirectoryError(0, f"{name} is a folder")
            laid.append((_lay(out / name, text), out / name))
        for made, path in laid:
            os.replace(made, path)
    except OSError as wrong:
        for made, _ in laid:
            Path(made).unlink(missing_ok=True)
        problem = Problem(str(out), "", f"cannot be written: {wrong.strerror}", "name another folder with --out")
        raise UsageError((problem,)) from wrong
    return tuple(path for _, path in laid)


def _lay(path: Path, text: str) -> str:
    handle, name = tempfile.mkstemp(dir=path.parent, prefix=f".{path.name}.")
    with os.fdopen(handle, "w", encoding="utf-8", newline="\n") as opened:
        opened.write(text)
    # mkstemp makes files private; documents are for everybody who may read the folder.
    os.chmod(name, 0o644)
    return name
