"""Germination. Expected values are arithmetic on the reply: 41 of 50 is 82 %."""

import pytest

from assistant.reading import Outcome, Reason, read_germination


@pytest.mark.parametrize(
    ("language", "text", "percent"),
    [
        ("en", "85", 85),
        ("en", "85%", 85),
        ("en", "85.5 %", 85.5),
        ("en", "eighty-five percent", 85),
        ("en", "41 of 50", 82),
        ("en", "8 out of 10", 80),
        ("en", "four out of five", 80),
        ("en", "9 in 10", 90),
        ("en", "41/50", 82),
        ("en", "41/50, 44/50", 85),
        ("en", "of 50 seeds 41 sprouted", 82),
        ("en", "81 79 85 80", 81.25),
        ("en", "81,79,85,80", 81.25),
        ("en", "4 lots 81 79 85 80", 81.25),
        ("en", "lot 1: 85 lot 2: 90", 87.5),
        ("en", "half", 50),
        ("en", "85 after 7 days", 85),
        ("en", "85 sprouted", 85),
        ("sw", "asilimia themanini na tano", 85),
        ("sw", "kati ya mbegu 50, 41 zimeota", 82),
        ("fr", "quatre-vingt-cinq pour cent", 85),
        ("fr", "82,5 %", 82.5),
        ("hi", "50 में से 41", 82),
        ("hi", "पचासी प्रतिशत", 85),
        ("bn", "১০০টার মধ্যে ৮২টা", 82),
        ("bn", "৮২ শতাংশ", 82),
        ("id", "dari 50 tumbuh 41", 82),
        ("vi", "tám mươi lăm phần trăm", 85),
        ("pt", "de 100 sementes 85 germinaram", 85),
        ("fil", "walumpu't limang porsyento", 85),
    ],
)
def test_a_germination_is_understood(lexicons, language, text, percent):
    """Percent, fraction, counts, lots and words."""
    reading = read_germination(text, lexicons[language])
    assert reading.outcome is Outcome.UNDERSTOOD
    assert reading.value == pytest.approx(percent)


@pytest.mark.parametrize(
    ("text", "percent", "reason"),
    [
        ("0.85", 85, Reason.UNUSUAL),
        ("8", 8, Reason.UNUSUAL),
        ("0", 0, Reason.UNUSUAL),
        ("all", 100, Reason.UNUSUAL),
        ("85 90", 87.5, Reason.TWO_VALUES),
        ("85,90", 85.9, Reason.SLIP),
        ("85/90", 94.44, Reason.AMBIGUOUS),
        ("41 sprouted", 41, Reason.MISSING_UNIT),
        ("at least 80", 80, Reason.ROUGH),
        ("17 of 100 did not sprout", 83, Reason.NEGATED),
        ("20 rotted out of 100", 80, Reason.NEGATED),
        ("eigty five", 85, Reason.SLIP),
    ],
)
def test_an_unusual_germination_is_read_back(lexicons, text, percent, reason):
    """A count of the dead, a total left out, two numbers."""
    reading = read_germination(text, lexicons["en"])
    assert (reading.outcome, reading.reason) == (Outcome.CONFIRM, reason)
    assert reading.value == pytest.approx(percent)


@pytest.mark.parametrize(
    ("text", "reason"),
    [
        ("110", Reason.IMPOSSIBLE),
        ("60 of 50", Reason.IMPOSSIBLE),
        ("-85", Reason.IMPOSSIBLE),
        ("80-90", Reason.TWO_VALUES),
        ("80 to 90", Reason.TWO_VALUES),
        ("8 5", Reason.TWO_VALUES),
        ("17 did not sprout", Reason.NEGATED),
        ("15 dead", Reason.NEGATED),
        ("nearly all", Reason.NOT_READ),
        ("80 kg", Reason.NOT_READ),
        ("2 acres", Reason.NOT_READ),
        ("1e2", Reason.NOT_READ),
        ("I don't know", Reason.NOT_KNOWN),
    ],
)
def test_an_unsure_germination_is_asked_again(lexicons, text, reason):
    """Over a hundred, a range, a denial, another thing."""
    reading = read_germination(text, lexicons["en"])
    assert (reading.outcome, reading.reason) == (Outcome.AGAIN, reason)


@pytest.mark.parametrize(
    ("language", "text", "percent"),
    [
        ("bn", "১০০ তে ৮৮", 88),
        ("bn", "৫০টায় ৪২টা", 84),
        ("bn", "বারো আনা", 75),  # an anna is a sixteenth
        ("pt", "85 em cada 100", 85),
    ],
)
def test_so_many_of_so_many_in_everyday_words(lexicons, language, text, percent):
    """The plainest way to say it: were averaged as if they were two tests."""
    reading = read_germination(text, lexicons[language])
    assert (reading.outcome, reading.value) == (Outcome.UNDERSTOOD, percent)


@pytest.mark.parametrize(
    ("language", "text", "percent"),
    [
        ("fil", "sa sampu siyam ang tumubo", 90),
        ("fil", "walo sa bawat sampu ang sumibol", 80),
        ("sw", "katika kumi nane zimechipua", 80),
        ("pt", "de cada quatro nasceram três", 75),
        ("id", "tiap empat biji tumbuh tiga", 75),
        ("bn", "দশটায় নয়টা গজাইছে", 90),
        ("vi", "mười hạt thì tám hạt nảy mầm", 80),
        ("en", "out of hundred thirty did not come", 70),
    ],
)
def test_a_share_told_in_words_is_read_or_asked_back(lexicons, language, text, percent):
    """ "Of ten nine" is no nineteen."""
    reading = read_germination(text, lexicons[language])
    assert reading.value == percent and reading.outcome is not Outcome.AGAIN
