"""How long things take, as ratios measured in one run. Run it by hand; it is no test.

.venv/bin/python tests/benchmark.py
"""

import inspect
import os
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

ROOT = Path(__file__).parents[1]
JOB = ROOT / "docs" / "examples" / "fernhill" / "job.toml"
IMPORTS = "import pydantic, jinja2, typer"


# As on a user's machine: compiled modules are kept, whatever this shell says.
ENVIRONMENT = {name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}


def process(*command: str) -> float:
    """Seconds of one whole process."""
    start = time.perf_counter()
    subprocess.run(command, check=True, capture_output=True, cwd=ROOT, env=ENVIRONMENT)
    return time.perf_counter() - start


def paired(first: Callable[[], float], second: Callable[[], float], runs: int = 9) -> float:
    """Median of first over second, the two in turn so that a drift of the machine falls out."""
    first(), second()
    return statistics.median(first() / second() for _ in range(runs))


def inside(work: Callable[[], object], runs: int) -> float:
    """Median seconds of the processor for work inside this process; other programs of a busy machine do not count."""
    times = []
    for _ in range(runs):
        start = time.process_time()
        work()
        times.append(time.process_time() - start)
    return statistics.median(times)


def in_calc(work: Callable[[], object], runs: int) -> float:
    """Median seconds that a piece of work spends in the formulas, calls among formulas counted once."""
    spent, depth = 0.0, 0

    def timed(formula: Callable[..., object]) -> Callable[..., object]:
        def call(*args: object, **named: object) -> object:
            nonlocal spent, depth
            depth += 1
            start = time.perf_counter()
            try:
                return formula(*args, **named)
            finally:
                depth -= 1
                if depth == 0:
                    spent += time.perf_counter() - start

        return call

    outside = [m for n, m in list(sys.modules.items()) if n.startswith("tailtrue.") and not n.startswith("tailtrue.calc")]
    found = [
        (module, name, value)
        for module in outside
        for name, value in vars(module).items()
        if inspect.isfunction(value) and value.__module__.startswith("tailtrue.calc.")
    ]
    for module, name, value in found:
        setattr(module, name, timed(value))
    times = []
    for _ in range(runs):
        spent = 0.0
        work()
        times.append(spent)
    for module, name, value in found:
        setattr(module, name, value)
    return statistics.median(times)


def main() -> None:
    """Print every figure."""
    python = sys.executable
    with tempfile.TemporaryDirectory() as folder:

        def make() -> float:
            return process(python, "-m", "tailtrue", "make", str(JOB), "--out", folder)

        def bare() -> float:
            return process(python, "-c", IMPORTS)

        def help_() -> float:
            return process(python, "-m", "tailtrue", "--help")

        def nothing() -> float:
            return process(python, "-c", "pass")

        print(f"tailtrue make / python importing its packages: {paired(make, bare):.2f}")
        print(
            f"tailtrue --help / python importing typer:      {paired(help_, lambda: process(python, '-c', 'import typer')):.2f}"
        )
        print(f"tailtrue --help / bare python:                 {paired(help_, nothing):.2f}")

    from tailtrue.advise import knowledge, make_procedure
    from tailtrue.places import knowledge_folder
    from tailtrue.render import to_html, to_markdown
    from tailtrue.store.load import load_knowledge

    unit = statistics.median(bare() for _ in range(5))
    known = knowledge()
    load = inside(lambda: load_knowledge(knowledge_folder()), 7)
    whole = inside(lambda: make_procedure(JOB, known), 15)
    tree = make_procedure(JOB, known)
    page = inside(lambda: to_html(tree), 15)
    formulas = in_calc(lambda: make_procedure(JOB, known), 15)
    print(f"loading and checking the knowledge / the imports: {load / unit:.2f} ({load * 1000:.0f} ms)")
    print(f"procedures a second and core, read to inspected:  {1 / whole:.0f}")
    print(f"formulas / reading to inspection:                 {formulas / whole:.3f} ({formulas * 1000:.2f} ms)")
    print(f"HTML of one procedure / reading to inspection:    {page / whole:.2f} ({page * 1000:.1f} ms)")
    print(f"Markdown / HTML:                                  {inside(lambda: to_markdown(tree), 15) / page:.2f}")

    from tailtrue.render.card import to_card_html
    from tailtrue.render.pdf import to_pdf

    html, card = to_html(tree), to_card_html(tree)
    made = inside(lambda: to_pdf(html, tree.title), 7)
    empty = inside(lambda: to_pdf("<p>page</p>", tree.title), 7)
    print(f"PDF of one procedure / PDF of an empty page:      {made / empty:.0f} ({made * 1000:.0f} ms)")
    print(f"PDF of the card / PDF of the procedure:           {inside(lambda: to_pdf(card, tree.title), 7) / made:.2f}")


if __name__ == "__main__":
    main()
