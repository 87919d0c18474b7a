"""The ear, before everything else: what a text means decides before what was asked.

`DECISIONS` is the table: for each moment and act, what is done when it was said in words that a
rule knows, when the learned reader is sure, and when it is half sure. A test walks it; there is
no default. An answer whose words are all accounted for is heard by the rules alone.
"""

import re
from collections.abc import Callable, Mapping
from dataclasses import replace
from enum import StrEnum
from types import MappingProxyType

from assistant.acts import Act
from assistant.agronomy.dangers.rows import DANGERS
from assistant.agronomy.life.rows import TASKS, Ask, Delay
from assistant.channel import Channel
from assistant.dialogue import conversations as talks
from assistant.dialogue import endings as e
from assistant.dialogue.accounted import (
    answers_no,
    answers_yes,
    is_accounted,
    is_asked_for_result,
    is_choice,
    names_task,
    perhaps_drained,
    takes_words,
    tells_a_value,
    tells_of_task,
)
from assistant.dialogue.aid import TOLD, aid_text, loss_text, needs_help, person
from assistant.dialogue.engine import begin
from assistant.dialogue.flooding import flooded
from assistant.dialogue.invited import is_invited
from assistant.dialogue.items_flood import answer_flood
from assistant.dialogue.matched import asks_how_to_stop, asks_of_texts, says_who, surely_asked
from assistant.dialogue.rather_asked import (
    asks_beside,
    asks_of_seed,
    asks_plainly_who,
    asks_to_keep_off,
    may_be_asked,
    may_be_bitten,
    supposes,
    surely_of_phone,
)
from assistant.dialogue.reports import mats_lost, sown_again_told
from assistant.dialogue.reports_plan import planted_as_far
from assistant.dialogue.told_of_bed import is_late, tells_of_loss
from assistant.dialogue.values import (
    AnswerWarning,
    AskErasure,
    CallForHelp,
    Change,
    Decline,
    Known,
    PauseTexts,
    RaiseAlarm,
    StopTexts,
    Text,
    Turn,
)
from assistant.dialogue.warned import waits_for_answer
from assistant.hearing import Certainty, Kind, Understood, understand
from assistant.hearing.dating import around_day
from assistant.hearing.thresholds import HALF
from assistant.reading import (
    behind_but,
    guess_language,
    has_name,
    is_name,
    read_deeds,
    says_not_known,
)
from assistant.wording import messages_aid as aid
from assistant.wording import messages_talk as m
from assistant.wording.message import Say

ORDER = (Act.DIE, Act.HARM, Act.DANGER, Act.REFUSE, Act.PERSON)
"""The acts that go before what was asked, the gravest first."""


_ALSO_CHOICES = frozenset({Act.DANGER, Act.REFUSE, Act.PERSON})
_LIVES = frozenset({Act.DIE, Act.HARM})


class Moment(StrEnum):
    """Where a text comes in."""

    OFFICER = "officer"  # an officer who raises no nursery
    STRANGER = "stranger"  # has not agreed: sign-up, an invitation, a first text
    STOPPED = "stopped"
    WARNING = "warning"  # of a storm, and has not answered
    ASKED = "asked"  # a task or a question is open
    FREE = "free"  # nothing is open


class Deed(StrEnum):
    """What is done with a text that was heard."""

    COMFORT = "comfort"  # kind words, one named person told
    AID = "aid"  # the emergency text of the kind, a person told at once
    ASK_IF_HURT = "ask_if_hurt"
    TELL_DANGER = "tell_danger"  # a person told at once, life first
    NEEDS_HELP = "needs_help"  # the same, as the answer to the warning
    ASK_IF_LOST = "ask_if_lost"
    STOP = "stop"
    DECLINE = "decline"
    ASK_STOP = "ask_stop"
    CALL = "call"  # a person is wanted
    PASS = "pass"  # no business of the ear: what was asked decides


Row = tuple[Deed, Deed, Deed]  # said, sure, half

_COMFORT = (Deed.COMFORT, Deed.COMFORT, Deed.ASK_IF_HURT)
_AID = (Deed.AID, Deed.AID, Deed.ASK_IF_HURT)
_TOLD = (Deed.TELL_DANGER, Deed.TELL_DANGER, Deed.ASK_IF_LOST)
_PASS = (Deed.PASS, Deed.PASS, Deed.PASS)
_FARMER: Mapping[Act, Row] = MappingProxyType(
    {
        Act.DIE: _COMFORT,
        Act.HARM: _AID,
        Act.DANGER: _TOLD,
        Act.REFUSE: (Deed.STOP, Deed.ASK_STOP, Deed.ASK_STOP),
        Act.PERSON: (Deed.CALL, Deed.CALL, Deed.PASS),
    }
)

DECISIONS: Mapping[Moment, Mapping[Act, Row]] = MappingProxyType(
    {
        Moment.OFFICER: {
            Act.DIE: _COMFORT,
            Act.HARM: (Deed.AID, Deed.PASS, Deed.PASS),
            Act.DANGER: _PASS,
            Act.REFUSE: _PASS,
            Act.PERSON: _PASS,
        },
        Moment.STRANGER: {
            Act.DIE: _COMFORT,
            Act.HARM: _AID,
            Act.DANGER: (Deed.TELL_DANGER, Deed.TELL_DANGER, Deed.PASS),
            Act.REFUSE: (Deed.DECLINE, Deed.ASK_STOP, Deed.ASK_STOP),
            Act.PERSON: _PASS,
        },
        Moment.STOPPED: {
            Act.DIE: _COMFORT,
            Act.HARM: _AID,
            Act.DANGER: _TOLD,
            Act.REFUSE: _PASS,
            Act.PERSON: (Deed.CALL, Deed.CALL, Deed.PASS),
        },
        Moment.WARNING: {
            **_FARMER,
            Act.DANGER: (Deed.NEEDS_HELP, Deed.NEEDS_HELP, Deed.NEEDS_HELP),
        },
        Moment.ASKED: _FARMER,
        Moment.FREE: _FARMER,
    }
)


def hear_first(text: str, known: Known) -> Turn | None:
    """The turn for a text that must not wait for what was asked; None where what was asked
    decides."""
    heard = understand(text, known.ears, known.catalogue.language)
    row = DECISIONS[moment_of(known)]
    for act, certainty in meant(heard, known):
        if act is Act.REFUSE and certainty is Certainty.SAID and asks_beside(text, known):
            certainty = Certainty.HALF  # a question never stops texts by itself
        deed = row[act][tuple(Certainty).index(certainty)]
        if deed is not Deed.PASS:
            return _DEEDS[deed](heard, known)
    return None


def meant(heard: Understood, known: Known) -> list[tuple[Act, Certainty]]:
    """What a text may be, what must be heard first standing first: somebody in danger, then
    what was said in so many words, then what weighs most."""
    plain = is_accounted(heard.text, known) or _tells_that_planting_is_late(heard.text, known)
    found = [
        (act, certainty)
        for act in ORDER
        if (certainty := _certainty(act, heard, known)) is not None
        and not _is_answer(act, certainty, plain and not heard.is_by_rule(act), heard, known)
    ]
    return sorted(found, key=lambda each: _rank(each[0], each[1], heard))


_CALM = frozenset({Act.QUESTION, Act.DONE, Act.NOTDONE, Act.VALUE, Act.TALK})
_RATHER_CALM, _NEXT_TO_NOTHING = 0.8, 0.1
_STILL_CRIES: Mapping[Act, float] = MappingProxyType({Act.HARM: 0.42, Act.DANGER: 0.9})
_MAY_ASK, _LITTLE = 0.4, 0.2  # what asks and what cries, in what is surely a plain question


def _certainty(act: Act, heard: Understood, known: Known) -> Certainty | None:
    """How sure it is. What a rule hears in a text that weighs as a question, as work done or as
    talk, and as no cry at all ("where do I get burnt hull"), is asked about; and so is a bed in
    danger beside the work that was asked ("I have kept the paddy under water"). Not a bed while
    rain is near, nor of who has not agreed, whom nothing asks."""
    certainty = heard.certainty(act, alert=known.in_storm) or _behind_but(act, heard, known)
    if certainty is not None and _is_of_a_year_ago(act, heard, known):
        return None
    if certainty is Certainty.SURE and _is_hearsay(heard, known) and not known.in_storm:
        return Certainty.HALF
    if certainty is not Certainty.SAID or moment_of(known) is Moment.STRANGER:
        return certainty
    if act is Act.HARM and (_is_calm_of_lives(heard) or _is_hearsay(heard, known)):
        return Certainty.HALF
    if act is Act.DANGER and not known.in_storm:
        light = heard.weights[Act.DANGER] < HALF[Act.DANGER]
        calm = (
            _is_calm(heard)
            or _is_talk(heard)
            or _likely_done(heard, known)
            or _asks_of_bed(heard, known)
        )
        calm = calm or (light and names_task(heard.text, known)) or _is_hearsay(heard, known)
        return Certainty.HALF if calm and not tells_of_loss(heard.text, known) else certainty
    return certainty


_FEWEST_BEHIND = 2  # words


def _behind_but(act: Act, heard: Understood, known: Known) -> Certainty | None:
    """What stands behind a "but" is what counts, and is asked about: "covered, but water is
    coming in" weighs as work done."""
    tail = behind_but(heard.text, known.lexicon)
    if act not in (Act.HARM, Act.DANGER) or len(tail.split()) < _FEWEST_BEHIND:
        return None
    if len(heard.text.split()) - len(tail.split()) <= 1:
        return None  # nothing stands before it: "ma" without its mark is seedlings, too
    beside = understand(tail, known.ears, known.catalogue.language)
    return Certainty.HALF if beside.certainty(act, alert=known.in_storm) else None


def _is_of_a_year_ago(act: Act, heard: Understood, known: Known) -> bool:
    """ "Last year the flood took my bed", with nothing in it of today, and no great weight."""
    most = _STILL_CRIES.get(act)
    if most is None or heard.weights[act] >= most:
        return False
    around = around_day(heard.text, known.ears.days, (known.catalogue.language, "en"))
    return around is not None and around.ago


_MARKS = re.compile(r"[,;.!]+")
_LIKELY_DONE, _RATHER_NO_CRY = 0.5, 0.3
_MAY_BE_WORK = frozenset({Kind.HURT, Kind.WOUND})  # "my back is broken, but all is planted"
_WORK = (Act.DONE, Act.NOTDONE)


_RATHER_TALK = 0.65
_MOST_WORDS_OF_A_CRY = 3


def _is_hearsay(heard: Understood, known: Known) -> bool:
    """Whether it may be of the news or a film, or only nearly happened."""
    around = around_day(heard.text, known.ears.days, (known.catalogue.language, "en"))
    return around is not None and around.hearsay


def _is_talk(heard: Understood) -> bool:
    """Whether it is likelier talk of something else: what was on television, a dream, a match
    that was lost."""
    return heard.weights[Act.TALK] >= _RATHER_TALK and _cries(heard) <= _RATHER_NO_CRY


def _is_calm_of_lives(heard: Understood) -> bool:
    """Whether a word for harm is likelier no cry. Work that is told beside it says nothing of
    it but where the word is one of work: "planted all, then the snake bit my son"."""
    vague = heard.kind(Act.HARM) in _MAY_BE_WORK
    if not vague and len(heard.text.split()) <= _MOST_WORDS_OF_A_CRY:
        return False  # "snake bit me": who talks of a film, or of long ago, must say so
    if _is_talk(heard):
        return True
    if not _is_calm(heard):
        return False
    work = sum(heard.weights[act] for act in _WORK)
    return work < 1 - _RATHER_CALM or vague


def _likely_done(heard: Understood, known: Known) -> bool:
    """Whether what was asked is likelier told than a cry, and nobody calls for help in it."""
    if moment_of(known) is not Moment.ASKED or _calls_for_help(heard, known):
        return False
    done = heard.weights[Act.DONE] >= _LIKELY_DONE
    return done and _cries(heard) <= _RATHER_NO_CRY


def _calls_for_help(heard: Understood, known: Known) -> bool:
    return has_name(heard.text, known.lexicon.choices["help"])


def _cries(heard: Understood) -> float:
    return sum(heard.weights[act] for act in (Act.DIE, Act.HARM, Act.DANGER))


def _is_calm(heard: Understood) -> bool:
    calm = sum(heard.weights[act] for act in _CALM)
    return calm >= _RATHER_CALM and _cries(heard) < _NEXT_TO_NOTHING


def _asks_of_bed(heard: Understood, known: Known) -> bool:
    may_ask = heard.weights[Act.QUESTION] >= _MAY_ASK and _cries(heard) < _LITTLE
    return may_ask and surely_asked(heard.text, known)


def _rank(act: Act, certainty: Certainty, heard: Understood) -> tuple[int, float]:
    """Lives first; who may want to die goes before any refusal and any bed, whatever a rule
    says of those."""
    if act is Act.DIE or (act in _LIVES and certainty is not Certainty.HALF):
        return 0, ORDER.index(act) + (len(ORDER) if certainty is Certainty.HALF else 0)
    if certainty is Certainty.SAID:
        return 1, ORDER.index(act)
    return (2 if act in _LIVES else 3), -heard.weights[act]


def _is_answer(
    act: Act, certainty: Certainty, plain: bool, heard: Understood, known: Known
) -> bool:
    """Whether it is likelier an answer to what was asked than this act."""
    text = heard.text
    if certainty is not Certainty.SAID and (
        plain
        or says_not_known(text, known.lexicon)
        or _answers_help(text, known)
        or (certainty is Certainty.HALF and _tells_who(heard, known))
    ):
        return True
    if act in _ALSO_CHOICES and is_choice(text, known):
        return True  # "flood", or "enough", where it is one of the choices
    if act is Act.REFUSE and tells_a_value(text, known):
        return True
    if act is Act.REFUSE and _says_yes_or_no(certainty, text, known):
        return True
    if _asks_rather(act, certainty, heard, known):
        return True
    if act is Act.DANGER and _tells_what_was_asked(heard, certainty, known):
        return True
    if not takes_words(known):
        return False
    # A person reads these words in any case.
    return certainty is Certainty.HALF or (
        act not in _LIVES and certainty is not Certainty.SAID
    )


def _says_yes_or_no(certainty: Certainty, text: str, known: Known) -> bool:
    """ "I do not want", where yes or no was asked; "yes, put my name", to an invitation."""
    if certainty is Certainty.HALF and answers_no(text, known):
        return True
    return certainty is not Certainty.SAID and answers_yes(text, known)


def _tells_who(heard: Understood, known: Known) -> bool:
    """ "I am his wife", also behind another part: "my husband is in town, I am his wife"."""
    if says_who(heard.text, known):
        return True
    light = not (heard.said or heard.perhaps) and heard.weights[Act.DIE] < _SURELY_DIE
    return light and any(says_who(part, known) for part in _MARKS.split(heard.text) if part)


_SURELY_DIE = 0.7


def _tells_that_planting_is_late(text: str, known: Known) -> bool:
    """ "We are late", where planting was asked: its few words are like those of many a cry."""
    return is_late(text, known) and any(
        TASKS[each.task].delay is Delay.PLANTING for each in known.items
    )


def _answers_help(text: str, known: Known) -> bool:
    """Whether a call for help, and nothing else, answers a warning: it is one of its choices,
    in every language."""
    calls = (name for words in known.lexicons.values() for name in words.choices["help"])
    open_to_it = moment_of(known) in (Moment.WARNING, Moment.ASKED, Moment.FREE)
    return open_to_it and waits_for_answer(known) and is_name(text, calls)


_SURELY_DANGER = 0.8


def _tells_what_was_asked(heard: Understood, certainty: Certainty, known: Known) -> bool:
    """ "I have flooded it" where that was asked; "enough, none left" where the result was, when
    there is no bed to lose any more, and not "short, the goats ate the rest"."""
    surely = heard.weights[Act.DANGER] >= _SURELY_DANGER and certainty is Certainty.SAID
    if tells_of_task(heard.text, known) and not (surely or _rings_beside(heard, known)):
        return True
    if heard.kind(Act.DANGER) in (None, Kind.LOST) and planted_as_far(heard.text, known):
        return True  # its seedlings are in the field, and not lost
    if certainty is Certainty.HALF and _has_its_advice(heard, known):
        return True
    if heard.kind(Act.DANGER) is Kind.LOST and tells_a_value(heard.text, known):
        return True
    if not heard.is_by_rule(Act.DANGER) and perhaps_drained(heard.text, known):
        return True
    if heard.kind(Act.DANGER) is Kind.LOST and _tells_of_flood(heard.text, known):
        return True
    light = heard.weights[Act.DANGER] < HALF[Act.DANGER]
    return light and heard.kind(Act.DANGER) is Kind.LOST and is_asked_for_result(known)


def _rings_beside(heard: Understood, known: Known) -> bool:
    """Whether a part that does not tell the deed is a cry: "uncovered, then the dyke broke"."""
    deeds = {deed for item in known.items for deed in TASKS[item.task].deeds}
    language = known.catalogue.language
    beside = (
        part for part in _MARKS.split(heard.text) if not read_deeds(part, known.lexicon) & deeds
    )
    return any(
        understand(part, known.ears, language).kind(Act.DANGER) is not None for part in beside
    )


def _has_its_advice(heard: Understood, known: Known) -> bool:
    """Whether only a weight speaks of a loss, and animals are named, of which something can be
    said at once: "4 goats came in the bed"."""
    if heard.is_by_rule(Act.DANGER) or known.in_storm:
        return False
    return has_name(heard.text, known.lexicon.choices["animals"])


def _tells_of_flood(text: str, known: Known) -> bool:
    """ "Nothing is left", where it was asked what stands after a flood: it is sown again, and
    the officer hears of it as of any flood."""
    asked = (item for item in known.items if TASKS[item.task].asks is Ask.FLOOD)
    return any(answer_flood(text, known, each, True, None) for each in asked)


_RATHER_REFUSES, _SURELY_REFUSES, _ONLY_REFUSES = 0.6, 0.8, 0.95


def _asks_rather(act: Act, certainty: Certainty, heard: Understood, known: Known) -> bool:
    """Whether a text asks one of the plain questions rather: "who sends these?", "how do I stop
    these if I want no more", but not "does it cost? then do not send"; and what only weighs as
    danger, such as "can river sand be used"; of lives, only what is half sure."""
    if act is Act.REFUSE:
        return _asks_rather_than_refuses(heard, certainty, known)
    if act is Act.DIE or known.in_storm:
        return False  # "no sheet" while it rains is no question
    if act in (Act.DANGER, Act.HARM) and _asks_how_to_keep_off(act, heard, known):
        return True
    if act is Act.DANGER and _only_supposes(heard, known):
        return True
    if certainty is Certainty.SAID:
        return False
    weighs_little = act not in _LIVES or certainty is Certainty.HALF
    if act in _LIVES and may_be_bitten(heard.text, known):
        return False
    return weighs_little and surely_asked(heard.text, known)


def _asks_rather_than_refuses(heard: Understood, certainty: Certainty, known: Known) -> bool:
    text, weight = heard.text, heard.weights[Act.REFUSE]
    is_said = certainty is Certainty.SAID
    if asks_plainly_who(text, known, only_price=is_said) and not (
        is_said and weight >= _SURELY_REFUSES
    ):
        return True
    if weight >= _RATHER_REFUSES:
        if is_said and weight >= _ONLY_REFUSES:
            return False  # "why so many, do not send any more": asked about, by its question
        light = not is_said and weight < _SURELY_REFUSES
        return (light and surely_of_phone(text, known)) or asks_how_to_stop(text, known)
    if weight < _NEXT_TO_NOTHING and heard.weights[Act.QUESTION] >= _SURELY_ASKS:
        return may_be_asked(text, known)  # a word of refusal that is one of work too
    return asks_of_texts(text, known, is_said)


def _asks_how_to_keep_off(act: Act, heard: Understood, known: Known) -> bool:
    """ "Birds finish my seed, how do I chase them": answered, and a person hears of it too. Of
    lives only where a weight alone speaks of them, "ants carry off the seed, what do I use"."""
    if act is Act.HARM and (heard.is_by_rule(act) or not asks_of_seed(heard.text, known)):
        return False  # "ants bit my child, what do I do"
    if act is Act.DANGER and heard.kind(act) not in (Kind.LOST, None):
        return False
    return asks_to_keep_off(heard.text, known)


_SURELY_ASKS, _RATHER_ASKS, _HARDLY = 0.7, 0.5, 0.25


def _only_supposes(heard: Understood, known: Known) -> bool:
    """Whether a loss is only thought of: "if flood covers it, how many days can it stand",
    "will salt water kill the seedlings"."""
    asks, cries = heard.weights[Act.QUESTION], _cries(heard)
    if asks >= _RATHER_ASKS and cries < _HARDLY and supposes(heard.text, known):
        return True
    lost = heard.kind(Act.DANGER) is not Kind.DANGER
    return (
        lost
        and asks >= _SURELY_ASKS
        and cries < _NEXT_TO_NOTHING
        and may_be_asked(heard.text, known)
    )


def moment_of(known: Known) -> Moment:
    """Where a text comes in."""
    farmer = known.farmer
    if known.desk is not None and farmer is None:
        return Moment.OFFICER
    if farmer is None or farmer.consent_at is None:
        return Moment.STRANGER
    if farmer.stopped_at is not None:
        return Moment.STOPPED
    if known.warning and waits_for_answer(known) and DANGERS[known.warning.danger].storm:
        return Moment.WARNING
    return Moment.ASKED if known.items or known.session else Moment.FREE


# --- what is said ----------------------------------------------------------------------------


def _comfort(heard: Understood, known: Known) -> Turn:
    """Kind words and one named person; nothing of how, nothing of coming back."""
    near = known.nearby
    says = aid.DIE_HERE()
    if near.emergency and heard.kind(Act.HARM) is not None and near.health_post:
        says = aid.DIE_HURT(
            emergency=near.emergency, health_post=near.health_post, person=person(known)
        )
    elif near.emergency:
        says = aid.DIE(emergency=near.emergency, person=person(known))
    return _told(heard, known, says, RaiseAlarm(Kind.DIE, heard.text))


def _aid(heard: Understood, known: Known) -> Turn:
    kind = heard.kind(Act.HARM) or Kind.HURT
    changes = (_alarm(kind, heard, known), *needs_help(known))
    return _told(heard, known, aid_text(kind, known.nearby), *changes)


def _ask_if_hurt(heard: Understood, known: Known) -> Turn:
    kind = Kind.DIE if heard.certainty(Act.DIE) else Kind.HURT
    asked = begin(talks.IF_HURT, held=e.lasting(known.session))
    change = replace(_alarm(kind, heard, known), sure=False)
    return _in_their_words(e.opened(asked, known, changes=(change,)), heard, known)


def _tell_danger(heard: Understood, known: Known) -> Turn:
    kind = _loss(heard, known)
    stopped = known.farmer is not None and known.farmer.stopped_at is not None
    if kind is Kind.LOST and not (known.in_storm or stopped):
        # What is left is what counts, and its number.
        told, alarm = loss_text(kind, known), (_alarm(kind, heard, known),)
        counted = sown_again_told(heard.text, known, told, changes=alarm)
        counted = counted or mats_lost(heard.text, known, told, changes=alarm)
        if counted is not None:
            return counted
    after = flooded(known) if kind is Kind.DANGER else ()
    return _told(heard, known, loss_text(kind, known), _alarm(kind, heard, known), *after)


def _needs_help(heard: Understood, known: Known) -> Turn:
    if known.warning is None:
        raise LookupError("no warning stands that a cry could answer")
    change = AnswerWarning(known.warning.id, "help", heard.text)
    after = flooded(known) if _loss(heard, known) is Kind.DANGER else ()
    return _told(heard, known, aid.DANGER_TOLD(person=person(known)), change, *after)


def _ask_if_lost(heard: Understood, known: Known) -> Turn:
    asked = begin(talks.IF_LOST, held=e.lasting(known.session), words=heard.text)
    return e.opened(asked, known)


def _stop(heard: Understood, known: Known) -> Turn:
    if heard.kind(Act.REFUSE) is not Kind.ERASE:
        return e.stop(known.session, known)
    says = aid.ERASE_TOLD(person=person(known))
    changes = (StopTexts(), CallForHelp("erase", heard.text), AskErasure())
    return Turn(e.lasting(known.session), (e.said(says),), changes)


def _decline(heard: Understood, known: Known) -> Turn:
    return Turn(None, (e.said(m.NO_CONSENT()),), (Decline(),))


def ask_stop(text: str, known: Known) -> Turn:
    """What may be a wish for no more texts is asked, and the daily ones rest until a word."""
    asked = begin(talks.STOP_ALL, held=e.lasting(known.session))
    return e.opened(asked, known, changes=(PauseTexts(text),))


def _ask_stop(heard: Understood, known: Known) -> Turn:
    """Of who was invited and asked yes or no, half a refusal is no: START undoes it."""
    if is_invited(known):
        return _decline(heard, known)
    return ask_stop(heard.text, known)


def _call(heard: Understood, known: Known) -> Turn:
    if takes_words(known):  # they have been given: they are not asked for once more
        known = replace(known, session=e.holds(known.session))
    return e.wants_person(heard.text, known)


_DEEDS: Mapping[Deed, Callable[[Understood, Known], Turn]] = MappingProxyType(
    {
        Deed.COMFORT: _comfort,
        Deed.AID: _aid,
        Deed.ASK_IF_HURT: _ask_if_hurt,
        Deed.TELL_DANGER: _tell_danger,
        Deed.NEEDS_HELP: _needs_help,
        Deed.ASK_IF_LOST: _ask_if_lost,
        Deed.STOP: _stop,
        Deed.DECLINE: _decline,
        Deed.ASK_STOP: _ask_stop,
        Deed.CALL: _call,
    }
)


def _alarm(kind: Kind, heard: Understood, known: Known) -> RaiseAlarm:
    only = known.nurseries[0].id if len(known.nurseries) == 1 else None
    return RaiseAlarm(kind, heard.text, only)


def _loss(heard: Understood, known: Known) -> Kind:
    """The bed alone only where a rule says so: of what is not known, life goes first."""
    said = heard.kind(Act.DANGER)
    return said or Kind.DANGER


def _told(heard: Understood, known: Known, says: Say, *changes: Change) -> Turn:
    """One text and no other question; the talk that was open stays as it is. On a screen it
    comes as a text too, to be kept."""
    keep = known.channel is Channel.USSD
    # Words that were asked for have been given; another question stays open.
    session = e.holds(known.session) if takes_words(known) else known.session
    turn = Turn(session, (Text((says,), TOLD, keep=keep),), changes)
    return _in_their_words(turn, heard, known)


def _in_their_words(turn: Turn, heard: Understood, known: Known) -> Turn:
    """In the language that was written, where nobody has said which it is to be, or where it is
    plainly not that one: a cry is answered in the words of who cries."""
    guess = guess_language(heard.text, known.lexicons)
    spoken = known.farmer is not None or known.session is not None
    if guess not in known.languages or (spoken and not _is_written_in(guess, heard, known)):
        return turn
    return replace(turn, language=guess)


def _is_written_in(language: str | None, heard: Understood, known: Known) -> bool:
    """Whether words and rules agree on a language that is not the person's own."""
    return language in heard.tongues and known.catalogue.language not in heard.tongues
