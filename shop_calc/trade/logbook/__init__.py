"""The shop log and what it teaches."""
