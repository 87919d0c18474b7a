"""A village that offers more than the mat: the phone asks, and all texts fit the bed."""

from collections.abc import Iterator
from dataclasses import replace
from datetime import date
from typing import Any

import pytest

from assistant.agronomy.season.outcome import SeasonOutcome
from assistant.agronomy.work.costs import PriceList
from assistant.dialogue import values as v
from assistant.reminders.compose import compose
from assistant.reminders.plan import Hours, planned
from assistant.reminders.values import Reminder
from assistant.wiring.practices import open_practices
from assistant.wording.render import render_all
from tests.talk import TODAY, Phone
from tests.valley import CATALOGUES, NAIROBI

PRACTICES = open_practices()


def offered(*codes: str) -> Phone:
    """A farmer's phone in a village that offers these beside the mat."""
    phone = Phone.enrolled()
    known = (PRACTICES["mat"], *(PRACTICES[code] for code in codes))
    phone.known = replace(phone.known, practices=known)
    return phone


def plans(phone: Phone, *replies: str) -> v.Turn:
    """The last turn of a plan of 0.4 ha."""
    for reply in ("NEW", "0.4 ha"):
        phone.says(reply)
    for reply in (*replies, "85", "1", "20 June"):
        phone.says(reply)
    return phone.says("1")


def daily(phone: Phone) -> Iterator[str]:
    """The text of each day of the season."""
    nursery = phone.known.nurseries[0]
    due: dict[date, list[Reminder]] = {}
    for reminder in planned(nursery, NAIROBI, Hours(), TODAY):
        due.setdefault(reminder.day, []).append(reminder)
    for day, reminders in due.items():
        yield render_all(compose([(nursery, reminders)], day).says, CATALOGUES["en"])


def test_nothing_is_asked_where_there_is_only_the_mat() -> None:
    """The next question after the field is germination."""
    phone = Phone.enrolled()
    phone.says("NEW")
    assert "how many sprouted" in phone.hears("0.4 ha")[-1]


def test_the_mat_comes_first_and_the_answer_decides_the_bed() -> None:
    """By digit; what was chosen is shown back with its own quantities."""
    phone = offered("wet_bed")
    phone.says("NEW")
    assert "1 mat\n2 wet bed" in phone.hears("0.4 ha")[-1]
    phone = offered("wet_bed")
    plans(phone, "2")
    told = phone.hears("NEXT")
    # 400 m2 for a hectare (OPAPA-PhilRice bulletin, 2010): 160 m2 for 0.4 ha.
    assert "wet bed" in told[0] and "160 m2" in told[0] and "mats" not in " ".join(told)


@pytest.mark.parametrize("reply", ["2", "wet bed", "Wet Bed"])
def test_a_practice_is_named_by_digit_or_by_word(reply: str) -> None:
    """As it is listed, in any letters."""
    phone = offered("wet_bed")
    plans(phone, reply)
    assert phone.known.nurseries[0].practice.code == "wet_bed"


def test_by_ussd_the_question_is_the_same() -> None:
    """The screen lists the practices with their digits."""
    phone = offered("wet_bed")
    phone.known = replace(phone.known, channel=phone.known.channel.USSD)
    phone.dials()
    assert phone.hears("0.4 ha")[-1].endswith("1 mat\n2 wet bed")


@pytest.mark.parametrize("code", ["wet_bed", "dry_bed", "tray"])
def test_no_text_of_a_season_speaks_of_mats(code: str) -> None:
    """Nor of a sheet, nor of water where none stands."""
    phone = offered(code)
    plans(phone, "2")
    texts = list(daily(phone))
    assert not [text for text in texts if "mat" in text.split() or "mats" in text]
    if code == "dry_bed":
        assert not [text for text in texts if "let in" in text and "Main field" not in text]


def test_the_wet_bed_has_days_of_its_own() -> None:
    """Planted at 20 to 25 days (AsiaDHRRA quoting PhilRice), and never drained before."""
    phone = offered("wet_bed")
    plans(phone, "2")
    texts = " ".join(daily(phone))
    assert "Drain the bed" not in texts
    assert "From today to Wed 15 Jul" in texts  # 20 June and 25 days


def test_two_lots_share_a_bed_without_mats() -> None:
    """Each on a part of it."""
    phone = offered("wet_bed")
    plans(phone, "2")
    for text in ("seed test", "3", "90 of 100", "70 of 100"):
        phone.says(text)
    told = phone.hears("2")[0]
    assert "together 80%" in told and "part of the bed" in told and "mats" not in told


def test_the_kind_of_bed_can_be_changed_until_seed_is_in_it() -> None:
    """The quantities follow; once sown the choice is gone."""
    phone = offered("wet_bed")
    plans(phone, "1")
    phone.says("CHANGE DATE")
    phone.says("8")
    assert "wet bed" in phone.hears("2")[1]
    sown = phone.known.nurseries[0].sown_on(date(2026, 6, 1))
    phone.known = replace(phone.known, nurseries=(sown,))
    assert "8 " not in phone.hears("CHANGE DATE")[-1]


def test_each_practice_learns_from_its_own_seasons() -> None:
    """A season on a wet bed says nothing of mats, nor the other way round."""
    season = SeasonOutcome(
        nursery_id=9,
        farmer_id=1,
        ended_on=TODAY,
        field_area_m2=4000.0,
        planted_area_m2=2000.0,
        mats=200,
        mats_left=0,
        resown=False,
        establishment=0.49,
        practice="wet_bed",
    )
    phone = offered("wet_bed")
    phone.known = replace(phone.known, seasons=(season,))
    assert "your own" not in " ".join(phone.words(plans(phone, "1")))
    assert phone.known.nurseries[0].inputs.establishment == pytest.approx(0.65)
    again = offered("wet_bed")
    again.known = replace(again.known, seasons=(season,))
    assert "your own" in " ".join(again.words(plans(again, "2")))


def test_the_check_before_the_answer_names_the_kind_of_bed() -> None:
    """Where there is one to choose; it can be changed before anything is planned."""
    phone = offered("wet_bed", "dry_bed")
    for reply in ("NEW", "0.4 ha", "2", "85", "1"):
        phone.says(reply)
    asked = phone.hears("20 June")[-1]
    assert asked.startswith(
        "Field 0.4 ha, wet bed, germination 85%, pail 10 L, sowing Sat 20 Jun."
    )
    phone.says("2")
    assert "3 dry bed" in phone.hears("5")[-1]
    assert phone.hears("3")[-1].startswith("Field 0.4 ha, dry bed, germination")
    phone.says("1")
    assert phone.known.nurseries[0].practice.code == "dry_bed"


def test_where_there_is_only_the_mat_the_check_does_not_name_it() -> None:
    """Nothing was chosen."""
    phone = Phone.enrolled()
    for reply in ("NEW", "0.4 ha", "85", "1"):
        phone.says(reply)
    assert phone.hears("20 June")[-1].startswith("Field 0.4 ha, germination 85%")


PRICES = PriceList("KES", 150, 5, 8, 4, 40, 60, 500)


def test_a_programme_with_a_price_list_tells_the_cost_beside_a_wet_bed() -> None:
    """By hand: 9.05 kg at 150 are 1,357; 112 pails of soil at 5, 32 of manure at 8 and 16 of
    hull at 4 are 880; 44 m2 of sheet at 40 are 1,760; labour 2,800: 6,797. The wet bed: 12.005
    kg are 1,801, 16 pails of manure 128, labour 4,400: 6,329."""
    phone = offered("wet_bed")
    priced: dict[str, Any] = {"prices": PRICES, "wet_bed": PRACTICES["wet_bed"]}
    phone.known = replace(phone.known, **priced)
    plans(phone, "1")
    told = phone.hears("QUANTITIES")
    assert told[2] == (
        "A: about 6,797 KES by the programme's price list, 1,357 of it for seed, 2,800 for "
        "labour. A sum, no promise.\nA wet bed for the same field: about 6,329 KES, with 12.5 "
        "kg of seed."
    )
    wet = offered("wet_bed")
    wet.known = replace(wet.known, **priced)
    plans(wet, "2")
    assert "A wet bed for" not in wet.hears("QUANTITIES")[2]


def test_without_a_price_list_nothing_is_said_of_money() -> None:
    """Most programmes have none at first."""
    phone = offered("wet_bed")
    plans(phone, "1")
    assert "KES" not in " ".join(phone.hears("QUANTITIES"))
