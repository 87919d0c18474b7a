"""The office's temperatures of the months move the beds of a village; farmers hear."""

from datetime import date

from click.testing import CliRunner

from assistant.agronomy.nursery import Nursery
from assistant.commands.village import command
from assistant.service.climate import is_climate, set_climate
from tests.valley import AMINA, Valley

COOL = (16.0,) * 12


def bed(valley: Valley) -> Nursery:
    with valley.house.store.look() as work:
        found = work.nurseries.get(1)
    assert found is not None
    return found


def enter(valley: Valley, months: tuple[float, ...] | None) -> None:
    with valley.house.store.work() as work:
        set_climate(work, valley.house, work.people.villages()[0], months, valley.now)


def sown(valley: Valley) -> None:
    valley.enrol(AMINA)
    valley.sow(AMINA, "1 June")
    valley.round()
    valley.text(AMINA, "done")


def test_beds_follow_and_their_farmers_hear(valley: Valley) -> None:
    """16 C is 7 degree-days: 249 of them on day 36, 332 on day 48."""
    sown(valley)
    valley.heard(AMINA)
    enter(valley, COOL)
    window = bed(valley).paced.window
    assert (window.first.value, window.last.value) == (36, 48)
    valley.round()
    [told] = valley.heard(AMINA)
    assert "ready from Tue 7 Jul to Sun 19 Jul" in told


def test_temperatures_taken_away_give_the_days_back(valley: Valley) -> None:
    sown(valley)
    enter(valley, COOL)
    enter(valley, None)
    assert bed(valley).paced == bed(valley).practice


def test_a_new_plan_has_the_warmth_of_its_village(valley: Valley) -> None:
    """And then nothing is said of a usual warmth."""
    enter(valley, COOL)
    valley.enrol(AMINA)
    texts = valley.plan(AMINA, "10 June")
    assert bed(valley).climate == COOL
    assert bed(valley).sow_date == date(2026, 6, 10)
    assert not any("hold at a mean" in text for text in texts or ())


def test_only_twelve_means_on_earth_are_a_climate() -> None:
    assert is_climate(COOL)
    assert not is_climate(COOL[:11])
    assert not is_climate((*COOL[:11], 60.0))
    assert not is_climate((*COOL[:11], float("nan")))


def test_the_command_asks_for_twelve() -> None:
    outcome = CliRunner().invoke(command, ["climate", "Kijani", "20", "21"])
    assert outcome.exit_code == 2
    assert "write twelve means" in outcome.output
