"""Long texts put together from their segments, as phones do it: by who it is for, the reference
and the number of segments, whatever their order."""

from collections.abc import Hashable
from datetime import datetime, timedelta
from typing import Generic, TypeVar

KEPT = timedelta(days=1)  # common practice, no source: a phone gives up on the rest of a text
Part = TypeVar("Part")


class Joining(Generic[Part]):
    """Segments that wait for the others of their text."""

    def __init__(self) -> None:
        self._found: dict[Hashable, tuple[datetime, dict[int, Part]]] = {}

    def add(
        self, key: Hashable, place: int, total: int, part: Part, now: datetime
    ) -> list[Part] | None:
        """All segments of a text in their order, once the last of them came."""
        begun, found = self._found.get(key, (now, {}))
        if now - begun > KEPT:
            begun, found = now, {}
        found[place] = part
        self._found[key] = begun, found
        return [found[each] for each in sorted(found)] if len(found) >= total else None

    def done(self, key: Hashable) -> None:
        """The text was taken."""
        self._found.pop(key, None)

    def back(self, key: Hashable, place: int) -> None:
        """A segment was refused: those before it wait for it to come again."""
        if key in self._found:
            self._found[key][1].pop(place, None)
