"""Carries out what a dry run said, all in one transaction."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import datetime
from typing import Any

from assistant.agronomy.nursery import Nursery
from assistant.people import Farmer, Village
from assistant.reminders.plan import likeness, planned
from assistant.reminders.values import Reminder
from assistant.service.audit import Subject, TrailAct, note
from assistant.service.consent import Enroller, ask_all
from assistant.service.desk.numbers import pass_on
from assistant.service.house import House
from assistant.service.known import local_date
from assistant.service.office.beds import made, mended
from assistant.service.office.judging import (
    Outlook,
    Passing,
    RowDeed,
    Verdict,
    changes_language,
)
from assistant.service.texts import after_quiet
from assistant.store import Enrolment, NewFarmer, Work

Told = Callable[[int, int], None]
"""Is told how many of how many farmers are done."""

# Farmers, asking, nurseries, their days: as long as each other, or not there at all.
PARTS = 4
LIST, PAGE = "list", "page"  # how somebody came onto the roll


@dataclass(frozen=True)
class TakenCounts:
    """What came of a list, or would."""

    new: int
    changed: int
    same: int
    rejected: int
    beds: int
    asked: int


def counts_of(outlook: Outlook) -> TakenCounts:
    """The counts of a dry run."""
    return TakenCounts(
        new=sum(deed.is_new for deed in outlook.deeds),
        changed=sum(not deed.is_new for deed in outlook.deeds),
        same=outlook.count(Verdict.SAME),
        rejected=outlook.count(Verdict.REJECTED),
        beds=sum(len(deed.beds.added) for deed in outlook.deeds),
        asked=sum(deed.asks for deed in outlook.deeds),
    )


@dataclass
class Taking:
    """One list on its way into the roll, in one transaction."""

    work: Work
    house: House
    who: Enroller
    now: datetime
    told: Told = lambda done, of: None
    way: str = LIST
    _listed: int = 0

    def take(self, outlook: Outlook) -> None:
        """Does all of it. The reminders of who has not agreed wait for their yes."""
        deeds = outlook.deeds
        self._listed = len(deeds)
        self._release(deeds)
        farmers = self._enrol(tuple(deed for deed in deeds if deed.is_new))
        farmers |= self._mend(tuple(deed for deed in deeds if not deed.is_new))
        self._part(1, 0, 1)
        self._heirs(deeds, farmers)
        self._ask(deeds, farmers)
        self._beds(deeds, farmers)
        self.told(len(deeds), len(deeds))

    def _part(self, part: int, done: int, of: int) -> None:
        """Tells how far a part of the work has come, in farmers of the list."""
        self.told(int(self._listed * (part + done / of) / PARTS), self._listed)

    def note_list(self, outlook: Outlook, name: str) -> None:
        """One line of the trail for the whole list, by the name of its file."""
        counts = counts_of(outlook)
        detail = f"{name}: +{counts.new} ~{counts.changed} !{counts.rejected}"
        note(self.work, self.who.officer_id, TrailAct.LIST_APPLIED, self.now, detail=detail)

    # --- people ------------------------------------------------------------------------------

    def _release(self, deeds: Sequence[RowDeed]) -> None:
        """Numbers that have passed on leave their old owners."""
        for deed in deeds:
            if deed.kept is None or deed.passing not in (Passing.HEIR, Passing.NEW):
                continue
            old = deed.kept.farmer
            heir = deed.passing is Passing.HEIR
            pass_on(self.work, self.house, old, self.now, beds_go=heir)
            about = Subject(old.id, village_id=old.village_id)
            note(self.work, self.who.officer_id, TrailAct.NUMBER_PASSED_ON, self.now, about)

    def _enrol(self, deeds: tuple[RowDeed, ...]) -> dict[str, Farmer]:
        new = [
            NewFarmer(
                phone=deed.entry.phone,
                name=deed.entry.name,
                village_id=deed.village.id,
                language=deed.entry.language,
            )
            for deed in deeds
        ]
        return self.work.enrolments.add_farmers(new)

    def _mend(self, deeds: Sequence[RowDeed]) -> dict[str, Farmer]:
        """Sets what the list says otherwise; whatever the farmer said meanwhile stands."""
        farmers: dict[str, Farmer] = {}
        changes: dict[int, dict[str, object]] = {}
        for deed in deeds:
            if deed.kept is None:
                continue
            farmer, enrolment = deed.kept.farmer, deed.kept.enrolment
            columns = _columns(deed, farmer)
            if columns:
                changes[farmer.id] = columns
            if enrolment is not None and deed.beds.wishes is not None:
                self.work.enrolments.save(replace(enrolment, wishes=deed.beds.wishes))
            farmers[deed.entry.phone] = replace(farmer, **columns)
        self.work.enrolments.mend_farmers(changes)
        self._note_all(TrailAct.FARMER_MENDED, [(d, farmers[d.entry.phone]) for d in deeds])
        return farmers

    def _note_all(self, act: TrailAct, whom: Sequence[tuple[RowDeed, Farmer]]) -> None:
        lines = [
            {
                "officer_id": self.who.officer_id,
                "farmer_id": farmer.id,
                "village_id": deed.village.id,
            }
            for deed, farmer in whom
        ]
        self.work.audit.add_many(act, self.now, lines, self.way)

    def _heirs(self, deeds: Sequence[RowDeed], farmers: dict[str, Farmer]) -> None:
        for deed in deeds:
            if deed.passing is Passing.HEIR and deed.kept is not None:
                heir = farmers[deed.entry.phone]
                self.work.phones.move_beds(deed.kept.farmer.id, heir.id)

    # --- asking ------------------------------------------------------------------------------

    def _ask(self, deeds: Sequence[RowDeed], farmers: dict[str, Farmer]) -> None:
        asked = [(deed, farmers[deed.entry.phone]) for deed in deeds if deed.asks]
        due = {
            village: after_quiet(self.house, village.zone, self.now)
            for village in {deed.village for deed, _ in asked}
        }
        self.work.enrolments.end_talks(*(farmer.phone for _, farmer in asked))
        self.work.enrolments.add_all(
            self._enrolment(deed, farmer, due[deed.village]) for deed, farmer in asked
        )
        self._note_all(TrailAct.ENROLLED, asked)
        ask_all(self.work, self.house, self.who, self._counted(asked), self.now)

    def _counted(
        self, asked: Sequence[tuple[RowDeed, Farmer]]
    ) -> Iterator[tuple[Farmer, Village]]:
        for done, (deed, farmer) in enumerate(asked, start=1):
            if done % 100 == 0:
                self._part(1, done, len(asked))
            yield farmer, deed.village

    def _enrolment(self, deed: RowDeed, farmer: Farmer, due: datetime) -> Enrolment:
        return Enrolment(
            farmer_id=farmer.id,
            officer_id=self.who.officer_id,
            way=self.way,
            at=self.now,
            asked=1,
            asked_at=due,
            wishes=deed.beds.wishes or (),
        )

    # --- nurseries ---------------------------------------------------------------------------

    def _beds(self, deeds: Sequence[RowDeed], farmers: dict[str, Farmer]) -> None:
        for deed in deeds:
            for bed, wanted in deed.beds.changed:
                owner = farmers[deed.entry.phone]
                moved = replace(mended(bed, wanted), farmer_id=owner.id)
                self.work.nurseries.save(moved, self.now)
        adding = [deed for deed in deeds if deed.beds.added]
        kept = self.work.enrolments.beds_of({farmers[d.entry.phone].id for d in adding})
        new: list[Nursery] = []
        zones: dict[int, tuple[str, bool]] = {}
        for deed in adding:
            farmer = farmers[deed.entry.phone]
            taken = {bed.label for bed in kept.get(farmer.id, ()) if not bed.closed}
            today = local_date(self.now, deed.village.zone)
            new += [made(each, farmer.id, taken, today) for each in deed.beds.added]
            if farmer.consent_at is not None:
                zones[farmer.id] = deed.village.zone, farmer.only_work
        self._prompt(self.work.enrolments.add_beds(new, self.now), zones)

    def _prompt(self, beds: Sequence[Nursery], zones: dict[int, tuple[str, bool]]) -> None:
        """Plans the days of who has agreed already: those of one nursery for all that are
        alike, since a district sows in a few weeks."""
        alike: dict[tuple[object, ...], list[Nursery]] = {}
        for bed in beds:
            if bed.farmer_id in zones:
                alike.setdefault((zones[bed.farmer_id], *likeness(bed)), []).append(bed)
        self.work.reminders.plan_new(
            reminder for some in alike.values() for reminder in self._days_of(some[0], zones)
        )
        done, of = 0, sum(map(len, alike.values()))
        for some in alike.values():
            self.work.reminders.plan_alike(some[0].id, [bed.id for bed in some[1:]])
            done += len(some)
            self._part(3, done, of)

    def _days_of(
        self, bed: Nursery, zones: dict[int, tuple[str, bool]]
    ) -> tuple[Reminder, ...]:
        zone, only_work = zones[bed.farmer_id]
        return planned(bed, zone, self.house.hours, local_date(self.now, zone), only_work)


def _columns(deed: RowDeed, farmer: Farmer) -> dict[str, Any]:
    """What changes of a farmer who stays the same person."""
    entry = deed.entry
    columns: dict[str, Any] = {}
    if entry.name and entry.name != farmer.name:
        columns["name"] = entry.name
    if deed.village.id != farmer.village_id:
        columns["village_id"] = deed.village.id
    if changes_language(entry, farmer):
        columns["language"] = entry.language
    return columns
