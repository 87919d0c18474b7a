"""A first-time farmer asks at each step how it is done."""

from dataclasses import replace
from datetime import timedelta

from assistant.agronomy.tasks import TaskCode
from assistant.channel import Channel
from assistant.wiring.practices import open_practices
from assistant.wording import messages_care as c
from assistant.wording import messages_steps as s
from assistant.wording import messages_talk as m
from assistant.wording import messages_tasks as t
from tests.talk import TODAY, Phone, item, nursery
from tests.valley import like, numbered

BEFORE = TODAY + timedelta(days=1)  # sown tomorrow: the bed is made today
MADE = TODAY - timedelta(days=9)  # what NEXT tells of a new plan is long told


def test_next_goes_through_the_making_of_the_bed_one_step_a_text() -> None:
    """From the first to the last, and then says that it is over."""
    phone = Phone.enrolled(nursery(sow=BEFORE, made_on=MADE))
    for step in (s.LEVEL, s.STRIPS, s.UNDER, s.SET, s.LIFT, s.FENCE):
        assert phone.hears("next") == [like(step, s.NEXT_HINT)]
    assert phone.hears("NEXT") == [like(s.WET)]
    assert phone.hears("next step") == [like(s.LAST_STEP(label="A"))]


def test_how_gives_the_first_step_and_then_the_same_once_more() -> None:
    """Whoever did not follow asks again."""
    phone = Phone.enrolled(nursery(sow=BEFORE, made_on=MADE))
    assert phone.hears("how") == [like(s.LEVEL, s.NEXT_HINT)]
    phone.hears("next")
    assert phone.hears("how do i do it") == [like(s.STRIPS, s.NEXT_HINT)]


def test_how_to_make_the_bed_is_told_on_any_day_from_what_it_is() -> None:
    """Long before its day, too."""
    for asked in ("how do i make the bed", "what is a mat", "how to make mats"):
        phone = Phone.enrolled(nursery(sow=TODAY + timedelta(days=20)))
        assert phone.hears(asked) == [like(s.WHAT_MAT(thick=4.0), s.NEXT_HINT)]
        assert phone.hears("next") == [like(s.LEVEL, s.NEXT_HINT)]


def test_another_kind_of_bed_has_its_own_steps() -> None:
    """Trays are filled, an open bed is puddled or dug."""
    firsts = {"tray": s.LEVEL, "wet_bed": s.PUDDLE, "dry_bed": s.DIG}
    for code, first in firsts.items():
        phone = Phone.enrolled(nursery(sow=BEFORE, practice=open_practices()[code]))
        phone.hears("how do I make the bed")
        assert phone.hears("next") == [like(first, s.NEXT_HINT)]


def test_a_step_takes_no_digit_from_the_open_task() -> None:
    """By SMS 1 still says that the seed is soaked, and NEXT still goes on after it."""
    phone = Phone.enrolled(nursery(sow=TODAY + timedelta(days=2), made_on=MADE))
    phone.asked(item(TaskCode.SOAK, TODAY))
    assert phone.hears("next") == [like(s.BAG, s.NEXT_HINT)]
    assert phone.hears("1") == [like(m.DONE_NOTED(label="A", what=t.N_SOAK()))]
    assert phone.hears("next") == [like(s.BAG, s.NEXT_HINT)]


def test_a_screen_offers_the_next_step_under_a_digit() -> None:
    """Nothing else is answered there."""
    phone = Phone.enrolled(nursery(sow=BEFORE, made_on=MADE))
    phone.known = replace(phone.known, channel=Channel.USSD)
    assert phone.hears("next") == [like(s.LEVEL, *numbered(s.NEXT_STEP))]
    assert phone.hears("1") == [like(s.STRIPS, *numbered(s.NEXT_STEP))]


def test_the_site_leads_on_to_all_that_is_got_ready() -> None:
    """From the second menu."""
    phone = Phone.enrolled(nursery(sow=TODAY + timedelta(days=20)))
    phone.says("MENU, 9, 4")
    assert phone.hears("next") == [like(s.GROUND, s.NEXT_HINT)]
    assert phone.hears("next") == [like(s.NOT_HERE, s.NEXT_HINT)]


def test_two_nurseries_are_told_apart_by_name() -> None:
    """NEXT B."""
    phone = Phone.enrolled(
        nursery(sow=BEFORE, made_on=MADE),
        nursery("B", sow=TODAY + timedelta(days=7), made_on=MADE),
    )
    assert phone.hears("next B") == [like(s.GROUND, s.NEXT_HINT)]
    assert phone.hears("next") == [like(s.NOT_HERE, s.NEXT_HINT)]
    assert phone.hears("next A") == [like(s.LEVEL, s.NEXT_HINT)]


def test_without_a_nursery_there_is_nothing_to_explain() -> None:
    """What to send is said; where the bed should lie is told all the same."""
    phone = Phone.enrolled()
    assert phone.hears("next") == [like(m.NO_NURSERY)]
    assert phone.hears("MENU, 9, 4") == [like(c.SITE)]


def test_how_to_an_open_question_explains_the_question() -> None:
    """As help does."""
    phone = Phone.enrolled()
    phone.says("NEW")
    assert phone.hears("how")[0].startswith(m.HELP_AREA.text)


def test_a_half_made_plan_waits_while_steps_are_told() -> None:
    """It stands again after the last of them."""
    phone = Phone.enrolled(nursery(sow=BEFORE, made_on=MADE))
    phone.says("NEW")
    phone.says("1 acre")
    phone.says("how do i make the bed")
    for _ in range(7):
        phone.says("next")
    over, again = phone.hears("next")[0], phone.hears("85")
    assert over == like(s.LAST_STEP(label="A"))
    assert again == [like(m.ASK_PAIL, ...)]
