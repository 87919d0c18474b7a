"""ADD: an officer enrols a farmer from the field, shown back before it is done.

    ADD 123456 07700 900105 Kijani Amina Juma Kiswahili

The number comes first; then the village, which may be left out by an officer of one village;
the name and the language may be left out. A village that is not surely one is asked.
"""

from dataclasses import dataclass

from assistant.dialogue import conversations as talks
from assistant.dialogue.endings import NO_NAME, lasting, opened, said
from assistant.dialogue.engine import begin
from assistant.dialogue.values import Kept, Known, OfficerScope, OnRoll, Turn
from assistant.people import LANGUAGES, LONGEST_NAME, person_name, read_phone
from assistant.reading import language_named, read_choice
from assistant.wording import messages_people as people
from assistant.wording.message import Say

MOST_VILLAGE_WORDS = 4
EXAMPLE_PHONE, EXAMPLE_VILLAGE = "07700900105", "Mtoni"  # set aside for fiction


@dataclass(frozen=True)
class AddText:
    """What was read of an ADD, its code taken off: `phone` is None where none could be."""

    phone: str | None
    words: tuple[str, ...]


def read_add(rest: str, region: str | None) -> AddText:
    """Parts an officer's text into the number and the words after it.

    Args:
        region: ISO 3166-1 or -2, for numbers without a country code.
    """
    words = rest.split()
    count = next((at for at, word in enumerate(words) if _has_letter(word)), len(words))
    number = "".join(words[:count])
    phone = read_phone(number, region[:2] if region else None) if number else None
    return AddText(phone, tuple(words[count:]))


def _has_letter(word: str) -> bool:
    return any(ch.isalpha() for ch in word)


def add(rest: str, known: Known, desk: OfficerScope) -> Turn:
    """The turn for an ADD with the right code."""
    read = read_add(rest, known.region)
    mine = [each.village.name for each in desk.reaches]
    if read.phone is None or not mine:
        village = mine[0] if mine else EXAMPLE_VILLAGE
        how = people.ADD_HOW(phone=EXAMPLE_PHONE, village=village)
        return Turn(known.session, (said(how),))
    where, after = _village(read.words, known, mine)
    name, code = _name_and_language(after, known)
    if desk.on_roll is not None:
        standing = _known_already(read.phone, name, desk.on_roll)
        return Turn(known.session, (said(standing),))
    answers: dict[str, Kept] = {
        "phone": read.phone,
        "name": name or NO_NAME,
        "speaks": LANGUAGES[code],
        "speaks_code": code,
    }
    if where is not None:
        answers["village"] = where
    return opened(begin(talks.ADDING, lasting(known.session), **answers), known)


def _village(
    words: tuple[str, ...], known: Known, mine: list[str]
) -> tuple[str | None, tuple[str, ...]]:
    """The village that the words begin with, and what comes after it."""
    names = {name.casefold(): name for name in mine}
    most = min(len(words), MOST_VILLAGE_WORDS)
    for count in range(most, 0, -1):
        found = names.get(" ".join(words[:count]).casefold())
        if found is not None:
            return found, words[count:]
    for count in range(1, most + 1):
        said_so = " ".join(words[:count])
        near = read_choice(said_so, [[name] for name in mine], known.lexicon).value
        if near is not None and not any(ch.isdigit() for ch in said_so):
            return mine[near], words[count:]
    return (mine[0] if len(mine) == 1 else None), words


def _name_and_language(words: tuple[str, ...], known: Known) -> tuple[str | None, str]:
    """The name, and the language where the words end in one: else the programme's first."""
    for count in (2, 1):
        tail = " ".join(words[-count:])
        code = language_named(tail) or tail.casefold()
        if len(words) >= count and code in known.languages:
            return person_name(" ".join(words[:-count])), code
    return person_name(" ".join(words)[:LONGEST_NAME]), known.languages[0]


def _known_already(phone: str, name: str | None, found: OnRoll) -> Say:
    if not found.seen:
        return people.ADD_ELSEWHERE(phone=phone)
    if found.standing == "no":
        return people.ADD_REFUSED(phone=phone)
    if name and found.name and name.casefold() != found.name.casefold():
        return people.ADD_OTHER_NAME(phone=phone, name=found.name)
    if found.standing == "asked" and found.since is not None:
        return people.ADD_ASKED(phone=phone, date=found.since)
    return people.ADD_KNOWN(phone=phone, name=found.name or NO_NAME, village=found.village)
