"""What the store hands out of nurseries for the results of a season."""

from datetime import date
from typing import NamedTuple


class NurseryEnd(NamedTuple):
    """One nursery with what was told of its end: columns, since a season has thousands.

    Fields from `field_area_m2` to `gap_filling` are those of `FieldInputs`; those from
    `ended_on` are None where no result was told. `first_planned` is the earliest sowing day
    that was asked about.
    """

    id: int
    label: str
    name: str | None
    practice: str
    farmer_id: int
    farmer: str | None
    phone: str
    village_id: int | None
    field_area_m2: float
    germination: float
    spacing_row_cm: float
    spacing_hill_cm: float
    seedlings_per_hill: int
    grain_weight_g: float
    pail_litres: float
    establishment: float
    gap_filling: float
    sow_date: date
    sown: bool
    sow_assumed: bool
    uncover_date: date | None
    uncovered: bool
    transplant_date: date | None
    transplanted_on: date | None
    closed: bool
    no_result: bool
    resown: bool
    first_planned: date | None
    ended_on: date | None
    planted_area_m2: float | None
    mats: int | None
    mats_left: float | None
    result_resown: bool | None
    result_establishment: float | None
    seed_share: float | None
    yield_kg: float | None = None
