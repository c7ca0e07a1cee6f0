"""Explaining: why something is so in a case, why something else is not, what changes with what was said, what is near."""
