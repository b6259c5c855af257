"""From an outline to a design: the course of cells whose solved shape comes closest to it."""
