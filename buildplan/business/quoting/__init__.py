"""Quotes: what a piece or an event costs its customer."""
