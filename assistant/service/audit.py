"""The trail: who did what, when, and on what. Every change by an officer leaves a line.

Other use cases call `note` in the transaction of the change, so that neither is kept without
the other.
"""

import re
from dataclasses import dataclass, replace
from datetime import UTC, datetime
from enum import StrEnum
from zoneinfo import ZoneInfo

from assistant.people import Officer
from assistant.service.house import House
from assistant.service.sight import Sight
from assistant.store import TrailEntry, Work

PAGE_LINES = 100


class TrailAct(StrEnum):
    """What can be done; each has its words in `wording.messages_web.ACTS`."""

    SIGNED_IN = "signed_in"
    SIGNED_OUT = "signed_out"
    SESSIONS_ENDED = "sessions_ended"
    FACTOR_ADDED = "factor_added"
    FACTOR_TAKEN = "factor_taken"
    WAY_BACK_SENT = "way_back_sent"
    WAY_BACK_USED = "way_back_used"
    SIGN_IN_REFUSED = "sign_in_refused"
    SIGN_IN_LOCKED = "sign_in_locked"
    CODE_LOCKED = "code_locked"
    PASSWORD_CHANGED = "password_changed"
    ONE_TIME_GIVEN = "one_time_given"
    ONE_TIME_ISSUED = "one_time_issued"
    CODE_ISSUED = "code_issued"
    OFFICER_ADDED = "officer_added"
    OFFICER_CLOSED = "officer_closed"
    VILLAGES_GIVEN = "villages_given"
    LANGUAGE_CHANGED = "language_changed"
    CALL_ANSWERED = "call_answered"
    CALL_HANDLED = "call_handled"
    CALL_HANDED_ON = "call_handed_on"
    ANSWER_HASTENED = "answer_hastened"
    WROTE = "wrote"
    VISITED = "visited"
    RANG = "rang"
    UNDID = "undid"
    TEXTS_STOPPED = "texts_stopped"
    CALL_REOPENED = "call_reopened"
    NURSERY_REOPENED = "nursery_reopened"
    SETTING_CHANGED = "setting_changed"
    COPY_ASKED = "copy_asked"
    MESSAGES_TAKEN = "messages_taken"
    ALERT_PASTED = "alert_pasted"
    VILLAGE_ADDED = "village_added"
    VILLAGE_MENDED = "village_mended"
    VILLAGE_JOINED = "village_joined"
    VILLAGE_UNITS = "village_units"
    VILLAGE_RETIRED = "village_retired"
    QUESTION_ADDED = "question_added"
    QUESTION_READ = "question_read"
    QUESTION_WITHDRAWN = "question_withdrawn"
    OFFICER_MENDED = "officer_mended"
    PEOPLE_TAKEN = "people_taken"
    COSTS_TAKEN = "costs_taken"
    BED_MENDED = "bed_mended"
    VISIT_MENDED = "visit_mended"
    VISIT_DROPPED = "visit_dropped"
    JOINED = "joined"
    LIST_WITHDRAWN = "list_withdrawn"
    TEXT_TAKEN_BACK = "text_taken_back"
    DATES_CHANGED = "dates_changed"
    NURSERY_CLOSED = "nursery_closed"
    LINE_TRIED = "line_tried"
    RESULTS_TAKEN = "results_taken"
    VILLAGE_HANDED_OVER = "village_handed_over"
    CALENDAR_TAKEN = "calendar_taken"
    PRACTICES_SET = "practices_set"
    WARMTH_KEPT = "warmth_kept"
    CLIMATE_SET = "climate_set"
    BRAKE_ON = "brake_on"
    BRAKE_OFF = "brake_off"
    ERASURE_ASKED = "erasure_asked"
    ERASED = "erased"
    PERSON_TAKEN = "person_taken"
    LOOKED = "looked"
    LOOKED_THROUGH = "looked_through"
    NUMBER_SHOWN = "number_shown"
    WARNED = "warned"
    WARNING_DROPPED = "warning_dropped"
    WARNING_CLEARED = "warning_cleared"
    WARNING_RECALLED = "warning_recalled"
    ASKED_AGAIN = "asked_again"
    BROADCAST = "broadcast"
    VILLAGE_PLACED = "village_placed"
    ALERT_TAKEN = "alert_taken"
    ENROLLED = "enrolled"
    AGREED = "agreed"
    REFUSED = "refused"
    FARMER_MENDED = "farmer_mended"
    NUMBER_CHANGED = "number_changed"
    NUMBER_PASSED_ON = "number_passed_on"
    LIST_APPLIED = "list_applied"


LOOKS = frozenset({TrailAct.LOOKED, TrailAct.LOOKED_THROUGH})


@dataclass(frozen=True)
class Subject:
    """What an act was done to."""

    farmer_id: int | None = None
    nursery_id: int | None = None
    village_id: int | None = None


NOBODY = Subject()


def note(
    work: Work,
    officer_id: int | None,
    act: str,
    now: datetime,
    about: Subject = NOBODY,
    detail: str = "",
) -> None:
    """Keeps one line of the trail; without an officer it was done at the command line."""
    work.audit.add(
        act,
        now,
        officer_id=officer_id,
        farmer_id=about.farmer_id,
        nursery_id=about.nursery_id,
        village_id=about.village_id,
        detail=detail,
    )


@dataclass(frozen=True)
class Trail:
    """A page of the trail, the latest first, its times in the programme's `zone`; `older` is
    where the next page begins."""

    lines: tuple[TrailEntry, ...]
    officers: tuple[Officer, ...]
    zone: str
    officer_id: int | None = None
    older: int | None = None
    looks: bool = False


def trail(
    house: House,
    sight: Sight,
    *,
    officer_id: int | None = None,
    before: int | None = None,
    looks: bool = False,
) -> Trail | None:
    """What was done, for the lead; None for anybody else.

    Args:
        looks: also who looked at whom, of which there is much more.
    """
    if not sight.officer.is_lead:
        return None
    with house.store.look() as work:
        lines = work.audit.latest(
            PAGE_LINES + 1,
            before_id=before,
            officer_id=officer_id,
            without=() if looks else LOOKS,
        )
        officers = work.people.officers()
    older = lines[PAGE_LINES - 1].id if len(lines) > PAGE_LINES else None
    shown = tuple(in_zone(line, house.zone) for line in lines[:PAGE_LINES])
    return Trail(shown, officers, house.zone, officer_id, older, looks)


_SPAN = re.compile(r"(\d{4}-\d\d-\d\d \d\d:\d\d) \.\. (\d{4}-\d\d-\d\d \d\d:\d\d) UTC")


def in_zone(line: TrailEntry, zone: str) -> TrailEntry:
    """A line with its times in a zone, also the hours among its words, which are kept in
    UTC."""
    here = ZoneInfo(zone)

    def local(found: re.Match[str]) -> str:
        start, end = (
            datetime.fromisoformat(text).replace(tzinfo=UTC).astimezone(here)
            for text in found.groups()
        )
        return f"{start:%Y-%m-%d %H:%M} .. {end:%Y-%m-%d %H:%M}"

    return replace(line, at=line.at.astimezone(here), detail=_SPAN.sub(local, line.detail))
