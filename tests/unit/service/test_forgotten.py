"""A season whose result never comes does not stay open for ever."""

from assistant.agronomy.constants import TRANSPLANT_LATEST_DAY
from assistant.agronomy.nursery import Nursery
from assistant.people import Village
from tests.valley import AMINA, Valley


def _nursery(valley: Valley) -> Nursery:
    with valley.house.store.look() as work:
        found = work.nurseries.get(1)
    assert found is not None
    return found


def _open(valley: Valley) -> bool:
    return not _nursery(valley).closed


def test_four_weeks_after_planting_a_silent_season_is_over(
    valley: Valley, kijani: Village
) -> None:
    """She sowed on 14 May, planted on 1 June, and stopped all texts: never asked, never told.
    Open on 29 June, the 28th day; closed on the 30th."""
    valley.enrol(AMINA)
    valley.sow(AMINA, "14 May")
    valley.go("1 Jun 09:00")
    valley.text(AMINA, "done")
    valley.text(AMINA, "STOP")
    valley.go("29 Jun 23:00")
    assert _open(valley)
    valley.heard(AMINA)
    valley.go("30 Jun 07:00")
    assert not _open(valley) and _nursery(valley).no_result
    assert valley.heard(AMINA) == []


def test_a_planting_that_nobody_tells_of_is_over_four_weeks_after_its_last_day(
    valley: Valley, kijani: Village
) -> None:
    """Sown on 1 June; the latest day for seedlings of a mat, and 28 more."""
    valley.enrol(AMINA)
    valley.sow(AMINA, "1 June")
    valley.text(AMINA, "STOP")
    latest = int(TRANSPLANT_LATEST_DAY.value)
    assert latest == 45  # 16 July; and 28 days more are 13 August
    valley.go("13 Aug 23:00")
    assert _open(valley)
    valley.go("14 Aug 07:00")
    assert not _open(valley) and _nursery(valley).no_result


def test_a_result_that_was_asked_for_twice_in_vain_is_kept_as_none(
    valley: Valley, kijani: Village
) -> None:
    """The nursery closed before; now it says why."""
    valley.enrol(AMINA)
    valley.sow(AMINA, "14 May")
    valley.go("1 Jun 09:00")
    valley.text(AMINA, "done")
    valley.go("13 Jun 07:00")
    assert _nursery(valley).no_result


def test_a_season_that_was_told_is_no_silent_one(valley: Valley, kijani: Village) -> None:
    """All of the field, no mats left, nothing sown again."""
    valley.enrol(AMINA)
    valley.sow(AMINA, "14 May")
    valley.go("1 Jun 09:00")
    valley.text(AMINA, "done")
    valley.go("9 Jun 07:00")
    valley.text(AMINA, "2")
    valley.text(AMINA, "2")
    assert not _open(valley) and not _nursery(valley).no_result
