"""Every sentence of the sequence, as plain functions of plain values.

Nothing here looks into a framework: whoever tells a step works out names, numbers and
joints, and this package puts them into words. Short, imperative, one action.
"""
