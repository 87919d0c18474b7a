"""A choice in a person's own words: other letters, slips, and what is no choice."""

from collections.abc import Iterator
from dataclasses import replace
from datetime import timedelta

import pytest

from assistant.agronomy.calendar import TaskCode
from assistant.dialogue import conversations as talks
from assistant.dialogue.engine import begin
from assistant.dialogue.readers import hear
from assistant.people import LANGUAGES
from assistant.reading import read_choice
from assistant.wiring.catalogues import open_catalogue
from assistant.wiring.lexicons import open_lexicons
from assistant.wording import messages_result as r
from assistant.wording import messages_seed as s
from assistant.wording import messages_talk as m
from assistant.wording import messages_tasks as t
from assistant.wording.message import Message
from tests.talk import TODAY, Phone, item, nursery
from tests.valley import like, numbered

LEXICONS = open_lexicons()

Codes = tuple[tuple[str, Message], ...]

# The choices that the daily texts offer; those of the questions stand in their tables.
PROMPTS: dict[str, Codes] = {
    "warning": (("covered", m.W_COVERED), ("help", m.W_HELP)),
    "colour": (("green", t.GREEN), ("yellow", t.YELLOW)),
    "seed test": (("begun", s.BEGUN), ("explain", s.HOW)),
    "result": (("left", r.MATS_LEFT), ("enough", r.JUST_ENOUGH), ("short", r.TOO_FEW)),
}
QUESTIONS: dict[str, Codes] = {
    f"{table.name}.{question.step}": tuple((c.code, c.label) for c in question.choices)
    for table in talks.TABLES.values()
    for question in table.questions.values()
    if question.choices
}
LISTS = PROMPTS | QUESTIONS


def names_of(codes: Codes, language: str) -> list[list[str]]:
    """The label of each choice in a language, and what else its word list says for it."""
    gettext = open_catalogue(language).translations.gettext
    also = LEXICONS[language].choices
    return [[gettext(label.text), *also.get(code, ())] for code, label in codes]


@pytest.mark.parametrize("language", LANGUAGES)
def test_the_word_list_names_only_choices_that_there_are(language: str) -> None:
    """A code that no list offers would never be looked for."""
    codes = {code for choices in LISTS.values() for code, _ in choices}
    assert set(LEXICONS[language].choices) - {"go_on"} <= codes  # said to "shall I stop?"
    assert LEXICONS[language].choices["go_on"]


def misread(codes: Codes, language: str) -> Iterator[str]:
    """Names that choose nothing, or another choice of their list."""
    names = names_of(codes, language)
    for place, own in enumerate(names):
        for name in own:
            if read_choice(name, names, LEXICONS[language]).value != place:
                yield f"{name} for {codes[place][0]}"


@pytest.mark.parametrize("language", LANGUAGES)
def test_every_name_of_a_choice_takes_it(language: str) -> None:
    """And no other of the same list."""
    wrong = [(place, each) for place in LISTS for each in misread(LISTS[place], language)]
    assert wrong == []


# What farmers type, from the project's own seasons and drafts: common practice, no source.
REPLIES = (
    ("hi", "warning", "dhak diya hai ji", "covered"),
    ("hi", "warning", "madad bhejo", "help"),
    ("hi", "warning", "abhi dhak nahi paya", None),
    ("hi", "colour", "patte peele ho rahe hain", "yellow"),
    ("hi", "colour", "sab hara hai", "green"),
    ("hi", "colour", "pile nahi hai", None),
    ("hi", "result", "chatai kam pad gayi", "short"),
    ("bn", "warning", "dheke diyechi", "covered"),
    ("bn", "warning", "এখনও ঢাকি নাই", None),
    ("bn", "colour", "pata holud hoye gese", "yellow"),
    ("bn", "colour", "সবুজ আছে", "green"),
    ("id", "warning", "sdh ditutup pak", "covered"),
    ("id", "warning", "blm ditutup", None),
    ("id", "colour", "daunnya kuning", "yellow"),
    ("id", "result", "pas pak", "enough"),
    ("vi", "warning", "che roi", "covered"),
    ("vi", "warning", "chua che", None),
    ("vi", "colour", "la bi vang", "yellow"),
    ("vi", "result", "du", None),
    ("en", "warning", "not covered", None),
    ("sw", "warning", "nimeshafunika", "covered"),
    ("sw", "warning", "bado sijafunika", None),
    ("sw", "result", "mikeka imebaki", "left"),
    ("fr", "warning", "jé couvert", "covered"),
    ("fr", "warning", "pas encore couvert", None),
    ("fr", "colour", "c un peu jaune", "yellow"),
    ("pt", "warning", "ja cobri tudo", "covered"),
    ("pt", "warning", "ainda nao cobri", None),
    ("pt", "result", "nao chegou", "short"),
    ("fil", "warning", "natakpan na po", "covered"),
    ("fil", "warning", "di pa natakpan", None),
    ("fil", "result", "kinulang po", "short"),
)


@pytest.mark.parametrize(("language", "place", "reply", "code"), REPLIES)
def test_a_choice_in_a_farmers_words(
    language: str, place: str, reply: str, code: str | None
) -> None:
    """Other letters, no marks, abbreviations; what is denied is not chosen."""
    choices = LISTS[place]
    read = read_choice(reply, names_of(choices, language), LEXICONS[language]).value
    assert (None if read is None else choices[read][0]) == code


YES_NO = numbered(m.YES, m.NO)
WARNED = like(m.WARNING_STANDS, *numbered(m.W_COVERED, m.W_HELP))


@pytest.mark.parametrize(
    ("reply", "hears"),
    [
        ("done", like(m.WARNING_COVERED)),
        ("I need help", like(m.WARNING_HELP)),
        ("not yet", WARNED),
        ("not covered", WARNED),
        ("no", WARNED),
        ("ok", WARNED),
    ],
)
def test_a_reply_to_a_warning_where_nothing_else_is_open(reply: str, hears: object) -> None:
    """ "Done" is covered; what may mean either brings the two answers once more."""
    assert Phone.enrolled(nursery()).warned().hears(reply) == [hears]


@pytest.mark.parametrize(
    ("reply", "hears"),
    [
        ("done", WARNED),
        ("I have covered", like(m.WARNING_COVERED)),
        ("soaked", like(m.DONE_NOTED)),
    ],
)
def test_done_to_a_warning_beside_an_open_task(reply: str, hears: object) -> None:
    """A bare "done" may be either, so it is asked; what was done tells them apart."""
    soaks_today = nursery(sow=TODAY + timedelta(days=2))
    phone = Phone.enrolled(soaks_today).asked(item(TaskCode.SOAK)).warned()
    assert phone.hears(reply) == [hears]


@pytest.mark.parametrize("reply", ["rats", "Birds, rats, insects.", "rats eat them"])
def test_what_is_wrong_is_told_in_words(reply: str) -> None:
    """It is a wish too, for the list that stands there already."""
    phone = Phone.enrolled(nursery())
    phone.says("PROBLEM")
    assert phone.hears(reply) == [like(m.ANIMALS_ADVICE)]


def test_no_to_a_summary_asks_what_to_change() -> None:
    """It has no digit of its own there."""
    phone = Phone.new()
    for text in ("hi", "1", "1", "1", "0.4 ha", "85", "10", "10 June"):
        phone.says(text)
    (asked,) = phone.hears("no")
    assert asked.startswith(m.WHAT_TO_CHANGE.text)


def test_a_misspelt_yes_to_a_summary_is_asked_back() -> None:
    """It is not guessed, and not refused."""
    phone = Phone.new()
    for text in ("hi", "1", "1", "1", "0.4 ha", "85", "10", "10 June"):
        phone.says(text)
    assert phone.hears("yse") == [like(m.CONFIRM_READING(reading="Yes"), *YES_NO)]


def test_a_unit_without_a_settled_size_is_told_so() -> None:
    """A bigha where its size is not known is no number that could not be read."""
    phone = Phone.new()
    for text in ("hi", "1", "1", "1"):
        phone.says(text)
    assert phone.hears("2 bigha") == [like(m.AGAIN_REGION_UNIT)]


def test_a_language_is_named_in_any_letters() -> None:
    """Its own name on the list may be in letters that the phone cannot type."""
    phone = Phone.new()
    known = replace(phone.known, languages=("en", "hi"))
    question = talks.SIGNUP.questions["language"]
    heard = hear("hindi", question, begin(talks.SIGNUP), known)
    assert (heard.sure, heard.value) == (True, "hi")
