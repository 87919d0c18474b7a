"""What each deed of the list asks for, what its page shows besides, and how it is done."""

from collections.abc import Iterable, Sequence
from datetime import date
from typing import Any

from wtforms import BooleanField

from assistant.people import LANGUAGES
from assistant.service.days import local_date
from assistant.service.desk.visits import Wrong
from assistant.service.later import HOURS
from assistant.service.letters import LONGEST_WORDS
from assistant.service.waiting import deeds
from assistant.service.waiting.deeds import Noted, Outcome
from assistant.service.waiting.hand_on import colleagues, hand_on
from assistant.service.waiting.picks import Picked
from assistant.service.waiting.writing import Offer, beside, offers
from assistant.web.desk import Desk
from assistant.web.fields import ChosenRow, Day, Needed, OneOf, TypedLines
from assistant.web.forms import OfficerForm
from assistant.web.later import LaterForm
from assistant.wording import messages_web as web
from assistant.wording import messages_web_desk as web_desk
from assistant.wording import messages_web_groups as web_groups
from assistant.wording.message import Say
from assistant.wording.messages_phrases import PHRASES

LONGEST_NOTE = 2000
NO_DAY = web.WRONG[Wrong.NO_DAY]


class DeedForm(OfficerForm):
    """Of a deed that asks for nothing."""

    def shows(self, desk: Desk, found: Picked) -> dict[str, Any]:
        """What the page shows besides."""
        return {}

    def do(self, desk: Desk, lines: Sequence[str]) -> Outcome:
        """The deed."""
        return deeds.see(desk.house, desk.sight, lines, desk.now)


class SeenForm(DeedForm):
    """That nurseries were seen."""

    on = Day(web.VISITED_ON, [Needed(NO_DAY)])
    note = TypedLines(web_desk.WHAT_SEEN, longest=LONGEST_NOTE)
    done = BooleanField()

    def do(self, desk: Desk, lines: Sequence[str]) -> Outcome:
        """Notes it."""
        noted = Noted(self.on.data, self.note.data, self.done.data)
        return deeds.visit(desk.house, desk.sight, lines, noted, desk.now)


class RangForm(DeedForm):
    """That farmers were spoken with."""

    note = TypedLines(web_desk.WHAT_HEARD, longest=LONGEST_NOTE)
    done = BooleanField()
    covered = BooleanField()

    def do(self, desk: Desk, lines: Sequence[str]) -> Outcome:
        """Notes it for today."""
        noted = Noted(today(desk), self.note.data, self.done.data, self.covered.data)
        return deeds.visit(desk.house, desk.sight, lines, noted, desk.now, by_phone=True)


class MoveForm(DeedForm):
    """Another day for beds."""

    day = Day(web_desk.NEW_DAY, [Needed(NO_DAY)])
    tell = BooleanField(default=True)

    def shows(self, desk: Desk, found: Picked) -> dict[str, Any]:
        """What the new day would change, once it is given."""
        day, keys = self.day.data, [pick.key for pick in found.picks]
        changes = deeds.foresee_days(desk.house, desk.sight, keys, day, desk.now) if day else ()
        return {"changes": changes, "wrong": web.WRONG}

    def do(self, desk: Desk, lines: Sequence[str]) -> Outcome:
        """Moves them."""
        day = self.day.data
        if day is None:
            return Wrong.NO_DAY
        return deeds.move_days(
            desk.house, desk.sight, lines, day, desk.now, tell=self.tell.data
        )


class HandForm(DeedForm):
    """A colleague who takes a call."""

    to = ChosenRow(web_groups.HAND_TO, [Needed(web_groups.CHOOSE_COLLEAGUE)])

    def shows(self, desk: Desk, found: Picked) -> dict[str, Any]:
        """Who they may be."""
        villages = [pick.village.id for pick in found.picks if pick.village]
        return {"officers": colleagues(desk.house, desk.sight, villages)}

    def do(self, desk: Desk, lines: Sequence[str]) -> Outcome:
        """Hands it on."""
        return hand_on(desk.house, desk.sight, lines, self.to.data or 0, desk.now)


class TextForm(LaterForm, DeedForm):
    """A set text or own words."""

    phrase = OneOf(web_desk.PHRASE, ("", *PHRASES), "")
    words = TypedLines(web_desk.OWN_WORDS, longest=LONGEST_WORDS)
    urgent = BooleanField()

    def validate(self, extra_validators: Any = None) -> bool:
        """Something must be said."""
        fine = super().validate(extra_validators)
        if not self.words.data and not self.phrase.data:
            self.refuse(web_desk.CHOOSE_WORDS)
            return False
        return fine

    def shows(self, desk: Desk, found: Picked) -> dict[str, Any]:
        """Set texts with what they take, quiet hours, the last messages where it is for one."""
        keys, own = [pick.key for pick in found.picks], self.words.data
        only = found.picks[0] if len(found.picks) == 1 else None
        spoken = {pick.farmer.language or "" for pick in found.picks}
        return {
            "offers": offered(desk, keys, dict.fromkeys(PHRASES, "")),
            "own": offered(desk, keys, {"own": own}) if own else (),
            "only": only,
            "languages": ", ".join(LANGUAGES[each] for each in sorted(spoken & {*LANGUAGES})),
            "aside": beside(desk.house, desk.sight, only, desk.now) if only else None,
            "longest": LONGEST_WORDS,
            "hours": () if only and deeds.cannot_wait(only) else HOURS,
        }

    def do(self, desk: Desk, lines: Sequence[str]) -> Outcome:
        """Writes to them."""
        return deeds.write_to(
            desk.house,
            desk.sight,
            lines,
            self.words.data or PHRASES[self.phrase.data](),
            desk.now,
            urgent=self.urgent.data,
            later=self.later(),
        )


FORMS: dict[str, type[DeedForm]] = {
    "visited": SeenForm,
    "rang": RangForm,
    "seen": DeedForm,
    "text": TextForm,
    "move": MoveForm,
    "hand": HandForm,
}


def offered(desk: Desk, lines: Iterable[str], words: dict[str, str]) -> tuple[Offer, ...]:
    """Texts with what each takes."""
    said: dict[str, str | Say] = {key: own or PHRASES[key]() for key, own in words.items()}
    return offers(desk.house, desk.sight, lines, said, desk.now)


def today(desk: Desk) -> date:
    """The day at the office."""
    return local_date(desk.now, desk.house.zone)
