"""One nursery of a season: how it ended, its seed, its dates planned and done."""

from dataclasses import dataclass
from datetime import date, timedelta
from enum import StrEnum
from functools import cached_property
from typing import NamedTuple, cast

from assistant.agronomy.field import FieldInputs
from assistant.agronomy.practices import Practice
from assistant.agronomy.rounding import Measure, measured
from assistant.agronomy.season.outcome import SeasonOutcome
from assistant.agronomy.seed import seed_kg
from assistant.people import Village
from assistant.store.values_results import NurseryEnd

ON_TIME = timedelta(days=1)  # what is told the next morning was still done on its day


class Ended(StrEnum):
    """How a nursery's season stands."""

    UNDER_WAY = "under_way"
    TOLD = "told"
    NO_RESULT = "no_result"
    GIVEN_UP = "given_up"


class KeptDate(NamedTuple):
    """One of the dates of a nursery: planned, done, and whether it was kept; None where that is
    not known."""

    planned: date | None
    done: date | None
    kept: bool | None


@dataclass(frozen=True)
class ResultLine:
    """One nursery of a season."""

    end: NurseryEnd
    village: Village | None
    practice: Practice

    @property
    def ended(self) -> Ended:
        """How its season stands."""
        if self.end.ended_on is not None:
            return Ended.TOLD
        if not self.end.closed:
            return Ended.UNDER_WAY
        return Ended.NO_RESULT if self.end.no_result else Ended.GIVEN_UP

    @property
    def called(self) -> str:
        """What its farmer calls it."""
        return self.end.name or self.end.label

    @cached_property
    def outcome(self) -> SeasonOutcome | None:
        """What was told of its end."""
        e = self.end
        if e.ended_on is None:
            return None
        return SeasonOutcome(
            nursery_id=e.id,
            farmer_id=e.farmer_id,
            ended_on=e.ended_on,
            field_area_m2=e.field_area_m2,
            planted_area_m2=e.planted_area_m2 or 0,
            mats=e.mats or 0,
            mats_left=e.mats_left or 0,
            resown=bool(e.result_resown),
            establishment=e.result_establishment or e.establishment,
            practice=self.practice.code,
            seed_share=e.seed_share or 1.0,
            yield_kg=e.yield_kg,
        )

    @property
    def resown(self) -> bool:
        """Whether some of it was sown again."""
        return self.end.resown or bool(self.end.result_resown)

    @cached_property
    def seed_kg(self) -> float:
        """Dry seed that the plan sows [kg].

        The row has the fields of `FieldInputs` and was checked when it was kept; checking
        thousands again would take longer than all else on the page.
        """
        return seed_kg(cast(FieldInputs, self.end))

    @property
    def seed_said_kg(self) -> float:
        """The same as its farmer was told [kg]."""
        return measured(self.seed_kg, Measure.SEED_KG)

    @property
    def seed_sown_kg(self) -> float | None:
        """Dry seed that was really sown, as its farmer told or else as planned [kg]; None
        before the result."""
        return self.seed_kg * self.outcome.seed_share if self.outcome else None

    @property
    def seed_used_kg(self) -> float | None:
        """The part of it on the mats that were planted [kg]; None before the result."""
        told = self.outcome
        return (self.seed_sown_kg or 0) * told.mats_used / told.mats if told else None

    # --- dates -------------------------------------------------------------------------------

    @property
    def sowing(self) -> KeptDate:
        """The first day that was planned, and the day of sowing where somebody told it."""
        e = self.end
        done = e.sow_date if e.sown and not e.sow_assumed else None
        return _kept(e.first_planned, done)

    @property
    def uncovering(self) -> KeptDate:
        """So many days after sowing as its practice has."""
        e, days = self.end, self.practice.days.uncover.value
        planned = e.sow_date + timedelta(days=int(days)) if e.sown else None
        return _kept(planned, (e.uncover_date or planned) if e.uncovered else None)

    @property
    def transplanting(self) -> KeptDate:
        """The chosen day or the one assumed; kept within the window of the practice."""
        e, window = self.end, self.practice.window
        planned = e.transplant_date or e.sow_date + timedelta(days=int(window.assumed.value))
        if e.transplanted_on is None:
            return KeptDate(planned, None, None)
        age = (e.transplanted_on - e.sow_date).days
        in_window = window.first.value <= age <= window.last.value
        return KeptDate(planned, e.transplanted_on, in_window)


def _kept(planned: date | None, done: date | None) -> KeptDate:
    if planned is None or done is None:
        return KeptDate(planned, done, None)
    return KeptDate(planned, done, abs(done - planned) <= ON_TIME)
