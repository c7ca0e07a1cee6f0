"""The knowledge store: rule files read, held against each other, and handed to the engine whole."""
