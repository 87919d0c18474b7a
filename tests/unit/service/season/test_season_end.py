"""From transplanting to the result: the field's first days, gaps, the result, then closed."""

from datetime import date

import pytest

from assistant.agronomy.calendar import TaskCode
from assistant.people import Village
from assistant.reminders.values import State
from assistant.service.seasons import seasons_of_villages
from assistant.wording import messages_result as r
from assistant.wording import messages_tasks as t
from tests.stages import stage
from tests.valley import AMINA, Valley, like


@stage
def planted(valley: Valley) -> None:
    """Amina sowed on 14 May and transplants on 1 June, day 18."""
    valley.enrol(AMINA)
    valley.sow(AMINA, "14 May")
    valley.go("1 Jun 09:00")
    valley.heard(AMINA)
    valley.text(AMINA, "done")
    valley.heard(AMINA)


def test_the_fields_first_days_are_told_and_the_result_asked_after_eight(
    planted: Valley,
) -> None:
    """Water and snails at once, gaps on day 4 (PhilRice, Key Check 4: replant within 7 days;
    1 June + 7 = 8 June), the first feeding, and no more."""
    planted.go("2 Jun 07:00")
    assert planted.heard(AMINA) == [like(t.HEAD, t.P_YOUNG_FIELD)]
    planted.go("5 Jun 07:00")
    gaps = t.P_FILL_GAPS(fill_by=date(2026, 6, 8))
    assert planted.heard(AMINA) == [like(t.HEAD, gaps, t.ASK_DONE)]
    planted.text(AMINA, "1")
    planted.go("8 Jun 07:00")
    assert planted.heard(AMINA) == [like(t.HEAD, t.P_FIRST_FEED)]
    planted.go("9 Jun 07:00")
    assert planted.heard(AMINA) == [like(t.HEAD, t.P_RESULT, t.ASK_MATS)]


def test_gaps_that_are_not_filled_yet_are_asked_about_again(planted: Valley) -> None:
    """As the answer promises."""
    planted.go("5 Jun 07:00")
    planted.heard(AMINA)
    planted.text(AMINA, "2")
    planted.go("6 Jun 07:00")
    assert planted.heard(AMINA) == [like(t.HEAD, t.P_FILL_GAPS, t.ASK_DONE)]


def test_a_result_is_kept_closes_the_nursery_and_shows_for_the_village(
    planted: Valley, kijani: Village
) -> None:
    """All of the field, no mats left, nothing sown again."""
    planted.go("9 Jun 07:00")
    planted.heard(AMINA)
    assert planted.text(AMINA, "2") == [like(r.ASK_RESOWN, ...)]
    assert planted.text(AMINA, "2") == [like(r.RESULT_KEPT), like(r.ASK_SEED_USED, ...)]
    seen = seasons_of_villages(planted.house, [kijani.id])
    (told,) = seen.outcomes
    assert (told.ended_on, told.mats, told.mats_left) == (date(2026, 6, 9), 267, 0.0)
    assert (seen.planned_area_m2, seen.planted_area_m2) == (4000.0, 4000.0)
    assert (seen.short, seen.with_mats_left, seen.resown) == (0, 0, 0)
    assert [each.seasons for each in seen.learned] == [1]
    assert seen.learned[0].establishment.mean == pytest.approx(0.65)
    with planted.house.store.work() as work:
        assert work.nurseries.of_farmer(1) == ()


def test_a_result_that_nobody_tells_is_asked_twice_and_then_the_nursery_closes(
    planted: Valley,
) -> None:
    """On 9 and 12 June; over with the second day."""
    planted.go("8 Jun 07:00")
    planted.text(AMINA, "1")
    planted.go("12 Jun 07:00")
    asked = [text for text in planted.heard(AMINA) if text == like(t.HEAD, t.P_RESULT, ...)]
    assert len(asked) == 2
    planted.go("13 Jun 01:00")
    with planted.house.store.work() as work:
        assert work.nurseries.of_farmer(1) == ()


def test_a_test_that_was_begun_is_asked_about_a_week_later(
    valley: Valley, kijani: Village
) -> None:
    """Sowing on 30 June: asked on the 15th (day -15) to test again, on the 22nd to count."""
    valley.enrol(AMINA)
    valley.plan(AMINA, "30 Jun")
    valley.go("15 Jun 07:00")
    again = t.P_SEED_TEST_AGAIN(percent=85, test_days=7)
    assert valley.heard(AMINA)[-1] == like(t.HEAD_BEFORE, again, t.ASK_BEGUN)
    valley.text(AMINA, "1")
    valley.go("22 Jun 07:00")
    assert valley.heard(AMINA)[-1] == like(t.HEAD_BEFORE, t.P_SEED_COUNT)
    valley.text(AMINA, "88 of 100")
    with valley.house.store.work() as work:
        (kept,) = work.nurseries.of_farmer(1)
        states = {r.task: r.state for r in work.reminders.of_nursery(kept.id)}
    assert kept.inputs.germination == pytest.approx(0.88)
    assert states[TaskCode.SEED_COUNT] is State.DONE


def test_the_harvest_is_asked_for_once_and_kept(planted: Valley) -> None:
    """95 days after the result of 9 June is 12 September; 1600 kg from 0.4 ha."""
    planted.go("9 Jun 07:00")
    planted.text(AMINA, "2")
    planted.text(AMINA, "2")
    planted.text(AMINA, "1")
    planted.heard(AMINA)
    planted.leap("11 Sep 09:00")
    assert planted.heard(AMINA) == []
    planted.leap("12 Sep 05:00")  # not in the night
    assert planted.heard(AMINA) == []
    planted.leap("12 Sep 09:00")
    assert planted.heard(AMINA) == [like(r.ASK_YIELD)]
    planted.leap("13 Sep 09:00")
    assert planted.heard(AMINA) == []
    assert planted.text(AMINA, "harvest 1600 kg") == [like(r.YIELD_KEPT(kg=1600, per_ha=4000))]
    with planted.house.store.work() as work:
        (season,) = work.seasons.of_farmer(1)
    assert season.yield_kg == 1600
