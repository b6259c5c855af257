"""The business round a plan: buying, quoting, events, sold copies."""
