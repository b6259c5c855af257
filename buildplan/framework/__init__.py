"""The framework: which balloon joins which joints, and how ends meet."""
