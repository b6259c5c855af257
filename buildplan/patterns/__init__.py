"""The patterns: each a module with everything that makes it one, found by one registry."""
