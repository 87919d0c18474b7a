"""Yellow leaves and their look-alikes, few shoots, weather: each to its end."""

from dataclasses import replace
from datetime import date, timedelta
from typing import Any

import pytest

from assistant.agronomy.calendar import TaskCode
from assistant.agronomy.practices import MAT
from assistant.channel import Channel
from assistant.dialogue import values as v
from assistant.wording import messages_amounts as a
from assistant.wording import messages_care as c
from assistant.wording import messages_delay as d
from assistant.wording import messages_talk as m
from assistant.wording.day import DayWork, work_says
from assistant.wording.day_practice import batch_of
from assistant.wording.message import Message, Say
from assistant.wording.render import render_all
from tests.talk import TODAY, Phone, item, nursery
from tests.valley import CATALOGUES, like


def kg(amount: float) -> Say:
    """A weight as it stands in a text."""
    return a.KILOGRAMS(amount=amount)


def on_day(day: int, **given: Any) -> Phone:
    """Amina's bed of 40 m2, so many days old."""
    sow = TODAY - timedelta(days=day)
    return Phone.enrolled(nursery(sow=sow, sown=day >= 0, **given))


def through(phone: Phone, *texts: str) -> list[str]:
    """The answer to the last of these texts."""
    for text in texts[:-1]:
        phone.says(text)
    return phone.hears(texts[-1])


def test_plain_want_of_nitrogen_gets_the_spray_for_this_bed_and_this_can() -> None:
    """ICAR portal, mat nursery: 1.5 kg in 300 L on 100 m2; so on 40 m2 600 g in 120 L, 5 g in
    each litre, 80 g in a sprayer of 16 L."""
    (text,) = through(on_day(9, uncovered=True), "PROBLEM", "1", "8", "1", "1", "3")
    assert text == like(c.UREA_CAN)
    for words in ("80 g in a 16 L can", "600 g in 120 L", "Once only", "never stronger"):
        assert words in text
    for caution in (
        "small holes",
        "evening",
        "not in the sun",
        "rinse",
        "eyes",
        "hands",
        "children",
    ):
        assert caution in text


def test_a_can_larger_than_the_bed_needs_is_told_in_litres_of_the_bed() -> None:
    """100 m2 of field: 1 m2 of bed, 3 L with 15 g."""
    small = nursery(sow=TODAY - timedelta(days=9), sown=True, uncovered=True)
    inputs = type(small.inputs)(field_area_m2=100.0, germination=0.85)
    phone = Phone.enrolled(replace(small, inputs=inputs))
    (text,) = through(phone, "PROBLEM", "1", "8", "1", "1", "10 L")
    assert text == like(m.UREA_ADVICE)
    assert "15 g in 3 L" in text


@pytest.mark.parametrize(
    ("answers", "may_be", "told"),
    [
        (("1",), c.M_SPOTS, "spots"),
        (("2",), None, "insects"),
        (("3",), c.M_NEW, "young_leaves"),
        (("4",), c.M_COLD, "cold"),
        (("5",), c.M_SALT, "salt"),
        (("6",), c.M_WATER, "water"),
        (("7",), None, "unsure"),
        # Zinc yellows old leaves from the base (LSU AgCenter, Harrell, 2013).
        (("8", "2"), c.M_BASE, "base"),
        (("8", "3"), c.M_ALL, "all"),
        # Iron shows in young leaves.
        (("8", "4"), c.M_NEW, "new"),
        (("8", "5"), None, "leaves_unsure"),
        (("8", "1", "2"), c.M_ROT, "tip,patches"),
        (("8", "1", "3"), None, "tip,edges"),
        (("8", "1", "4"), c.M_ROT, "tip,smell"),
    ],
)
def test_whatever_looks_like_something_else_goes_to_the_officer_with_the_answers(
    answers: tuple[str, ...], may_be: Message | None, told: str
) -> None:
    """And nothing is to be sprayed meanwhile."""
    phone = on_day(9)
    expected = like(may_be, m.TOLD_OFFICER) if may_be else like(m.TOLD_OFFICER)
    assert through(phone, "PROBLEM", "1", *answers) == [expected]
    assert phone.changes == [v.CallForHelp("yellow", told, 1)]


# --- few shoots ------------------------------------------------------------------------------

# Amina's 4,000 m2 need 100,000 hills x 2 = 200,000 seedlings from 40 m2 = 400,000 cm2: half a
# seedling on each cm2, so 50 in a square of 10 x 10 cm to plant and 77 that should come up.


def test_before_day_5_there_is_only_waiting() -> None:
    """The bed is still covered."""
    assert through(on_day(4), "PROBLEM", "2") == [like(m.NOT_UP_ADVICE)]


def test_before_sowing_few_shoots_are_about_the_seed() -> None:
    """Nothing can be up yet."""
    assert through(on_day(-2), "PROBLEM", "2") == [like(m.SEED_ADVICE)]


def test_enough_shoots_are_said_to_be_enough() -> None:
    """62 of 77, four fifths."""
    (text,) = through(on_day(9), "PROBLEM", "2", "62")
    assert text == like(c.STAND_GOOD(label="A", shoots=62, needed=77))


def test_few_shoots_early_may_still_come_and_the_uncovering_waits() -> None:
    """Day 6; counted again two days later."""
    phone = on_day(6)
    (asked,) = through(phone, "PROBLEM", "2", "20 25 18")
    assert asked == like(c.STAND_WAIT(label="A", shoots=21, needed=77), ...)
    assert phone.hears("1") == [like(c.WAIT_NOTED(label="A", date=date(2026, 6, 3)))]
    assert phone.known.nurseries[0].uncover_date == date(2026, 6, 3)


def test_half_a_stand_is_filled_with_mats_for_what_is_missing() -> None:
    """31 of 62 plant half: 49.6 % of 267 mats = 132.4, so 133, and of 9.05 kg 4.49, so 4.5.
    Soaked on 1 June, sown on the 3rd, ready from day 15, the 18th."""
    phone = on_day(9)
    (asked,) = through(phone, "PROBLEM", "2", "30 35 28")
    assert asked == like(c.STAND_FILL(label="A", shoots=31, needed=77), ...)
    noted = c.FILL_NOTED(
        label="A",
        seed=kg(4.5),
        mats=a.MORE_MATS(n=133),
        sowing=date(2026, 6, 3),
        first=date(2026, 6, 18),
    )
    # They come with their own mix, 1,600 x 133 / 267 L, and sheet, 44 x 133 / 267 m2.
    assert phone.hears("1") == [
        like(noted),
        like(d.FILL_MIX(mix=798, sheet=22, parts=batch_of(MAT)), d.FILL_APART),
    ]
    (kept,) = phone.known.nurseries
    assert kept.resown and (kept.more_on, kept.more_mats) == (date(2026, 6, 3), 133)


def test_seed_that_was_added_has_days_of_its_own() -> None:
    """Sown on the 3rd: looked at on its day 5, planted from its day 15 on; gaps and result wait
    for it, however early the first mats were planted."""
    phone = on_day(9, transplanted_on=TODAY + timedelta(days=9))
    through(phone, "PROBLEM", "2", "30 35 28")
    phone.hears("1")
    days = {task.code: task.date for task in phone.known.nurseries[0].tasks}
    assert days[TaskCode.MORE_SOW] == date(2026, 6, 3)
    assert days[TaskCode.MORE_UNCOVER] == date(2026, 6, 8)
    assert days[TaskCode.MORE_READY] == date(2026, 6, 18)
    assert days[TaskCode.FILL_GAPS] == date(2026, 6, 22)


def test_added_seed_that_is_not_sown_yet_waits_a_day() -> None:
    """Its days move with it; the first bed's stay."""
    phone = on_day(11, more_on=TODAY, more_mats=102)
    phone.asked(item(TaskCode.MORE_SOW))
    assert phone.hears("2") == [like(m.NOT_YET_NOTED)]
    (kept,) = phone.known.nurseries
    assert kept.more_on == date(2026, 6, 2) and kept.sow_date == TODAY - timedelta(days=11)


@pytest.mark.parametrize(("usual", "hill"), [(2, 1), (3, 1), (4, 2)])
def test_a_thin_bed_that_is_kept_is_planted_by_what_stands(usual: int, hill: int) -> None:
    """31 shoots of 62 plant half of what 2 a hill need: one a hill. With 3 or 4 a hill 92 or
    123 shoots are enough, and 56 or 75 stand for 1.8 or 2.4: one, and two."""
    counts = {2: "31", 3: "56", 4: "75"}
    inputs = replace(nursery().inputs, seedlings_per_hill=usual)
    phone = on_day(9, inputs=inputs)
    through(phone, "PROBLEM", "2", counts[usual])
    expected = c.THIN_NOTED(label="A", seedlings=hill, usual=usual, date=date(2026, 6, 3))
    assert phone.hears("2") == [like(expected)]
    (kept,) = phone.known.nurseries
    work = DayWork(kept, (TaskCode.TRANSPLANT,), kept.anchors.transplant_date)
    assert f"{hill} a hill" in render_all(work_says(work), CATALOGUES["en"])


def test_a_failed_stand_is_sown_again_and_all_days_follow() -> None:
    """12 of 77: soaked on 1 June, sown on the 3rd, uncovered the 8th, planted 18th to 23rd."""
    phone = on_day(9, uncovered=True)
    (asked,) = through(phone, "PROBLEM", "2", "12")
    assert asked == like(c.STAND_AGAIN(label="A", shoots=12, needed=77), ...)
    phone.says("1")
    assert v.CallForHelp("not_up", "12 again", 1) in phone.changes
    phone.says("5")  # eaten: no seed to doubt
    assert phone.hears("1")[1:] == [
        like(c.AGAIN_NOTED(label="A", seed=kg(9.1), sow=date(2026, 6, 3))),
        like(d.FILL_MIX(mix=1600, sheet=44, parts=batch_of(MAT))),
        like(
            c.AGAIN_DATES(
                uncover=date(2026, 6, 8), first=date(2026, 6, 18), last=date(2026, 6, 23)
            )
        ),
    ]
    (kept,) = phone.known.nurseries
    assert (kept.sow_date, kept.sown, kept.uncovered) == (date(2026, 6, 3), False, False)


def test_the_farmer_decides_also_against_the_advice() -> None:
    """A bed that is best sown again may be filled, or left a little longer."""
    phone = on_day(9)
    through(phone, "PROBLEM", "2", "12")
    assert phone.hears("wait") == [like(c.WAIT_NOTED)]


@pytest.mark.parametrize("typed", ["many", "", "5000", "1 2 3 4"])
def test_shoots_that_cannot_be_are_asked_again(typed: str) -> None:
    """No count, or more squares or shoots than there are."""
    phone = on_day(9)
    through(phone, "PROBLEM", "2")
    assert phone.hears(typed)[0] == like(c.AGAIN_SHOOTS, ...)


# --- weather ---------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("day", "digit", "message"),
    [
        (3, "1", m.RAIN_ADVICE_EARLY),
        (9, "1", m.RAIN_ADVICE_LATER),
        (-3, "2", c.FLOOD_BEFORE),
        (3, "2", c.FLOOD_EARLY),
        (9, "2", c.FLOOD_LATER),
        (3, "3", c.DRY_EARLY),
        (9, "3", c.DRY_LATER),
        (3, "4", c.COLD_EARLY),
        (9, "4", c.COLD_LATER),
    ],
)
def test_weather_is_advised_on_by_the_age_of_the_bed(
    day: int, digit: str, message: Message
) -> None:
    """Days 0 to 5 are the weak ones."""
    assert through(on_day(day), "PROBLEM", "5", digit) == [like(message)]


def test_people_come_first_in_a_flood() -> None:
    """In each of its texts."""
    for message in (c.FLOOD_BEFORE, c.FLOOD_EARLY, c.FLOOD_LATER):
        assert message.text.startswith("People first: stay out of moving water.")


def test_no_text_of_care_names_a_pesticide() -> None:
    """Only urea has a dose."""
    texts = [each.text.lower() for each in vars(c).values() if isinstance(each, Message)]
    for word in ("pesticide", "insecticide", "fungicide", "herbicide", "ml "):
        assert not [text for text in texts if word in text]


def test_none_is_sent_as_0_by_text_and_leads_back_on_a_screen() -> None:
    """The texts ask for 0; the screen says "0 Back"."""
    for channel, told in ((Channel.SMS, "0 shoots in a square"), (Channel.USSD, "Menu.")):
        bed = nursery(sow=TODAY - timedelta(days=10), sown=True)
        phone = Phone.enrolled(bed)
        phone.known = replace(phone.known, channel=channel)
        for reply in ("PROBLEM", "2"):
            phone.says(reply)
        assert told in phone.hears("0")[-1]


@pytest.mark.parametrize(
    ("reply", "early", "before"),
    [
        ("1", m.RAIN_ADVICE_EARLY, c.RAIN_BEFORE),
        ("2", c.FLOOD_EARLY, c.FLOOD_BEFORE),
        ("3", c.DRY_EARLY, c.DRY_BEFORE),
        ("4", c.COLD_EARLY, c.COLD_BEFORE),
    ],
)
def test_before_sowing_weather_asks_for_something_else(
    reply: str, early: Message, before: Message
) -> None:
    """There is no bed to cover or to water yet, also on the day of sowing."""
    assert through(on_day(2), "PROBLEM", "5", reply) == [like(early)]
    due_today = Phone.enrolled(nursery(sow=TODAY))
    for unsown in (due_today, on_day(-3)):
        assert through(unsown, "PROBLEM", "5", reply) == [like(before)]


# --- pale, and only light green ---------------------------------------------------------------


def test_shoots_are_pale_just_after_uncovering_and_nothing_is_given() -> None:
    """Uncovered on day 7, two days late: on day 9 the seed still feeds them; looked at again on
    day 10, when they have been three days in the light."""
    uncovered = TODAY - timedelta(days=2)
    phone = on_day(9, uncover_date=uncovered, uncovered=True)
    again = uncovered + timedelta(days=3)
    expected = c.M_PALE(label="A", uncover=uncovered, pale=3, date=again)
    assert through(phone, "PROBLEM", "1") == [like(expected)]
    assert phone.changes == [v.CallForHelp("yellow", "", 1)]


def test_light_green_alone_is_looked_at_again_before_anything_is_given() -> None:
    """No urea for it, and no officer called."""
    phone = on_day(9)
    again = TODAY + timedelta(days=3)
    assert through(phone, "PROBLEM", "1", "9") == [like(c.M_LIGHT(label="A", date=again))]
    assert phone.changes == [] and phone.known.nurseries[0].urea_on is None
