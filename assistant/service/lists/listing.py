"""An office's list from its file to the roll: how it is read, what it would do, doing it."""

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import datetime
from functools import cached_property
from hashlib import blake2b

from rapidfuzz import fuzz, process

from assistant.agronomy.units import likely_units
from assistant.reading import Lexicon, Outcome, read_area
from assistant.service.consent import Enroller
from assistant.service.house import House
from assistant.service.lists.files import read_sheet
from assistant.service.lists.sheets import Sheet
from assistant.service.office.cells import (
    RefusedCell,
    bare_name,
    needs_order,
    phone_of,
    says_day_first,
)
from assistant.service.office.choices import Choices
from assistant.service.office.columns import Column, Field, columns_of, head_row
from assistant.service.office.judging import Judge, Outlook
from assistant.service.office.reader import lexicons_of, reader_of, roll_of
from assistant.service.office.rows import SheetRow
from assistant.service.office.taking import Taking, Told
from assistant.service.sight import Sight
from assistant.store import Work

SAMPLES = 3
MOST_UNKNOWN = 60  # names of villages that are asked for one by one
NEAR_VILLAGE = 75  # of 100, by rapidfuzz; only proposed, the officer says which


@dataclass(frozen=True)
class Paper:
    """A list as it was read: its names of columns and its rows."""

    sheet: Sheet
    head: int

    @cached_property
    def heads(self) -> tuple[str, ...]:
        """The names of all columns; one without a name is called by its number."""
        width = max(len(row.cells) for row in self.sheet.rows)
        named = self.sheet.rows[self.head].cells
        return tuple(
            named[at] if at < len(named) and named[at] else f"({at + 1})" for at in range(width)
        )

    @property
    def rows(self) -> tuple[SheetRow, ...]:
        """The rows below the names."""
        return self.sheet.rows[self.head + 1 :]

    def cells(self, at: int) -> list[str]:
        """What stands in a column."""
        return [row.cells[at] for row in self.rows if at < len(row.cells) and row.cells[at]]

    def column_of(self, columns: Mapping[int, Field], what: Field) -> int | None:
        """The column that holds something."""
        return next((at for at, each in columns.items() if each is what), None)


def read_paper(content: bytes, sheet: str = "", encoding: str = "") -> Paper:
    """Reads a file.

    Raises:
        SheetError: it cannot be read.
    """
    read = read_sheet(content, sheet=sheet, encoding=encoding)
    return Paper(read, head_row(read.rows))


def guessed(house: House, sight: Sight, paper: Paper) -> Choices:
    """How a list is read until the officer says otherwise."""
    found = columns_of(paper.heads)
    columns = {each.at: each.field for each in found if each.field}
    if Field.PHONE not in columns.values():
        columns |= _by_content(paper, columns, house.region)
    dates = paper.column_of(columns, Field.SOWING)
    day_first = says_day_first(paper.cells(dates)) if dates is not None else None
    choices = Choices(
        columns=columns,
        sheet=paper.sheet.sheet,
        encoding="",
        day_first=True if day_first is None else day_first,
        village=sight.villages[0].id if len(sight.villages) == 1 else None,
        language=house.languages[0],
    )
    near = {each.folded: each.near for each in unknown_villages(house, sight, paper, choices)}
    return replace(choices, villages={name: at for name, at in near.items() if at is not None})


def _by_content(
    paper: Paper, columns: Mapping[int, Field], region: str | None
) -> dict[int, Field]:
    """The column in which most cells are phone numbers, where no name says which it is."""
    best, share = None, 0.5
    for at in range(len(paper.heads)):
        cells = paper.cells(at)[:20]
        hits = sum(_is_phone(cell, region) for cell in cells)
        if at not in columns and cells and hits / len(cells) > share:
            best, share = at, hits / len(cells)
    return {} if best is None else {best: Field.PHONE}


def _is_phone(cell: str, region: str | None) -> bool:
    try:
        return bool(phone_of(cell, region))
    except RefusedCell:
        return False


# --- villages --------------------------------------------------------------------------------


@dataclass(frozen=True)
class UnknownVillage:
    """A name of a village in a list that is none of those in sight; `near` is proposed."""

    typed: str
    folded: str
    rows: int
    near: int | None


def unknown_villages(
    house: House, sight: Sight, paper: Paper, choices: Choices
) -> tuple[UnknownVillage, ...]:
    """The names to be asked for, the most frequent first; not those of others' villages."""
    at = paper.column_of(choices.columns, Field.VILLAGE)
    if at is None:
        return ()
    with house.store.look() as work:
        known = {bare_name(village.name) for village in work.people.villages()}
    mine = {village.id: bare_name(village.name) for village in sight.villages}
    typed = Counter(paper.cells(at))
    found: dict[str, UnknownVillage] = {}
    for name, rows in typed.most_common():
        folded = bare_name(name)
        if folded in known or not folded:
            continue
        before = found.get(folded)
        if before is not None:
            found[folded] = replace(before, rows=before.rows + rows)
        elif len(found) < MOST_UNKNOWN:
            near = process.extractOne(
                folded, mine, scorer=fuzz.ratio, score_cutoff=NEAR_VILLAGE
            )
            found[folded] = UnknownVillage(name, folded, rows, near[2] if near else None)
    return tuple(found.values())


# --- the dry run -----------------------------------------------------------------------------


def outlook(
    work: Work, house: House, sight: Sight, paper: Paper, choices: Choices, now: datetime
) -> Outlook:
    """Holds a list against the roll as it is in this transaction. Writes nothing."""
    units = _units(paper, choices, lexicons_of(house, sight))
    reader = reader_of(work, house, sight, choices, units, now)
    rows = tuple(map(choices.mend, paper.rows))
    at = paper.column_of(choices.columns, Field.PHONE)
    typed = () if at is None else (row.cells[at] for row in rows if at < len(row.cells))
    roll = roll_of(work, sight, reader.phones(each for each in typed if each))
    return Judge(reader, roll).outlook(rows)


def _units(paper: Paper, choices: Choices, lexicons: Sequence[Lexicon]) -> dict[int, str]:
    """The unit that the head of a column names, as in "Field (ha)"."""
    found = {}
    for at, what in choices.columns.items():
        unit = unit_in(paper.heads[at], lexicons) if what is Field.AREA else None
        if unit is not None:
            found[at] = unit
    return found


def unit_in(head: str, lexicons: Sequence[Lexicon]) -> str | None:
    """The unit of land that a head names, if it names one."""
    pieces = head.replace("(", " ").replace(")", " ").replace("[", " ").replace("]", " ")
    for piece in reversed(pieces.split()):
        word = piece.strip(".,:;/")
        for lexicon in lexicons:
            reading = read_area(f"1 {word}", lexicon) if word and not word.isdigit() else None
            if reading is not None and reading.outcome is Outcome.UNDERSTOOD:
                return word
    return None


def fingerprint(seen: Outlook) -> str:
    """What tells one dry run from another: each row, its verdict and what would be done."""
    told = [(each.row, each.verdict, each.says) for each in seen.judged]
    return blake2b(repr(told).encode(), digest_size=16).hexdigest()


def take_list(
    house: House,
    sight: Sight,
    who: Enroller,
    paper: Paper,
    choices: Choices,
    name: str,
    now: datetime,
    *,
    seen: str = "",
    told: Told = lambda done, of: None,
) -> Outlook | None:
    """Takes a list in as a whole; None, and nothing is kept, where it would do something else
    by now than was `seen` (a fingerprint)."""
    with house.store.work() as work:
        work.enrolments.hold_roll()
        found = outlook(work, house, sight, paper, choices, now)
        if seen and fingerprint(found) != seen:
            return None
        taking = Taking(work, house, who, now, told)
        taking.take(found)
        taking.note_list(found, name)
        return found


# --- what the page of columns shows ----------------------------------------------------------


@dataclass(frozen=True)
class Approval:
    """How a list is read, to be approved: its columns with examples, and what else to say.

    `asks_order`: day and month of some dates may be either; `asks_unit`: some fields have no
    unit.
    """

    columns: tuple[tuple[Column, tuple[str, ...]], ...]
    unknown: tuple[UnknownVillage, ...]
    units: tuple[str, ...]
    asks_order: bool
    asks_unit: bool
    rows: int


def approval(house: House, sight: Sight, paper: Paper, choices: Choices) -> Approval:
    """What the officer is shown of how a list is read."""
    sure = {each.at for each in columns_of(paper.heads) if each.sure}
    columns = tuple(
        (
            Column(at, head, choices.columns.get(at), at in sure or choices.approved),
            tuple(paper.cells(at)[:SAMPLES]),
        )
        for at, head in enumerate(paper.heads)
    )
    area = paper.column_of(choices.columns, Field.AREA)
    dates = paper.column_of(choices.columns, Field.SOWING)
    units = _units(paper, choices, lexicons_of(house, sight))
    marked = (
        [cell for cell in paper.cells(dates) if "-" not in cell[:5]]
        if dates is not None
        else []
    )
    return Approval(
        columns=columns,
        unknown=unknown_villages(house, sight, paper, choices),
        units=likely_units(house.region),
        asks_order=any(map(needs_order, marked)) and says_day_first(marked) is None,
        asks_unit=area is not None and area not in units,
        rows=len(paper.rows),
    )
