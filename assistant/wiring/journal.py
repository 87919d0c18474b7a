"""The journal of STOPs: a file beside the database, for when a copy of it is put back.

It names nobody: a number stands in it as a keyed digest, and the key lies elsewhere. Who has
the file, or a copy of it, cannot tell whose numbers these are, nor whether one is among them.
"""

import hmac
import json
import os
from collections.abc import Iterable, Mapping
from datetime import UTC, datetime
from pathlib import Path
from typing import NamedTuple

from assistant.settings import Settings, SettingsError
from assistant.wiring.own_key import open_key

OURS_ONLY = 0o600
_WHAT = b"journal of stops"
_MARK = "key"  # begins a line that tells by which key the others were written


class LastSaid(NamedTuple):
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

    def __init__(self, path: Path, key: bytes) -> None:
        self._path, self._key = path, key
        self._looked = False

    def __call__(self, phone: str, stopped: bool, now: datetime) -> None:
        """Keeps what a phone said.

        Raises:
            OSError: the file cannot be written; then the STOP is not kept either, and the
                operator sends it again.
        """
        if not self._looked:
            _name_nobody(self._path, self._key)
            self._looked = True
        said = "stop" if stopped else "go"
        _append(self._path, [[_moment(now), digest_of(phone, self._key), said]])


def digest_of(phone: str, key: bytes) -> str:
    """What stands for a number."""
    return hmac.digest(key, _WHAT + phone.encode(), "sha256").hex()


def read_journal(path: Path) -> Mapping[str, LastSaid]:
    """What each phone said last, by its digest; by its number in lines of earlier releases. A
    line that a power cut left half is passed over."""
    found: dict[str, LastSaid] = {}
    for at, who, said in _lines(path):
        if at != _MARK:
            found[who] = LastSaid(said == "stop", datetime.fromisoformat(at))
    return found


def stopped_of(
    path: Path, phones: Iterable[str], settings: Settings
) -> list[tuple[str, datetime]]:
    """Those of these phones whose last word in the journal is STOP, and when they said it.

    Raises:
        SettingsError: it was written by another key, and nobody would be found.
    """
    said, key = read_journal(path), open_key(settings)
    marks = [who for at, who, _ in _lines(path) if at == _MARK]
    if marks and digest_of(_MARK, key) not in marks:
        raise SettingsError(
            f"NURSERY_KEY_FILE: {path} was written by another key, so that nobody who said "
            "STOP can be found; put the key file back that was beside the database"
        )
    last = {phone: said.get(digest_of(phone, key)) or said.get(phone) for phone in phones}
    return [(phone, each.at) for phone, each in last.items() if each and each.stopped]


def _lines(path: Path) -> list[tuple[str, str, str]]:
    found = []
    # A byte that a disk has lost costs its line, never a STOP that is said now.
    text = path.read_text(encoding="utf-8", errors="replace") if path.exists() else ""
    for line in text.splitlines():
        try:
            at, who, said = map(str, json.loads(line))
            if at != _MARK and datetime.fromisoformat(at).utcoffset() is None:
                continue
        except (ValueError, TypeError):
            continue
        found.append((at, who, said))
    return found


def _name_nobody(path: Path, key: bytes) -> None:
    """Begins the file with the mark of its key; numbers of earlier releases become digests."""
    lines, mark = _lines(path), digest_of(_MARK, key)
    if not any((at, who) == (_MARK, mark) for at, who, _ in lines):
        _append(path, [[_MARK, mark, ""]])
    if not any(who.startswith("+") for _, who, _ in lines):
        return
    new = [[_MARK, mark, ""]]
    new += [
        [at, digest_of(who, key) if who.startswith("+") else who, said]
        for at, who, said in lines
    ]
    half = path.with_name(f"{path.name}.new")
    half.unlink(missing_ok=True)
    _append(half, new)
    half.replace(path)


def _append(path: Path, lines: Iterable[list[str]]) -> None:
    opened = os.open(path, os.O_RDWR | os.O_CREAT | os.O_APPEND, OURS_ONLY)
    try:
        size = os.fstat(opened).st_size
        half = size > 0 and os.pread(opened, 1, size - 1) != b"\n"  # the power was cut
        text = "\n" * half + "".join(f"{json.dumps(line)}\n" for line in lines)
        os.write(opened, text.encode())
        os.fsync(opened)
    finally:
        os.close(opened)


def _moment(now: datetime) -> str:
    return now.astimezone(UTC).isoformat()
