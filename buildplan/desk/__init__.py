"""The desk: designing by hand and eye, in a browser on this machine."""
