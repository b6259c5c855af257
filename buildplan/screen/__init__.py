"""A piece on a screen: as data, as a 3D model, and as one page that works offline."""
