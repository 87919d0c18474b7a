"""What one ordinary season costs in texts, segments and screens, by language and channel.

One nursery of 0.4 ha, enrolled nine days before sowing; every question is answered at its first
asking with the shortest answer there is. By USSD the same answers are keyed in, every page is
read, and the day's texts come by SMS all the same. No warning, no trouble, no second asking.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import UTC, datetime, timedelta
from itertools import count
from zoneinfo import ZoneInfo

from assistant.agronomy.calendar import TaskCode
from assistant.alphabet import Encoding, cost
from assistant.channel import Channel, Fate, Handover, Incoming, Outgoing, Receipt, Step
from assistant.dialogue.values import Item, Session
from assistant.people import LANGUAGES
from assistant.reading import Wish
from assistant.service.dispatch import dispatch, take_receipt
from assistant.service.enrol import add_village
from assistant.service.house import House
from assistant.service.receive import receive
from assistant.service.tick import tick
from assistant.store import Store
from assistant.wiring.catalogues import SOURCE, locales_folder
from assistant.wiring.lexicons import open_lexicons
from tests.benchmarks.crowd import ZONE, house_at, phone
from tests.benchmarks.databases import SQLITE
from tests.benchmarks.harness import table

FARMER = phone(1)
START = datetime(2026, 6, 1, 9, 0, tzinfo=ZoneInfo(ZONE)).astimezone(UTC)
MORNING, DAYS = (
    timedelta(hours=21),
    60,
)  # six o'clock next day; all is over long before the last
READS_AFTER = timedelta(minutes=10)
LEASE = timedelta(minutes=1)
MORE = "9"
MOST_ANSWERS = 20

TO_QUESTIONS: Mapping[str, str] = {
    "signup.language": "1",
    "signup.village": "1",
    "signup.consent": "1",
    "plan.area": "4000 m2",
    "plan.germination": "85",
    "plan.pail": "1",
    "plan.sowing": "10/6",
    "plan.check": "1",
    "leaves.transplanting": "28/6",
    "result.resown": "2",
    "seed_used.used": "1",
}
TO_TASKS: Mapping[TaskCode, str] = {TaskCode.LEAF_COUNT: "3", TaskCode.SEASON_RESULT: "2"}
DONE = "1"


class UnforeseenError(Exception):
    """The season came to a question that has no answer here; the text names it."""


@dataclass
class Bill:
    """What passed in one season."""

    texts: int = 0
    segments: int = 0
    wide: int = 0  # texts in UCS-2
    longest: int = 0  # segments of the longest text
    sent: int = 0
    sent_segments: int = 0
    dialled: int = 0
    keyed: int = 0
    screens: int = 0

    def received(self, text: str) -> None:
        """A text to the farmer."""
        price = cost(text)
        self.texts, self.segments = self.texts + 1, self.segments + price.segments
        self.wide += price.encoding is Encoding.UCS2
        self.longest = max(self.longest, price.segments)


@dataclass
class Season:
    """One farmer's season on a clock of its own; a gateway that delivers at once."""

    house: House
    channel: Channel
    work_days: str = ""  # sent after the plan: texts only on days with work
    bill: Bill = field(default_factory=Bill)
    now: datetime = START
    _open: str = ""
    _ids: "count[int]" = field(default_factory=count)

    def play(self) -> Bill:
        """From the first word until nothing more comes."""
        self._say("hello")
        self._answer_all()
        if self.work_days:
            self._say(self.work_days)
        for day in range(DAYS):
            self.now = START + MORNING + timedelta(days=day)
            self._round()
            self.now += READS_AFTER
            self._answer_all()
        session = self._session()
        if not self.bill.texts or self._items() or (session and self._to_question(session)):
            raise UnforeseenError("the season did not come to its end")
        return self.bill

    # --- the network -------------------------------------------------------------------------

    def send(self, outgoing: Outgoing, now: datetime) -> Handover:
        """The hand-over of one text."""
        self.bill.received(outgoing.text)
        return Handover(Fate.ACCEPTED)

    def time(self) -> None:
        """It tells none."""

    def _round(self) -> None:
        tick(self.house, self.now)
        while dispatch(self.house, self, self.now, limit=100, lease=LEASE):
            pass
        with self.house.store.look() as work:
            texts = work.outbox.of_phone(FARMER)
        for text in texts:
            if text.delivered_at is None:
                take_receipt(
                    self.house, Receipt(text.message_id, Fate.DELIVERED, self.now), self.now
                )

    # --- the farmer --------------------------------------------------------------------------

    def _answer_all(self) -> None:
        """Answers what is asked until nothing is; by USSD in one session."""
        for _ in range(MOST_ANSWERS):
            answer = self._answer()
            if answer is None:
                break
            self._say(answer)
        else:
            raise UnforeseenError(f"asked on and on: {self._session()}, {self._items()}")
        self._open = ""

    def _answer(self) -> str | None:
        session = self._session()
        if session is not None:
            return self._to_question(session)
        items = self._items()
        return TO_TASKS.get(items[0].task, DONE) if items else None

    def _to_question(self, session: Session) -> str | None:
        if session.conversation in ("menu", "steps"):  # shown for who wants more
            return None
        step = f"{session.conversation}.{session.step}"
        if session.waiting is not None:
            return DONE
        if step not in TO_QUESTIONS:
            raise UnforeseenError(f"no answer to {step}: put one into TO_QUESTIONS")
        return TO_QUESTIONS[step]

    def _session(self) -> Session | None:
        with self.house.store.look() as work:
            return work.talks.session(FARMER)

    def _items(self) -> tuple[Item, ...]:
        """What was asked and is not answered."""
        with self.house.store.look() as work:
            farmer = work.people.farmer(FARMER)
            nurseries = work.nurseries.of_farmer(farmer.id) if farmer else ()
            found = work.reminders.sent_open([each.id for each in nurseries])
            asked = {
                (item.nursery_id, item.task, item.day)
                for text in work.outbox.numbered(FARMER)
                if text.focus
                for item in text.focus.items
            }
        items = (Item(each.nursery_id, each.task, each.day) for each in found)
        return tuple(i for i in items if (i.nursery_id, i.task, i.day) in asked)

    def _say(self, words: str) -> None:
        if self.channel is Channel.SMS:
            self._text(words)
        else:
            self._key(words)
        self._round()
        self.now += timedelta(seconds=20)

    def _text(self, words: str) -> None:
        price = cost(words)
        self.bill.sent += 1
        self.bill.sent_segments += price.segments
        receive(self.house, self._incoming(words, Step.TEXT), self.now)

    def _key(self, words: str) -> None:
        """Dials where no session is open, keys in, and reads all pages of the answer."""
        if not self._open:
            self._open = f"session-{next(self._ids)}"
            self.bill.dialled += 1
            self._shown(Step.BEGIN, "")
            if words == "hello":
                return
        self._shown(Step.ANSWER, words)

    def _shown(self, step: Step, words: str) -> None:
        receive(self.house, self._incoming(words, step), self.now)
        with self.house.store.look() as work:
            talk = work.talks.ussd(self._open)
        pages = len(talk.pages) if talk else 1
        for _ in range(pages - 1):
            receive(self.house, self._incoming(MORE, Step.ANSWER), self.now)
        self.bill.screens += pages
        self.bill.keyed += pages - 1 + (step is Step.ANSWER)

    def _incoming(self, words: str, step: Step) -> Incoming:
        id = f"in-{next(self._ids)}"
        return Incoming(id, FARMER, words, self.channel, self.now, step, self._open or None)


def languages() -> tuple[str, ...]:
    """English and those that have a catalogue, in the order of the list of languages."""
    there = {path.parent.parent.name for path in locales_folder().glob("*/*/messages.po")}
    return tuple(code for code in LANGUAGES if code in there | {SOURCE})


def season(language: str, channel: Channel, work_days: bool = False) -> Bill:
    """The bill of a season in a language; `work_days`: of who wants no text on other days."""
    asks = open_lexicons()[language].wish_names[Wish.WORK_DAYS] if work_days else ""
    with SQLITE.fresh() as url:
        store = Store(url)
        house = house_at(store, (language,))
        add_village(house, "Kijiji", ZONE)
        bill = Season(house, channel, asks).play()
        store.close()
    return bill


HEAD = (
    "language", "texts", "segments", "UCS-2 texts", "longest", "sent", "segments sent",
    "on work days: texts", "segments", "USSD: dialled", "keys", "screens", "texts", "segments",
)  # fmt: skip


def run() -> str:
    """The table: by SMS, by SMS on days with work only, then by USSD."""
    rows = []
    for language in languages():
        sms, ussd = season(language, Channel.SMS), season(language, Channel.USSD)
        received = (sms.texts, sms.segments, sms.wide, sms.longest, sms.sent, sms.sent_segments)
        few = season(language, Channel.SMS, work_days=True)
        less = (few.texts, few.segments)
        keyed = (ussd.dialled, ussd.keyed, ussd.screens, ussd.texts, ussd.segments)
        rows.append((language, *map(str, (*received, *less, *keyed))))
    return f"One season of one farmer, by language\n{table(rows, HEAD)}"
