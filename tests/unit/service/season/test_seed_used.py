"""The seed really sown, and what a village learns, on the results page and in its file."""

from dataclasses import replace

import pytest

from assistant.agronomy.season.outcome import SeasonOutcome
from assistant.people import Village
from assistant.service.season.results import Results, results
from assistant.service.season.results_file import HEAD, rows
from assistant.service.sight import sight_of
from assistant.wiring.practices import open_practices
from assistant.wording import messages_web_books as b
from tests.stages import stage
from tests.valley import AMINA, KIJANI, OFFICER, Valley


@stage
def told(valley: Valley) -> None:
    """Amina planted all of 0.4 ha, with nothing left, and sowed nothing again."""
    valley.add_officer(KIJANI)
    valley.enrol(AMINA)
    valley.sow(AMINA, "14 May")
    for day, words in (("1 Jun 09:00", "done"), ("9 Jun 07:00", "2"), ("9 Jun 07:01", "2")):
        valley.go(day)
        valley.heard(AMINA)
        valley.text(AMINA, words)


def page(valley: Valley, village: Village) -> Results:
    """The results of a village."""
    with valley.house.store.look() as work:
        officer = work.people.officer(OFFICER)
        assert officer is not None
        sight = sight_of(work, officer)
    return results(valley.house, sight, valley.now, village_id=village.id)


def in_file(model: Results) -> dict[object, object]:
    """The only row of the file by the heads of its columns."""
    [row] = rows(model, "en")
    return dict(zip(HEAD, row, strict=True))


def test_the_seed_that_was_told_stands_against_the_plan(told: Valley, kijani: Village) -> None:
    """9.05 kg planned, 12 of 9.1 kg told: 11.93 kg, on 0.4 ha 29.8 kg/ha; 65 x 9.1 / 12 = 49.3
    of 100 stood (arithmetic)."""
    told.text(AMINA, "12 kg")
    row = in_file(page(told, kijani))
    assert row[b.SEED_KG] == pytest.approx(9.05, abs=0.01)
    assert row[b.SEED_USED_KG] == pytest.approx(11.93, abs=0.01)
    assert row[b.SEED_RATE_PLANTED] == pytest.approx(29.8, abs=0.05)
    assert row[b.ESTABLISHED] == pytest.approx(49.3, abs=0.05)
    [line] = page(told, kijani).by_village
    assert line.used_rate == pytest.approx(29.8, abs=0.05)
    assert line.planned_rate == pytest.approx(22.6, abs=0.05)


@pytest.mark.parametrize("answer", ["1", "MENU"])
def test_seed_that_nobody_told_was_as_planned(
    told: Valley, kijani: Village, answer: str
) -> None:
    """As told, or since the question was passed over; the result stands in both cases."""
    told.text(AMINA, answer)
    row = in_file(page(told, kijani))
    assert row[b.SEED_USED_KG] == pytest.approx(9.05, abs=0.01)
    assert row[b.ESTABLISHED] == pytest.approx(65.0)


def test_a_village_learns_of_each_kind_of_bed_by_itself(
    told: Valley, kijani: Village, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A season on mats that just sufficed says nothing of wet beds; each has its own line."""
    practices = open_practices()
    monkeypatch.setattr(told.house.store, "practices", practices)
    with told.house.store.work() as work:
        [mat] = work.nurseries.of_farmer(1, open_only=False)
        wet = replace(mat, id=0, label="B", practice=practices["wet_bed"])
        bed = work.nurseries.save(wet, told.now)
        season = SeasonOutcome(
            nursery_id=bed.id,
            farmer_id=1,
            ended_on=bed.sow_date,
            field_area_m2=4000.0,
            planted_area_m2=2000.0,
            mats=1000,
            mats_left=0.0,
            resown=False,
            establishment=0.49,
            practice="wet_bed",
        )
        work.seasons.save(season)
    model = page(told, kijani)
    learned = {each.practice.code: each for each in model.learned}
    assert set(learned) == {"mat", "wet_bed"}
    assert learned["mat"].establishment.mean == pytest.approx(0.65)
    assert learned["wet_bed"].establishment.mean < 0.49
    assert [say.message for say in model.learned_says] == [b.LEARNED, b.LEARNED_BY]
