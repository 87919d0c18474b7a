"""The second menu: seed sorted and soaked, site, water, planting, spare mats; leaf outlook."""

from datetime import date, timedelta

from assistant.agronomy.calendar import TaskCode
from assistant.wording import messages_amounts as a
from assistant.wording import messages_care as c
from assistant.wording import messages_planting as g
from assistant.wording import messages_steps as s
from assistant.wording import messages_talk as m
from assistant.wording.message import Say
from assistant.wording.messages_cautions import SALT_AWAY
from tests.talk import TODAY, Phone, item, nursery
from tests.valley import like, numbered


def kg(amount: float) -> Say:
    """A weight as it stands in a text."""
    return a.KILOGRAMS(amount=amount)


def more(digit: str, **given: object) -> list[str]:
    """The answer to a digit of the second menu."""
    phone = Phone.enrolled(nursery(**given))  # type: ignore[arg-type]
    phone.says("MENU")
    phone.says("9")
    return phone.hears(digit)


def test_salt_water_is_told_for_the_farmers_pail_and_the_rinsing_goes_with_it() -> None:
    """Density 1.10 needs 161 g a litre (Nicolaus Copernicus University table): 5 L in a pail of
    10 L take 805 g, on a scale 800. Rinse 3 times (Bogura district)."""
    mix, rinse = more("2")
    assert mix == like(c.SALT_MIX(salt="800 g", litres=5.0, seed=kg(2.5)))
    assert rinse == like(c.SALT_RINSE, SALT_AWAY)


def test_soaking_too_long_roots_and_no_sprouts_are_told() -> None:
    """Three short texts; then, while no seed is sown, whether this seed needs longer."""
    tips = [like(c.SOAK_LONGER), like(c.ROOTS_LONG), like(c.NONE_SPROUT)]
    choices = numbered(g.COOL_WATER, g.SLOW_SEED, g.COOL_AND_SLOW, g.AS_USUAL)
    assert more("3") == [*tips, like(g.ASK_SOAK, *choices)]
    assert more("3", sown=True) == tips


def test_watering_is_told_in_the_farmers_pails_for_the_bed() -> None:
    """3 L on each of 40 m2 are 120 L, 12 pails of 10 L."""
    assert more("5") == [like(c.WATERING(label="A", pails=a.PAILS(n=12)))]


def test_planting_is_told_by_string_hill_and_hours() -> None:
    """10 m at 20 cm: 50 gaps, 51 hills. 126 to 320 person-hours a hectare (IJNES 64; Kerala
    KVK: 40 workers of 8 hours): 0.4 ha by 4 people 12.6 to 32 hours."""
    lift, string = more("6")
    assert lift == like(c.PLANT_LIFT(drain=date(2026, 6, 26), mat=7))
    assert string == like(
        c.PLANT_STRING(
            string=10, hands=4, hill=20.0, hills=51, row=20.0, seedlings=2, low=13, high=32
        )
    )


def test_site_and_spare_mats_are_short_tips() -> None:
    """One text each."""
    assert more("4") == [like(c.SITE, s.NEXT_HINT)]
    assert more("7") == [like(c.SPARE)]


def test_a_count_of_few_leaves_tells_when_the_fourth_opens() -> None:
    """Two open leaves on day 12 are two to three leaves in 12 days: the fourth on day 16 to 24,
    by the middle, 12 x 4 / 2.5 = 19.2, on day 19."""
    sow = TODAY - timedelta(days=12)
    phone = Phone.enrolled(nursery(sow=sow, sown=True)).asked(item(TaskCode.LEAF_COUNT))
    expected = c.NEXT_LEAF(
        n=4, date=date(2026, 6, 8), early=date(2026, 6, 5), late=date(2026, 6, 13)
    )
    assert phone.hears("2") == [like(m.LEAVES_FEW, expected, m.ASK_TRANSPLANTING)]


def test_old_seedlings_get_honest_advice_with_the_published_loss() -> None:
    """Day 24, in the first week late: one more a hill (PhilRice, How to transplant rice), which
    plants two thirds; trials found from nothing to 4 x 2.72 % lost."""
    sow = TODAY - timedelta(days=24)
    phone = Phone.enrolled(nursery(sow=sow, sown=True)).asked(item(TaskCode.LEAF_COUNT))
    expected = c.LATE_LOSS(n=3, share=67, percent=11)
    assert phone.hears("4") == [like(m.LEAVES_SOON, expected, m.ASK_TRANSPLANTING)]
