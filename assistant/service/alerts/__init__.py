"""Official alerts: taken, judged, followed, shown."""
