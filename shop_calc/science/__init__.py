"""Published equations in SI: plain numbers and arrays, no trade words."""
