"""Drafts of rain warnings: decided once, and found while they can be."""

from dataclasses import replace
from datetime import datetime, timedelta

from assistant.people import Officer, Village
from assistant.store import AlertCertainty, Decision, Draft, DraftSource, Store

_HOUR = timedelta(hours=1)


def _draft(village: Village, now: datetime, **given: object) -> Draft:
    kept = Draft((village.id,), now + _HOUR, now + 5 * _HOUR, created_at=now)
    return replace(kept, **given)  # type: ignore[arg-type]


def test_a_draft_comes_back_as_it_was_made(
    store: Store, village: Village, officer: Officer, now: datetime
) -> None:
    """With an id, and its villages."""
    given = _draft(
        village,
        now,
        certainty=AlertCertainty.POSSIBLE,
        hazard="Thunderstorm",
        words="The river rises; {village} %s",
        source=DraftSource.ALERT,
        made_by=officer.id,
        alert_id=12,
    )
    with store.work() as work:
        made = work.drafts.add(given)
    assert made == replace(given, id=made.id)
    with store.look() as work:
        assert work.drafts.get(made.id) == made
        assert work.drafts.of_alert(12) == (made,)
        assert work.drafts.of_alert(13) == ()
        assert work.drafts.open(now) == (made,)
        assert work.drafts.open(now + 5 * _HOUR) == ()


def test_a_draft_is_decided_once(
    store: Store, village: Village, officer: Officer, now: datetime
) -> None:
    """Whoever comes second, to send or to drop, changes nothing."""
    with store.work() as work:
        made = work.drafts.add(_draft(village, now))
    with store.work() as work:
        assert work.drafts.decide(made.id, Decision.SENT, officer.id, now)
    with store.work() as work:
        assert not work.drafts.decide(made.id, Decision.DROPPED, None, now + _HOUR)
        decided = work.drafts.get(made.id)
        assert work.drafts.open(now) == ()
    by = {"decided_by": officer.id, "decided_at": now, "decision": Decision.SENT}
    assert decided == replace(made, **by)  # type: ignore[arg-type]


def test_the_warnings_of_a_draft_are_kept_with_its_villages(
    store: Store, village: Village, officer: Officer, now: datetime
) -> None:
    """A village that was taken out has none."""
    with store.work() as work:
        other = work.people.add_village("Bonde", "Africa/Nairobi")
        made = work.drafts.add(_draft(village, now, village_ids=(village.id, other.id)))
        work.drafts.narrow(made.id, [other.id])
        given = work.warnings.add(village.id, officer.id, now, now + _HOUR, now)
        work.drafts.gave(made.id, village.id, given.id)
    with store.look() as work:
        kept = work.drafts.get(made.id)
        assert kept is not None and kept.village_ids == (village.id,)
        assert work.drafts.warnings(made.id) == {village.id: given.id}
