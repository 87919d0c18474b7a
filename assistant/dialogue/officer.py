"""An officer's texts: RAIN, COUNT, CLEAR, WHO, TEMP, ADD, TELL, SEEN, each with a code.

    RAIN 123456 Mtoni 14-20            warns; also COLD, HAIL, ... (see `officer_warn`)
    COUNT 123456 Mtoni                 what the farmers answered
    CLEAR 123456 Mtoni                 the all-clear
    CLEAR 123456 Mtoni COLD            of one danger, where several are warned of
    WHO 123456                         nurseries to be seen
    WHO 123456 Kijani                  those of one village
    TEMP 123456 Mtoni 24               the mean temperature (see `officer_temp`)
    ADD 123456 0770... Mtoni Amina     enrols a farmer (see `officer_add`)
    TELL 123456 0770... words          answers a call for help (see `officer_tell`)
    SEEN 123456 0770...                the call is done

The code is six digits, or eight right behind the word where one was sent to pass a lock.
Whether it is right is the service's to know; here it is only found, so that it can be checked
and kept out of stored texts.
"""

import re
import unicodedata
from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace

from assistant.agronomy.dangers.rows import DANGERS, RAIN, DangerRow
from assistant.dialogue.callers import caller
from assistant.dialogue.endings import said
from assistant.dialogue.officer_add import add
from assistant.dialogue.officer_tell import seen, tell
from assistant.dialogue.officer_temp import keep_temp, read_temp
from assistant.dialogue.officer_villages import is_named, no_village, reach_of
from assistant.dialogue.officer_warn import warn
from assistant.dialogue.rain_hours import span_slots
from assistant.dialogue.values import (
    GiveAllClear,
    Known,
    OfficerScope,
    Tally,
    Text,
    Turn,
    Visit,
)
from assistant.wording import messages_dangers as dangers
from assistant.wording import messages_officer as o
from assistant.wording import messages_rain as rain
from assistant.wording.dangers import name_of
from assistant.wording.message import Say, Slot

VERBS = ("RAIN", "COUNT", "CLEAR", "WHO", "TEMP", "ADD", "TELL", "SEEN")
# An officer who farms may begin with the others too.
_BARE = frozenset(VERBS) - {"TELL", "SEEN"}
_CODE = re.compile(r"(?<!\d)\d{6}(?!\d)")
_ONE_TIME = re.compile(r"\w+\W+(\d{8})(?!\d)")  # right behind the word; elsewhere it is a phone
_LOOSE_CODE = re.compile(r"\d(?:[ -]?\d){5,}")
MOST_VISITS = 5


def verb_of(text: str) -> str | None:
    """The officer's word that a text begins with; of a danger in any language."""
    words = unicodedata.normalize("NFC", text).split(maxsplit=1)
    first = words[0].strip(".,:;!").upper() if words else ""
    return first if first in VERBS or DANGERS.of_word(first) else None


def more_words(language: str) -> Say:
    """The words of the dangers beside rain, in a language."""
    words = (each.word(language) for each in DANGERS.all if each.code != RAIN)
    return dangers.MORE_WORDS(words=", ".join(words))


def code_in(text: str) -> str | None:
    """The code in an officer's text, right or wrong."""
    if verb_of(text) is None:
        return None
    one_time = _ONE_TIME.match(text.strip())
    if one_time is not None:
        return one_time[1]
    found = _CODE.search(text)
    return found[0] if found else None


def without_code(text: str) -> str:
    """The text as it may be stored."""
    if verb_of(text) is None:
        return text
    one_time = _ONE_TIME.match(text.strip())
    text = text.replace(one_time[1], "******", 1) if one_time else text
    return _CODE.sub("******", text)


def without_any_code(text: str) -> str:
    """An officer's text without anything that may be a code, also one written apart."""
    return _LOOSE_CODE.sub("******", text)


def officer_turn(text: str, known: Known, desk: OfficerScope) -> Turn | None:
    """The turn for an officer's text; None where it is not one."""
    verb = verb_of(text)
    if verb is None or (verb not in _BARE and not any(map(str.isdecimal, text))):
        return None
    if desk.locked_until is not None:
        return Turn(known.session, (said(_locked(desk)),))
    if not desk.code_given:
        return Turn(known.session, (said(o.NEED_CODE(village=_any_village(desk))),))
    danger = DANGERS.of_word(verb)
    if danger is not None:
        turn = warn(danger, verb, after_code(text), known, desk)
    else:
        turn = _VERBS[verb](after_code(text), known, desk)
    if desk.next_code is None:
        return turn
    return replace(turn, texts=(said(o.NEXT_CODE(code=desk.next_code)), *turn.texts))


def _locked(desk: OfficerScope) -> Say:
    """What the phone itself is told: it can be read by its owner and by no forger."""
    return o.CODE_WAY_BACK(code=desk.one_time) if desk.one_time else o.CODE_LOCKED()


def after_code(text: str) -> str:
    """An officer's text without its word and the code: the first six digits that stand alone.
    Others may be a part of a phone number."""
    rest = text.split()[1:]
    if _ONE_TIME.match(text.strip()):
        return " ".join(rest[1:])
    return " ".join(_CODE.sub(" ", " ".join(rest), count=1).split())


def _any_village(desk: OfficerScope) -> str:
    return desk.reaches[0].village.name if desk.reaches else "Mtoni"


# --- COUNT, CLEAR, WHO -----------------------------------------------------------------------


def _tallies(
    rest: str, known: Known, desk: OfficerScope, verb: str
) -> tuple[Tally, ...] | Turn:
    """The tallies of a village, a danger each; of one where its word ends the text."""
    name, danger = _split_danger(rest)
    reach = reach_of(name, known, desk)
    if reach is None:
        return Turn(known.session, (no_village(verb, desk),))
    standing = tuple(
        each
        for each in desk.tallies
        if each.village.id == reach.village.id
        and (danger is None or each.standing.danger == danger.code)
    )
    if not standing:
        return Turn(known.session, (said(o.NO_WARNING(village=reach.village.name)),))
    return standing


def _split_danger(rest: str) -> tuple[str, DangerRow | None]:
    words = rest.split()
    last = unicodedata.normalize("NFC", words[-1]).upper() if words else ""
    danger = DANGERS.of_word(last)
    return (" ".join(words[:-1]), danger) if danger else (rest, None)


def _count(rest: str, known: Known, desk: OfficerScope) -> Turn:
    tallies = _tallies(rest, known, desk, "COUNT")
    if isinstance(tallies, Turn):
        return tallies
    return Turn(known.session, (Text(tuple(map(_counted, tallies))),))


def _counted(tally: Tally) -> Say:
    standing = tally.standing
    times = span_slots(standing.starts_at, standing.ends_at, tally.village)
    counts: dict[str, Slot] = {
        "village": tally.village.name,
        "asked": tally.asked,
        "delivered": tally.delivered,
        "covered": tally.covered,
        "help": tally.need_help,
    }
    if standing.danger != RAIN:
        return dangers.COUNTED(danger=name_of(standing.danger), date=times["date"], **counts)
    return o.COUNTED(from_time=times["from_time"], to_time=times["to_time"], **counts)


def _clear(rest: str, known: Known, desk: OfficerScope) -> Turn:
    tallies = _tallies(rest, known, desk, "CLEAR")
    if isinstance(tallies, Turn):
        return tallies
    village = tallies[0].village
    if not is_named(_split_danger(rest)[0], village):  # for the wrong village it can do harm
        asks = rain.NEARLY(village=village.name, example="CLEAR")
        return Turn(known.session, (said(asks),))
    if len(tallies) > 1:
        return Turn(known.session, (said(_which(tallies, known)),))
    change = GiveAllClear(tallies[0].standing.id)
    return Turn(known.session, (said(o.CLEARED(village=village.name)),), (change,))


def _which(tallies: Sequence[Tally], known: Known) -> Say:
    language = known.catalogue.language
    words = [DANGERS[each.standing.danger].word(language) for each in tallies]
    return dangers.WHICH(
        village=tallies[0].village.name, words=", ".join(words), word=words[-1]
    )


def _who(rest: str, known: Known, desk: OfficerScope) -> Turn:
    visits = desk.visits
    if rest:
        reach = reach_of(rest, known, desk)
        if reach is None:
            return Turn(known.session, (no_village("WHO", desk),))
        visits = tuple(each for each in visits if each.village == reach.village.name)
    if not visits:
        return Turn(known.session, (said(o.NOBODY_TO_SEE()),))
    lines = [_visit(each) for each in visits[:MOST_VISITS]]
    if len(visits) > MOST_VISITS:
        lines.append(o.AND_MORE(n=len(visits) - MOST_VISITS))
    return Turn(known.session, (Text(tuple(lines)),))


def _visit(visit: Visit) -> Say:
    """One to be seen; a call may be about no nursery."""
    slots: dict[str, Slot] = {
        "phone": caller(visit.name, visit.phone),
        "village": visit.village,
        "reason": visit.reason,
        "date": visit.since,
    }
    return o.SEE(label=visit.label, **slots) if visit.label else o.SEE_WHO(**slots)


def _temp(rest: str, known: Known, desk: OfficerScope) -> Turn:
    told = read_temp(rest, known)
    reach = reach_of(told.name, known, desk)
    if reach is None:
        return Turn(known.session, (no_village("TEMP", desk),))
    return keep_temp(reach.village, told, known)


_VERBS: Mapping[str, Callable[[str, Known, OfficerScope], Turn]] = {
    "COUNT": _count,
    "CLEAR": _clear,
    "WHO": _who,
    "TEMP": _temp,
    "ADD": add,
    "TELL": tell,
    "SEEN": seen,
}
