"""Tests of the independent inspection."""
