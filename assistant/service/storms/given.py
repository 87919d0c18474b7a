"""The warnings that an official alert led to, and that earlier messages of its chain led to."""

from collections.abc import Iterator
from dataclasses import replace
from datetime import datetime

from assistant.dialogue.values import Kind, Standing
from assistant.store import Decision, Draft, KeptAlert, Work

Given = tuple[Draft, Standing]


def earlier(work: Work, alert_id: int) -> Iterator[KeptAlert]:
    """The messages that this one replaced, and those that they had replaced."""
    following = [alert_id]
    while following:
        for each in work.alerts.replaced(following.pop()):
            yield each
            following.append(each.id)


def still_warned(work: Work, alert_id: int, now: datetime) -> dict[int, list[Given]]:
    """The warnings that earlier messages led to and that still stand, by village."""
    found: dict[int, list[Given]] = {}
    for each in earlier(work, alert_id):
        for draft in work.drafts.of_alert(each.id):
            if draft.decision is Decision.SENT:
                for village_id, standing in _standing(work, draft, now):
                    found.setdefault(village_id, []).append((draft, standing))
    return found


def _standing(work: Work, draft: Draft, now: datetime) -> Iterator[tuple[int, Standing]]:
    for village_id, warning_id in work.drafts.warnings(draft.id).items():
        for standing in work.warnings.standing(village_id, now):
            if standing.id == warning_id:
                yield village_id, standing


def settle_between(work: Work, kept: KeptAlert, now: datetime) -> set[int]:
    """A message came after the one that took its place: what it links is put right.

    Gives the villages that the latest of the chain holds to be in danger.
    """
    latest = kept
    while latest.replaced_by is not None:
        latest = work.alerts.get(latest.replaced_by) or replace(latest, replaced_by=None)
    for draft in work.drafts.of_alert(latest.id):
        if draft.decision is Decision.SENT:
            for village_id in work.drafts.warnings(draft.id):
                end_replaced(work, draft, village_id, now)
    return set(latest.village_ids)


def end_replaced(work: Work, draft: Draft, village_id: int, now: datetime) -> None:
    """A village is warned anew from an update: the warning from the earlier message ends, and
    what of it waits is not sent. Nobody is told; they have the new one."""
    if draft.alert_id is None:
        return
    for _, standing in still_warned(work, draft.alert_id, now).get(village_id, ()):
        work.warnings.clear(standing.id, now)
        work.outbox.withdraw(now, warning_id=standing.id, kinds=(Kind.WARNING,))
