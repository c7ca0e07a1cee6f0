"""Numbers on the papers: their origin, two systems, limits inward, sides in words."""

import re
from decimal import Decimal

from tailtrue.render.numbers import other, read, show

from .made import Job, said

MM_PER_INCH = Decimal("25.4")
PLAIN = re.compile(r"[-\u2212]?\d+(?:\.\d+)?\u2020?")


def test_v24_each_number_says_where_it_comes_from(made: Job) -> None:
    """House rule; the kinds of origin are printed beside each account."""
    accounts = {one.fact: one for one in made.tree.derivations}
    for _, step in made.steps:
        for line in step.settings:
            for piece in line.value:
                if not isinstance(piece, str):
                    assert piece.fact in accounts, (step.number, piece.fact)
    for one in accounts.values():
        assert one.sources, one.fact
        assert one.weakest in {"published", "common-practice", "memory", "said", "decided"}


def test_v26_a_judged_size_has_instrument_resolution_band_unit_and_blank(made: Job) -> None:
    """DOE-STD-1029-92 CN1: acceptance criteria stand at the step, with a place for the value."""
    for _, step in made.steps:
        for check in step.checks:
            if check.limits is not None:
                assert check.instrument, step.number
                assert check.resolution or check.uncertainty, step.number
                assert check.limits.low or check.limits.high
                assert any(blank.unit for blank in check.blanks), step.number


def test_v27_a_band_is_wider_than_the_doubt_of_the_reading(made: Job) -> None:
    """JCGM 100 (GUM): what lies within the doubt cannot be judged."""
    for _, step in made.steps:
        for check in step.checks:
            if check.limits and check.limits.low and check.limits.high:
                doubt = check.uncertainty or check.resolution
                assert doubt is not None, step.number
                assert check.limits.high.value - check.limits.low.value >= doubt.value, step.number


def test_v28_the_second_system_is_rounded_from_the_value_and_not_from_the_first(made: Job) -> None:
    """NIST SP 811, B.7: rounding once, from the value itself."""
    for figure in set(made.figures):
        dials = made.tree.title.dials
        first, second = read(figure, dials), other(figure, dials)
        if second is None or figure.unit != "mm" or figure.marked or figure.bound != "nearest":
            continue
        for shown in (first, second):
            if shown.unit not in {"mm", "in"} or not PLAIN.fullmatch(shown.number):
                continue
            value = Decimal(repr(figure.value)) / (MM_PER_INCH if shown.unit == "in" else 1)
            printed = Decimal(shown.number.replace("\u2212", "-").replace("\u2020", ""))
            place = Decimal(1).scaleb(printed.as_tuple().exponent)  # type: ignore[arg-type]
            assert abs(printed - value) <= place / 2 + place * Decimal("0.000001"), (figure.fact, shown)


def test_v29_limits_are_rounded_inward(made: Job) -> None:
    """Drawing-office practice: a most is rounded down, a least is rounded up, in either system."""
    for figure in set(made.figures):
        if figure.bound == "nearest" or figure.unit != "mm" or figure.marked:
            continue
        for dials in ("metric", "inch"):
            shown = read(figure, dials)
            if shown.unit not in {"mm", "in"} or not PLAIN.fullmatch(shown.number):
                continue
            value = Decimal(repr(figure.value)) / (MM_PER_INCH if shown.unit == "in" else 1)
            printed = Decimal(shown.number.replace("\u2212", "-").replace("\u2020", ""))
            slack = Decimal(1).scaleb(printed.as_tuple().exponent) * Decimal("0.000002")  # type: ignore[arg-type]
            if figure.bound == "most":
                assert printed <= value + slack, (figure.fact, shown)
            else:
                assert printed >= value - slack, (figure.fact, shown)


def test_v30_a_correction_that_is_not_nothing_never_prints_as_nothing(made: Job) -> None:
    """House rule: a move that reads as none would not be made."""
    table, record = made.tree.look_up, made.tree.record
    moves = [row.move for row in table.rows] if table else []
    moves += [row.move for row in record.rows] if record else []
    for move in moves:
        if move is not None and abs(move.value) > 1e-9:
            for dials in ("metric", "inch"):
                assert re.search(r"[1-9]", read(move, dials).number), (move, dials)


def test_v31_depth_is_told_apart_from_diameter(made: Job) -> None:
    """Common practice: a depth read as a diameter is cut double. Where none is set and nothing turns, nothing is told."""
    told = " ".join(said(line) for line in made.tree.conventions)
    set_there = any("per side" in said(line.label) for _, step in made.steps for line in step.settings)
    assert set_there or not any(step.machine == "turning" and "skim" in step.activities for _, step in made.steps)
    assert ("Depth is per side" in told) == set_there
    assert ("Diameter changes by twice" in told) == set_there
    for _, step in made.steps:
        for line in step.settings:
            label = said(line.label).lower()
            if re.fullmatch(r"depth(?: .*)?", label) and not re.search(
                r"top slide|from the face|from where the cone|of the hole|of each", label
            ):
                assert "per side" in label, (step.number, label)
            if "depth per side" in label:
                assert re.search(r"on diameter|bore then", said(line.reason)), (step.number, label)
    if made.tree.card and any("depth" in said(line.label) for group in made.tree.card.groups for line in group.lines):
        assert any("per side" in said(note.label) for note in made.tree.card.notes)


def test_v32_directions_are_words(made: Job) -> None:
    """Common practice: no plus or minus for a move; the side is named, and the sign of a difference is told once."""
    told = " ".join(said(line) for line in made.tree.conventions)
    assert "Toward you means the operator side" in told
    table = made.tree.look_up
    if table:
        for way in (table.larger_at_tailstock, table.smaller_at_tailstock):
            assert re.search(r"\btoward you\b|\baway from you\b", way), way
        assert table.larger_at_tailstock != table.smaller_at_tailstock
    for kind in {"card", "record"} & set(made.kinds):
        if made.tree.look_up:
            assert re.search(r"toward you|away from you", made.page(kind).words, re.I), kind


def test_numbers_are_printed_with_their_unit_held_together(made: Job) -> None:
    """SI Brochure, 9th edition, 5.4.3: a space between number and unit, here one that does not break."""
    for figure in list(set(made.figures))[:200]:
        words = show(figure, made.tree.title.dials)
        assert not re.search(r"\d [A-Za-z]", words.split("(")[0].strip()) or figure.marked, words
