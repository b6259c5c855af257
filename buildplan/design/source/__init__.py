"""The design file as text: reading YAML with its lines, and mistakes in it at their places."""
