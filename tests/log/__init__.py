"""The alignment log."""
