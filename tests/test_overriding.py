"""A number set by hand: beyond a bound there is no procedure; within it, everything works from it and says so."""

import re
import tempfile
from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from shops import EXAMPLES, shop, tailtrue
from tailtrue.advise import advise, knowledge, make_procedure, shop_for
from tailtrue.assemble import assemble
from tailtrue.assemble.reasons import figures
from tailtrue.case import Case
from tailtrue.errors import FactsWrong, InspectionFailed, Refused, report
from tailtrue.facts import Fact
from tailtrue.inspection import inspect
from tailtrue.log.fields import fields_of_a_record
from tailtrue.plan import make_plan
from tailtrue.procedure import Procedure
from tailtrue.render.card import to_card_markdown
from tailtrue.render.html import to_html
from tailtrue.render.markdown import to_markdown
from tailtrue.truing.lookup import record_sheet

PLAIN = advise(EXAMPLES / "fernhill" / "job.toml").case
MARK = "\N{DAGGER}"


def with_overrides(folder: Path, values: Mapping[str, str], name: str = "fernhill") -> Path:
    job = shop(folder, name)
    rows = (
        f'\n[[override]]\nfact = "{fact}"\nvalue = "{value}"\nreason = "as tried here"\ninitials = "RK"\n'
        for fact, value in values.items()
    )
    job.write_text(job.read_text(encoding="utf-8") + "".join(rows), encoding="utf-8")
    return job


def made(folder: Path, **values: str) -> Procedure:
    return make_procedure(with_overrides(folder, {name.replace("__", "."): value for name, value in values.items()}))


BEYOND = [
    ("skim.speed", "700 1/min", "may only be lower than what is worked out, 450 rev/min"),
    ("skim.speed", "100 1/min", "which is none of the spindle speeds"),
    ("collar.boring.speed", "1100 1/min", "may only be lower"),
    ("chuck.speed_limit", "3000 1/min", "may only be lower than what is worked out, 2500 rev/min"),
    ("chuck.speed_limit", "60 1/min", "may be at least 65 rev/min"),
    ("skim.feed", "0.07 mm/rev", "may only be lower"),
    ("collar.turning.feed", "0.06 mm/rev", "which is none of the power feeds"),
    ("collar.boring.hand_feed", "0.9 mm/rev", "may only be lower"),
    ("skim.depth", "0.5 mm", "may only be lower"),
    ("skim.depth", "0.04 mm", "which is no whole number of 0.025 mm"),
    ("joint.cure_wait", "2 h", "may only be higher than what is worked out, 48 h"),
    ("bore.gap_largest", "0.001 mm", "may be at least"),
    ("bore.gap_least", "0.4 mm", "may be at most"),
    ("align.limit", "0.1 mm", "may only be lower"),
    ("align.uncertainty", "0.0002 mm", "may only be higher"),
]


@pytest.mark.parametrize(("fact", "value", "says"), BEYOND)
def test_a_number_beyond_its_bound_is_refused_with_figures(tmp_path: Path, fact: str, value: str, says: str) -> None:
    with pytest.raises(Refused) as wrong:
        make_procedure(with_overrides(tmp_path, {fact: value}))
    told = report(wrong.value).replace("\N{NO-BREAK SPACE}", " ")
    assert says in told
    assert re.search(r"^job\.toml:\d+: ", told, re.MULTILINE)
    assert f"Take the override of {fact} out of the job file" in told


def test_what_is_not_worked_out_cannot_be_set(tmp_path: Path) -> None:
    job = with_overrides(tmp_path, {"skim.feed": "0.05 mm/rev"})
    lathe = job.parent / "lathe.toml"
    lathe.write_text(
        re.sub(r"feeds = \[.*?\]", 'feeds = ["0.90 mm/rev"]', lathe.read_text(encoding="utf-8")), encoding="utf-8"
    )
    with pytest.raises(Refused, match="is not worked out for this job"):
        make_procedure(job)


def test_the_commands_refuse_with_exit_code_five(tmp_path: Path) -> None:
    job = with_overrides(tmp_path, {"skim.speed": "700 1/min"})
    for words in (("make", job, "--out", tmp_path / "out"), ("check", job)):
        assert tailtrue(*words).returncode == 5
    assert not (tmp_path / "out").exists()


def test_every_number_beyond_its_bound_is_told_at_once(tmp_path: Path) -> None:
    with pytest.raises(Refused) as wrong:
        make_procedure(with_overrides(tmp_path, {"skim.speed": "700 1/min", "joint.cure_wait": "2 h"}))
    assert len(wrong.value.problems) == 2


def test_what_follows_is_worked_out_from_the_number(tmp_path: Path) -> None:
    plain, slow = (
        advise(shop(tmp_path, "fernhill")).case,
        advise(with_overrides(tmp_path / "slow", {"skim.speed": "180 1/min"})).case,
    )
    assert slow.value("skim.speed") == 180.0
    assert slow.value("skim.surface_speed") == pytest.approx(
        plain.value("skim.surface_speed") * 180 / plain.value("skim.speed")
    )


def test_a_chuck_drawn_slower_slows_every_operation_in_it(tmp_path: Path) -> None:
    case = advise(with_overrides(tmp_path, {"chuck.speed_limit": "300 1/min", "blank.chuck_speed_limit": "300 1/min"})).case
    for operation in ("bar.facing", "bar.centring", "collar.boring", "collar.spotting", "collar.facing"):
        assert case.value(f"{operation}.speed") <= 300.0


def test_every_print_of_the_number_is_marked_and_told_in_the_front(tmp_path: Path) -> None:
    tree = made(tmp_path, skim__speed="180 1/min", joint__cure_wait="72 h")
    here = [one for one in figures(tree) if one.fact == "skim.speed"]
    assert len(here) >= 4
    assert {(one.value, one.set_by) for one in here} == {(180.0, "RK")}
    assert [(one.value.value, one.worked_out.value, one.initials) for one in tree.set_by_hand] == [
        (180.0, 450.0, "RK"), (72 * 3600.0, 48 * 3600.0, "RK"),
    ]  # fmt: skip
    derived = next(one for one in tree.derivations if one.fact == "skim.speed")
    assert derived.by_hand[0] == "set by RK: as tried here; worked out: "


def test_no_other_number_is_marked(tmp_path: Path) -> None:
    tree = made(tmp_path, skim__speed="180 1/min")
    assert {one.fact for one in figures(tree) if one.set_by} == {"skim.speed"}


def test_the_pages_show_the_mark_and_what_it_means(tmp_path: Path) -> None:
    tree = made(tmp_path, skim__speed="180 1/min")
    space = "\N{NO-BREAK SPACE}"
    for page in (to_html(tree), to_markdown(tree)):
        assert f"180{space}rev/min{space}{MARK}" in page
        assert f"450{space}rev/min{space}{MARK}" not in page
        assert f"Numbers set by hand ({MARK})" in page
        assert f"{MARK} behind a number" in page
    card = to_card_markdown(tree)
    assert f"| 180 | rev/min{space}{MARK} |" in card
    assert f"{MARK} set by hand, see the sheet." in card


def test_a_sheet_without_overrides_has_no_mark(tmp_path: Path) -> None:
    tree = make_procedure(shop(tmp_path, "fernhill"))
    assert tree.set_by_hand == ()
    assert MARK not in to_html(tree) + to_markdown(tree) + to_card_markdown(tree)


@pytest.mark.parametrize("name", ["fernhill", "quarry-road"])
def test_no_number_on_the_list_can_be_set_beyond_what_is_worked_out(tmp_path: Path, name: str) -> None:
    known = knowledge()
    plain = advise(shop(tmp_path / "plain", name)).case
    tried = 0
    for fact, one in known.given.settable.items():
        worked = plain.value(fact)
        if worked is None:
            continue
        over = worked * (1.02 if one.safe == "lower" else 0.98)
        if not one.least <= over <= one.most:
            continue
        tried += 1
        job = with_overrides(tmp_path / fact, {fact: f"{over:.9f} {one.unit}"}, name)
        with pytest.raises(Refused):
            make_procedure(job)
    assert tried > 20


def test_a_band_squeezed_until_no_gauge_can_judge_it_is_not_printed(tmp_path: Path) -> None:
    with pytest.raises((Refused, InspectionFailed)):
        make_procedure(with_overrides(tmp_path, {"bore.gap_largest": "0.012 mm"}))


def test_the_inspection_finds_a_number_that_the_refusals_let_through(tmp_path: Path) -> None:
    job = with_overrides(tmp_path, {"skim.speed": "280 1/min"})
    advice = advise(job)
    known = advice.case.knowledge
    # 700 rev/min is a speed of this lathe, and under every limit of chuck and centres: only what was worked out forbids it.
    too_fast = replace(advice.given.by_hand["skim.speed"], value=700.0)
    said = {name: Fact(known.catalogue[name], one.value, said=one.said) for name, one in advice.given.values.items()}
    case = Case(known, said, [too_fast])
    tree = assemble(case, make_plan(case, advice.route), lambda: record_sheet(case, fields_of_a_record()), near=())
    spoilt = replace(advice, case=case, given=replace(advice.given, by_hand={"skim.speed": too_fast}))
    failures = inspect(tree, shop_for(spoilt)).failures
    assert [(failure.rule, failure.what.partition(",")[0]) for failure in failures] == [
        ("V152", "skim.speed of 700 1/min crosses what is worked out")
    ]


_FACTS = sorted(knowledge().given.settable)


@settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.too_slow, HealthCheck.function_scoped_fixture])
@given(fact=st.sampled_from(_FACTS), factor=st.floats(min_value=0.2, max_value=3.0))
def test_no_sheet_comes_out_with_a_number_beyond_what_was_worked_out(tmp_path: Path, fact: str, factor: float) -> None:
    one = knowledge().given.settable[fact]
    worked = PLAIN.value(fact)
    value = (worked if worked is not None else one.least) * factor
    with tempfile.TemporaryDirectory(dir=tmp_path) as folder:
        try:
            tree = make_procedure(with_overrides(Path(folder), {fact: f"{value:.9f} {one.unit}"}))
        except (FactsWrong, Refused, InspectionFailed):
            return
    (line,) = tree.set_by_hand
    assert line.value.value <= line.worked_out.value if one.safe == "lower" else line.value.value >= line.worked_out.value
    assert line.worked_out.value == worked
