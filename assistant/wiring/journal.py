"""The journal of STOPs: a file beside the database, for when a copy of it is put back."""

import json
import os
from collections.abc import Mapping
from datetime import UTC, datetime
from pathlib import Path
from typing import NamedTuple

from assistant.settings import Settings

OURS_ONLY = 0o600  # it holds phone numbers


class Said(NamedTuple):
    """What a phone said last: whether it stopped its texts, and when."""

    stopped: bool
    at: datetime


def journal_path(settings: Settings) -> Path | None:
    """Where the journal is: as set, else beside a SQLite file, else nowhere."""
    if settings.journal_file:
        return Path(settings.journal_file)
    url = settings.database_url
    return Path(url.removeprefix("sqlite:///") + ".stops") if url.startswith("sqlite") else None


class Journal:
    """Writes a line for each STOP and START, on the disk before the answer is given."""

    def __init__(self, path: Path) -> None:
        self._path = path

    def __call__(self, phone: str, stopped: bool, now: datetime) -> None:
        """Keeps what a phone said.

        Raises:
            OSError: the file cannot be written; then the STOP is not kept either, and the
                operator sends it again.
        """
        line = json.dumps([now.astimezone(UTC).isoformat(), phone, "stop" if stopped else "go"])
        opened = os.open(self._path, os.O_WRONLY | os.O_CREAT | os.O_APPEND, OURS_ONLY)
        try:
            os.write(opened, f"{line}\n".encode())
            os.fsync(opened)
        finally:
            os.close(opened)


def read_journal(path: Path) -> Mapping[str, Said]:
    """What each phone said last. A line that a power cut left half is passed over."""
    if not path.exists():
        return {}
    found: dict[str, Said] = {}
    for line in path.read_text(encoding="utf-8").splitlines():
        try:
            at, phone, said = json.loads(line)
            found[phone] = Said(said == "stop", datetime.fromisoformat(at))
        except (ValueError, TypeError):
            continue
    return found
