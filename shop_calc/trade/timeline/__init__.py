"""The day: set clock, 500 days, stages, drying, looks, what-ifs."""
