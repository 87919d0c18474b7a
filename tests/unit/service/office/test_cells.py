"""What cells say: numbers are exact or refused, dates and sizes sure or refused."""

from datetime import date, datetime
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from openpyxl.utils.datetime import from_excel

from assistant.people import Village, read_phone
from assistant.service.office import cells
from assistant.service.office.cells import (
    CellReader,
    Entry,
    RefusedCell,
    Unread,
    bare_name,
    date_of,
    phone_of,
    says_day_first,
)
from assistant.service.office.choices import Choices
from assistant.service.office.columns import Field
from assistant.service.office.rows import SheetRow
from assistant.wiring.lexicons import open_lexicons
from assistant.wording import messages_web_people as w
from assistant.wording.message import Message

# Numbers set aside for drama by Ofcom; +44 is the United Kingdom's (ITU-T E.164).
READ = {
    "+447700900101": "+447700900101",
    "+44 7700 900 101": "+447700900101",
    "0044 7700 900101": "+447700900101",
    "07700 900101": "+447700900101",
    "07700-900-101": "+447700900101",
    "447700900101": "+447700900101",  # a spreadsheet took the plus
    "7700900101": "+447700900101",  # or the nought
}
REFUSED = {
    "": w.NO_PHONE,
    "4.47701E+11": w.CUT_PHONE,
    "4,47701E+11": w.CUT_PHONE,
    "447701000000": w.CUT_PHONE,
    "447700900101.5": w.CUT_PHONE,
    "12": w.BAD_PHONE,
    "Amina": w.BAD_PHONE,
    "=A1": w.BAD_PHONE,
    "07700 900101 / 07700 900102": w.TWO_PHONES,
    "07700 900101 or +447700900102": w.TWO_PHONES,
    "07700 900101 / none": w.BAD_PHONE,
}


@pytest.mark.parametrize("typed", READ)
def test_a_number_is_read_in_every_form(typed: str) -> None:
    """Of the programme's country, where it has no code."""
    assert phone_of(typed, "GB") == READ[typed]


@pytest.mark.parametrize("typed", REFUSED)
def test_a_number_that_is_not_sure_is_refused(typed: str) -> None:
    """Never filled up, never guessed."""
    with pytest.raises(RefusedCell) as refused:
        phone_of(typed, "GB")
    assert refused.value.why.message is REFUSED[typed]


@given(st.text(max_size=20), st.sampled_from(["GB", "KE", "IN-WB", None]))
def test_any_cell_is_a_number_or_refused(typed: str, region: str | None) -> None:
    """What is read is a number that can exist, and reads as itself."""
    try:
        found = phone_of(typed, region)
    except RefusedCell:
        return
    assert read_phone(found) == found


def test_digits_that_may_be_two_numbers_are_refused_with_both(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """Such as a mobile of Indonesia without its nought, which is a number of Japan with a plus.
    No number set aside for fiction is like that, so the numbering plan is an invented one."""
    plan = {"+7700900101": "+99900000101", "7700900101": "+447700900101"}
    monkeypatch.setattr(cells, "read_phone", lambda typed, region=None: plan.get(typed))
    with pytest.raises(RefusedCell) as refused:
        phone_of("7700900101", "GB")
    assert refused.value.why == w.UNSURE_PHONE(
        words="7700900101", first="+99900000101", second="+447700900101"
    )


DATES = {
    ("2026-06-10", True): date(2026, 6, 10),
    ("2026-06-10", False): date(2026, 6, 10),
    ("10/6/2026", True): date(2026, 6, 10),
    ("10/6/2026", False): date(2026, 10, 6),
    ("10.06.26", True): date(2026, 6, 10),
    ("31/6/2026", True): None,
    ("46183", True): date(2026, 6, 10),
    ("46183.0", True): date(2026, 6, 10),
    ("46183.5", True): None,
    ("4618", True): None,
    ("461830", True): None,
    ("soon", True): None,
}


@pytest.mark.parametrize(("typed", "day_first"), DATES)
def test_a_date_in_digits(typed: str, day_first: bool) -> None:
    """Day or month first as the officer said; a bare number is none, but for the days that a
    spreadsheet counts where a date lost its format."""
    assert date_of(typed, day_first) == DATES[typed, day_first]


@pytest.mark.parametrize("typed", ["10000", "45000", "46183", "73050", "99999"])
def test_a_date_that_lost_its_format_is_counted_as_spreadsheets_count(typed: str) -> None:
    """openpyxl is the reference: ECMA-376 part 1, the date base of 1900."""
    counted = from_excel(int(typed))
    assert isinstance(counted, datetime) and date_of(typed, True) == counted.date()


def test_the_order_of_day_and_month_is_told_by_the_column() -> None:
    """And asked for where it is not, or where rows differ."""
    assert says_day_first(["1/6/2026", "13/6/2026"]) is True
    assert says_day_first(["1/6/2026", "6/13/2026"]) is False
    assert says_day_first(["1/6/2026"]) is None
    assert says_day_first(["13/6/2026", "6/13/2026"]) is None


KIJANI = Village(1, "Kijani", "Africa/Nairobi")


def read(unit: str = "", leave_cells: bool = False, **typed: Any) -> Entry | Unread:
    """One row of an officer of Kijani, on 1 June 2026."""
    reader = CellReader(
        choices=Choices(columns=dict(enumerate(Field)), unit=unit, leave_cells=leave_cells),
        villages={bare_name("Kijani"): KIJANI},
        others=frozenset({bare_name("Mto Mwanga")}),
        lexicons=(open_lexicons()["en"],),
        languages=("en", "sw"),
        region="GB",
        today=date(2026, 6, 1),
        units={},
    )
    given = {"phone": "07700900101", "village": "KIJANI", **typed}
    return reader.entry(SheetRow(2, tuple(given.get(field.value, "") for field in Field)))


def test_a_whole_row_is_read() -> None:
    """Every field."""
    entry = read(
        name="Amina  Juma",
        language="Kiswahili",
        area="0.4 ha",
        sowing="10 June",
        germination="85",
        nursery="River",
    )
    assert entry == Entry(
        line=2,
        phone="+447700900101",
        name="Amina Juma",
        village=KIJANI,
        language="sw",
        language_given=True,
        area_m2=4000.0,
        area_words="0.4 ha",
        sowing=date(2026, 6, 10),
        germination=85.0,
        bed="River",
    )


WRONG: dict[tuple[str, str], Message] = {
    ("village", "Nowhere"): w.UNKNOWN_VILLAGE,
    ("village", "Mto Mwanga"): w.OTHERS_VILLAGE,
    ("village", ""): w.NO_VILLAGE,
    ("language", "Klingon"): w.BAD_LANGUAGE,
    ("area", "0.4"): w.NO_UNIT,
    ("area", "big"): w.BAD_AREA,
    ("area", "2 ha or 3 ha"): w.BAD_AREA,
    ("sowing", "46"): w.BAD_DATE,
    ("sowing", "44721"): w.PAST_DATE,  # four years off: the date base of 1904
    ("sowing", "2026-01-01"): w.PAST_DATE,
    ("sowing", "2028-01-01"): w.FAR_DATE,
    ("germination", "0.85"): w.BAD_GERMINATION,
    ("name", "12"): w.BAD_NAME,
    ("name", "x" * 41): w.BAD_NAME,
    ("nursery", "By the great river"): w.BAD_BED,
}


@pytest.mark.parametrize(("field", "typed"), WRONG)
def test_a_cell_that_is_not_sure_says_why(field: str, typed: str) -> None:
    """And what to write."""
    cells: dict[str, Any] = {field: typed}
    found = read(**cells)
    assert isinstance(found, Unread)
    assert [why.message for why in found.why] == [WRONG[field, typed]]
    assert found.may_leave is (field != "village")


def test_all_reasons_are_told_at_once() -> None:
    """So that a row is mended in one round."""
    found = read(name="12", village="Nowhere", area="3 bigha and a bit", sowing="some day")
    assert isinstance(found, Unread)
    told = [why.message for why in found.why]
    assert told == [w.BAD_NAME, w.UNKNOWN_VILLAGE, w.BAD_AREA, w.BAD_DATE]
    assert found.phone == "+447700900101"


def test_a_person_is_taken_without_cells_that_cannot_be_read() -> None:
    """Where the officer says so; but not without a number or a village."""
    found = read(leave_cells=True, name="Amina", germination="tested ok", language="Klingon")
    assert isinstance(found, Entry)
    assert (found.name, found.germination, found.language) == ("Amina", None, "en")
    assert not found.language_given
    assert [why.message for why in found.doubts] == [w.BAD_LANGUAGE, w.BAD_GERMINATION]
    assert isinstance(read(leave_cells=True, village="Nowhere"), Unread)
    assert isinstance(read(leave_cells=True, phone="4.47E+11"), Unread)


def test_a_unit_that_was_chosen_is_for_bare_numbers_only() -> None:
    """0.4 is then 0.4 ha; an acre stays an acre (4046.8564224 m2: NIST Handbook 44,
    Appendix C, for the international acre)."""
    bare, acre = read("ha", area="0.4"), read("ha", area="1 acre")
    assert isinstance(bare, Entry) and bare.area_m2 == 4000.0
    assert isinstance(acre, Entry) and acre.area_m2 == pytest.approx(4046.8564224)
