"""Sheets that judge one collar by the sizes of the other, turn down what they call good, or list what is not to be had."""

from collections.abc import Callable

from shops import EXAMPLES
from tailtrue.parts import Check, Limits
from tailtrue.procedure import Cut, Need, Step

from .broken import breaks
from .changed import Job, on_step, place_of, sheet_of, step, with_sheet, with_step
from .sample import procedure


def _made(name: str) -> Job:
    return sheet_of(EXAMPLES / f"{name}.toml")


def _checks(job: Job, wanted: str, change: Callable[[tuple[Check, ...]], tuple[Check, ...]]) -> Job:
    return on_step(job, wanted, lambda one: one.model_copy(update={"checks": change(one.checks)}))


def _named(check: Check, word: str) -> bool:
    return word in "".join(piece for piece in check.text if isinstance(piece, str))


def _written(check: Check, each: tuple[str, ...]) -> Check:
    return check.model_copy(update={"blanks": tuple(one.model_copy(update={"each": each}) for one in check.blanks)})


_MEASURED, _UNMEASURED = "fernhill/job", "quarry-road/job"


@breaks("V650", place_of(_made(_UNMEASURED), "measure-bar"))
def one_pair_of_sizes_for_two_seats() -> Job:
    return _checks(_made(_UNMEASURED), "measure-bar", lambda all_of: tuple(_written(one, ()) for one in all_of))


@breaks("V650", place_of(_made(_MEASURED), "spacer-out"))
def initials_for_one_collar_alone() -> Job:
    return _checks(_made(_MEASURED), "spacer-out", lambda all_of: tuple(_written(one, ("collar 1",)) for one in all_of))


@breaks("V651", place_of(_made(_MEASURED), "take-collar-off"), also="V652")
def second_collar_without_a_band() -> Job:
    return _checks(
        _made(_MEASURED), "take-collar-off", lambda all_of: tuple(one for one in all_of if _named(one, "collar 1"))
    )


@breaks("V652", place_of(_made(_MEASURED), "gauge-bore"), also="V442")
def tight_bore_called_good_and_turned_down() -> Job:
    bored = {"collar 1": "bore.head_low", "collar 2": "bore.tail_low"}
    tree, shop = _made(_MEASURED)
    told = {figure.fact: figure for phase in tree.phases for one in phase.steps for line in one.settings
            for figure in line.value if not isinstance(figure, str)}  # fmt: skip

    def turned_down(checks: tuple[Check, ...]) -> tuple[Check, ...]:
        return tuple(
            one.model_copy(update={"limits": one.limits.model_copy(update={"low": told[fact]})})
            for one, fact in zip(checks, bored.values(), strict=True)
            if one.limits is not None
        )

    job = _checks((tree, shop), "gauge-bore", turned_down)
    return _checks(job, "take-collar-off", turned_down)


@breaks("V652", place_of(_made(_MEASURED), "take-collar-off"), also="V232 V276 V381")
def scrapped_out_of_the_chuck_for_what_was_good_in_it() -> Job:
    def narrower(checks: tuple[Check, ...]) -> tuple[Check, ...]:
        def of(limits: Limits | None) -> Limits | None:
            assert limits is not None
            assert limits.high is not None
            high = limits.high
            return limits.model_copy(update={"high": high.model_copy(update={"value": high.value - 0.01})})

        return tuple(one.model_copy(update={"limits": of(one.limits)}) for one in checks)

    return _checks(_made(_MEASURED), "take-collar-off", narrower)


@breaks("V652", place_of(_made(_UNMEASURED), "take-collar-off"))
def tight_bore_of_an_unmeasured_bar_scrapped() -> Job:
    plain = ("Bore out of the chuck, within the two sizes you wrote down for it.",)
    return _checks(
        _made(_UNMEASURED), "take-collar-off", lambda all_of: tuple(one.model_copy(update={"text": plain}) for one in all_of)
    )


@breaks("V653", "need finished-bar", also="V15")
def bar_laid_ready_that_is_made_here() -> Job:
    tree, shop = _made(_MEASURED)
    bar = Need(id="finished-bar", kind="stock", name=("the test bar",), in_shop=True, used_at=("7.5",))
    return tree.model_copy(update={"needs": (*tree.needs, bar)}), shop


@breaks("V654", "cut list, collar blank")
def more_to_buy_than_the_stock_that_is_taken() -> Job:
    tree, shop = _made(_UNMEASURED)

    def short(cut: Cut) -> Cut:
        size = tuple(piece for piece in cut.size if isinstance(piece, str) or piece.fact != "collar.stock_length")
        assert cut.piece != "collar blank" or size != cut.size
        return cut.model_copy(update={"size": size})

    return tree.model_copy(update={"cut_list": tuple(map(short, tree.cut_list))}), shop


@breaks("V655", place_of(_made(_MEASURED), "measure-bar"))
def scriber_for_a_seat_that_is_bonded() -> Job:
    tree, shop = _made(_MEASURED)
    needs = tuple(
        one.model_copy(update={"name": ("marker or scriber",)}) if one.id == "marker" else one for one in tree.needs
    )  # fmt: skip
    return tree.model_copy(update={"needs": needs}), shop


@breaks("V656", place_of(_made(_MEASURED), "saw-blanks"), also="V15 V349")
def out_of_round_bounded_and_nothing_reads_it() -> Job:
    def bare(one: Step) -> Step:
        return one.model_copy(update={"tools": tuple(tool for tool in one.tools if tool != "caliper-work")})

    return on_step(_made(_MEASURED), "saw-blanks", bare)


@breaks("V656", place_of(_made(_MEASURED), "saw-blanks"))
def out_of_round_bounded_and_not_written_down() -> Job:
    def width(checks: tuple[Check, ...]) -> tuple[Check, ...]:
        return tuple(one.model_copy(update={"blanks": one.blanks[:1]}) for one in checks)

    return _checks(_made(_MEASURED), "saw-blanks", width)


@breaks("V657", "step 2.1, caution short-grip", also="V15 V61")
def hacksaw_with_a_blade_that_runs() -> Job:
    said = step("2.1").cautions[0].model_copy(update={"harm": "The blade snatches it and pulls fingers in"})
    saw = Need(id="saw", kind="tool", name=("hacksaw for metal",), in_shop=True, used_at=("2.1",))
    changed = with_step("2.1", cautions=(said, *step("2.1").cautions[1:]))
    return changed[0].model_copy(update={"needs": (*changed[0].needs, saw)}), changed[1]


@breaks("V658", "front")
def emergency_list_looked_for_below() -> Job:
    return with_sheet(do_not_start=(*procedure().do_not_start, ("A place of the emergency list below is empty.",)))


@breaks("V621", "step 4.4")
def boxes_for_more_pieces_than_a_phase_names() -> Job:
    return with_step("4.4", boxes=("one", "two", "three"))
