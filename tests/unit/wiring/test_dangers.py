"""The table of dangers: every fault of a file is named with what to write."""

import pytest

from assistant.agronomy.dangers.rows import BedStage, DangerTable
from assistant.agronomy.errors import AgronomyError
from assistant.wiring.dangers import DangerError, read_dangers

ROW = {"words": {"en": ["RAIN"]}, "stages": ["covered"]}
HAIL = {"words": {"en": ["HAIL"], "fr": ["GRELE"]}, "stages": ["covered", "uncovered"]}


def test_rain_comes_first_and_what_is_left_out_is_plain() -> None:
    rain, found = read_dangers({"hail": HAIL | {"indoors": True}, "rain": ROW})
    assert rain.code == "rain"
    assert found.stages == {BedStage.COVERED, BedStage.UNCOVERED}
    assert (found.indoors, found.storm, found.longest_d) == (True, False, 3)
    assert (found.word("fr"), found.word("sw")) == ("GRELE", "HAIL")


@pytest.mark.parametrize(
    ("row", "said"),
    [
        ({"stages": ["covered"]}, "words: is missing"),
        ({"words": {"en": ["HAIL"]}}, "stages: is missing"),
        (ROW | {"words": {"en": ["hail"]}}, "single words in capitals"),
        (ROW | {"words": {"en": ["ICE RAIN"]}}, "single words in capitals"),
        (ROW | {"words": {"xx": ["HAIL"]}}, "words.en"),
        (ROW | {"words": {"en": ["HAIL"], "xx": ["HAIL"]}}, "is no language"),
        (ROW | {"stages": ["ripe"]}, "some of covered, soon"),
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
        read_dangers({"rain": ROW, "wind": HAIL | {"stages": ["soon"]}})


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
