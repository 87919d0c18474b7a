"""Forms: what is typed is read or told, in our own words, and never lost."""

from collections.abc import Iterator

import pytest
from markupsafe import Markup
from werkzeug.datastructures import MultiDict
from wtforms import BooleanField, Field

import assistant.web.app  # brings every form
from assistant.web.fields import (
    ChosenRow,
    Day,
    Hour,
    Needed,
    Number,
    Ticked,
    TypedLines,
    TypedWords,
)
from assistant.web.forms import OfficerForm
from assistant.wording import messages_web_forms as words
from assistant.wording.message import Message, Say

assert assistant.web.app
NAME = Message("Name")


class Form(OfficerForm):
    """A field of each kind."""

    name = TypedWords(NAME, [Needed()], longest=5)
    lines = TypedLines(NAME, longest=5)
    day = Day(NAME)
    hour = Hour(NAME)
    warmth = Number(NAME)
    row = ChosenRow(NAME)
    rows = Ticked()
    yes = BooleanField()


def every_form(of: type[OfficerForm] = OfficerForm) -> Iterator[type[OfficerForm]]:
    """All forms of the pages."""
    for each in of.__subclasses__():
        yield from (each, *every_form(each))


def sent(**fields: str) -> Form:
    """A form as it was sent, and looked at."""
    form = Form(MultiDict({"name": "Asha", **fields}))
    form.validate()
    return form


READ = [
    ("name", "  Asha ", "Asha"),
    ("lines", "a\r\nb\r\nc", "a\nb\nc"),
    ("day", "2026-06-10", "2026-06-10"),
    ("day", "", "None"),
    ("hour", "14:30", "14:30:00"),
    ("warmth", "22,5", "22.5"),
    ("warmth", "", "None"),
    ("row", "7", "7"),
    ("row", "", "None"),
    ("rows", "3", "[3]"),
    ("rows", "me", "[]"),
    ("yes", "on", "True"),
]


@pytest.mark.parametrize(("field", "typed", "read"), READ)
def test_what_is_typed_is_read(field: str, typed: str, read: str) -> None:
    """Without a fault."""
    form = sent(**{field: typed})
    assert (form.faults, str(form[field].data)) == ([], read)


TOLD = [
    ("name", " ", words.MISSING),
    ("name", "Ashaaa", words.TOO_LONG),
    ("day", "12/6", words.NO_DATE),
    ("day", "1026-06-10", words.NO_DATE),
    ("hour", "25:99", words.NO_TIME),
    ("warmth", "warm", words.NO_NUMBER),
    ("warmth", "nan", words.NO_NUMBER),
    ("warmth", "1e1", words.NO_NUMBER),
    ("warmth", "1_0", words.NO_NUMBER),
]


@pytest.mark.parametrize(("field", "typed", "told"), TOLD)
def test_what_cannot_be_read_is_told_and_stays(field: str, typed: str, told: Message) -> None:
    """And the field says so to a screen reader."""
    form = sent(**{field: typed})
    assert [each.message for each in form.faults] == [told]
    assert form[field].data in (None, typed.strip())
    drawn = form[field]()
    assert isinstance(drawn, Markup) and 'aria-invalid="true"' in drawn
    assert typed.strip() in drawn


def test_a_fault_is_said_once() -> None:
    """However many fields have it, and with what the service says."""
    form = sent(day="x", hour="x", lines="many words").refuse(NAME).refuse(NAME)
    assert len(form.faults) == 4


@pytest.mark.parametrize("form", tuple(every_form()), ids=lambda form: form.__name__)
def test_every_fault_of_every_form_is_in_our_own_words(form: type[OfficerForm]) -> None:
    """The library's English reaches no page: neither where nothing was sent nor nonsense."""
    names = [field.name for field in form()]
    for typed in ({}, dict.fromkeys(names, "?"), dict.fromkeys(names, "x" * 300_000)):
        tried = form(MultiDict(typed))
        tried.validate()
        assert all(isinstance(each, Say) for each in tried.faults)


def _texts(form: OfficerForm) -> Iterator[Field]:
    return (each for each in form if isinstance(each, TypedWords))


@pytest.mark.parametrize("form", tuple(every_form()), ids=lambda form: form.__name__)
def test_no_field_takes_words_without_end(form: type[OfficerForm]) -> None:
    """Each says to the browser how long it may be."""
    assert all(each.flags.maxlength for each in _texts(form()))
