"""What the words of a text say of a bed, beside what was asked: ideas, a reason, a day."""

from datetime import date

from assistant.agronomy.life.events import Why
from assistant.dialogue.values import Known
from assistant.hearing import Idea
from assistant.reading import (
    Outcome,
    counts_in,
    guess_language,
    is_of_past,
    read_count,
    read_date,
    read_told_day,
    says_only_a_count,
)

_WHY = (
    (Idea.HANDS, Why.HANDS),
    (Idea.WATER, Why.WATER),
    (Idea.FIELD, Why.FIELD),
    (Idea.RAIN, Why.RAIN),
)

_MOST_WORDS_OF_DAY = 2
_MOST_WORDS_LATE = 4  # "we are late, sorry"; a longer text tells of more
_LOSSES = frozenset({Idea.EATEN, Idea.WASHED, Idea.DRIED})


def ideas_in(text: str, known: Known, of_work: bool = False) -> frozenset[Idea]:
    """What a text tells of a bed, in the farmer's language, else in what it seems to be, else
    in English, which is mixed in everywhere; `of_work`: also what is said beside a deed."""
    own, guess = known.catalogue.language, guess_language(text, known.lexicons)
    languages = dict.fromkeys(code for code in (own, guess, "en") if code)
    return known.ears.reports.ideas(text, languages, of_work)


def without_next_leaf(text: str, known: Known) -> str | None:
    """A count of leaves without "most of them got", and without "and the fourth is just
    peeping", which opens none; None where nothing of the kind is said."""
    languages = dict.fromkeys((known.catalogue.language, "en"))
    reports = known.ears.reports
    left = reports.without(text, languages, Idea.MOSTLY) or text
    if left != text and not _is_of_leaves(left, known):
        left = text  # "I counted 3 buckets"
    left = reports.without(left, languages, Idea.NEXT_LEAF) or left
    return None if left == text else left


def leaves_told(text: str, known: Known) -> float | None:
    """The one number of a sentence, where it stands beside leaves and they are all that may be
    counted: "my grandfather counts three leaves". None where another number stands there, where
    it is asked, or of a day gone by."""
    if "?" in text or counts_in(text, known.lexicon) != 1 or is_of_past(text, known.lexicon):
        return None
    words = text.split()
    runs = (words[at : at + n] for n in (2, 3) for at in range(len(words) - n + 1))
    for run in map(" ".join, runs):
        reading = read_count(run, known.lexicon)
        sure = reading.outcome is Outcome.UNDERSTOOD and reading.value is not None
        if sure and Idea.LEAF in ideas_in(run, known) and says_only_a_count(run, known.lexicon):
            return reading.value
    return None


def _is_of_leaves(text: str, known: Known) -> bool:
    return Idea.LEAF in ideas_in(text, known) or says_only_a_count(text, known.lexicon)


def result_in(text: str, known: Known) -> str | None:
    """How the mats sufficed, told in a sentence: "six mats remained, I gave them to my brother"
    is left, "a corner is bare" is short. None where it is not said, or more than one is, or
    something was lost: that is more than a result."""
    ideas = ideas_in(text, known)
    if "?" in text or ideas & _LOSSES:
        return None
    over = bool(ideas & {Idea.SPARE, Idea.GIVEN}) and bool(ideas & {Idea.MAT, Idea.SEEDLING})
    told = {"left": over, "enough": Idea.JUST in ideas, "short": Idea.LACKED in ideas}
    found = [code for code, is_told in told.items() if is_told]
    return found[0] if len(found) == 1 else None


def why_in(text: str, known: Known) -> Why | None:
    """Why planting waits, as far as a text says so: the first of hands, water, field, rain."""
    found = ideas_in(text, known)
    if Idea.RAIN_OVER in found:
        found -= {Idea.RAIN}  # what has stopped keeps nobody
    return next((why for idea, why in _WHY if idea in found), None)


def tells_of_loss(text: str, known: Known) -> bool:
    """Whether mats are said to be eaten, washed away or dried: "the hens ate 15 mats"."""
    ideas = ideas_in(text, known)
    return Idea.MAT in ideas and bool(ideas & _LOSSES)


def is_late(text: str, known: Known) -> bool:
    """Whether a text says that the work is late, and next to nothing else."""
    return len(text.split()) <= _MOST_WORDS_LATE and Idea.LATE in ideas_in(text, known)


def day_in(text: str, known: Known) -> date | None:
    """The day from today on that a text names, wherever it stands; it is said back."""
    if text.strip().isdigit():
        return None
    value = read_date(text, known.lexicon, known.today).value
    return value if value is not None and value >= known.today else None


def day_to_come(text: str, known: Known) -> date | None:
    """The day after today that a text ends with ("planted half, the rest tomorrow"); of a word
    for two days, the one to come."""
    words = text.split()
    ends = (" ".join(words[start:]) for start in range(len(words)))
    found = (_to_come(end, known) for end in ends)
    return next((day for day in found if day is not None), None)


def day_gone(text: str, known: Known) -> date | None:
    """The one day gone by that words of a story name; None where they name none, or several."""
    words = text.split()
    ends = range(1, _MOST_WORDS_OF_DAY + 1)
    runs = (" ".join(words[at : at + n]) for at in range(len(words)) for n in ends)
    days = {day for run in runs if (day := read_told_day(run, known.lexicon, known.today))}
    return days.pop() if len(days) == 1 else None


def _to_come(text: str, known: Known) -> date | None:
    reading = read_date(text, known.lexicon, known.today)
    days = (reading.value, *(option.value for option in reading.options))
    coming = {day for day in days if day is not None and day > known.today}
    return coming.pop() if len(coming) == 1 else None
