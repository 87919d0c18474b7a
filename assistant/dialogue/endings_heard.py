"""What follows where the ear asked: somebody is hurt, the bed is lost, no more texts."""

from collections.abc import Mapping

from assistant.dialogue import endings as e
from assistant.dialogue.aid import TOLD, aid_text, loss_text, needs_help
from assistant.dialogue.values import (
    Decline,
    Known,
    NoteUnread,
    RaiseAlarm,
    ResumeTexts,
    Session,
    SettleAlarm,
    Text,
    Turn,
)
from assistant.hearing import Kind
from assistant.wording import messages_aid as aid
from assistant.wording import messages_talk as m


def _hurt(session: Session, known: Known) -> Turn:
    """Somebody is: the neutral text, and a person is told."""
    says = aid_text(Kind.HURT, known.nearby)
    changes = (SettleAlarm(hurt=True), *needs_help(known))
    return Turn(session.held, (Text((says,), TOLD),), changes)


def _nobody_hurt(session: Session, known: Known) -> Turn:
    return e.ended(
        session, known, e.said(aid.GOOD_NOBODY()), changes=(SettleAlarm(hurt=False),)
    )


def _lost(session: Session, known: Known) -> Turn:
    kind = Kind.DANGER if known.in_storm else Kind.LOST
    only = known.nurseries[0].id if len(known.nurseries) == 1 else None
    change = RaiseAlarm(kind, str(session.answers["words"]), only)
    return Turn(session.held, (Text((loss_text(kind, known),), TOLD),), (change,))


def _not_lost(session: Session, known: Known) -> Turn:
    note = NoteUnread("", str(session.answers["words"]))
    return e.ended(session, known, e.said(aid.GOOD_NOBODY()), changes=(note,))


def _stop_all(session: Session, known: Known) -> Turn:
    if known.farmer is None or known.farmer.consent_at is None:
        return Turn(None, (e.said(m.NO_CONSENT()),), (Decline(),))
    return e.stop(session.held, known)


def go_on(session: Session | None, known: Known) -> Turn:
    """The daily texts go on."""
    return e.ended(session, known, e.said(aid.GO_ON()), changes=(ResumeTexts(),))


HEARD_ENDINGS: Mapping[str, e.Ending] = {
    "!hurt": _hurt,
    "!nobody_hurt": _nobody_hurt,
    "!lost": _lost,
    "!not_lost": _not_lost,
    "!stop_all": _stop_all,
    "!go_on": go_on,
}
