"""What can be wrong with a translation: pure rules, used by the tests, CI and the review sheet.

Budgets are declared in English segments of GSM 7-bit. A language that needs UCS-2 may use as
many characters as English, so a budget of 1 segment (160 characters) is 3 of UCS-2 (3 x 67),
and one of 2 (306) is 5.
"""

import re
import unicodedata
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass

from babel.numbers import NumberFormatError, parse_decimal

from assistant.alphabet import Encoding, SegmentCost, cost, plain, septets
from assistant.alphabet.counting import ALONE, JOINED
from assistant.wording import messages_privacy as privacy
from assistant.wording import messages_talk as m
from assistant.wording.message import slots_of
from assistant.wording.render import Catalogue
from assistant.wording.texts import Declared
from assistant.wording.typed import typed
from assistant.wording.widest import undeclared, widest

Table = Mapping[str, tuple[str, ...]]
"""The English text -> its translation, or the translation's plural forms."""

Understands = Callable[[str], frozenset[str]]
"""What a word that people are told to send means to the readers: codes as in `SENT`."""

# Written with letters that the GSM alphabet lacks; the others are held to that alphabet.
UCS2_LANGUAGES = frozenset({"bn", "hi", "pt", "vi"})
# Their scripts have no capitals: words to send stand in double quotes there.
QUOTING_LANGUAGES = frozenset({"bn", "hi"})
# "10 June" is "10 tháng 6" there; the texts give no other month as an example.
NUMBERS_ITS_MONTHS = frozenset({"vi"})
# Short, and never joined to others: its name is spelt as it should be.
NAMES_ITS_LANGUAGE = (m.LANGUAGE_SET,)

STRESS = ""  # in capitals for weight, or an example
# The words in capitals of the English texts, and what they mean when they are sent.
SENT: Mapping[str, str] = {
    "ADD": "ADD",
    "CHANGE DATE": "change_date",
    "CLEAR": "CLEAR",
    "CLOSE": "close",
    "COUNT": "COUNT",
    "TEMP": "TEMP",
    "DELETE": "delete",
    "DONE": "done",
    "EVERY DAY": "every_day",
    "LANGUAGE": "language",
    "MENU": "menu",
    "NEW": "new",
    "NEXT": "next",
    "UNDER": STRESS,
    "ABOVE": STRESS,
    "NO": "no",
    "NOT": STRESS,
    "NOT YET": "not_yet",
    "OFFICER": "officer",
    "PROBLEM": "problem",
    "QUANTITIES": "quantities",
    "RAIN": "RAIN",
    "RAIN WARNING": STRESS,
    "WARNING": STRESS,
    "PIN": STRESS,
    "RIVER": STRESS,
    "SMS": STRESS,
    "START": "start",
    "STOP": "stop",
    "TIN": "tin",
    "TODAY": "today",
    "TOMORROW": "tomorrow",
    "WHO": "WHO",
    "WORK DAYS": "work_days",
    "TELL": "TELL",
    "SEEN": "SEEN",
}
_EXTRA_WORDS = {
    "new": m.WORD_NEW,
    "close": m.WORD_CLOSE,
    "delete": privacy.WORD_DELETE,
    "tin": m.WORD_TIN,
}

_SLOT = re.compile(r"\{\w*\}")
_QUOTED = re.compile('"([^"]*)"')
_LETTERS = re.compile(r"[^\W\d_]+")
_NUMBER = re.compile(r"(?<![^\W_])\d+(?:[.,\u00a0\u202f]\d+)*")
_CHOICE = re.compile(r"(?<![\w.,])([1-9]) (?=[A-Z])")
_ENDS = re.compile(r"[.!?\u0964:]\s*$")
SAME_WORDS_ALLOWED = 2  # "Menu" and "{amount} kg" may be the same in two languages


@dataclass(frozen=True)
class TextFault:
    """One thing to mend, at a text's place ("talk.ASK_AREA")."""

    place: str
    what: str

    def __str__(self) -> str:
        return f"{self.place}: {self.what}"


@dataclass(frozen=True)
class Language:
    """A language under review: its catalogue, its table, and its reader of words."""

    catalogue: Catalogue
    table: Table
    understands: Understands

    @property
    def code(self) -> str:
        """The language, as in "sw"."""
        return self.catalogue.language

    def forms(self, text: Declared) -> tuple[str, ...]:
        """The translated forms of a text; English stands for itself."""
        if self.code == "en":
            message = text.message
            return (message.text,) if message.plural is None else (message.text, message.plural)
        return self.table.get(text.message.text, ())


def form_for(text: Declared, catalogue: Catalogue, count: int) -> str:
    """The form of a text, untouched slots and all, for a count of its slot n."""
    message = text.message
    if message.plural is None:
        return catalogue.translations.gettext(message.text)
    return catalogue.translations.ngettext(message.text, message.plural, count)


def faults(texts: Sequence[Declared], language: Language) -> tuple[TextFault, ...]:
    """Everything that is wrong with a language's texts, in their order."""
    return tuple(
        TextFault(text.place, what) for text in texts for what in _faults_of(text, language)
    )


def _faults_of(text: Declared, language: Language) -> Iterable[str]:
    forms = language.forms(text)
    if not forms or not all(forms):
        return ["is not translated"]
    found = [what for form in forms for what in (*_slots(text, form), *_plain(form))]
    if found:
        return found
    return [
        *_typed_in(text, language),
        *(
            what
            for form in forms
            for rule in _FORM_RULES
            for what in rule(text, form, language)
        ),
        *_words_to_send(text, language),
        *_budget(text, language),
    ]


# --- slots, marks, letters -------------------------------------------------------------------


def _slots(text: Declared, form: str) -> Iterable[str]:
    if slots_of(form) != text.slots:
        yield f"has the slots {sorted(slots_of(form))}, not {sorted(text.slots)}"
    if re.search(r"[{}]", re.sub(r"\{\w+\}", "", form)):
        yield "has a brace that is no slot"


def _plain(form: str) -> Iterable[str]:
    if plain(form) != form or unicodedata.normalize("NFC", form) != form:
        yield "has typographers' marks (write ' \" - ...) or an accent apart from its letter"
    if form != form.strip() or "  " in form or "\n" in form:
        yield "has blanks at an end, two together, or a line break"


def _alphabet(text: Declared, form: str, language: Language) -> Iterable[str]:
    """One such letter in a part of a long text makes all of it dear."""
    bare = _SLOT.sub("", form)
    free = language.code in UCS2_LANGUAGES or text.printed
    free = free or text.message in NAMES_ITS_LANGUAGE
    if not free and septets(bare) is None:
        odd = sorted({ch for ch in bare if septets(ch) is None})
        yield f"has {' '.join(odd)}, which GSM 7-bit lacks: choose other words"


def _copied(text: Declared, form: str, language: Language) -> Iterable[str]:
    words = _LETTERS.findall(_SLOT.sub("", form))
    if language.code != "en" and form == text.message.text and len(words) > SAME_WORDS_ALLOWED:
        yield "is the English"


def _sentence(text: Declared, form: str, language: Language) -> Iterable[str]:
    if bool(_ENDS.search(form)) != bool(_ENDS.search(text.message.text)):
        yield "ends as a sentence where the English does not, or the other way about"


# --- numbers ---------------------------------------------------------------------------------


def numbers(text: str, locale: str) -> list[str]:
    """The numbers of a text in one spelling, in order; those in words like m2 are left out."""
    found = _NUMBER.findall(_SLOT.sub(" ", text))
    return [_canonical(number, locale) for number in found]


def _canonical(number: str, locale: str) -> str:
    ascii_digits = "".join(str(unicodedata.decimal(ch, ch)) for ch in number)
    try:
        return f"{parse_decimal(ascii_digits, locale=locale, strict=True).normalize():f}"
    except NumberFormatError:
        return ascii_digits


def _numbers(text: Declared, form: str, language: Language) -> Iterable[str]:
    english = numbers(text.message.text, "en")
    if language.code in NUMBERS_ITS_MONTHS:
        english += ["6"] * text.message.text.count("June")
    told = numbers(form, language.code)
    if sorted(told) != sorted(english):
        yield f"has the numbers {told}, the English {english}"
    choices = _CHOICE.findall(text.message.text)
    if choices and told[-len(choices) :] != choices:
        yield f"must end with the answers {' '.join(choices)} in this order"


def _typed_in(text: Declared, language: Language) -> Iterable[str]:
    """Translations have the digits of the English, see `_numbers`."""
    found = typed(text) if language.code == "en" else []
    if found:
        yield f"has {found} typed in: fill a slot (figures.py), or say why not in typed.py"


_FORM_RULES: tuple[Callable[[Declared, str, Language], Iterable[str]], ...] = (
    _alphabet,
    _copied,
    _sentence,
    _numbers,
)


# --- words to send ---------------------------------------------------------------------------


def told_to_send(form: str, quoting: bool = False) -> tuple[str, ...]:
    """The words that a text tells people to send: in capitals, or in quotes."""
    bare = _SLOT.sub(" | ", form)
    if quoting:
        phrases = [phrase for phrase in _QUOTED.findall(bare) if phrase.strip(" |")]
        return tuple(phrases)
    return _capitals(bare)


def _capitals(text: str) -> tuple[str, ...]:
    runs: list[str] = []
    end = -1
    for found in _LETTERS.finditer(text):
        word = found[0]
        if len(word) < 2 or not word.isupper():
            continue
        if runs and text[end : found.start()] == " ":
            runs[-1] += " " + word
        else:
            runs.append(word)
        end = found.end()
    return tuple(runs)


def _words_to_send(text: Declared, language: Language) -> Iterable[str]:
    if text.printed:
        return []
    wanted = told_to_send(text.message.text)
    unknown = [phrase for phrase in wanted if phrase not in SENT]
    if unknown:
        return [f"tells people to send {unknown}: say in SENT what that means"]
    if text.message in _EXTRA_WORDS.values():
        harmless = {"start", "stop"} if text.message is privacy.WORD_DELETE else {"start"}
        others = language.understands(language.forms(text)[0]) - harmless
        return [f"is understood as {sorted(others)} too"] if others else []
    quoting = language.code in QUOTING_LANGUAGES
    phrases = list(told_to_send(language.forms(text)[0], quoting))
    found = []
    for meaning in (SENT[phrase] for phrase in wanted):
        if meaning != STRESS:
            found += _take(meaning, phrases, language)
    stressed = sum(SENT[phrase] == STRESS for phrase in wanted)
    if len(phrases) > stressed:
        found.append(f"tells people to send {phrases}, which the English does not")
    return found


def _take(meaning: str, phrases: list[str], language: Language) -> list[str]:
    """Removes the phrase that means this; the fault if none does."""
    for phrase in phrases:
        if meaning in _meanings(phrase, language):
            phrases.remove(phrase)
            return []
    return [f"no word of {phrases} is understood as {meaning!r}"]


def _meanings(phrase: str, language: Language) -> frozenset[str]:
    own = {
        code
        for code, message in _EXTRA_WORDS.items()
        if phrase.casefold() == language.catalogue.translations.gettext(message.text).casefold()
    }
    return language.understands(phrase) | own


# --- segments --------------------------------------------------------------------------------


def allowed(segments: int, encoding: Encoding) -> int:
    """The segments that a text may take whose budget in English is this many."""
    if encoding is Encoding.GSM7:
        return segments
    gsm = Encoding.GSM7
    characters = ALONE[gsm] if segments == 1 else segments * JOINED[gsm]
    return -(-characters // JOINED[Encoding.UCS2])


def at_its_widest(text: Declared, language: Language) -> tuple[str, ...]:
    """Every form of a text with its widest slots."""
    filled = {slot: widest(text, slot, language.catalogue) for slot in text.slots}
    return tuple(plain(form.format_map(filled)) for form in language.forms(text))


def widest_cost(text: Declared, language: Language) -> SegmentCost:
    """What the text takes at most."""
    return max(map(cost, at_its_widest(text, language)), key=lambda each: each.segments)


def budget(text: Declared, language: Language) -> int:
    """The segments that the text may take in this language."""
    wide = language.code in UCS2_LANGUAGES
    return allowed(text.message.segments, Encoding.UCS2 if wide else Encoding.GSM7)


def _budget(text: Declared, language: Language) -> Iterable[str]:
    if undeclared(text):
        return [f"has the slots {undeclared(text)}: declare their values in widest.py"]
    if text.printed:
        return []
    price, room = widest_cost(text, language), budget(text, language)
    if price.segments <= room:
        return []
    over = price.units - room * JOINED[price.encoding]
    return [
        f"takes {price.segments} segments of {price.encoding} at its widest, not {room}: "
        f"{over} too many"
    ]
