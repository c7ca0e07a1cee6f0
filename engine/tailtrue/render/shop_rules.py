"""The list of rules that a shop laid over the shipped ones, as cells of a table in Markdown."""

from collections.abc import Iterable, Iterator

from tailtrue.parts import Dials, ShopRule
from tailtrue.render.plain import bold, literal
from tailtrue.render.words import SHOP_KINDS, say


def shop_rule_cells(rules: Iterable[ShopRule], dials: Dials) -> Iterator[tuple[str, ...]]:
    """What each rule changes, to what, why, and who answers for it."""
    for rule in rules:
        yield (
            bold(f"{rule.what} {SHOP_KINDS[rule.kind]}"),
            literal(say(rule.change, dials)),
            literal(rule.reason),
            literal(", ".join(filter(None, (rule.by, rule.dated)))),
        )
