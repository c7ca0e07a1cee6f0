"""Laws that formulas obey over the whole range in which they hold, and the formulas for which there is none, with the reason.

A law is named after its formula; where a formula has several, what each is about follows behind a colon.
"""

from laws import aligning, bars, drilling, holding, joining, layout, measuring, turning
from laws.law import Law

LAWS: dict[str, Law] = {
    **turning.LAWS, **drilling.LAWS, **bars.LAWS, **holding.LAWS, **joining.LAWS, **aligning.LAWS, **measuring.LAWS,
    **layout.LAWS,
}  # fmt: skip

_ROW_OF_FACTORS = "a row of factors for the estimation, no size; test_simulated_alignment.py holds each against the lathe"
_WORD = "answers with a word"
_PLACES = "answers with places in a row"
_DRILLS = "answers with drills of a list; test_drill_ladder.py holds every one of them"

WITHOUT_A_LAW: dict[str, str] = {
    "causes.chucked_row": _ROW_OF_FACTORS,
    "causes.between_centres_row": _ROW_OF_FACTORS,
    "causes.level_row": _ROW_OF_FACTORS,
    "causes.sweep_row": _ROW_OF_FACTORS,
    "causes.sweep_height_row": _ROW_OF_FACTORS,
    "causes.chucked_traverse_row": _ROW_OF_FACTORS,
    "causes.traverse_row": _ROW_OF_FACTORS,
    "causes.riding_the_bed": _ROW_OF_FACTORS,
    "causes.wear_term": _ROW_OF_FACTORS,
    "causes.bed_bow_term": _ROW_OF_FACTORS,
    "causes.tool_height_term": _ROW_OF_FACTORS,
    "control_chart.points_beyond": _PLACES,
    "control_chart.runs_on_one_side": _PLACES,
    "drill_ladder.pilot_choices": _DRILLS,
    "drill_ladder.drill_steps": _DRILLS,
    "drilling.tool_maker_holds": "answers yes or no for a feed: yes in the middle, no on both sides",
    "lifting.lift_verdict": _WORD,
    "readings.order_bias": "asks for a row of letters, which has no more and no less",
    "rework.landing_divisions": "a count, or none where no count fits; test_rework_bounds.py tries every window",
    "rework.shared_divisions": "a row of counts; test_rework_bounds.py holds sum and evenness",
    "sides.sign_of_side": "asks for a word",
    "straps.even_straps": "a count that divides another; test_straps.py holds it against the sum of its places",
    "work_holding.overhang_verdict": _WORD,
}
