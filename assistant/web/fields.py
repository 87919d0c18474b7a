"""Fields of forms and what each asks for; all but boxes are called by a message."""

from collections.abc import Callable, Collection, Iterator
from datetime import date, time
from typing import Any, cast

from wtforms import DateField, Field, StringField, TimeField
from wtforms.form import BaseForm
from wtforms.validators import StopValidation, ValidationError
from wtforms.widgets import TextArea, TextInput

from assistant.wording import messages_web_forms as words
from assistant.wording.message import Message, Say

YEARS = range(2000, 2100)  # of a season; beyond its end there is no next day to count to
SHOWN = 40  # characters of what could not be read


def _wrong(why: Say) -> ValidationError:
    """A fault in our words. WTForms hands on whatever it is given; its types know texts."""
    return ValidationError(cast(str, why))


class Needed:
    """The field must be filled in; browsers are told so too.

    otherwise: what the page says where it was not, if there are better words than "fill in"
    """

    field_flags = {"required": True}

    def __init__(self, otherwise: Message | None = None) -> None:
        self._otherwise = otherwise

    def __call__(self, form: BaseForm, field: Any) -> None:
        if field.data not in (None, "", []) and field.data is not False or field.errors:
            return
        why = self._otherwise() if self._otherwise else words.MISSING(what=field.called())
        raise StopValidation(cast(str, why))


class AtMost:
    """So many characters and no more: nothing that was typed is cut off unseen."""

    def __init__(self, longest: int) -> None:
        self._longest = longest
        self.field_flags = {"maxlength": longest}

    def __call__(self, form: BaseForm, field: Any) -> None:
        count = len(field.data or "")
        if count > self._longest:
            raise _wrong(words.TOO_LONG(what=field.called(), n=self._longest, count=count))


class TypedWords(StringField):
    """Words, without blanks around them."""

    data: str

    def __init__(
        self, called: Message, needs: Collection[object] = (), longest: int = 1000, **more: Any
    ) -> None:
        self.called = called
        more.setdefault("default", "")
        super().__init__(called.text, [*needs, AtMost(longest)], **more)

    def process_formdata(self, valuelist: list[str]) -> None:
        # As browsers count towards `maxlength`: a line's end is one character, and sent as two.
        self.data = valuelist[0].replace("\r\n", "\n").strip() if valuelist else ""


class TypedLines(TypedWords):
    """Words of several lines."""

    widget = TextArea()


class Day(DateField):
    """A date of a season; what is none is told and not taken for an empty field."""

    def __init__(self, called: Message, needs: Collection[object] = (), **more: Any) -> None:
        self.called = called
        super().__init__(called.text, list(needs), **more)

    def process_formdata(self, valuelist: list[str]) -> None:
        self.data = None
        typed = "".join(valuelist).strip()
        if not typed:
            return
        self.data = season_date(typed)
        if self.data is None:
            raise _wrong(words.NO_DATE(what=self.called(), words=typed[:SHOWN]))


class Hour(TimeField):
    """A time of day."""

    def __init__(self, called: Message, needs: Collection[object] = (), **more: Any) -> None:
        self.called = called
        super().__init__(called.text, list(needs), **more)

    def process_formdata(self, valuelist: list[str]) -> None:
        self.data = None
        typed = "".join(valuelist).strip()
        if not typed:
            return
        try:
            self.data = time.fromisoformat(typed)
        except ValueError:
            raise _wrong(words.NO_TIME(what=self.called(), words=typed[:SHOWN])) from None


class Number(Field):
    """A plain decimal number, with a point or a comma."""

    widget = TextInput()
    data: float | None

    def __init__(self, called: Message, needs: Collection[object] = (), **more: Any) -> None:
        self.called = called
        super().__init__(called.text, list(needs), **more)

    def process_formdata(self, valuelist: list[str]) -> None:
        self.data = None
        typed = "".join(valuelist).strip()
        if not typed:
            return
        self.data = plain_number(typed)
        if self.data is None:
            raise _wrong(words.NO_NUMBER(what=self.called(), words=typed[:SHOWN]))

    def _value(self) -> str:
        if self.raw_data:
            return str(self.raw_data[0])
        return "" if self.data is None else f"{self.data:g}"


class OneOf(StringField):
    """One of a few words that the page offers; it draws them, since each is worded."""

    data: str

    def __init__(
        self,
        called: Message,
        known: Collection[str] | Callable[[], Collection[str]],
        default: str,
        **more: Any,
    ) -> None:
        self.called, self._known = called, known
        super().__init__(called.text, default=default, **more)

    def process_formdata(self, valuelist: list[str]) -> None:
        self.data = valuelist[0] if valuelist else cast(str, self.default)
        known = self._known() if callable(self._known) else self._known
        if self.data not in known:
            self.data = cast(str, self.default)
            raise _wrong(words.NO_CHOICE(what=self.called()))


class ChosenRow(Field):
    """The row that was chosen, by its id; whether it is in sight the service says."""

    widget = TextInput("hidden")
    data: int | None

    def __init__(self, called: Message, needs: Collection[object] = (), **more: Any) -> None:
        self.called = called
        super().__init__(called.text, list(needs), **more)

    def process_formdata(self, valuelist: list[str]) -> None:
        self.data = next(_ids(valuelist), None)

    def _value(self) -> str:
        return "" if self.data is None else str(self.data)


class Ticked(Field):
    """Rows that were ticked, by their ids."""

    data: list[int]

    def __init__(self, **more: Any) -> None:
        super().__init__(default=list, **more)

    def process_formdata(self, valuelist: list[str]) -> None:
        self.data = list(_ids(valuelist))


class TickedWords(Field):
    """Words of a list that were ticked."""

    data: list[str]

    def __init__(self, **more: Any) -> None:
        super().__init__(default=list, **more)

    def process_formdata(self, valuelist: list[str]) -> None:
        self.data = list(valuelist)


# --- what is typed ---------------------------------------------------------------------------


def _ids(typed: list[str]) -> Iterator[int]:
    return (int(each) for each in typed if is_id(each))


def is_id(text: str) -> bool:
    """Whether a text can be the number of a row."""
    return text.isascii() and text.isdecimal() and len(text) < 10


def season_date(text: str) -> date | None:
    """A date as browsers write it; None for what is none, or of no year that a season has."""
    try:
        found = date.fromisoformat(text)
    except ValueError:
        return None
    return found if found.year in YEARS else None


def plain_number(text: str) -> float | None:
    """A decimal number with a point or a comma; None for anything else."""
    plain = text.replace(",", ".", 1)
    digits = plain.replace(".", "", 1)
    return float(plain) if digits.isascii() and digits.isdecimal() else None
