"""Counts, litres, and choices from a list."""

import pytest

from assistant.reading import (
    Outcome,
    Reason,
    is_of_time,
    read_choice,
    read_count,
    read_litres,
)

VILLAGES = [["Riverside"], ["Hilltop"], ["Hillside"], ["Low Bridge", "bridge"]]


@pytest.mark.parametrize(
    ("language", "text", "count"),
    [
        ("en", "3", 3),
        ("en", "3 leaves", 3),
        ("en", "about twelve", 12),
        ("en", "two dozen", 24),
        ("en", "none", 0),
        ("en", "1,500", 1500),
        ("sw", "majani matatu", 3),
        ("sw", "kumi na mbili", 12),
        ("fr", "quatre-vingts", 80),
        ("hi", "barah", 12),
        ("bn", "১২টা ট্রে", 12),
        ("id", "dua belas", 12),
        ("vi", "mười hai lá", 12),
        ("pt", "doze bandejas", 12),
        ("fil", "labindalawa", 12),
    ],
)
def test_a_count_is_understood(lexicons, language, text, count):
    """In digits and words, with what was counted."""
    reading = read_count(text, lexicons[language])
    assert (reading.outcome, reading.value) == (Outcome.UNDERSTOOD, count)


@pytest.mark.parametrize(
    ("text", "outcome", "reason"),
    [
        ("3-4", Outcome.AGAIN, Reason.TWO_VALUES),
        ("3 or 4", Outcome.AGAIN, Reason.TWO_VALUES),
        ("-3", Outcome.AGAIN, Reason.IMPOSSIBLE),
        ("1e3", Outcome.AGAIN, Reason.NOT_READ),
        ("not 3", Outcome.AGAIN, Reason.NEGATED),
        ("12345678901", Outcome.AGAIN, Reason.TOO_BIG),
        ("many", Outcome.AGAIN, Reason.NOT_READ),
        ("3?", Outcome.CONFIRM, Reason.ROUGH),
        ("more than 3", Outcome.CONFIRM, Reason.ROUGH),
        ("1.500", Outcome.CONFIRM, Reason.AMBIGUOUS),
        ("1 500", Outcome.CONFIRM, Reason.SLIP),
    ],
)
def test_an_unsure_count_is_asked(lexicons, text, outcome, reason):
    """Two numbers, a denial, a mark that may mean thousands."""
    reading = read_count(text, lexicons["en"])
    assert (reading.outcome, reading.reason) == (outcome, reason)


@pytest.mark.parametrize(
    ("text", "outcome", "litres"),
    [
        ("10", Outcome.UNDERSTOOD, 10),
        ("20l", Outcome.UNDERSTOOD, 20),
        ("ten litres", Outcome.UNDERSTOOD, 10),
        ("20 L pail", Outcome.UNDERSTOOD, 20),
        ("5 gallons", Outcome.CONFIRM, 18.9),  # US gallon 3.785411784 L, by definition
        ("100", Outcome.CONFIRM, 100),
        ("0.5", Outcome.CONFIRM, 0.5),
        ("0", Outcome.AGAIN, None),
        ("10-20", Outcome.AGAIN, None),
        ("big", Outcome.AGAIN, None),
    ],
)
def test_a_pail_is_read_in_litres(lexicons, text, outcome, litres):
    """Other measures and unlikely sizes are read back."""
    reading = read_litres(text, lexicons["en"])
    assert (reading.outcome, reading.value) == (outcome, litres)


@pytest.mark.parametrize(
    ("text", "place"),
    [
        ("1", 0),
        ("2.", 1),
        ("३", 2),
        ("four", 3),
        ("riverside", 0),
        ("Riversid", 0),
        ("I am from Hilltop", 1),
        ("lowbrigde", 3),
        ("bridge", 3),
    ],
)
def test_a_choice_is_read_by_digit_or_name(lexicons, text, place):
    """With typing mistakes, and inside a sentence."""
    reading = read_choice(text, VILLAGES, lexicons["en"])
    assert (reading.outcome, reading.value) == (Outcome.UNDERSTOOD, place)
    assert reading.words == VILLAGES[place][0]


def test_two_near_names_are_offered(lexicons):
    """A misspelt name that may be either is asked."""
    names = [["Riverside"], ["Ambale"], ["Ambala"]]
    reading = read_choice("Ambalu", names, lexicons["en"])
    assert (reading.outcome, reading.reason) == (Outcome.AGAIN, Reason.AMBIGUOUS)
    assert {option.value for option in reading.options} == {1, 2}


SIGNS = [["Spots on leaves"], ["No water"], ["Old leaves, tip"], ["Old leaves, base"]]


def test_a_name_begun_is_chosen_where_only_one_begins_so(lexicons):
    """People send the first word of a long name; a bare "no" is not "No water"."""
    none = [*SIGNS, ["None of these"]]
    assert read_choice("none", none, lexicons["en"]).value == 4
    assert read_choice("SPOTS", none, lexicons["en"]).value == 0
    assert read_choice("no", none, lexicons["en"]).outcome is Outcome.AGAIN
    either = read_choice("old leaves", none, lexicons["en"])
    assert {option.value for option in either.options} == {2, 3}


def test_a_name_begun_in_french(lexicons):
    """Beside a longer name that has the word further in."""
    names = [["Insectes"], ["Aucun de ces signes"]]
    assert read_choice("aucun", names, lexicons["fr"]).value == 1


@pytest.mark.parametrize("text", ["0", "5", "-1", "1 2", "x", "", "😀", "1.5", "999999"])
def test_what_is_not_on_the_list_is_asked_again(lexicons, text):
    """No choice is guessed."""
    assert read_choice(text, VILLAGES, lexicons["en"]).outcome is Outcome.AGAIN


@pytest.mark.parametrize(
    ("language", "text"),
    [("id", "2 blm"), ("id", "bibit2"), ("id", "ijo royo2"), ("en", "2 not yet")],
)
def test_a_number_that_counts_nothing_is_asked_again(lexicons, language, text):
    """A word said twice ("bibit2"), and "not yet" behind its digit."""
    assert read_count(text, lexicons[language]).outcome is Outcome.AGAIN


@pytest.mark.parametrize(
    ("language", "text", "of_time"),
    [
        ("id", "2 jam lagi", True),
        ("pt", "da 2 dias", True),
        ("en", "in 2 days", True),
        ("pt", "há 2 folhas", False),
        ("id", "2 daun", False),
        ("en", "3leaves", False),
        ("id", "dua setengah", False),
    ],
)
def test_a_number_of_days_or_hours_is_told_apart(lexicons, language, text, of_time):
    """So that "in two hours" is not kept as two leaves."""
    assert is_of_time(text, lexicons[language]) is of_time
