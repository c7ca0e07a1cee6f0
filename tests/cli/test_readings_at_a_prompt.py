"""Readings asked for one by one: a slip of the keys costs one reading, never those before it."""

import sys

import pytest
import typer

from tailtrue.cli.visit_typed import readings_said


def test_a_slip_is_told_and_only_that_reading_is_asked_for_again(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    typed = iter(["69.612 mm", "69,655 mm", "69.655 mm", "69.654 mm", "69.613 mm"])
    asked: list[str] = []

    def prompt(text: str) -> str:
        asked.append(text)
        return next(typed)

    monkeypatch.setattr(sys.stdin, "isatty", lambda: True)
    monkeypatch.setattr(typer, "prompt", prompt)
    readings = readings_said("", "", "", None)
    assert readings.order == "HTTH"
    assert (readings.of("head"), readings.of("tail")) == ((69.612, 69.613), (69.655, 69.654))
    assert asked.count("Tailstock end, first") == 2
    assert asked.count("Headstock end, first") == 1
    assert "the decimal mark must be a point" in capsys.readouterr().err
