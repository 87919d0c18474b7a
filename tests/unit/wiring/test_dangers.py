"""The table of dangers: every fault of a file is named with what to write."""

import pytest

from assistant.agronomy.dangers.rows import DANGERS, RAIN, BedStage, DangerTable
from assistant.agronomy.errors import AgronomyError
from assistant.alerts import Alert, Threat, read_alert
from assistant.dialogue.officer import VERBS, verb_of, without_code
from assistant.people import LANGUAGES
from assistant.reading import Outcome, Wish, read_wish
from assistant.service.alerts.mapping import danger_of
from assistant.wiring.dangers import DangerError, open_dangers, read_dangers
from assistant.wiring.lexicons import open_lexicons
from tests.cap import cap, info


def advice(*stages: str) -> list[dict[str, object]]:
    """One piece of advice for beds of these stages."""
    return [{"stages": list(stages), "what": "look", "rests_on": "common practice"}]


ROW = {"words": {"en": ["RAIN"]}, "advice": advice("covered")}
HAIL = {"words": {"en": ["HAIL"], "fr": ["GRELE"]}, "advice": advice("covered", "uncovered")}


def test_rain_comes_first_and_what_is_left_out_is_plain() -> None:
    rain, found = read_dangers({"hail": HAIL | {"indoors": True}, "rain": ROW})
    assert rain.code == "rain"
    assert found.stages == {BedStage.COVERED, BedStage.UNCOVERED}
    assert (found.indoors, found.storm, found.longest_d) == (True, False, 3)
    assert (found.word("fr"), found.word("sw")) == ("GRELE", "HAIL")


@pytest.mark.parametrize(
    ("row", "said"),
    [
        ({"advice": advice("covered")}, "words: is missing"),
        ({"words": {"en": ["HAIL"]}}, "advice: is missing"),
        (ROW | {"words": {"en": ["hail"]}}, "single words in capitals"),
        (ROW | {"words": {"en": ["ICE RAIN"]}}, "single words in capitals"),
        (ROW | {"words": {"xx": ["HAIL"]}}, "words.en"),
        (ROW | {"words": {"en": ["HAIL"], "xx": ["HAIL"]}}, "is no language"),
        (ROW | {"advice": advice("ripe")}, "some of covered, soon"),
        (
            ROW | {"advice": [{"stages": ["soon"], "what": "look"}]},
            "write rests_on, stages, what",
        ),
        (ROW | {"advice": [advice("soon")[0] | {"rests_on": ""}]}, "what that rests on"),
        (ROW | {"indoors": 1}, "true or false"),
        (ROW | {"longest_d": 90}, "days from 1 to 14"),
        (ROW | {"colour": "red"}, "colour: is not known"),
        (ROW | {"alert_words": ["Hail"]}, "small letters"),
        (ROW | {"alert_words": "hail"}, "a list of words"),
        (ROW, "RAIN: is a word of two dangers"),
    ],
)
def test_a_fault_is_named(row: dict[str, object], said: str) -> None:
    with pytest.raises(DangerError, match=said):
        read_dangers({"rain": ROW, "hail": row})


def test_a_danger_without_its_texts_is_named() -> None:
    with pytest.raises(DangerError, match="has no name"):
        read_dangers({"rain": ROW, "meteor": HAIL})
    with pytest.raises(DangerError, match="no text for beds that are soon"):
        read_dangers({"rain": ROW, "wind": HAIL | {"advice": advice("soon")}})


def test_rain_must_be_there() -> None:
    with pytest.raises(DangerError, match=r"\[rain\]: is missing"):
        read_dangers({})


def test_a_table_is_filled_before_it_is_read_and_once() -> None:
    table = DangerTable()
    with pytest.raises(AgronomyError, match="open_dangers"):
        _ = table.all
    table.fill(read_dangers({"rain": ROW}))
    with pytest.raises(AgronomyError, match="hail"):
        _ = table["hail"]
    with pytest.raises(AgronomyError, match="is filled"):
        table.fill(read_dangers({"rain": ROW | {"waits": True}}))


def test_an_officers_word_does_nothing_else() -> None:
    """It is no other word of an officer's, nor one by which a farmer stops or starts."""
    open_dangers()
    lexicons = open_lexicons()
    for row in DANGERS.all:
        for language, words in row.words.items():
            for word in words:
                assert row.code == RAIN or word not in VERBS
                wish = read_wish(word, lexicons, language)
                sure = wish.outcome is Outcome.UNDERSTOOD
                # A farmer's "hail" asks what to do; an officer's has a code behind it.
                assert not sure or wish.value in (Wish.RAIN, Wish.PROBLEM), word
                assert verb_of(f"{word.lower()} 123456 Kijani") == word
                assert without_code(f"{word} 123456 Kijani") == f"{word} ****** Kijani"


def test_every_language_has_a_word_for_every_danger() -> None:
    for row in DANGERS.all:
        assert row.code == RAIN or set(row.words) == set(LANGUAGES)


EVENTS = {
    "Frost warning": "cold",
    "Alerte grêle": "hail",
    "Onyo la upepo mkali": "wind",
    "Cheias": "flood",
    "Drought advisory": "dry",
    "Desert locust bulletin": "pests",
    "Heavy rain": "rain",
    "Thunderstorm with hail": "rain",  # two dangers: an officer chooses
    "Dust": "rain",  # none: as before
    "Windhoek region outlook": "rain",  # no word of its own
}


@pytest.mark.parametrize(("event", "danger"), EVENTS.items(), ids=EVENTS)
def test_an_alert_is_of_the_danger_that_its_event_names(event: str, danger: str) -> None:
    alert = read_alert(cap(info=info(event=event)))
    assert isinstance(alert, Alert)
    now = alert.key.sent
    threat = Threat(alert.infos, now, now, now)
    assert danger_of(threat) == danger
