"""Formulas of drilling with the printed factors of a standard point (Machinery's Handbook, 31st ed., p. 1152)."""

from functools import partial

from tailtrue.calc import drill_demand as demands
from tailtrue.calc import drilling

_THRUST = {"thrust_factor": 1.355, "chisel_thrust_factor": 0.03}

thrust_shaw_oxford = partial(drilling.thrust_shaw_oxford, chisel_ratio=0.18, **_THRUST)
torque_shaw_oxford = partial(drilling.torque_shaw_oxford, chisel_ratio=0.18, torque_factor=1.085)
drill_demand = partial(demands.drill_demand, chisel_ratio=0.18, torque_factor=1.085, **_THRUST)
chisel_share_of_thrust = partial(demands.chisel_share_of_thrust, **_THRUST)
feed_for_thrust = partial(demands.feed_for_thrust, **_THRUST)
largest_solid_drill = partial(demands.largest_solid_drill, **_THRUST)
