"""Pages for the decorator's own desk: quotes, shopping, events, the gallery."""
