"""The nurseries that a list tells of, held against those that are kept.

A list may change what an office planned. It never changes the plan of a farmer who has agreed
and goes by it, so the same list does nothing when it comes again, whatever the farmer did.
"""

from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import date, timedelta

from assistant.agronomy.constants import GOOD_GERMINATION
from assistant.agronomy.field import FieldInputs
from assistant.agronomy.nursery import Nursery
from assistant.agronomy.quantities import is_hopeless
from assistant.dialogue.values import Kept
from assistant.service.office.cells import Entry
from assistant.store import Wish
from assistant.wording import messages_web_people as web_people
from assistant.wording.message import Say

# Common practice, no source: a second crop is sown later than this after the first.
SAME_SEASON = timedelta(days=60)
_LETTERS = "ABCDEFGHJKLMNPQRSTUVWXYZ"  # I and O look like digits


@dataclass(frozen=True)
class WantedBeds:
    """One nursery as a list tells of it."""

    line: int
    area_m2: float | None
    area_words: str
    sowing: date | None
    percent: float | None
    name: str | None

    @property
    def whole(self) -> bool:
        """Whether it can be planned: field and day are known, the seed is fit to be sown."""
        fit = self.percent is None or not is_hopeless(self.percent / 100)
        return self.area_m2 is not None and self.sowing is not None and fit

    @property
    def told(self) -> str:
        """It in a few words, for showing."""
        parts = (
            self.name,
            self.area_words or None,
            f"{self.percent:g}%" if self.percent is not None else None,
            self.sowing.isoformat() if self.sowing else None,
        )
        return ", ".join(part for part in parts if part)

    def wish(self) -> Wish:
        """What is kept until the farmer tells the rest, by the plan talk's names."""
        kept: dict[str, Kept] = {}
        if self.area_m2 is not None:
            kept |= {"area": self.area_m2, "area_words": self.area_words}
        if self.percent is not None:
            kept |= {"germination": self.percent, "germination_words": f"{self.percent:g}"}
        if self.sowing is not None:
            kept |= {"sowing": self.sowing.isoformat()}
        return kept | ({"name": self.name} if self.name else {})


@dataclass(frozen=True)
class BedPlan:
    """What would be done about nurseries.

    added:   to be made                changed: kept ones with the values of the list
    wishes:  what is kept for the plan talk; None where it stays as it is
    kept:    lines whose nursery is the farmer's own by now
    """

    added: tuple[WantedBeds, ...] = ()
    changed: tuple[tuple[Nursery, WantedBeds], ...] = ()
    wishes: tuple[Wish, ...] | None = None
    kept: tuple[int, ...] = ()
    wished: tuple[WantedBeds, ...] = ()

    def says(self) -> tuple[Say, ...]:
        """What would happen, in words."""
        added = tuple(web_people.ADDS_BED(what=each.told) for each in self.added)
        changed = tuple(
            web_people.CHANGES_BED(label=bed.called, what=each.told)
            for bed, each in self.changed
        )
        wished = () if self.wishes is None else self.wished
        return (*added, *changed, *(web_people.ADDS_WISH(what=each.told) for each in wished))

    def kept_says(self, line: int) -> tuple[Say, ...]:
        """That the farmer's own plan goes before the list's."""
        return (web_people.KEPT_BED(),) if line in self.kept else ()


def wanted_of(entry: Entry) -> WantedBeds:
    """The nursery of a row."""
    return WantedBeds(
        line=entry.line,
        area_m2=entry.area_m2,
        area_words=entry.area_words,
        sowing=entry.sowing,
        percent=entry.germination,
        name=entry.bed,
    )


def bed_plan(
    wanted: Sequence[WantedBeds],
    beds: Sequence[Nursery],
    *,
    agreed: bool,
    wishes: Sequence[Wish],
    today: date,
) -> BedPlan:
    """What to do about one farmer's nurseries.

    Args:
        beds: those there are or were.
        agreed: the farmer has agreed, and goes by their own plans.
        wishes: what is kept for the plan talk now.
    """
    left = list(beds)
    added: list[WantedBeds] = []
    changed: list[tuple[Nursery, WantedBeds]] = []
    kept: list[int] = []
    wished: list[WantedBeds] = []
    for each in sorted(wanted, key=lambda one: not one.whole):
        bed = _match(each, left)
        if bed is not None:
            left.remove(bed)
            if agreed or bed.closed or bed.sown:
                kept += [each.line] if _differs(each, bed) else []
            elif _differs(each, bed):
                changed.append((bed, each))
        elif each.whole:
            added.append(each)
        elif not agreed:
            wished.append(each)
    fresh = tuple(each.wish() for each in wished)
    same = agreed or fresh == tuple(dict(each) for each in wishes) or (not wanted)
    return BedPlan(
        tuple(added), tuple(changed), None if same else fresh, tuple(kept), tuple(wished)
    )


def _match(wanted: WantedBeds, beds: Sequence[Nursery]) -> Nursery | None:
    """The kept nursery that a row tells of: of the same name, else of the same season, the one
    that is most alike."""
    near = [bed for bed in beds if _same_season(wanted, bed)]
    named = [bed for bed in near if wanted.name and bed.name == wanted.name]
    if named:
        return named[0]
    free = [bed for bed in near if not (wanted.name and bed.name)]
    return min(free, key=lambda bed: _differs(wanted, bed), default=None)


def _same_season(wanted: WantedBeds, bed: Nursery) -> bool:
    if wanted.sowing is None:
        return not bed.closed
    return abs(bed.sow_date - wanted.sowing) <= SAME_SEASON


def _differs(wanted: WantedBeds, bed: Nursery) -> bool:
    """Whether the list says something else than is kept; what it does not say differs not."""
    percent = round(bed.inputs.germination * 100, 2) if bed.germination_known else None
    pairs = (
        (wanted.area_m2, bed.inputs.field_area_m2),
        (wanted.sowing, bed.sow_date),
        (wanted.percent, percent),
        (wanted.name, bed.name),
    )
    return any(told is not None and told != known for told, known in pairs)


# --- making them -----------------------------------------------------------------------------


def made(wanted: WantedBeds, farmer_id: int, taken: set[str], today: date) -> Nursery:
    """A new nursery; its letter is added to those that are `taken`."""
    if wanted.area_m2 is None or wanted.sowing is None:
        raise LookupError(f"row {wanted.line}: a nursery needs a field and a day of sowing")
    label = free_label(taken)
    taken.add(label)
    percent = wanted.percent
    return Nursery(
        id=0,
        farmer_id=farmer_id,
        label=label,
        name=wanted.name,
        inputs=FieldInputs(
            field_area_m2=wanted.area_m2,
            germination=GOOD_GERMINATION.value if percent is None else percent / 100,
        ),
        area_typed=wanted.area_words,
        germination_known=percent is not None,
        sow_date=wanted.sowing,
        made_on=today,
    )


def free_label(taken: Collection[str]) -> str:
    """The first letter that no nursery has yet."""
    return next(letter for letter in _labels() if letter not in taken)


def _labels() -> Iterator[str]:
    yield from _LETTERS
    yield from (first + second for first in _LETTERS for second in _LETTERS)


def mended(bed: Nursery, wanted: WantedBeds) -> Nursery:
    """A nursery that an office planned, with what its list says now."""
    inputs = bed.inputs
    if wanted.area_m2 is not None:
        inputs = replace(inputs, field_area_m2=wanted.area_m2)
    if wanted.percent is not None:
        inputs = replace(inputs, germination=wanted.percent / 100)
    moved = (
        bed
        if wanted.sowing in (None, bed.sow_date)
        else bed.sown_on(wanted.sowing or bed.sow_date, sown=False)
    )
    return replace(
        moved,
        inputs=inputs,
        name=wanted.name or bed.name,
        area_typed=wanted.area_words or bed.area_typed,
        germination_known=bed.germination_known or wanted.percent is not None,
    )
