"""The desk: designing a piece in a browser, by hand and eye, on this machine alone."""
