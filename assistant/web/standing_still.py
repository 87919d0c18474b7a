"""The line on every page where texts do not leave, or a nursery cannot be read."""

from collections.abc import Iterator

from assistant.service.brakes import stopped_words
from assistant.service.copies import copy_is_late
from assistant.service.pulse import Pulse, ServiceFault, pulse
from assistant.service.set_aside import aside_for
from assistant.web.desk import Desk
from assistant.wording import messages_web_running as web_running
from assistant.wording.message import Say


def standing_still(desk: Desk) -> tuple[Say, ...]:
    """What an officer must know of the service, the gravest first; empty on a good day."""
    late = (web_running.NO_COPY(),) if copy_is_late(desk.house, desk.now) else ()
    stopped = stopped_words(desk.house, desk.now)
    return (*_faults(pulse(desk.house, desk.now)), *late, *stopped, *_aside(desk))


def texts_leave(desk: Desk) -> bool:
    """Whether no text of the day is kept from its phone, by a line or by a person."""
    return {ServiceFault.WAITING, ServiceFault.HELD}.isdisjoint(
        pulse(desk.house, desk.now).faults
    )


def _faults(found: Pulse) -> Iterator[Say]:
    minutes = int(found.waits.total_seconds() // 60)
    if not found.room:
        yield web_running.NO_ROOM()
    others = [each for each in found.faults if each is not ServiceFault.ROOM]
    for fault in others[:1]:  # one standstill has many signs
        if fault is ServiceFault.HELD:
            yield web_running.HELD(why=found.line.held_why)
        elif minutes:
            yield web_running.WAITING(minutes=minutes)
        elif fault is ServiceFault.TICKING:
            yield web_running.NOBODY_TICKS()
        else:
            yield web_running.NOBODY_SENDS()


def _aside(desk: Desk) -> Iterator[Say]:
    found = aside_for(desk.house, desk.member.sight)
    if found:
        named = ", ".join(f"{each.farmer} ({each.label})" for each in found[:MOST_NAMED])
        yield web_running.SET_ASIDE(n=len(found), named=named)


MOST_NAMED = 5
