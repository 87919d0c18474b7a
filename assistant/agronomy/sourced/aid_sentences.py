"""Each sentence of the emergency texts with the publications that bear it.

The texts themselves are declared in the room of wordings, above this one; a test holds the two
together, sentence by sentence. No health worker and no vet has signed any of them.
"""

from collections.abc import Iterable
from dataclasses import dataclass

from assistant.agronomy.sourced import aid_sources
from assistant.agronomy.sourced.aid_sources import AidSource


@dataclass(frozen=True)
class AidSentence:
    """One sentence of a text.

    text:  the text it stands in, by the kind of emergency
    words: as it is declared, with its slots
    weak:  what is weak about its sources or is ours; empty where they say it outright
    """

    text: str
    words: str
    sources: tuple[AidSource, ...]
    weak: str = ""


def _said(text: str, words: str, *sources: AidSource, weak: str = "") -> AidSentence:
    return AidSentence(text, words, sources, weak)


_CALL_OR_GO = "Call {emergency} now or go to {health_post} at once."
_CARE = "We care about you and what you tell us."
_ALONE = "You are not alone."
_PACKET = "Take the packet along if there is one."
_AWAY = "Go away from the danger."
_NO_HELPLINE = (
    "they name a line for people who want to die; the number said here is the emergency one"
)
_COPY = "the National Health Service only in a licensed copy"
_ONE_IDEA = "ours, from two publications on keeping a scene safe"

AID_SENTENCES = (
    _said("poison", _CALL_OR_GO, aid_sources.GHS_NOW, aid_sources.GHS, aid_sources.EPA_CASE),
    _said(
        "poison",
        "Take the packet along, or its name.",
        aid_sources.GHS,
        aid_sources.HESPERIAN_BREATH,
        aid_sources.PENN_POISONING,
    ),
    _said(
        "poison",
        "Everybody out of the spray, into fresh air.",
        aid_sources.GHS,
        aid_sources.HESPERIAN_BREATH,
    ),
    _said(
        "poison",
        "Take off clothes with poison on them and wash the skin with much water.",
        aid_sources.GHS,
        aid_sources.HESPERIAN_SPILL,
        aid_sources.EPA_FIRST_AID,
    ),
    _said(
        "eyes",
        "Call {emergency} now, or let another call while you rinse.",
        aid_sources.EPA_FIRST_AID,
    ),
    _said(
        "eyes",
        "Eyes: rinse gently with clean water for 15 minutes.",
        aid_sources.HESPERIAN_SPILL,
        aid_sources.EPA_FIRST_AID,
        aid_sources.GHS,
    ),
    _said(
        "eyes",
        "Skin: take off the wet clothes and wash with much water.",
        aid_sources.GHS,
        aid_sources.HESPERIAN_SPILL,
        aid_sources.EPA_FIRST_AID,
    ),
    _said(
        "eyes",
        "Then go to {health_post} and take the packet along.",
        aid_sources.GHS,
        aid_sources.CORNELL,
        aid_sources.HESPERIAN_SPILL,
    ),
    _said("snake", _CALL_OR_GO, aid_sources.NIOSH_SNAKES, aid_sources.NHS_SNAKES),
    _said(
        "snake",
        "Get everybody away from the snake.",
        aid_sources.WHO_SNAKES_CDAC,
        weak="WHO only through a page that repeats it",
    ),
    _said(
        "snake",
        "The person must keep still and calm: carry them.",
        aid_sources.NIOSH_SNAKES,
        aid_sources.WHO_SNAKES_PAGE,
        weak="carrying: WHO only through a page that repeats it",
    ),
    _said(
        "snake",
        "Take rings and bracelets off the bitten arm or leg.",
        aid_sources.NHS_SNAKES,
        aid_sources.WHO_SNAKES_CDAC,
        aid_sources.WHO_SNAKES_PAGE,
        weak="WHO only through pages that repeat it",
    ),
    _said(
        "lightning", "Call {emergency} now.", aid_sources.FEMA, aid_sources.WEATHER_LIGHTNING
    ),
    _said(
        "lightning",
        "The person who was hit is safe to hold and help.",
        aid_sources.FEMA,
        aid_sources.WEATHER_LIGHTNING,
    ),
    _said(
        "lightning",
        "While it thunders, keep everybody in a house.",
        aid_sources.VIRGINIA_TECH,
        aid_sources.NDMA,
    ),
    _said(
        "lightning",
        "Get the person to {health_post} as soon as the way is safe.",
        aid_sources.NDMA,
        aid_sources.VIRGINIA_TECH,
        weak="'as soon as the way is safe' is ours, for the half hour of waiting that is "
        "published",
    ),
    _said(
        "drowning",
        "Call {emergency} now and shout for people.",
        aid_sources.LIFE_SAVING,
        aid_sources.DEVON_POLICE,
    ),
    _said(
        "drowning",
        "Stay out of the water, well back from the edge.",
        aid_sources.LIFE_SAVING,
        aid_sources.WEATHER_FLOOD,
    ),
    _said(
        "drowning",
        "From there throw something that floats.",
        aid_sources.LIFE_SAVING,
        aid_sources.LONDON_FIRE,
    ),
    _said(
        "drowning",
        "A person who came out goes to {health_post} at once.",
        aid_sources.NEAR_DROWNING,
        aid_sources.AFTER_RESCUE,
    ),
    _said("wire", "Call {emergency} now.", aid_sources.ARS_SHOCK, aid_sources.DOWNED_LINES),
    _said(
        "wire",
        "Keep everybody very far from the wire and from the person and all things on it.",
        aid_sources.KERALA_LINE,
        aid_sources.ARS_SHOCK,
        aid_sources.DOWNED_LINES,
        weak="published distances differ, and wet ground asks for more: 'very far' is ours",
    ),
    _said(
        "wire",
        "Go near only when the electric company says the power is off.",
        aid_sources.KERALA_LINE,
        aid_sources.DUQUESNE,
        weak="a company's page, and a Board's advice through a news page",
    ),
    _said("wire", "The hurt person then goes to {health_post}.", aid_sources.KERALA_SHOCK),
    _said("wound", _CALL_OR_GO, aid_sources.RED_CROSS_BLEEDING, aid_sources.NZ_BLEEDING),
    _said(
        "wound",
        "Press a clean cloth hard on the wound and keep pressing.",
        aid_sources.NZ_BLEEDING,
        aid_sources.ST_JOHN_NZ,
        aid_sources.RED_CROSS_BLEEDING,
    ),
    _said(
        "wound",
        "If a thing sticks in the wound, leave it in and press beside it.",
        aid_sources.NZ_BLEEDING,
        aid_sources.ST_JOHN_UK,
    ),
    _said("smoke", "Go out now, all of you, and stay out.", aid_sources.SUFFOLK_FIRE),
    _said(
        "smoke",
        "Outside, call {emergency} and say who is still inside.",
        aid_sources.SUFFOLK_FIRE,
    ),
    _said(
        "smoke",
        "Anyone who breathed smoke needs fresh air, then {health_post}.",
        aid_sources.GHS,
        aid_sources.SHARECARE,
        weak="one is written for chemicals, the other is a company's page; the text stands "
        "without this sentence",
    ),
    _said("animal", "Call {vet} now.", aid_sources.DEFRA, aid_sources.PET_POISON),
    _said(
        "animal",
        "Keep people and other animals away from this animal and from any poison.",
        aid_sources.DEFRA,
        aid_sources.PENN_ANIMALS,
        weak="ours, from one publication on animals and one on people",
    ),
    _said("animal", "Have the packet ready for the vet.", aid_sources.EPA_LABEL),
    _said("hurt", _AWAY, aid_sources.RED_CROSS_SCENE, aid_sources.FLASH, weak=_ONE_IDEA),
    _said(
        "hurt",
        _CALL_OR_GO,
        aid_sources.RED_CROSS_SCENE,
        weak="the Red Cross only through a hospital's page",
    ),
    _said("hurt", _PACKET, aid_sources.GHS),
    _said("hurt_here", _AWAY, aid_sources.RED_CROSS_SCENE, aid_sources.FLASH, weak=_ONE_IDEA),
    _said(
        "hurt_here",
        "Go to the nearest health post at once, or call for people who can bring you.",
        aid_sources.NHS_SNAKES,
        aid_sources.WHO_SNAKES_PAGE,
        weak="written for snakebite; for other kinds, and that people bring you, it is ours",
    ),
    _said("hurt_here", _PACKET, aid_sources.GHS),
    _said("die", _CARE, aid_sources.BROMLEY),
    _said("die", _ALONE, aid_sources.NHS_SUICIDE, weak=_COPY),
    _said(
        "die",
        "Please call {emergency} now.",
        aid_sources.NHS_SUICIDE,
        aid_sources.NIMH,
        weak=_NO_HELPLINE,
    ),
    _said(
        "die",
        "You can also talk with {person}, or with someone you trust.",
        aid_sources.NHS_SUICIDE,
        aid_sources.WHO_SUICIDE,
        weak="that it may be the officer is ours",
    ),
    _said("die_hurt", "We care about you.", aid_sources.BROMLEY),
    _said("die_hurt", _ALONE, aid_sources.NHS_SUICIDE, weak=_COPY),
    _said(
        "die_hurt",
        "Please call {emergency} now or go to {health_post} with someone you trust.",
        aid_sources.NHS_SUICIDE,
        aid_sources.NIMH,
        aid_sources.WHO_SUICIDE_NEWS,
    ),
    _said(
        "die_hurt",
        "You can also talk with {person}.",
        aid_sources.NHS_SUICIDE,
        weak="that it may be the officer is ours",
    ),
    _said("die_here", _CARE, aid_sources.BROMLEY),
    _said("die_here", _ALONE, aid_sources.NHS_SUICIDE, weak=_COPY),
    _said(
        "die_here",
        "Please go to someone you trust now, or to the nearest health post.",
        aid_sources.NHS_SUICIDE,
        weak=_COPY,
    ),
)


def cited(sentences: Iterable[AidSentence]) -> tuple[AidSource, ...]:
    """The publications of these sentences, each once, in their order."""
    return tuple(dict.fromkeys(source for each in sentences for source in each.sources))
