"""Messages in the words of a language."""

from datetime import date, time
from decimal import Decimal

import pytest

from assistant.wording.message import Message, WordingError, slots_of
from assistant.wording.render import Catalogue, money, render, render_all
from tests.valley import CATALOGUES

ENGLISH, SWAHILI = CATALOGUES["en"], CATALOGUES["sw"]
TODAY = Message("{what} on {date} at {clock}: {count} of {label}")


def test_slots_are_worded_as_the_language_writes_them() -> None:
    """Dates and numbers by CLDR (the Unicode locale data, which Babel carries)."""
    say = TODAY(
        what=Message("soak")(),
        date=date(2026, 6, 10),
        clock=time(6, 5),
        count=1234.5,
        label="A",
    )
    assert render(say, ENGLISH) == "soak on Wed 10 Jun at 06:05: 1,234.5 of A"
    assert render(say, SWAHILI).startswith("sw:sw:soak on ")


WHOLE = {1234567.0: "1,234,567", 0.5: "0.5", 2.0: "2", 0.1 + 0.2: "0.3", 1 / 3: "0.333"}


@pytest.mark.parametrize(("value", "words"), WHOLE.items())
def test_a_number_is_written_without_idle_zeros(value: float, words: str) -> None:
    """At most three decimals."""
    assert render(Message("{n_value}")(n_value=value), ENGLISH) == words


# Coins of each currency by ISO 4217; signs and their place by CLDR.
MONEY = {
    ("0.8", "KES"): "KES\N{NO-BREAK SPACE}0.80",
    ("1234.5", "VND"): "₫1,234",
    ("12", "USD"): "$12.00",
}


@pytest.mark.parametrize(("given", "words"), MONEY.items())
def test_money_is_written_with_its_currency(given: tuple[str, str], words: str) -> None:
    """As the reader's language does."""
    assert money(Decimal(given[0]), given[1], "en") == words


WORDS = ("{label}", "{0}", "{", "}}", "%s %(x)s", "{label.__class__}", "\\n", "<b>")


@pytest.mark.parametrize("typed", WORDS)
def test_what_a_person_typed_is_shown_as_it_is(typed: str) -> None:
    """It is no format string."""
    assert render(Message("You wrote {words}.")(words=typed), ENGLISH) == f"You wrote {typed}."


def test_a_plural_follows_its_count() -> None:
    """By the slot n."""
    more = Message("and {n} more nursery.", plural="and {n} more nurseries.")
    texts = [render(more(n=count), ENGLISH) for count in (1, 2)]
    assert texts == ["and 1 more nursery.", "and 2 more nurseries."]


def test_sentences_stand_each_on_a_line() -> None:
    """As on a phone."""
    assert render_all((Message("One.")(), Message("Two.")()), ENGLISH) == "One.\nTwo."


@pytest.mark.parametrize("slots", [{}, {"label": "A", "more": 1}, {"lable": "A"}])
def test_a_text_with_wrong_slots_is_our_mistake_and_told_so(slots: dict[str, str]) -> None:
    """At once, not when the text is sent."""
    with pytest.raises(WordingError, match="label"):
        Message("Nursery {label}")(**slots)


def test_slots_are_found_by_name() -> None:
    """Each once."""
    assert slots_of("{a} and {b} and {a}") == {"a", "b"}


def test_a_text_without_a_translation_is_said_in_english() -> None:
    """Better than nothing."""
    from gettext import NullTranslations

    empty = Catalogue("sw", NullTranslations())
    assert render(Message("Stopped.")(), empty) == "Stopped."
