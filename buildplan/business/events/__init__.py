"""Several pieces at one event as one job."""
