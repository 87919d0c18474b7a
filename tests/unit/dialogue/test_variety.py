"""A variety that is named in a sentence: ripe when, planted when, so much seed."""

from dataclasses import replace
from datetime import timedelta
from typing import Any

import pytest

from assistant.agronomy.lot.programme_variety import Breeding, ProgrammeVariety
from assistant.agronomy.tasks import TaskCode
from tests.talk import TODAY, Phone, item, nursery

SHORT = ProgrammeVariety("early-1", "Early-1", 95, Breeding.INBRED, 22.0, 12, 16)
LONG = ProgrammeVariety("late-2", "Long Grain", 140, Breeding.TRADITIONAL, 30.0, 25, 35)
DAY = timedelta(days=1)


def phone_of(days: int, **given: Any) -> Phone:
    """Amina's bed, sown so many days ago or in so many."""
    phone = Phone.enrolled(nursery(sow=TODAY - days * DAY, sown=days > 0, **given))
    phone.known = replace(phone.known, varieties=(SHORT, LONG))
    return phone


def test_a_variety_of_the_programme_sets_days_ages_and_grains() -> None:
    """By hand: 0.4 ha at 20 x 20 cm and 2 a hill are 200,000 seedlings; of seed that sprouts
    85 of 100, of which 65 in the common practice grow, 361,991 seeds of 22 g a thousand are
    7.96 kg, told as 8 kg."""
    phone = phone_of(-10)
    ripe, amounts, _ = phone.hears("i have early-1 seed")
    bed = phone.known.nurseries[0]
    assert (bed.ripens_d, bed.ripe_on) == (95, bed.sow_date + 95 * DAY)
    window = bed.paced.window
    assert (window.first.value, window.last.value) == (12, 16)
    assert "8 kg dry" in amounts and "Its seedlings are planted" in ripe


def test_leaves_are_counted_as_long_before_the_varietys_own_window() -> None:
    """Three days before it, as of any mat: day 12 before day 15."""
    phone = phone_of(-10)
    phone.says("my seed is long grain")
    bed = phone.known.nurseries[0]
    [count] = [task for task in bed.tasks if task.code is TaskCode.LEAF_COUNT]
    assert bed.day(count.date) == 22


def test_what_is_sown_keeps_its_seed() -> None:
    phone = phone_of(5)
    assert len(phone.hears("i have early-1 seed")) == 1
    bed = phone.known.nurseries[0]
    assert bed.inputs.grain_weight_g == 25.0 and bed.age_first == 12


@pytest.mark.parametrize(
    "text", ["my seed is a 120 day variety", "i have 120 day seed", "my variety takes 120 days"]
)
def test_the_days_alone_are_kept(text: str) -> None:
    phone = phone_of(-10)
    phone.says(text)
    assert phone.known.nurseries[0].ripens_d == 120


@pytest.mark.parametrize(
    "text",
    [
        "what is a 120 day variety?",
        "which variety is best",
        "i have seed for 3 days",
        "i soaked 120 kg of seed for 2 days",
        "my neighbour has 120 goats",
    ],
)
def test_nothing_is_kept_of_other_talk(text: str) -> None:
    phone = phone_of(-10)
    phone.says(text)
    assert phone.known.nurseries[0].ripens_d is None


def test_a_deed_with_the_name_of_a_variety_stays_a_deed() -> None:
    phone = phone_of(0).asked(item(TaskCode.SOW))
    phone.says("sowed the early-1 today")
    assert phone.known.nurseries[0].ripens_d is None
