"""The dry run: a list held against the roll, row by row. It says what would be done, and writes
nothing.

One phone is one farmer. Two names on one number, in the list or against the roll, are asked of
the officer; until that is decided their rows are left out.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from enum import StrEnum
from itertools import groupby

from rapidfuzz import fuzz

from assistant.agronomy.nursery import Nursery
from assistant.people import LANGUAGES, Farmer, Village
from assistant.service.office.beds import BedPlan, WantedBeds, bed_plan, wanted_of
from assistant.service.office.cells import LONGEST_BED, CellReader, Entry, Unread
from assistant.service.office.columns import bare
from assistant.service.office.rows import SheetRow
from assistant.store import RollFarmer
from assistant.wording import messages_web_mend as mend
from assistant.wording import messages_web_people as web_people
from assistant.wording.message import Say

SAME_NAME = 90  # of 100, by rapidfuzz: one slip in a name of ten letters
NOBODY = "-"


class Verdict(StrEnum):
    """What becomes of a row."""

    NEW = "new"
    CHANGED = "changed"
    SAME = "same"
    REJECTED = "rejected"


class Passing(StrEnum):
    """What was decided about a number that is known under another name."""

    NONE = ""
    RENAME = "rename"
    HEIR = "heir"
    NEW = "new"


@dataclass(frozen=True)
class Judged:
    """One row and what becomes of it; `says` are the reason or the changes."""

    row: SheetRow
    verdict: Verdict
    says: tuple[Say, ...] = ()
    entry: Entry | None = None


@dataclass(frozen=True)
class RowDeed:
    """What would be done for one number: nothing, where `says` is empty."""

    entry: Entry
    village: Village
    kept: RollFarmer | None
    passing: Passing
    beds: BedPlan
    asks: bool
    says: tuple[Say, ...]
    rows: tuple[SheetRow, ...]

    @property
    def is_new(self) -> bool:
        """Whether a farmer is put on the roll who was not there."""
        return self.kept is None or self.passing in (Passing.HEIR, Passing.NEW)


@dataclass(frozen=True)
class WhoQuestion:
    """A number that stands for two people: what the officer must say. `answer` is what was
    said so far."""

    phone: str
    names: tuple[str, ...]
    lines: tuple[int, ...]
    answer: str


@dataclass(frozen=True)
class Outlook:
    """The whole dry run; `movers` are known in another village than the list says, `cells`
    rows are left out for cells alone that could be left out of them."""

    judged: tuple[Judged, ...]
    deeds: tuple[RowDeed, ...]
    shared: tuple[WhoQuestion, ...] = ()
    owners: tuple[WhoQuestion, ...] = ()
    movers: int = 0
    cells: int = 0

    @property
    def open_rows(self) -> int:
        """How many rows wait for an answer to their question; they are left out until then."""
        questions = (*self.shared, *self.owners)
        return sum(len(each.lines) for each in questions if not each.answer)

    def count(self, verdict: Verdict) -> int:
        """How many rows have this verdict."""
        return sum(each.verdict is verdict for each in self.judged)


@dataclass
class JudgedRoll:
    """What the judge may know of the roll.

    listed:  by number     beds: by farmer's id, closed ones too
    sees:    whether a village is in sight of whoever sends the list in
    officer: their id, None at the command line
    """

    listed: Mapping[str, RollFarmer]
    beds: Mapping[int, Sequence[Nursery]]
    sees: frozenset[int | None]
    officer: int | None


@dataclass
class Judge:
    """Goes through a list once."""

    reader: CellReader
    roll: JudgedRoll
    _judged: dict[int, Judged] = field(default_factory=dict)
    _deeds: list[RowDeed] = field(default_factory=list)
    _shared: list[WhoQuestion] = field(default_factory=list)
    _owners: list[WhoQuestion] = field(default_factory=list)
    _movers: int = 0
    _unread: dict[str, list[Unread]] = field(default_factory=dict)

    def outlook(self, rows: Iterable[SheetRow]) -> Outlook:
        """What would be done."""
        ordered = tuple(rows)
        by_line = {row.line: row for row in ordered}
        entries: list[Entry] = []
        for row in ordered:
            read = self.reader.entry(row)
            if isinstance(read, Unread):
                self._put(row, Verdict.REJECTED, *read.why)
                self._unread.setdefault(read.phone, []).append(read)
            else:
                entries.append(read)
        by_phone = sorted(entries, key=lambda entry: (entry.phone, entry.line))
        for phone, group in groupby(by_phone, key=lambda entry: entry.phone):
            self._group(phone, tuple(group), by_line)
        self._deeds.sort(key=lambda deed: deed.entry.line)
        judged = tuple(self._judged[row.line] for row in ordered)
        shared, owners = map(_open_first, (self._shared, self._owners))
        cells = sum(each.may_leave for some in self._unread.values() for each in some)
        return Outlook(judged, tuple(self._deeds), shared, owners, self._movers, cells)

    def _put(
        self, row: SheetRow, verdict: Verdict, *says: Say, entry: Entry | None = None
    ) -> None:
        self._judged[row.line] = Judged(row, verdict, says, entry)

    # --- one number --------------------------------------------------------------------------

    def _group(
        self, phone: str, group: tuple[Entry, ...], rows: Mapping[int, SheetRow]
    ) -> None:
        group = self._without_repeats(group, rows)
        group = self._of_one_village(group, rows)
        # A row that is left out names the phone's other owner all the same.
        unread = self._unread.get(phone, ())
        names = _names((*group, *unread))
        if len(names) > 1:
            answer = self.reader.choices.shared.get(phone, "")
            lines = tuple(sorted(each.line for each in (*group, *unread)))
            self._shared.append(WhoQuestion(phone, names, lines, answer))
            if answer != "family":
                why = web_people.SHARED_PHONE(names=", ".join(names))
                for entry in group:
                    self._put(rows[entry.line], Verdict.REJECTED, why)
                return
            group = tuple(_of_family(entry) for entry in group)
        self._farmer(phone, group, names[0] if names else None, rows)

    def _without_repeats(
        self, group: tuple[Entry, ...], rows: Mapping[int, SheetRow]
    ) -> tuple[Entry, ...]:
        first: dict[tuple[object, ...], Entry] = {}
        for entry in group:
            told = tuple(
                value for name, value in vars(entry).items() if name not in ("line", "doubts")
            )
            if told in first:
                says = web_people.REPEATED(line=first[told].line)
                self._put(rows[entry.line], Verdict.SAME, says, entry=entry)
            else:
                first[told] = entry
        return tuple(first.values())

    def _of_one_village(
        self, group: tuple[Entry, ...], rows: Mapping[int, SheetRow]
    ) -> tuple[Entry, ...]:
        kept = []
        for entry in group:
            if entry.village != group[0].village:
                why = web_people.TWO_VILLAGES(line=group[0].line)
                self._put(rows[entry.line], Verdict.REJECTED, why)
            else:
                kept.append(entry)
        return tuple(kept)

    def _farmer(
        self,
        phone: str,
        group: tuple[Entry, ...],
        name: str | None,
        rows: Mapping[int, SheetRow],
    ) -> None:
        kept = self.roll.listed.get(phone)
        passing = Passing.NONE
        why = self._shut(kept) if kept else None
        if kept and why is None and _other_name(kept.farmer.name, name):
            passing, why = self._owner(phone, kept.farmer, str(name), group)
        if kept and why is None and passing in (Passing.NONE, Passing.RENAME):
            why = self._elsewhere(kept.farmer, group[0])
        if why is not None:
            for entry in group:
                self._put(rows[entry.line], Verdict.REJECTED, why)
            return
        theirs = tuple(rows[entry.line] for entry in group)
        deed = self._deed(group, name, kept, passing, theirs)
        verdict = Verdict.NEW if deed.is_new else Verdict.CHANGED
        verdict = verdict if deed.says else Verdict.SAME
        for entry, row in zip(group, theirs, strict=True):
            says = deed.says if entry is group[0] else ()
            says = (*says, *deed.beds.kept_says(entry.line))
            self._put(row, verdict, *says, *map(_left_out, entry.doubts), entry=entry)
        if deed.says:
            self._deeds.append(deed)

    def _shut(self, kept: RollFarmer) -> Say | None:
        """Why this number may not be touched at all."""
        theirs = kept.enrolment is not None and kept.enrolment.officer_id == self.roll.officer
        if kept.refused and kept.farmer.consent_at is None:
            seen = theirs or kept.farmer.village_id in self.roll.sees
            return (
                web_people.SAID_NO()
                if seen or None in self.roll.sees
                else web_people.ELSEWHERE()
            )
        return None if kept.farmer.village_id in self.roll.sees else web_people.ELSEWHERE()

    def _owner(
        self, phone: str, farmer: Farmer, name: str, group: tuple[Entry, ...]
    ) -> tuple[Passing, Say | None]:
        answer = self.reader.choices.owners.get(phone, "")
        lines = tuple(entry.line for entry in group)
        old = farmer.name or NOBODY
        self._owners.append(WhoQuestion(phone, (old, name), lines, answer))
        if answer in ("rename", "heir", "new"):
            return Passing(answer), None
        return Passing.NONE, web_people.OTHER_OWNER(name=old)

    def _elsewhere(self, farmer: Farmer, entry: Entry) -> Say | None:
        """Who is known is moved to another village only where the officer says so: warnings
        go by the village."""
        known = self._name_of(farmer)
        if known is None or entry.village is None or entry.village.id == farmer.village_id:
            return None
        self._movers += 1
        return None if self.reader.choices.moves else mend.KNOWN_ELSEWHERE(village=known)

    def _name_of(self, farmer: Farmer) -> str | None:
        known = (each for each in self.reader.villages.values() if each.id == farmer.village_id)
        return next((each.name for each in known), None)

    # --- what would be done ------------------------------------------------------------------

    def _deed(
        self,
        group: tuple[Entry, ...],
        name: str | None,
        kept: RollFarmer | None,
        passing: Passing,
        rows: tuple[SheetRow, ...],
    ) -> RowDeed:
        first = group[0]
        if first.village is None:
            raise LookupError(f"row {first.line} has no village; the reader lets none through")
        stays = kept if kept and passing in (Passing.NONE, Passing.RENAME) else None
        wanted = tuple(wanted_of(entry) for entry in group if entry.tells_bed)
        plan = self._beds(kept, passing, wanted)
        asks = stays is None or (stays.enrolment is None and not stays.farmer.consent_at)
        entry = Entry(**{**vars(first), "name": name})
        says = (
            self._hello(entry, first.village, passing)
            if stays is None
            else _changes(entry, first.village, stays, self._name_of(stays.farmer))
        )
        if stays is not None and asks:
            says = (*says, web_people.ASKS())
        return RowDeed(
            entry=entry,
            village=first.village,
            kept=kept,
            passing=passing,
            beds=plan,
            asks=asks,
            says=(*says, *plan.says()),
            rows=rows,
        )

    def _beds(
        self, kept: RollFarmer | None, passing: Passing, wanted: tuple[WantedBeds, ...]
    ) -> BedPlan:
        if kept is None or passing is Passing.NEW:
            return bed_plan(wanted, (), agreed=False, wishes=(), today=self.reader.today)
        beds = self.roll.beds.get(kept.farmer.id, ())
        wishes = kept.enrolment.wishes if kept.enrolment else ()
        agreed = kept.farmer.consent_at is not None and passing is not Passing.HEIR
        return bed_plan(wanted, beds, agreed=agreed, wishes=wishes, today=self.reader.today)

    def _hello(self, entry: Entry, village: Village, passing: Passing) -> tuple[Say, ...]:
        new = web_people.IS_NEW(name=entry.name or NOBODY, village=village.name)
        if passing is Passing.HEIR:
            return new, web_people.HEIR()
        return (new, web_people.NEW_OWNER()) if passing is Passing.NEW else (new,)


def _changes(
    entry: Entry, village: Village, kept: RollFarmer, known: str | None
) -> tuple[Say, ...]:
    """What changes of a farmer who stays the same person."""
    farmer, says = kept.farmer, []
    if entry.name and entry.name != farmer.name:
        says.append(web_people.CHANGES_NAME(old=farmer.name or NOBODY, name=entry.name))
    if village.id != farmer.village_id:
        says.append(web_people.CHANGES_VILLAGE(old=known or NOBODY, village=village.name))
    if changes_language(entry, farmer):
        old = LANGUAGES.get(farmer.language or "", NOBODY)
        says.append(web_people.CHANGES_LANGUAGE(old=old, language=LANGUAGES[entry.language]))
    return tuple(says)


def changes_language(entry: Entry, farmer: Farmer) -> bool:
    """Whether the list may set the language: not once a farmer has agreed in one."""
    if farmer.consent_at is not None:
        return False
    return entry.language_given and entry.language != farmer.language


def _open_first(questions: Iterable[WhoQuestion]) -> tuple[WhoQuestion, ...]:
    """Those without an answer first: a page shows a part of many."""
    return tuple(sorted(questions, key=lambda each: bool(each.answer)))


# --- names -----------------------------------------------------------------------------------


def same_name(one: str, other: str) -> bool:
    """Whether two spellings are one person's: in any order of the words, a slip allowed."""
    first, second = bare(one) or one.casefold(), bare(other) or other.casefold()
    return fuzz.token_sort_ratio(first, second) >= SAME_NAME


def _other_name(kept: str | None, listed: str | None) -> bool:
    return bool(kept and listed) and not same_name(str(kept), str(listed))


def _names(group: tuple[Entry | Unread, ...]) -> tuple[str, ...]:
    """The different people of a group, by their names."""
    found: list[str] = []
    for entry in group:
        if entry.name and not any(same_name(entry.name, each) for each in found):
            found.append(entry.name)
    return tuple(found)


def _left_out(why: Say) -> Say:
    return mend.CELL_LEFT_OUT(why=why)


def _of_family(entry: Entry) -> Entry:
    """A row of a family's phone: its nursery bears the person's name."""
    first = (entry.name or "").split()
    called = entry.bed or (first[0][:LONGEST_BED] if first else None)
    return Entry(**{**vars(entry), "bed": called})
