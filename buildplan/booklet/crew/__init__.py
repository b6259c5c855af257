"""The crew edition."""
