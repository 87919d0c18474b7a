"""The key of one deployment: a file beside the database, never in it. It signs cookies and
makes the second factors; a copy of the database alone opens nothing."""

import os
import secrets
from pathlib import Path

from assistant.settings import Settings, SettingsError

OURS_ONLY = 0o600
SHORTEST = 16  # characters; one of ours has 64


def key_path(settings: Settings) -> Path:
    """Where the key is: as set, else beside a SQLite file, else in .nursery/."""
    if settings.key_file:
        return Path(settings.key_file)
    url = settings.database_url
    if url.startswith("sqlite:///"):
        return Path(url.removeprefix("sqlite:///") + ".key")
    return Path(".nursery") / "nursery.key"


def open_key(settings: Settings) -> bytes:
    """The key, made at the first start.

    Raises:
        SettingsError: the file cannot be read or made, or holds no key.
    """
    if settings.web_secret:
        return settings.web_secret.encode()
    path = key_path(settings)
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        _make(path)
        key = path.read_text(encoding="ascii").strip()
    except (OSError, UnicodeDecodeError) as fault:
        raise SettingsError(
            f"NURSERY_KEY_FILE: {path} cannot be read or made ({fault}); set a file that the "
            "service may write"
        ) from fault
    if len(key) < SHORTEST:
        raise SettingsError(
            f"NURSERY_KEY_FILE: {path} holds no key; remove it, and the next start makes one "
            "(everybody signs in anew, and sets up the second factor once more)"
        )
    return key.encode()


def _make(path: Path) -> None:
    """Makes the file whole or not at all: several processes may start at once."""
    if path.exists():
        return
    half = path.with_name(f"{path.name}.{secrets.token_hex(4)}")
    opened = os.open(half, os.O_WRONLY | os.O_CREAT | os.O_EXCL, OURS_ONLY)
    with os.fdopen(opened, "w", encoding="ascii") as file:
        file.write(secrets.token_hex(32))
        file.flush()
        os.fsync(file.fileno())
    try:
        os.link(half, path)
    except FileExistsError:
        return  # another process was quicker
    finally:
        half.unlink()
