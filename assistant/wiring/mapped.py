"""Opens a table of bytes where it lies: only the pages that are looked at are brought in.

All processes of a machine share them. A file may be replaced meanwhile, by another in its
place; one that is written over would be read half old, half new.
"""

import mmap
from pathlib import Path


def mapped(path: Path) -> memoryview:
    """The bytes of a file. Raises OSError, or ValueError where it is empty."""
    with path.open("rb") as file:
        return memoryview(mmap.mmap(file.fileno(), 0, access=mmap.ACCESS_READ))


def replace_bytes(path: Path, raw: bytes) -> None:
    """Puts a new file in the place of one that others may have mapped."""
    new = path.with_name(f"{path.name}.new")
    new.write_bytes(raw)
    new.replace(path)
