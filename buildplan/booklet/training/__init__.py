"""The training edition."""
