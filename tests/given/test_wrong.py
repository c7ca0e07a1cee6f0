"""What is wrong in a user's files, in the words the user reads."""

from collections.abc import Callable
from pathlib import Path

import pytest

from tailtrue.errors import FactsWrong, report
from tailtrue.given.catalogue import Catalogue
from tailtrue.given.read import read_job

from .conftest import Spoil

Lines = Callable[..., list[str]]

SAVE_AGAIN = "save it again as plain text in UTF-8; a plain text editor does that, an office program under Save as"

COLLARS = "iron-grey, aluminium-6061-t6, aluminium-6082-t6"

CASES: list[tuple[Spoil, str]] = [
    (
        ("lathe", '"280 mm"', '"25,4 mm"'),
        'lathe.toml:4: swing_over_bed = "25,4 mm": the decimal mark must be a point; write a number with its unit; '
        "150 mm to 560 mm is plausible; typical: 280 mm",
    ),
    (
        ("lathe", '"280 mm"', '"280,5 mm"'),
        'lathe.toml:4: swing_over_bed = "280,5 mm": the decimal mark must be a point; write 280.5 mm; typical: 280 mm',
    ),
    (
        ("lathe", '"280 mm"', '"2.8e2 mm"'),
        'lathe.toml:4: swing_over_bed = "2.8e2 mm": is written with a power of ten; write 280 mm; typical: 280 mm',
    ),
    (
        ("lathe", '"280 mm"', '"1e400 mm"'),
        'lathe.toml:4: swing_over_bed = "1e400 mm": is written with a power of ten; '
        "write a number with its unit; 150 mm to 560 mm is plausible; typical: 280 mm",
    ),
    (
        ("lathe", '"280 mm"', "nan"),
        "lathe.toml:4: swing_over_bed = nan: is not a number; "
        "write a number with its unit, in quotes; 150 mm to 560 mm is plausible; typical: 280 mm",
    ),
    (
        ("lathe", '"280 mm"', '"9,5 in"'),
        'lathe.toml:4: swing_over_bed = "9,5 in": the decimal mark must be a point; write 9.5 in; typical: 11 in',
    ),
    (
        ("lathe", '"280 mm"', '"2 in"'),
        'lathe.toml:4: swing_over_bed = "2 in": is not plausible here: 6 in to 22 in is; '
        "look at the unit and the decimal point; a true value beyond that is beyond these rules; typical: 11 in",
    ),
    (
        ("lathe", '"MT3"', '"6MT"'),
        'lathe.toml:14: tailstock_taper = "6MT": is not one of the choices; write MT1, MT2, MT3, MT4 or MT5; '
        "'MT5' comes nearest",
    ),
    (
        ("lathe", '"280 mm"', "280"),
        'lathe.toml:4: swing_over_bed = 280: has no unit; write "280 mm", in quotes; typical: 280 mm',
    ),
    (
        ("lathe", '"280 mm"', '"280"'),
        'lathe.toml:4: swing_over_bed = "280": has no unit; write 280 mm; typical: 280 mm',
    ),
    (
        ("lathe", '"280 mm"', '"280 kg"'),
        'lathe.toml:4: swing_over_bed = "280 kg": kg is a mass, and a length is needed; use mm, in or thou; typical: 280 mm',
    ),
    (
        ("lathe", '"280 mm"', '"28 mm"'),
        'lathe.toml:4: swing_over_bed = "28 mm": is not plausible here: 150 mm to 560 mm is; '
        "look at the unit and the decimal point; a true value beyond that is beyond these rules; typical: 280 mm",
    ),
    (
        ("lathe", '"280 mm"', "true"),
        "lathe.toml:4: swing_over_bed = true: is not a quantity; write a number with its unit in quotes; typical: 280 mm",
    ),
    (
        ("lathe", "swing_over_bed", "swing_over_bd"),
        "lathe.toml:4: swing_over_bd = \"280 mm\": unknown key 'swing_over_bd'; a key named 'swing_over_bed' exists",
    ),
    (
        ("lathe", 'dials = "metric"', 'dials = "metric"\nminor = true'),
        "lathe.toml:4: minor = true: unknown key 'minor'; it belongs in the job file, below [job]",
    ),
    (
        ("lathe", 'dials = "metric"', 'dials = "metric"\ncolour = "green"'),
        "lathe.toml:4: colour = \"green\": unknown key 'colour'; take it out, or look up the keys of [lathe]",
    ),
    (
        ("lathe", 'tool_side = "front"\n', ""),
        'lathe.toml: tool_side: not given; add tool_side = "front" or "rear" below [lathe]; '
        "front is the side where the operator stands; the way the tailstock must go turns round with it",
    ),
    (
        ("lathe", 'tool_side = "front"', 'tool_side = "Front"'),
        'lathe.toml:19: tool_side = "Front": is not one of the choices; write front or rear',
    ),
    (
        ("lathe", '"cam-lock"', '"camlock"'),
        'lathe.toml:7: spindle_nose = "camlock": is not one of the choices; '
        "write threaded, cam-lock, bolted or other; 'cam-lock' comes nearest",
    ),
    (
        ("lathe", '"65 1/min", "180 rpm",\n    "450 rev/min",', "65, 180, 450"),
        'lathe.toml:9: speeds: 65: has no unit; write "65 1/min" or "65 rpm", in quotes; typical: 450 1/min',
    ),
    (
        ("lathe", 'stop = "tested"', 'stop = "tested"\nspeed_from = "100 rpm"'),
        "lathe.toml: spindle speeds: is said in two ways; write speeds or speed_from and speed_to, not both",
    ),
    (
        ("lathe", 'speeds = [\n    "65 1/min", "180 rpm",\n    "450 rev/min",\n]\n', ""),
        "lathe.toml: spindle speeds: not given; write speeds or speed_from and speed_to",
    ),
    (
        ("lathe", 'speeds = [\n    "65 1/min", "180 rpm",\n    "450 rev/min",\n]', 'speed_from = "100 rpm"'),
        "lathe.toml: spindle speeds: speed_to is not given; write speeds or speed_from and speed_to",
    ),
    (
        (
            "lathe",
            'speeds = [\n    "65 1/min", "180 rpm",\n    "450 rev/min",\n]',
            'speed_from = "900 rpm"\nspeed_to = "90 rpm"',
        ),
        'lathe.toml:8: speed_from = "900 rpm": is not below speed_to, 90 rpm; look whether the two are exchanged, or one is mistyped',
    ),
    (
        ("lathe", 'speeds = [\n    "65 1/min", "180 rpm",\n    "450 rev/min",\n]', "speeds = []"),
        "lathe.toml:8: speeds = []: holds none, and at least 1 is needed; "
        "copy every speed on the plate; without a plate count the turns of a chalk mark over a minute, at each setting",
    ),
    (
        ("lathe", 'speeds = [\n    "65 1/min", "180 rpm",\n    "450 rev/min",\n]', 'speeds = "65 rpm"'),
        'lathe.toml:8: speeds = "65 rpm": is not a list; write speeds = ["65 rpm"]',
    ),
    (
        ("lathe", 'speeds = [\n    "65 1/min", "180 rpm",\n    "450 rev/min",\n]', 'speeds = "65 rpm, 180 rpm"'),
        'lathe.toml:8: speeds = "65 rpm, 180 rpm": is not a list; write speeds = ["65 rpm", "180 rpm"]',
    ),
    # An example is no guess at what was meant: it never stands in a line to paste beside what was read.
    (
        ("lathe", 'speeds = [\n    "65 1/min", "180 rpm",\n    "450 rev/min",\n]', 'speeds = ["about 65 rpm", "180 rpm"]'),
        'lathe.toml:8: speeds: "about 65 rpm": is not a number with a unit; write for example 12.5 1/min; typical: 450 1/min',
    ),
    (
        ("lathe", 'stop = "tested"', 'stop = "tested"\nspeed_settings = ["A", "B"]'),
        "lathe.toml:22: speed_settings: has 2 entries, speeds has 3; write one entry for each of speeds, in the same order",
    ),
    (
        (
            "lathe",
            'speeds = [\n    "65 1/min", "180 rpm",\n    "450 rev/min",\n]',
            'speed_from = "90 rpm"\nspeed_to = "900 rpm"\nspeed_settings = ["A"]',
        ),
        "lathe.toml:10: speed_settings: stands without speeds; give speeds too, or take speed_settings out",
    ),
    (
        ("lathe", 'stop = "tested"', 'stop = "tested"\nsteady_from = "8 mm"'),
        'lathe.toml:22: steady_from: stands without steady_to; add steady_to = "60 mm"; or take steady_from out',
    ),
    (
        ("lathe", '"three-jaw 160"', '"old four-jaw"'),
        'lathe.toml:32: label = "old four-jaw": names two entries; give each its own',
    ),
    (("lathe", "jaws = 3", "jaws = 5"), "lathe.toml:25: jaws = 5: is not one of the choices; write 3, 4 or 6"),
    (
        ("lathe", "jaws = 3", 'jaws = "3"'),
        'lathe.toml:25: jaws = "3": is not a whole number; write 3, 4 or 6, without quotes',
    ),
    (
        ("lathe", 'marked_speed = "unmarked"\n', ""),
        'lathe.toml:31: marked_speed in entry 2 of chucks: not given; add marked_speed = "2000 1/min" or "unmarked" to it; '
        "it is stamped on the face or the rim of the chuck; write unmarked only after you have looked, a low limit holds then",
    ),
    (
        ("lathe", '"unmarked"', '"2000"'),
        'lathe.toml:36: marked_speed = "2000": has no unit; write 2000 1/min or 2000 rpm; or, only after you have looked at its face and rim, write unmarked; typical: 2000 1/min',
    ),
    (
        ("lathe", 'grips_to = "4 in"', 'grip_to = "4 in"'),
        "lathe.toml:37: grip_to = \"4 in\": unknown key 'grip_to'; a key named 'grips_to' exists",
    ),
    (
        ("lathe", '[[lathe.chucks]]\nlabel = "three', '[[chucks]]\nlabel = "three'),
        "lathe.toml:23: chucks: stands outside [lathe]; write [[lathe.chucks]]",
    ),
    (
        ("lathe", '"280 mm"', "280 mm"),
        'lathe.toml:4: swing_over_bed = 280 mm: the value stands without quotes; write swing_over_bed = "280 mm"',
    ),
    (
        ("lathe", "'6 1/4\"'", '"6 1/4""'),
        'lathe.toml:35: body = "6 1/4"": the inch mark ends the text; write body = \'6 1/4"\'',
    ),
    (
        ("crib", '"A 2.5", "no. 3"', '"A 2.6"'),
        "crib.toml:5: centre_drills: \"A 2.6\": is not known here; 'A 2.5' comes nearest; use one of no. 00, no. 0, no. 1, "
        "no. 2, no. 3, no. 4, no. 5, no. 6, no. 7, no. 8, no. 10, no. 11 and ",
    ),
    (
        ("crib", '"metric-1-13-by-0.5"', '"metric-1-13-by-.5"'),
        "crib.toml:26: set = \"metric-1-13-by-.5\": is not known here; 'metric-1-13-by-0.5' comes nearest; use one of ",
    ),
    (("crib", 'set = "metric-1-13-by-0.5"', ""), "crib.toml:25: sizes in entry 1 of drills: not given; write sizes or set"),
    (
        ("crib", 'sizes = ["16 mm", "7/8 in"]', 'sizes = ["16 mm", "No. 7"]'),
        'crib.toml:30: sizes: "No. 7": is a drill by number or letter, not a length; '
        "write the size in mm, in or thou; typical: 6 mm",
    ),
    (
        ("crib", 'from = "19 mm", to = "32 mm"', 'from = "32 mm", to = "19 mm"'),
        'crib.toml:15: from = "32 mm": is not below to, 19 mm; look whether the two are exchanged, or one is mistyped',
    ),
    (
        ("crib", 'shank = "12 mm"', 'shank = "20 mm"'),
        'crib.toml:19: shank = "20 mm": is not below least_bore, 16 mm; look whether the two are exchanged, or one is mistyped',
    ),
    (
        ("crib", "outside_micrometers = []\n", ""),
        "crib.toml: outside_micrometers: not given; add a table [[crib.outside_micrometers]] for each; "
        "each micrometer with its range; write outside_micrometers = [] when there is none",
    ),
    (
        ("crib", "outside_micrometers = []", "outside_micrometers = [3]"),
        "crib.toml:16: outside_micrometers = [3]: is not a list of tables; "
        "write each below a line [[crib.outside_micrometers]]",
    ),
    (
        ("stock", "aluminium-6082-t6", "magnesium"),
        'stock.toml:10: material = "magnesium": is refused as collar stock: '
        f"its swarf burns and water feeds the fire: not cut in this job; use one of {COLLARS}, ",
    ),
    (
        ("stock", "aluminium-6082-t6", "unknown-steel"),
        f'stock.toml:10: material = "unknown-steel": serves as bar stock, not as collar stock; use one of {COLLARS}, ',
    ),
    (
        ("stock", "steel-low-carbon-cold-drawn", "AISI1018"),
        "stock.toml:3: material = \"AISI1018\": is not known here; 'steel-low-carbon-cold-drawn' comes nearest; use one of ",
    ),
    (
        ("stock", "steel-low-carbon-cold-drawn", "mild steel"),
        'stock.toml:3: material = "mild steel": is a name of the trade: mild steel is steel-low-carbon-cold-drawn or unknown-steel; ',
    ),
    (
        ("stock", 'label = "bar 25"', 'label = ""'),
        'stock.toml:2: label = "": is empty; write the name of the piece; typical: bar 25 bright',
    ),
    (
        ("job", 'bar = "bar 25"', 'bar = "bar 26"'),
        "job.toml:13: bar = \"bar 26\": names nothing of the stock list, bars; 'bar 25' comes nearest; use one of bar 25",
    ),
    (
        ("job", '"lathe.toml"', '"lath.toml"'),
        'job.toml:6: lathe = "lath.toml": there is no such file; mend the name; it is looked for beside the job file',
    ),
    (("job", '"stock.toml"', '"."'), 'job.toml:8: stock = ".": is a folder, not a file; name the file in it'),
    (
        ("job", "2026-03-31", '"31.3.2026"'),
        'job.toml:5: date = "31.3.2026": is not a date; write 2026-03-31',
    ),
    (
        ("job", "2026-03-31", '"2026-02-31"'),
        'job.toml:5: date = "2026-02-31": is no day of the calendar; write year, month and day, such as 2026-03-31',
    ),
    (("job", '"no"', '"maybe"'), 'job.toml:12: alone = "maybe": is neither yes nor no; write true or false, without quotes'),
    (
        ("job", "minor = false", "minor = False"),
        "job.toml:11: minor = False: yes and no are written true and false; write minor = false",
    ),
    (
        ("job", "minor = false", "minor = false\nminor = true"),
        "job.toml:12: minor = true: is given a second time; keep one of the two",
    ),
    (
        ("job", '"crib.toml"', '"tools\\crib.toml"'),
        'job.toml:7: crib = "tools\\crib.toml": a backslash means something else in quotes; write / in the names of files',
    ),
    (
        ("job", '[job]\nshop = "Millpond workshop"', '[job\nshop = "Millpond workshop"'),
        'job.toml:1: [job: cannot be read as TOML; a line is: name = "value", or a heading in brackets',
    ),
    (
        ("job", 'revision = "A"', 'revision = "A"\nmeasured_head = ["25 mm"]'),
        'job.toml:5: measured_head = ["25 mm"]: holds 1, and at least 6 are needed; '
        "six readings: three places along the seat, two ways across",
    ),
    (
        ("job", '"Millpond workshop"', '"3/8 in"'),
        'job.toml:2: shop = "3/8 in": is a size, and says nothing of what it is; write a word of what it is beside it',
    ),
    (
        ("job", '"Millpond workshop"', '"{{ job.shop }}"'),
        'job.toml:2: shop = "{{ job.shop }}": holds double braces; take them out',
    ),
    (
        ("job", '"Millpond workshop"', '"""two\nlines"""'),
        'job.toml:2: shop = "two\N{REPLACEMENT CHARACTER}lines": holds a line break or a character that cannot be printed; '
        "write it on one line",
    ),
]


@pytest.mark.parametrize(("spoiled", "line"), CASES, ids=[line[:50] for _, line in CASES])
def test_the_words(lines: Lines, spoiled: Spoil, line: str) -> None:
    first = lines(spoiled)[0]
    # Lists of what the tables hold end the sentence and may grow.
    assert first.startswith(line) if line.endswith(" ") else first == line


@pytest.mark.parametrize("spoiled", [one for one, _ in CASES if "measured_head" not in one[2]], ids=lambda one: one[2][:30])
def test_one_slip_is_told_once(lines: Lines, spoiled: Spoil) -> None:
    assert len(lines(spoiled)) == 1


def test_the_faults_of_all_four_files_are_told_at_once(lines: Lines) -> None:
    found = lines(
        ("job", 'operator = "experienced"', 'operator = "expert"'),
        ("lathe", '"280 mm"', '"25,4 mm"'),
        ("lathe", 'stop = "tested"\n', ""),
        ("crib", '"24 h"', '"24"'),
        ("stock", '"75 mm"', '"7.5 mm"'),
    )
    assert [line.split(": ")[:2] for line in found] == [
        ["job.toml:10", 'operator = "expert"'],
        ["lathe.toml:4", 'swing_over_bed = "25,4 mm"'],
        ["lathe.toml", "stop"],
        ["crib.toml:13", 'compound_cure = "24"'],
        ["stock.toml:11", 'diameter = "7.5 mm"'],
    ]


def test_a_file_that_cannot_be_read_does_not_hide_the_others(lines: Lines) -> None:
    found = lines(("lathe", "[lathe]", "[lathe"), ("crib", '"HSS"', '"high speed"'))
    assert [line.split(": ")[0] for line in found] == ["lathe.toml:1", "crib.toml:3"]


def test_a_missing_heading_is_one_fault_and_not_thirty(lines: Lines) -> None:
    assert lines(("job", "[job]", "[jobb]")) == [
        "job.toml: [job]: not given; begin this file with the line [job]",
        "job.toml:1: [jobb]: does not belong here; this file holds the table [job], its tables [[override]], the headings [[job.changes]] and nothing else",
    ]


def test_a_key_before_the_heading_is_put_below_it(lines: Lines) -> None:
    assert lines(("lathe", '[lathe]\nname = "Green lathe"', 'name = "Green lathe"\n[lathe]')) == [
        "lathe.toml:1: name: stands outside [lathe]; put it below the line [lathe]"
    ]


@pytest.mark.parametrize(
    ("content", "line"),
    [
        (b"\xff\xfe\x00", f"job.toml: is text in UTF-16, as some editors save it\n  {SAVE_AGAIN}"),
        (b"", "job.toml: [job]: not given: the file is empty\n  begin this file with the line [job]"),
        (b"job = 3", "job.toml:1: job = 3: is not a table\n  begin this file with the line [job]"),
        (
            b"[job]\nx = " + b"[" * 5000,
            f"job.toml:2: x = {'[' * 53}...: nests brackets too deeply\n  take brackets out; no list needs more than one inside",
        ),
        (
            b"[job]\n\ncount = " + b"9" * 5000 + b"\nmore = 1\n",
            f"job.toml:3: count = {'9' * 49}...: holds a number of too many digits\n  write the number that is meant",
        ),
    ],
)
def test_a_job_file_that_is_none(tmp_path: Path, catalogue: Catalogue, content: bytes, line: str) -> None:
    path = tmp_path / "job.toml"
    path.write_bytes(content)
    with pytest.raises(FactsWrong) as caught:
        read_job(path, catalogue)
    assert report(caught.value) == f"no procedure yet: the facts need mending\n{line}"


def test_a_job_file_that_is_not_there(tmp_path: Path, catalogue: Catalogue) -> None:
    with pytest.raises(FactsWrong) as caught:
        read_job(tmp_path / "jub.toml", catalogue)
    assert report(caught.value).splitlines()[1:] == [
        "jub.toml: there is no such file",
        f"  mend the name; no job file is in {tmp_path}",
    ]


def test_nothing_of_a_terminal_gets_through(lines: Lines) -> None:
    (line,) = lines(("job", 'place = "home"', 'place = "\\u001b[31mhome\\u0007"'))
    assert line.startswith('job.toml:9: place = "\N{REPLACEMENT CHARACTER}[31mhome')
    assert line.isprintable()


def test_sentences_start_small_and_have_no_full_stop() -> None:
    for _, line in CASES:
        sentence = line.split(": ", 2)[2].strip()
        assert not sentence[0].isupper(), line
        assert not sentence.endswith("."), line
