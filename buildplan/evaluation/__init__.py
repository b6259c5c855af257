"""A design evaluated: its facts, materials and measures, worked out once for all that follow."""
