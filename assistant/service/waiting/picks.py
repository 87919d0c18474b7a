"""Lines of the list that an officer has ticked, and for which of them a deed can be done.

A line is named by its kind and a number: bed-12 is a nursery, call-7 a call for help, words-5
and dead-5 what there is of a farmer.
"""

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from assistant.agronomy.nursery import Nursery
from assistant.people import Farmer, Village
from assistant.service.alarm_kinds import ALARMS
from assistant.service.desk.visits import find_bed, open_tasks
from assistant.service.letters import Pen, Unsent, why_not
from assistant.service.told import told
from assistant.store import PastCall
from assistant.wording import messages_web as web
from assistant.wording import messages_web_desk as web_desk
from assistant.wording.day import what_of
from assistant.wording.message import Say

MOST = 500  # lines at once
_KEY = re.compile(r"(bed|call|words|dead)-([0-9]{1,9})")


@dataclass(frozen=True)
class Pick:
    """One line: its farmer, its nursery or call where it is of one, and a word about it."""

    key: str
    farmer: Farmer
    village: Village | None
    nursery: Nursery | None = None
    call: PastCall | None = None
    about: tuple[Say, ...] = ()
    words: str = ""

    @property
    def kind(self) -> str:
        """bed, call, words or dead."""
        return self.key.partition("-")[0]


@dataclass(frozen=True)
class RefusedPick:
    """A line for which a deed cannot be done, and why."""

    pick: Pick
    why: Say


@dataclass(frozen=True)
class Picked:
    """The lines of a deed, and those that it is not for."""

    picks: tuple[Pick, ...]
    refused: tuple[RefusedPick, ...]


def picked(pen: Pen, keys: Iterable[str], deed: str) -> Picked:
    """Reads what was ticked; what is not in sight is left out."""
    picks = tuple(_found(pen, dict.fromkeys(keys)))
    refused = {pick.key: why for pick in picks if (why := _why_not(pick, deed)) is not None}
    return Picked(
        tuple(pick for pick in picks if pick.key not in refused),
        tuple(RefusedPick(pick, refused[pick.key]) for pick in picks if pick.key in refused),
    )


def _found(pen: Pen, keys: Iterable[str]) -> Iterator[Pick]:
    for key in list(keys)[:MOST]:
        match = _KEY.fullmatch(key)
        pick = _READ[match[1]](pen, key, int(match[2])) if match else None
        if pick is not None:
            yield pick


def _bed(pen: Pen, key: str, number: int) -> Pick | None:
    found = find_bed(pen.work, pen.sight, number)
    if found is None:
        return None
    farmer, nursery = found
    asked = tuple(
        web_desk.OPEN_TASK(what=what_of(each.task, nursery.practice))
        for each in open_tasks(pen.work, nursery)
    )
    return Pick(key, farmer, _village(pen, farmer), nursery=nursery, about=asked)


def _call(pen: Pen, key: str, number: int) -> Pick | None:
    call = pen.work.story.call(number, pen.sight.scope(), pen.sight.officer)
    if call is None:
        return None
    said = told(call.about, call.words)
    nursery = pen.work.nurseries.get(call.nursery_id) if call.nursery_id else None
    about: tuple[Say, ...] = (said.about, said.answer) if said.answer else (said.about,)
    if said.words and call.about == "other":
        about = ()  # the words say it
    return Pick(
        key, call.farmer, _village(pen, call.farmer), nursery, call, about, said.words or ""
    )


def _farmer(pen: Pen, key: str, number: int) -> Pick | None:
    farmer = pen.work.people.farmer_by_id(number)
    if farmer is None or not pen.sight.sees(farmer.village_id):
        return None
    return Pick(key, farmer, _village(pen, farmer))


_READ = {"bed": _bed, "call": _call, "words": _farmer, "dead": _farmer}


def _village(pen: Pen, farmer: Farmer) -> Village | None:
    return pen.sight.village(farmer.village_id)


def _why_not(pick: Pick, deed: str) -> Say | None:
    if deed == "text":
        why = why_not(pick.farmer)
        return _UNSENT[why] if why else None
    if deed == "closed":
        return None
    if deed == "hand":
        return None if pick.call is not None else web_desk.NOT_A_CALL()
    if deed in ("visited", "rang", "move"):
        return None if pick.kind == "bed" else web_desk.NOT_A_BED()
    if pick.kind == "bed":
        return web_desk.BED_ONLY_SEEN()
    alarm = pick.call is not None and pick.call.about in ALARMS
    return web_desk.ALARM_ONLY() if alarm else None


_UNSENT = {
    Unsent.STOPPED: web.CANNOT_STOPPED(),
    Unsent.NO_CONSENT: web.CANNOT_NO_CONSENT(),
}
