"""The nurseries of a list, held against those that are kept."""

from dataclasses import replace
from datetime import date, timedelta

from assistant.agronomy.field import FieldInputs
from assistant.agronomy.nursery import Nursery
from assistant.service.office.beds import BedPlan, WantedBeds, bed_plan, made, mended
from assistant.store import Wish

TODAY = date(2026, 6, 1)
SOW = date(2026, 6, 10)
WANTED = WantedBeds(2, 4000.0, "0.4 ha", SOW, 85.0, None)
BED = Nursery(
    id=7,
    farmer_id=1,
    label="A",
    name=None,
    inputs=FieldInputs(field_area_m2=4000.0, germination=0.85),
    area_typed="0.4 ha",
    germination_known=True,
    sow_date=SOW,
    made_on=TODAY,
)


def plan(
    *wanted: WantedBeds,
    beds: tuple[Nursery, ...] = (),
    agreed: bool = False,
    wishes: tuple[Wish, ...] = (),
) -> BedPlan:
    return bed_plan(wanted, beds, agreed=agreed, wishes=wishes, today=TODAY)


def test_a_whole_nursery_is_made_and_a_part_of_one_is_a_wish() -> None:
    """Without a day, or with seed that is not fit to be sown, it waits for the farmer."""
    part, weak = replace(WANTED, sowing=None), replace(WANTED, percent=40.0)
    assert plan(WANTED).added == (WANTED,)
    for each in (part, weak):
        assert plan(each).added == () and plan(each).wishes == (each.wish(),)


def test_what_is_kept_already_is_left_alone() -> None:
    """The same list twice."""
    part = replace(WANTED, sowing=None)
    assert plan(WANTED, beds=(BED,)) == BedPlan()
    assert plan(part, wishes=(part.wish(),)).wishes is None


def test_an_office_may_change_its_own_plan_and_never_a_farmers() -> None:
    """Who has agreed goes by their own days."""
    later = replace(WANTED, sowing=SOW + timedelta(days=3))
    assert plan(later, beds=(BED,)).changed == ((BED, later),)
    agreed = plan(later, beds=(BED,), agreed=True)
    assert (agreed.changed, agreed.added, agreed.kept) == ((), (), (2,))
    assert mended(BED, later).sow_date == later.sowing


def test_a_later_season_is_a_new_nursery() -> None:
    """Two months on; a closed one of this season is not made again."""
    autumn = replace(WANTED, sowing=SOW + timedelta(days=120))
    assert plan(autumn, beds=(BED,), agreed=True).added == (autumn,)
    assert plan(WANTED, beds=(replace(BED, closed=True),), agreed=True).added == ()


def test_nurseries_are_told_apart_by_name() -> None:
    """Two on one phone."""
    river, hill = replace(WANTED, name="River"), replace(WANTED, name="Hill")
    kept = replace(BED, name="River")
    assert plan(river, hill, beds=(kept,)).added == (hill,)


def test_a_new_nursery_takes_the_first_free_letter() -> None:
    """I and O are left out: they look like digits."""
    taken = set("ABCDEFGH")
    assert made(WANTED, 1, taken, TODAY).label == "J"
    assert "J" in taken
