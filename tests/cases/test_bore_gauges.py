"""What the bore is measured with: every kind of gauge judged, with what it is good for, from whole jobs."""

from pathlib import Path

import pytest

from shops import shop
from tailtrue.advise import advise, make_procedure
from tailtrue.errors import Refused
from tailtrue.parts import Figure
from tailtrue.procedure import Alternative

ALL = r"\[\[crib.bore_gauges\]\].*"
PLUG = '[[crib.bore_gauges]]\nkind = "plug"\nfrom = "25.03 mm"\nto = "25.06 mm"\n'


def judged(job: Path) -> dict[str, Alternative]:
    sheet = make_procedure(job)
    return {one.name: one for choice in sheet.choices if choice.id == "bore.gauge" for one in choice.alternatives}


def figures(way: Alternative) -> dict[str, float]:
    return {one.fact: one.value for one in way.figures if isinstance(one, Figure)}


def test_plug_bar_and_caliper_are_judged_beside_the_gauge_that_reads(tmp_path: Path) -> None:
    found = judged(shop(tmp_path, "fernhill", ("crib", r"\Z", f"\n{PLUG}")))
    assert [way.verdict for way in found.values()] == ["no", "chosen", "fits", "no", "no", "no"]
    assert "how much is left to cut" in found["plug, one end that goes in and one that does not"].reason
    assert "how wide the gap is" in found["the bar itself, tried in the bore"].reason
    assert "doubt eats the gap" in found["inside jaws of a caliper"].reason


def test_each_gauge_says_what_it_is_good_for(tmp_path: Path) -> None:
    """DIN 863 and common practice: plug 0.005 mm, inside micrometer 0.009 mm, three telescoping readings 0.011 mm."""
    found = judged(shop(tmp_path, "fernhill"))
    assert figures(found["inside micrometer"])["crib.inside_micrometer_doubt"] == pytest.approx(0.009)
    assert figures(found["telescoping gauge and micrometer"])["crib.telescoping_doubt"] == pytest.approx(0.011)
    assert figures(found["plug, one end that goes in and one that does not"]) == pytest.approx({"crib.plug_doubt": 0.005})
    caliper = figures(found["inside jaws of a caliper"])
    assert caliper["crib.caliper_doubt"] > caliper["limit.bond_gap"] / 2


def test_the_doubt_that_a_shop_gives_for_its_gauge_stands_there(tmp_path: Path) -> None:
    gauge = '[[crib.bore_gauges]]\nkind = "bore-gauge"\nfrom = "18 mm"\nto = "35 mm"\ndoubt = "0.003 mm"\n'
    found = judged(shop(tmp_path, "fernhill", ("crib", ALL, gauge)))
    assert figures(found["bore gauge"])["crib.bore_gauge_doubt"] == pytest.approx(0.003)


@pytest.mark.parametrize(
    ("ends", "serves"), [(("25.03", "25.06"), "yes"), (("24.9", "25.06"), "no"), (("25.03", "25.3"), "no")]
)
def test_a_plug_serves_where_both_its_ends_are_sizes_that_the_bore_may_have(
    tmp_path: Path, ends: tuple[str, str], serves: str
) -> None:
    plug = PLUG.replace("25.03", ends[0]).replace("25.06", ends[1])
    case = advise(shop(tmp_path, "fernhill", ("crib", r"\Z", f"\n{plug}"))).case
    assert case.value("crib.has_plug") is (serves == "yes")


def test_a_shop_with_only_a_plug_hears_why_a_plug_is_not_enough(tmp_path: Path) -> None:
    job = shop(tmp_path, "fernhill", ("crib", ALL, PLUG))
    with pytest.raises(Refused):
        make_procedure(job)
    (refusal,) = (one for one in advise(job).refused if one.id == "no-gauge-for-the-bore")
    said = "".join(str(getattr(piece, "value", piece)) for piece in refusal.text)
    assert "A plug tells that a bore is not too small, and not how much is left to cut." in said
    assert "0.06" in said
