"""Tests of what is said at the lathe."""
