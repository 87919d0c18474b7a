"""Anybody found from every page: a name as it is spelt or nearly, a part of a number, a
village."""

import unicodedata
from dataclasses import dataclass

from rapidfuzz import fuzz, process

from assistant.people import Village
from assistant.service.house import House
from assistant.service.sight import Sight
from assistant.store import SearchedFarmer

MOST = 30
NEAR = 78  # of 100; two letters wrong in a name of two words, or its words in another order
LEAST_DIGITS = 3


@dataclass(frozen=True)
class FoundFarmer:
    """A farmer whom a search found."""

    known: SearchedFarmer
    village: Village | None


@dataclass(frozen=True)
class SearchResult:
    """What a search found, the nearest first."""

    people: tuple[FoundFarmer, ...]
    villages: tuple[Village, ...]


def plain(text: str) -> str:
    """Letters without marks, small, with single blanks: what names are compared by."""
    letters = unicodedata.normalize("NFKD", text.casefold())
    return " ".join("".join(ch for ch in letters if not unicodedata.combining(ch)).split())


def find(house: House, sight: Sight, asked: str) -> SearchResult:
    """Farmers and villages in sight; nobody for an empty search."""
    words = plain(asked)
    if not words:
        return SearchResult((), ())
    with house.store.look() as work:
        known = work.roll.known(sight.scope())
    villages = tuple(each for each in sight.villages if words in plain(each.name))
    people = _by_number(known, asked) or _by_name(known, words)
    return SearchResult(
        tuple(FoundFarmer(each, sight.village(each.village_id)) for each in people[:MOST]),
        villages,
    )


def _by_number(known: tuple[SearchedFarmer, ...], asked: str) -> list[SearchedFarmer]:
    digits = "".join(ch for ch in asked if ch.isdecimal()).lstrip("0")
    letters = any(ch.isalpha() for ch in asked)
    if letters or len(digits) < LEAST_DIGITS:
        return []
    return [each for each in known if digits in each.phone]


def _by_name(known: tuple[SearchedFarmer, ...], words: str) -> list[SearchedFarmer]:
    names = {number: plain(each.name) for number, each in enumerate(known) if each.name}
    scored = process.extract(
        words, names, scorer=_near, processor=None, score_cutoff=NEAR, limit=MOST
    )
    return [known[number] for _, _, number in scored]


def _near(asked: str, name: str, *, score_cutoff: float | None = None, **_: object) -> float:
    """By whole words in any order, or by a part of the name that is asked for alone."""
    whole = fuzz.token_sort_ratio(asked, name, score_cutoff=score_cutoff)
    part = max(fuzz.ratio(asked, word) for word in name.split()) - 5 if " " not in asked else 0
    return max(whole, part, 99.0 if asked in name else 0.0)
