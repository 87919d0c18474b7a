"""The home test of seed: explained, begun, counted, and carried into the plan.

Ranges are Wilson's at 95 %, worked with scipy.stats.binomtest(...).proportion_ci("wilson"); the
tolerance between lots is that of 7 CFR 201.55(a).
"""

from dataclasses import replace
from datetime import date, timedelta

import pytest
from scipy.stats import binomtest

from assistant.agronomy.calendar import TaskCode
from assistant.dialogue import values as v
from assistant.dialogue.lots import lots_behind
from assistant.wording import messages_seed as s
from assistant.wording import messages_talk as m
from tests.talk import TODAY, Phone, item, nursery
from tests.valley import like, numbered

SOWING = date(2026, 6, 16)
COUNT_DAY = date(2026, 6, 8)


def asked_to_test() -> Phone:
    """Day -15: the prompt for the test has come."""
    return Phone.enrolled(nursery(sow=SOWING)).asked(item(TaskCode.SEED_TEST))


def asked_for_the_count(sow: date = SOWING) -> Phone:
    """A week later the count is asked for."""
    begun = nursery(sow=sow, test_begun=TODAY)
    return Phone.enrolled(begun).on(COUNT_DAY).asked(item(TaskCode.SEED_COUNT, COUNT_DAY))


def test_a_test_that_is_begun_is_counted_seven_days_later() -> None:
    """ICAR portal, Seed germination testing: 7 days. 1 June + 7 = 8 June."""
    phone = asked_to_test()
    assert phone.hears("1") == [like(s.TEST_NOTED(label="A", date=COUNT_DAY))]
    (kept,) = phone.known.nurseries
    assert kept.test_begun == TODAY
    counted = [task.date for task in kept.tasks if task.code is TaskCode.SEED_COUNT]
    assert counted == [COUNT_DAY]


def test_how_is_explained_in_three_texts_and_begun_from_there() -> None:
    """Each of one thought; the third asks whether it is begun."""
    phone = asked_to_test()
    assert phone.hears("2") == [
        like(s.TEST_SEEDS),
        like(s.TEST_CLOTH),
        like(s.TEST_COUNT, *numbered(s.BEGUN_TODAY, s.LATER)),
    ]
    assert phone.hears("1") == [like(s.TEST_NOTED)]


def test_who_will_test_later_hears_the_last_day_to_begin() -> None:
    """Sowing on 16 June is soaked on the 14th; a test of 7 days begins on the 7th."""
    phone = asked_to_test()
    assert phone.hears("not yet") == [like(s.TEST_LATER(label="A", date=date(2026, 6, 7)))]


def test_a_test_that_ends_after_soaking_is_said_to_be_late() -> None:
    """Begun on 1 June for a sowing on 5 June."""
    phone = Phone.enrolled(nursery(sow=date(2026, 6, 5))).asked(item(TaskCode.SEED_TEST))
    assert phone.hears("1") == [like(s.TEST_NOTED, s.TEST_AFTER_SOWING)]


@pytest.mark.parametrize(
    ("typed", "sprouted", "seeds"),
    [
        ("83 of 100", 83, 100),
        ("83", 83, 100),
        ("83%", 83, 100),
        ("41/50", 41, 50),
        ("4 lots 81 79 85 80", 325, 400),
        ("81 79 85 80", 325, 400),
    ],
)
def test_a_count_in_any_usual_form_gives_its_percentage_and_honest_range(
    typed: str, sprouted: int, seeds: int
) -> None:
    """Wilson's interval, by scipy."""
    phone = asked_for_the_count()
    first, *_ = phone.hears(typed)
    low, high = binomtest(sprouted, seeds).proportion_ci(method="wilson")
    said = s.TESTED(
        label="A",
        percent=round(100 * sprouted / seeds, 1),
        seeds=seeds,
        low=round(100 * low),
        high=round(100 * high),
    )
    assert first in (like(said), like(said, s.LOTS_AGREE))
    (kept,) = phone.known.nurseries
    assert kept.inputs.germination == pytest.approx(sprouted / seeds)
    assert kept.test_counted and kept.germination_known


def test_the_count_answers_the_days_question_and_the_seed_is_said_again() -> None:
    """4,000 m2 x 50 x 25 / 1e6 / (0.83 x 0.65) = 9.27 kg, on a hand scale 9.3."""
    phone = asked_for_the_count()
    _, seed = phone.hears("83 of 100")
    assert "Seed 9.3 kg dry" in seed
    assert v.AnswerItem(item(TaskCode.SEED_COUNT, COUNT_DAY), "83/100") in phone.changes


def test_weak_seed_is_counted_in_and_other_seed_named_while_there_is_time() -> None:
    """Sowing on 1 July: soaked on 29 June, so a test begins by 22 June."""
    phone = asked_for_the_count(sow=date(2026, 7, 1))
    texts = phone.hears("70 of 100")
    assert texts[1] == like(m.RESULT_SEED, m.WEAK_SEED(percent=70.0))
    assert texts[2] == like(s.TIME_TO_RETEST(date=date(2026, 6, 22)))


def test_hopeless_seed_is_not_planned_with_and_the_officer_is_told() -> None:
    """On 8 June: laid out on the 9th, counted on the 16th, soaked, sown on the 18th."""
    phone = asked_for_the_count()
    assert phone.hears("42 of 100") == [
        like(s.TESTED, m.DO_NOT_SOW(percent=42.0)),
        like(s.HELD(label="A"), s.NO_TIME_TO_RETEST(date=date(2026, 6, 18))),
    ]
    assert v.CallForHelp("seed", "42/100", 1) in phone.changes
    (kept,) = phone.known.nurseries
    assert kept.held


def test_a_small_test_forbids_only_until_a_larger_one() -> None:
    """4 of 10: by scipy the bag may sprout to 17 or to 69 of 100, so 60 is not ruled out."""
    low, high = binomtest(4, 10).proportion_ci(method="wilson")
    assert low < 0.6 < high
    phone = asked_for_the_count()
    assert phone.hears("4 of 10") == [
        like(s.TESTED, m.DO_NOT_SOW(percent=40.0), s.FEW_SEEDS(seeds=10)),
        like(s.HELD, s.NO_TIME_TO_RETEST),
    ]
    texts = phone.hears("72 of 100")
    assert texts[1] == like(s.LIFTED)
    assert not phone.known.nurseries[0].held


def held_and_asked() -> Phone:
    """The seed is forbidden, and other seed is asked for."""
    inputs = replace(nursery().inputs, germination=0.3)
    held = nursery(sow=SOWING, inputs=inputs, germination_known=True, test_counted=True)
    return Phone.enrolled(held).asked(item(TaskCode.SEED_HELD))


@pytest.mark.parametrize("typed", ["2", "new seed", "New seed"])
def test_new_seed_lifts_the_plan(typed: str) -> None:
    phone = held_and_asked()
    noted, *quantities = phone.hears(typed)
    assert noted == like(s.NEW_SEED_NOTED(label="A"), s.LIFTED)
    assert quantities
    assert not phone.known.nurseries[0].held


def test_the_test_of_other_seed_is_begun_from_there() -> None:
    phone = held_and_asked()
    assert phone.hears("1") == [like(s.TEST_NOTED(label="A", date=COUNT_DAY))]
    (kept,) = phone.known.nurseries
    assert kept.held and kept.test_begun == TODAY


def test_no_other_seed_yet_holds_on() -> None:
    phone = held_and_asked()
    assert phone.hears("3") == [like(s.HELD, s.TIME_TO_RETEST)]
    assert phone.known.nurseries[0].held


@pytest.mark.parametrize("wish", ["today", "quantities", "my dates"])
def test_no_wish_shows_what_to_do_with_forbidden_seed(wish: str) -> None:
    phone = held_and_asked()
    for text in phone.hears(wish):
        assert "kg" not in text and "oak " not in text.replace("to be soaked", "")
        assert "hold this plan" in text


def test_lots_that_differ_too_much_are_tested_again() -> None:
    """7 CFR 201.55(a): at a mean of 78 to 80 four lots may differ by 16; these by 35."""
    phone = asked_for_the_count()
    (text,) = phone.hears("60 79 95 80")
    assert text == like(s.LOTS_DISAGREE(label="A", spread=35, most=16), s.ASK_TEST_AGAIN, ...)
    (kept,) = phone.known.nurseries
    assert not kept.test_counted and kept.inputs.germination == 0.85
    assert phone.hears("1") == [like(s.TEST_NOTED, s.TEST_AFTER_SOWING)]


def test_a_plan_with_untested_seed_leads_to_the_test_and_goes_on() -> None:
    """The plan stands on 80 for now, and the count is asked for a week later."""
    phone = Phone.enrolled()
    for words in ("NEW", "0.4 ha", "no"):
        phone.says(words)
    assert phone.hears("2") == [like(s.TEST_SEEDS), like(s.TEST_CLOTH), like(s.TEST_COUNT, ...)]
    assert phone.hears("1") == [like(m.ASK_PAIL, ...)]
    phone.says("10")
    phone.says("16 June")
    phone.says("1")
    (kept,) = phone.known.nurseries
    assert kept.test_begun == TODAY and not kept.germination_known


def test_two_lots_in_one_bed_are_weighed_and_kept_on_mats_of_their_own() -> None:
    """Three quarters at 90, a quarter at 70: 85 %; 267 mats in 200 and 67."""
    phone = Phone.enrolled(nursery())
    for words in ("MENU", "9", "1", "3", "90", "70"):
        phone.says(words)
    first, *_ = phone.hears("3")
    assert first == like(s.MIXED(label="A", percent=85.0, first=200, second=67))


def test_a_lot_too_weak_to_sow_is_left_out_of_the_bed() -> None:
    """Under 60."""
    phone = Phone.enrolled(nursery())
    for words in ("MENU", "9", "1", "3", "90", "40"):
        phone.says(words)
    assert phone.hears("2") == [like(s.MIXED_BAD)]
    assert phone.changes == []


@pytest.mark.parametrize(
    ("text", "percent", "lots"),
    [
        ("of 50 41 sprouted", 82.0, ((41, 50),)),
        ("41 of 50 and 38 of 50", 79.0, ((41, 50), (38, 50))),
        ("all", 100.0, ((100, 100),)),
        ("about 83", 83.0, ((83, 100),)),
        ("2 2", 77.0, ((77, 100),)),
    ],
)
def test_the_lots_behind_a_percentage_are_those_that_give_it(
    text: str, percent: float, lots: tuple[tuple[int, int], ...]
) -> None:
    """Numbers that do not come to what was read are not taken for lots."""
    assert lots_behind(text, percent) == lots


def test_a_test_is_no_longer_prompted_once_it_is_begun_or_the_seed_is_sown() -> None:
    """What is past its sense is over."""
    begun = nursery(sow=SOWING, test_begun=TODAY)
    codes = {task.code for task in replace(begun, test_begun=None).tasks}
    assert TaskCode.SEED_COUNT not in codes
    assert TaskCode.SEED_COUNT in {task.code for task in begun.tasks}


@pytest.mark.parametrize(("region", "told"), [("PH", True), ("BD", False), ("KE", False)])
def test_seed_is_held_against_what_its_country_asks_for(region: str, told: bool) -> None:
    """85 % in the Philippines (PhilRice, RCEF seed), 80 % in Bangladesh (Bogura district). The
    honest range of 82 of 100, 73 to 88, goes with it (Wilson, as statsmodels gives it)."""
    phone = Phone.enrolled(nursery())
    phone.known = replace(phone.known, region=region)
    phone.says("seed test")
    texts = phone.hears("82 of 100")
    assert "likely 73 to 88%" in texts[0]
    weak = "Weak seed (82%): more seed is counted in. Good seed has 85% or more (Philippines)."
    assert (weak in texts[1]) is told


def test_after_lots_that_differ_the_test_is_explained_again() -> None:
    """And then counted again: 80 of 100."""
    phone = Phone.enrolled(nursery())
    for text in ("seed test", "60 79 95 80"):
        phone.says(text)
    assert phone.hears("3")[0] == like(s.TEST_SEEDS)
    assert phone.hears("80 of 100")[0] == like(
        s.TESTED(label="A", percent=80.0, seeds=100, low=71, high=87)
    )


@pytest.mark.parametrize("text", ["83 of 100", "81 79 85 80", "45/50"])
def test_a_count_that_comes_before_it_is_asked_for_is_taken(text: str) -> None:
    """Also without a test that runs; and only what is a count and no other number."""
    running = nursery(test_begun=TODAY - timedelta(days=6))
    assert Phone.enrolled(running).hears(text)[0].startswith("A: ")
    assert Phone.enrolled(nursery()).hears(text)[0].startswith("A: ")
    assert Phone.enrolled(running).hears("83") == [like(m.DID_NOT_UNDERSTAND)]


def test_who_does_not_know_how_much_sprouts_gets_a_plan_all_the_same() -> None:
    """ "I don't know" is an answer, twice: nobody is kept from a plan by a test not made."""
    phone = Phone.enrolled()
    for text in ("new", "1 acre", "I don't know"):
        phone.says(text)
    assert phone.hears("I don't know") == [like(m.ASK_PAIL, ...)]
