"""Spacing, seedlings a hill, grain weight, gaps, a second leaf count: by the farmer's phone."""

from dataclasses import replace
from datetime import date, timedelta

import pytest

from assistant.agronomy.calendar import TaskCode
from assistant.agronomy.growth.warmth import Warmth
from assistant.wording import messages_care as c
from assistant.wording import messages_delay as d
from assistant.wording import messages_planting as g
from assistant.wording import messages_talk as m
from assistant.wording.message import Message, Say
from tests.talk import TODAY, Phone, item, nursery
from tests.valley import like


def asked_for(what: str) -> Phone:
    """Amina's phone where one of the four is asked for."""
    phone = Phone.enrolled(nursery())
    for text in ("CHANGE DATE", "7", what):
        phone.says(text)
    return phone


@pytest.mark.parametrize(
    ("typed", "row", "hill"),
    [("25 x 15", 25, 15), ("30x14 cm", 30, 14), ("25", 25, 25), ("22,5 by 22,5", 22.5, 22.5)],
)
def test_rows_and_hills_may_differ(typed: str, row: float, hill: float) -> None:
    """Square, rectangular, or the rows of a machine."""
    phone = asked_for("1")
    assert phone.hears(typed)[0] == like(m.AMENDED)
    inputs = phone.known.nurseries[0].inputs
    assert (inputs.spacing_row_cm, inputs.spacing_hill_cm) == (row, hill)


def test_the_seed_follows_the_hills() -> None:
    """25 x 25 cm are 160,000 hills a hectare, 0.64 of 250,000 (arithmetic): 5.79 kg of 9.05."""
    phone = asked_for("1")
    assert "Seed 5.8 kg dry" in phone.hears("25 x 25")[1]


@pytest.mark.parametrize(
    ("what", "typed", "again"),
    [
        ("1", "2 x 2", g.ASK_SPACING),
        ("1", "20 x 20 x 20", g.ASK_SPACING),
        ("1", "far", g.ASK_SPACING),
        ("2", "9", g.ASK_SEEDLINGS),
        ("2", "two and a half", g.ASK_SEEDLINGS),
        ("3", "my own", g.AGAIN_GRAINS),
        ("3", "2", g.AGAIN_GRAINS),
        ("4", "50", g.ASK_GAPS),
    ],
)
def test_what_cannot_be_is_asked_again(what: str, typed: str, again: Message) -> None:
    """With what to send, once."""
    assert asked_for(what).hears(typed) == [like(again)]


@pytest.mark.parametrize(
    ("typed", "grams", "told"),
    [
        ("24", 24.0, g.NOW_GRAINS),
        ("300 grains 8 g", 26.7, g.NOW_ROUGH),
        ("Jaya", 30.0, g.NOW_VARIETY),  # DSSAT, RICER048.CUL: 0.0300 g a grain
        ("basmati 385", 22.0, g.NOW_VARIETY),  # the same: 0.0220
    ],
)
def test_seed_is_weighed_or_named_and_shown_back(
    typed: str, grams: float, told: Message
) -> None:
    """300 grains that weigh 8 g are 26.7 g for 1000 (arithmetic)."""
    phone = asked_for("3")
    assert phone.hears(typed)[0] == like(m.AMENDED, told)
    assert phone.known.nurseries[0].inputs.grain_weight_g == pytest.approx(grams)


@pytest.mark.parametrize(
    ("typed", "told"),
    [
        # A scale of 1 g shows 3 g from 2.5 to 3.5 g: 25 to 35 g for 1000 (arithmetic).
        ("100 grains 3 g", g.NOW_ROUGH(thousand=30.0, low=25.0, high=35.0, count=400)),
        ("100 grains 2.5 g", g.NOW_GRAINS(thousand=25.0)),  # a scale of tenths
        ("400 grains 10 g", g.NOW_GRAINS(thousand=25.0)),
    ],
)
def test_too_few_grains_on_a_coarse_scale_are_said_to_be_rough(typed: str, told: Say) -> None:
    """A twentieth of doubt is the most: 10 g by steps of 1 g are 400 grains of 25 g."""
    assert asked_for("3").hears(typed)[0] == like(m.AMENDED, told)


def test_more_for_gaps_is_seed_for_them() -> None:
    """A tenth more seedlings take a tenth more seed: 9.05 x 1.1 = 9.96."""
    changed, seed, _ = asked_for("4").hears("10")
    assert changed == like(m.AMENDED, g.NOW_GAPS(gaps=10))
    assert "Seed 10 kg dry" in seed


def test_leaves_can_be_counted_again_without_being_asked() -> None:
    """From the second menu or in its words; it answers what is still asked."""
    sow = TODAY - timedelta(days=15)
    phone = Phone.enrolled(nursery(sow=sow, sown=True))
    phone.asked(item(TaskCode.LEAF_COUNT, TODAY - timedelta(days=3)))
    for text in ("MENU", "9"):
        phone.says(text)
    assert phone.hears("9") == [like(m.ASK_LEAVES)]
    assert phone.hears("30") == [like(m.LEAVES_ODD, m.ASK_LEAVES)]
    assert phone.hears("3") == [like(m.LEAVES_READY, m.ASK_TRANSPLANTING)]
    assert phone.known.items == ()
    phone.says("0")
    assert phone.hears("count leaves")[-1] == like(m.ASK_LEAVES)


@pytest.mark.parametrize(
    ("word", "message"),
    [
        ("watering", c.WATERING),
        ("site, making the bed", c.SITE),
        ("sort seed in salt", c.SALT_MIX),
    ],
)
def test_tips_are_brought_by_their_words(word: str, message: Message) -> None:
    """No way through two menus is needed."""
    assert Phone.enrolled(nursery()).hears(word)[0] == like(message, ...)


def test_overdue_and_still_waiting_hears_what_it_costs() -> None:
    """Day 24: one more a hill (PhilRice, How to transplant rice), so that mats raised for two
    plant 2 of 3; the loss is 4 x 2.72 % at most, and none by other trials."""
    phone = Phone.enrolled(nursery(sow=TODAY - timedelta(days=24), sown=True))
    phone.asked(item(TaskCode.OVERDUE))
    cost = c.LATE_LOSS(n=3, share=67, percent=11)
    (text,) = phone.hears("2")
    assert text == like(d.WATER_BACK, cost, d.ASK_WHY, ...)


def test_cool_water_begins_the_soaking_earlier() -> None:
    """RDA Korea and Kubota: soaked until water temperatures add up to 100; at 17 C 5.9, so 6
    days, then 2 moist: for sowing on 10 June from the 2nd."""
    phone = Phone.enrolled(nursery())
    phone.known = replace(phone.known, warmth=Warmth(TODAY, 17.0))
    expected = g.SOAK_COOL(
        label="A", degrees=17.0, days=6, moist=2, date=date(2026, 6, 2), sow=date(2026, 6, 10)
    )
    assert like(expected) in phone.hears("soaking, sprouting")


def test_the_best_days_that_are_told_are_not_past() -> None:
    """On day 17 the window of day 15 to 20 begins today."""
    phone = Phone.enrolled(nursery(sow=TODAY - timedelta(days=17), sown=True))
    for text in ("MENU", "9", "9"):
        phone.says(text)
    best = m.ASK_TRANSPLANTING(label="A", first=TODAY, last=TODAY + timedelta(days=3))
    assert phone.hears("3") == [like(m.LEAVES_READY, best)]
