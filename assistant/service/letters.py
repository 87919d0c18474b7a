"""An officer's own words to a farmer: a text that goes out and stays with the nursery."""

from dataclasses import dataclass
from datetime import datetime, timedelta
from enum import StrEnum
from zoneinfo import ZoneInfo

from assistant.dialogue.values import Kind
from assistant.people import Farmer
from assistant.service.alarm_kinds import CLIMBS
from assistant.service.alarms.ladder import seen_to
from assistant.service.audit import Subject, TrailAct, note
from assistant.service.house import House
from assistant.service.later import ChosenHour
from assistant.service.sight import Sight
from assistant.service.texts import Letter, after_quiet, post, worded
from assistant.store import PRIVATE, OutboxText, PastCall, Work
from assistant.wording import messages_officer as o
from assistant.wording.message import Say

LONGEST_WORDS = 300  # characters; two or three segments
WORDS_LAST = timedelta(days=2)
HOLD = timedelta(minutes=1)  # as long as what is sent from the page can be taken back


class Unsent(StrEnum):
    """Why an officer's words did not go out."""

    NO_WORDS = "no_words"
    LONG = "long"
    STOPPED = "stopped"
    NO_CONSENT = "no_consent"
    BAD_HOUR = "bad_hour"


@dataclass(frozen=True)
class Posted:
    """The words are on their way; `due_at` (local) is later than now in the quiet hours, and
    `held` where they can be taken back for a minute."""

    due_at: datetime
    segments: int
    waits: bool
    held: bool = False
    message_id: str = ""


def why_not(farmer: Farmer) -> Unsent | None:
    """Whether a farmer may be written to: not one who stopped texts or never agreed to any."""
    if farmer.stopped_at is not None:
        return Unsent.STOPPED
    return Unsent.NO_CONSENT if farmer.consent_at is None else None


def write(
    house: House,
    sight: Sight,
    farmer_id: int,
    words: str,
    now: datetime,
    *,
    nursery_id: int | None = None,
    urgent: bool = False,
) -> Posted | Unsent | None:
    """Sends an officer's words to a farmer; None for a farmer who is not in sight."""
    with house.store.work() as work:
        farmer = work.people.farmer_by_id(farmer_id)
        nursery = work.nurseries.get(nursery_id) if nursery_id is not None else None
        if farmer is None or not sight.sees(farmer.village_id):
            return None
        if nursery is not None and nursery.farmer_id != farmer.id:
            return None
        about = Subject(farmer.id, nursery_id, farmer.village_id)
        how = Manner(urgent)
        return Pen(work, house, sight, now).write(TrailAct.WROTE, farmer, words, about, how)


def answer_call(
    house: House, sight: Sight, call_id: int, words: str, now: datetime, *, urgent: bool = False
) -> Posted | Unsent | None:
    """Answers a call for help by a text, which marks it as handled; None for one that is not
    in sight."""
    with house.store.work() as work:
        call = _call(work, sight, call_id)
        if call is None:
            return None
        pen = Pen(work, house, sight, now)
        farmer, about = call.farmer, _about(call)
        how = Manner(urgent, call.about in CLIMBS, call.about == PRIVATE)
        done = pen.write(TrailAct.CALL_ANSWERED, farmer, words, about, how, call.id)
        if isinstance(done, Posted):
            seen_to(work, call.id, now, sight.officer.id)
        return done


def handle_call(
    house: House, sight: Sight, call_id: int, now: datetime, done: str = ""
) -> bool:
    """Marks a call as handled, by phone or on the spot, also after an answer that was lost;
    `done` says what was done about an alarm. False for one not in sight."""
    with house.store.work() as work:
        call = _call(work, sight, call_id)
        if call is None:
            return False
        if call.handled_at is None:
            seen_to(work, call.id, now, sight.officer.id, done)
        else:
            work.calls.seen_after_all(call.id, now)
        note(work, sight.officer.id, TrailAct.CALL_HANDLED, now, _about(call))
        return True


def hasten_answer(house: House, sight: Sight, call_id: int, now: datetime) -> bool | None:
    """Lets an answer that waits for the end of the quiet hours leave at once; False where it
    has left, or where a setting keeps the quiet hours for all; None for a call not in sight."""
    with house.store.work() as work:
        call = _call(work, sight, call_id)
        if call is None:
            return None
        answers = work.story.own_words(call_ids=[call.id])
        if not answers or not house.urgent_breaks_quiet:
            return False
        if not work.outbox.hasten(answers[-1].message_id, now):
            return False
        note(work, sight.officer.id, TrailAct.ANSWER_HASTENED, now, _about(call))
        return True


def _call(work: Work, sight: Sight, call_id: int) -> PastCall | None:
    return work.story.call(call_id, sight.scope(), sight.officer)


def _about(call: PastCall) -> Subject:
    """What the trail tells of a call: of a private one not the village, whose story all its
    officers read."""
    if call.about == PRIVATE:
        return Subject(call.farmer.id)
    return Subject(call.farmer.id, call.nursery_id, call.farmer.village_id)


def _wrong(words: str) -> Unsent | None:
    if not words:
        return Unsent.NO_WORDS
    return Unsent.LONG if len(words) > LONGEST_WORDS else None


@dataclass(frozen=True)
class Manner:
    """How words go: `urgent` ones in the quiet hours where the house allows it, those `at_once`
    whatever it allows (somebody is hurt); `private` ones are shown on no page; those on `hold`
    wait a minute, so that they can be taken back, unless they are loud; those for `later` leave
    at that hour, and can be taken back until then."""

    urgent: bool = False
    at_once: bool = False
    private: bool = False
    hold: bool = False
    later: ChosenHour | None = None


PLAIN = Manner()


@dataclass(frozen=True)
class Pen:
    """An officer at writing, in one transaction."""

    work: Work
    house: House
    sight: Sight
    now: datetime

    def write(
        self,
        act: TrailAct,
        farmer: Farmer,
        words: str | Say,
        about: Subject,
        how: Manner,
        call_id: int | None = None,
    ) -> Posted | Unsent:
        """Sends the officer's own words, or a set phrase in the farmer's language, and keeps
        them and a line of the trail, which does not tell what is private."""
        said = self.said(words, farmer)
        wrong = _wrong(said) or why_not(farmer) or self._late(farmer, how)
        if wrong is not None:
            return wrong
        officer = self.sight.officer
        text, posted = self.send(farmer, self.says(said), about.nursery_id, how)
        self.work.story.add_own_words(
            officer.id,
            farmer.id,
            text.message_id,
            said,
            self.now,
            nursery_id=about.nursery_id,
            call_id=call_id,
        )
        note(self.work, officer.id, act, self.now, about, "" if how.private else said)
        return posted

    def _late(self, farmer: Farmer, how: Manner) -> Unsent | None:
        zone = self.sight.zone(farmer.village_id, self.house.zone)
        fits = how.later is None or how.later.is_ahead(zone, self.now)
        return None if fits else Unsent.BAD_HOUR

    def said(self, words: str | Say, farmer: Farmer) -> str:
        """The words as the farmer reads them."""
        if isinstance(words, Say):
            return worded(self.house, (words,), farmer.language)
        return " ".join(words.split())

    def says(self, said: str) -> tuple[Say, ...]:
        """The text that carries such words."""
        return (o.FROM_OFFICER(officer=self.sight.officer.name, words=said),)

    def send(
        self,
        farmer: Farmer,
        says: tuple[Say, ...],
        nursery_id: int | None,
        how: Manner = PLAIN,
    ) -> tuple[OutboxText, Posted]:
        """Puts a text into the outbox; one that is not urgent waits for the morning."""
        zone = self.sight.zone(farmer.village_id, self.house.zone)
        loud = how.at_once or (how.urgent and self.house.urgent_breaks_quiet)
        if how.later is not None:  # which may be in no quiet hour either
            leaves = after_quiet(self.house, zone, how.later.moment(zone))
        else:
            leaves = self.now if loud else after_quiet(self.house, zone, self.now)
        held = how.hold and (not loud or how.later is not None)
        due = max(leaves, self.now + HOLD) if held else leaves
        letter = Letter(
            phone=farmer.phone,
            language=farmer.language,
            says=says,
            kind=Kind.LETTER,
            due_at=due,
            not_after=due + WORDS_LAST,
            nursery_id=nursery_id,
            urgent=loud,
            private=how.private,
        )
        text = post(self.work, self.house, letter, self.now)
        local = due.astimezone(ZoneInfo(zone))
        waits = leaves > self.now
        return text, Posted(local, text.segments, waits, held, text.message_id)
