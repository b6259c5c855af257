"""The shape: where every joint comes to rest, how big the piece is, whether it stands."""
