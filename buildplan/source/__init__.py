"""A file as text and single values: YAML with its lines, and mistakes in it at their places."""
