"""Tests of the rendered page."""
