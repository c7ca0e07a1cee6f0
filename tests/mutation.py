"""Does a test notice when a formula is wrong? Small faults are put into engine/tailtrue/calc one at a time.

.venv/bin/python tests/mutation.py [module ...]

Printed is each fault that no test noticed, with file and line, and the share that was noticed. Everything happens in a
copy in a temporary folder. Tests are collected once; every fault is tried in a process forked from there, which runs
those tests only that call the changed function, the fastest first. Faults that cannot change a result are listed, each
with its reason, in tests/equal_faults.csv and not tried.

Made here because ready tools left out what matters most in this room: bounds kept as constants of a module, checks
taken away as whole statements, and a bound moved by one part in a hundred; or they start Python anew for each fault.
"""

import argparse
import ast
import csv
import gc
import importlib
import json
import os
import resource
import shutil
import signal
import sys
import tempfile
import time
from collections.abc import Iterator
from pathlib import Path
from types import FrameType, FunctionType, ModuleType
from typing import Any

import pytest

from mutants import RULES, Mutant, mutants

ROOT = Path(__file__).parents[1]
CALC = Path("engine/tailtrue/calc")
_SLOW_S = 2.0  # a test that takes longer is left out and named
_PATIENCE = 8  # times as long as the tests take while they are watched: then a fault that never ends counts as noticed
_MEMORY = 4 * 1024**3  # bytes of address space of one trial
_NOTICED, _UNNOTICED = 10, 0  # exit codes of a trial


def main() -> int:
    """Read the command line, copy, run."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("modules", nargs="*", help="names of modules in calc; all of them when none is named")
    parser.add_argument("--jobs", type=int, default=2, help="trials at the same time (2)")
    given = parser.parse_args()
    known = sorted(path.stem for path in (ROOT / CALC).glob("*.py") if path.stem != "__init__")
    if unknown := sorted(set(given.modules) - set(known)):
        parser.error(f"no module {', '.join(unknown)} in {CALC}; there are {', '.join(known)}")
    with tempfile.TemporaryDirectory() as folder:
        copy = Path(folder) / "tree"
        for part in ("engine", "tests", "knowledge", "templates", "docs"):
            shutil.copytree(ROOT / part, copy / part, ignore=shutil.ignore_patterns("__pycache__", "*.egg-info"))
        shutil.copy(ROOT / "pyproject.toml", copy)
        return _run_in(copy, given.modules or known, given.jobs)


def _run_in(copy: Path, modules: list[str], jobs: int) -> int:
    os.chdir(copy)
    os.environ |= {"OPENBLAS_NUM_THREADS": "1", "HYPOTHESIS_STORAGE_DIRECTORY": str(copy / "hypothesis")}
    sys.path[0] = str(copy / "engine")
    trials = Trials(copy, modules, jobs)
    pytest.main(
        ["-o", "addopts=", "--doctest-modules", "-p", "no:cacheprovider", "-p", "no:terminal", "-p", "no:xdist",
         "--capture=no", "--continue-on-collection-errors", "--import-mode=importlib", f"--basetemp={copy / 'tests-temp'}",
         *_test_files(copy)],
        plugins=[trials],
    )  # fmt: skip
    return trials.report()


def _test_files(copy: Path) -> list[str]:
    """Examples of every module and every file of tests: which of them guard a function is seen when they run.

    The same for one module as for all. What a file names says little: a test that goes through all formulas names none.
    """
    tests = [*(copy / "tests/calc").glob("test_*.py"), *(copy / "tests/published").glob("test_*.py")]
    return [str(path) for path in sorted([*(copy / CALC).glob("*.py"), *tests])]


class TrialBroke(Exception):
    """A trial said neither that its fault was noticed nor that it was not: nothing is proved from here on."""


class Trials:
    """A plugin of pytest that runs the collected tests again and again, each time with another fault."""

    def __init__(self, copy: Path, modules: list[str], jobs: int) -> None:
        self.copy, self.modules, self.jobs = copy, modules, jobs
        self.broken: list[str] = []
        self.left_out: list[str] = []
        self.gone: list[str] = []
        self.stopped = ""
        self.endless: list[str] = []
        self.tried: dict[str, int] = {}
        self.missed: dict[str, int] = {}

    def pytest_sessionstart(self) -> None:
        """The same examples in every trial, not many, and no search for the smallest: one that fails is enough."""
        from hypothesis import HealthCheck, Phase, settings

        settings.register_profile(
            "faults", derandomize=True, database=None, deadline=None, max_examples=25,
            phases=(Phase.explicit, Phase.generate), suppress_health_check=list(HealthCheck),
        )  # fmt: skip
        settings.load_profile("faults")

    def pytest_collectreport(self, report: pytest.CollectReport) -> None:
        """Keep what could not be collected, to name it."""
        if report.failed:
            self.broken.append(report.nodeid)

    def pytest_runtestloop(self, session: pytest.Session) -> bool:
        """Run without a fault first, then once for each."""
        session.config._tmp_path_factory.getbasetemp()  # type: ignore[attr-defined]  # made once, or trials race for it
        session.config.option.tbstyle = "native"  # nobody reads these tracebacks; this kind costs least
        gc.freeze()  # forked processes then share the memory of the tests
        seen = self._without_fault(session.items)
        for module in self.modules:
            try:
                self._module(module, session.items, seen)
            except TrialBroke as broke:
                self.stopped = f"{module}: {broke}"
                break
        return True

    def _without_fault(self, items: list[pytest.Item]) -> dict[str, Any]:
        """For each test: seconds, whether it passed, which functions of calc it called."""
        path = self.copy / "seen.json"
        child = os.fork()
        if not child:
            _quietly(lambda: path.write_text(json.dumps(dict(_watched(items, str(self.copy / CALC))))))
        os.waitpid(child, 0)
        seen: dict[str, Any] = json.loads(path.read_text())
        self.left_out += [f"{name} (fails without a fault)" for name, (_, passed, _) in seen.items() if not passed]
        slow = [(name, taken) for name, (taken, passed, _) in seen.items() if passed and taken > _SLOW_S]
        self.left_out += [f"{name} ({taken:.0f} s)" for name, taken in slow]
        return {name: at for name, at in seen.items() if at[1] and at[0] <= _SLOW_S}

    def _module(self, name: str, items: list[pytest.Item], seen: dict[str, Any]) -> None:
        path = CALC / f"{name}.py"
        source = path.read_text(encoding="utf-8")
        tree = ast.parse(source)
        module = importlib.import_module(f"tailtrue.calc.{name}")
        assert Path(str(module.__file__)).resolve() == (self.copy / path).resolve(), module.__file__
        order = sorted((item for item in items if item.nodeid in seen), key=lambda item: seen[item.nodeid][0])
        lines = source.splitlines()
        every = _named(mutants(tree), lines)
        classes = {node.name for node in tree.body if isinstance(node, ast.ClassDef)}
        equal = {(row["function"], row["line"], row["fault"], int(row["nth"])) for row in _equal_faults(name)}
        faults = [fault for key, fault in every.items() if key not in equal]
        self.gone += [" | ".join(map(str, (name, *key))) for key in sorted(equal - set(every))]
        nothing = Mutant("", tree, "body", 0, tree.body[0], tree.body[0])
        order = [item for item in order if name in seen[item.nodeid][2]]
        if self._one_finished({_start(nothing, tree, module, order, 600): nothing}, path) != [nothing]:
            raise TrialBroke("tests notice an exchange of the module for itself; its trials would prove nothing")
        running: dict[int, Mutant] = {}
        missed = []
        for fault in faults:
            wide = not fault.function or fault.function in classes  # what a class is given is not seen as a call
            calling = {name} if wide else {f"{name}.{fault.function}"}
            tests = [item for item in order if calling & set(seen[item.nodeid][2])]
            seconds = 5 + _PATIENCE * sum(seen[item.nodeid][0] for item in tests)
            while len(running) >= self.jobs:
                missed += self._one_finished(running, path)
            running[_start(fault, tree, module, tests, seconds)] = fault
        while running:
            missed += self._one_finished(running, path)
        for fault in sorted(missed, key=lambda fault: fault.line):
            print(f"{path}:{fault.line}: {lines[fault.line - 1].strip()}\n    {fault.text()}")
        self.tried[name], self.missed[name] = len(faults), len(missed)
        print(_score(name, len(faults), len(missed)), flush=True)

    def _one_finished(self, running: dict[int, Mutant], path: Path) -> list[Mutant]:
        """Wait for a trial; its fault, when no test noticed it."""
        child, status = os.wait()
        fault = running.pop(child)
        if os.WIFSIGNALED(status):
            self.endless.append(f"{path}:{fault.line}: {fault.text()}")
        elif os.WEXITSTATUS(status) not in {_NOTICED, _UNNOTICED}:
            raise TrialBroke(f"the trial of line {fault.line} broke: {fault.text()}")
        return [fault] if status == _UNNOTICED else []

    def report(self) -> int:
        """Print what was found."""
        print(f"\n{RULES}")
        for heading, rows in (
            ("Counted as noticed because the tests did not end in time, or Python broke down", self.endless),
            ("Could not be collected", self.broken),
            ("Tests left out", self.left_out),
            ("In equal_faults.csv, but no longer among the faults", self.gone),
        ):
            if rows:
                print(f"{heading}:", *rows, sep="\n    ")
        tried, missed = sum(self.tried.values()), sum(self.missed.values())
        for name in self.tried:
            print(_score(name, self.tried[name], self.missed[name]))
        print(_score("together", tried, missed))
        if not_tried := [name for name in self.modules if name not in self.tried]:
            print(f"NOT COMPLETE. {self.stopped or 'pytest stopped'}\nNot tried: {', '.join(not_tried)}")
            return 2
        return 1 if missed else 0


def _named(faults: list[Mutant], lines: list[str]) -> dict[tuple[str, str, str, int], Mutant]:
    """Faults by what does not change when lines are added above: function, line, text, the how many-eth of that text."""
    named: dict[tuple[str, str, str, int], Mutant] = {}
    for fault in faults:
        key = (fault.function, lines[fault.line - 1].strip(), fault.text())
        named[*key, 1 + sum(before[:3] == key for before in named)] = fault
    return named


def _equal_faults(module: str) -> list[dict[str, str]]:
    with Path("tests/equal_faults.csv").open(newline="", encoding="utf-8") as lines:
        return [row for row in csv.DictReader(lines) if row["module"] == module]


def _score(name: str, tried: int, missed: int) -> str:
    share = f"{100 * (tried - missed) / tried:.1f} %" if tried else "none"
    return f"{name:<24} {tried - missed:>5} of {tried:>5} faults noticed {share:>8}"


def _quietly(work: Any, code: int = 0) -> None:
    """Work in a forked process and leave it without tidying what belongs to the parent."""
    try:
        work()
    except BaseException as fault:
        print(f"trial broke: {fault!r}", file=sys.stderr)
        code = 1
    os._exit(code)


def _watched(items: list[pytest.Item], folder: str) -> Iterator[tuple[str, tuple[float, bool, list[str]]]]:
    called: set[str] = set()

    def watch(frame: FrameType, _event: str, _what: object) -> None:
        code = frame.f_code
        if code.co_filename.startswith(folder):
            module = Path(code.co_filename).stem
            called.update((module, f"{module}.{code.co_qualname.split('.')[0]}"))

    for item, following in zip(items, [*items[1:], None], strict=False):
        called.clear()
        start = time.process_time()  # of the processor: a busy machine makes no test slow
        sys.settrace(watch)
        passed = _passes(item, following)
        sys.settrace(None)
        yield item.nodeid, (time.process_time() - start, passed, sorted(called))


def _passes(item: pytest.Item, following: pytest.Item | None) -> bool:
    from _pytest.runner import runtestprotocol

    return not any(report.failed for report in runtestprotocol(item, log=False, nextitem=following))


def _start(fault: Mutant, tree: ast.Module, module: ModuleType, tests: list[pytest.Item], seconds: float) -> int:
    """Begin a trial in a process of its own and give its number."""
    child = os.fork()
    if not child:
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        resource.setrlimit(resource.RLIMIT_AS, (_MEMORY, _MEMORY))  # a row that never ends must not fill the machine
        signal.setitimer(signal.ITIMER_PROF, seconds)  # of the processor; ends the process when a fault never ends
        _quietly(lambda: os._exit(_trial(fault, tree, module, tests)))
    return child


def _trial(fault: Mutant, tree: ast.Module, module: ModuleType, tests: list[pytest.Item]) -> int:
    fault.put()
    try:
        _transplant(tree, module)
    except Exception:  # the module cannot even be imported: every test would notice
        return _NOTICED
    for item, following in zip(tests, [*tests[1:], None], strict=False):
        if not _passes(item, following):
            return _NOTICED
    return _UNNOTICED


def _transplant(tree: ast.Module, module: ModuleType) -> None:
    """Bring a changed module into the one that tests already hold by its parts."""
    new: dict[str, Any] = {"__name__": module.__name__, "__file__": module.__file__}
    exec(compile(tree, str(module.__file__), "exec"), new)
    validity = importlib.import_module("tailtrue.calc.validity")
    for name in ("positive", "finite", "between"):  # one may stand for the other where it was not imported
        vars(module).setdefault(name, getattr(validity, name))
    rooms = [room for name, room in sys.modules.items() if name.startswith("tailtrue.calc.")]
    for name, member in new.items():
        before = vars(module).get(name)
        if name.startswith("__") or before is member:
            continue
        if isinstance(before, FunctionType) and isinstance(member, FunctionType):
            _exchange(before, member)
        elif isinstance(before, type) and isinstance(member, type):
            _exchange_class(before, member)
        else:
            for room in rooms:
                if vars(room).get(name) is before and (room is module or not name.startswith("_")):
                    setattr(room, name, member)


def _exchange(before: FunctionType, after: FunctionType) -> None:
    before.__code__, before.__defaults__, before.__kwdefaults__ = after.__code__, after.__defaults__, after.__kwdefaults__


def _exchange_class(before: type, after: type) -> None:
    for name, member in vars(after).items():
        held = vars(before).get(name)
        of, to = (
            getattr(held, "fget", getattr(held, "__func__", held)),
            getattr(member, "fget", getattr(member, "__func__", member)),
        )
        if (
            isinstance(of, FunctionType)
            and isinstance(to, FunctionType)
            and of.__code__.co_freevars == to.__code__.co_freevars
        ):
            _exchange(of, to)


if __name__ == "__main__":
    sys.exit(main())
