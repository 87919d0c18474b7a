"""What a field gave, told after its season: kept with the result, and said back."""

from dataclasses import replace

from assistant.agronomy.season.outcome import YIELD_KG_PER_HA, SeasonOutcome
from assistant.dialogue import conversations as talks
from assistant.dialogue.aid import person
from assistant.dialogue.endings import call, ended, lasting, said
from assistant.dialogue.engine import begin
from assistant.dialogue.readers_planting import kilograms_of
from assistant.dialogue.told_of_bed import ideas_in
from assistant.dialogue.values import KeepSeason, Known, Turn
from assistant.hearing import Idea
from assistant.reading import Outcome, is_of_other, read_area
from assistant.wording import messages_aid as aid
from assistant.wording import messages_result as r
from assistant.wording.message import Message


def harvested(text: str, known: Known) -> Turn | None:
    """The turn for "harvest 1600 kg"; None where no season waits for it, or a talk is open."""
    farmer = known.farmer
    if farmer is None or farmer.consent_at is None or farmer.stopped_at is not None:
        return None
    season = _latest(known)
    if season is None:
        return _of_no_result(text, known)
    if lasting(known.session) is not None or "?" in text:
        return None
    if Idea.YIELD not in ideas_in(text, known) or is_of_other(text, known.lexicon):
        return None
    kg = kilograms_of(text)
    if kg is None and season.yield_asked is None:
        return _in_bags(text, known)
    told = None if kg is None else replace(season, yield_kg=kg)
    rate = told.yield_kg_per_ha if told else None
    passing = begin(talks.MENU)
    if told is None or rate is None or not _can_be(rate):
        return ended(passing, known, said(r.AGAIN_YIELD()))
    kept = r.YIELD_KEPT(kg=round(told.yield_kg or 0), per_ha=round(rate, -1))
    return ended(passing, known, said(kept), changes=(KeepSeason(told),))


def _of_no_result(text: str, known: Known) -> Turn | None:
    """Of a field whose result nobody told: such a season was closed weeks after its planting,
    long before its harvest, so that a person has the words."""
    if lasting(known.session) is not None or "?" in text or is_of_other(text, known.lexicon):
        return None
    grows = any(bed.transplanted_on is None for bed in known.nurseries)
    if grows or Idea.YIELD not in ideas_in(text, known):
        return None  # "paddy" is also seed and a field
    if kilograms_of(text) is None:
        return _in_bags(text, known)
    return _passed_on(aid.PASSED_ON, text, known)


def _in_bags(text: str, known: Known) -> Turn | None:
    """ "We harvested 30 bags", which nobody asked: a person has the words, and the weight is
    asked. None where no number is told."""
    is_land = read_area(text, known.land_words, known.region).outcome is Outcome.UNDERSTOOD
    if is_land or not any(sign.isdigit() for sign in text):
        return None
    return _passed_on(r.YIELD_IN_BAGS, text, known)


def _passed_on(message: Message, text: str, known: Known) -> Turn:
    passing = begin(talks.MENU)
    change = call("question", text, passing, known)
    return ended(passing, known, said(message(person=person(known))), changes=(change,))


def _latest(known: Known) -> SeasonOutcome | None:
    """The last season of which nobody told the harvest."""
    waiting = [each for each in known.seasons if each.yield_kg is None]
    return max(waiting, key=lambda each: each.ended_on, default=None)


def _can_be(rate: float) -> bool:
    low, high = YIELD_KG_PER_HA
    return low <= rate <= high
