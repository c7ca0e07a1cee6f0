"""The sample with words of a shop beside a caution and beside a step, as they must be told."""

from dataclasses import replace

from tailtrue.inspection import ShopEntry
from tailtrue.parts import ShopRule, Text
from tailtrue.procedure import Procedure
from tailtrue.shop_sheet import HazardRow, ShopSheet

from .changed import Job, reviewed_anew, step, with_caution, with_step
from .sample import shop
from .sample_sop import sop_of

SIGNED = "RK: as agreed"
_CAUTION, _STEP = "bar-drops", "mount-bar"
SHIPPED = step("4.1").cautions[0].avoid
OURS = ("Stop the spindle, then take the hook.",)


def laid(job: Job, kind: str, name: str, what: str) -> Job:
    """A sheet with one rule of the shop told as it must be."""
    tree, _ = job
    told = ShopRule.model_validate(
        {"kind": kind, "what": what, "name": name, "change": (name,), "reason": "as agreed", "by": "RK"}
    )
    version = f"{tree.title.knowledge_version} + shop 12ab34cd"
    title = tree.title.model_copy(update={"knowledge_version": version})
    tree = tree.model_copy(update={"shop_rules": (told,), "title": title})
    kept = {
        ("caution", _CAUTION): tuple(tuple(piece for piece in line if isinstance(piece, str)) for line in SHIPPED),
        ("step", _STEP): (("Put the bar between the centres.",),),
    }
    entry = ShopEntry(kind, name, "as agreed", "RK")
    changed = (
        tree,
        replace(
            shop(),
            shop_rules=(entry,),
            kept={key: line for key, line in kept.items() if kind == "reword" and key[1] == name},
        ),
    )
    tree, givens = reviewed_anew(changed)
    return tree.model_copy(update={"sop": _standing(tree)}), givens


def _standing(tree: Procedure) -> ShopSheet:
    """The standing procedure of a sheet, with the caution that the shop speaks of among its hazards."""
    made = sop_of(tree)
    told = (one for phase in tree.phases for step in phase.steps for one in step.cautions)
    ours = tuple(
        HazardRow(
            caution=one.id, signal=one.signal, signs=(), hazard=one.hazard, harm=one.harm, avoid=one.avoid[0],
            shop_rule=one.shop_rule,
        )
        for one in told
        if one.shop_rule
    )  # fmt: skip
    return made.model_copy(update={"hazards": (*made.hazards, *ours), "shop_rules": tree.shop_rules})


def caution_said(*avoid: Text, of_shop: int = 1, kind: str = "reword") -> Job:
    """The sample with these lines in the caution at its step 4.1."""
    return laid(with_caution("4.1", avoid=avoid, of_shop=of_shop, shop_rule=SIGNED), kind, _CAUTION, "caution")


def step_said(*text: Text, of_shop: int = 1) -> Job:
    """The sample with these sentences in its step 4.1."""
    return laid(with_step("4.1", text=text, of_shop=of_shop, shop_rule=SIGNED), "reword", _STEP, "step")
