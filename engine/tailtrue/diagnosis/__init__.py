"""Causes of taper from whatever tests were made: what the readings settle, what they cannot tell, what to do first."""
