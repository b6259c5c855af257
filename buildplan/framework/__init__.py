"""The framework: which balloon joins which joints, how ends meet, and the patterns behind it."""
