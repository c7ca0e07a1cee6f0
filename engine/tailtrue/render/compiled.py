"""Compiled templates, kept between runs in the user's own cache folder.

Compiling costs more than filling in. What is kept is code, so it is used only from a folder that belongs to the user
and that nobody else can write to, and only when its seal fits: made by these versions, from this very template, not
damaged. Where that cannot be had, nothing is kept and every run compiles for itself; nobody is told, for the page is
the same.
"""

import hashlib
import marshal
import os
import stat
import sys
import tempfile
from functools import cached_property
from pathlib import Path

import jinja2
from jinja2.bccache import Bucket, BytecodeCache

_SEAL = hashlib.sha256().digest_size


class Compiled(BytecodeCache):
    """Compiled templates in one folder, each under the name of its template."""

    @cached_property
    def folder(self) -> Path | None:
        """Where they are kept; None when there is no safe place."""
        try:
            return _own_folder()
        except (OSError, RuntimeError):
            return None

    def get_cache_key(self, name: str, filename: str | None = None) -> str:
        """The name alone: the seal tells templates of one name apart, so folders that come and go leave nothing."""
        del filename
        return f"{name.replace('/', '-')}.{sys.implementation.cache_tag}"

    def load_bytecode(self, bucket: Bucket) -> None:
        """Take what is kept, if its seal fits."""
        if self.folder is None:
            return
        try:
            kept = (self.folder / bucket.key).read_bytes()
        except OSError:
            return
        seal, code = kept[:_SEAL], kept[_SEAL:]
        if seal == _seal(bucket, code):
            bucket.code = marshal.loads(code)

    def dump_bytecode(self, bucket: Bucket) -> None:
        """Keep a template that was just compiled, whole or not at all."""
        if self.folder is None:
            return
        code = marshal.dumps(bucket.code)
        try:
            handle, made = tempfile.mkstemp(dir=self.folder)
            try:
                with os.fdopen(handle, "wb") as opened:
                    opened.write(_seal(bucket, code) + code)
                os.replace(made, self.folder / bucket.key)
            except OSError:
                Path(made).unlink(missing_ok=True)
        except OSError:
            self.folder = None


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


def _seal(bucket: Bucket, code: bytes) -> bytes:
    """A fingerprint of the code and of everything it was made from."""
    reads = bucket.environment
    made_from = (
        jinja2.__version__, sys.version, bucket.key, bucket.checksum, reads.trim_blocks,
        reads.lstrip_blocks, reads.autoescape, reads.optimized,
    )  # fmt: skip
    return hashlib.sha256(repr(made_from).encode() + code).digest()
