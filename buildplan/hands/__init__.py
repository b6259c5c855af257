"""Your own hands: what they measured, what is learned from it, and what it does to a design."""
