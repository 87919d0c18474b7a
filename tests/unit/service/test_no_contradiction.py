"""A plan that moves leaves nothing asked of the bed it was before."""

from assistant.agronomy.calendar import TaskCode
from assistant.service.morning import gathered
from assistant.service.sight import sight_of
from assistant.wording import messages_again as again
from assistant.wording import messages_delay as d
from assistant.wording import messages_talk as m
from assistant.wording import messages_tasks as t
from tests.stages import stage
from tests.valley import AMINA, CODE, KIJANI, OFFICER, Valley, like


def sow_on_the_first(valley: Valley) -> None:
    """Amina sowed on the first of June in Kijani, which has an officer."""
    valley.add_officer(KIJANI)
    valley.enrol(AMINA)
    valley.sow(AMINA, "1 June")


amina = stage(sow_on_the_first)


def test_a_digit_does_not_uncover_a_bed_that_is_sown_again(amina: Valley) -> None:
    """Day 5 was asked twice and not answered; on day 7 the bed is given up and checked."""
    amina.go("8 Jun 08:00")
    amina.heard(AMINA)
    for words in ("problem", "2", "8 7 9", "3", "1", "1"):
        amina.text(AMINA, words)
    [answer] = amina.text(AMINA, "1")
    assert answer != like(m.DONE_NOTED)
    with amina.house.store.look() as work:
        [bed] = work.nurseries.of_farmer(1)
    assert not bed.uncovered


def test_a_drained_bed_that_waits_two_days_is_not_drained_once_more(amina: Valley) -> None:
    """Drained on the 17th for the 19th, a Friday; planted on Sunday."""
    amina.go("6 Jun 07:00")
    amina.text(AMINA, "1")
    amina.go("17 Jun 07:00")
    amina.text(AMINA, "1")
    amina.go("19 Jun 07:00")
    amina.heard(AMINA)
    answers = amina.text(AMINA, "we plant on sunday")
    amina.go("20 Jun 20:00")
    told = [*answers, *amina.heard(AMINA)]
    assert like(m.NOTED_EARLY, d.KEEP_WET, d.ASK_WHY, ...) in told
    assert not any("Drain the bed" in text for text in told)


def test_a_bed_whose_water_is_back_is_drained_again(amina: Valley) -> None:
    """Planting on the 24th: water on the 19th, drained on the 22nd."""
    amina.go("19 Jun 07:00")
    amina.heard(AMINA)
    amina.text(AMINA, "we plant on 24 june")
    amina.go("22 Jun 07:00")
    assert any("Drain the bed today" in text for text in amina.heard(AMINA))


def test_cool_water_waits_for_the_count_of_a_test_that_runs(valley: Valley) -> None:
    """Begun on the 5th, counted on the 12th; at 15 C seed lies 7 days in water and 2 moist, for
    sowing on the 20th from the 11th: it is soaked after the count, and sown a day later."""
    valley.add_officer(KIJANI)
    valley.enrol(AMINA)
    valley.plan(AMINA, "20 June")
    valley.go("5 Jun 07:00")
    valley.text(AMINA, "1")
    valley.text(OFFICER, f"TEMP {CODE} Kijani 15")
    with valley.house.store.look() as work:
        [bed] = work.nurseries.of_farmer(1)
    soak = next(task.date for task in bed.tasks if task.code == "soak")
    assert bed.test_begun is not None and bed.count_on is not None
    assert soak >= bed.count_on


def test_the_window_names_no_day_that_nobody_chose(amina: Valley) -> None:
    amina.go("6 Jun 07:00")
    amina.text(AMINA, "1")
    amina.go("16 Jun 07:00")
    told = amina.heard(AMINA)[-1]
    assert t.P_WINDOW_OPEN.text.split("{")[0] in told and "Your day" not in told


# --- a bed sown in halves --------------------------------------------------------------------


@stage
def amina_sows(valley: Valley) -> None:
    """Amina plans to sow on the tenth."""
    valley.add_officer(KIJANI)
    valley.enrol(AMINA)
    valley.plan(AMINA, "10 June")


def test_the_rest_of_a_bed_is_asked_and_nothing_is_soaked_for_it(amina_sows: Valley) -> None:
    """Sown half on the 10th, the rest on the 12th; uncovered five days after the later half."""
    amina_sows.go("10 Jun 07:00")
    amina_sows.heard(AMINA)
    answers = amina_sows.text(AMINA, "sowed half today, the other half on friday")
    amina_sows.go("10 Jun 20:00")
    assert [*answers, *amina_sows.heard(AMINA)] == [like(again.HALF_SOWN)]
    amina_sows.go("11 Jun 07:00")
    assert amina_sows.heard(AMINA) == [like(t.HEAD_BEFORE, t.P_WATER)]
    amina_sows.go("12 Jun 07:00")
    assert amina_sows.heard(AMINA) == [like(t.HEAD, again.P_SOW_REST, t.ASK_DONE)]
    assert amina_sows.text(AMINA, "1") == [like(again.ALL_SOWN)]
    amina_sows.go("16 Jun 20:00")
    assert not any("Uncover" in text for text in amina_sows.heard(AMINA))
    amina_sows.go("17 Jun 07:00")
    assert any("Uncover" in text for text in amina_sows.heard(AMINA))


# --- a bed that may be gone ------------------------------------------------------------------


def test_a_bed_that_may_be_gone_is_asked_about_twice_and_never_uncovered(
    amina: Valley,
) -> None:
    """Washed on the 3rd; day 5 is the 6th. The officer sees that nobody answered."""
    amina.text(AMINA, "1")
    amina.go("4 Jun 09:00")
    amina.text(AMINA, "heavy rain washed everything away")
    amina.heard(AMINA)
    amina.go("7 Jun 20:00")
    with amina.house.store.look() as work:
        officer = work.people.officer(OFFICER)
        assert officer is not None
        _, (line,) = gathered(work, amina.house, sight_of(work, officer), amina.now)
    assert TaskCode.AFTER_FLOOD in {reason.task for reason in line.reasons}
    amina.go("14 Jun 20:00")
    told = amina.heard(AMINA)
    asked = [text for text in told if text == like(..., t.P_AFTER_FLOOD, ..., t.ASK_FLOOD)]
    assert len(asked) == 2
    assert all("Main field" in text for text in told if text not in asked)
    assert not any("ncover" in text or "moist" in text for text in told)
    # Days later it is told that it stands, in words; the bed is uncovered next morning.
    amina.text(AMINA, "it stands")
    assert amina.heard(AMINA) == []  # what to do today is in the answer
    amina.go("15 Jun 07:00")
    assert any("Uncover" in text for text in amina.heard(AMINA))


# --- the caution of planting -----------------------------------------------------------------


def test_the_caution_of_planting_is_said_once_and_again_after_a_pause(amina: Valley) -> None:
    """Planting on the 19th, put off day by day, then to the 28th."""
    amina.go("18 Jun 20:00")
    amina.heard(AMINA)
    told = []
    for day in (19, 20, 21):
        amina.go(f"{day} Jun 07:00")
        told.append(any("Drink water" in text for text in amina.heard(AMINA)))
        amina.text(AMINA, "2")
    assert told == [True, False, False]
    amina.text(AMINA, "we plant on 28 june")
    amina.go("28 Jun 07:00")
    assert any("Drink water" in text for text in amina.heard(AMINA))
