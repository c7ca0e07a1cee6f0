"""Measuring."""

import math
from collections.abc import Callable
from functools import partial

from laws.law import DOWN, FREE, UP, Axis, Law
from tailtrue.calc import (
    adequacy,
    budget,
    conformity,
    control_chart,
    difference_budget,
    doubts,
    fresh_skims,
    readings,
    student,
    trend,
    uncertainty,
)

_COMPONENT: dict[str, Axis] = {"unsure_mm": (0, 0.1, UP), "sensitivity": (0, 5, UP), "freedom": (1, 200, FREE)}
_KELVIN = (1e-6, 1.2e-4)

_SKIM = difference_budget.difference_parts(0.0015, 2, 0.002, 0.002, 0.001, 0.000826, 0.001, 0.001)


def _two(unsure_mm: float, sensitivity: float, freedom: float = math.inf) -> list[budget.Component]:
    return [budget.Component("one", unsure_mm, sensitivity, freedom), budget.Component("other", 0.001)]


def _yes(verdict: Callable[..., bool]) -> Callable[..., float]:
    return lambda **given: float(verdict(**given))


def _said(verdict: Callable[..., str], word: str) -> Callable[..., float]:
    return lambda **given: float(verdict(**given) == word)


LAWS: dict[str, Law] = {
    "difference_budget.temperature_uncertainty": Law(difference_budget.temperature_uncertainty,
                             {"length_mm": (1, 300, UP), "expansion_per_k": (*_KELVIN, UP), "expansion_unsure_per_k": (0, 1e-5, UP),
                              "temperature_change_k": (0, 50, UP), "unsure_change_k": (0, 5, UP)}),
    "difference_budget.move_uncertainty": Law(partial(difference_budget.move_uncertainty, 0.02, 300, 30, 270),
                                   {"difference_unsure_mm": (0, 0.1, UP), "span_unsure_mm": (0, 12, UP),
                                    "first_unsure_mm": (0, 12, UP), "second_unsure_mm": (0, 12, UP)}),
    "uncertainty.expanded": Law(uncertainty.expanded, {"standard_uncertainty_mm": (0, 1, UP), "coverage": (0.1, 20, UP)}),
    "student.two_sided_factor": Law(student.two_sided_factor, {"probability": (0.5, 0.9999, UP), "degrees_of_freedom": (1, 1e6, DOWN)}),
    "conformity.acceptance_limit": Law(conformity.acceptance_limit, {"limit_mm": (0.001, 1, UP), "standard_uncertainty_mm": (0, 0.5, DOWN),
                                                          "coverage": (0.1, 5, DOWN)},
                            together=lambda g: g["coverage"] * g["standard_uncertainty_mm"] <= g["limit_mm"]),
    "conformity.conformity_probability": Law(conformity.conformity_probability,
                                          {"difference_mm": (0, 0.1, DOWN), "standard_uncertainty_mm": (0, 0.1, FREE),
                                           "limit_mm": (0.001, 0.1, UP), "degrees_of_freedom": (1, 200, FREE)}),
    "conformity.pass_rate": Law(conformity.pass_rate, {"true_difference_mm": (0, 0.1, DOWN), "standard_uncertainty_mm": (0, 0.1, FREE),
                                               "limit_mm": (0.001, 0.1, UP), "coverage": (0.1, 5, DOWN)}),
    "adequacy.readings_for_target": Law(partial(adequacy.readings_for_target, most_readings=10**9),
                                 {"target_mm": (0.001, 0.1, DOWN), "repeatability_mm": (0, 0.02, UP), "other_mm": (0, 0.1, UP)},
                                 least=1, together=lambda g: g["target_mm"] > 1.001 * g["other_mm"]),
    "control_chart.individuals_chart": Law(lambda step: control_chart.individuals_chart([0, step, 0, step]).upper, {"step": (0, 1, UP)}),
    "adequacy.adequate": Law(_yes(adequacy.adequate), {"expanded_mm": (0, 0.1, DOWN), "limit_mm": (0.001, 0.1, UP), "share": (0.01, 1, UP)}, most=1),
    "adequacy.resolution_adequate": Law(_yes(adequacy.resolution_adequate), {"resolution_mm": (0.0001, 0.1, DOWN), "limit_mm": (0.001, 0.1, UP), "share": (0.01, 1, UP)}, most=1),
    "adequacy.readings_to_settle": Law(partial(adequacy.readings_to_settle, most_readings=100, coverage=2),
                                       {"difference_mm": (-0.1, 0.1, FREE), "limit_mm": (0.001, 0.1, FREE), "repeatability_mm": (0, 0.02, FREE), "other_mm": (0, 0.05, FREE)},
                                       most=100),
    "budget.standard_uncertainty: bounds": Law(partial(budget.standard_uncertainty, shape="rectangular"), {"half_width_mm": (0, 1, UP)}),
    "budget.standard_uncertainty: normal": Law(partial(budget.standard_uncertainty, shape="normal"), {"half_width_mm": (0, 1, UP), "coverage": (0.1, 10, DOWN)}),
    "budget.carried_uncertainty": Law(budget.carried_uncertainty, {"unsure_mm": (0, 0.1, UP), "sensitivity": (0, 5, UP)}),
    "doubts.both_together": Law(doubts.both_together, {"first_mm": (0, 0.1, UP), "second_mm": (0, 0.1, UP)}),
    "doubts.all_together": Law(lambda **parts: doubts.all_together([*parts.values()]), {"form_mm": (0, 0.1, UP), "wear_mm": (0, 0.1, UP)}),
    "fresh_skims.reading_difference": Law(partial(fresh_skims.reading_difference, side="away"), {"difference_mm": (-1, 1, UP)}, least=-math.inf),
    "fresh_skims.difference_from_readings": Law(partial(fresh_skims.difference_from_readings, side="away"),
                                                {"headstock_mm": (-1, 1, DOWN), "tailstock_mm": (-1, 1, UP)}, least=-math.inf),
    "fresh_skims.height_effect": Law(fresh_skims.height_effect, {"off_centre_mm": (0, 5, UP), "height_difference_mm": (0, 1, UP), "diameter_mm": (20, 300, DOWN)}),
    "fresh_skims.skims_uncertainty": Law(lambda **g: fresh_skims.skims_uncertainty(_SKIM, **g), {"guidance_mm": (0, 0.1, UP), "height_mm": (0, 0.1, UP)}),
    "fresh_skims.guidance_parts": Law(lambda **g: fresh_skims.guidance_parts(**g)[0], {"guidance_mm": (0, 0.1, UP), "height_mm": (0, 0.1, FREE)}),
    "doubts.of_one_collar": Law(doubts.of_one_collar, {"difference_unsure_mm": (0, 0.1, UP)}),
    "doubts.as_read_once": Law(lambda deviation_mm, first, second: doubts.as_read_once(deviation_mm, round(first), round(second)),
                               {"deviation_mm": (0, 0.1, UP), "first": (1, 20, DOWN), "second": (1, 20, DOWN)}),
    "doubts.without_scatter": Law(lambda first, second, **g: doubts.without_scatter(first_readings=round(first), second_readings=round(second), **g),
                                  {"standard_mm": (0, 0.1, UP), "deviation_mm": (0, 0.1, DOWN), "first": (1, 20, UP), "second": (1, 20, UP)}),
    "readings.drift_over": Law(lambda slope_mm, count: readings.drift_over(slope_mm, round(count)), {"slope_mm": (0, 0.01, UP), "count": (1, 30, UP)}),
    "budget.doubt_freedom": Law(budget.doubt_freedom, {"relative_doubt": (0.001, 0.7, DOWN)}, least=1),
    "budget.combined_uncertainty": Law(lambda **g: budget.combined_uncertainty(_two(**g)), _COMPONENT),
    "budget.shares": Law(lambda **g: budget.shares(_two(**g))[0], _COMPONENT, most=1),
    "budget.effective_freedom": Law(lambda **g: budget.effective_freedom(_two(**g)), {"unsure_mm": (0.0001, 0.1, FREE), "sensitivity": (0.1, 5, FREE), "freedom": (1, 200, UP)}, least=1),
    "budget.expanded_uncertainty": Law(lambda probability, **g: budget.expanded_uncertainty(_two(**g), probability).expanded_mm,
                                       {"unsure_mm": (0, 0.1, UP), "sensitivity": (0, 5, UP), "probability": (0.5, 0.9999, UP)}),
    "difference_budget.difference_parts": Law(lambda repeatability_mm, readings, **g: difference_budget.difference_parts(
                                                  repeatability_mm, round(readings), 0.001, 0.001, 0.001, 0.001, 0.001, 0.001, **g).repeatability_mm,
                                              {"repeatability_mm": (0, 0.02, UP), "readings": (1, 20, DOWN)}),
    "difference_budget.correlated_difference": Law(difference_budget.correlated_difference,
                                                   {"headstock_mm": (0, 0.1, FREE), "tailstock_mm": (0, 0.1, FREE), "correlation": (-1, 1, DOWN)}),
    "difference_budget.two_instruments": Law(difference_budget.two_instruments,
                                             {"one_instrument_mm": (0, 0.1, UP), "first_limit_mm": (0, 0.1, UP), "second_limit_mm": (0, 0.1, UP)}),
    "uncertainty.difference_uncertainty": Law(lambda readings, **g: uncertainty.difference_uncertainty(readings=round(readings), **g),
                                              {"repeatability_mm": (0, 0.02, UP), "readings": (1, 20, DOWN), "resolution_mm": (0, 0.02, UP),
                                               "local_error_mm": (0, 0.02, UP), "form_mm": (0, 0.02, UP), "temperature_mm": (0, 0.02, UP), "wear_mm": (0, 0.02, UP),
                                               "deflection_mm": (0, 0.02, UP)}),
    # Adding uncertainty never turns what was too close to say into a pass, nor into a fail.
    "uncertainty.verdict: inside": Law(_said(uncertainty.verdict, "inside"), {"difference_mm": (0, 0.1, DOWN), "expanded_mm": (0, 0.1, DOWN), "limit_mm": (0.001, 0.1, UP)}, most=1),
    "uncertainty.verdict: outside": Law(_said(uncertainty.verdict, "outside"), {"difference_mm": (0, 0.1, UP), "expanded_mm": (0, 0.1, DOWN), "limit_mm": (0.001, 0.1, DOWN)}, most=1),
    "conformity.verdict_at_probability: inside": Law(_said(conformity.verdict_at_probability, "inside"),
                                                     {"difference_mm": (0, 0.1, DOWN), "standard_uncertainty_mm": (0, 0.1, DOWN), "limit_mm": (0.001, 0.1, UP),
                                                      "probability": (0.9, 0.9999, DOWN)}, most=1),
    "conformity.verdict_at_probability: outside": Law(_said(conformity.verdict_at_probability, "outside"),
                                                      {"difference_mm": (0, 0.1, UP), "standard_uncertainty_mm": (0, 0.1, DOWN), "limit_mm": (0.001, 0.1, DOWN),
                                                       "probability": (0.9, 0.9999, DOWN)}, most=1),
    "conformity.worth_moving": Law(_yes(conformity.worth_moving), {"move_mm": (0, 1, UP), "expanded_mm": (0, 1, DOWN)}, most=1),
    "conformity.methods_agree": Law(_yes(partial(conformity.methods_agree, second_mm=0)),
                                    {"first_mm": (0, 1, DOWN), "first_expanded_mm": (0, 1, UP), "second_expanded_mm": (0, 1, UP)}, most=1),
    "conformity.rejection_limit": Law(conformity.rejection_limit, {"limit_mm": (0.001, 1, UP), "standard_uncertainty_mm": (0, 0.5, UP), "coverage": (0.1, 5, UP)}),
    "student.one_sided_factor": Law(student.one_sided_factor, {"probability": (0.5, 0.9999, UP), "degrees_of_freedom": (1, 1e6, DOWN)}),
    "student.probability_below": Law(student.probability_below, {"value": (-50, 50, UP), "degrees_of_freedom": (1, 1e6, FREE)}, most=1),
    "readings.reading_summary: mean": Law(lambda reading_mm: readings.reading_summary([0, reading_mm]).mean_mm, {"reading_mm": (-1, 1, UP)}, least=-math.inf),
    "readings.reading_summary: scatter": Law(lambda apart_mm: readings.reading_summary([0, apart_mm, 0]).standard_deviation_mm, {"apart_mm": (0, 1, UP)}),
    "readings.pooled_deviation": Law(lambda apart_mm: readings.pooled_deviation([[0, apart_mm], [5, 5.001]]).standard_deviation_mm, {"apart_mm": (0, 1, UP)}),
    "readings.repeatability": Law(lambda apart_mm, known_mm: readings.repeatability([[0, apart_mm], [5]], known_mm).standard_deviation_mm,
                                  {"apart_mm": (0, 1, UP), "known_mm": (0.0001, 1, UP)}),
    "readings.difference_from_order": Law(lambda head_mm, tail_mm: readings.difference_from_order([head_mm, tail_mm, tail_mm, head_mm], "HTTH").difference_mm,
                                          {"head_mm": (-1, 1, DOWN), "tail_mm": (-1, 1, UP)}, least=-math.inf),
    "readings.drift_per_step": Law(lambda drift_mm: readings.drift_per_step([0, 1 + drift_mm, 1 + 2 * drift_mm, 3 * drift_mm], "HTTH", probability=0.95).slope_mm,
                                   {"drift_mm": (-0.1, 0.1, UP)}, least=-math.inf),
    "readings.thread_slip": Law(partial(readings.thread_slip, pitch_mm=0.5, tolerance_mm=0.1), {"difference_mm": (-5, 5, FREE)}, least=-10.5, most=10.5),
    "control_chart.trend_slope": Law(lambda slope_mm: control_chart.trend_slope([0, 1, 2, 3], [0, slope_mm, 2 * slope_mm, 3 * slope_mm], probability=0.95).slope_mm,
                                     {"slope_mm": (-0.1, 0.1, UP)}, least=-math.inf),
    "trend.common_slope": Law(lambda slope_mm: trend.common_slope([[0, 1, 2], [0, 1]], [[0, slope_mm, 2 * slope_mm], [5, 5 + slope_mm]], probability=0.95).slope_mm,
                              {"slope_mm": (-0.1, 0.1, UP)}, least=-math.inf),
}  # fmt: skip
