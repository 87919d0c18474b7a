"""Answers cut into screens that fit, with a way on and a way back."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from assistant.wording.screens import Hints, Limits, pages

HINTS = Hints("9 More", "0 Back", "0 Menu")
SCREEN = Limits()
STEADY = settings(derandomize=True, deadline=None, max_examples=300, database=None)


def test_a_short_answer_is_one_screen_with_the_last_hint() -> None:
    """No way on, since there is none."""
    assert pages("Sown.", HINTS, SCREEN) == ("Sown.\n0 Menu",)


def test_an_answer_that_just_fits_stays_on_one_screen() -> None:
    """182 septets with its hint (3GPP TS 23.038: 160 octets of 7 bits)."""
    text = "x" * (182 - len("\n0 Menu"))
    assert pages(text, HINTS, SCREEN) == (text + "\n0 Menu",)
    assert len(pages(text + "x", HINTS, SCREEN)) == 2


def test_lines_stay_whole_and_every_page_shows_its_ways() -> None:
    """More on all but the last, back on all but the first."""
    lines = [f"{place} {'choice ' * 6}".strip() for place in range(1, 8)]
    found = pages("\n".join(lines), HINTS, SCREEN)
    assert [page.splitlines()[-1] for page in found[:1]] == ["9 More"]
    assert all(page.splitlines()[-2:] == ["9 More", "0 Back"] for page in found[1:-1])
    assert found[-1].splitlines()[-1] == "0 Back"
    kept = [line for page in found for line in page.splitlines() if "choice" in line]
    assert kept == lines


def test_a_screen_of_another_alphabet_holds_eighty_characters() -> None:
    """UCS-2 takes two octets for each."""
    found = pages("धान " * 60, HINTS, SCREEN)
    assert len(found) > 2
    assert max(map(len, found)) <= 80


plain_text = st.text(
    st.sampled_from("abcdefgh ABC 0123456789.,:;!?\n€[]{}~^|\\éèñ") | st.characters(),
    max_size=700,
)


@STEADY
@given(
    text=plain_text,
    septets=st.integers(40, 200),
    ucs2=st.integers(40, 90),
)
def test_every_page_fits_and_no_character_is_lost(text: str, septets: int, ucs2: int) -> None:
    """Whatever is typed: long words, wide letters, empty lines."""
    limits = Limits(septets, ucs2)
    found = pages(text, HINTS, limits)
    assert all(limits.hold(page) for page in found)
    shown = "".join(found)
    for hint in (HINTS.more, HINTS.back, HINTS.last):
        shown = shown.replace(f"\n{hint}", "")
    wanted = text
    for hint in (HINTS.more, HINTS.back, HINTS.last):
        wanted = wanted.replace(f"\n{hint}", "")
    assert "".join(shown.split()) == "".join(wanted.split())


@pytest.mark.parametrize("word", ["x" * 2000, "🌾" * 300, "ध" * 500])
def test_a_word_longer_than_a_screen_is_cut(word: str) -> None:
    """A farmer may have typed no blanks."""
    found = pages(word, HINTS, SCREEN)
    assert all(SCREEN.hold(page) for page in found)
