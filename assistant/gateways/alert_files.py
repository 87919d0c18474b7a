"""Official alerts from a file or a folder that something else fills."""

from pathlib import Path

from assistant.alerts.document import LARGEST_BYTES
from assistant.alerts.sources import FoundMessage, Look, Stamp

ENDINGS = frozenset({".xml", ".cap"})
MOST_FILES = 500  # looked at in one go; the rest at the next


class AlertFiles:
    """One file, or all files ending in .xml or .cap of a folder (not of folders in it).

    A file counts as new when its size or time changes. It should be put there whole (written
    beside and renamed); half a message is faulty, and read again when it is complete.
    """

    def __init__(self, path: Path) -> None:
        self._path = path
        self._done: set[str] = set()

    @property
    def name(self) -> str:
        """The path, as it was set."""
        return str(self._path)

    def look(self, before: Stamp) -> Look:
        """Every file that is new since this process last had it."""
        found, trouble = [], ""
        try:
            paths = self._paths()
        except OSError as fault:
            return Look(trouble=_said(fault))
        for path in paths:
            try:
                key = _key(path)
                if key not in self._done:
                    found.append(FoundMessage(_read(path), key))
            except OSError as fault:
                trouble = _said(fault)
            if len(found) == MOST_FILES:
                break
        return Look(tuple(found), Stamp(), trouble)

    def done(self, key: str) -> None:
        """This one was kept."""
        self._done.add(key)

    def _paths(self) -> list[Path]:
        if not self._path.is_dir():
            return [self._path]
        return sorted(
            path
            for path in self._path.iterdir()
            if path.suffix.lower() in ENDINGS and not path.name.startswith(".")
        )


def _key(path: Path) -> str:
    state = path.stat()
    return f"{path.name} {state.st_size} {state.st_mtime_ns}"


def _read(path: Path) -> bytes:
    """The file, or one byte more than is ever read of it."""
    with path.open("rb") as file:
        return file.read(LARGEST_BYTES + 1)


def _said(fault: OSError) -> str:
    return f"{fault.filename or ''}: {fault.strerror or fault}"
