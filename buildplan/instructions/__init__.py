"""The steps of a piece in words, for a voice that is passed in.

The sequence decides what is done and in which order; here it is only said. Short, imperative, one
action. A hand move is taught once, where it first comes up; after that a step says what is
different.
"""
