"""Which documents are made, in which formats, and what is said when a wish cannot be met."""

import json
import re
import subprocess
import sys
from pathlib import Path

import pytest
from pypdf import PdfReader

from shops import EXAMPLES, ROOT, tailtrue

JOB = EXAMPLES / "fernhill" / "job.toml"
USUAL = [
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


def made(out: Path, *words: str) -> list[str]:
    """The names of the files, as told and as they lie there."""
    done = tailtrue("make", JOB, "--out", out, "--json", *words)
    assert done.returncode == 0, done.stdout
    told = [Path(path).name for path in json.loads(done.stdout)["documents"]]
    assert sorted(told) == sorted(path.name for path in out.iterdir())
    return told


def without_the_maker(*words: object) -> subprocess.CompletedProcess[str]:
    """The command where the maker of PDF is not installed."""
    code = f"import sys\nsys.modules['plutoprint'] = None\nsys.argv = {['tailtrue', *map(str, words)]!r}\n"
    code += "from tailtrue.cli import run\nrun()"
    return subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=False, cwd=ROOT)


def test_without_a_wish_all_but_the_pdf_is_made(tmp_path: Path) -> None:
    assert made(tmp_path / "out") == USUAL


@pytest.mark.parametrize(
    ("words", "files"),
    [
        (("--only", "card"), ["card.html", "card.md"]),
        (("--only", "procedure"), ["procedure.html", "procedure.md", "procedure.json"]),
        (("--format", "html"), ["procedure.html", "card.html", "safety.html", "record.html", "sop.html"]),
        (("--only", "card,safety"), ["card.html", "card.md", "safety.html", "safety.md"]),
        (("--only", "safety", "--format", "pdf,md,html"), ["safety.html", "safety.pdf", "safety.md"]),
        (("--format", "json"), ["procedure.json"]),
        (("--format", "md, HTML", "--only", "card,procedure"), ["procedure.html", "procedure.md", "card.html", "card.md"]),
        (("--format", "pdf"), ["procedure.pdf", "card.pdf", "safety.pdf", "record.pdf", "sop.pdf"]),
        (("--only", "sop", "--format", "pdf,md"), ["sop.pdf", "sop.md"]),
        (("--only", "record", "--format", "pdf,html,md"), ["record.html", "record.pdf", "record.md"]),
        (("--only", "card", "--format", "pdf,html"), ["card.html", "card.pdf"]),
        (
            ("--large-print", "--format", "html,md"),
            [
                "procedure-large.html",
                "procedure.md",
                "card-large.html",
                "card.md",
                "safety-large.html",
                "safety.md",
                "record-large.html",
                "record.md",
                "sop-large.html",
                "sop.md",
            ],
        ),
        (("--large-print", "--only", "sop", "--format", "pdf"), ["sop-large.pdf"]),
        (("--large-print", "--only", "card"), ["card-large.html", "card.md"]),
    ],
)
def test_a_wish_is_met_and_nothing_else_is_made(tmp_path: Path, words: tuple[str, ...], files: list[str]) -> None:
    assert made(tmp_path / "out", *words) == files


def test_large_print_is_the_same_sheet_beside_the_usual_one(tmp_path: Path) -> None:
    for words in ((), ("--large-print",)):
        assert tailtrue("make", JOB, "--out", tmp_path, "--only", "procedure", *words).returncode == 0
    usual, large = ((tmp_path / name).read_text(encoding="utf-8") for name in ("procedure.html", "procedure-large.html"))
    bar = re.compile(r'\n*<figure class="of-bar">.*?</figure>\n*', flags=re.DOTALL)
    # The drawing of the bar has a page of its own there, further on; all other words stand where they stood.
    assert bar.findall(usual)[0].strip() == bar.findall(large)[0].strip()
    bodies = [re.sub(r"<[^>]*>|\s", "", bar.sub("", one.partition("<body")[2], count=1)) for one in (usual, large)]
    assert bodies[0] == bodies[1]
    assert 'class="large"' in large
    assert 'class="large"' not in usual


def test_a_home_shop_has_no_standing_procedure_unless_it_asks_for_one(tmp_path: Path) -> None:
    home = EXAMPLES / "quarry-road" / "job.toml"
    assert tailtrue("make", home, "--out", tmp_path / "usual").returncode == 0
    assert not list((tmp_path / "usual").glob("sop.*"))
    done = tailtrue("make", home, "--out", tmp_path / "asked", "--only", "sop", "--format", "html,md,pdf")
    assert done.returncode == 0, done.stderr
    assert sorted(path.name for path in (tmp_path / "asked").iterdir()) == ["sop.html", "sop.md", "sop.pdf"]


def test_the_pdf_says_what_the_html_says(tmp_path: Path) -> None:
    made(tmp_path, "--format", "html,pdf")
    number = "FM-L2-004"
    for name in ("procedure", "card", "safety", "record", "sop"):
        assert number in (tmp_path / f"{name}.html").read_text(encoding="utf-8")
        file = PdfReader(tmp_path / f"{name}.pdf")
        assert all(number in page.extract_text() for page in file.pages)
    assert len(PdfReader(tmp_path / "card.pdf").pages) == 1


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (
            ("--only", "sheet"),
            ["--only: sheet: 'sheet' is not known", "allowed are procedure, card, safety, record, sop, with commas between"],
        ),
        (("--format", "docx"), ["'docx' is not known", "allowed are html, pdf, md, json, with commas between"]),
        (("--format", "html,"), ["'' is not known"]),
        (("--only", "tag", "--format", "odt,png"), ["'tag' is not known", "'odt' is not known", "'png' is not known"]),
        (("--only", "card", "--format", "json"), ["card does not come as json", "allowed are card: html, pdf, md"]),
    ],
)
def test_a_word_that_is_not_known_is_named_with_what_is_allowed(
    tmp_path: Path, words: tuple[str, ...], says: list[str]
) -> None:
    done = tailtrue("make", JOB, "--out", tmp_path / "out", *words)
    assert done.returncode == 2
    for line in says:
        assert line in done.stderr
    assert not (tmp_path / "out").exists()


def test_a_wrong_wish_is_found_before_the_job_is_read(tmp_path: Path) -> None:
    done = tailtrue("make", tmp_path / "nowhere.toml", "--out", tmp_path, "--only", "sheet")
    assert done.returncode == 2
    assert "'sheet' is not known" in done.stderr


def test_without_the_maker_html_is_made_and_the_way_to_pdf_is_told(tmp_path: Path) -> None:
    done = without_the_maker("make", JOB, "--out", tmp_path / "out")
    assert done.returncode == 0, done.stderr
    assert sorted(path.name for path in (tmp_path / "out").iterdir()) == sorted(USUAL)
    assert "in a browser and print it from there" in done.stdout
    assert "pip install 'tailtrue[pdf]'" in done.stdout


def test_with_the_maker_the_way_to_pdf_is_the_format(tmp_path: Path) -> None:
    assert "ask for it with --format pdf" in tailtrue("make", JOB, "--out", tmp_path).stdout
    assert "at its own size" in tailtrue("make", JOB, "--out", tmp_path, "--format", "pdf", "--only", "card").stdout
    assert "ask for html or pdf" in tailtrue("make", JOB, "--out", tmp_path, "--format", "json").stdout


def test_a_pdf_that_cannot_be_made_leaves_the_other_documents_and_says_what_is_missing(tmp_path: Path) -> None:
    done = without_the_maker("make", JOB, "--out", tmp_path, "--format", "html,pdf", "--only", "card,safety")
    assert done.returncode == 1
    assert "No PDF: the maker of PDF is not installed. Install it: pip install 'tailtrue[pdf]', or print the" in done.stderr
    assert sorted(path.name for path in tmp_path.iterdir()) == ["card.html", "safety.html"]
    assert all(path.read_text(encoding="utf-8").rstrip().endswith("</html>") for path in tmp_path.iterdir())
    told = without_the_maker("record", JOB, "--out", tmp_path / "more", "--format", "html,pdf", "--json")
    assert told.returncode == 1
    assert json.loads(told.stdout)["lacking"].startswith("No PDF")
    assert [path.name for path in (tmp_path / "more").iterdir()] == ["record.html"]


def test_a_pdf_alone_that_cannot_be_made_is_an_error_and_nothing_is_written(tmp_path: Path) -> None:
    done = without_the_maker("make", JOB, "--out", tmp_path / "out", "--format", "pdf")
    assert done.returncode == 2
    assert "--format: pdf: the maker of PDF is not installed" in done.stderr
    assert "install it: pip install 'tailtrue[pdf]'; or leave pdf out, open the HTML file in a browser" in done.stderr
    assert not (tmp_path / "out").exists()


def test_the_maker_is_not_loaded_unless_it_is_asked_for(tmp_path: Path) -> None:
    code = (
        f"import sys\nsys.argv = ['tailtrue', 'make', {str(JOB)!r}, '--out', {str(tmp_path)!r}]\n"
        "from tailtrue.cli import app\ntry:\n    app()\nexcept SystemExit:\n    pass\nprint('plutoprint' in sys.modules)"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True, cwd=ROOT)
    assert done.stdout.splitlines()[-1] == "False"


def test_a_folder_in_the_way_of_one_document_keeps_all_of_them_from_being_written(tmp_path: Path) -> None:
    (tmp_path / "card.pdf").mkdir()
    done = tailtrue("make", JOB, "--out", tmp_path, "--format", "html,pdf")
    assert done.returncode == 2
    assert [path.name for path in tmp_path.iterdir()] == ["card.pdf"]
