"""Two-layer concrete: from a tape measure to the plan of the day."""

__version__ = "0.1.0"
