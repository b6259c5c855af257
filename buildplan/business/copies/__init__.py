"""Sold copies: buyers, brand, serials and how they are checked."""
