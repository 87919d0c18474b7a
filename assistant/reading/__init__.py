"""What a person typed -> understood, to be confirmed, or to be asked again; never a guess.

Readers take the text and the language's `Lexicon` (word lists that the wiring opens) and give
a `Reading`. Nothing here raises on any text.
"""

from assistant.reading.accounted import (
    denies_or_turns,
    has_name,
    is_accounted_for,
    is_of_past,
    is_to_come,
    names_a_thing,
    says_not_known,
    says_only_a_count,
    says_only_answers,
)
from assistant.reading.areas import read_area
from assistant.reading.choices import is_name, read_choice
from assistant.reading.confirms import read_confirm, read_deeds
from assistant.reading.counts import (
    counts_in,
    is_of_time,
    names_litres,
    read_count,
    read_litres,
)
from assistant.reading.danger import in_danger
from assistant.reading.dates import denies, names_day, names_days, read_date, without_day
from assistant.reading.days_told import days_told
from assistant.reading.languages import guess_language, language_named
from assistant.reading.outcomes import Ask, Option, Outcome, Reading, Reason, Wish
from assistant.reading.parts import (
    behind_but,
    parts_of,
    told_in_part,
    told_in_story,
    without_apology,
)
from assistant.reading.percents import read_germination
from assistant.reading.replies import read_answer, read_reply
from assistant.reading.several import read_several
from assistant.reading.text.lexicon import Lexicon
from assistant.reading.told import begins_with_yes, is_of_other, read_told, read_told_day
from assistant.reading.wishes import read_wish

__all__ = [
    "begins_with_yes",
    "behind_but",
    "Ask",
    "Lexicon",
    "Option",
    "Outcome",
    "Reading",
    "Reason",
    "Wish",
    "denies",
    "guess_language",
    "in_danger",
    "is_accounted_for",
    "is_name",
    "days_told",
    "is_of_other",
    "denies_or_turns",
    "has_name",
    "is_of_past",
    "is_to_come",
    "is_of_time",
    "names_a_thing",
    "names_day",
    "parts_of",
    "names_days",
    "names_litres",
    "language_named",
    "read_answer",
    "read_area",
    "read_choice",
    "read_confirm",
    "counts_in",
    "read_count",
    "read_date",
    "read_deeds",
    "read_germination",
    "read_litres",
    "read_reply",
    "read_several",
    "read_told",
    "read_told_day",
    "read_wish",
    "says_not_known",
    "says_only_a_count",
    "says_only_answers",
    "told_in_part",
    "told_in_story",
    "without_apology",
    "without_day",
]
