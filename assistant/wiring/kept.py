"""What is made from word lists and catalogues, kept for the next start.

Making it takes seconds of the processor, reading it back a tenth of one. A kept file bears the
digest of all that it was made from, sources and code, and is made anew where that differs: who
edits a list sees it at the next start. Nothing depends on it: where the folder cannot be
written, or others could write in it, the start makes what it needs as it always did.

What is read back is values and no code: only classes that are named here, and only from a file
and a folder of our own user.
"""

import hashlib
import os
import pickle
import platform
import stat
import time
from collections.abc import Callable, Collection, Iterable
from contextlib import suppress
from functools import lru_cache
from importlib.metadata import version
from io import BytesIO
from pathlib import Path
from tempfile import NamedTemporaryFile
from types import MappingProxyType
from typing import Any, TypeVar, cast

from platformdirs import user_cache_path

import assistant
from assistant.reading.text.phrases import PackedPhrases
from assistant.reading.text.rules import RulePlace

T = TypeVar("T")

_PACKAGE = Path(assistant.__file__).parent
# What word lists are read by; a change in any of it makes them anew.
_ROOMS = ("acts", "agronomy", "hearing", "reading", "wiring")
_KINDS = frozenset({".py", ".toml"})
_LIBRARIES = ("babel", "marisa-trie")  # names of months and days; the form of the tries
_FORGOTTEN_AFTER_S = 30 * 24 * 3600  # files of checkouts that are gone
_DIGEST = hashlib.sha256().digest_size
_OTHERS = stat.S_IWGRP | stat.S_IWOTH


def kept(name: str, sources: str, make: Callable[[], T], kinds: Collection[type]) -> T:
    """What `make` gives, from the file of the last start where that was of the same sources.

    Args:
        name: of the file
        sources: the digest of what it is made from; none where that could not be read
        kinds: the classes of which it may be, besides the plain ones
    """
    path = _place(name) if sources else None
    stamp = hashlib.sha256(f"{name} {sources}".encode()).digest()
    raw = _read(path) if path else b""
    if raw.startswith(stamp):
        with suppress(Exception):  # not ours after all, or cut off: it is made anew
            return cast(T, _Values(BytesIO(raw[_DIGEST:]), kinds).load())
    made = make()
    if path:
        _write(path, stamp + _pickled(made))
    return made


@lru_cache(maxsize=1)
def word_sources() -> str:
    """The digest of all word lists and of what reads them."""
    rooms = (path for room in _ROOMS for path in (_PACKAGE / room).rglob("*"))
    files = (path for path in rooms if path.suffix in _KINDS)
    return digest_of(sorted((*files, _PACKAGE / "people.py")))


def digest_of(files: Iterable[Path]) -> str:
    """The digest of files by their names and contents, and of what they are read with; none
    where one cannot be read: who opens it tells the fault."""
    read_with = (platform.python_version(), *map(version, _LIBRARIES))
    total = hashlib.sha256(repr(read_with).encode())
    try:
        for path in files:
            raw = path.read_bytes()
            total.update(f"{path.name} {len(raw)} ".encode() + raw)
    except OSError:
        return ""
    return total.hexdigest()


# --- the folder ------------------------------------------------------------------------------


def _place(name: str) -> Path | None:
    """The file of this name and this installation; None where nothing can be kept."""
    here = hashlib.sha256(bytes(_PACKAGE)).hexdigest()[:12]
    if not hasattr(os, "geteuid"):  # a system on which nobody can tell whose a file is
        return None
    try:
        folder = user_cache_path("nursery")
        folder.mkdir(mode=0o700, parents=True, exist_ok=True)
        return folder / f"{name}-{here}.kept" if _is_ours(folder.lstat()) else None
    except (OSError, RuntimeError):  # no home, a read-only disk
        return None


def _is_ours(found: os.stat_result) -> bool:
    """Whether a folder or file is our user's, and nobody else's to write."""
    return found.st_uid == os.geteuid() and not found.st_mode & _OTHERS


def _read(path: Path) -> bytes:
    try:
        with os.fdopen(os.open(path, os.O_RDONLY | os.O_NOFOLLOW), "rb") as file:
            return file.read() if _is_ours(os.fstat(file.fileno())) else b""
    except OSError:
        return b""


def _write(path: Path, raw: bytes) -> None:
    """In one step: who reads at the same time has the old file or the new one."""
    with suppress(OSError):
        _forget(path.parent)
        with NamedTemporaryFile(dir=path.parent, delete=False) as file:
            new = Path(file.name)
            try:
                file.write(raw)
                file.flush()
                new.replace(path)
            finally:
                new.unlink(missing_ok=True)


def _forget(folder: Path) -> None:
    """Takes away what nobody wrote for long."""
    for path in folder.iterdir():
        if path.stat().st_mtime < time.time() - _FORGOTTEN_AFTER_S:  # noqa: TID251  # of files
            path.unlink(missing_ok=True)


# --- the values ------------------------------------------------------------------------------


def read_only(rows: dict[Any, Any]) -> MappingProxyType[Any, Any]:
    """A mapping that nobody changes, as it is kept."""
    return MappingProxyType(rows)


def unpacked(*parts: Any) -> PackedPhrases:
    """Packed phrases, as they are kept."""
    return PackedPhrases.unpacked(*parts)


class _Writer(pickle.Pickler):
    """Values with what pickle does not know by itself."""

    def reducer_override(self, value: Any) -> Any:
        """How such a value is made again."""
        if isinstance(value, MappingProxyType):
            return read_only, (dict(value),)
        if isinstance(value, PackedPhrases):
            return unpacked, value.packed()
        if isinstance(value, RulePlace):  # tens of thousands: by its parts it is quicker
            return RulePlace, (value.words, value.stems, value.marked, value.marked_stems)
        return NotImplemented


def _pickled(value: object) -> bytes:
    raw = BytesIO()
    _Writer(raw, protocol=5).dump(value)
    return raw.getvalue()


class _Values(pickle.Unpickler):
    """Reads values of these kinds and calls nothing else."""

    def __init__(self, raw: BytesIO, kinds: Collection[type]) -> None:
        super().__init__(raw)
        made: tuple[Any, ...] = (read_only, unpacked, *kinds)
        self._known = {(each.__module__, each.__qualname__): each for each in made}

    def find_class(self, module: str, name: str) -> Any:
        """One of the kinds; pickle.UnpicklingError for any other."""
        if (module, name) not in self._known:
            raise pickle.UnpicklingError(f"{module}.{name} is no kept value")
        return self._known[module, name]
