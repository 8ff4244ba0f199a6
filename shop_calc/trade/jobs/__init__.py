"""The job file, checked entry by entry."""
