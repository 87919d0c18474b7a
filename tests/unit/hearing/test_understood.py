"""A text is read once: by rule in any language, by weight where no rule speaks."""

import pytest

from assistant.acts import Act
from assistant.hearing import Certainty, Kind, Understood, understand
from assistant.hearing.kinds import HARMS
from assistant.people import LANGUAGES
from assistant.wiring.hearing import open_ears

EARS = open_ears()


def heard(text: str, language: str = "en") -> Understood:
    """A text as the ears of this project hear it."""
    return understand(text, EARS, language)


@pytest.mark.parametrize(
    ("language", "text", "kind"),
    [
        ("en", "a snake bit my son", Kind.SNAKE),
        ("sw", "radi imempiga kaka yangu", Kind.LIGHTNING),
        ("fr", "mon fils est tombe dans le puits", Kind.DROWNING),
        ("pt", "entrou ureia no olho do meu filho", Kind.EYES),
        ("hi", "मेरे बेटे को सांप ने काट लिया", Kind.SNAKE),
    ],
)
def test_a_rule_names_the_kind(language: str, text: str, kind: Kind) -> None:
    assert heard(text, language).kind(Act.HARM) is kind
    assert heard(text, language).certainty(Act.HARM) is Certainty.SAID


@pytest.mark.parametrize("language", LANGUAGES)
def test_a_cry_in_another_language_than_the_enrolled_is_heard(language: str) -> None:
    """Nobody cries in the language of a form."""
    assert heard("a snake bit my son", language).kind(Act.HARM) in HARMS
    assert heard("mtoto amekunywa sumu", language).kind(Act.HARM) in HARMS


def test_what_is_denied_is_not_heard() -> None:
    calm = heard("nobody is hurt")
    assert calm.kind(Act.HARM) is None
    assert calm.certainty(Act.HARM) is None


def test_wanting_to_die_is_no_refusal() -> None:
    """The words "I do not want ... any more" stand in both."""
    dark = heard("i dont want to live anymore")
    assert dark.certainty(Act.DIE) is Certainty.SAID
    assert dark.certainty(Act.REFUSE) is not Certainty.SAID


def test_under_a_warning_less_is_needed_to_ask() -> None:
    """A threshold may only fall there, for any text."""
    for text in ("the water is high", "help us please", "all is gone", "the bed is weak"):
        calm, alert = heard(text).certainty(Act.DANGER), heard(text).certainty(Act.DANGER, True)
        assert alert is not None or calm is None


@pytest.mark.parametrize("text", ["", "1", "???", "😀", "\u0301", "a" * 3000])
def test_nothing_is_heard_in_nothing_and_nothing_raises(text: str) -> None:
    assert heard(text).said == ()
