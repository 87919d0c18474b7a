"""The land units of one village, as its office has set them, laid over a language's word list.

A name that the list knows (bigha) has its size there in all its spellings; another one (plot,
rante, line) becomes a unit. Units that are the same everywhere are never set anew.
"""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from fractions import Fraction
from functools import lru_cache

from assistant.agronomy.units import UNIT_KEYS, land_unit
from assistant.people import VillageUnit
from assistant.reading.text.fold import Token, read_tokens
from assistant.reading.text.lexicon import Lexicon, Phrase, Sort

LONGEST_UNIT = 20  # letters of a name
MOST_UNITS, MOST_NAMES = 8, 6
SMALLEST_M2, BIGGEST_M2 = 0.1, 100_000
_PLURAL = "s"  # "plots": of names in Latin letters, where no other spelling is given


@lru_cache(maxsize=64)
def with_units(lexicon: Lexicon, units: tuple[VillageUnit, ...]) -> Lexicon:
    """The word list of a language, with the units of a village."""
    if not units:
        return lexicon
    words = dict(lexicon.phrases.get(Sort.UNIT, {}))
    marked = dict(lexicon.marked)
    sizes: dict[str, Fraction] = {}
    shown = dict(lexicon.unit_names)
    for number, unit in enumerate(units, start=1):
        key = _known_key(unit.names, lexicon) or f"own{number}"
        sizes[key] = Fraction(str(unit.m2))
        shown.setdefault(key, (unit.names[0], unit.names[0]))
        for phrase, spelt in _spellings(unit.names):
            words[phrase] = key
            marked[Sort.UNIT, phrase] = {*marked.get((Sort.UNIT, phrase), ()), phrase, spelt}
    return replace(
        lexicon,
        phrases={**lexicon.phrases, Sort.UNIT: words},
        marked=marked,
        unit_names=shown,
        known=lexicon.known | {word for phrase in words for word in phrase},
        own_units=sizes,
    )


def _known_key(names: Sequence[str], lexicon: Lexicon) -> str | None:
    """The unit of the list that one of these names is."""
    listed: Mapping[Phrase, str] = lexicon.phrases.get(Sort.UNIT, {})
    keys = (listed.get(phrase) for phrase, _ in _spellings(names))
    return next((key for key in keys if key in UNIT_KEYS), None)


def _spellings(names: Sequence[str]) -> list[tuple[Phrase, Phrase]]:
    """Each name folded, and with its accents; a plain word with an s too."""
    found: dict[Phrase, Phrase] = {}
    for name in names:
        tokens = _words(name)
        phrase = tuple(each.text for each in tokens)
        found[phrase] = tuple(each.marked or each.text for each in tokens)
    for phrase in tuple(found):
        if len(phrase) == 1 and phrase[0].isascii() and not phrase[0].endswith(_PLURAL):
            found.setdefault((phrase[0] + _PLURAL,), (phrase[0] + _PLURAL,))
    return list(found.items())


def _words(name: str) -> list[Token]:
    return [each for each in read_tokens(name) if each.is_word]


def is_unit_name(name: str) -> bool:
    """Whether a name can be read: a word or two of letters alone."""
    tokens = read_tokens(name)
    return 0 < len(tokens) <= 2 and len(name) <= LONGEST_UNIT and all(t.is_word for t in tokens)


def is_same_everywhere(name: str, lexicons: Mapping[str, Lexicon]) -> bool:
    """Whether a name is that of a unit whose size is settled for all: a hectare, an acre."""
    phrase = tuple(each.text for each in _words(name))
    keys = (each.phrases.get(Sort.UNIT, {}).get(phrase, "") for each in lexicons.values())
    return any(land_unit(part) for key in keys for part in key.split())
