"""Drafts of rain warnings, as the official alerts and the page use them."""

from dataclasses import replace
from datetime import timedelta

import pytest

from assistant.agronomy.dangers.rows import RAIN
from assistant.dialogue.rain_hours import MOST_AHEAD, longest
from assistant.service.storms import drafts
from assistant.store import AlertCertainty, Decision, Draft, DraftSource
from assistant.wording import messages_talk as m
from tests.valley import AMINA, KIJANI, MWANGA, OFFICER, ZAWADI, Staged, Valley, like, settle

_HOUR = timedelta(hours=1)


def to_two_beds(valley: Valley) -> None:
    """Amina in Kijani and Zawadi in Mto Mwanga sowed two days ago; each village has an officer
    of its own."""
    settle(valley)
    valley.add_officer(KIJANI)
    valley.add_officer(MWANGA, phone="+447700900003")
    for phone, village in ((AMINA, 1), (ZAWADI, 2)):
        valley.enrol(phone, village)
        valley.sow(phone, "30 May")
        valley.heard(phone)


@pytest.fixture
def beds(staged: Staged) -> Valley:
    return staged(to_two_beds)


def _from_an_alert(valley: Valley, **given: object) -> Draft:
    wanted = Draft(
        village_ids=(KIJANI.id, MWANGA.id, KIJANI.id),
        starts_at=valley.now + _HOUR,
        ends_at=valley.now + 6 * _HOUR,
        created_at=valley.now,
        certainty=AlertCertainty.LIKELY,
        hazard="Heavy rain",
        source=DraftSource.ALERT,
        alert_id=7,
    )
    with valley.house.store.work() as work:
        return drafts.draft(work, replace(wanted, **given))  # type: ignore[arg-type]


def _send(valley: Valley, made: Draft) -> bool:
    with valley.house.store.work() as work:
        return drafts.send(work, valley.house, made.id, valley.now)


def test_by_the_setting_an_alert_goes_to_all_its_villages_once(beds: Valley) -> None:
    """Nobody is asked; sending again sends nothing, and the trail says who warned: nobody."""
    made = _from_an_alert(beds)
    assert made.village_ids == (KIJANI.id, MWANGA.id)
    assert (_send(beds, made), _send(beds, made)) == (True, False)
    beds.send()
    for phone in (AMINA, ZAWADI):
        assert beds.heard(phone) == [like(m.WARNING, ...)]
    with beds.house.store.look() as work:
        assert set(work.drafts.warnings(made.id)) == {KIJANI.id, MWANGA.id}
        line = work.audit.latest(1)[0]
    assert (line.act, line.officer, line.village) == ("warned", None, "Mto Mwanga")


def test_an_officer_decides_for_the_villages_they_serve(beds: Valley) -> None:
    """The other village keeps a draft for its own officer."""
    made = _from_an_alert(beds)
    with beds.house.store.work() as work:
        asha = work.people.officer(OFFICER)
        assert drafts.send(work, beds.house, made.id, beds.now, asha, [KIJANI.id])
    beds.send()
    assert beds.heard(AMINA) == [like(m.WARNING, ...)]
    assert beds.heard(ZAWADI) == []
    with beds.house.store.work() as work:
        (left,) = work.drafts.open(beds.now)
        assert left == replace(made, id=left.id, village_ids=(MWANGA.id,))
        assert drafts.drop(work, left.id, beds.now, asha)
        assert not drafts.send(work, beds.house, left.id, beds.now)
        kept = [each.decision for each in work.drafts.of_alert(7)]
    assert kept == [Decision.SENT, Decision.DROPPED]


def test_hours_that_are_too_long_are_cut_and_those_too_far_wait(beds: Valley) -> None:
    """A wrong month must not hold up the uncovering for weeks."""
    far = beds.now + MOST_AHEAD + _HOUR
    made = _from_an_alert(beds, starts_at=far, ends_at=far + 2 * longest(RAIN))
    assert made.ends_at == far + longest(RAIN)
    assert not _send(beds, made)
    beds.leap(beds.now + 2 * _HOUR)
    assert _send(beds, made)


def test_a_draft_without_villages_or_hours_is_a_fault_of_ours(beds: Valley) -> None:
    """It says what to give."""
    with pytest.raises(ValueError, match="at least one village"):
        _from_an_alert(beds, village_ids=())
    with pytest.raises(ValueError, match="end after"):
        _from_an_alert(beds, ends_at=beds.now)
