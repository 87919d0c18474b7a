"""What weather services call a day's rain, and which of it a young nursery must fear."""

from assistant.agronomy.sourced.tables import RAIN_CLASSES, RAIN_CLASSES_MEMORY

_ROWS = RAIN_CLASSES.rows + RAIN_CLASSES_MEMORY.rows
SERVICES = tuple(dict.fromkeys(str(row[0]) for row in _ROWS))
HEAVY = "heavy"


def rain_class(mm_in_24_h: float, service: str) -> str | None:
    """The class of a day's rain [mm] with the service of a country, None below its first.

    Raises:
        KeyError: a service that is not in the table (see `SERVICES`).
    """
    begun = [name for name, low in _classes(service) if mm_in_24_h >= low]
    return begun[-1] if begun else None


def heavy_from_mm(service: str) -> float:
    """The rain of a day [mm] from which the service speaks of heavy rain."""
    return dict(_classes(service))[HEAVY]


def litres_on(mm: float, area_m2: float) -> float:
    """Rain [mm] on an area [m2] as water [L]: a millimetre is a litre on a square metre."""
    return mm * area_m2


def _classes(service: str) -> list[tuple[str, float]]:
    found = [(str(name), float(low)) for who, name, low in _ROWS if who == service]
    if not found:
        raise KeyError(f"no classes of {service!r}; known are {', '.join(SERVICES)}")
    return found
