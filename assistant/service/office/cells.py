"""What the cells of one row say: values that are sure, or all reasons why they cannot be used.

A number that a spreadsheet cut is refused, never filled up; one that lost its plus or its
nought is read only where a single number can be meant, and shown as it was read.
"""

import re
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field, replace
from datetime import date, timedelta
from typing import TypeVar

from assistant.agronomy.field import LIMITS
from assistant.people import LANGUAGES, Village, VillageUnit, person_name, read_phone
from assistant.reading import Lexicon, Outcome, language_named, read_area, read_date
from assistant.reading import read_germination as read_percent
from assistant.reading.village_units import with_units
from assistant.service.office.choices import Choices
from assistant.service.office.columns import Field, bare
from assistant.service.office.rows import SheetRow
from assistant.wording import messages_web_people as web_people
from assistant.wording.message import Say

LONGEST_BED = 12  # letters of a nursery's name, as in the texts
MOST_PAST = timedelta(days=30)
MOST_AHEAD = timedelta(days=366)
_CUT = re.compile(r"[+-]?\d+(?:[.,]\d+)?[eE][+-]?\d+")
_POINT = re.compile(r"[+-]?\d+[.,]\d+")
_NUMBER = re.compile(r"\d[\d.,\s]*")
_NOUGHTS = "00000"  # a number cut to six digits and written out again ends like this
_ISO = re.compile(r"(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})(?:[ T].*)?")
_BY_MARKS = re.compile(r"(\d{1,2})[-/.](\d{1,2})[-/.](\d{4}|\d{2})")
_BETWEEN = re.compile(r"[/;,|&]|\s(?:or|and)\s")
# A date that lost its format is the days since 1899-12-30 (ECMA-376, part 1, 18.17.4.1, the
# 1900 date base). Five digits: 1927 to 2173; no other number stands among days of sowing.
_SERIAL = re.compile(r"[1-9]\d{4}(?:\.0)?")
_DAY_0 = date(1899, 12, 30)
_SHOWN = 40
# Without these nobody can be put on the roll; any other cell may be left out of its row.
_NEEDED = frozenset({Field.PHONE, Field.VILLAGE})
T = TypeVar("T")


@dataclass(frozen=True)
class Entry:
    """One row that could be read; what the list does not say is None or empty. `doubts`: why
    cells of it were left out."""

    line: int
    phone: str
    name: str | None = None
    village: Village | None = None
    language: str = ""
    language_given: bool = False
    area_m2: float | None = None
    area_words: str = ""
    sowing: date | None = None
    germination: float | None = None  # percent
    bed: str | None = None
    doubts: tuple[Say, ...] = ()

    @property
    def tells_bed(self) -> bool:
        """Whether anything is said of a nursery."""
        told = (self.area_m2, self.sowing, self.germination, self.bed)
        return any(each is not None for each in told)


@dataclass(frozen=True)
class Unread:
    """A row that is not taken: all reasons, and whose it is where that could be read.
    `may_leave`: without the cells that cannot be used the person could be taken."""

    line: int
    why: tuple[Say, ...]
    phone: str = ""
    name: str | None = None
    may_leave: bool = False


class RefusedCell(Exception):
    """A cell that cannot be used, and why."""

    def __init__(self, why: Say) -> None:
        super().__init__(why.message.text)
        self.why = why


@dataclass
class CellReader:
    """Reads rows as the officer approved; remembers what it has read, since lists repeat.

    villages:  those in sight, by folded name
    others:    folded names of villages that are not
    lexicons:  in the order in which they are tried
    """

    choices: Choices
    villages: Mapping[str, Village]
    others: frozenset[str]
    lexicons: tuple[Lexicon, ...]
    languages: tuple[str, ...]
    region: str | None
    today: date
    units: Mapping[int, str]
    _areas: dict[tuple[str, tuple[VillageUnit, ...]], tuple[float, str] | Say] = field(
        default_factory=dict
    )
    _phones: dict[str, str | Say] = field(default_factory=dict)
    _percents: dict[str, float | None] = field(default_factory=dict)

    def entry(self, row: SheetRow) -> Entry | Unread:
        """One row, or all reasons why it is not taken."""
        cells: dict[Field, str] = {}
        for at, what in self.choices.columns.items():
            if at < len(row.cells) and row.cells[at]:
                cells[what] = row.cells[at]
        wrong: dict[Field, Say] = {}
        found = self._entry(row.line, cells, wrong)
        if not cells.get(Field.PHONE):  # a sum below the list: nothing else is to be said of it
            return Unread(row.line, (wrong[Field.PHONE],))
        may_leave = not _NEEDED & wrong.keys()
        why = tuple(wrong.values())
        if wrong and not (may_leave and self.choices.leave_cells):
            return Unread(row.line, why, found.phone, found.name, may_leave)
        return replace(found, doubts=why)

    def _entry(self, line: int, cells: Mapping[Field, str], wrong: dict[Field, Say]) -> Entry:
        """What can be read of a row; why the rest cannot stands in `wrong` afterwards."""

        def read(what: Field, read_cell: Callable[[str], T], otherwise: T) -> T:
            try:
                return read_cell(cells.get(what, ""))
            except RefusedCell as refused:
                wrong[what] = refused.why
                return otherwise

        phone = read(Field.PHONE, self._phone, "")
        name = read(Field.NAME, _name, None)
        village = read(Field.VILLAGE, self._village, None)
        usual = self._language("")
        language = read(Field.LANGUAGE, self._language, usual)
        units = (village.units or ()) if village else ()
        no_field: tuple[float | None, str] = (None, "")
        area_m2, area_words = read(
            Field.AREA,
            lambda typed: self._area(typed, units) if typed else no_field,
            no_field,
        )
        return Entry(
            line=line,
            phone=phone,
            name=name,
            village=village,
            language=language,
            language_given=bool(cells.get(Field.LANGUAGE)) and Field.LANGUAGE not in wrong,
            area_m2=area_m2,
            area_words=area_words,
            sowing=read(Field.SOWING, self._sowing, None),
            germination=read(Field.GERMINATION, self._germination, None),
            bed=read(Field.NURSERY, _bed, None),
        )

    def area(self, typed: str, units: tuple[VillageUnit, ...] = ()) -> tuple[float, str]:
        """A field [m2] and how it is said; `units` are those of its village.

        Raises:
            Refused: it cannot be read.
        """
        return self._area(typed, units)

    def germination(self, typed: str) -> float | None:
        """Of a hundred seeds; None where nothing is typed.

        Raises:
            Refused: it cannot be read.
        """
        return self._germination(typed)

    def phones(self, cells: Iterable[str]) -> frozenset[str]:
        """The numbers that can be read of these cells."""
        found = (self._read_phone(typed) for typed in cells)
        return frozenset(each for each in found if isinstance(each, str))

    def _phone(self, typed: str) -> str:
        found = self._read_phone(typed)
        if isinstance(found, Say):
            raise RefusedCell(found)
        return found

    def _read_phone(self, typed: str) -> str | Say:
        if typed not in self._phones:
            try:
                self._phones[typed] = phone_of(typed, self.region)
            except RefusedCell as refused:
                self._phones[typed] = refused.why
        return self._phones[typed]

    # --- village and language ----------------------------------------------------------------

    def _village(self, typed: str) -> Village | None:
        by_id = {village.id: village for village in self.villages.values()}
        if not typed:
            chosen = by_id.get(self.choices.village or 0)
            if chosen is None:
                raise RefusedCell(web_people.NO_VILLAGE())
            return chosen
        folded = bare_name(typed)
        found = self.villages.get(folded)
        found = found or by_id.get(self.choices.villages.get(folded, 0))
        if found is not None:
            return found
        why = web_people.OTHERS_VILLAGE if folded in self.others else web_people.UNKNOWN_VILLAGE
        raise RefusedCell(why(words=_cut(typed)))

    def _language(self, typed: str) -> str:
        if not typed:
            return self.choices.language or self.languages[0]
        code = language_named(typed) or typed.casefold()
        if code not in self.languages:
            names = ", ".join(LANGUAGES[each] for each in self.languages)
            raise RefusedCell(web_people.BAD_LANGUAGE(words=_cut(typed), languages=names))
        return code

    # --- the nursery -------------------------------------------------------------------------

    def _area(self, typed: str, units: tuple[VillageUnit, ...]) -> tuple[float, str]:
        """The field [m2] and how it is said."""
        key = typed, units
        if key not in self._areas:
            self._areas[key] = self._read_area(typed, units)
        found = self._areas[key]
        if isinstance(found, Say):
            raise RefusedCell(found)
        return found

    def _read_area(self, typed: str, units: tuple[VillageUnit, ...]) -> tuple[float, str] | Say:
        at = next((at for at, what in self.choices.columns.items() if what is Field.AREA), -1)
        unit = self.units.get(at) or self.choices.unit
        is_bare = _NUMBER.fullmatch(typed) is not None
        if is_bare and not unit:
            return web_people.NO_UNIT(words=_cut(typed))
        said = f"{typed} {unit}" if is_bare else typed
        limits = LIMITS["field_area_m2"]
        for lexicon in self.lexicons:
            reading = read_area(said, with_units(lexicon, units), self.region)
            if reading.outcome is Outcome.UNDERSTOOD and reading.value is not None:
                if limits.low <= reading.value <= limits.high:
                    return reading.value, reading.words
        return web_people.BAD_AREA(words=_cut(typed))

    def _germination(self, typed: str) -> float | None:
        if not typed:
            return None
        if typed not in self._percents:
            reading = read_percent(typed, self.lexicons[0])
            sure = reading.outcome is Outcome.UNDERSTOOD
            self._percents[typed] = reading.value if sure else None
        percent = self._percents[typed]
        if percent is None:
            raise RefusedCell(web_people.BAD_GERMINATION(words=_cut(typed)))
        return percent

    def _sowing(self, typed: str) -> date | None:
        if not typed:
            return None
        day = date_of(typed, self.choices.day_first) or self._in_words(typed)
        if day is None:
            raise RefusedCell(web_people.BAD_DATE(words=_cut(typed)))
        if day < self.today - MOST_PAST:
            raise RefusedCell(web_people.PAST_DATE(date=day, n=MOST_PAST.days))
        if day > self.today + MOST_AHEAD:
            raise RefusedCell(web_people.FAR_DATE(date=day))
        return day

    def _in_words(self, typed: str) -> date | None:
        """ "10 June 2026"; a bare number of days is no date."""
        if not any(ch.isalpha() for ch in typed):
            return None
        for lexicon in self.lexicons:
            reading = read_date(typed, lexicon, self.today)
            if reading.outcome is Outcome.UNDERSTOOD:
                return reading.value
        return None


def bare_name(typed: str) -> str:
    """A village's name as it is compared: digits count, marks and accents do not."""
    digits = "".join(ch for ch in typed if ch.isdigit())
    return f"{bare(typed)} {digits}".strip()


def _cut(typed: str) -> str:
    return typed if len(typed) <= _SHOWN else f"{typed[:_SHOWN]}..."


def _name(typed: str) -> str | None:
    if not typed:
        return None
    name = person_name(typed)
    if name is None:
        raise RefusedCell(web_people.BAD_NAME(words=_cut(typed)))
    return name


def _bed(typed: str) -> str | None:
    if len(typed) > LONGEST_BED:
        raise RefusedCell(web_people.BAD_BED(words=_cut(typed), n=LONGEST_BED))
    return typed or None


# --- phone numbers ---------------------------------------------------------------------------


def phone_of(typed: str, region: str | None) -> str:
    """The E.164 number of a cell.

    Raises:
        Refused: none can be meant, or more than one, or the cell holds a number that lost
            digits.
    """
    if not typed:
        raise RefusedCell(web_people.NO_PHONE())
    compact = "".join(ch for ch in typed if ch not in " \u00a0\u202f-().\t")
    marked = compact.startswith(("+", "0"))
    cut = _CUT.fullmatch(typed) or (not marked and _POINT.fullmatch(typed))
    if cut or (not marked and compact.endswith(_NOUGHTS)):
        raise RefusedCell(web_people.CUT_PHONE(words=_cut(typed)))
    country = region[:2] if region else None
    if marked or not (compact.isascii() and compact.isdigit()):
        found = read_phone(typed, country)
        if found is None:
            why = web_people.TWO_PHONES if _are_two(typed, country) else web_people.BAD_PHONE
            raise RefusedCell(why(words=_cut(typed)))
        return found
    return _unmarked(typed, compact, country)


def _are_two(typed: str, country: str | None) -> bool:
    """Whether several numbers stand in one cell, as "07700 900154 / 07700 900155"."""
    parts = [part for part in _BETWEEN.split(typed) if part.strip()]
    return len(parts) > 1 and all(read_phone(part, country) for part in parts)


def _unmarked(typed: str, digits: str, country: str | None) -> str:
    """Digits without a plus or a nought in front: whichever single number they can be."""
    whole = read_phone(f"+{digits}")
    home = read_phone(digits, country) if country else None
    both = dict.fromkeys(each for each in (whole, home) if each is not None)
    if len(both) > 1:
        first, second = both
        raise RefusedCell(
            web_people.UNSURE_PHONE(words=_cut(typed), first=first, second=second)
        )
    if not both:
        raise RefusedCell(web_people.BAD_PHONE(words=_cut(typed)))
    return next(iter(both))


# --- dates -----------------------------------------------------------------------------------


def date_of(typed: str, day_first: bool) -> date | None:
    """A date in digits; None where it is none."""
    if _SERIAL.fullmatch(typed):
        return _DAY_0 + timedelta(days=int(typed.partition(".")[0]))
    iso = _ISO.fullmatch(typed)
    if iso:
        return _date(int(iso[1]), int(iso[2]), int(iso[3]))
    marks = _BY_MARKS.fullmatch(typed)
    if marks is None:
        return None
    first, second, year = int(marks[1]), int(marks[2]), int(marks[3])
    day, month = (first, second) if day_first else (second, first)
    return _date(year + 2000 if year < 100 else year, month, day)


def needs_order(typed: str) -> bool:
    """Whether a date is written so that day and month must be told apart."""
    return _BY_MARKS.fullmatch(typed) is not None


def _date(year: int, month: int, day: int) -> date | None:
    try:
        return date(year, month, day)
    except ValueError:
        return None


def says_day_first(cells: list[str]) -> bool | None:
    """Whether the dates of a column can only be day first (True) or month first (False); None
    where they can be either, or some of each."""
    found = [marks for marks in map(_BY_MARKS.fullmatch, cells) if marks]
    day = any(int(marks[1]) > 12 for marks in found)
    month = any(int(marks[2]) > 12 for marks in found)
    return None if day == month else day
