"""The Warnings page: what stands, what waits for a decision, and the reach of a draft."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from decimal import Decimal
from zoneinfo import ZoneInfo

from assistant.agronomy.dangers.rows import DANGERS, RAIN, BedStage
from assistant.alphabet import Encoding
from assistant.dialogue.rain_hours import HoursFault, hours_fault
from assistant.people import Village
from assistant.service.house import House
from assistant.service.sight import Sight
from assistant.service.storms import drafts
from assistant.service.storms.danger import InDanger, in_danger, people_in, sowing_days
from assistant.service.storms.danger_words import WarningWords, words_of
from assistant.service.storms.headline import headline
from assistant.service.storms.rain_wanted import may_change
from assistant.service.texts import Priced, Pricing
from assistant.store import Draft, Given, Work

SHOWN_FOR = timedelta(days=7)  # how long a warning that is over stays on the list
MOST_PAST = 20
Told = tuple[BedStage, ...]
MOST_LEFT_OUT = 50  # names of those who cannot be texted


@dataclass(frozen=True)
class OpenDraft:
    """A draft nobody has decided on, with its villages in sight; hours are local to them.
    `others`: how many earlier ones say the same, from alerts of one storm."""

    draft: Draft
    villages: tuple[Village, ...]
    starts_at: datetime
    ends_at: datetime
    others: int = 0

    def says_as(self, other: "OpenDraft") -> bool:
        """Whether another draft is of the same danger, villages and hours."""
        return self.storm == other.storm

    @property
    def storm(self) -> object:
        """What it has in common with drafts that say the same."""
        return self.draft.danger, self.villages, self.starts_at, self.ends_at


@dataclass(frozen=True)
class StormLine:
    """One warning as it was sent, over all its villages in sight; hours are local to them."""

    draft: Draft
    villages: tuple[Village, ...]
    starts_at: datetime
    ends_at: datetime
    stands: bool
    recalled: bool
    covered: int
    need_help: int
    silent: int


@dataclass(frozen=True)
class VillageChoice:
    """A village to be ticked, with its beds in danger today."""

    village: Village
    beds: int


@dataclass(frozen=True)
class Warnings:
    """The page."""

    standing: tuple[StormLine, ...]
    waiting: tuple[OpenDraft, ...]
    past: tuple[StormLine, ...]
    villages: tuple[VillageChoice, ...]
    local: datetime  # now, in the programme's zone or the villages' own


def warnings_page(house: House, sight: Sight, now: datetime) -> Warnings:
    """What an officer sees before anything is chosen."""
    zones = {village.zone for village in sight.villages}
    zone = zones.pop() if len(zones) == 1 else house.zone
    with house.store.look() as work:
        found = storms(work, sight, now)
        return Warnings(
            standing=tuple(each for each in found if each.stands),
            waiting=one_a_storm(waiting(work, sight, now)),
            past=tuple(each for each in found if not each.stands)[:MOST_PAST],
            villages=_choices(work, sight, now.astimezone(ZoneInfo(zone))),
            local=now.astimezone(ZoneInfo(zone)),
        )


def _choices(work: Work, sight: Sight, local: datetime) -> tuple[VillageChoice, ...]:
    beds = work.danger.counts(sight.village_ids, *sowing_days(local.date()))
    return tuple(VillageChoice(village, beds.get(village.id, 0)) for village in sight.villages)


def waiting(work: Work, sight: Sight, now: datetime) -> tuple[OpenDraft, ...]:
    """Drafts in sight that nobody has decided on, the next storm first."""
    found = ((each, _in_sight(sight, each.village_ids)) for each in work.drafts.open(now))
    return tuple(
        OpenDraft(draft, villages, *_hours(draft, villages[0]))
        for draft, villages in found
        if villages
    )


def one_a_storm(lines: tuple[OpenDraft, ...]) -> tuple[OpenDraft, ...]:
    """Of drafts that say the same the latest alone, which knows of the others."""
    found: list[OpenDraft] = []
    for line in sorted(lines, key=lambda each: each.draft.id, reverse=True):
        at = next((at for at, each in enumerate(found) if each.says_as(line)), None)
        if at is None:
            found.append(line)
        else:
            found[at] = replace(found[at], others=found[at].others + 1)
    return tuple(each for line in lines for each in found if each.draft.id == line.draft.id)


def _in_sight(sight: Sight, village_ids: Iterable[int]) -> tuple[Village, ...]:
    wanted = set(village_ids)
    return tuple(village for village in sight.villages if village.id in wanted)


def _hours(span: Draft | Given, village: Village) -> tuple[datetime, datetime]:
    zone = ZoneInfo(village.zone)
    return span.starts_at.astimezone(zone), span.ends_at.astimezone(zone)


def storms(work: Work, sight: Sight, now: datetime) -> tuple[StormLine, ...]:
    """Warnings that were sent and stand, or were over lately, in sight; the latest first."""
    by_draft: dict[int, list[Given]] = {}
    for given in work.drafts.given(sight.village_ids, ends_after=now - SHOWN_FOR):
        by_draft.setdefault(given.draft_id, []).append(given)
    found = []
    for draft_id, all_given in by_draft.items():
        draft = work.drafts.get(draft_id)
        villages = _in_sight(sight, (each.village_id for each in all_given))
        if draft is None:
            continue
        tallies = [work.warnings.tally(each.id) for each in all_given if each.stands(now)]
        line = StormLine(
            draft,
            villages,
            *_hours(draft, villages[0]),
            stands=bool(tallies),
            recalled=all(each.recalled_at is not None for each in all_given),
            covered=sum(each.covered for each in tallies),
            need_help=sum(each.need_help for each in tallies),
            silent=sum(each.silent for each in tallies),
        )
        found.append(line)
    return tuple(found)


# --- a draft, before it is decided on ---------------------------------------------------------


@dataclass(frozen=True)
class VillageReach:
    """Whom a warning finds in one village; `stands` are the hours (local) of warnings that
    stand there already."""

    village: Village
    phones: int
    young: int
    soon: int
    beds: int  # in all
    stands: tuple[tuple[datetime, datetime], ...]


@dataclass(frozen=True)
class WarningSample:
    """The text as it arrives, in one language, for those who cover or those who wait; of
    nurseries with other names only the names differ."""

    language: str
    young: bool
    text: str
    encoding: Encoding
    segments: int
    phones: int


@dataclass(frozen=True)
class DraftPage:
    """A draft with its reach and cost.

    Hours are local. `left_out` may not be texted and must be told otherwise;
    `fault` keeps it from being sent; `loud` means that it leaves in the quiet hours; `forged`,
    that the alert it is made from bears a wrong signature.
    """

    line: OpenDraft
    villages: tuple[VillageReach, ...]
    phones: int
    segments: int
    cost: Decimal | None
    samples: tuple[WarningSample, ...]
    left_out: tuple[InDanger, ...]
    loud: bool
    fault: HoursFault | None
    longest_d: int  # days that a warning of this danger may stand
    forged: bool
    mine: bool


def draft_page(house: House, sight: Sight, draft_id: int, now: datetime) -> DraftPage | None:
    """The reach of a draft now; None for one that was decided on or is not in sight."""
    with house.store.look() as work:
        draft = work.drafts.get(draft_id)
        if draft is None or draft.decided_at is not None:
            return None
        villages = _in_sight(sight, draft.village_ids)
        if not villages:
            return None
        alert = work.alerts.get(draft.alert_id) if draft.alert_id else None
        gathered = _Reach(work, house, draft, now)
        reached = tuple(gathered.village(each) for each in villages)
    first = villages[0]
    here = now.astimezone(ZoneInfo(first.zone))
    return DraftPage(
        line=OpenDraft(draft, villages, *_hours(draft, first)),
        villages=reached,
        phones=sum(each.phones for each in reached),
        segments=gathered.segments,
        cost=house.tariff.cost(gathered.segments) if house.tariff else None,
        samples=gathered.samples(),
        left_out=tuple(gathered.left_out),
        loud=house.hours.quiet(here.time()),
        fault=hours_fault(draft.starts_at, draft.ends_at, now, draft.danger),
        longest_d=DANGERS[draft.danger].longest_d,
        forged=alert is not None and alert.is_forged,
        mine=may_change(sight, draft),
    )


class _Reach:
    """WarningWords a draft for all it would reach, and counts."""

    def __init__(self, work: Work, house: House, draft: Draft, now: datetime) -> None:
        self._work, self._house, self._draft, self._now = work, house, draft, now
        self._pricing = Pricing(house)
        self._longest: dict[tuple[str, Told], Priced] = {}
        self._told: dict[tuple[str, Told], int] = {}
        self.segments = 0
        self.left_out: list[InDanger] = []

    def village(self, village: Village) -> VillageReach:
        """One village of the draft."""
        told = headline(self._work, self._draft)
        stay_in = people_in(self._work, village, self._now)
        words = words_of(self._draft, village, told, self._now, people_in=stay_in)
        texted = []
        for phone in in_danger(self._work, village, self._now, self._draft.danger):
            if phone.may_be_texted:
                self._count(words, phone)
                texted.append(phone)
            else:
                self.left_out.append(phone)
        standing = self._work.warnings.standing(village.id, self._now, self._draft.danger)
        zone = ZoneInfo(village.zone)
        return VillageReach(
            village=village,
            phones=len(texted),
            young=sum(len(each.young) for each in texted),
            soon=sum(len(each.soon) for each in texted),
            beds=sum(len(each.called) for each in texted),
            stands=tuple(
                (each.starts_at.astimezone(zone), each.ends_at.astimezone(zone))
                for each in standing
            ),
        )

    def _count(self, words: WarningWords, phone: InDanger) -> None:
        language = self._house.catalogue(phone.language).language
        priced = self._pricing.of(words.says(phone), language)
        self.segments += priced.segments
        key = language, self._kind(phone)
        self._told[key] = self._told.get(key, 0) + 1
        if key not in self._longest or priced.segments > self._longest[key].segments:
            self._longest[key] = priced

    def _kind(self, phone: InDanger) -> Told:
        """Which of the texts a phone gets: of rain, that for those who cover or for those who
        wait; of other dangers, one for each set of stages."""
        if self._draft.danger == RAIN:
            return (BedStage.COVERED if phone.young else BedStage.SOON,)
        return tuple(stage for stage, _ in phone.beds)

    def samples(self) -> tuple[WarningSample, ...]:
        """The longest text of each language and kind, what most are told first."""
        found = (
            WarningSample(
                language=language,
                young=BedStage.COVERED in stages,
                text=priced.text,
                encoding=priced.encoding,
                segments=priced.segments,
                phones=self._told[language, stages],
            )
            for (language, stages), priced in self._longest.items()
        )
        return tuple(sorted(found, key=lambda each: -each.phones))


# --- deciding ---------------------------------------------------------------------------------


def send_draft(house: House, sight: Sight, draft_id: int, now: datetime) -> bool | None:
    """Warns the villages in sight; False where somebody decided before or the hours no longer
    hold, None for a draft that is not in sight."""
    with house.store.work() as work:
        draft = work.drafts.get(draft_id)
        villages = _in_sight(sight, draft.village_ids) if draft else ()
        if not villages:
            return None
        ids = [village.id for village in villages]
        sent = drafts.send(work, house, draft_id, now, sight.officer, ids)
        if sent and draft:
            _drop_same(work, sight, draft, now)
        return sent


def drop_draft(house: House, sight: Sight, draft_id: int, now: datetime) -> bool | None:
    """Decides that the villages in sight are not warned; as `send_draft`."""
    with house.store.work() as work:
        draft = work.drafts.get(draft_id)
        villages = _in_sight(sight, draft.village_ids) if draft else ()
        if not villages:
            return None
        ids = [village.id for village in villages]
        dropped = drafts.drop(work, draft_id, now, sight.officer, ids)
        if dropped and draft:
            _drop_same(work, sight, draft, now)
        return dropped


def _drop_same(work: Work, sight: Sight, decided: Draft, now: datetime) -> None:
    """Other alerts of this storm made drafts that say the same: one decision is for all."""
    villages = _in_sight(sight, decided.village_ids)
    line = OpenDraft(decided, villages, *_hours(decided, villages[0]))
    for each in waiting(work, sight, now):
        if each.draft.alert_id is not None and each.says_as(line):
            ids = [village.id for village in villages]
            drafts.drop(work, each.draft.id, now, sight.officer, ids)
