"""The tool maker's model counts from its finest feed on, that feed included."""

import pytest

from standard_point import drill_demand, thrust_shaw_oxford, torque_shaw_oxford
from tailtrue.calc.drilling import thrust_tool_maker, torque_tool_maker


def test_at_the_finest_feed_of_the_tool_maker_the_larger_of_both_models_counts() -> None:
    demand = drill_demand(24000, 24000, 4, 0.1, 10, wear_factor=1, pilot_ratio=0)
    assert demand == pytest.approx((thrust_tool_maker(4, 0.1, 10), torque_tool_maker(4, 0.1, 10)), rel=1e-12)
    below = drill_demand(24000, 24000, 4, 0.0999, 10, wear_factor=1, pilot_ratio=0)
    assert below == pytest.approx((thrust_shaw_oxford(24000, 0.0999, 10), torque_shaw_oxford(24000, 0.0999, 10)), rel=1e-12)
    assert below.thrust_n < 0.9 * demand.thrust_n
    assert below.torque_nmm < 0.9 * demand.torque_nmm
