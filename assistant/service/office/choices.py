"""What an officer approved and decided about a list, kept beside it between the pages."""

from collections.abc import Mapping
from dataclasses import asdict, dataclass, field
from typing import Any

from assistant.service.office.columns import Field
from assistant.service.office.rows import SheetRow

SHARED = ("family", "leave")
OWNERS = ("rename", "heir", "new", "leave")


@dataclass(frozen=True)
class Choices:
    """How a list is to be read, and what was decided about numbers that stand for two people.

    columns:   place of a column -> what it holds
    day_first: whether 3/6 is 3 June; None where no cell asks
    unit:      of field sizes that have none; "" leaves such rows out
    village, language: of rows that have none
    villages:  a name in the list, folded -> the id of the village that is meant
    shared:    number -> one of `SHARED`: several names in the list
    owners:    number -> one of `OWNERS`: known under another name
    moves:     farmers who are known in another village are moved to the one of the list
    leave_cells: people are taken without the cells that cannot be read, else left out
    mended:    row's number in the file -> place of a column -> what was typed on the page
    """

    columns: Mapping[int, Field] = field(default_factory=dict)
    sheet: str = ""
    encoding: str = ""
    day_first: bool = True
    unit: str = ""
    village: int | None = None
    language: str = ""
    villages: Mapping[str, int] = field(default_factory=dict)
    shared: Mapping[str, str] = field(default_factory=dict)
    owners: Mapping[str, str] = field(default_factory=dict)
    moves: bool = False
    leave_cells: bool = False
    mended: Mapping[str, Mapping[str, str]] = field(default_factory=dict)
    approved: bool = False

    def mend(self, row: SheetRow) -> SheetRow:
        """A row with the cells that were typed on the page."""
        typed = self.mended.get(str(row.line))
        if not typed:
            return row
        cells = [*row.cells, *[""] * (max(map(int, typed)) + 1 - len(row.cells))]
        for at, words in typed.items():
            cells[int(at)] = words
        return SheetRow(row.line, tuple(cells))

    def kept(self) -> dict[str, Any]:
        """As JSON keeps it."""
        columns = {str(at): what.value for at, what in self.columns.items()}
        return asdict(self) | {"columns": columns}

    @staticmethod
    def read(kept: Mapping[str, Any]) -> "Choices":
        """The choices as they were kept."""
        columns = {int(at): Field(what) for at, what in kept.get("columns", {}).items()}
        return Choices(**{**kept, "columns": columns})
