"""What a run may keep for the next one, in the user's own cache folder, each thing under a seal.

Keeping saves time and nothing else. What is kept is taken only from a folder that belongs to the user and that nobody
else can write to, and only when its seal fits: made from the very same things, not damaged. Where that cannot be had,
nothing is kept and every run works for itself; nobody is told, for the result is the same.
"""

import hashlib
import os
import stat
import tempfile
from pathlib import Path

_SEAL = hashlib.sha256().digest_size


def own_folder() -> Path | None:
    """Where things are kept; None when there is no safe place."""
    try:
        return _own_folder()
    except (OSError, RuntimeError):
        return None


def _own_folder() -> Path | None:
    written = os.environ.get("XDG_CACHE_HOME", "")
    root = Path(written) if os.path.isabs(written) else Path.home() / ".cache"
    if not root.parent.is_dir():
        return None
    folder = root / "tailtrue"
    folder.mkdir(mode=0o700, parents=True, exist_ok=True)
    found = folder.lstat()
    if not stat.S_ISDIR(found.st_mode):
        return None
    if hasattr(os, "getuid") and (found.st_uid != os.getuid() or found.st_mode & (stat.S_IWGRP | stat.S_IWOTH)):
        return None
    return folder


def take(path: Path, made_from: str) -> bytes | None:
    """What is kept there, if it is whole and was made from just this."""
    try:
        kept = path.read_bytes()
    except OSError:
        return None
    content = kept[_SEAL:]
    return content if kept[:_SEAL] == _seal(made_from, content) else None


def keep(path: Path, made_from: str, content: bytes) -> bool:
    """Keep something whole or not at all, and tell whether it was possible."""
    try:
        handle, made = tempfile.mkstemp(dir=path.parent)
        try:
            with os.fdopen(handle, "wb") as opened:
                opened.write(_seal(made_from, content) + content)
            os.replace(made, path)
        except OSError:
            Path(made).unlink(missing_ok=True)
            raise
    except OSError:
        return False
    return True


def _seal(made_from: str, content: bytes) -> bytes:
    return hashlib.sha256(made_from.encode() + content).digest()
