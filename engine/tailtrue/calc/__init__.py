"""Formulas of the trade: pure functions on floats that know nothing of jobs, tables or pages.

The unit of a value is part of its name. Outside the range in which a formula holds it raises
`OutOfRange`; it never extrapolates. Diameters are diameters, clearances are diametral, depths of cut are
per side; where a radius or an offset is meant, the name says so.
"""
