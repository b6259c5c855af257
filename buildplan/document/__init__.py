"""Documents: tagged pages, text, tables and folding; knows no balloons."""
