"""One reader for each kind of question: the person's text in, a value to keep out.

What a text means is decided in the room `reading`; here it is fitted to the question: the
value that the session keeps, the way on, and what to say when it could not be read.
"""

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from datetime import date
from fractions import Fraction

from assistant.acts import Act
from assistant.agronomy.field import LIMITS
from assistant.agronomy.measures import TINS_IN_PAIL
from assistant.agronomy.rounding import nearest
from assistant.agronomy.season.sowing import RIPENS_D
from assistant.dialogue.facts import chosen_nursery
from assistant.dialogue.lists import ListChoice, entries, names_pest
from assistant.dialogue.lots import kept, lots_behind
from assistant.dialogue.questions import Question, Reads
from assistant.dialogue.readers_planting import (
    gaps_of,
    grains_of,
    hill_of,
    seed_kg_of,
    spacing_of,
)
from assistant.dialogue.values import Kept, Known, Session
from assistant.hearing import Topic, understand
from assistant.reading import (
    Outcome,
    Reading,
    Reason,
    guess_language,
    is_of_other,
    is_of_time,
    language_named,
    names_litres,
    read_area,
    read_choice,
    read_confirm,
    read_count,
    read_date,
    read_deeds,
    read_germination,
    read_litres,
    says_not_known,
    says_only_answers,
)
from assistant.reading.text.echo import unit_words
from assistant.wording import messages_delay as d
from assistant.wording import messages_result as r
from assistant.wording import messages_talk as m
from assistant.wording import messages_when as when
from assistant.wording.message import Message, Say, slots_of
from assistant.wording.render import render

_DIGITS = re.compile(r"\d{1,6}")
MOST_SQUARES = 3
MOST_SHOOTS = 1000  # on 100 cm2: ten times the thickest sowing there is
SMALLEST_CAN_L, CAN_L = 1, 30
UNTESTED = "untested"
ASSUMED = "assume"
WHEN = "when"  # who does not know the day of sowing asks for it
M2_PER_SQ_FT = 0.09290304  # the international foot, 0.3048 m exactly
MOST_WORDS, CUT = 100, "..."  # of a person's words in a text


@dataclass(frozen=True)
class Heard:
    """What a text gave as the answer to a question.

    `value` is what the session keeps, `words` what is shown back, `refusal` what to say where
    nothing was understood, `options` the likely meanings to offer as digits.
    """

    outcome: Outcome
    value: Kept = None
    words: str = ""
    refusal: Say | None = None
    options: tuple[tuple[Kept, str], ...] = ()

    @property
    def sure(self) -> bool:
        """Whether the value can be used without asking back."""
        return self.outcome is Outcome.UNDERSTOOD


_REFUSALS: Mapping[Reason, Say] = {
    Reason.TWO_VALUES: m.AGAIN_TWO_VALUES(),
    Reason.UNMEASURED_UNIT: m.AGAIN_UNMEASURED(),
    Reason.REGION_UNIT: m.AGAIN_REGION_UNIT(),
}


def _heard(reading: Reading[float] | Reading[int] | Reading[str], question: Question) -> Heard:
    options = tuple((option.value, option.words) for option in reading.options)
    refusal = _REFUSALS.get(reading.reason, question.again())
    return Heard(reading.outcome, reading.value, reading.words, refusal, options)


def _area(text: str, question: Question, session: Session, known: Known) -> Heard:
    reading = read_area(text, known.land_words, known.region)
    if reading.reason is Reason.MISSING_UNIT and reading.value is not None:
        return _feet_or_metres(reading.value, known)  # "50 by 100": eleven times apart
    heard = _heard(reading, question)
    if heard.outcome is Outcome.UNDERSTOOD and _is_of_another_field(text, known):
        heard = replace(heard, outcome=Outcome.CONFIRM)
    limits = LIMITS["field_area_m2"]
    if isinstance(heard.value, float) and not limits.low <= heard.value <= limits.high:
        return Heard(Outcome.AGAIN, refusal=m.ABSURD_AREA(reading=heard.words))
    return heard


_LIKELY_TALK, _HARDLY_VALUE = 0.2, 0.2


def _is_of_another_field(text: str, known: Known) -> bool:
    """Whether an area stands in talk, or is another's: "I wish I had ten acres like the chief",
    "my uncle has five"."""
    weights = understand(text, known.ears, known.catalogue.language).weights
    talks = weights[Act.TALK] >= _LIKELY_TALK
    return talks and (weights[Act.VALUE] < _HARDLY_VALUE or is_of_other(text, known.lexicon))


def _feet_or_metres(m2: float, known: Known) -> Heard:
    """Sides without a unit: in which they were measured is asked, by the land that it makes."""
    lexicon, limits = known.lexicon, LIMITS["field_area_m2"]
    sizes = ((m2 * M2_PER_SQ_FT, m.IN_FEET), (m2, m.IN_METRES))
    options = tuple(
        (
            round(size, 2),
            render(
                says(area=unit_words(Fraction(round(size)), "m2", lexicon)), known.catalogue
            ),
        )
        for size, says in sizes
        if limits.low <= size <= limits.high
    )
    return Heard(Outcome.AGAIN, refusal=m.AGAIN_AREA(), options=options)


def _germination(text: str, question: Question, session: Session, known: Known) -> Heard:
    if question.choices:
        chosen = _choice(text, question, session, known)
        if chosen.sure:
            return chosen
    if names_litres(text, known.lexicon):
        return Heard(Outcome.AGAIN, refusal=question.again())  # the pail, not the seed
    heard = _heard(read_germination(text, known.lexicon), question)
    if heard.outcome is not Outcome.AGAIN:
        return _of_seed(heard, text, known)
    answer = read_confirm(text, known.lexicon, digits=False)
    # "Tomorrow" is a kind of not yet, but not surely: it may be the day of sowing, sent early.
    if answer.outcome is Outcome.UNDERSTOOD and answer.value in ("no", "not_yet"):
        return Heard(Outcome.UNDERSTOOD, UNTESTED)
    return heard


def _of_seed(heard: Heard, text: str, known: Known) -> Heard:
    """A share in words, beside work, is read back: "sown only half" is no share of seed."""
    in_words = heard.sure and not any(sign.isdigit() for sign in text)
    works = in_words and read_deeds(text, known.lexicon)
    return replace(heard, outcome=Outcome.CONFIRM) if works else heard


def _tested(text: str, question: Question, session: Session, known: Known) -> Heard:
    """The count of a seed test, kept with the size of the test; or one of the choices."""
    if question.choices:
        chosen = _choice(text, question, session, known)
        if chosen.sure:
            return chosen
    reading = read_germination(text, known.lexicon)
    if reading.value is None:
        return Heard(Outcome.AGAIN, refusal=question.again())
    lots = kept(lots_behind(text, reading.value))
    return Heard(reading.outcome, lots, reading.words, question.again())


def _litres(text: str, question: Question, session: Session, known: Known) -> Heard:
    chosen = _choice(text, question, session, known)
    if chosen.sure:
        return _read_back(chosen, text, known)
    heard = _heard(read_litres(text, known.lexicon), question)
    limits = LIMITS["pail_litres"]
    if isinstance(heard.value, float | int) and not limits.low <= heard.value <= limits.high:
        return Heard(Outcome.AGAIN, refusal=question.again())
    return _read_back(heard, text, known)


def _read_back(heard: Heard, text: str, known: Known) -> Heard:
    """A number among words that are no answer is read back: "it rained 3 times"."""
    sure = says_only_answers(text, known.lexicon) or names_litres(text, known.lexicon)
    return heard if sure or not heard.sure else replace(heard, outcome=Outcome.CONFIRM)


def _sowing(text: str, question: Question, session: Session, known: Known) -> Heard:
    """A day; or that it is not known, where days can be told."""
    if WHEN in question.goes and _is_no(text, known):
        return Heard(Outcome.UNDERSTOOD, WHEN)
    return _date(text, question, session, known)


def _is_no(text: str, known: Known) -> bool:
    said_no = read_confirm(text, known.lexicon, digits=False)
    plainly = said_no.value == "no" and said_no.outcome is Outcome.UNDERSTOOD
    return plainly or says_not_known(text, known.lexicon)


def _date_or_no(text: str, question: Question, session: Session, known: Known) -> Heard:
    if _is_no(text, known):
        return Heard(Outcome.UNDERSTOOD, "none")
    heard = _date(text, question, session, known)
    ahead = isinstance(heard.value, str) and heard.value > known.today.isoformat()
    if heard.outcome is Outcome.CONFIRM and ahead:
        return replace(heard, outcome=Outcome.UNDERSTOOD)  # far off, as a harvest is
    return heard


def _within(low: int, high: int, refusal: Message) -> "Reader":
    """A whole number between two ends."""

    def reader(text: str, question: Question, session: Session, known: Known) -> Heard:
        heard = _heard(read_count(text, known.lexicon), question)
        if not isinstance(heard.value, float | int):
            return heard
        number = heard.value
        if number != int(number) or not low <= number <= high:
            return Heard(Outcome.AGAIN, refusal=refusal(low=low, high=high))
        return replace(heard, value=int(number))

    return reader


_days_to_ripe = _within(*RIPENS_D, when.AGAIN_RIPENS)


def _ripens(text: str, question: Question, session: Session, known: Known) -> Heard:
    """The days of a variety, by its name or its digit where the programme wrote them down."""
    if _is_no(text, known):
        return Heard(Outcome.UNDERSTOOD, "none")
    if known.varieties:
        named = _choice(text, question, session, known)
        if named.sure:
            return named
    return _days_to_ripe(text, question, session, known)


def _date(text: str, question: Question, session: Session, known: Known) -> Heard:
    reading: Reading[date] = read_date(text, known.lexicon, known.today)
    refusal = question.again()
    if reading.reason is Reason.IMPOSSIBLE:
        refusal = m.AGAIN_IMPOSSIBLE()
    options = tuple((option.value.isoformat(), option.words) for option in reading.options)
    value = reading.value.isoformat() if reading.value else None
    return Heard(reading.outcome, value, reading.words, refusal, options)


def _leaves(text: str, question: Question, session: Session, known: Known) -> Heard:
    return _heard(read_count(text, known.lexicon), question)


def _can(text: str, question: Question, session: Session, known: Known) -> Heard:
    """The litres of a can or sprayer: a choice, or a size that somebody can carry."""
    chosen = _choice(text, question, session, known)
    if chosen.sure:
        return chosen
    heard = _heard(read_litres(text, known.lexicon), question)
    if isinstance(heard.value, float | int) and not SMALLEST_CAN_L <= heard.value <= CAN_L:
        return Heard(Outcome.AGAIN, refusal=question.again())
    return heard


def _shoots(text: str, question: Question, session: Session, known: Known) -> Heard:
    """Shoots in a square: the mean of one to three counts, or a number in words."""
    counts = [int(digits) for digits in _DIGITS.findall(text)]
    if not counts:
        reading = read_count(text, known.lexicon)
        counts = [] if reading.value is None else [nearest(reading.value)]
    if not 0 < len(counts) <= MOST_SQUARES or max(counts) > MOST_SHOOTS:
        return Heard(Outcome.AGAIN, refusal=question.again())
    mean = nearest(sum(counts) / len(counts))
    return Heard(Outcome.UNDERSTOOD, mean, str(mean))


def _mats(text: str, question: Question, session: Session, known: Known) -> Heard:
    """Mats left of those that the nursery of this talk had: not all of them."""
    heard = _heard(read_count(text, known.lexicon), question)
    nursery = chosen_nursery(session, known)
    if nursery is None or not isinstance(heard.value, float | int):
        return heard
    standing = nursery.mats_left or nursery.quantities.mats
    if heard.value >= standing:
        refusal = r.AGAIN_LEFT(mats=standing)
        return Heard(Outcome.AGAIN, refusal=refusal)
    return heard


def _lost(text: str, question: Question, session: Session, known: Known) -> Heard:
    """Mats that are gone, as many as there are; or none."""
    nursery = chosen_nursery(session, known)
    if read_confirm(text, known.lexicon, digits=False).value == "no":
        return Heard(Outcome.UNDERSTOOD, "none")
    heard = _heard(read_count(text, known.lexicon), question)
    if nursery is None or not isinstance(heard.value, float | int):
        return heard
    most = nursery.mats_left
    if heard.value != int(heard.value) or not 0 < heard.value <= most:
        return Heard(Outcome.AGAIN, refusal=d.AGAIN_LOST(mats=most))
    return replace(heard, value=int(heard.value))


def _seed_used(text: str, question: Question, session: Session, known: Known) -> Heard:
    """The dry seed that was really sown [kg], or that it was as planned."""
    chosen = _choice(text, question, session, known)
    if chosen.sure:
        return chosen
    if read_confirm(text, known.lexicon, digits=False).value == "no":  # "not more"
        return Heard(Outcome.UNDERSTOOD, "planned")
    kg = seed_kg_of(text, question, session, known)
    if kg is None:
        return Heard(Outcome.AGAIN, refusal=question.again())
    return Heard(Outcome.UNDERSTOOD, kg, text.strip())


def _planted(text: str, question: Question, session: Session, known: Known) -> Heard:
    """The part of the field that is planted, in percent: a choice, or its size."""
    chosen = _choice(text, question, session, known)
    nursery = chosen_nursery(session, known)
    if chosen.sure or nursery is None:
        return chosen
    heard = _heard(read_area(text, known.land_words, known.region), question)
    if not isinstance(heard.value, float | int):
        return Heard(Outcome.AGAIN, refusal=question.again())
    percent = 100 * heard.value / nursery.inputs.field_area_m2
    if not 0 < percent <= 100:
        return Heard(Outcome.AGAIN, refusal=question.again())
    return Heard(heard.outcome, str(round(percent, 1)), heard.words, question.again())


def _choice(text: str, question: Question, session: Session, known: Known) -> Heard:
    choices = entries(question, session, known)
    names = [[choice.shown(known), *_also(choice)] for choice in choices]
    reading = read_choice(text, names, known.lexicon)
    if reading.value is None:
        return _yes_or_no(text, choices, known) or Heard(
            Outcome.AGAIN, refusal=question.again()
        )
    choice = choices[reading.value]
    return Heard(reading.outcome, choice.value, choice.shown(known))


def _problem(text: str, question: Question, session: Session, known: Known) -> Heard:
    """What is wrong, also by what does it ("ants took the seed") or by what is wanting."""
    choices = {choice.value: choice for choice in entries(question, session, known)}
    named = _named_problem(text, choices, known)
    if named is None:
        return _choice(text, question, session, known)
    return Heard(Outcome.UNDERSTOOD, named, choices[named].shown(known))


def _named_problem(
    text: str, choices: Mapping[str | int | float, ListChoice], known: Known
) -> str | None:
    if names_pest(text, known) and "animals" in choices:
        return "animals"
    languages = (known.catalogue.language, "en")
    rule = known.ears.questions.heard(text, languages, False)
    dry = rule is not None and rule.topic is Topic.NO_WATER and "water" in choices
    return "water" if dry else None


def _language(text: str, question: Question, session: Session, known: Known) -> Heard:
    """A digit, or the name of a language in any language: Tagalog, Swahili, Portuguese."""
    named = language_named(text)
    for choice in entries(question, session, known):
        if choice.value == named:
            return Heard(Outcome.UNDERSTOOD, named, choice.shown(known))
    chosen = _choice(text, question, session, known)
    guess = guess_language(text, known.lexicons) if len(text.split()) > 1 else None
    written = [each for each in entries(question, session, known) if each.value == guess]
    if chosen.outcome is Outcome.AGAIN and written:  # a sentence in it names a language, too
        return Heard(Outcome.UNDERSTOOD, guess, written[0].shown(known))
    return chosen


# An answer in other words, and the choices that it may take.
_PLAIN = {
    "yes": ("yes", "done"),
    "no": ("no", "change", "not_yet"),
    "done": ("done",),
    "not_yet": ("not_yet",),
}


def _yes_or_no(text: str, choices: tuple[ListChoice, ...], known: Known) -> Heard | None:
    """ "Ok, that is right", or "no" where a summary may be changed."""
    reading = read_confirm(text, known.lexicon, digits=False)
    meant = _PLAIN.get(reading.value or "", ())
    choice = next((choice for choice in choices if choice.value in meant), None)
    return Heard(reading.outcome, choice.value, choice.shown(known)) if choice else None


def _also(choice: ListChoice) -> tuple[str, ...]:
    """A code is a name too where a person may type it, such as "sw" for a language."""
    code = (choice.value,) if isinstance(choice.value, str) else ()
    return (*choice.names, *code)


def _yes_no(text: str, question: Question, session: Session, known: Known) -> Heard:
    reading = read_confirm(text, known.lexicon)
    if reading.value not in ("yes", "no"):
        return Heard(Outcome.AGAIN, refusal=question.again())
    return Heard(reading.outcome, reading.value, reading.words)


def _deed(text: str, question: Question, session: Session, known: Known) -> Heard:
    """ "No we did not" is no, to whether something was done; what will be done is neither."""
    reading = read_confirm(text, known.lexicon)
    if reading.value == "not_yet" and reading.reason is not Reason.ROUGH:
        return Heard(reading.outcome, "no", known.lexicon.answers["no"])
    return _yes_no(text, question, session, known)


def shortened(words: str, most: int = MOST_WORDS) -> str:
    """A person's words as far as a text has room for them; kept are all of them."""
    fits = len(words) <= most
    return words if fits else f"{words[: most - len(CUT)].rstrip()}{CUT}"


def _words(text: str, question: Question, session: Session, known: Known) -> Heard:
    words = " ".join(text.split())
    if not words:
        return Heard(Outcome.AGAIN, refusal=question.again())
    return Heard(Outcome.UNDERSTOOD, words, shortened(words))


def _grains(text: str, question: Question, session: Session, known: Known) -> Heard:
    """The weight of 1000 grains; the words are kept, which may be a variety."""
    value = grains_of(text, question, session, known)
    if value is None:
        return Heard(Outcome.AGAIN, refusal=question.again())
    return Heard(Outcome.UNDERSTOOD, value, text.strip())


def _own(read: Callable[[str, Question, Session, Known], Kept]) -> "Reader":
    """A reader that gives the value itself, or None where it is to be asked again."""

    def reader(text: str, question: Question, session: Session, known: Known) -> Heard:
        value = read(text, question, session, known)
        if value is None:
            return Heard(Outcome.AGAIN, refusal=question.again())
        return Heard(Outcome.UNDERSTOOD, value, str(value))

    return reader


Reader = Callable[[str, Question, Session, Known], Heard]


def _topic(text: str, question: Question, session: Session, known: Known) -> Heard:
    """Only a digit of the list answers; a question in other words is heard before this."""
    return Heard(Outcome.AGAIN, refusal=question.again())


READERS: Mapping[Reads, Reader] = {
    Reads.LANGUAGE: _language,
    Reads.VILLAGE: _choice,
    Reads.OWN_VILLAGE: _choice,
    Reads.NURSERY: _choice,
    Reads.PRACTICE: _choice,
    Reads.TASK: _choice,
    Reads.CHOICE: _choice,
    Reads.PROBLEM: _problem,
    Reads.PLACE: _choice,
    Reads.SUFFICED: _choice,
    Reads.YES_NO: _yes_no,
    Reads.DEED: _deed,
    Reads.AREA: _area,
    Reads.GERMINATION: _germination,
    Reads.TESTED: _tested,
    Reads.LITRES: _litres,
    Reads.SOWING: _sowing,
    Reads.DATE_OR_NO: _date_or_no,
    Reads.RIPENS: _ripens,
    Reads.TINS: _within(*TINS_IN_PAIL, when.AGAIN_TINS),
    Reads.DATE: _date,
    Reads.LEAVES: _leaves,
    Reads.CAN: _can,
    Reads.SHOOTS: _shoots,
    Reads.MATS: _mats,
    Reads.LOST: _lost,
    Reads.PLANTED: _planted,
    Reads.SPACING: _own(spacing_of),
    Reads.HILL: _own(hill_of),
    Reads.GRAINS: _grains,
    Reads.GAPS: _own(gaps_of),
    Reads.SEED_KG: _seed_used,
    Reads.WORDS: _words,
    Reads.TOPIC: _topic,
}


# Counts that people tell in sentences, so that another number may stand in one.
_TOLD_AMONG_WORDS = frozenset({Reads.CAN, Reads.SHOOTS, Reads.MATS, Reads.LOST, Reads.LEAVES})
_COUNTED = frozenset({Reads.LITRES, Reads.LEAVES})


def is_another_kind(text: str, known: Known) -> bool:
    """Whether a number is surely of land, seed or time: 2 acres, 2 hours are no leaves."""
    if not any(letter.isalpha() for letter in text):
        return "%" in text
    area = read_area(text, known.land_words, known.region)
    day = read_date(text, known.lexicon, known.today)
    other = "%" in text or is_of_time(text, known.lexicon)
    return other or Outcome.UNDERSTOOD in (area.outcome, day.outcome)


def _not_known(question: Question, session: Session) -> Heard:
    """ "I don't know" is an answer: seed is untested, and of untested seed the plan assumes
    what it says; else the question is explained."""
    if question.reads is Reads.GERMINATION and UNTESTED in question.goes:
        return Heard(Outcome.UNDERSTOOD, UNTESTED)
    if ASSUMED in question.goes:
        return Heard(Outcome.UNDERSTOOD, ASSUMED)
    plain = question.help is not m.HELP and not slots_of(question.help.text)
    explains = question.help if plain else question.again
    return Heard(Outcome.AGAIN, refusal=explains())


def hear(text: str, question: Question, session: Session, known: Known) -> Heard:
    """What `text` gives as the answer to `question`."""
    if question.reads in _COUNTED and is_another_kind(text, known):
        return Heard(Outcome.AGAIN, refusal=question.again())
    heard = READERS[question.reads](text, question, session, known)
    if heard.outcome is Outcome.AGAIN and says_not_known(text, known.lexicon):
        return _not_known(question, session)
    told = question.reads in _TOLD_AMONG_WORDS and isinstance(heard.value, float | int)
    return _read_back(heard, text, known) if told else heard
