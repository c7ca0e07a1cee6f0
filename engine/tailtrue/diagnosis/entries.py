"""What every entry of what a diagnosis says is filled with, by its name: the.* are words, it.* figures."""

from collections.abc import Mapping

_ESTIMATE = ("it.size", "it.doubt", "it.over")
_SIZE = ("it.size", "it.doubt")
_LIMIT = ("the.limit", "the.allowed", "the.document")
_RANKED = ("the.rank", "the.cause", "the.share")
_MISFIT = ("the.misfit", "the.spare")
_LEFT_OUT = ("the.test", "it.size")

# Of causes: what `plus` and `minus` are filled with.
OF_A_CAUSE = _ESTIMATE
FILLED_WITH: Mapping[str, tuple[str, ...]] = {
    "nothing": (), "unexplained": (), "named": ("the.cause", "the.share"), "also": ("the.cause", "the.share"),
    "cannot_tell": ("the.rivals",), "unsure": (), "might_be": ("the.rivals",),
    "ranked": (*_RANKED, *_MISFIT), "ranked_no_fault": (*_RANKED, *_MISFIT), "ranked_by_repeats": _RANKED, "ranks_read": (),
    "no_spare": (), "good_fit": (), "poor_fit": (),
    "left_out_sweep": _LEFT_OUT, "left_out_indicator": _LEFT_OUT, "left_out_slip": _LEFT_OUT,
    "path_by_axis": ("the.way", *_ESTIMATE), "path_along_axis": ("the.way", *_ESTIMATE), "disagree": ("the.way", *_SIZE),
    "scatter": ("it.size", "it.limit"), "scatter_good": ("it.size", "it.limit"), "shift": ("the.way", *_SIZE),
    "no_sign": ("the.cause", *_ESTIMATE), "no_sign_slope": ("the.cause", *_ESTIMATE),
    "good": _LIMIT, "bad": _LIMIT, "close": _LIMIT,
    "tailstock_good": ("it.limit",), "tailstock_bad": ("it.limit",), "tailstock_close": ("it.limit",),
    "order": (), "leave_in_limits": (), "leave_in_doubt": (), "tailstock_later": ("the.cause",), "tailstock_open": (),
    "tailstock_again": (), "move": ("the.way", *_SIZE), "no_screws": ("the.way", *_SIZE),
    "next": ("the.test", "the.minutes", "the.needs"), "next_none": (), "stick_out": ("the.most",),
    "overhang": ("the.times", "the.most", "it.size"), "spindle": (), "bed_or_headstock": (), "not_seen": ("the.rivals",),
}  # fmt: skip
FIGURES = (
    "named_from", "rival_from", "good_fit_from", "unexplained_below", "most_at_once", "worth_a_test", "told_apart",
    "closure", "tool_side", "over_metric", "over_inch", "overhang_of_centre", "planned_stick_out", "planned_level",
    "wear_reach", "clamp_share", "steepest_level",
)  # fmt: skip
