"""The work around the bed: hours, loads, planting out, cost."""
