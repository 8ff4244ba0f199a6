"""All masses, loads, weigh sheets, water and order of addition."""
