"""A new user's slips with files: what stands there is named, and what to give instead is there."""

import re
import shutil
from pathlib import Path

import pytest
from typer.testing import CliRunner, Result

from shops import EXAMPLES, shop, tailtrue
from tailtrue.cli import app
from tailtrue.given.job_file import job_files


def check(job: Path) -> Result:
    return CliRunner().invoke(app, ["check", str(job)])


def lines(done: Result) -> list[str]:
    assert done.exit_code == 4, done.output
    assert "Traceback" not in done.output
    return done.stderr.splitlines()[1:]


@pytest.fixture
def job(tmp_path: Path) -> Path:
    return shop(tmp_path, "quarry-road")


COMMANDS = [
    ("check", "{}"),
    ("make", "{}", "--out", "sheets"),
    ("why", "{}", "bond"),
    ("correct", "{}", "--head", "1 in", "--tail", "1 in"),
    ("record", "{}", "--out", "sheets"),
    ("tag", "{}", "--out", "sheets"),
]


@pytest.mark.parametrize("words", COMMANDS, ids=[words[0] for words in COMMANDS])
def test_a_folder_names_itself_and_the_job_files_in_it(
    words: tuple[str, ...], job: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(job.parent)
    done = CliRunner().invoke(app, [word.format(".") for word in words])
    first, second = lines(done)
    assert first == f"{job.parent}: is a folder; a job file is needed"
    assert second == "  give the job file in it: job.toml, job-tube.toml, rework.toml, taper-and-return.toml, use-bar.toml"
    assert not (job.parent / "sheets").exists()


def test_the_job_file_that_a_folder_names_is_taken(job: Path) -> None:
    named = lines(check(job.parent))[1].removeprefix("  give the job file in it: ").split(", ")[0]
    assert check(Path(named)).exit_code == 0
    done = tailtrue("check", named)
    assert done.returncode == 0, done.stderr


def test_a_folder_without_a_job_file_says_so(tmp_path: Path) -> None:
    assert lines(check(tmp_path)) == [
        f"{tmp_path}: is a folder; a job file is needed",
        "  no file in it begins with the line [job]; copy the folder of an example",
    ]


@pytest.mark.parametrize("kind", ["lathe", "crib", "stock"])
def test_another_file_of_the_job_is_told_as_what_it_is(job: Path, kind: str) -> None:
    first, second = lines(check(job.with_name(f"{kind}.toml")))
    assert re.fullmatch(rf"{kind}.toml:[0-9]+: \[{kind}\]: is a {kind} file, not a job file", first)
    assert second.startswith(f"  give the job file that names it: {job}")


def test_a_file_of_shop_rules_is_no_job_file(tmp_path: Path) -> None:
    folder = shop(tmp_path, "fernhill").parent
    first, second = lines(check(folder / "shop-rules.toml"))
    assert first == "shop-rules.toml:1: is no job file: it holds no table [job]"
    assert second.startswith(f"  give a job file: {folder / 'job.toml'}")


def test_a_misspelt_name_leads_to_the_job_files_that_are_there(job: Path) -> None:
    assert lines(check(job.with_name("jobb.toml"))) == [
        "jobb.toml: there is no such file",
        f"  mend the name; job files there: {', '.join(str(one) for one in job_files(job.parent))}",
    ]
    assert lines(check(job.parent / "sheets" / "job.toml"))[1] == (
        f"  there is no folder {job.parent / 'sheets'} either; mend the name"
    )


def test_every_shipped_job_is_found_in_its_folder() -> None:
    for folder in EXAMPLES.iterdir():
        named = {path.name for path in folder.glob("*.toml") if "\n[job]\n" in f"\n{path.read_text(encoding='utf-8')}"}
        assert {path.name for path in job_files(folder)} == named


SAVE = "save it again as plain text in UTF-8"
GOOD = (EXAMPLES / "quarry-road" / "job.toml").read_text(encoding="utf-8")


@pytest.mark.parametrize(
    ("content", "wrong", "do"),
    [
        (b"", "[job]: not given: the file is empty", "begin this file with the line [job]"),
        (bytes(range(256)) * 3, "is not text", "name a TOML file"),
        (GOOD.encode("utf-16"), "is text in UTF-16", SAVE),
        (GOOD.encode("utf-16-be"), "is text in UTF-16", SAVE),
        (GOOD.encode("utf-16-le"), "is text in UTF-16", SAVE),
        (b"PK\x03\x04 and so on", "is a document of an office program, or packed", SAVE),
        (b"{\\rtf1\\ansi [job]}", "is a document of an office program", SAVE),
        (b"%PDF-1.7", "is a PDF", SAVE),
        (GOOD.replace("Quarry Road", "Sägewerk").encode("latin-1"), "holds a letter that is not in UTF-8", SAVE),
        (GOOD.replace("\n", "\r").encode(), "ends its lines in a way that TOML does not know", SAVE),
        (GOOD.replace('"QR-1"', "“QR-1”").encode(), "the quotation marks are curly", 'write number = "QR-1"'),
        (GOOD.replace('"QR-1"', '"QR-1').encode(), "the quotation marks are not closed", 'write number = "QR-1"'),
        (GOOD.replace('"QR-1"', "QR-1").encode(), "the value stands without quotes", 'write number = "QR-1"'),
        (GOOD.replace("2026-11-24", "11/24/2026").encode(), "is not a date", "write 2026-11-24"),
        (GOOD.replace("[job]", "[job").encode(), "cannot be read as TOML", "a heading in brackets"),
    ],
)  # fmt: skip
def test_a_file_that_is_no_toml_says_what_it_is(job: Path, content: bytes, wrong: str, do: str) -> None:
    job.write_bytes(content)
    first, second = lines(check(job))
    assert first.startswith("job.toml")
    assert wrong in first
    assert do in second


@pytest.mark.parametrize("mark", [b"", b"\xef\xbb\xbf"])
@pytest.mark.parametrize("ends", ["\n", "\r\n"])
def test_a_byte_order_mark_and_either_end_of_line_are_taken(job: Path, mark: bytes, ends: str) -> None:
    for path in job.parent.glob("*.toml"):
        path.write_bytes(mark + path.read_text(encoding="utf-8").replace("\n", ends).encode())
    assert check(job).exit_code == 0


@pytest.mark.parametrize(
    ("file", "old", "new", "says"),
    [
        ("stock", "[[stock.bars]]", "[[stock.bar]]", ["stock.toml:1: [[stock.bar]]: unknown heading", "a heading [[stock.bars]] exists"]),
        ("stock", "[[stock.bars]]", "[[bars]]", ["stock.toml:1: bars: stands outside [stock]", "write [[stock.bars]]"]),
        ("stock", "[[stock.bars]]", "[[stock.chucks]]", ["[[stock.chucks]]: unknown heading", "it belongs in the lathe file, lathe.toml, as [[lathe.chucks]]"]),
        ("stock", "[[stock.bars]]", "[[stock.oddments]]", ["unknown heading", "headings here are [[stock.bars]], [[stock.collar_bars]]"]),
        ("stock", "[[stock.bars]]", "[[crib.drills]]", ["[crib]: does not belong here", "it belongs in the crib file, crib.toml"]),
        ("stock", "[[stock.bars]]", "[[rack]]", ["[rack]: does not belong here", "this file holds the table [stock], the headings [[stock.bars]], "]),
        ("lathe", 'drive = "belt"', 'drive = "belt"\nminor = false', ["unknown key 'minor'", "it belongs in the job file, below [job]"]),
        ("crib", 'kind = "telescoping"', 'kind = "telescoping"\nnose_radius = "1/64 in"',
         ["unknown key 'nose_radius'", "it belongs to [crib]: put it above the first line [[crib. ...]]"]),
        ("job", 'stock = "stock.toml"', 'stock = "crib.toml"', ["crib.toml:1: [crib]: is a crib file, not a stock file", "name the stock file"]),
        ("lathe", '"60 1/min", "100', '"60 1/min" "100', ["no comma stands between two entries", 'write "60 1/min", "100 1/min"']),
        ("lathe", '"9 1/2 in"', '9 1/2"', ["the value stands without quotes", "write swing_over_bed = '9 1/2\"'"]),
        ("lathe", '"9 1/2 in"', '"9 1/2""', ["the inch mark ends the text", "write swing_over_bed = '9 1/2\"'"]),
        ("lathe", '"9 1/2 in"', "9.5", ["has no unit", 'write "9.5 in", in quotes; typical: 11 in']),
        ("lathe", '"9 1/2 in"', '"95 in"', ["is not plausible here: 6 in to 22 in is", "typical: 11 in"]),
        ("lathe", 'swing_over_bed = "9 1/2 in"\n', "", ["lathe.toml: swing_over_bed: not given", 'add swing_over_bed = "11 in" below [lathe]']),
        ("crib", 'spacer = "3/8 in"', 'spacer = "3/8 in"\nsoft_jaws_chuck = "5 in three-jaw chuck"\nsoft_jaws_metal = "steel"',
         ["soft_jaws_chuck and soft_jaws_metal: stand without soft_jaws_from, soft_jaws_to, soft_jaws_depth", 'add soft_jaws_from = "',
          "or take soft_jaws_chuck and soft_jaws_metal out"]),
    ],
)  # fmt: skip
def test_a_slip_of_an_owner_of_inch_dials_is_answered_where_it_stands(
    job: Path, file: str, old: str, new: str, says: list[str]
) -> None:
    path = job.with_name(f"{file}.toml")
    text = path.read_text(encoding="utf-8")
    assert old in text
    path.write_text(text.replace(old, new, 1), encoding="utf-8")
    told = "\n".join(lines(check(job)))
    for words in says:
        assert words in told


def test_no_message_of_the_job_file_needs_a_folder_that_can_be_written(job: Path) -> None:
    before = sorted(job.parent.iterdir())
    check(job.parent)
    check(job.with_name("none.toml"))
    assert sorted(job.parent.iterdir()) == before
    shutil.rmtree(job.parent)
    assert check(job).exit_code == 4
