"""A sowing that is told in place of the day that was just moved is taken as sown today."""

from datetime import timedelta

import pytest

from assistant.agronomy.calendar import TaskCode
from assistant.wording import messages_talk as m
from tests.talk import TODAY, Phone, item, nursery
from tests.valley import like

DAY = timedelta(days=1)


@pytest.mark.parametrize(
    "words",
    [
        "no sorry, sowed this morning",
        "sorry, i sowed today",
        "no, sowed this morning",
        "sorry sown already",
    ],
)
def test_it_is_taken_as_sown_today_whatever_was_asked(words: str) -> None:
    """Right after its day was moved to the fourth; the seed is asked for, or nothing is."""
    for phone in (
        Phone.enrolled(nursery(sow=TODAY + 3 * DAY)),
        Phone.enrolled(nursery(sow=TODAY + 3 * DAY)).asked(item(TaskCode.SOAK)),
    ):
        assert phone.hears(words) == [like(m.SOWN_NOTED)]
        (bed,) = phone.known.nurseries
        assert (bed.sow_date, bed.sown) == (TODAY, True)


def test_it_is_heard_where_another_day_is_just_read_back() -> None:
    phone = Phone.enrolled(nursery(sow=TODAY + DAY))
    assert "not Tue 2 Jun" in phone.hears("we sow on 4 june")[0]
    assert phone.hears("no sorry, sowed this morning") == [like(m.SOWN_NOTED)]
    assert phone.known.session is None


@pytest.mark.parametrize("words", ["no sorry, not sown", "sorry, sowed yesterday", "no sorry"])
def test_what_is_not_told_of_today_is_not_taken(words: str) -> None:
    phone = Phone.enrolled(nursery(sow=TODAY + 3 * DAY))
    phone.says(words)
    assert not phone.known.nurseries[0].sown
