"""Bars that bend, sag, whirl and grow."""

import math
from functools import partial

from laws.law import DOWN, FREE, UP, Axis, Given, Law, on_span, slender
from tailtrue.calc import bar_stock, beams, bending, rotors, soft_centres, thermal

_FORCE: dict[str, Axis] = {"force_n": (0.0, 500.0, UP)}
_BEAM: dict[str, Axis] = {"modulus_mpa": (60000.0, 600000.0, DOWN), "diameter_mm": (5.0, 60.0, DOWN)}
_CENTRES: dict[str, Axis] = {"span_mm": (100.0, 1500.0, UP), "density_kg_m3": (1000.0, 9000.0, UP)}
_LONG: dict[str, Axis] = {"modulus_mpa": (60000, 600000, DOWN), "density_kg_m3": (1000, 9000, UP)}
_ROTOR: dict[str, Axis] = {
    "diameter_mm": (5, 60, UP), "span_mm": (25, 1500, DOWN), "modulus_mpa": (60000, 600000, UP), "density_kg_m3": (1000, 9000, DOWN),
    "mass": (0.01, 5, DOWN),
}  # fmt: skip
_BOW: dict[str, Axis] = {"bow_mm": (0, 5, UP), "gauge_length_mm": (100, 3000, DOWN), "length_mm": (1, 3000, UP)}
_KELVIN = (1e-6, 1.2e-4)


def _stiff(given: Given) -> bool:
    slim = given["span_mm"] / given["diameter_mm"] >= 5
    return slim and given["force_n"] * given["span_mm"] ** 2 < 0.2 * given["modulus_mpa"] * given["diameter_mm"] ** 4


def _second_nearer_the_middle(given: Given) -> bool:
    middle = given["span_mm"] / 2
    return abs(given["second_station_mm"] - middle) <= abs(given["first_station_mm"] - middle)


def _sags_little(given: Given) -> bool:
    thick, span, modulus = given["diameter_mm"], given["span_mm"], given["modulus_mpa"]
    weight_n = 9.81 * (given["mass"] + given["density_kg_m3"] * 1e-9 * math.pi / 4 * thick**2 * span)
    return span >= 5 * thick and weight_n * span**2 < 0.2 * modulus * thick**4


def _bow_in_the_middle(share: float, span_mm: float, **given: float) -> float:
    return bending.bow_from_bending(
        span_mm=span_mm, first_station_mm=share * span_mm, middle_station_mm=span_mm / 2,
        second_station_mm=span_mm - share * span_mm, **given,
    )  # fmt: skip


def _slim_enough(given: Given) -> bool:
    along = given["share_along"] * (1 - given["share_along"])
    fourth_power = (
        128 * given["force_n"] * along**2 * given["span_mm"] ** 3
        / (3 * math.pi * given["modulus_mpa"] * given["share"] * given["tolerance_mm"])
    )  # fmt: skip
    return fourth_power <= (0.199 * given["span_mm"]) ** 4


LAWS: dict[str, Law] = {
    "beams.deflection_midspan": Law(partial(beams.deflection_midspan), _FORCE | {"span_mm": (25, 1500, UP)} | _BEAM,
                                together=lambda g: 5 <= g["span_mm"] / g["diameter_mm"] <= 60
                                and g["force_n"] * g["span_mm"] ** 2 < 0.2 * g["modulus_mpa"] * g["diameter_mm"] ** 4),
    "beams.self_weight_sag": Law(beams.self_weight_sag, _BEAM | _CENTRES, together=lambda g: 5 <= g["span_mm"] / g["diameter_mm"] <= 100),
    "beams.whirl_speed_between_centres": Law(beams.whirl_speed_between_centres,
                                 {"diameter_mm": (5, 60, UP), "span_mm": (25, 1500, DOWN), "modulus_mpa": (60000, 600000, UP),
                                  "density_kg_m3": (1000, 9000, DOWN)}, together=slender(5)),
    "beams.whirl_speed_cantilever": Law(beams.whirl_speed_cantilever,
                               {"diameter_mm": (5, 60, UP), "length_mm": (15, 1500, DOWN), "modulus_mpa": (60000, 600000, UP),
                                "density_kg_m3": (1000, 9000, DOWN)}, together=slender(2.5, "length_mm")),
    "beams.mass_cylinder": Law(beams.mass_cylinder, {"diameter_mm": (1, 500, UP), "length_mm": (0.1, 3000, UP), "density_kg_m3": (500, 20000, UP)}),
    "beams.second_moment": Law(beams.second_moment, {"diameter_mm": (0.1, 300, UP)}),
    "bending.buckling_load": Law(bending.buckling_load, {"diameter_mm": (2, 60, UP), "span_mm": (1, 2000, DOWN),
                                            "modulus_mpa": (60000, 600000, UP), "yield_mpa": (50, 2000, UP)}),
    "soft_centres.centre_give": Law(lambda **g: soft_centres.centre_give(10, 300, 30, 270, **g),
                               {"headstock_n_per_mm": (100, 1e6, DOWN), "tailstock_n_per_mm": (100, 1e6, DOWN)}),
    "rotors.critical_speed_low_side": Law(lambda mass, **g: rotors.critical_speed_low_side(**g, masses_kg=[mass], stations_mm=[g["span_mm"] / 4]),
                              {"diameter_mm": (5, 60, FREE), "span_mm": (25, 1500, DOWN), "modulus_mpa": (60000, 600000, UP),
                               "density_kg_m3": (1000, 9000, DOWN), "mass": (0.01, 5, DOWN),
                               "tailstock_n_per_mm": (1000, 1e6, UP)}, together=slender(5)),
    "rotors.bow_growth": Law(rotors.bow_growth, {"spindle_speed_per_min": (0, 900, UP), "critical_per_min": (1000, 60000, DOWN)},
                                     least=1),
    "thermal.growth_thrust": Law(lambda **g: thermal.growth_thrust(**g).yielding_n,
                                {"span_mm": (10, 2000, FREE), "diameter_mm": (2, 80, UP), "modulus_mpa": (60000, 600000, UP),
                                 "expansion_per_k": (*_KELVIN, UP), "temperature_change_k": (0, 50, UP),
                                 "machine_n_per_mm": (100, 1e6, UP)}),
    "beams.deflection_between_centres": Law(beams.deflection_between_centres,
                                            _FORCE | {"span_mm": (25, 1500, UP), "station_mm": (0, 1500, FREE)} | _BEAM,
                                            together=lambda g: _stiff(g) and g["station_mm"] <= g["span_mm"]),
    "beams.deflection_cantilever": Law(beams.deflection_cantilever, _FORCE | {"length_mm": (15, 600, UP)} | _BEAM,
                                       together=lambda g: g["length_mm"] >= 2.5 * g["diameter_mm"]
                                       and g["force_n"] * g["length_mm"] ** 2 < 0.014 * g["modulus_mpa"] * g["diameter_mm"] ** 4),
    "beams.greatest_deflection_cantilever": Law(beams.greatest_deflection_cantilever, _FORCE | {"length_mm": (15, 600, UP)} | _BEAM,
                                                together=lambda g: g["length_mm"] >= 0.5 * g["diameter_mm"]
                                                and g["force_n"] * g["length_mm"] ** 2 < 0.01 * g["modulus_mpa"] * g["diameter_mm"] ** 4),
    "bending.deflection_anywhere": Law(bending.deflection_anywhere,
                                       _FORCE | {"span_mm": (25, 1500, FREE), "load_station_mm": (0, 1500, FREE), "look_station_mm": (0, 1500, FREE)} | _BEAM,
                                       together=lambda g: _stiff(g) and max(g["load_station_mm"], g["look_station_mm"]) <= g["span_mm"]),
    "bending.sag_with_collars": Law(lambda mass_kg, **g: bending.sag_with_collars(masses_kg=[mass_kg], stations_mm=[g["span_mm"] / 4],
                                                                                  look_station_mm=g["span_mm"] / 2, **g),
                                    _LONG | {"diameter_mm": (10, 60, DOWN), "span_mm": (300, 1000, UP), "mass_kg": (0.001, 2, UP)}),
    "beams.self_weight_stress": Law(beams.self_weight_stress, {"diameter_mm": (5, 60, DOWN), "span_mm": (25, 1500, UP), "density_kg_m3": (1000, 9000, UP)},
                                  together=lambda g: g["span_mm"] >= 5 * g["diameter_mm"]),
    "bending.diameter_error": Law(bending.diameter_error, {"deflection_mm": (0, 1, UP)}),
    "bending.difference_from_bending": Law(bending.difference_from_bending,
                                           _FORCE | {"span_mm": (25, 1500, FREE), "first_station_mm": (0, 1500, FREE), "second_station_mm": (0, 1500, FREE)} | _BEAM,
                                           together=lambda g: _stiff(g) and on_span(g) and _second_nearer_the_middle(g)),
    "bending.bow_from_bending": Law(_bow_in_the_middle, _FORCE | {"span_mm": (25, 1500, UP), "share": (0.01, 0.45, DOWN)} | _BEAM, together=_stiff),
    "bending.largest_force": Law(lambda share_along, **g: bending.largest_force(station_mm=share_along * g["span_mm"], **g),
                                 {"tolerance_mm": (0.001, 0.05, UP), "share": (0.01, 1, UP), "span_mm": (300, 1500, DOWN), "share_along": (0.05, 0.95, FREE),
                                  "modulus_mpa": (60000, 600000, UP), "diameter_mm": (5, 60, UP)}),
    "bending.least_diameter": Law(lambda share_along, **g: bending.least_diameter(station_mm=share_along * g["span_mm"], **g),
                                  {"force_n": (1, 300, UP), "tolerance_mm": (0.005, 0.05, DOWN), "share": (0.1, 1, DOWN), "span_mm": (200, 1500, UP),
                                   "share_along": (0.05, 0.95, FREE), "modulus_mpa": (60000, 600000, DOWN)}, together=_slim_enough),
    "soft_centres.difference_from_centres: soft tailstock": Law(partial(soft_centres.difference_from_centres, headstock_n_per_mm=1e12),
                                                                _FORCE | {"span_mm": (100, 1500, FREE), "first_station_mm": (0, 1500, DOWN),
                                                                          "second_station_mm": (0, 1500, UP), "tailstock_n_per_mm": (1000, 1e6, DOWN)},
                                                                together=on_span),
    "soft_centres.difference_from_centres: soft headstock": Law(lambda **g: -soft_centres.difference_from_centres(tailstock_n_per_mm=1e12, **g),
                                                                _FORCE | {"span_mm": (100, 1500, FREE), "first_station_mm": (0, 1500, DOWN),
                                                                          "second_station_mm": (0, 1500, UP), "headstock_n_per_mm": (1000, 1e6, DOWN)},
                                                                together=on_span),
    "soft_centres.skim_deflection": Law(lambda **g: soft_centres.skim_deflection(**g).at_tailstock_collar_mm,
                                        _FORCE | _BEAM | {"span_mm": (25, 1500, FREE), "first_station_mm": (0, 1500, FREE), "second_station_mm": (0, 1500, FREE),
                                                          "headstock_n_per_mm": (1000, 1e6, DOWN), "tailstock_n_per_mm": (1000, 1e6, DOWN)},
                                        together=lambda g: _stiff(g) and on_span(g)),
    "soft_centres.pull_stiffness": Law(soft_centres.pull_stiffness, {"pull_force_n": (0.1, 500, UP), "give_mm": (0.0001, 1, DOWN)}),
    "soft_centres.pull_correction": Law(soft_centres.pull_correction,
                                        {"cutting_force_n": (0.1, 50, UP), "pull_force_n": (50, 500, DOWN), "headstock_give_mm": (0, 0.01, DOWN),
                                         "tailstock_give_mm": (0.01, 0.1, UP)}),
    "rotors.disc_speed": Law(lambda share_along, **g: rotors.disc_speed(station_mm=share_along * g["span_mm"], **g),
                             {"mass_kg": (0.01, 10, DOWN), "span_mm": (300, 1500, DOWN), "share_along": (0.05, 0.95, FREE), "modulus_mpa": (60000, 600000, UP),
                              "diameter_mm": (10, 60, UP)}),
    "rotors.mass_at_middle": Law(rotors.mass_at_middle, {"mass_kg": (0.01, 10, UP), "span_mm": (200, 1500, DOWN), "station_mm": (0, 100, UP)}),
    "rotors.critical_speed_high_side": Law(lambda mass, **g: rotors.critical_speed_high_side(masses_kg=[mass], stations_mm=[g["span_mm"] / 4], **g),
                                           _ROTOR, together=_sags_little),
    "rotors.critical_speed: rigid centres": Law(lambda mass, **g: rotors.critical_speed(masses_kg=[mass], stations_mm=[g["span_mm"] / 4], **g),
                                                _ROTOR, together=slender(5)),
    # On a centre that gives, a thicker bar is stiffer and heavier, so it may whirl sooner or later.
    "rotors.critical_speed: soft tailstock": Law(lambda mass, **g: rotors.critical_speed(masses_kg=[mass], stations_mm=[g["span_mm"] / 4], **g),
                                                 _ROTOR | {"diameter_mm": (5, 60, FREE), "tailstock_n_per_mm": (1000, 1e6, UP)}, together=slender(5)),
    "rotors.free_length_limit": Law(rotors.free_length_limit, {"diameter_mm": (5, 60, UP), "modulus_mpa": (60000, 600000, UP), "density_kg_m3": (1000, 9000, DOWN),
                                                               "spindle_speed_per_min": (1, 5000, DOWN), "share": (0.1, 0.9, UP)}),
    "thermal.growth": Law(thermal.growth, {"length_mm": (0.1, 2000, UP), "expansion_per_k": (*_KELVIN, UP), "temperature_change_k": (0, 50, UP)}),
    "bar_stock.bow_of_piece: even": Law(lambda **g: bar_stock.bow_of_piece(**g).even_mm, _BOW, together=lambda g: g["length_mm"] <= g["gauge_length_mm"]),
    "bar_stock.bow_of_piece: kink": Law(lambda **g: bar_stock.bow_of_piece(**g).kink_mm, _BOW, together=lambda g: g["length_mm"] <= g["gauge_length_mm"]),
}  # fmt: skip
