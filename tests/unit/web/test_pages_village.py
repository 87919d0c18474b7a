"""The page of a village, in the order in which an officer comes for it."""

from tests.unit.web.conftest import NewBrowser, give_password
from tests.valley import LEAD, Valley


def test_a_village_begins_with_what_is_come_for(
    valley: Valley, new_browser: NewBrowser
) -> None:
    """The way to its work first, then what is set for it; the hand-over stands last,
    and there is no choice of beds where the programme knows the mat alone."""
    valley.add_village("Kijani")
    valley.add_officer(phone=LEAD, lead=True)
    give_password(valley, LEAD)
    lead = new_browser()
    lead.sign_in(LEAD)
    shown = lead.open("/villages/1")
    order = (
        "Waiting for me: 0 calls",
        "Season picture: 0 nurseries",
        "Wall calendar",
        "Mean temp",
    )
    places = [shown.index(each) for each in (*order, "Where it lies", "Hand this village over")]
    assert places == sorted(places)
    assert "<h1>Kijani</h1>" in lead.page.text and "Kinds of bed" not in shown


def test_a_place_written_the_other_way_round_is_asked_about(
    valley: Valley, new_browser: NewBrowser
) -> None:
    """Nothing is saved until it is corrected, or ticked as right."""
    valley.add_village("Kijani")
    valley.add_village("Mto Mwanga")
    valley.add_officer(phone=LEAD, lead=True)
    give_password(valley, LEAD)
    lead = new_browser()
    lead.come_in(LEAD)
    lead.open("/villages/1")
    assert "The place is kept" in lead.send("/villages/1/place", place="-0.68, 37.35")
    shown = lead.send("/villages/2/place", place="37.4, -0.7")
    assert "Written the other way round" in shown and 'value="37.4, -0.7"' in lead.page.text
    with valley.house.store.look() as work:
        assert work.people.villages()[1].latitude is None
    assert "The place is kept" in lead.send("/villages/2/place", place="37.4, -0.7", sure="on")
