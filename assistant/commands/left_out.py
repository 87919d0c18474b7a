"""Which commands belong to parts that a deployment leaves out; told before anything is opened.

What is set is only looked at here, and read by `settings.reading` where a command begins.
"""

import os
import tomllib
from importlib.util import find_spec
from pathlib import Path

OF_PARTS = {"alert": ("alerts", "alert"), "import": ("lists", "importing")}
"""A command -> its part, and its module in this room."""


def left_out() -> frozenset[str]:
    """The commands that there are not."""
    parts = _said()
    return frozenset(
        name
        for name, (part, module) in OF_PARTS.items()
        if (parts is not None and part not in parts)
        or find_spec(f"assistant.commands.{module}") is None
    )


def _said() -> frozenset[str] | None:
    """The parts that are set; None where nobody says any, or what does cannot be read: then the
    command that is called tells of it."""
    said: object = os.environ.get("NURSERY_PARTS")
    place = os.environ.get("NURSERY_SETTINGS_FILE")
    if said is None and place:
        try:
            said = tomllib.loads(Path(place).read_text(encoding="utf-8")).get("parts")
        except (OSError, ValueError):
            return None
    if isinstance(said, list):
        return frozenset(map(str, said))
    return frozenset(map(str.strip, said.split(","))) if isinstance(said, str) else None
