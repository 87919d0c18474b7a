"""Mats that animals took: counted, told of the field, sown again or not."""

from datetime import timedelta

import pytest

from assistant.wording import messages_care as c
from assistant.wording import messages_delay as d
from assistant.wording import messages_talk as m
from tests.talk import TODAY, Phone, nursery
from tests.valley import like

DAY = timedelta(days=1)


def told(*words: str, day: int = 7) -> tuple[Phone, list[str]]:
    """A bed of 267 mats on a day, and what the last of these words brings."""
    phone = Phone.enrolled(nursery(sow=TODAY - day * DAY, sown=True))
    for text in ("PROBLEM", "4", *words[:-1]):
        phone.says(text)
    return phone, phone.hears(words[-1])


def test_mats_that_are_gone_are_counted_and_the_field_is_told() -> None:
    """20 of 267: 247 are 93 of 100."""
    phone, [text] = told("20")
    noted = d.LOST_NOTED(label="A", lost=20, mats=267, share=93)
    assert text == like(noted, d.ASK_FILL, ...)
    [bed] = phone.known.nurseries
    assert (bed.lost_mats, bed.mats_sown) == (20, 267)


def test_they_are_sown_again_with_their_mix_and_sheet() -> None:
    """And the field is whole again: 267 mats stand."""
    phone, [text] = told("20", "yes")
    assert text == like(d.FILL_SEED, d.FILL_MIX, d.FILL_APART)
    [bed] = phone.known.nurseries
    assert (bed.more_mats, bed.more_on, bed.standing) == (20, TODAY + 2 * DAY, 1.0)


def test_who_does_not_sow_again_guards_the_rest() -> None:
    phone, [text] = told("20", "no")
    assert text == like(d.NO_FILL)
    assert phone.known.nurseries[0].more_mats is None


def test_a_bed_that_is_all_gone_begins_anew() -> None:
    """What took them is known; which seed is sown now is asked."""
    phone, texts = told("267", "yes", "1")
    assert texts[1:3] == [like(c.AGAIN_NOTED), like(d.FILL_MIX)]
    [bed] = phone.known.nurseries
    assert (bed.sow_date, bed.sown, bed.lost_mats) == (TODAY + 2 * DAY, False, 0)


@pytest.mark.parametrize("words", ["268", "2.5", "many"])
def test_a_number_that_cannot_be_is_asked_back(words: str) -> None:
    phone, [text] = told(words)
    assert "NO" in text
    assert phone.known.nurseries[0].lost_mats == 0


def test_none_is_an_answer() -> None:
    phone, [text] = told("no")
    assert text == like(m.ALL_RIGHT)
    assert phone.known.nurseries[0].lost_mats == 0


def test_before_sowing_no_mats_are_asked_for() -> None:
    phone = Phone.enrolled(nursery(sow=TODAY + 5 * DAY))
    phone.says("PROBLEM")
    assert phone.hears("4") == [like(m.ANIMALS_ADVICE)]
