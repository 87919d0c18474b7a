"""Phone numbers as people type them, and the ranges set aside for fiction."""

import pytest

from assistant.people import is_fiction, read_phone

# Ofcom sets +44 7700 900000-900999 aside for drama (Ofcom, "Telephone numbers for use in TV
# and radio drama programmes"); country code 999 is not assigned (ITU-T E.164).
FICTION = {
    "+447700900000": True,
    "+447700900999": True,
    "+447700901000": False,
    "+4477009000001": False,
    "+44770090000": False,
    "+999001234567": True,
    "+99900123456": False,
}


@pytest.mark.parametrize(("phone", "fiction"), FICTION.items(), ids=FICTION.keys())
def test_numbers_of_fiction_are_known(phone: str, fiction: bool) -> None:
    """And no other."""
    assert is_fiction(phone) is fiction


# as typed, in a country: the number
TYPED = {
    ("+44 7700 900101", None): "+447700900101",
    ("+44-7700-900-101", None): "+447700900101",
    ("0044 7700 900101", None): "+447700900101",
    ("(+44) 7700.900101", None): "+447700900101",
    ("07700 900101", "GB"): "+447700900101",
    ("+99900 123 4567", None): "+999001234567",
    # A number that Ofcom's plan allows, as the library of the phone companies reads it.
    ("020 7946 0958", "GB"): "+442079460958",
    ("07700 900101", None): None,
    ("", None): None,
    ("hello", "GB"): None,
    ("+", None): None,
    ("+0", None): None,
    ("12", "GB"): None,
    ("+44 7700 90010x", None): None,
    ("+٤٤٧٧٠٠٩٠٠١٠١", None): "+447700900101",
    ("9" * 300, "GB"): None,
}


@pytest.mark.parametrize(("typed", "number"), TYPED.items(), ids=lambda row: str(row)[:40])
def test_a_typed_number_is_read(typed: tuple[str, str | None], number: str | None) -> None:
    """In E.164, or not at all."""
    assert read_phone(*typed) == number
