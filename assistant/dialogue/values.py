"""What the dialogue is told and what it answers: frozen values, no rows, no clock."""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from datetime import date, datetime
from enum import StrEnum

from assistant.agronomy.calendar import TaskCode
from assistant.agronomy.dangers.rows import RAIN
from assistant.agronomy.growth.warmth import Warmth
from assistant.agronomy.life.events import Event
from assistant.agronomy.lot.programme_variety import ProgrammeVariety
from assistant.agronomy.nursery import Nursery
from assistant.agronomy.practices import MAT, Practice
from assistant.agronomy.season.outcome import SeasonOutcome
from assistant.agronomy.work.costs import PriceList
from assistant.channel import Channel
from assistant.dialogue.values_tell import Addressee as Addressee
from assistant.dialogue.values_tell import SeeTo as SeeTo
from assistant.dialogue.values_tell import SeveralCalled as SeveralCalled
from assistant.dialogue.values_tell import TellFarmer as TellFarmer
from assistant.hearing import Ears
from assistant.hearing.office import OfficeQuestion
from assistant.people import Farmer, Officer, Village, VillageUnit
from assistant.reading import Lexicon
from assistant.reading.village_units import with_units
from assistant.wording.message import Say
from assistant.wording.render import Catalogue

Kept = str | int | float | bool | None
"""What a session may keep of an answer, so that it can be stored as JSON."""


@dataclass(frozen=True)
class Session:
    """One half-finished talk. Changing it is copying it.

    `path` are the steps before this one, for going back; `answers` what was understood so far;
    `waiting` an answer that was read but must be confirmed first; `tries` how often the open
    question was answered by something that could not be read; `held` the talk that this one
    interrupted, taken up again when it ends.
    """

    conversation: str
    version: int
    step: str
    answers: Mapping[str, Kept] = field(default_factory=dict)
    path: tuple[str, ...] = ()
    waiting: Mapping[str, Kept] | None = None
    tries: int = 0
    held: "Session | None" = None

    def to(self, step: str, **answers: Kept) -> "Session":
        """The session one question further on."""
        return replace(
            self,
            step=step,
            path=(*self.path, self.step),
            answers={**self.answers, **answers},
            waiting=None,
            tries=0,
        )


@dataclass(frozen=True)
class Item:
    """One task of one nursery that was asked of the farmer and is not answered yet."""

    nursery_id: int
    task: TaskCode
    day: date


@dataclass(frozen=True)
class Focus:
    """What a numbered text offered its digits for, kept with that text.

    Exactly one is set: the step of a question ("plan.area"), the items of a prompt, or a
    warning's id.
    """

    question: str | None = None
    items: tuple[Item, ...] = ()
    warning_id: int | None = None


@dataclass(frozen=True)
class Standing:
    """A warning that stands for a village; `answer` is this phone's, where it gave one."""

    id: int
    village_id: int
    starts_at: datetime
    ends_at: datetime
    answer: str | None = None
    danger: str = RAIN


@dataclass(frozen=True)
class Reach:
    """Whom a warning for a village would find now, or found."""

    village: Village
    phones: int
    nurseries: int
    about_to_sow: int


@dataclass(frozen=True)
class Tally:
    """What came back on a warning that stands."""

    standing: Standing
    village: Village
    asked: int
    delivered: int
    covered: int
    need_help: int


@dataclass(frozen=True)
class Visit:
    """One nursery that the officer should see, and why (a task left open, or a call)."""

    phone: str
    label: str
    village: str
    reason: str
    since: date
    name: str = ""


@dataclass(frozen=True)
class OnRoll:
    """A number that an officer would enrol and that is known already.

    `seen`: whether it is of a village of theirs; `standing` "agreed", "asked", "no" or
    "stopped"; `since` the local day of it.
    """

    name: str
    village: str
    seen: bool
    standing: str
    since: date | None


@dataclass(frozen=True)
class OfficerScope:
    """What an officer's texts may be about: their villages, warnings, and who must be seen."""

    officer: Officer
    code_given: bool
    reaches: tuple[Reach, ...] = ()
    tallies: tuple[Tally, ...] = ()
    visits: tuple[Visit, ...] = ()
    on_roll: OnRoll | None = None
    addressee: Addressee | SeveralCalled | None = None  # of TELL, SEEN; None: nobody in sight
    locked_until: datetime | None = None  # too many wrong codes: none is looked at
    one_time: str | None = None  # then: the code that goes through all the same
    next_code: str | None = None  # the code that takes the place of the one that was sent


@dataclass(frozen=True)
class Invited:
    """That somebody else enrolled this farmer, who has not agreed.

    `officer`: the name to be said; `wishes`: what an office knew of nurseries that cannot be
    planned yet, by the names of the plan's answers; `refused`: they said no; `free`: replies
    cost them nothing.
    """

    officer: str
    wishes: tuple[Mapping[str, Kept], ...] = ()
    refused: bool = False
    free: bool = False


@dataclass(frozen=True)
class Nearby:
    """Whom to turn to in need from one village, as the programme file says it.

    `emergency`: the number to ring; `health_post`: its name, and number where it has one;
    `vet`: who looks after animals, with a number; `officer`: the name and number of the person
    who is told first. Empty where nobody said (only in tests: `nursery check` asks for them).
    """

    emergency: str = ""
    health_post: str = ""
    vet: str = ""
    officer: str = ""


@dataclass(frozen=True)
class OfficeDesk:
    """The questions that the programme's office answers where this phone is, and what the
    programme is called."""

    programme: str = ""
    questions: tuple[OfficeQuestion, ...] = ()


@dataclass(frozen=True)
class Known:
    """Everything that a turn of the dialogue may know.

    `focuses` are the numbered texts that reached this phone, the latest first. `today` is the
    date in the village. `items` are the tasks asked and not yet answered, oldest first.
    `seasons` are this farmer's results, the oldest first.
    `warmth` is the mean temperature that an officer entered of late for that village;
    `practices` are those offered in the farmer's village, the usual one first;
    `every_practice` all that the programme knows.
    `prices` and `varieties` are those of the programme, `wet_bed` what its costs are held
    against.
    `raining`: a rain warning stands for the village, whether or not this phone was asked for
    it; `stormy`: one of another danger to people out of doors; `held`: one of another than rain
    that sowing and uncovering wait for.
    `nearby` is whom to turn to from that village; `unread` how many texts of this phone could
    not be read since the last that was, of the last day; `asked_if_hurt`: whether this phone
    was asked if somebody is hurt and has not said. `office` is what the programme's own office
    answers, `units` are the land units of the farmer's village.
    """

    now: datetime
    today: date
    zone: str
    phone: str
    channel: Channel
    catalogue: Catalogue
    lexicons: Mapping[str, Lexicon]
    languages: tuple[str, ...]
    villages: tuple[Village, ...]
    ears: Ears
    region: str | None = None
    farmer: Farmer | None = None
    nurseries: tuple[Nursery, ...] = ()
    session: Session | None = None
    items: tuple[Item, ...] = ()
    focuses: tuple[Focus, ...] = ()
    warning: Standing | None = None
    raining: bool = False
    stormy: bool = False
    held: bool = False
    seasons: tuple[SeasonOutcome, ...] = ()
    practices: tuple[Practice, ...] = (MAT,)
    every_practice: tuple[Practice, ...] = (MAT,)
    warmth: Warmth | None = None
    prices: PriceList | None = None
    varieties: tuple[ProgrammeVariety, ...] = ()
    wet_bed: Practice | None = None
    desk: OfficerScope | None = None
    invited: Invited | None = None
    nearby: Nearby = Nearby()
    unread: int = 0
    asked_if_hurt: bool = False
    office: OfficeDesk = OfficeDesk()
    units: tuple[VillageUnit, ...] = ()

    @property
    def in_storm(self) -> bool:
        """Whether a warning stands of something that may harm people out of doors."""
        return self.raining or self.stormy

    @property
    def lexicon(self) -> Lexicon:
        """The word list of the language this talk is in."""
        return self.lexicons[self.catalogue.language]

    @property
    def land_words(self) -> Lexicon:
        """The same with the land units of the farmer's village, for sizes of fields."""
        return with_units(self.lexicon, self.units)

    def practice(self, code: Kept) -> Practice:
        """The practice of that code where it is offered here, else the usual one."""
        return next((each for each in self.practices if each.code == code), self.practices[0])

    def nursery(self, nursery_id: int) -> Nursery | None:
        """The open nursery of that id, if it is this farmer's."""
        return next((each for each in self.nurseries if each.id == nursery_id), None)


# --- what a turn may change -----------------------------------------------------------------


@dataclass(frozen=True)
class Enrol:
    """The farmer agreed to be texted."""

    language: str
    village_id: int | None


@dataclass(frozen=True)
class Decline:
    """The person does not want to be texted: nothing but the no is kept of them."""


@dataclass(frozen=True)
class AddFarmer:
    """An officer enrols a farmer, who is asked to agree."""

    phone: str
    name: str | None
    village_id: int
    language: str


@dataclass(frozen=True)
class SetLanguage:
    language: str


@dataclass(frozen=True)
class AskErasure:
    """What is kept of this phone shall be deleted: asked back before anything is."""


@dataclass(frozen=True)
class StopTexts:
    """Obeyed at once: nothing goes to this phone but answers to its own texts."""


@dataclass(frozen=True)
class StartTexts:
    """The farmer wants texts again."""


@dataclass(frozen=True)
class SaveNursery:
    """Keep a nursery as it now is; id 0 is a new one. Its reminders are planned again."""

    nursery: Nursery


@dataclass(frozen=True)
class Happened:
    """Something happened to a nursery: a line of its story. What it changes is kept apart
    (`SaveNursery`), worked out by `agronomy.life.changes`."""

    nursery_id: int
    event: Event


@dataclass(frozen=True)
class KeepSeason:
    """Keep how a nursery's season ended."""

    outcome: SeasonOutcome


@dataclass(frozen=True)
class AnswerItem:
    """What the farmer said of one task: "done", "not_yet", or a short word kept as said."""

    item: Item
    answer: str


@dataclass(frozen=True)
class CallForHelp:
    """A person is needed. `about` is a short code, `words` the farmer's own."""

    about: str
    words: str
    nursery_id: int | None = None


@dataclass(frozen=True)
class RaiseAlarm:
    """Somebody is hurt or wants to die, or a bed or field is in danger: a person hears at once,
    day or night, in the writer's own words.

    `kind`: one of `hearing.Kind`. Not `sure`: the writer was asked first; ten minutes of
    silence tell the officer too.
    """

    kind: str
    words: str
    nursery_id: int | None = None
    sure: bool = True


@dataclass(frozen=True)
class SettleAlarm:
    """The writer answered whether somebody is hurt: told to a person at once, or taken back."""

    hurt: bool


@dataclass(frozen=True)
class PauseTexts:
    """What may be a wish for no more texts was asked about. Until a clear word the daily texts
    rest, warnings go on, and the officer is asked to ring; an invitation is not sent again."""

    words: str


@dataclass(frozen=True)
class ResumeTexts:
    """The clear word: the daily texts go on."""


@dataclass(frozen=True)
class SetPace:
    """Texts of every day, or only of days with work."""

    only_work: bool


@dataclass(frozen=True)
class AnswerWarning:
    warning_id: int
    answer: str  # "covered" or "help"
    words: str = ""  # the farmer's own, where they wrote any
    alarmed: bool = False  # somebody is hurt: an officer has heard of that already


@dataclass(frozen=True)
class IssueWarning:
    village_id: int
    starts_at: datetime
    ends_at: datetime
    danger: str = RAIN


@dataclass(frozen=True)
class KeepWarmth:
    """An officer's mean temperature of a village."""

    village_id: int
    warmth: Warmth


@dataclass(frozen=True)
class GiveAllClear:
    warning_id: int


@dataclass(frozen=True)
class NoteUnread:
    """A reply that could not be read, kept with who wrote it. `passed`: it goes to the officer
    of the village as a question to be answered."""

    asked: str
    text: str
    passed: bool = False


Change = (
    Enrol
    | Decline
    | AddFarmer
    | SetLanguage
    | StopTexts
    | AskErasure
    | StartTexts
    | SaveNursery
    | Happened
    | KeepSeason
    | AnswerItem
    | CallForHelp
    | AnswerWarning
    | IssueWarning
    | GiveAllClear
    | KeepWarmth
    | TellFarmer
    | SeeTo
    | NoteUnread
    | RaiseAlarm
    | SettleAlarm
    | PauseTexts
    | ResumeTexts
    | SetPace
)


class Kind(StrEnum):
    """What a text is for, kept with it."""

    REPLY = "reply"
    PROMPT = "prompt"
    SECOND = "second"
    WARNING = "warning"
    ALL_CLEAR = "all_clear"
    NOTICE = "notice"  # to an officer
    LETTER = "letter"  # an officer's own words to a farmer
    CONSENT = "consent"  # whether a farmer whom somebody enrolled agrees


@dataclass(frozen=True)
class Text:
    """One answer: whole sentences said together, and what its digits would answer.

    `keep` asks that it also be sent as an SMS when it was shown on a USSD screen.
    """

    says: tuple[Say, ...]
    focus: Focus | None = None
    keep: bool = False


@dataclass(frozen=True)
class Inquiry:
    """A question that a text asked, to be counted: the code of a topic, or "office:" and the
    number of one of the office's; or one that it may have asked and that was offered."""

    code: str
    offered: bool = False


@dataclass(frozen=True)
class Turn:
    """The outcome of one message: the session from now on, the answers, the changes, and which
    questions were asked."""

    session: Session | None
    texts: tuple[Text, ...]
    changes: tuple[Change, ...] = ()
    language: str | None = None  # the answers are worded in this one when it just changed
    inquiries: tuple[Inquiry, ...] = ()
