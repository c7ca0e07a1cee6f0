"""Sheets with numbers set by hand, and with rules of a shop, that are not told, not marked, or go too far."""

from dataclasses import replace

from tailtrue.inspection import HandSetting, ShopEntry
from tailtrue.parts import ShopRule
from tailtrue.procedure import HandSet

from .broken import breaks
from .changed import Job, figure_of, with_sheet, with_step
from .sample import procedure, shop
from .sample_pieces import figure
from .sample_sop import sop_of

_SPEED = figure("skim.speed", 500.0, "1/min", "speed")
_SLOWEST = figure("lathe.slowest", 200.0, "1/min", "speed")
_SAID = {"skim.speed": HandSetting(500.0, "RK", "lower", ("lathe.slowest",))}
_LINE = HandSet(
    label="spindle speed",
    value=figure_of(_SPEED, set_by="RK"),
    worked_out=figure("skim.speed.worked_out", 500.0, "1/min", "speed"),
    safe="lower",
    at_least=(_SLOWEST,),
    reason="the belt slips",
    initials="RK",
)
_ADDED = ShopEntry("tighten", "limit.blank_speed", "worn jaws", "RK")
_TOLD = ShopRule(kind="tighten", what="limit", name="limit.blank_speed", change=("slower",), reason="worn jaws", by="RK")


def _with_marks(job: Job, mark: str | None) -> Job:
    """Every print of the speed of the skim with a mark, and all that is printed derived."""
    changed, givens = job
    text = changed.model_dump_json()
    bare = _SPEED.model_dump_json()
    text = text.replace(bare, figure_of(_SPEED, set_by=mark).model_dump_json())
    return type(changed).model_validate_json(text), givens


def _derived(job: Job) -> Job:
    changed, givens = job
    first = changed.derivations[0]
    known = {one.fact for one in changed.derivations}
    more = [
        name for name in ("skim.speed.worked_out", "lathe.slowest", "limit.blank_speed", "limit.new") if name not in known
    ]
    derivations = (*changed.derivations, *(first.model_copy(update={"fact": name}) for name in more))
    changed = changed.model_copy(update={"derivations": derivations})
    return changed.model_copy(update={"sop": sop_of(changed)}), givens


def _by_hand(line: HandSet | None = _LINE, mark: str | None = "RK", said: dict[str, HandSetting] | None = None) -> Job:
    """The sample with its skim speed set by hand."""
    lines = () if line is None else (line,)
    changed = procedure().model_copy(update={"set_by_hand": lines})
    job = (changed, replace(shop(), by_hand=_SAID if said is None else said))
    return _derived(_with_marks(job, mark))


def _line(**changes: object) -> HandSet:
    return _LINE.model_copy(update=changes)


def _shop_ruled(*told: ShopRule, laid: tuple[ShopEntry, ...] = (_ADDED,), version: str = " + shop 12ab34cd") -> Job:
    """The sample with a rule of the shop."""
    title = procedure().title
    title = title.model_copy(update={"knowledge_version": f"{title.knowledge_version}{version}"})
    changed = procedure().model_copy(update={"shop_rules": told, "title": title})
    return _derived((changed, replace(shop(), shop_rules=laid)))


def _with_limit(value: float, limits: dict[str, tuple[float, str]], name: str = "limit.blank_speed") -> Job:
    """The sample with a limit told in the list of the shop's rules."""
    limit = figure(name, value, "1/min", "speed")
    changed, givens = _shop_ruled(_TOLD.model_copy(update={"change": ("now ", limit)}))
    return changed, replace(givens, limits=limits)


@breaks("V150", "step 4.3")
def number_set_by_hand_without_its_mark() -> Job:
    return _by_hand(mark=None)


@breaks("V150", "step 4.3")
def number_marked_with_other_initials() -> Job:
    return _by_hand(mark="AB")


@breaks("V150", "set by hand")
def number_in_the_table_that_is_not_the_one_said() -> Job:
    return _by_hand(_line(value=figure_of(_LINE.value, value=450.0)))


@breaks("V150", "step 4.3")
def number_marked_that_nobody_set() -> Job:
    return _by_hand(line=None, said={})


@breaks("V151", "numbers set by hand")
def number_set_by_hand_and_left_out_of_the_table() -> Job:
    return _by_hand(line=None)


@breaks("V151", "numbers set by hand")
def number_set_by_hand_told_twice() -> Job:
    changed, givens = _by_hand()
    return changed.model_copy(update={"set_by_hand": (_LINE, _LINE)}), givens


@breaks("V151", "numbers set by hand", also="V34")
def number_set_by_hand_without_a_reason() -> Job:
    return _by_hand(_line(reason=" "))


@breaks("V151", "numbers set by hand", also="V150")
def number_in_the_table_that_nobody_set() -> Job:
    return _by_hand(said={})


@breaks("V152", "numbers set by hand")
def number_beyond_what_is_worked_out() -> Job:
    return _by_hand(_line(worked_out=figure_of(_LINE.worked_out, value=450.0)))


@breaks("V152", "numbers set by hand")
def number_beyond_its_bound() -> Job:
    return _by_hand(_line(at_least=(figure_of(_SLOWEST, value=510.0),)))


@breaks("V152", "numbers set by hand")
def safe_side_turned_round() -> Job:
    return _by_hand(_line(safe="higher"))


@breaks("V152", "numbers set by hand")
def bound_left_out() -> Job:
    return _by_hand(_line(at_least=()))


@breaks("V152", "numbers set by hand", also="V66")
def number_held_against_no_number() -> Job:
    changed, givens = _by_hand()
    line = _line(worked_out=figure_of(_LINE.worked_out, value=float("nan")))
    return changed.model_copy(update={"set_by_hand": (line,)}), givens


@breaks("V152", "lead")
def bound_that_is_another_number_elsewhere() -> Job:
    changed, givens = _by_hand()
    lead = (*changed.lead, figure_of(_SLOWEST, value=250.0))
    return changed.model_copy(update={"lead": lead}), givens


@breaks("V153", "rules of this shop")
def rule_of_the_shop_not_told() -> Job:
    return _shop_ruled()


@breaks("V153", "rules of this shop")
def rule_told_that_no_file_holds() -> Job:
    return _shop_ruled(_TOLD, _TOLD)


@breaks("V153", "rules of this shop")
def rule_told_with_another_reason() -> Job:
    return _shop_ruled(_TOLD.model_copy(update={"reason": "just so"}))


@breaks("V153", "title block")
def version_that_hides_the_shop() -> Job:
    return _shop_ruled(_TOLD, version="")


@breaks("V154", "step 4.3")
def reworded_step_without_its_mark() -> Job:
    entry = ShopEntry("reword", "skim-collars", "said simpler", "RK")
    return _shop_ruled(
        _TOLD.model_copy(update={"kind": "reword", "name": "skim-collars", "reason": "said simpler"}), laid=(entry,)
    )


@breaks("V154", "step 4.3")
def shipped_step_called_a_rule_of_the_shop() -> Job:
    return with_step("4.3", shop_rule="RK: said simpler")


def _paper_of_the_shop(**changes: object) -> Job:
    """The sample with a rule of the shop and its standing procedure, changed in one thing."""
    changed, givens = _shop_ruled(_TOLD)
    sop = sop_of(changed).model_copy(update={"shop_rules": (_TOLD,), **changes})
    return changed.model_copy(update={"sop": sop}), givens


@breaks("V153", "standing procedure")
def standing_procedure_without_the_rules_of_the_shop() -> Job:
    return _paper_of_the_shop(shop_rules=())


@breaks("V153", "standing procedure")
def standing_procedure_with_another_reason_for_a_rule() -> Job:
    return _paper_of_the_shop(shop_rules=(_TOLD.model_copy(update={"reason": "just so"}),))


@breaks("V154", "standing procedure")
def shipped_hazard_called_a_rule_of_the_shop_in_the_standing_procedure() -> Job:
    first, *others = sop_of(procedure()).hazards
    return with_sheet(
        sop=sop_of(procedure()).model_copy(
            update={"hazards": (first.model_copy(update={"shop_rule": "RK: said so"}), *others)}
        )
    )


@breaks("V154", "safety review")
def shipped_hazard_called_a_rule_of_the_shop_in_the_review() -> Job:
    reviewed = procedure().safety_review
    first, *others = reviewed.hazards
    marked = (first.model_copy(update={"shop_rule": "RK: said so"}), *others)
    return with_sheet(safety_review=reviewed.model_copy(update={"hazards": marked}))


@breaks("V155", "step 4.3, caution slide-moved")
def shipped_caution_made_a_notice() -> Job:
    return procedure(), replace(shop(), signals={"slide-moved": "caution", "abrasive-cloth": "danger"})


@breaks("V156", "shop rules")
def limit_wider_than_shipped() -> Job:
    return _with_limit(1200.0, {"limit.blank_speed": (1000.0, "lower")})


@breaks("V156", "shop rules")
def limit_lower_than_shipped_that_may_only_rise() -> Job:
    return _with_limit(900.0, {"limit.blank_speed": (1000.0, "higher")})


@breaks("V156", "shop rules")
def limit_that_is_not_shipped() -> Job:
    return _with_limit(900.0, {}, "limit.new")
