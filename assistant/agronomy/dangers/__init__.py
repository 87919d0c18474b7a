"""What may harm a bed or its people out of the sky, the river or the field: the dangers that an
officer warns of, one row each in `dangers.toml`."""
