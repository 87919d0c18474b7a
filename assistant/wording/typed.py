"""Digits that may be typed into a text for phones; all other numbers are slots.

A number of the trade that is typed says the old one, in nine languages, when its constant is
mended. So a typed digit is a key to press, an example of what to send, a measure that names
itself, or it stands here with the reason.
"""

import re
from collections.abc import Mapping

from assistant.wording.message import Message
from assistant.wording.texts import Declared

_ALLOWED = (
    re.compile(r"\{\w+\}"),
    re.compile(r"(?<![\w.,])[0-9] (?=[A-Z])"),  # the keys of choices: '1 Done 2 Not yet'
    re.compile(r"\b[A-Z]{4,}(?:, \d)+"),  # words to send with keys: 'MENU, 9, 2'
    re.compile(
        r"(?:e\.g\. |like ).*?(?=(?<!e\.g)\.(?: |$)|, or a|, not|$)"
    ),  # examples to send
    re.compile(r"\b(?:of )?(?:each )?100(?: seeds)?\b"),  # a share in words, and a test's seeds
    re.compile(r"\b1000 grains\b"),  # the trade weighs so many
    re.compile(r"\b1 (?:m2|cm|litre)\b(?= is | with | bottles)"),  # a measure explained
)
_DIGIT = re.compile(r"(?<![^\W_])\d+")

# What a reader takes, and words of a test, stand where the reader is written down.
BECAUSE: Mapping[str, str] = {
    "talk.HELP": "0 is a key",
    "talk.AGAIN_GERMINATION": "what a count out of a hundred can be",
    "talk.AGAIN_YES_NO": "1 and 2 are keys",
    "talk.ABSURD_AREA": "what the reader of areas takes",
    "talk.HELP_AREA": "a rope to measure with, any length would do",
    "talk.HELP_PAIL": "1 is a key",
    "tasks.UNDER_WAY": "1 is a key",
    "talk.RAIN_ADVICE_EARLY": "day 0 is the day of sowing",
    "practice.RAIN_EARLY": "day 0 is the day of sowing",
    "aid.EYES": "fixed with its source; a test holds it to the constant",
    "seed.TEST_SEEDS": "the first of three texts",
    "seed.TEST_CLOTH": "the second of three texts; a hundred seeds in rows",
    "seed.TEST_COUNT": "the third of three texts",
    "care.AGAIN_CAN": "what the reader of litres takes",
    "care.ASK_SHOOTS": "one number at least",
    "care.AGAIN_SHOOTS": "0 where there is none",
    "planting.ASK_SEEDLINGS": "what the reader takes, by hand and by machine",
    "planting.ASK_GAPS": "what the reader takes",
    "officer.CODE_LOCKED": "how long the code is that a lock is passed with",
    "officer.CODE_WAY_BACK": "how long that code lasts; tests hold it to way_back.LASTS",
    "officer.PAGE_CODE": "how long that code lasts",
    "privacy.ERASE_SURE": "held to privacy.ASKED_LASTS by a test",
    "officer.OFFICER_HELP": "examples to send",
    "officer.ASK_WARN": "day 0 is the day of sowing",
    "officer.NOBODY_TO_WARN": "day 0 is the day of sowing",
    "tell.TELL_HOW": "the end of a phone number",
}


def typed(text: Declared) -> list[str]:
    """The digits that a text for phones has typed in and may not have."""
    if text.printed or text.place in BECAUSE:
        return []
    return [digit for form in _forms(text.message) for digit in _typed(form)]


def has_digits(message: Message) -> bool:
    """Whether a text would be refused without a reason."""
    return any(_typed(form) for form in _forms(message))


def _forms(message: Message) -> tuple[str, ...]:
    return (message.text,) if message.plural is None else (message.text, message.plural)


def _typed(form: str) -> list[str]:
    for rule in _ALLOWED:
        form = rule.sub(" ", form)
    return _DIGIT.findall(form)
