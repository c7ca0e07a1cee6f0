"""The chuck used where nothing else is said, and what is known of it."""

from collections.abc import Mapping
from typing import Any

from tailtrue.computed.chuck_facts import body_fact, hole_fact, jaws_fact, name_fact, opening_fact, speed_fact, usual_chucks
from tailtrue.computed.registry import Limited, computed
from tailtrue.tables import Table

Record = Mapping[str, Any]


@computed(
    "chuck.used",
    label="chuck used",
    kind="record",
    needs=("lathe.chucks", "blank.chuck?", "collar.banded?", "bar.diameter?", "bar.four_jaw?"),
    tables=("machines/chuck_kinds",),
    how="the three-jaw scroll chuck of the blanks, so that no chuck is changed between; the smallest that grips the bar, "
    "where the blanks are held in another kind or in one too small for the bar; a four-jaw independent chuck where there "
    "is no scroll chuck; where the job has neither bar nor blanks the smallest on the list",
)
def chuck_used(
    chucks: tuple[Record, ...], of_blanks: Record | None, banded: bool | None, bar: float | None,
    four_jaw: Record | None, kinds: Table,
) -> Limited | None:  # fmt: skip
    if not banded and of_blanks is not None and of_blanks["grips_to"] >= (bar or 0.0):
        return Limited(of_blanks, "it holds the blanks")
    three_jaw = usual_chucks(chucks, kinds, self_centring=True)
    if not three_jaw:
        return Limited(four_jaw, "there is no three-jaw scroll chuck on the list")
    fitting = [chuck for chuck in three_jaw if chuck["grips_to"] >= (bar or 0.0)]
    if fitting:
        by = "the smallest on the list" if bar is None else "the smallest that grips the bar"
        return Limited(min(fitting, key=lambda chuck: chuck["body"]), by)
    return Limited(max(three_jaw, key=lambda chuck: chuck["grips_to"]), "the largest there is")


name_fact("chuck.label", "chuck.used", "chuck")
opening_fact("chuck.grips_to", "chuck.used", "largest diameter gripped with the jaws inside the body")
body_fact("chuck.body", "chuck.used", "body of the chuck")
speed_fact("chuck.speed_limit", "chuck.used", "speed limit of the chuck")
jaws_fact("chuck.jaw_depth", "chuck.used", "depth of the jaws")
hole_fact("chuck.hole", "chuck.used", "hole through the chuck")


@computed("chuck.kind", label="kind of the chuck", kind="choice", choices=("scroll", "independent"), needs=("chuck.used",),
          how="as given for the chuck")  # fmt: skip
def chuck_kind(chuck: Record) -> Any:
    return chuck["kind"]


@computed(
    "chuck.marking",
    label="speed marking of the chuck",
    kind="choice",
    choices=("marked", "unmarked"),
    needs=("chuck.used",),
    how="as read from the chuck",
)
def marking(chuck: Record) -> str | None:
    said = chuck.get("marked_speed")
    if said is None:
        return None
    return "unmarked" if said == "unmarked" else "marked"


@computed(
    "lathe.heaviest_chuck_mass",
    label="mass of the heaviest chuck of this lathe, about",
    unit="kg",
    rounding="load",
    bound="least",
    needs=("lathe.chucks",),
    tables=("machines/chuck_masses",),
    how="a usual mass for the size of the largest body on the list",
)
def heaviest_chuck_mass(chucks: tuple[Record, ...], masses: Table) -> Limited:
    heaviest = max(chucks, key=lambda chuck: chuck["body"])
    row = masses.within(heaviest["body"], "body_over_mm", "body_upto_mm")
    return Limited(row.number("mass_kg"), str(heaviest["label"]))
