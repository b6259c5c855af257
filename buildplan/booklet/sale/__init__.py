"""The sale edition."""
