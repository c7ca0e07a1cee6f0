"""The list of rules that a shop laid over the shipped ones."""

from collections.abc import Mapping

from tailtrue.assemble.filling import Filler, figure
from tailtrue.facts import FactSpec
from tailtrue.parts import ShopRule, Text
from tailtrue.store.knowledge import ShopChange

SHIPPED, DRAWN = "as_shipped", "as_drawn"


def shop_rules(filler: Filler) -> tuple[ShopRule, ...]:
    """Every change of the shop, in the order of cautions, limits and the rest as they were laid."""
    knowledge = filler.case.knowledge
    return tuple(
        ShopRule(
            kind=one.kind,
            what=one.what,
            name=one.name,
            change=_change(one, knowledge.catalogue),
            reason=one.reason,
            by=one.by,
            dated=one.date,
        )
        for one in knowledge.shop.changes
    )


def _change(one: ShopChange, catalogue: Mapping[str, FactSpec]) -> Text:
    if one.shipped is None or one.drawn is None:
        return (one.label,)
    spec = catalogue[one.name]
    # A value that another file undercuts is not the limit, and has a name of its own.
    name = one.name if one.binds else f"{one.name}.{DRAWN}"
    end = "." if one.binds else "; another rule of the shop is stricter."
    shipped = figure(spec, f"{one.name}.{SHIPPED}", one.shipped)
    return (f"{one.label}: ", figure(spec, name, one.drawn), " here, ", shipped, f" as shipped{end}")
