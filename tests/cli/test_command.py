"""The command line as its user meets it."""

import json
import subprocess
import sys
import venv
from pathlib import Path

import pytest

from shops import EXAMPLES, ROOT, cold, shop, tailtrue
from tailtrue.advise import knowledge as shipped
from tailtrue.sweeping.reach import everything

JOB = EXAMPLES / "fernhill" / "job.toml"
PYTHON_M = "python -m tailtrue"


def test_help_imports_neither_units_nor_templates() -> None:
    code = (
        "import sys\nfrom typer.testing import CliRunner\nfrom tailtrue.cli import app\n"
        "assert CliRunner().invoke(app, ['--help']).exit_code == 0\n"
        "print(sorted(m for m in ('pint', 'jinja2', 'pydantic', 'markdown_it', 'numpy') if m in sys.modules))"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"


@pytest.mark.parametrize(
    ("asked", "imported"),
    [
        (["--only", "card"], {"card"}),
        (["--only", "procedure", "--format", "md"], {"markdown"}),
        (["--only", "record", "--format", "html"], {"record_page"}),
        (["--format", "json"], set()),
    ],
)
def test_make_imports_only_what_makes_the_documents_asked_for(asked: list[str], imported: set[str], tmp_path: Path) -> None:
    code = (
        "import sys\nfrom typer.testing import CliRunner\nfrom tailtrue.cli import app\n"
        f"made = CliRunner().invoke(app, ['make', {str(JOB)!r}, '--out', {str(tmp_path)!r}, *{asked!r}])\n"
        "assert made.exit_code == 0, made.output\n"
        "makers = ('html', 'markdown', 'card', 'safety_page', 'safety_markdown', 'record_page', 'sop_page')\n"
        "print(*(one for one in makers if f'tailtrue.render.{one}' in sys.modules))"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert set(done.stdout.split()) == imported


def test_make_never_needs_the_unit_library(tmp_path: Path) -> None:
    code = (
        "import sys\nfrom pathlib import Path\nfrom tailtrue.advise import make_procedure\n"
        f"make_procedure(Path({str(JOB)!r}))\nprint('pint' in sys.modules)"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True, cwd=tmp_path)
    assert done.stdout.strip() == "False"


def test_check_prints_findings_and_writes_nothing(tmp_path: Path) -> None:
    job = shop(tmp_path, "quarry-road")
    before = sorted(tmp_path.rglob("*"))
    done = tailtrue("check", job)
    assert done.returncode == 0
    assert "The bar has not been measured" in done.stdout
    assert sorted(tmp_path.rglob("*")) == before


def test_json_on_make_and_check(tmp_path: Path) -> None:
    made = json.loads(tailtrue("make", JOB, "--out", tmp_path / "out", "--json").stdout)
    assert made["ok"] is True
    names = [Path(path).name for path in made["documents"]]
    assert names == [
        "procedure.html",
        "procedure.md",
        "procedure.json",
        "card.html",
        "card.md",
        "safety.html",
        "safety.md",
        "record.html",
        "record.md",
        "sop.html",
        "sop.md",
    ]
    assert json.loads(tailtrue("check", JOB, "--json").stdout)["ok"] is True


def test_schemas_are_written_for_an_editor(tmp_path: Path) -> None:
    assert tailtrue("schema", "--out", tmp_path).returncode == 0
    names = {path.name for path in tmp_path.iterdir()}
    assert names == {f"{name}.schema.json" for name in ("lathe", "crib", "stock", "job", "procedure")}


@pytest.mark.parametrize(
    ("words", "code", "says"),
    [
        (("make", "nowhere.toml", "--out", "x"), 4, "there is no such file"),
        (("make", JOB), 2, "--out"),
        (("mend", JOB), 2, "mend"),
        (("make", JOB, "--out", "/proc/none"), 2, "cannot be written"),
    ],
)
def test_what_cannot_be_done_ends_with_its_code(words: tuple[object, ...], code: int, says: str) -> None:
    done = tailtrue(*words)
    assert done.returncode == code
    assert says in done.stderr
    assert "Traceback" not in done.stderr


def test_knowledge_check_counts_what_every_room_holds() -> None:
    checked = tailtrue("knowledge", "check", "--json")
    assert checked.returncode == 0, checked.stdout
    counts = json.loads(checked.stdout)
    assert counts["ok"] is True
    knowledge = ROOT / "knowledge"
    written = {
        "cautions": ("cautions/*.toml", "[[caution]]"), "remarks": ("visit/remarks.toml", "[[remark]]"),
        "causes": ("diagnosis/causes.toml", "[[cause]]"), "diagnosis_tests": ("diagnosis/tests.toml", "[[test]]"),
        "diagnosis_says": ("diagnosis/says.toml", "sources ="), "record_fields": ("alignment/log_record.toml", "[[fact]]"),
        "says": ("**/says.toml", "[[say]]"), "steps": ("steps/*.md", "\nid = "),
    }  # fmt: skip
    for name, (files, mark) in written.items():
        assert counts[name] == sum(path.read_text(encoding="utf-8").count(mark) for path in knowledge.glob(files)), name
    # The jobs that are kept reach everything that is not explained.
    rules = shipped()
    assert counts["reached"] == len(everything(rules)) - len(rules.tables["sweep/unreached"].rows)


def test_documents_are_written_all_or_none(tmp_path: Path) -> None:
    """A folder stands where one document should go: the others must not be made, and nothing half made stays."""
    out = tmp_path / "out"
    (out / "procedure.json").mkdir(parents=True)
    done = tailtrue("make", JOB, "--out", out)
    assert done.returncode == 2
    assert [path.name for path in out.iterdir()] == ["procedure.json"]


def test_the_wheel_carries_knowledge_and_templates(tmp_path: Path) -> None:
    """Built, installed in a clean place, run from an empty folder."""
    subprocess.run(
        [sys.executable, "-m", "pip", "wheel", "--quiet", "--no-deps", "--wheel-dir", str(tmp_path), str(ROOT)], check=True
    )
    wheel = next(tmp_path.glob("*.whl"))
    venv.create(tmp_path / "venv", with_pip=False, system_site_packages=False)
    python = tmp_path / "venv" / "bin" / "python"
    subprocess.run([sys.executable, "-m", "pip", "--python", str(python), "install", "--quiet", str(wheel)], check=True)
    empty = tmp_path / "empty"
    empty.mkdir()
    done = subprocess.run(
        [str(tmp_path / "venv" / "bin" / "tailtrue"), "make", str(JOB), "--out", "sheets"],
        cwd=empty, capture_output=True, text=True, check=False,
    )  # fmt: skip
    assert done.returncode == 0, done.stderr
    assert (empty / "sheets" / "procedure.html").is_file()


@pytest.mark.parametrize(
    "words",
    [
        ("check", JOB),
        ("check", JOB.with_name("no-such-job.toml")),
        ("correct", JOB, "--head", "60.000 mm", "--tail", "60.020"),
        ("log", "show", JOB, "--no-such-option"),
        ("why", JOB, "skim.depth"),
    ],
    ids=lambda words: words[0],
)
def test_a_python_of_its_own_says_the_same(words: tuple[object, ...]) -> None:
    """Tests fork the command from one process; what a user starts imports everything anew."""
    warm, alone = tailtrue(*words), cold(*words)
    assert (warm.returncode, warm.stdout, warm.stderr) == (
        alone.returncode,
        alone.stdout,
        alone.stderr.replace(PYTHON_M, "tailtrue"),
    )
