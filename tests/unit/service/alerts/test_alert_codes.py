"""Where villages lie, from the programme file: what somebody placed is left as it is."""

from assistant.places import Geocode, Point, VillagePlace
from assistant.service.placing import NoCode, place_villages, read_codes, unplaced_villages
from tests.valley import KIJANI, MWANGA, Valley


def test_only_villages_that_nobody_placed_are_placed(valley: Valley) -> None:
    """And once is enough."""
    with valley.house.store.work() as work:
        work.alerts.set_point(KIJANI.id, Point(-2.0, 38.0))
    places = {
        name: VillagePlace(Point(-1.0, 37.0)) for name in ("Kijani", "Mto Mwanga", "Elsewhere")
    }
    assert unplaced_villages(valley.house) == ("Mto Mwanga",)
    assert place_villages(valley.house, places, valley.now) == ("Mto Mwanga",)
    assert place_villages(valley.house, places, valley.now) == ()
    with valley.house.store.look() as work:
        assert work.alerts.places() == {
            KIJANI.id: VillagePlace(Point(-2.0, 38.0)),
            MWANGA.id: VillagePlace(Point(-1.0, 37.0)),
        }


def test_codes_are_read_one_a_line() -> None:
    """Values may hold the sign that parts them."""
    assert read_codes(" a = 1 \n\nb=2=3") == (Geocode("a", "1"), Geocode("b", "2=3"))
    assert read_codes("") == ()
    for line in ("a", "=1", "a=", "x" * 61 + "=1"):
        assert isinstance(read_codes(f"a=1\n{line}"), NoCode)


def test_what_is_known_of_a_place_stands_and_the_rest_is_added(valley: Valley) -> None:
    """A point that was corrected on the page outlives the next start; codes come beside it."""
    with valley.house.store.work() as work:
        work.alerts.set_point(KIJANI.id, Point(-2.0, 38.0))
    ward = frozenset({Geocode("WARD", "3")})
    places = {name: VillagePlace(Point(1.0, 1.0), ward) for name in ("Kijani", "Mto Mwanga")}
    assert place_villages(valley.house, places, valley.now) == ("Kijani", "Mto Mwanga")
    with valley.house.store.look() as work:
        assert work.alerts.places() == {
            KIJANI.id: VillagePlace(Point(-2.0, 38.0), ward),
            MWANGA.id: VillagePlace(Point(1.0, 1.0), ward),
        }
    assert place_villages(valley.house, places, valley.now) == ()
