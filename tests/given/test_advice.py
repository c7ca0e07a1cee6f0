"""What a refusal says to write is taken when it is written: every kind of fact, in either system of units."""

import re
import tomllib
from collections.abc import Callable, Iterator
from datetime import date
from itertools import product
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tailtrue.errors import FactsWrong, Problem
from tailtrue.given.catalogue import Catalogue, load_catalogue
from tailtrue.given.day import day_of
from tailtrue.given.entries import GivenFact
from tailtrue.given.read import read_job
from tailtrue.given.relations import how_to_add
from tailtrue.given.values import Unfit, of_list, single
from tailtrue.log.dates import wrong_date
from tailtrue.places import knowledge_folder
from tailtrue.quantities import FAST, System, system_of

CATALOGUE = load_catalogue(knowledge_folder())
SYSTEMS: tuple[System, ...] = ("metric", "inch", "")

Problems = Callable[..., tuple[Problem, ...]]

QUANTITY_SLIPS: tuple[Any, ...] = (
    "0,0005", "0,0005 in", "25,4 mm", "1,000", "1,000 mm", "12", 12, 0.5, 300, "1 1/2", "2 mil", "1 000", "12 MM", "20 C", "70 F",
    "3/2/1", "1 3/2 in", "1/0 in", "thick", "", "12 kg", "3 mm", "1.5 HP", "0,5 %", "500 RPM", "999999 mm", "0.00001 in", "99999 rpm",
    "-4 mm", "99999 h", "9999 degC", "99999 kW", "9999 kg", True, [],
)  # fmt: skip
CHOICE_SLIPS = ("2MT.", "morse", "Front", "", 3, True, "no-such-word", "cam lock", "MT9")
DATE_SLIPS = ("31.3.2026", "3/31/2026", "4/5/2026", "2026/3/31", "26-3-31", "31 3 2026", "2026-02-31", "March 3", "", 3)


def every(*kinds: str) -> list[GivenFact]:
    facts = [one for fact in CATALOGUE.facts.values() for one in (fact, *fact.fields.values())]
    return [fact for fact in facts if fact.spec.kind in kinds]


def quantities() -> list[GivenFact]:
    return every("quantity", "quantities") + [fact for fact in every("texts") if fact.reads_as]


def read(fact: GivenFact, raw: Any, system: System = "") -> Any:
    if fact.spec.kind in ("quantities", "texts"):
        return of_list(fact, raw, CATALOGUE.references, system)
    return single(fact, raw, CATALOGUE.references, system)


def refusal(fact: GivenFact, raw: Any, system: System = "") -> Unfit | None:
    try:
        read(fact, raw, system)
    except Unfit as unfit:
        return unfit
    return None


def advised(unfit: Unfit) -> Iterator[str]:
    """Every whole quantity or word in the sentence that says what to do."""
    for part in unfit.do.split("; "):
        if match := re.fullmatch(r"(?:or )?write (?:for example )?(.*?)(?:, in quotes)?(?:, whichever is meant)?", part):
            if not match[1].startswith(("a number", "the size", "it ", "the ")):
                yield from (one.strip('"') for one in re.split(r", | or ", match[1]))
        elif (match := re.fullmatch(r"typical: (.*)", part)) or (match := re.fullmatch(r"'(.*)' comes nearest", part)):
            yield match[1]
        elif match := re.fullmatch(r"(.*) is plausible", part):
            yield from ends(match[1])
    if match := re.fullmatch(r"is not plausible here: (.*) is", unfit.wrong):
        yield from ends(match[1])


def ends(band: str) -> Iterator[str]:
    return (one.removeprefix("at least ").removeprefix("at most ") for one in band.split(" to "))


@pytest.mark.parametrize("fact", quantities(), ids=lambda fact: fact.spec.name)
def test_what_is_advised_for_a_quantity_is_taken(fact: GivenFact) -> None:
    for system, slip in product(SYSTEMS, QUANTITY_SLIPS):
        unfit = refusal(fact, slip, system)
        for one in advised(unfit) if unfit else ():
            assert refusal(fact, one, system) is None, (slip, unfit, one)


@pytest.mark.parametrize("unit", sorted({fact.spec.unit or fact.reads_as for fact in quantities()}))
def test_each_kind_of_quantity_is_advised_in_whole_quantities(unit: str) -> None:
    """The reading of the sentences in these tests finds something to feed back."""
    found = [
        one for fact in quantities() if (fact.spec.unit or fact.reads_as) == unit
        for slip in QUANTITY_SLIPS if (unfit := refusal(fact, slip)) for one in advised(unfit)
    ]  # fmt: skip
    assert len(set(found)) > 2


@pytest.mark.parametrize("fact", quantities(), ids=lambda fact: fact.spec.name)
def test_an_owner_of_inch_dials_is_answered_in_inches(fact: GivenFact) -> None:
    """Ends and typical values follow the system of the file, unless the user wrote one unit himself."""
    for slip in ("thick", 12):
        unfit = refusal(fact, slip, "inch")
        for part in unfit.do.split("; ") if unfit else ():
            if part.startswith("typical: "):
                assert system_of(part) != "metric", unfit
    for unit in FAST[fact.spec.unit or fact.reads_as][1]:
        unfit = refusal(fact, f"99999999 {unit}".strip(), "inch")
        if unfit and unfit.wrong.startswith("is not plausible") and system_of(f"1 {unit}") == "inch":
            assert not any(system_of(end) == "metric" for end in ends(unfit.wrong.removesuffix(" is").split(": ")[1])), unfit


def test_a_size_in_millimetres_is_answered_in_millimetres_whatever_the_dials() -> None:
    unfit = refusal(CATALOGUE.facts["lathe.swing_over_bed"], "28 mm", "inch")
    assert unfit is not None
    assert (unfit.wrong, unfit.do) == (
        "is not plausible here: 150 mm to 560 mm is",
        "look at the unit and the decimal point; a true value beyond that is beyond these rules; typical: 280 mm",
    )


@pytest.mark.parametrize("fact", every("choice"), ids=lambda fact: fact.spec.name)
def test_what_is_advised_for_a_choice_is_taken(fact: GivenFact) -> None:
    for slip in CHOICE_SLIPS:
        unfit = refusal(fact, slip)
        for one in advised(unfit) if unfit else ():
            assert refusal(fact, one) is None, (slip, unfit, one)


@pytest.mark.parametrize("fact", every("date"), ids=lambda fact: fact.spec.name)
def test_what_is_advised_for_a_date_is_taken(fact: GivenFact) -> None:
    for slip in DATE_SLIPS:
        unfit = refusal(fact, slip)
        assert unfit is not None
        days = re.findall(r"[0-9]{4}-[0-9]{2}-[0-9]{2}", unfit.do)
        assert days
        assert all(refusal(fact, day) is None for day in days)


@given(st.dates(date(2000, 1, 1), date(2099, 12, 31)), st.sampled_from(["{0.day}.{0.month}.{0.year}", "{0.month}/{0.day}/{0.year}",
       "{0.day}-{0.month}-{0.year}", "{0.year}.{0.month}.{0.day}"]))  # fmt: skip
def test_a_day_in_another_order_is_among_the_days_that_are_advised(day: date, form: str) -> None:
    with pytest.raises(ValueError, match="is not a date") as caught:
        day_of(form.format(day))
    assert day.isoformat() in caught.value.args[1]


@pytest.mark.parametrize("fact", [*CATALOGUE.facts.values()], ids=lambda fact: fact.spec.name)
def test_the_line_that_a_missing_fact_asks_for_is_taken(fact: GivenFact) -> None:
    for system, one in product(SYSTEMS, (fact, *fact.fields.values())):
        line = how_to_add(one, "below it", system)
        match = re.match(r"add (\w+) = (.*?) below it; ", line)
        if one.spec.kind == "records":
            assert line.startswith(f"add a table [[{one.spec.name}]] for each; ")
            continue
        assert match is not None, line
        assert match[1] == one.key
        for raw in written(match[2]):
            if not (one.refers and one.refers.in_own_files):
                assert refusal(one, raw, system) is None, line


def written(values: str) -> Iterator[Any]:
    """The values of a line to add, as TOML has them; places that only the user can fill are passed over."""
    found = re.findall(r"\"[^\"]*\"|'[^']*'|true|false|[0-9]+(?=, | or |$)|a number", values)
    assert found, values
    for value in found:
        if value not in ("a number", '"..."'):
            yield tomllib.loads(f"value = {value}")["value"]


def mended(shop: Path, catalogue: Catalogue) -> tuple[Problem, ...]:
    try:
        read_job(shop / "job.toml", catalogue)
    except FactsWrong as wrong:
        return wrong.problems
    return ()


@pytest.mark.parametrize(
    ("kind", "old", "new"),
    [
        ("job", "date = 2026-03-31", "date = 31.3.2026"),
        ("job", "date = 2026-03-31", "date = 2026-3-31"),
        ("job", "date = 2026-03-31", "date = 3/31/2026"),
        ("lathe", 'dial_division = "0.02 mm"', "dial_division = 0,02"),
        ("lathe", 'dial_division = "0.02 mm"', "dial_division = 0,02 mm"),
        ("lathe", 'dial_division = "0.02 mm"', 'dial_division = "0,0005"'),
        ("lathe", 'dial_division = "0.02 mm"', "dial_division = 0.001"),
        ("lathe", 'swing_over_bed = "280 mm"', "swing_over_bed = 280 mm"),
        ("lathe", 'motor_power = "1 1/2 hp"', "motor_power = 1.5"),
        ("lathe", 'tailstock_taper = "MT3"', "tailstock_taper = MT3"),
        ("lathe", 'body = "160 mm"', "body = 160,0"),
        ("job", "minor = false", "minor = no"),
        ("job", 'operator = "experienced"', "operator = “experienced”"),
        ("stock", 'finish = "cold-drawn"', "finish = cold-drawn"),
    ],
)
def test_the_line_is_good_once_it_is_written_as_the_message_says(
    shop: Path, catalogue: Catalogue, kind: str, old: str, new: str
) -> None:
    """Each message is followed to the letter until the file is taken; it may take as many rounds as it has faults."""
    path = shop / f"{kind}.toml"
    text = path.read_text(encoding="utf-8")
    assert text.count(old) == 1
    key = new.partition(" = ")[0]
    line = new
    for _ in range(3):
        path.write_text(text.replace(old, line), encoding="utf-8")
        problems = mended(shop, catalogue)
        if not problems:
            break
        (problem,) = problems
        line = followed(key, problem.do)
    assert not problems


def followed(key: str, do: str) -> str:
    advice = do.partition(";")[0].removeprefix("write ").removesuffix(", whichever is meant")
    if advice.startswith(f"{key} = "):
        return advice
    value = advice.removesuffix(", in quotes").partition(" or ")[0].strip('"')
    return f'{key} = "{value}"'


@pytest.mark.parametrize(
    "spelling", ["2MT", "2 MT", "MT 2", "mt2", "No. 2 Morse", "no 2 Morse", "#2 Morse", "2 Morse taper"]
)
def test_a_taper_is_taken_as_the_trade_spells_it(shop: Path, catalogue: Catalogue, spelling: str) -> None:
    for kind, old in (("lathe", 'tailstock_taper = "MT3"'), ("crib", 'shank = "MT2"')):
        path = shop / f"{kind}.toml"
        text = path.read_text(encoding="utf-8")
        path.write_text(text.replace(old, f'{old.partition(" = ")[0]} = "{spelling}"'), encoding="utf-8")
    given = read_job(shop / "job.toml", catalogue)
    assert (given.value("lathe.tailstock_taper"), given.text_of("lathe.tailstock_taper")) == ("MT2", spelling)
    assert given.value("crib.drills")[1]["shank"] == "MT2"


@pytest.mark.parametrize("spelling", ["#3", "No. 3", "No 3", "no.3", "NO 3"])
def test_a_centre_drill_by_number_is_taken_as_the_trade_spells_it(spelling: str) -> None:
    assert read(CATALOGUE.facts["crib.centre_drills"], spelling)[0] == "no. 3"


@pytest.mark.parametrize("text", ["24.11.2026", "11/24/2026", "2026/11/24", "24-11-26"])
def test_the_date_that_the_log_advises_is_taken_by_the_log(text: str) -> None:
    wrong = wrong_date(text, "2026-11-26T10:00:00")
    assert wrong == ("is no date with or without a time", "write 2026-11-24")
    assert wrong_date("2026-11-24", "2026-11-26T10:00:00") is None


@pytest.mark.parametrize("value", ["0,5", "450", "450,5 rpm", "1,000", "fast", "450 RPM"])
def test_what_is_advised_for_a_number_set_by_hand_is_taken(shop: Path, catalogue: Catalogue, value: str) -> None:
    path = shop / "job.toml"
    text = path.read_text(encoding="utf-8")
    entry = '\n[[override]]\nfact = "skim.speed"\nvalue = "{}"\nreason = "the belt slips"\ninitials = "RK"\n'
    path.write_text(text + entry.format(value), encoding="utf-8")
    (problem,) = mended(shop, catalogue)
    do = problem.do.removeprefix("write ").removeprefix("for example ").removesuffix(", whichever is meant")
    if do.startswith("a number with its unit"):
        return
    for one in do.split(" or "):
        path.write_text(text + entry.format(one), encoding="utf-8")
        assert not mended(shop, catalogue), one
