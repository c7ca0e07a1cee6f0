"""The alignment log: what was read at each test, kept for good; series, charts and what they say."""
