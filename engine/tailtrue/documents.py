"""Writing the documents of a procedure, all or none."""

import os
import tempfile
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from functools import partial
from importlib import import_module
from pathlib import Path

from tailtrue.errors import Problem, UsageError
from tailtrue.parts import Text
from tailtrue.procedure import Procedure
from tailtrue.render.pdf import PdfImpossible, pdf_ready, to_pdf

# What is made of a procedure, and the formats each comes in. JSON is the whole tree, so the others stand in it too.
FORMATS: Mapping[str, tuple[str, ...]] = {
    "procedure": ("html", "pdf", "md", "json"),
    "card": ("html", "pdf", "md"),
    "safety": ("html", "pdf", "md"),
    "record": ("html", "pdf", "md"),
    "sop": ("html", "pdf", "md"),
}
DEFAULT_FORMATS = ("html", "md", "json")
_ALL_FORMATS = tuple(dict.fromkeys(kind for kinds in FORMATS.values() for kind in kinds))
# What makes a page and a text, by module and function; a document that was not asked for is not even imported.
_MAKERS: Mapping[str, tuple[tuple[str, str], tuple[str, str]]] = {
    "procedure": (("html", "to_html"), ("markdown", "to_markdown")),
    "card": (("card", "to_card_html"), ("card", "to_card_markdown")),
    "safety": (("safety_page", "to_safety_html"), ("safety_markdown", "to_safety_markdown")),
    "record": (("record_page", "to_record_html"), ("record_page", "to_record_markdown")),
    "sop": (("sop_page", "to_sop_html"), ("sop_page", "to_sop_markdown")),
}
# In large print these carry it in their name, so that both lie side by side; Markdown and JSON have no letters of a size.
_WITH_LETTERS = ("html", "pdf")
_FROM_A_BROWSER = "or print the HTML file from a browser"
_IN_A_BROWSER = "or leave pdf out, open the HTML file in a browser and print it from there"


class PdfLeftOut(Exception):
    """The PDF could not be made, and what was asked for beside it is written; says what lies there, why, and what to do."""

    def __init__(self, paths: tuple[Path, ...], missing: PdfImpossible) -> None:
        self.paths = paths
        super().__init__(f"No PDF: {missing.wrong}. {missing.do[:1].upper()}{missing.do[1:]}, {_FROM_A_BROWSER}.")


@dataclass(frozen=True)
class Wanted:
    """Which documents are to be made, and in which formats."""

    documents: tuple[str, ...] = tuple(FORMATS)
    formats: tuple[str, ...] = DEFAULT_FORMATS
    by_name: bool = False
    large: bool = False

    def file_name(self, document: str, kind: str) -> str:
        """The name of one file."""
        return f"{document}{'-large' if self.large and kind in _WITH_LETTERS else ''}.{kind}"

    @property
    def files(self) -> tuple[tuple[str, str], ...]:
        """Document and format of each file, in the order they are told."""
        return tuple((name, kind) for name in self.documents for kind in FORMATS[name] if kind in self.formats)


def read_wanted(only: str | None, formats: str | None, *, large: bool) -> Wanted:
    """What two lists with commas ask for; a list that was not given stands for the usual ones.

    Raises UsageError for a word that is not known, and for a wish that leaves nothing to write.

    >>> read_wanted("card", "pdf,html", large=False).files
    (('card', 'html'), ('card', 'pdf'))
    """
    problems: list[Problem] = []
    documents = _words("--only", only, tuple(FORMATS), tuple(FORMATS), problems)
    kinds = _words("--format", formats, _ALL_FORMATS, DEFAULT_FORMATS, problems)
    wanted = Wanted(documents, kinds, by_name=only is not None, large=large)
    if not problems and not wanted.files:
        allowed = "; ".join(f"{name}: {', '.join(FORMATS[name])}" for name in documents)
        wrong = f"{' and '.join(documents)} does not come as {' or '.join(kinds)}"
        problems.append(Problem("--format", ",".join(kinds), wrong, f"allowed are {allowed}"))
    if problems:
        raise UsageError(problems)
    return wanted


def _words(
    option: str, said: str | None, allowed: tuple[str, ...], usual: tuple[str, ...], problems: list[Problem]
) -> tuple[str, ...]:
    if said is None:
        return usual
    words = [word.strip().lower() for word in said.split(",")]
    do = f"allowed are {', '.join(allowed)}, with commas between"
    problems.extend(Problem(option, said, f"'{word}' is not known", do) for word in words if word not in allowed)
    return tuple(word for word in allowed if word in words)


def write_documents(procedure: Procedure, out: Path, wanted: Wanted | None = None) -> tuple[Path, ...]:
    """Write what is wanted of a procedure into a folder.

    Everything is made and lies on the disk under another name before the first document changes, so that a full disk
    or a forbidden folder leaves what was there before. Raises UsageError when the folder cannot be written, or nothing
    but a PDF is asked for and it cannot be made; PdfLeftOut when what was asked for beside it is written.
    """
    pages: dict[str, str] = {}
    asked = wanted or Wanted()
    files = _that_exist(procedure, asked)
    return _write({asked.file_name(*one): partial(_made, procedure, *one, pages, asked.large) for one in files}, out)


def write_record(tree: Procedure, mend: Sequence[Text], out: Path, wanted: Wanted) -> tuple[Path, ...]:
    """Write the record of a tree by itself; `mend` is what keeps the lathe from running.

    Raises UsageError and PdfLeftOut as `write_documents` does.
    """
    from tailtrue.render.record_page import to_record_html, to_record_markdown

    page = to_record_html(tree, mend, large=wanted.large)
    made: dict[str, Callable[[], str | bytes]] = {
        "html": lambda: page, "md": lambda: to_record_markdown(tree, mend), "pdf": lambda: to_pdf(page, tree.title),
    }  # fmt: skip
    return _write({wanted.file_name(name, kind): made[kind] for name, kind in wanted.files}, out)


def _that_exist(procedure: Procedure, wanted: Wanted) -> tuple[tuple[str, str], ...]:
    """The files that are wanted of this sheet; what no sheet of this kind has is left out, unless it was asked for by name.

    Raises UsageError then, whatever else was asked for beside it: who asks for a paper waits for it.
    """
    missing = [name for name in wanted.documents if not _has(name, procedure)]
    if missing and (wanted.by_name or len(missing) == len(wanted.documents)):
        others = ",".join(name for name in wanted.documents if name not in missing)
        wrong = f"the sheet '{procedure.title.title}' has no {' and no '.join(missing)}"
        do = f"ask for {others} alone" if others else "leave --only out, or ask for the procedure"
        raise UsageError((Problem("--only", ",".join(wanted.documents), wrong, do),))
    return tuple(
        (name, kind)
        for name, kind in wanted.files
        if _has(name, procedure) and (wanted.by_name or _belongs(name, procedure))
    )


def _has(name: str, procedure: Procedure) -> bool:
    """Whether a document can be made of this sheet."""
    record = procedure.record or procedure.work_record
    return {"card": procedure.card, "sop": procedure.sop, "record": record}.get(name, procedure) is not None


def _belongs(name: str, procedure: Procedure) -> bool:
    """Whether a document is made of this job without being asked for by name."""
    return name != "sop" or (procedure.sop is not None and procedure.sop.made_unasked)


def _made(procedure: Procedure, name: str, kind: str, pages: dict[str, str], large: bool) -> str | bytes:
    """One document; `pages` keeps the HTML that the PDF is made of too."""
    to_page, to_text = _MAKERS[name]
    if kind == "json":
        return procedure.model_dump_json(indent=2) + "\n"
    if kind == "md":
        return _maker(*to_text)(procedure)
    if name not in pages:
        make = _maker(*to_page)
        pages[name] = make(procedure, large=True) if large else make(procedure)
    return pages[name] if kind == "html" else to_pdf(pages[name], procedure.title)


def _maker(module: str, function: str) -> Callable[..., str]:
    made: Callable[..., str] = getattr(import_module(f"tailtrue.render.{module}"), function)
    return made


def _write(makers: Mapping[str, Callable[[], str | bytes]], out: Path) -> tuple[Path, ...]:
    """Make every file and write it; where no PDF can be made, the others."""
    made: dict[str, str | bytes] = {}
    missing: PdfImpossible | None = None
    for name, make in makers.items():
        try:
            made[name] = make()
        except PdfImpossible as wrong:
            missing = wrong
    if missing is not None and not made:
        raise UsageError((Problem("--format", "pdf", missing.wrong, f"{missing.do}; {_IN_A_BROWSER}"),)) from missing
    paths = write_all(made, out)
    if missing is not None:
        raise PdfLeftOut(paths, missing) from missing
    return paths


def how_to_print(wanted: Wanted) -> str:
    """What to do with what was made."""
    if "pdf" in wanted.formats:
        return "Print the PDF at its own size, not fitted to the page."
    if "html" not in wanted.formats:
        return "For paper ask for html or pdf with --format."
    by_file = "ask for it with --format pdf" if pdf_ready() else "install its maker: pip install 'tailtrue[pdf]'"
    return f"Open an HTML file in a browser and print it from there, on paper or to PDF. For PDF straight away {by_file}."


def write_all(texts: Mapping[str, str | bytes], out: Path) -> tuple[Path, ...]:
    """Write texts into files of a folder by name, all or none; UsageError when that cannot be done."""
    laid: list[tuple[str, Path]] = []
    try:
        out.mkdir(parents=True, exist_ok=True)
        for name, text in texts.items():
            if (out / name).is_dir():
                raise IsADirectoryError(0, f"{name} is a folder")
            (out / name).parent.mkdir(parents=True, exist_ok=True)
            laid.append((_lay(out / name, text), out / name))
        for made, path in laid:
            os.replace(made, path)
    except OSError as wrong:
        for made, _ in laid:
            Path(made).unlink(missing_ok=True)
        problem = Problem(str(out), "", f"cannot be written: {wrong.strerror}", "name another folder with --out")
        raise UsageError((problem,)) from wrong
    return tuple(path for _, path in laid)


def _lay(path: Path, text: str | bytes) -> str:
    handle, name = tempfile.mkstemp(dir=path.parent, prefix=f".{path.name}.")
    with os.fdopen(handle, "wb") as opened:
        opened.write(text.encode() if isinstance(text, str) else text)
    # mkstemp makes files private; documents are for everybody who may read the folder.
    os.chmod(name, 0o644)
    return name
