"""Writing the documents of a procedure, all or none."""

import os
import tempfile
from pathlib import Path

from tailtrue.errors import Problem, UsageError
from tailtrue.procedure import Procedure
from tailtrue.render import to_html, to_markdown


def write_documents(procedure: Procedure, out: Path) -> tuple[Path, ...]:
    """Write HTML, Markdown and JSON into a folder.

    Every text is made before the first file is touched, and each file appears whole or not at all.
    Raises UsageError when the folder cannot be written.
    """
    texts = {
        "procedure.html": to_html(procedure),
        "procedure.md": to_markdown(procedure),
        "procedure.json": procedure.model_dump_json(indent=2) + "\n",
    }
    try:
        out.mkdir(parents=True, exist_ok=True)
        return tuple(_write(out / name, text) for name, text in texts.items())
    except OSError as wrong:
        raise UsageError(
            (Problem(str(out), "", f"cannot be written: {wrong.strerror}", "name another folder with --out"),)
        ) from wrong


def _write(path: Path, text: str) -> Path:
    handle, name = tempfile.mkstemp(dir=path.parent, prefix=f".{path.name}.")
    with os.fdopen(handle, "w", encoding="utf-8", newline="\n") as opened:
        opened.write(text)
    # mkstemp makes files private; documents are for everybody who may read the folder.
    os.chmod(name, 0o644)
    os.replace(name, path)
    return path
