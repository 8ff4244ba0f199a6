"""The day: set clock, 500 days, stages, drying, looks and the rod, what-ifs."""
