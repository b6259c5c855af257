"""The joint map: the flat plan of a piece, from which a builder reads which joints meet."""
