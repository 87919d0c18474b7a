"""One row of a list, or of the form that enrols one farmer."""

from dataclasses import dataclass


@dataclass(frozen=True)
class SheetRow:
    """One row; `line` is its number in the file, from 1."""

    line: int
    cells: tuple[str, ...]
