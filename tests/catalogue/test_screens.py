"""Texts on USSD screens: in every language each fits, and no word is lost."""

from functools import cache

from hypothesis import given
from hypothesis import strategies as st

from assistant.alphabet import plain
from assistant.wiring.review import catalogues, open_language
from assistant.wording import messages_talk as m
from assistant.wording.checks import Language, at_its_widest
from assistant.wording.render import render
from assistant.wording.screens import Hints, Limits, pages
from assistant.wording.texts import declared

# 3GPP TS 23.038: 160 octets of a USSD string hold 182 septets, or 80 units of UCS-2.
STANDARD = Limits(septets=182, ucs2=80)
NARROW = Limits(septets=160, ucs2=70)
LANGUAGES = catalogues()
WAYS = (m.MORE_HINT, m.BACK_HINT, m.MENU_HINT)
TEXTS = {
    text.place: text for text in declared() if not text.printed and text.message not in WAYS
}


@cache
def language(code: str) -> Language:
    """Opened when a test first wants it: whoever only collects the tests need not wait."""
    return open_language(code)


def _hints(opened: Language) -> Hints:
    return Hints(*(render(way(), opened.catalogue) for way in WAYS))


def _said(screens: tuple[str, ...], hints: Hints) -> str:
    """The letters of all screens without the lines that lead on and back."""
    ways = {hints.more, hints.back, hints.last}
    lines = [line for screen in screens for line in screen.split("\n")]
    return "".join("".join(line.split()) for line in lines if line not in ways)


@st.composite
def answers(draw: st.DrawFn) -> tuple[str, str]:
    """A language, and some of its texts at their widest, one after the other."""
    code = draw(st.sampled_from(LANGUAGES))
    places = draw(st.lists(st.sampled_from(sorted(TEXTS)), min_size=1, max_size=9))
    texts = [at_its_widest(TEXTS[place], language(code))[0] for place in places]
    return code, "\n".join(texts)


@given(answers(), st.sampled_from([STANDARD, NARROW]))
def test_every_screen_fits_and_no_letter_is_lost(
    answer: tuple[str, str], limits: Limits
) -> None:
    """Any texts of a language, of any number, at their widest."""
    code, text = answer
    hints = _hints(language(code))
    screens = pages(text, hints, limits)
    assert all(limits.hold(screen) for screen in screens)
    assert _said(screens, hints) == "".join(text.split())


words = st.builds(str.__mul__, st.sampled_from("aé\u0915\u1ec7😀"), st.integers(1, 200))


@given(st.lists(words, min_size=1, max_size=5).map(" ".join))
def test_what_people_typed_fits_too_however_long_its_words(typed: str) -> None:
    """A farmer's own words come back on a screen: a word of 100 letters must be cut."""
    hints = Hints("9 More", "0 Back", last="0 Menu")
    for screen in pages(plain(typed), hints, STANDARD):
        assert STANDARD.hold(screen)


def test_a_way_out_that_is_longer_than_the_way_on_fits_too() -> None:
    """With the one there was room on the first screen, with the other none."""
    hints = Hints("9 More", "0 Back", last="0 The menu")
    text = "\n".join(["x" * 57] * 3)
    assert STANDARD.hold(f"{text}\n{hints.more}") and not STANDARD.hold(f"{text}\n{hints.last}")
    screens = pages(text, hints, STANDARD)
    assert len(screens) == 2 and all(STANDARD.hold(screen) for screen in screens)


def test_each_screen_says_how_to_go_on_and_back() -> None:
    """All but the last lead on, all but the first lead back, the first of one leads out."""
    for code in LANGUAGES:
        hints = _hints(language(code))
        first, *rest = pages("\n".join(["a" * 60] * 9), hints, STANDARD)
        assert first.endswith(f"\n{hints.more}")
        assert all(screen.endswith(f"\n{hints.back}") for screen in rest)
        assert all(hints.more in screen for screen in rest[:-1])
        assert hints.more not in rest[-1]
