"""A call for help given to a colleague: both see it, and the board of calls counts it there."""

from collections.abc import Iterable, Sequence
from datetime import datetime

from assistant.people import Officer
from assistant.service.audit import TrailAct, note
from assistant.service.house import House
from assistant.service.letters import Pen
from assistant.service.sight import Sight
from assistant.service.waiting.before import Before
from assistant.service.waiting.deeds import Outcome, one_deed, subject_of
from assistant.service.waiting.picks import Pick


def colleagues(
    house: House, sight: Sight, village_ids: Iterable[int | None]
) -> tuple[Officer, ...]:
    """All other officers of the programme, those first who serve one of these villages."""
    wanted = set(village_ids)
    with house.store.look() as work:
        others = [each for each in work.people.officers() if each.id != sight.officer.id]
    return tuple(
        sorted(others, key=lambda each: (not wanted & set(each.village_ids), each.name))
    )


def hand_on(
    house: House, sight: Sight, keys: Iterable[str], to_id: int, now: datetime
) -> Outcome:
    """Gives calls to another officer, whose account is open."""

    def each(pen: Pen, picks: Sequence[Pick], before: Before) -> int:
        taker = pen.work.people.officer_by_id(to_id)
        if taker is None or taker.id == sight.officer.id:
            return 0
        giver, work = sight.officer.id, pen.work
        for pick in picks:
            if pick.call is not None:
                before.handed.append(work.handed.hand(pick.call.id, giver, taker.id, now))
                note(work, giver, TrailAct.CALL_HANDED_ON, now, subject_of(pick), taker.name)
        return len(before.handed)

    return one_deed(house, sight, keys, "hand", now, each)
