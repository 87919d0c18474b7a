"""Drafts of warnings: made by an officer or from an official alert, then sent or dropped.

How to use it, all in one transaction of yours:

    made = draft(work, Draft(village_ids=(1, 4), starts_at=..., ends_at=..., created_at=now,
                             certainty=Certainty.LIKELY, hazard="Heavy rain",
                             source=Source.ALERT, alert_id=12))
    send(work, house, made.id, now)             at once, by the setting: nobody is asked
    drop(work, made.id, now)                    not worth a warning, or cancelled
    for each in work.drafts.of_alert(12): ...   what an alert has become so far

A draft that nobody decides on stands on the Warnings page of every officer who serves one of
its villages, with its reach, cost and words, until its hours are over. It is decided once:
`send` and `drop` say whether it was they who did it. When an official alert is cancelled, drop
its open drafts; a warning that went out (`each.decision is Decision.SENT`) is ended by
`warnings.give_all_clear(work, house, warning_id, now)` for each of
`work.drafts.warnings(each.id)`. An update of an alert is a new draft; drop the old one where
it is open.

Hours longer than a warning may last are cut when the draft is made; one that begins further
ahead than a warning may is kept, and can be sent when its time is near.
"""

from collections.abc import Collection
from dataclasses import replace
from datetime import datetime

from assistant.dialogue.rain_hours import hours_fault, longest
from assistant.dialogue.values import IssueWarning
from assistant.people import Officer
from assistant.service.audit import Subject, TrailAct, note
from assistant.service.house import House
from assistant.service.storms.given import end_replaced
from assistant.service.storms.warnings import warn
from assistant.store import AlertCertainty, Decision, Draft, DraftSource, Work


def draft(work: Work, wanted: Draft) -> Draft:
    """Keeps a new draft for its officers to decide on.

    Raises:
        ValueError: no village, or hours that end before they begin.
    """
    if not wanted.village_ids:
        raise ValueError("expected at least one village, got none: name those in danger")
    if wanted.ends_at <= wanted.starts_at:
        raise ValueError(
            f"expected hours that end after {wanted.starts_at}, got {wanted.ends_at}: swap them"
        )
    unique = tuple(dict.fromkeys(wanted.village_ids))
    latest = wanted.starts_at + longest(wanted.danger)
    return work.drafts.add(
        replace(wanted, village_ids=unique, ends_at=min(wanted.ends_at, latest))
    )


def drop(
    work: Work,
    draft_id: int,
    now: datetime,
    officer: Officer | None = None,
    village_ids: Collection[int] | None = None,
) -> bool:
    """Decides that no warning is given; False where it was decided on before.

    `officer` and `village_ids` as in `send`.
    """
    found = _decided(work, draft_id, Decision.DROPPED, now, officer, village_ids)
    for village_id in found.village_ids if found else ():
        by = officer.id if officer else None
        note(work, by, TrailAct.WARNING_DROPPED, now, Subject(village_id=village_id))
    return found is not None


def send(
    work: Work,
    house: House,
    draft_id: int,
    now: datetime,
    officer: Officer | None = None,
    village_ids: Collection[int] | None = None,
) -> bool:
    """Warns the villages of a draft; False where it was decided on before, or its hours are
    over or too far ahead, and then nothing is sent.

    Args:
        officer: who decided; None for the assistant itself, by a setting.
        village_ids: only these of its villages; the others keep a draft of their own.
    """
    found = work.drafts.get(draft_id)
    if found is None or _hours_are_wrong(found, now):
        return False
    found = _decided(work, draft_id, Decision.SENT, now, officer, village_ids)
    if found is None:
        return False
    for village_id in found.village_ids:
        _warn_village(work, house, found, village_id, officer, now)
    return True


def _hours_are_wrong(found: Draft, now: datetime) -> bool:
    return hours_fault(found.starts_at, found.ends_at, now, found.danger) is not None


def _decided(
    work: Work,
    draft_id: int,
    decision: Decision,
    now: datetime,
    officer: Officer | None,
    village_ids: Collection[int] | None,
) -> Draft | None:
    """The draft with the villages that were decided on; None where that was done before."""
    if not work.drafts.decide(draft_id, decision, officer.id if officer else None, now):
        return None
    found = work.drafts.get(draft_id)
    others = [
        each
        for each in (found.village_ids if found else ())
        if village_ids is not None and each not in village_ids
    ]
    if found is None or not others:
        return found
    work.drafts.narrow(found.id, others)
    left = replace(found, id=0, village_ids=tuple(others), decision=None)
    work.drafts.add(replace(left, decided_at=None, decided_by=None))
    return work.drafts.get(draft_id)


def _warn_village(
    work: Work,
    house: House,
    found: Draft,
    village_id: int,
    officer: Officer | None,
    now: datetime,
) -> None:
    """One village. Where the assistant decides, an officer of the village answers for it."""
    village = work.people.village(village_id)
    serving = work.people.officers_of(village_id)
    answers = officer or next(iter(sorted(serving, key=lambda each: each.is_lead)), None)
    if village is None or answers is None:
        return  # nobody would hear a call for help
    end_replaced(work, found, village_id, now)
    standing = warn(work, house, found, village, answers.id, now)
    work.drafts.gave(found.id, village_id, standing.id)
    by = officer.id if officer else None
    hours = f"{found.starts_at:%Y-%m-%d %H:%M} .. {found.ends_at:%Y-%m-%d %H:%M} UTC"
    note(work, by, TrailAct.WARNED, now, Subject(village_id=village_id), hours)


def issue_warning(
    work: Work, house: House, phone: str, change: IssueWarning, now: datetime
) -> None:
    """An officer's warning by SMS, which was shown back and confirmed."""
    officer = work.people.officer(phone)
    if officer is None or work.people.village(change.village_id) is None:
        raise LookupError(f"no officer {phone} or village {change.village_id}: add them first")
    made = draft(
        work,
        Draft(
            village_ids=(change.village_id,),
            starts_at=change.starts_at,
            ends_at=change.ends_at,
            danger=change.danger,
            created_at=now,
            certainty=AlertCertainty.UNKNOWN,
            source=DraftSource.TEXT,
            made_by=officer.id,
        ),
    )
    send(work, house, made.id, now, officer)
