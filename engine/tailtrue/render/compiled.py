"""Compiled templates, kept between runs in the user's own cache folder.

Compiling costs more than filling in. What is kept is code, so its seal must fit: made by these versions, from this very
template. Without a safe place for it every run compiles for itself, and the page is the same.
"""

import inspect
import marshal
import sys
from functools import cached_property
from pathlib import Path

import jinja2
from jinja2.bccache import Bucket, BytecodeCache

from tailtrue.kept import keep, own_folder, take


class Compiled(BytecodeCache):
    """Compiled templates in one folder, each under the name of its template."""

    @cached_property
    def folder(self) -> Path | None:
        """Where they are kept; None when there is no safe place."""
        return own_folder()

    def get_cache_key(self, name: str, filename: str | None = None) -> str:
        """The name alone: the seal tells templates of one name apart, so folders that come and go leave nothing."""
        del filename
        return f"{name.replace('/', '-')}.{sys.implementation.cache_tag}"

    def load_bytecode(self, bucket: Bucket) -> None:
        """Take what is kept, if its seal fits."""
        code = take(self.folder / bucket.key, _made_from(bucket)) if self.folder else None
        if code is not None:
            bucket.code = marshal.loads(code)

    def dump_bytecode(self, bucket: Bucket) -> None:
        """Keep a template that was just compiled, whole or not at all."""
        if self.folder and not keep(self.folder / bucket.key, _made_from(bucket), marshal.dumps(bucket.code)):
            self.folder = None


def _made_from(bucket: Bucket) -> str:
    """Everything that the code of a template was made from."""
    reads = bucket.environment
    # The code is written by our own generator, whose file tells which it is as Python tells its compiled modules apart.
    writer = Path(inspect.getfile(reads.code_generator_class)).stat()
    made_from = (
        jinja2.__version__, sys.version, bucket.key, bucket.checksum, reads.trim_blocks,
        reads.lstrip_blocks, reads.autoescape, reads.optimized, writer.st_size, writer.st_mtime_ns,
    )  # fmt: skip
    return repr(made_from)
