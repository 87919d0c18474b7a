"""The season as an officer sees it: picture, calendars, results."""
