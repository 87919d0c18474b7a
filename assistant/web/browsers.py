"""A browser by a name that its officer knows again, from what it says of itself."""

_PROGRAMS = (  # the more particular before those whose name others bear too
    ("Edg", "Edge"),
    ("OPR", "Opera"),
    ("SamsungBrowser", "Samsung"),
    ("UCBrowser", "UC"),
    ("Firefox", "Firefox"),
    ("Chrome", "Chrome"),
    ("Safari", "Safari"),
)
_SYSTEMS = ("Android", "iPhone", "iPad", "Windows", "Macintosh", "Linux", "KAIOS")


def browser_name(said: str) -> str:
    """Such as "Firefox, Android"; "-" where nothing is known of it."""
    program = next((name for mark, name in _PROGRAMS if mark in said), "")
    system = next((name for name in _SYSTEMS if name in said), "")
    return ", ".join(filter(None, (program, system))) or "-"
