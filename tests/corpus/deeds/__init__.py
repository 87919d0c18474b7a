"""Plain deeds as farmers text them, and what only looks like one."""
