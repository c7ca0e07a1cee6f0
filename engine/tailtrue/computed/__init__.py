"""Computed facts: how each figure of a job follows from what was said and from the tables.

Every module here joins the pure formulas of `tailtrue.calc` to named facts. No number of the trade stands here: what
could be disputed is a row of a table or a limit in the knowledge.
"""

import importlib

_ROOMS = (
    "machine",
    "bar",
    "bar_piece",
    "bar_held",
    "centre_hole",
    "collar_metal",
    "collar_source",
    "collar",
    "sizes",
    "chucks",
    "chuck_used",
    "blank",
    "founding",
    "measuring",
    "slowest",
    "speeds",
    "hole",
    "bore",
    "bore_cuts",
    "boring_bar",
    "bore_gauges",
    "fine_feed",
    "joint",
    "joint_slip",
    "joint_screws",
    "joint_screws_near",
    "joint_pins",
    "joint_grip",
    "joint_clamp",
    "joint_ways",
    "joint_width",
    "grinder",
    "learner",
    "holding",
    "soft_point",
    "bar_chuck",
    "bench",
    "blank_collet",
    "skim",
    "skim_cut",
    "alignment",
    "truing",
    "visit",
    "visit_rounds",
    "middle_collar",
    "third_collar",
    "clamp_test",
    "reverse_test",
    "lookup",
    "setover",
    "times",
    "faceplate",
    "slug",
    "material",
    "taper_work",
    "chucked",
    "wider",
    "height",
    "on_hand",
    "rework",
    "rework_chuck",
    "rework_tight",
    "shop_rules",
    "record_tables",
)


def load() -> None:
    """Import every room, which registers its facts."""
    for room in _ROOMS:
        importlib.import_module(f"tailtrue.computed.{room}")
