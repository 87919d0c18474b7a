"""Updates and cancels of official alerts, followed through to drafts and warnings.

A later message names those whose place it takes. They are believed only where they come from
the same sender and were sent later: a cancel calls warnings back, so it must not be easy to
make one, and two messages that replace each other must not both vanish.
"""

from collections.abc import Iterable
from datetime import datetime

from assistant.alert_terms import MessageType, Reference, Scope, Status
from assistant.alerts import Alert
from assistant.service.storms import drafts
from assistant.store import KeptAlert, Work


def acts(alert: Alert) -> bool:
    """Whether a message may do anything at all: actual, and for the public."""
    return alert.status is Status.ACTUAL and alert.scope is Scope.PUBLIC


def replaces(alert: Alert) -> tuple[Reference, ...]:
    """The earlier messages whose place an update or a cancel takes."""
    if not acts(alert) or alert.kind not in (MessageType.UPDATE, MessageType.CANCEL):
        return ()
    return tuple(
        each
        for each in alert.references
        if each.sender == alert.key.sender and each.sent < alert.key.sent
    )


def follow(work: Work, kept: KeptAlert, replaced: Iterable[Reference], now: datetime) -> None:
    """Takes back what earlier messages led to and nobody decided on yet."""
    for reference in replaced:
        earlier = work.alerts.of(reference)
        if earlier is None:
            continue
        work.alerts.replace(earlier.id, kept.id)
        for draft in work.drafts.of_alert(earlier.id):
            if draft.decision is None:
                drafts.drop(work, draft.id, now)
