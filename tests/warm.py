"""The command in a process of its own, without starting Python for each: forked from one that has everything imported.

Exit status, streams, folder and environment are those of a process; what is shared is what no run changes: the modules
with what is built when it is first used, and the rule base that ships.
"""

import contextlib
import gc
import importlib
import json
import os
import pkgutil
import subprocess
import sys
import tempfile
from functools import cache
from pathlib import Path
from typing import Any


class Warm:
    """A process that forks for each command that it is told."""

    def __init__(self) -> None:
        paths = os.pathsep.join(path for path in sys.path if path)
        self._process = subprocess.Popen(
            [sys.executable, str(Path(__file__))],
            stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True, env={**os.environ, "PYTHONPATH": paths},
        )  # fmt: skip

    def run(self, words: tuple[str, ...], folder: Path) -> subprocess.CompletedProcess[str]:
        """What a command comes to in a folder."""
        ask, answer = self._process.stdin, self._process.stdout
        assert ask is not None
        assert answer is not None
        with tempfile.TemporaryDirectory() as streams:
            out, err = Path(streams) / "out", Path(streams) / "err"
            told = {"words": words, "folder": str(folder), "environment": dict(os.environ), "streams": [str(out), str(err)]}
            ask.write(json.dumps(told) + "\n")
            ask.flush()
            status = int(answer.readline())
            said = [stream.read_text(encoding="utf-8") for stream in (out, err)]
        return subprocess.CompletedProcess(["tailtrue", *words], status, *said)


@cache
def warm() -> Warm:
    """The one such process of this run of tests."""
    return Warm()


def _serve() -> None:
    import tailtrue
    from tailtrue.documents import Wanted, write_documents

    for module in pkgutil.walk_packages(tailtrue.__path__, "tailtrue."):
        if not module.name.endswith("__main__"):
            importlib.import_module(module.name)
    # Every paper of one sheet is made: shapes are built, patterns and templates compiled when they are first used.
    tree = tailtrue.advise.make_procedure(Path(__file__).parents[1] / "docs" / "examples" / "fernhill" / "job.toml")
    with tempfile.TemporaryDirectory() as papers:
        write_documents(tree, Path(papers), Wanted(formats=("html", "pdf", "md", "json")))
    importlib.import_module("scipy.special")  # what judges a visit comes with the first that is judged
    gc.set_threshold(100_000, 50, 100)
    gc.freeze()
    for line in sys.stdin:
        child = os.fork()
        if not child:
            _become(json.loads(line))
        _, status = os.waitpid(child, 0)
        print(os.waitstatus_to_exitcode(status), flush=True)


def _become(told: dict[str, Any]) -> None:
    """Run the command as this process, and end it."""
    from tailtrue.cli import run

    # Whatever happens, this process must not go on as a second server.
    status = 70
    with contextlib.suppress(BaseException):
        os.chdir(told["folder"])
        os.environ.clear()
        os.environ.update(told["environment"])
        nothing = os.open(os.devnull, os.O_RDONLY)
        os.dup2(nothing, sys.stdin.fileno())
        for stream, path in zip((sys.stdout, sys.stderr), told["streams"], strict=True):
            os.dup2(os.open(path, os.O_WRONLY | os.O_CREAT | os.O_TRUNC), stream.fileno())
        sys.argv = ["tailtrue", *told["words"]]
        try:
            run()
            status = 0
        except SystemExit as ended:
            status = ended.code if isinstance(ended.code, int) else int(ended.code is not None)
        sys.stdout.flush()
        sys.stderr.flush()
    os._exit(status)


if __name__ == "__main__":
    _serve()
