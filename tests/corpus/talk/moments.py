"""The moments at which a reply of the corpus arrives, as what is known of a phone then.

Bed A, 0.4 ha, in Kijani; Wednesday 10 June 2026 at noon, the day and stage of the bed as the
moment has them.
"""

from collections.abc import Callable, Mapping
from dataclasses import replace
from datetime import date, datetime, time, timedelta
from functools import lru_cache
from zoneinfo import ZoneInfo

from assistant.agronomy.calendar import TaskCode
from assistant.agronomy.nursery import Nursery
from assistant.channel import Channel
from assistant.dialogue import conversations as talks
from assistant.dialogue import values as v
from assistant.dialogue.engine import arrive, begin
from assistant.people import LANGUAGES, Farmer
from assistant.wiring.catalogues import open_catalogue
from assistant.wiring.dangers import open_dangers
from assistant.wiring.lexicons import open_lexicons
from assistant.wiring.tasks import open_tasks
from assistant.wording.render import Catalogue
from tests.talk import VILLAGES, nursery
from tests.valley import AMINA, EARS, NAIROBI

open_dangers()
open_tasks()
TODAY = date(2026, 6, 10)
NOON, NIGHT = time(12), time(23)
REGIONS = {"en": "KE", "sw": "TZ", "fr": "MG", "pt": "MZ", "fil": "PH", "hi": "IN", "bn": "BD"}
NEARBY = v.Nearby(
    emergency="+447700900112",
    health_post="Demo post +447700900113",
    vet="Demo vet +447700900114",
    officer="Neema +447700900001",
)


@lru_cache(maxsize=16)
def catalogue(language: str) -> Catalogue:
    """The texts of a language."""
    return open_catalogue(language)


def known_of(language: str, bed: Nursery | None, **given: object) -> v.Known:
    at = datetime.combine(TODAY, NOON, ZoneInfo(NAIROBI))
    farmer = Farmer(1, AMINA, language, 1, at - timedelta(days=30), None)
    plain = v.Known(
        now=at,
        today=TODAY,
        zone=NAIROBI,
        phone=AMINA,
        channel=Channel.SMS,
        catalogue=catalogue(language),
        lexicons=open_lexicons(),
        languages=tuple(LANGUAGES),
        villages=VILLAGES,
        ears=EARS,
        region=REGIONS.get(language),
        farmer=farmer,
        nurseries=(bed,) if bed else (),
        nearby=NEARBY,
    )
    return replace(plain, **given)  # type: ignore[arg-type]


def bed_of(day: int, **given: object) -> Nursery:
    sown = {"sown": True} if day > 0 else {}
    return replace(nursery(sow=TODAY - timedelta(days=day)), **{**sown, **given})  # type: ignore[arg-type]


def _asked(task: TaskCode, day: int, **given: object) -> Callable[[str], v.Known]:
    """A prompt for this task that reached the phone this morning."""
    item = v.Item(1, task, TODAY)

    def moment(language: str) -> v.Known:
        bed = bed_of(day, **given)
        return known_of(language, bed, items=(item,), focuses=(v.Focus(items=(item,)),))

    return moment


def _warning(language: str) -> v.Known:
    bed = bed_of(3)
    known = known_of(language, bed)
    stands = v.Standing(7, 1, known.now, known.now + timedelta(hours=6))
    return replace(
        known, warning=stands, raining=True, focuses=(v.Focus(warning_id=stands.id),)
    )


def _consent(language: str) -> v.Known:
    known = known_of(language, None)
    assert known.farmer is not None
    asked = replace(
        known,
        farmer=replace(known.farmer, consent_at=None),
        invited=v.Invited(officer="Neema"),
    )
    talk = talks.INVITED
    return replace(asked, focuses=(v.Focus(question=f"{talk.name}.{talk.first}"),))


def _signup(language: str) -> v.Known:
    known = known_of(language, None)
    session = arrive(begin(talks.PLAN), known, talks.TABLES).session
    focus = v.Focus(question=f"{session.conversation}.{session.step}")
    return replace(known, session=session, focuses=(focus,))


def _nothing(language: str) -> v.Known:
    return known_of(language, bed_of(3))


def _stopped(language: str) -> v.Known:
    known = _nothing(language)
    assert known.farmer is not None
    return replace(
        known, farmer=replace(known.farmer, stopped_at=known.now - timedelta(days=4))
    )


def _night(language: str) -> v.Known:
    late = datetime.combine(TODAY, NIGHT, ZoneInfo(NAIROBI))
    return replace(_nothing(language), now=late)


MOMENTS: Mapping[str, Callable[[str], v.Known]] = {
    "warning": _warning,
    "soak": _asked(TaskCode.SOAK, -2),
    "sow": _asked(TaskCode.SOW, 0),
    "uncover": _asked(TaskCode.UNCOVER_FLOOD, 5),
    "drain": _asked(TaskCode.DRAIN_BED, 16, uncovered=True),
    "transplant": _asked(TaskCode.TRANSPLANT, 17, uncovered=True),
    "fill": _asked(
        TaskCode.FILL_GAPS, 24, uncovered=True, transplanted_on=TODAY - timedelta(days=7)
    ),
    "colour": _asked(TaskCode.COLOUR_CHECK, 8, uncovered=True),
    "leaves": _asked(TaskCode.LEAF_COUNT, 13, uncovered=True),
    "result": _asked(
        TaskCode.SEASON_RESULT, 25, uncovered=True, transplanted_on=TODAY - timedelta(days=7)
    ),
    "consent": _consent,
    "signup": _signup,
    "nothing": _nothing,
    "stopped": _stopped,
    "night": _night,
}
