"""The records of work that is no test of the tailstock: what holds of every record holds of them."""

import re

from tailtrue.render.numbers import read
from tailtrue.work_record import WorkRecord

from .made import Job, said

PLACES = {
    "make-bar": ("seat, largest", "bore less seat", "witness lines", "size: mean", "mark of the bar", "certified", "next look"),
    "re-certify": ("as it lies", "end for end", "new size", "worn off", "of the bar", "of the lathe", "certified"),
    "chucked-bar-test": ("stands out of the jaws", "near, at the chuck", "far, free end", "plane across", "bed twisted", "headstock"),
    "height-and-droop": ("droop", "front again", "rise toward the nose", "lean toward the tool", "shims: thickness", "droops"),
    "rework": ("found again", "way", "the part", "scrap", "stopped at which line"),
}  # fmt: skip


def _record(made: Job) -> WorkRecord | None:
    return made.tree.work_record


def test_v26_a_judged_place_has_instrument_resolution_or_doubt_band_and_unit(made: Job) -> None:
    """DOE-STD-1029-92 CN1: acceptance criteria stand where the value is written."""
    for record in (made.tree.record, made.tree.work_record):
        for block in record.blocks if record else ():
            for place in block.entries:
                if place.limits is not None:
                    assert place.limits.low or place.limits.high, place.label
                    assert place.unit, place.label
                    assert said(place.read_with).strip(), place.label
                    assert place.resolution or place.uncertainty, place.label


def test_v27_a_band_of_a_record_is_wider_than_the_doubt_of_the_reading(made: Job) -> None:
    """JCGM 100 (GUM): what lies within the doubt cannot be judged."""
    for record in (made.tree.record, made.tree.work_record):
        for block in record.blocks if record else ():
            for place in block.entries:
                doubt = place.uncertainty or place.resolution
                if place.limits and place.limits.low and place.limits.high and doubt:
                    assert place.limits.high.value - place.limits.low.value >= doubt.value, place.label


def test_v30_what_is_off_or_lacking_never_prints_as_nothing(made: Job) -> None:
    """House rule: a shim, a lead or a lack that reads as none would not be seen."""
    record = _record(made)
    for table in record.tables if record else ():
        for line in table.lines:
            for figure in line.cells[1:]:
                if figure is not None:
                    assert figure.value > 0, table.title
                    assert re.search(r"[1-9]", read(figure, made.tree.title.dials).number), (table.title, figure)


def test_v32_a_side_on_a_record_is_in_words(made: Job) -> None:
    """Common practice: the side is named, and no bare sign stands for it."""
    record = _record(made)
    for way in record.ways if record else ():
        assert said(way.case).strip()
        assert re.search(r"toward you|away from you|above|below|front foot|rear foot|open|nothing", said(way.side))


def test_every_record_of_work_holds_what_is_written_down_in_such_work(made: Job) -> None:
    record = _record(made)
    if record is None:
        return
    told = " ".join(made.page("record").words.split())
    for word in (
        *PLACES[record.id], "date", "operator, initials", "shop temperature at the start", "shop temperature at the end",
        "calibration due", "Readings rejected", "give or take" if record.id not in ("re-certify", "make-bar") else "doubt of the difference",
        "done otherwise than the sheet says", "made by", "read over by", "kept where, until", "verified by, initials",
        "status of this record", "next review due", "Into the log",
    ):  # fmt: skip
        if word == "give or take" and record.id == "rework" and not record.tables:
            continue  # nothing with a doubt was found
        assert word in told, word
    for block in record.blocks:
        assert block.title in told
        for place in block.entries:
            assert place.label in told


def test_the_record_of_a_test_tells_how_its_bar_was_made_where_the_sheet_makes_it(made: Job) -> None:
    """Procedure writing practice: what is measured once is looked for later, on the paper that is kept."""
    if made.tree.record is None:
        return
    told = " ".join(made.page("record").words.split())
    makes = made.advice.route.file.id == "make-and-use-bar"
    for word in ("seat, largest", "seat, least", "bore, mean", "The joint, as made", "bore of collar 1, end A"):
        assert (word in told) == makes, word
    bonds = makes and made.advice.case.value("joint.method") == "retaining-compound"
    for word in ("bonded, day and time", "may be cut from"):
        assert (word in told) == bonds, word


def test_every_line_of_a_table_stands_on_the_page_and_in_markdown(made: Job) -> None:
    record = _record(made)
    for table in record.tables if record else ():
        rows = [row for row in made.page("record").all("tr") if len(list(row.all("td", "by"))) == len(table.heads) - 1]
        assert len([row for row in rows if list(row.all("th"))]) >= len(table.lines)
        for line in table.lines:
            for figure in filter(None, line.cells):
                assert read(figure, made.tree.title.dials).number in made.markdown("record")


def test_a_record_explains_the_terms_that_stand_on_it_and_no_others(made: Job) -> None:
    record = _record(made)
    for term in record.glossary if record else ():
        assert term.seen_as.lower() in " ".join(made.page("record").words.lower().split()), term.term
