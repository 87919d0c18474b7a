"""The season's end: gaps, the result, what is learned, and the second season that uses it."""

from dataclasses import replace
from datetime import date
from typing import Any

import pytest

from assistant.agronomy.calendar import TaskCode
from assistant.agronomy.season.outcome import SeasonOutcome
from assistant.dialogue import values as v
from assistant.wording import messages_amounts as a
from assistant.wording import messages_result as r
from assistant.wording import messages_talk as m
from tests.talk import Phone, item, nursery
from tests.valley import like, numbered

PLANTED = date(2026, 6, 19)
ASKED = date(2026, 6, 27)


def planted(**given: Any) -> Phone:
    """Eight days after transplanting, asked how it went."""
    kept = nursery(sow=date(2026, 6, 1), sown=True, transplanted_on=PLANTED, **given)
    return Phone.enrolled(kept).on(ASKED).asked(item(TaskCode.SEASON_RESULT, ASKED))


def outcome(**given: Any) -> SeasonOutcome:
    """What the farmer told."""
    plain = SeasonOutcome(
        nursery_id=1,
        farmer_id=1,
        ended_on=ASKED,
        field_area_m2=4000.0,
        planted_area_m2=4000.0,
        mats=267,
        mats_left=0.0,
        resown=False,
        establishment=0.65,
    )
    return replace(plain, **given)


def test_transplanting_leaves_the_nursery_open_for_gaps_and_the_result() -> None:
    """Gaps are looked for on day 4, 23 June, three days before the last one (PhilRice, Key
    Check 4: replant within 7 days; 19 June + 7 = 26 June)."""
    kept = nursery(sow=date(2026, 6, 1), sown=True)
    phone = Phone.enrolled(kept).on(PLANTED).asked(item(TaskCode.TRANSPLANT, PLANTED))
    assert phone.hears("1") == [like(m.TRANSPLANTED_NOTED)]
    (now,) = phone.known.nurseries
    assert now.transplanted_on == PLANTED and not now.closed
    follow = {t.code: (t.date, t.until) for t in now.tasks if t.date > PLANTED}
    assert follow[TaskCode.FILL_GAPS] == (date(2026, 6, 23), None)
    assert follow[TaskCode.SEASON_RESULT] == (date(2026, 6, 27), date(2026, 6, 30))


def test_mats_that_were_left_are_kept_and_offered_to_a_neighbour() -> None:
    """267 mats, 27 left."""
    phone = planted()
    assert phone.hears("1") == [like(r.ASK_LEFT(mats=a.MATS(n=267)))]
    assert phone.hears("27") == [like(r.ASK_RESOWN, ...)]
    texts = phone.hears("no")
    assert texts[0] == like(r.RESULT_KEPT, r.SURPLUS)
    assert v.KeepSeason(outcome(mats_left=27.0)) in phone.changes
    assert phone.known.nurseries == ()


def test_more_mats_left_than_there_were_are_asked_again() -> None:
    """267 in all."""
    phone = planted()
    phone.says("1")
    assert phone.hears("267") == [like(r.AGAIN_LEFT(mats=267))]


def test_a_field_left_short_is_told_by_its_size_or_a_share() -> None:
    """0.3 of 0.4 ha is three quarters."""
    for typed in ("0.3 ha", "2"):
        phone = planted()
        asked = phone.hears("too few")
        labels = (r.NEARLY_ALL, r.THREE_QUARTERS, r.HALF, r.A_QUARTER)
        assert asked == [like(r.ASK_PLANTED, *numbered(*labels))]
        phone.says(typed)
        assert phone.hears("2")[0] == like(r.RESULT_KEPT, r.SHORT)
        assert v.KeepSeason(outcome(planted_area_m2=3000.0)) in phone.changes


def test_more_planted_than_the_field_is_asked_again() -> None:
    """0.5 of 0.4 ha."""
    phone = planted()
    phone.says("3")
    assert phone.hears("0.5 ha")[0] == like(r.AGAIN_PLANTED, ...)


def test_who_sowed_again_is_not_asked_whether() -> None:
    """The program knows it."""
    phone = planted(resown=True)
    assert phone.hears("2")[0] == like(r.RESULT_KEPT)
    assert v.KeepSeason(outcome(resown=True)) in phone.changes


def test_mats_that_just_sufficed_teach_nothing_new() -> None:
    """The plan's own figure came true: 65 stays 65."""
    phone = planted()
    phone.says("2")
    kept, asked = phone.hears("2")
    assert kept == like(r.RESULT_KEPT)
    assert asked == like(r.ASK_SEED_USED(label="A", seed=9.1), *numbered(r.AS_PLANNED))


def told(text: str) -> Phone:
    """A season that just sufficed, and what was said of its seed."""
    phone = planted()
    phone.says("2")
    phone.says("2")
    phone.known = replace(phone.known, seasons=(outcome(),))
    phone.says(text)
    return phone


@pytest.mark.parametrize(
    ("text", "kg"),
    [("12 kg", 12.0), ("12", 12.0), ("12,5 kilo", 12.5), ("about 8.5kg", 8.5), ("9500 g", 9.5)],
)
def test_the_seed_that_was_really_sown_is_kept_beside_the_result(text: str, kg: float) -> None:
    """12 kg where 9.1 were planned: fewer of the seeds stood. A farmer's figure in kg or g."""
    phone = told(text)
    [change] = phone.changes
    assert isinstance(change, v.KeepSeason)
    assert change.outcome.seed_share == pytest.approx(kg / 9.1)
    stood = change.outcome.observed_establishment
    assert stood == pytest.approx(0.65 * 9.1 / kg)
    assert phone.known.session is None


@pytest.mark.parametrize("text", ["1", "as planned", "no"])
def test_seed_as_planned_changes_nothing(text: str) -> None:
    """The result stands already; so it does where nobody answers."""
    assert told(text).changes == []


@pytest.mark.parametrize("text", ["2 bags", "200 kg", "2 bags of 5 kg", "a lot", "0.5 kg"])
def test_seed_that_is_no_weight_or_far_from_the_plan_is_asked_again(text: str) -> None:
    """Five times the plan, or a fifth of it, is rather a slip."""
    phone = planted()
    phone.says("2")
    phone.says("2")
    assert phone.hears(text)[0].startswith("Send the kg of dry seed")
    assert phone.known.session is not None


def test_more_seed_than_planned_is_learned_from() -> None:
    """18.2 of 9.1 kg: 0.65 / 2 = 0.325 seen; (39.44 x 0.65 + 20 x 0.325) / 59.44 = 0.5406, by
    hand as below: 54 of 100."""
    phone = planted()
    phone.says("2")
    phone.says("2")
    phone.known = replace(phone.known, seasons=(outcome(),))
    assert phone.hears("18.2") == [
        like(r.SEED_USED_KEPT(seed=18.2)),
        like(r.LEARNED(own=54, usual=65)),
    ]


def test_a_result_before_transplanting_is_put_off() -> None:
    """There is none yet."""
    phone = Phone.enrolled(nursery())
    for words in ("MENU", "9"):
        phone.says(words)
    assert phone.hears("8") == [like(r.NOTHING_PLANTED)]


def test_the_next_season_counts_with_the_farmers_own_and_says_so() -> None:
    """Three quarters planted from all mats: 0.65 x 0.75 = 0.4875 seen. Before it the belief
    weighs 0.65 x 0.35 / 0.075^2 - 1 = 39.44 mats, the season 20 (a Beta update, by hand):
    (39.44 x 0.65 + 20 x 0.4875) / 59.44 = 0.5953, so 60 of 100. Seed for 4,000 m2 at 85 %:
    5 / (0.85 x 0.5953) = 9.88 kg, on a hand scale 9.9."""
    phone = Phone.enrolled()
    phone.known = replace(phone.known, seasons=(outcome(planted_area_m2=3000.0),))
    for words in ("NEW", "0.4 ha", "85", "10", "16 July"):
        phone.says(words)
    own, *_ = phone.hears("1")
    assert own == like(r.OWN_RATE(own=60, usual=65))
    seed = phone.hears("NEXT")[0]
    assert "Seed 9.9 kg dry" in seed
    assert phone.known.nurseries[0].inputs.establishment == pytest.approx(0.5953, abs=1e-4)
