"""Materials, recipes and the mix by the kilogram."""
