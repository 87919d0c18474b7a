"""What a bigha or a plot is in a village: set by an office, read at the sign-up."""

import pytest

from assistant.people import VillageUnit
from assistant.service.land_units import (
    NoUnit,
    enter_units,
    name_units,
    read_units,
    set_units,
    units_text,
)
from assistant.service.sight import Sight, sight_of
from assistant.wording import messages_talk as m
from tests.stages import stage
from tests.valley import AMINA, KIJANI, LEAD, LEXICONS, OFFICER, Valley, like


@stage
def office(valley: Valley) -> None:
    """A lead, and an officer of Kijani, where Amina lives."""
    valley.add_officer(KIJANI)
    valley.add_officer(phone=LEAD, lead=True)
    valley.enrol(AMINA)
    valley.heard(AMINA)


def sight(valley: Valley, phone: str) -> Sight:
    """What an officer may see."""
    with valley.house.store.look() as work:
        officer = work.people.officer(phone)
        assert officer is not None
        return sight_of(work, officer)


def test_the_sign_up_reads_a_unit_that_the_office_has_set(office: Valley) -> None:
    """Until then it is asked back; a bare size is in m2."""
    assert office.text(AMINA, "2 bigha") == [like(m.AGAIN_REGION_UNIT)]
    kept = set_units(office.house, sight(office, LEAD), 1, "bigha = 1338", office.now)
    assert kept is not None and not isinstance(kept, NoUnit)
    assert office.text(AMINA, "2 bigha") == [like(m.ASK_GERMINATION)]
    for words in ("85", "10", "5 June", "1"):
        office.text(AMINA, words)
    with office.house.store.look() as work:
        bed = work.nurseries.get(1)
    assert bed is not None and bed.inputs.field_area_m2 == 2676.0
    assert bed.area_typed == "2 bigha (2,676 m2)"


def test_fifty_by_a_hundred_is_asked_in_feet_or_metres(office: Valley) -> None:
    """Once, and the digit settles it."""
    (asked,) = office.text(AMINA, "50 by 100")
    assert "1 Feet: 465 m2" in asked and "2 Metres: 5,000 m2" in asked
    assert office.text(AMINA, "1") != [asked]


def test_nobody_but_a_lead_sets_them(office: Valley) -> None:
    """And only where the village is in sight."""
    assert set_units(office.house, sight(office, OFFICER), 1, "plot = 400", office.now) is None
    assert set_units(office.house, sight(office, LEAD), 99, "plot = 400", office.now) is None


def test_units_are_read_as_an_office_writes_them() -> None:
    """With other names, and sizes in units that are the same everywhere."""
    text = "bigha = 1338\nplot, plots : 0.1 acre\n\nline= 12,5"
    assert read_units(text, LEXICONS) == (
        VillageUnit(("bigha",), 1338.0),
        VillageUnit(("plot", "plots"), pytest.approx(404.68564224)),  # type: ignore[arg-type]
        VillageUnit(("line",), 12.5),
    )
    found = read_units("bigha = 1338\nplot, small plot = 400", LEXICONS)
    assert not isinstance(found, NoUnit)
    assert units_text(found) == "bigha = 1338\nplot, small plot = 400"


@pytest.mark.parametrize(
    "line",
    [
        "bigha",
        "bigha = ",
        "= 400",
        "acre = 4000",
        "ha = 10000",
        "2 plot = 400",
        "plot = 0",
        "plot = 1000000",
        "plot = big",
        "plot = 1 bigha",
        "plot, plot = 4 0",
    ],
)
def test_what_is_no_unit_is_told_by_its_line(line: str) -> None:
    """Nothing is kept of the others either."""
    assert read_units(f"katha = 67\n{line}", LEXICONS) == NoUnit(line.strip())


def test_the_command_and_the_programme_file_set_them_too(office: Valley) -> None:
    """The file only where nobody has said any."""
    house = office.house
    enter_units(house, {"Kijani": (VillageUnit(("plot",), 400.0),)}, office.now)
    kept = name_units(house, "kijani", "bata = 14", office.now)
    assert not isinstance(kept, NoUnit) and kept.units == (VillageUnit(("bata",), 14.0),)
    enter_units(house, {"Kijani": (VillageUnit(("plot",), 400.0),)}, office.now)
    with house.store.look() as work:
        village = work.people.village(1)
    assert village is not None and village.units == (VillageUnit(("bata",), 14.0),)
    with pytest.raises(LookupError):
        name_units(house, "Nowhere", "bata = 14", office.now)
