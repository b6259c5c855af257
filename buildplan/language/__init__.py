"""The words of every page, in the reader's language: gettext catalogues, CLDR numbers and lists.

English is the language of the messages themselves; `catalogues/` holds the others.
"""
