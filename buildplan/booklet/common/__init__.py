"""Pages and pictures that several editions share."""
