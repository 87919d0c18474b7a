"""The programme file that an office starts with."""

from decimal import Decimal
from pathlib import Path

import pytest

from assistant.channel import Tariff
from assistant.dialogue.values import Nearby
from assistant.people import Village, VillageUnit
from assistant.places import Geocode, Point, VillagePlace
from assistant.service.nearby import KEYS
from assistant.settings import SettingsError
from assistant.wiring.programme import Programme, read_programme

DISTRICT = Path(__file__).parents[3] / "scenarios" / "district" / "programme.toml"


def programme(folder: Path, text: str) -> Programme:
    """What a file with this text says."""
    path = folder / "programme.toml"
    path.write_text(text, encoding="utf-8")
    return read_programme(path)


def test_a_programme_file_names_zone_and_villages(tmp_path: Path) -> None:
    """A village may have a zone of its own."""
    text = (
        'zone = "Africa/Nairobi"\n[[village]]\nname = "Kijani"\n'
        '[[village]]\nname = "Sonar"\nzone = "Asia/Dhaka"\n'
    )
    villages = (("Kijani", None), ("Sonar", "Asia/Dhaka"))
    assert programme(tmp_path, text) == Programme("Africa/Nairobi", villages)


def test_a_programme_file_says_what_a_text_costs(tmp_path: Path) -> None:
    """To the digit that is written: money is no binary fraction."""
    tariff = programme(tmp_path, 'price_per_segment = 0.10\ncurrency = "kes"\n').tariff
    assert tariff == Tariff(Decimal("0.10"), "KES")
    assert tariff.cost(3) == Decimal("0.30")  # 0.1 * 3 is not 0.3 in binary


def test_a_programme_file_places_its_villages(tmp_path: Path) -> None:
    """By point, by codes, or not at all. The edges are the poles and the date line (WGS 84)."""
    text = (
        '[[village]]\nname = "A"\nlatitude = -1\nlongitude = 37.5\n'
        '[[village]]\nname = "B"\ncodes = ["WARD=3"]\n[[village]]\nname = "C"\n'
        '[[village]]\nname = "D"\nlatitude = 90.0\nlongitude = -180\n'
    )
    assert programme(tmp_path, text).places == {
        "A": VillagePlace(Point(-1.0, 37.5)),
        "B": VillagePlace(None, frozenset({Geocode("WARD", "3")})),
        "D": VillagePlace(Point(90.0, -180.0)),
    }


def test_a_programme_file_says_how_warm_its_villages_are(tmp_path: Path) -> None:
    """Twelve means, January first; villages that say nothing are left out."""
    months = "[18, 21, 25.5, 28, 29, 29, 29, 29, 28, 27, 23, 19]"
    text = KIJANI + f"climate = {months}\n" + '[[village]]\nname = "B"\n'
    climates = programme(tmp_path, text).climates
    assert set(climates) == {"Kijani"}
    assert climates["Kijani"][:3] == (18.0, 21.0, 25.5)


def test_a_programme_file_says_what_land_units_are_in_its_villages(tmp_path: Path) -> None:
    """By the village; what is none is told with the line."""
    text = KIJANI + 'units = ["bigha = 1338", "plot, plots = 400"]\n'
    assert programme(tmp_path, text).units == {
        "Kijani": (VillageUnit(("bigha",), 1338.0), VillageUnit(("plot", "plots"), 400.0))
    }
    with pytest.raises(SettingsError, match="no unit of land acre = 1"):
        programme(tmp_path, KIJANI + 'units = ["acre = 1"]\n')


def test_the_district_of_the_examples_has_a_name_and_all_places() -> None:
    """So that its alerts find all its villages."""
    read = read_programme(DISTRICT)
    assert read.name and {name for name, _ in read.villages} == set(read.places)


def test_a_programme_says_whom_to_turn_to_and_a_villages_own_go_before(tmp_path: Path) -> None:
    """What a village does not say is the programme's; blanks are closed up."""
    text = (
        'emergency = "07700  900999"\nhealth_post = "Post A"\nvet = "Vet 07700 900997"\n'
        '[[village]]\nname = "Kijani"\nhealth_post = "Post B"\n[[village]]\nname = "Mtoni"\n'
    )
    book = programme(tmp_path, text).phonebook
    own = Village(1, "kijani", "UTC")
    assert book.of(own) == Nearby("07700 900999", "Post B", "Vet 07700 900997")
    assert book.of(Village(2, "Mtoni", "UTC")).health_post == "Post A"
    assert book.of(None, "Asha").officer == "Asha"


def test_the_numbers_of_the_examples_are_fiction_and_say_demo() -> None:
    """The ranges are Ofcom's for drama: 07700 900000 to 900999. Nobody may ring a real one."""
    book = read_programme(DISTRICT).phonebook
    said = [
        getattr(each, key) for each in (book.programme, *book.villages.values()) for key in KEYS
    ]
    assert all(getattr(book.programme, key) for key in KEYS)
    for each in filter(None, said):
        number = "".join(ch for ch in each if ch.isdecimal())
        assert "demo" in each and number.startswith("07700900") and len(number) == 11


KIJANI = '[[village]]\nname = "Kijani"\n'
BROKEN = {
    "a price that is none": ('price_per_segment = "dear"\ncurrency = "KES"\n', "0.80"),
    "a price without its currency": ("price_per_segment = 0.80\n", 'currency = "KES"'),
    "no TOML": ("zone = ", "Invalid value"),
    "a name that is none": ("name = 3\n", "write up to"),
    "a village without a name": ('[[village]]\nzone = "UTC"\n', "village 1: no name"),
    "a village with blanks": ('[[village]]\nname = " Kijani"\n', "without blanks"),
    "a village that stands twice": (KIJANI + KIJANI.lower(), "kijani: stands twice"),
    "villages in one table": ('[village]\nname = "Kijani"\n', "[[village]]"),
    "no zone of the programme": ('zone = "Africa"\n', "Africa/Nairobi"),
    "no zone of a village": (KIJANI + 'zone = "Nairobi"\n', "Kijani: no time zone Nairobi"),
    "half a place": (KIJANI + "latitude = 1\n", "Kijani: no place 1, nothing"),
    "a place beyond the pole": (KIJANI + "latitude = 91\nlongitude = 1\n", "91, 1"),
    "a place in quotes": (KIJANI + 'latitude = "1"\nlongitude = 2\n', "without quotes"),
    "a place that is no number": (KIJANI + "latitude = nan\nlongitude = 2\n", "in degrees"),
    "codes that are none": (KIJANI + "codes = 3\n", 'codes = ["NAME=value"]'),
    "a code without a value": (KIJANI + 'codes = ["x"]\n', "no code x"),
    "eleven months": (KIJANI + "climate = [1, 2, 3]\n", "write twelve means"),
    "months in quotes": (KIJANI + 'climate = ["warm"]\n', "Kijani: no temperatures"),
    "a mistyped entry": (KIJANI + "lattitude = 1\n", "write latitude"),
    "an emergency number without quotes": ("emergency = 112\n", 'write emergency = "number"'),
    "an emergency number that is none": ('emergency = "the post"\n', "2 digits or more"),
    "a vet without a number": (KIJANI + 'vet = "Asha"\n', "Kijani: vet: write vet"),
    "a health post too long": (f'health_post = "{"x" * 41}"\n', "up to 40 characters"),
    "an entry of nowhere": ('colour = "green"\n', "colour is not known; known are name"),
}


@pytest.mark.parametrize("kind", BROKEN)
def test_a_broken_programme_file_is_told_with_its_name(tmp_path: Path, kind: str) -> None:
    """And what to write."""
    text, words = BROKEN[kind]
    with pytest.raises(SettingsError) as refused:
        programme(tmp_path, text)
    assert "programme.toml" in str(refused.value) and words in str(refused.value)


def test_all_faults_of_one_village_are_told_at_once_and_of_one_without_a_name(
    tmp_path: Path,
) -> None:
    """Two that need each other, one that is no entry, and one that stands twice beside them."""
    text = (
        'currency = "?"\nprice_per_segment = 1\n'
        + KIJANI
        + 'longitude = 1\nzone = "x"\nvett = "Asha 12"\n'
        + KIJANI
        + "[[village]]\ncodes = 1\n"
    )
    with pytest.raises(SettingsError) as refused:
        programme(tmp_path, text)
    told = str(refused.value).split("programme.toml: ")[1].split("; ")
    heads = [each for each in told if not each.startswith(("write", "known", "one "))]
    assert heads == [
        "currency: set a currency as in ISO 4217",
        "Kijani: no time zone x",
        "Kijani: no place nothing, 1",
        "Kijani: vett is not known",
        "village 3: no name ''",
        "village 3: no code ?",
        "Kijani: stands twice",
    ]
    assert "write vet" in told


def test_all_faults_are_told_at_once(tmp_path: Path) -> None:
    """Who mends the file mends it once."""
    text = 'zone = "Africa"\n' + KIJANI + 'latitude = 91\n[[village]]\nname = "B"\ncodes = 1\n'
    with pytest.raises(SettingsError) as refused:
        programme(tmp_path, text)
    assert all(words in str(refused.value) for words in ("zone:", "Kijani:", "B:"))
