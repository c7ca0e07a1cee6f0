"""What the user says: four TOML files read, held against the catalogue of given facts, and turned into plain values."""
