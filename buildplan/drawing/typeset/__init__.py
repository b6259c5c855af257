"""Text of any script set in type: the order of its signs, their fonts and their shapes."""
