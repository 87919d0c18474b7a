"""What holds for every practice, whatever its file says: seed, bed, pails and days."""

from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.agronomy.calendar import Anchors, DayChoice, calendar, judge_transplant
from assistant.agronomy.errors import AgronomyError
from assistant.agronomy.field import FieldInputs
from assistant.agronomy.growth.leaves import leaves_on
from assistant.agronomy.life.making import making
from assistant.agronomy.life.rows import TASKS
from assistant.agronomy.nursery import Nursery
from assistant.agronomy.quantities import WarningCode, quantities
from assistant.agronomy.tasks import TaskCode
from assistant.wiring.practices import open_practices

PRACTICES = tuple(open_practices().values())
practices = st.sampled_from(PRACTICES)
SOW = date(2026, 6, 10)
fields = st.builds(
    FieldInputs,
    field_area_m2=st.floats(1, 1_000_000),
    germination=st.floats(0.05, 1),
    seedlings_per_hill=st.integers(1, 6),
    grain_weight_g=st.floats(15, 30),
    pail_litres=st.floats(1, 50),
    establishment=st.floats(0.2, 1),
    gap_filling=st.floats(0, 0.5),
)


@given(fields, practices)
def test_seed_never_lies_thicker_than_the_practice_bears(field, practice):
    """The bed grows instead, and says so."""
    q = quantities(field, practice)
    assert q.seeds_per_cm2 <= practice.bed.max_seeds_per_cm2.value * (1 + 1e-9)
    plain = field.field_area_m2 * practice.bed.share.value
    assert (q.nursery_area_m2 > plain) == (WarningCode.BED_ENLARGED in q.warnings)


@given(fields, practices)
def test_pails_hold_the_mix_in_its_parts(field, practice):
    """Whole batches of the practice's own parts, none too many."""
    q, bed = quantities(field, practice), practice.bed
    parts = [bed.soil_parts.value, bed.manure_parts.value, bed.hull_parts.value]
    pails = [q.soil_pails, q.manure_pails, q.rice_hull_pails]
    batches = max(pails) / max(parts)
    assert pails == [part * batches for part in parts]
    room = batches * sum(parts) * q.mix_measure_litres
    assert room >= q.soil_mix_m3 * 1000 * (1 - 1e-6)
    assert room - sum(parts) * q.mix_measure_litres < q.soil_mix_m3 * 1000


@given(fields, practices)
def test_mats_and_trays_cover_the_bed_and_beds_without_them_have_none(field, practice):
    """As many as are needed, and nothing is told of what is not there."""
    q, piece = quantities(field, practice), practice.bed.piece
    if piece is None:
        assert (q.mats, q.seed_per_mat_g) == (0, 0)
    else:
        assert (q.mats - 1) * piece.area_m2 < q.nursery_area_m2
        assert q.mats * piece.area_m2 >= q.nursery_area_m2 * (1 - 1e-6)
    assert (q.sheet_m2 > 0) == (practice.bed.sheet_allowance is not None)
    assert (q.flood_water_l > 0) == (practice.bed.flood_depth_m.value > 0)


@given(fields, practices)
def test_the_spray_is_the_same_weak_one_everywhere(field, practice):
    """Five grams in each litre, three litres on each square metre."""
    q = quantities(field, practice)
    assert q.urea_g / q.spray_water_l == pytest.approx(5)
    assert q.spray_water_l / q.nursery_area_m2 == pytest.approx(3)


@given(practices, st.dates(date(1, 6, 1), date(9999, 6, 1)))
def test_the_calendar_has_what_texts_lean_on(practice, sow):
    """Soaking, sowing, looking at colour and leaves, choosing the day, planting, overdue."""
    tasks = {task.code: task for task in calendar(Anchors(sow, practice=practice))}
    always = TASKS.codes(lambda row: row.always)
    assert always | {TaskCode.TRANSPLANT, TaskCode.OVERDUE, TaskCode.FIELD_PLOUGH} <= set(tasks)
    assert tasks[TaskCode.SOW].date == sow
    window = tasks[TaskCode.TRANSPLANT]
    assert window.until is not None
    assert window.date <= Anchors(sow, practice=practice).transplant_date <= window.until
    assert tasks[TaskCode.OVERDUE].date == window.until + timedelta(days=1)
    for task in tasks.values():
        assert task.until is None or task.until >= task.date


@pytest.mark.parametrize("practice", PRACTICES, ids=lambda each: each.code)
def test_a_wished_day_is_judged_by_the_practices_own_window(practice):
    """Good inside, early and late outside, impossible beyond its limits."""
    w = practice.window

    def judged(day: float) -> DayChoice:
        return judge_transplant(SOW, SOW + timedelta(days=day), practice)

    assert judged(w.first.value) is judged(w.last.value) is DayChoice.GOOD
    assert judged(w.first.value - 1) is DayChoice.EARLY
    assert judged(w.last.value + 1) is DayChoice.LATE
    assert judged(w.earliest.value - 1) is judged(w.latest.value + 1) is DayChoice.IMPOSSIBLE


@pytest.mark.parametrize("practice", PRACTICES, ids=lambda each: each.code)
def test_the_window_of_days_agrees_with_the_window_of_leaves(practice):
    """At 26 C the crop model's leaves on the first and last day lie within half a leaf or so of
    those the practice waits for."""
    w = practice.window
    assert leaves_on(w.first.value, 26) == pytest.approx(w.leaves_first.value, abs=0.7)
    assert leaves_on(w.last.value, 26) == pytest.approx(w.leaves_last.value, abs=1.0)


@pytest.mark.parametrize("practice", PRACTICES, ids=lambda each: each.code)
def test_a_nursery_follows_its_practice(practice):
    """Its quantities, days and judgements are those of the practice it is raised by."""
    nursery = Nursery(
        id=1,
        farmer_id=1,
        label="A",
        name=None,
        inputs=FieldInputs(4000, 0.85),
        area_typed="1 acre",
        germination_known=True,
        sow_date=SOW,
        made_on=SOW,
        practice=practice,
    )
    assert nursery.quantities == quantities(nursery.inputs, practice)
    assert set(nursery.tasks) == {
        *calendar(Anchors(SOW, practice=practice)),
        *making(SOW, practice),
    }
    last = SOW + timedelta(days=practice.window.last.value)
    assert nursery.judge_transplanting(last) is DayChoice.GOOD
    with pytest.raises(AgronomyError):
        nursery.transplanting_on(SOW + timedelta(days=practice.window.latest.value + 1))
