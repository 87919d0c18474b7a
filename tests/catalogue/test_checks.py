"""What the checks of translations refuse, each rule by a small text of its own."""

from gettext import GNUTranslations, NullTranslations, c2py

import pytest
from babel import Locale

from assistant.alphabet import Encoding
from assistant.wiring.catalogues import open_catalogue
from assistant.wiring.review import plural_faults, understands
from assistant.wording.checks import Language, allowed, faults, numbers, told_to_send
from assistant.wording.message import Message
from assistant.wording.render import Catalogue
from assistant.wording.texts import Declared
from tests.catalogue.update import PLURALS

SOAK = Message("Soak {seed} kg of seed for 24 h.")


def found(message: Message, *forms: str, code: str = "sw", place: str = "talk.X") -> str:
    """The faults of one translated text, in one line."""
    catalogue = Catalogue(code, NullTranslations())
    language = Language(catalogue, {message.text: forms}, understands(code))
    return "; ".join(fault.what for fault in faults((Declared(place, message),), language))


def test_a_right_translation_has_no_fault() -> None:
    """The rules let good work pass."""
    assert found(SOAK, "Loweka mbegu kilo {seed} kwa saa 24.") == ""


@pytest.mark.parametrize("forms", [(), ("",)])
def test_a_text_without_translation_is_a_fault(forms: tuple[str, ...]) -> None:
    """English in the middle of Swahili would be sent."""
    assert found(SOAK, *forms) == "is not translated"


@pytest.mark.parametrize(
    "form",
    ["Loweka mbegu kwa saa 24.", "Loweka kilo {sead} kwa saa 24.", "Loweka {seed {day}."],
)
def test_a_slot_that_is_lost_misspelt_or_new_is_a_fault(form: str) -> None:
    """Babel's own checkers look at percent formats and let this pass."""
    assert "has the slots" in found(SOAK, form)


def test_each_plural_form_must_have_the_slots() -> None:
    """A form for one may not say its number in a word: in French it serves 0 too."""
    message = Message("{n} seed.", plural="{n} seeds.")
    assert found(message, "mbegu {n}.", "mbegu {n}.") == ""
    assert "has the slots" in found(message, "mbegu moja.", "mbegu {n}.")


def test_a_changed_number_is_a_fault() -> None:
    """5 g of urea must not become 50."""
    assert "has the numbers" in found(Message("5 g a litre."), "gramu 50 kwa lita.")


def test_numbers_may_be_spelt_as_the_language_spells_them() -> None:
    """A decimal comma, a thousands mark or local digits say the same number."""
    assert numbers("1,000.5 m2", "en") == numbers("1.000,5 m2", "id") == ["1000.5"]
    assert numbers("২৪ ঘণ্টা", "bn") == numbers("24 h", "en")
    assert numbers("{area} 10-15", "en") == ["10", "15"]


def test_answers_keep_their_order() -> None:
    """The dialogue takes 1 as done whatever the text says."""
    message = Message("1 Done 2 Not yet")
    assert found(message, "1 Tayari 2 Bado") == ""
    assert "in this order" in found(message, "2 Bado 1 Tayari")


@pytest.mark.parametrize(
    ("english", "form", "fault"),
    [
        ("Send MENU.", "Tuma MENYU.", ""),
        ("Send MENU.", "Tuma menyu.", "no word of []"),
        ("Send MENU.", "Tuma LEO.", "no word of ['LEO'] is understood as 'menu'"),
        ("Send CHANGE DATE.", "Tuma BADILI TAREHE.", ""),
        ("Send DONE or NOT YET.", "Tuma TAYARI au BADO.", ""),
        ("Add TOMORROW.", "Ongeza KESHO.", ""),
        ("RAIN warns.", "RAIN huonya.", ""),
        ("RAIN warns.", "MVUA huonya.", "no word of ['MVUA'] is understood as 'RAIN'"),
        ("Do NOT sow.", "USISIE.", ""),
        ("Do not sow.", "USISIE.", "tells people to send ['USISIE']"),
        ("Send HARVEST.", "Tuma VUNA.", "say in SENT what that means"),
    ],
)
def test_a_word_to_send_must_be_understood_as_it_is_meant(
    english: str, form: str, fault: str
) -> None:
    """The reading room itself is asked, with the word list of the language."""
    what = found(Message(english), form)
    assert fault in what if fault else what == ""


def test_words_to_send_stand_in_quotes_where_a_script_has_no_capitals() -> None:
    """A farmer's own words in quotes are a slot and no word to send."""
    assert told_to_send('"मेन्यू" भेजें: "{words}"', quoting=True) == ("मेन्यू",)
    assert told_to_send("Send NOT YET {label}, MENU") == ("NOT YET", "MENU")


def test_a_letter_that_the_gsm_alphabet_lacks_is_a_fault_where_it_makes_texts_dearer() -> None:
    """One such letter more than doubles the price; Vietnamese cannot do without."""
    assert "GSM 7-bit lacks" in found(Message("At once."), "Tout de suite, bientôt.", code="fr")
    assert found(Message("At once."), "Ngay lập tức.", code="vi") == ""


@pytest.mark.parametrize(
    "form",
    ["Loweka  mbegu.", " Loweka.", "Loweka\nmbegu.", "“Loweka”.", "Loweka…", "Lo\u0301."],
)
def test_marks_that_cost_or_confuse_are_faults(form: str) -> None:
    """Curly quotes, dots in one sign, blanks and accents typed apart."""
    assert found(Message("Soak."), form) != ""


def test_english_left_standing_is_a_fault() -> None:
    """A copied text is no translation; one word may be the same in both."""
    assert "is the English" in found(Message("Look at the leaves."), "Look at the leaves.")
    assert found(Message("Plastic"), "Plastic") == ""


def test_a_text_over_its_room_at_its_widest_is_a_fault() -> None:
    """The slot's widest value counts, not the usual one."""
    message = Message("{village}.")
    assert found(message, "x" * 139 + "{village}.") == ""
    assert "segments" in found(message, "x" * 140 + "{village}.")
    assert found(message, "x" * 140 + "{village}.", place="plan.X") != ""


def test_a_slot_whose_widest_value_nobody_declared_is_a_fault() -> None:
    """Else its length could not be checked."""
    assert "declare their values" in found(Message("{colour}."), "{colour}.")


@pytest.mark.parametrize(("segments", "ucs2"), [(1, 3), (2, 5), (3, 7)])
def test_ucs2_has_room_for_as_many_characters_as_english(segments: int, ucs2: int) -> None:
    """160, 306 and 459 characters in segments of 67 (3GPP TS 23.040), rounded up."""
    assert allowed(segments, Encoding.UCS2) == ucs2
    assert allowed(segments, Encoding.GSM7) == segments


# --- plural rules ----------------------------------------------------------------------------


class _Plurals(GNUTranslations):
    def __init__(self, rule: str) -> None:
        super().__init__()
        self.plural = c2py(rule)


def _rule(header: str) -> str:
    return header.partition("plural=")[2].rstrip(";")


@pytest.mark.parametrize("code", PLURALS)
def test_the_plural_rules_of_new_catalogues_are_those_of_cldr(code: str) -> None:
    """Unicode CLDR's cardinal categories for 0 to 200, as Babel carries them."""
    assert list(plural_faults(Locale.parse(code), _Plurals(_rule(PLURALS[code])))) == []


@pytest.mark.parametrize(("code", "rule"), [("hi", "n != 1"), ("vi", "n != 1"), ("fr", "0")])
def test_a_plural_rule_that_differs_from_cldr_is_a_fault(code: str, rule: str) -> None:
    """The first is what Babel writes into a new Hindi catalogue: CLDR counts 0 with 1."""
    assert list(plural_faults(Locale.parse(code), _Plurals(rule))) != []


def test_swahili_opens_with_its_rule() -> None:
    """The rule stands in the file and gets through Babel's writer to Python's gettext."""
    translations = open_catalogue("sw").translations
    assert list(plural_faults(Locale.parse("sw"), translations)) == []
