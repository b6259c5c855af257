"""The design file: reading it, checking it, and the plain frozen data that it becomes."""
