"""A farmer who does not know the day of sowing is told days; the own tin is measured once."""

from dataclasses import replace
from datetime import date, timedelta
from pathlib import Path

import pytest

from assistant.agronomy.calendar import TaskCode
from assistant.agronomy.measures import Shared, shared_by_tin
from assistant.wiring.varieties import open_varieties
from assistant.wording import messages_sowing as s
from assistant.wording import messages_talk as m
from assistant.wording import messages_when as w
from assistant.wording.day import DayWork, day_says, work_says
from tests.talk import TODAY, Phone, nursery
from tests.valley import like

DAY = timedelta(days=1)


def asked_for_days() -> Phone:
    """At the question for the day of sowing, of a plan of 0.4 ha, who says no."""
    phone = Phone.enrolled()
    for words in ("NEW", "0.4 ha", "85", "10"):
        phone.says(words)
    assert phone.hears("no") == [like(w.ASK_WATER_FROM)]
    return phone


def test_days_to_sow_are_told_with_reasons_and_one_is_chosen() -> None:
    """Water today: flooded two days, ploughed 15 to 18 before planting, so sown as soon as seed
    is soaked; 115 days before 10 November is 18 July."""
    phone = asked_for_days()
    phone.says("today")
    assert phone.hears("115") == [like(w.ASK_RIPE_BY)]
    told = phone.hears("10 november")
    assert told[0] == like(s.BETWEEN(first=date(2026, 6, 6), last=date(2026, 7, 18)))
    assert [text == like(s.DAY_RIPE) for text in told[1:-1]] == [True] * 3
    assert told[-1] == like(m.WHICH_READING, ...)
    assert phone.hears("3") == [like(m.CHECK, ...)]
    phone.says("yes")
    assert phone.known.nurseries[0].sow_date == date(2026, 7, 18)


def test_without_the_days_of_the_rice_water_alone_decides() -> None:
    phone = asked_for_days()
    phone.says("20 june")
    told = phone.hears("I don't know")
    assert told[0] == like(s.NOT_BEFORE, ...)
    assert told[-1] == like(m.WHICH_READING, ...)


def test_where_no_day_fits_the_question_stands_again() -> None:
    phone = asked_for_days()
    for words in ("20 june", "150"):
        phone.says(words)
    told = phone.hears("1 september")
    assert told[0].startswith("No day fits: ")
    assert told[-1] == like(m.ASK_SOWING)


@pytest.mark.parametrize("words", ["20", "9000", "goats"])
def test_days_that_no_rice_takes_are_asked_again(words: str) -> None:
    phone = asked_for_days()
    phone.says("today")
    assert phone.hears(words)[0] != like(w.ASK_RIPE_BY)


def test_a_tin_is_measured_once_and_tells_the_seed() -> None:
    """25 of it fill 10 L: 0.4 L. Sprouted paddy weighs about 0.6 kg a litre, so 240 g a tin,
    for heaps of 43 g: five or six mats."""
    phone = Phone.enrolled(nursery(sow=TODAY + 9 * DAY))
    assert phone.hears("tin") == [like(w.ASK_TINS)]
    assert phone.hears("25") == [like(w.TIN_KEPT(tin=0.4))]
    (bed,) = phone.known.nurseries
    work = DayWork(bed, (TaskCode.SOW,), bed.sow_date)
    told = next(say for say in work_says(work) if say.message is w.SEED_BY_TIN)
    assert dict(told.slots)["tins"] == 1
    before = DayWork(bed, (TaskCode.DRAIN_SEED,), bed.sow_date - DAY)
    assert w.HOW_TIN not in {say.message for say in day_says(before)}


@pytest.mark.parametrize(
    ("heap_g", "tin_l"), [(43, 0.4), (43, 0.2), (43, 1.0), (160, 0.4), (38, 0.05), (150, 0.1)]
)
def test_tins_and_mats_agree_within_a_tenth(heap_g: float, tin_l: float) -> None:
    """Worked by weight: 0.579 to 0.608 kg/L of sprouted paddy (see tests/reference)."""
    told = shared_by_tin(heap_g, tin_l)
    assert isinstance(told, Shared)
    each_g = told.tins * tin_l * 593 / told.mats
    assert each_g == pytest.approx(heap_g, rel=0.13)


def test_a_tin_too_large_for_the_seed_is_said_to_be() -> None:
    phone = Phone.enrolled(nursery(sow=TODAY + 9 * DAY))
    phone.says("tin")
    phone.says("2")
    assert phone.known.nurseries[0].tin_litres == 5


VARIETIES = tuple(open_varieties(Path("scenarios/district/varieties.toml")).values())


@pytest.mark.parametrize("words", ["kijani", "2", "Kijani please", "125"])
def test_a_variety_of_the_programme_is_named_instead_of_its_days(words: str) -> None:
    """Kijani takes 125 days: before 10 November that is 8 July."""
    phone = asked_for_days()
    phone.known = replace(phone.known, varieties=VARIETIES)
    asked = phone.hears("today")[0]
    assert "1 Mwanga" in asked and "2 Kijani" in asked
    assert phone.hears(words) == [like(w.ASK_RIPE_BY)]
    told = phone.hears("10 november")
    assert told[0] == like(s.BETWEEN(first=date(2026, 6, 6), last=date(2026, 7, 8)))
