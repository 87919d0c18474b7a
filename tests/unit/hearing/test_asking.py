"""Which plain question a text asks: by exact rules, in nine languages; no report is one."""

import pytest

from assistant.hearing.asking import Row, row
from assistant.hearing.topics import Topic
from assistant.people import LANGUAGES
from assistant.wiring.questions import open_questions

QUESTIONS = open_questions()

# The same ten questions, as a phone types them.
SAME = {
    "en": (
        "how much water",
        "when do i uncover",
        "what is a mat",
        "can i use urea",
        "no plastic",
    ),
    "sw": (
        "maji kiasi gani",
        "nifunue lini",
        "mkeka ni nini",
        "naweza kuweka urea",
        "sina plastiki",
    ),
    "fr": (
        "combien d'eau",
        "je découvre quand",
        "c'est quoi une natte",
        "je peux mettre urée",
        "pas de plastique",
    ),
    "pt": (
        "quanta agua",
        "quando destapo",
        "o que é esteira",
        "posso usar ureia",
        "nao tenho plastico",
    ),
    "fil": (
        "gaano karaming tubig",
        "kelan aalisin ang takip",
        "ano ang banig",
        "pwede ba ang urea",
        "wala akong plastik",
    ),
    "hi": ("kitna pani", "कब खोलना है", "chatai kya hai", "यूरिया दे सकते हैं", "panni nahi hai"),
    "bn": ("koto pani debo", "কবে খুলব", "mat ki", "ইউরিয়া দিব কি", "polithin nai"),
    "id": (
        "berapa banyak air",
        "kapan dibuka",
        "tikar itu apa",
        "boleh pakai urea",
        "tidak ada plastik",
    ),
    "vi": (
        "bao nhieu nuoc",
        "khi nào mở phủ",
        "mạ thảm là gì",
        "bón urê được không",
        "không có bạt",
    ),
}
ASKED = (Topic.WATER_NOW, Topic.UNCOVER_WHEN, Topic.WHAT_MAT, Topic.UREA, Topic.NO_SHEET)


@pytest.mark.parametrize("language", LANGUAGES)
def test_the_same_questions_are_heard_in_every_language(language: str) -> None:
    """With marks or without, in both scripts."""
    heard = [QUESTIONS.heard(text, [language]) for text in SAME[language]]
    assert [each.topic if each else None for each in heard] == list(ASKED)


@pytest.mark.parametrize(
    ("text", "topic"),
    [
        ("how much urea per mat", Topic.UREA),
        ("how long do i soak", Topic.SOAK),
        ("how deep is the water", Topic.WATER_DEEP),
        ("what medicine for the rats", Topic.MEDICINE),
        ("can my neighbour also join", Topic.NEIGHBOUR),
        ("where did you get my number", Topic.MY_NUMBER),
        ("why do we cover it for 5 days", Topic.WHY_COVER),
        ("when do i let the water out", Topic.DRAIN_WHEN),
    ],
)
def test_the_closer_question_is_the_one(text: str, topic: Topic) -> None:
    """Of two that fit, the one with more of its ideas in the text."""
    heard = QUESTIONS.heard(text, ["en"])
    assert heard is not None and heard.topic is topic and heard.asks


def test_a_size_of_land_makes_it_a_sum_aside() -> None:
    """The caller read it; no list can."""
    heard = QUESTIONS.heard("how much for two acres", ["en"], area=True)
    assert heard is not None and heard.topic is Topic.SUM_ASIDE
    assert QUESTIONS.heard("how much altogether", ["en"]) is None


def test_a_report_is_no_question_and_says_so() -> None:
    """What is only about a thing is told apart from what asks for it."""
    heard = QUESTIONS.heard("canal is dry today", ["en"])
    assert heard is not None and not heard.asks
    for text in ("done", "sowed it all", "my leaves are yellow", "", "?", "1", "thanks"):
        assert QUESTIONS.heard(text, ["en"]) is None


def test_a_long_story_is_for_a_person() -> None:
    """A question may be in it, and much else."""
    story = "how much water " + "and then my brother came with the cart " * 4
    assert QUESTIONS.heard(story, ["en"]) is None


def test_a_row_is_ideas_with_and_without() -> None:
    """As it is written in topics.toml."""
    assert row(Topic.FORECAST, "rain when -plant") == Row(
        Topic.FORECAST, frozenset({"rain", "when"}), frozenset({"plant"})
    )
