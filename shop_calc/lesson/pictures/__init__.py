"""Drawings: they take numbers and show them. matplotlib is imported nowhere else."""
