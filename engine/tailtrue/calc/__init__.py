"""Formulas of the trade: pure functions on floats that know nothing of jobs, tables or pages.

The unit of a value is part of its name. Outside the range in which a formula holds it raises
`OutOfRange`; it never extrapolates. Diameters are diameters, clearances are diametral, depths of cut are
per side; where a radius or an offset is meant, the name says so.

What stands where:

- Sizes laid out: `lengths` (shares, margins, edges, pieces), `steps` (what a rule, a dial or an instrument can show).
- Limits and fits: `size_table` (ranges of size), `iso286` and `b41` (classes), `fits` (clearance, bore to aim at),
  `fit_temperature` (other than 20 degC), `bore_gauging` (how a bore is judged), `bar_stock` (bar as bought).
- Turning: `cutting` (speed, force, power, time), `chip` (approach, corrections, typical and limiting force),
  `cut_power` (motor), `cut_time` (with all the travel), `finish`, `tool_wear`, `spindle` and `spindle_band` (which step).
- Drilling: `drilling` (thrust, torque, hand, taper), `drill_demand` (what to plan for), `drill_models` (to compare),
  `drill_ladder` (pilots), `drilled_hole` (size, stock, pecks), `morse_taper` (slip), `centre_hole`.
- Boring: `boring` (the bar), `boring_passes` (passes, spring passes, copied errors), `fine_feed` (a slide set over for a
  small step), `rework` (a bore found too small).
- Bars and rotors: `beams` (bend, sag, mass, whirl), `bending` (loads anywhere, least bar, buckling), `soft_centres`
  (centres that give), `rotors` (critical speed with collars, stock behind the spindle).
- Holding work: `chuck` (grip and speed), `straps` (on a faceplate), `work_holding` (tilt, overhang, length of grip),
  `centre_points` (between centres), `turning_masses` and `balance` (what is out of balance), `solids` (mass, energy),
  `octagon` (a sawn slug), `lifting`, `run_out`.
- Joints: `joints` (bond, skim against catch), `margins` (carried against asked), `screws`, `pins`, `split_clamp`,
  `interference` (pressure and stress), `interference_grip` (least grip, greatest stress), `shrink`, `thermal` (growth and
  its thrust).
- Alignment: `alignment` (difference and move), `lathe_geometry` (exact), `carriage_path` (twist, wear, yaw), `sides`
  (front and rear), `indicator`, `fresh_skims` (collars read by indicator), `third_collar` (the one in the
  middle), `setover` and `tapers` (tapers on purpose),
  `clamping`, `cut_order`, `causes` and `estimation` (which cause, and when that cannot be told), `further_tests` (which
  test would tell).
- Measuring: `readings`, `budget`, `difference_budget`, `doubts` (put together, taken apart), `uncertainty`, `student`,
  `conformity` (how sure a verdict is), `adequacy` (good enough an instrument), `trend` and `control_chart` (over time).
- Casting: `casting` (blank and feeder), `pouring`.
- `validity`: the checks that all of them call.
"""
