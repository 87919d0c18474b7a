"""A plain question is answered at once, from this nursery on this day where it needs one.

Which question it is, the ear says by exact rules (`hearing/asking.py`); here stands what each
is answered with. The answer is given in passing: what was asked of the farmer stands again.
"""

from collections.abc import Callable, Mapping
from dataclasses import replace
from types import MappingProxyType

from assistant.acts import Act
from assistant.agronomy.life.rows import TASKS, Delay
from assistant.channel import Channel
from assistant.dialogue import answers_plan as plan
from assistant.dialogue import conversations as talks
from assistant.dialogue import endings as e
from assistant.dialogue.accounted import is_answer, is_word, takes_words, tells_a_value
from assistant.dialogue.aid import person
from assistant.dialogue.answers_more import MORE_ANSWERS
from assistant.dialogue.asked_wish import (
    asks_beside_a_wish,
    is_for_a_person,
    is_more_than_a_wish,
    with_wish,
)
from assistant.dialogue.by_office import (
    OFFICE,
    office_answer,
    office_perhaps,
    office_question,
)
from assistant.dialogue.endings_tips import TIPS_ENDINGS
from assistant.dialogue.engine import ask, begin, find
from assistant.dialogue.invited import asking
from assistant.dialogue.items import split_label, tells_a_deed
from assistant.dialogue.lists import choice_names
from assistant.dialogue.matched import (
    SOMETHING_ELSE,
    Match,
    match,
    offer_which,
    says_who,
)
from assistant.dialogue.rather_asked import (
    KEEPS_OFF,
    asks_of_seed,
    asks_plainly_who,
    asks_to_keep_off,
    supposes,
)
from assistant.dialogue.results import cost_text
from assistant.dialogue.values import Focus, Inquiry, Known, Session, Turn
from assistant.dialogue.wishes import WISHES
from assistant.hearing import Kind, Question, Topic, understand
from assistant.reading import (
    Outcome,
    Wish,
    guess_language,
    is_name,
    names_day,
    read_told,
    read_wish,
)
from assistant.wording import messages_aid as aid
from assistant.wording import messages_answers as a
from assistant.wording import messages_care as care
from assistant.wording import messages_steps as steps
from assistant.wording import messages_talk as m
from assistant.wording.day import offer
from assistant.wording.figures import FIGURES
from assistant.wording.message import Say

fixed, of_bed, of_any, of_bed_or = plan.fixed, plan.of_bed, plan.of_any, plan.of_bed_or

_SOAKED = {"hours": FIGURES["soak_hours"], "lie": FIGURES["lie_hours"]}
_ROOT = {"least": FIGURES["root_low"], "most": FIGURES["root_high"]}
_TEST_DAYS = FIGURES["test_days"]


def _officer(text: str, known: Known) -> tuple[Say, ...]:
    return (a.OFFICER_WHEN(person=person(known)),)


def _village(text: str, known: Known) -> tuple[Say, ...]:
    return (a.VILLAGE(person=person(known)),)


ANSWERS: Mapping[Topic, plan.Answer] = MappingProxyType(
    {
        # the service
        Topic.FREE: fixed(a.FREE()),
        Topic.WHO: fixed(a.WHO()),
        Topic.MY_NUMBER: fixed(a.MY_NUMBER()),
        Topic.STOP_HOW: fixed(a.STOP_HOW()),
        Topic.NEIGHBOUR: fixed(a.NEIGHBOUR()),
        Topic.HOUSEHOLD: fixed(a.HOUSEHOLD()),
        Topic.TRAVEL: fixed(a.TRAVEL()),
        Topic.HERE: fixed(a.HERE()),
        Topic.OFFICER_WHEN: _officer,
        Topic.CHANGE: fixed(a.CHANGE()),
        Topic.ADD_FIELD: fixed(a.ADD()),
        Topic.VILLAGE: _village,
        Topic.PHONE: fixed(a.PHONE()),
        Topic.DATA: fixed(a.DATA()),
        # amounts and money
        Topic.SUM_ASIDE: plan.summed,
        Topic.SEED_MUCH: plan.seed_amount,
        Topic.MIX_MUCH: plan.mixed,
        Topic.MATS_MANY: plan.bed_size,
        Topic.SHEET_MUCH: of_bed(steps.SHEET),
        Topic.PEOPLE: plan.people,
        Topic.SEED_PRICE: plan.prices,
        Topic.PRICE_RICE: fixed(a.NO_MARKET()),
        Topic.BUY: fixed(a.BUY()),
        # days
        Topic.SOW_WHEN: plan.sown,
        Topic.UNCOVER_WHEN: plan.uncovered,
        Topic.DRAIN_WHEN: plan.drained,
        Topic.PLANT_WHEN: plan.planted,
        Topic.AGE: of_any(a.AGE),
        Topic.TOO_LATE: plan.too_late,
        Topic.GROWTH: of_any(a.GROWTH),
        Topic.COUNT_LEAVES: fixed(a.COUNT_LEAVES()),
        Topic.COLD: fixed(a.COLD()),
        Topic.AFTER_PLANT: fixed(a.AFTER_PLANT()),
        # water
        Topic.WATER_NOW: plan.watered,
        Topic.NO_WATER: plan.dry,
        Topic.WATER_DEEP: plan.deep,
        Topic.ONE_CM: fixed(a.ONE_CM()),
        Topic.WATER_TIME: fixed(a.WATER_TIME()),
        Topic.WATER_SALT: fixed(a.SALT_WATER()),
        Topic.WATER_TAP: fixed(a.TAP()),
        Topic.WATER_HOW: fixed(a.WATER_HOW()),
        Topic.WATER_FOUL: fixed(a.WATER_FOUL()),
        Topic.FORECAST: fixed(a.FORECAST()),
        # seed
        Topic.SOAK: fixed(a.SOAK_LONG(**_SOAKED, **_ROOT)),
        Topic.WHY_SOAK: fixed(a.WHY_SOAK()),
        Topic.INCUBATE: fixed(a.INCUBATE(lie=FIGURES["lie_hours"])),
        Topic.SOAKED_LONG: fixed(a.SOAKED_LONG()),
        Topic.SOW_THICK: of_bed_or(a.SOW_THICK, fixed(steps.SPREAD())),
        Topic.DRY_SEED: fixed(a.DRY_SEED(**_SOAKED)),
        Topic.ROOT_LENGTH: fixed(a.ROOTS(**_ROOT)),
        Topic.VARIETY: fixed(a.VARIETY()),
        Topic.ANY_VARIETY: fixed(a.ANY_VARIETY()),
        Topic.TWO_SEEDS: fixed(a.TWO_SEEDS()),
        Topic.SEED_TEST: fixed(a.TEST(days=_TEST_DAYS, good=FIGURES["assumed"])),
        Topic.SEED_GOOD: fixed(steps.GOOD_SEED()),
        Topic.OLD_SEED: fixed(a.OLD_SEED(days=_TEST_DAYS)),
        Topic.WHAT_SPROUT: fixed(a.WHAT_SPROUT()),
        Topic.TREATED: fixed(steps.TREATED()),
        # the bed; what it is and how it is made only before a plan, see `_MAKES`
        Topic.WHAT_MAT: of_any(steps.WHAT_MAT),
        Topic.WHY_MAT: fixed(a.WHY_MAT()),
        Topic.HOW_MAKE: of_any(a.MAKE_FIRST),
        Topic.PLACE: of_bed_or(steps.GROUND, fixed(steps.NOT_HERE())),
        Topic.NO_SHEET: fixed(a.NO_SHEET()),
        Topic.NO_HULL: fixed(a.NO_HULL()),
        Topic.HULL: fixed(steps.HULL()),
        Topic.NO_FRAME: of_any(steps.FENCE),
        Topic.FRAME: of_any(steps.FRAME),
        Topic.NO_MANURE: fixed(a.NO_MANURE()),
        Topic.MANURE: fixed(steps.MANURE()),
        Topic.SAND: fixed(a.SAND()),
        Topic.SOIL_DEEP: of_any(steps.SET),
        Topic.SEED_DEEP: of_any(steps.COVER_THIN),
        Topic.HOW_MIX: of_any(steps.MEASURE),
        Topic.SOW_HOW: fixed(steps.SPREAD()),
        Topic.WHY_COVER: fixed(a.WHY_COVER()),
        Topic.COVER_THICK: fixed(steps.ABOVE()),
        Topic.UNCOVER_HOW: fixed(steps.EVENING()),
        Topic.WHY_DRAIN: fixed(a.WHY_DRAIN()),
        Topic.CUT: fixed(steps.CUT()),
        Topic.CARRY: of_any(steps.CARRY),
        Topic.SPACING: of_any(steps.PLANT),
        Topic.PLANT_HOW: of_any(steps.PLANT),
        Topic.WHAT_HILL: fixed(a.WHAT_HILL()),
        Topic.MACHINE: fixed(a.MACHINE()),
        Topic.FITS: fixed(a.FITS()),
        # dangers: no dose, no product, no bait
        Topic.UREA: fixed(a.UREA()),
        Topic.MEDICINE: fixed(a.NO_DOSE()),
        Topic.ANTS: fixed(a.ANTS()),
        Topic.GUARD: fixed(steps.GUARD()),
        **MORE_ANSWERS,
    }
)
"""What each question is answered with, a text or a few."""


def _costs(session: Session | None, known: Known) -> Turn:
    texts = [text for bed in known.nurseries for text in cost_text(bed, known)]
    return e.ended(session, known, *(texts or [e.said(a.NO_PRICES())]))


def _days(session: Session | None, known: Known) -> Turn:
    return e.when(session, known, known.nurseries)


def _salt(session: Session | None, known: Known) -> Turn:
    return TIPS_ENDINGS["!salt"](session or begin(talks.MENU), known)


def _wish(wish: Wish) -> Callable[[str, Known], Turn]:
    return lambda text, known: WISHES[wish](text, known)


_SHOWN: Mapping[Topic, Callable[[Session | None, Known], Turn]] = MappingProxyType(
    {
        Topic.COSTS: _costs,
        Topic.SALT_SORT: _salt,
        Topic.WATER_RAIN: e.rain,
        Topic.NEXT: _days,
        Topic.TODAY: e.today,
        Topic.MISSED: e.today,
    }
)
"""Questions that other parts of the talk answer, in passing."""
_WITH_PLAN = frozenset({Topic.SALT_SORT, Topic.NEXT, Topic.TODAY, Topic.MISSED})
_OPENS: Mapping[Topic, Callable[[str, Known], Turn]] = MappingProxyType(
    {Topic.LANGUAGE: _wish(Wish.LANGUAGE), Topic.EXPLAIN: _wish(Wish.HELP)}
)
_MAKES = frozenset({Topic.WHAT_MAT, Topic.HOW_MAKE})
_GRAVE = (Act.DIE, Act.HARM, Act.DANGER, Act.REFUSE)
_LIKELY_GRAVE = 0.4
_MORE_THAN_HALF, _SURELY = 0.5, 0.8
_HALF = 0.3  # a question that weighs as much may be one after all
# Answered, and a person must act: a bed in danger, a village or number that only the office
# changes, papers and money, a cheat in the line's name, a heart that is low.
_TOLD_TOO = frozenset(
    {
        Topic.NO_WATER,
        Topic.VILLAGE,
        Topic.NEW_PHONE,
        Topic.MONEY_HELP,
        Topic.SCAM,
        Topic.LOW_HEART,
    }
)
# What is asked without a word of asking: "no plastic", "I am his wife".
_SAID = frozenset(
    {
        Topic.NO_SHEET,
        Topic.NO_HULL,
        Topic.NO_FRAME,
        Topic.NO_MANURE,
        Topic.NO_WATER,
        Topic.NEIGHBOUR,
        Topic.HOUSEHOLD,
        Topic.TRAVEL,
        Topic.EXPLAIN,
        Topic.LANGUAGE,
        Topic.VILLAGE,
    }
)
_WORDS_TO_SEND = 2
_LIKELIEST = 2  # of those that are offered
_FEWEST_WORDS = 2  # of a text that may be one of several questions


def answered(text: str, known: Known) -> Turn | None:
    """The answer to a question that is asked as one; None where the text is none, is an answer
    to what is open, or cannot be answered without a plan."""
    if says_who(text, known) and not takes_words(known):
        return _turn(Topic.HOUSEHOLD, text, known)
    return _answered(text, known, is_last=False)


def answered_at_last(text: str, known: Known) -> Turn | None:
    """The same for what only may be a question, "the roots are long now", once nobody has read
    a report in it."""
    return _answered(text, known, is_last=True)


def _may_ask(text: str, found: Match, known: Known, is_last: bool) -> bool:
    """Whether a text asks by its words; or by weight, or at last by nothing else. One that
    gives a number or a day to the work, which are for other readers (`dated.py`), must weigh as
    a question more surely, or nothing be open and nobody else have read it."""
    if found.asks:
        return True
    weights = understand(text, known.ears, known.catalogue.language).weights
    asks = weights[Act.QUESTION]
    is_last = is_last and weights[Act.TROUBLE] < _MORE_THAN_HALF  # which is heard as one first
    given = any(sign.isdigit() for sign in text)
    if given or names_day(text, known.lexicon, known.today):
        is_free = known.session is None and not known.items
        left = is_last and is_free and (found.question is not None or asks >= _HALF)
        return left or (asks >= _SURELY and not known.items)
    return is_last or asks >= _MORE_THAN_HALF


def _answered(text: str, known: Known, is_last: bool) -> Turn | None:
    if _is_for_others(text, known):
        return None
    languages = _languages(text, known)
    if (theirs := office_question(text, known, languages)) is not None:
        return office_answer(theirs, known)
    area = plan.area_in(text, known) is not None
    rule = known.ears.questions.heard(text, languages, area)
    found = match(text, rule, known, languages)
    is_free = known.session is None and not known.items
    if rule is not None and not found.sure and _asks_plainly(text, known):
        turn = _turn(rule.topic, text, known)
        return _in_their_words(turn, text, known) if turn else None
    if not found.sure and _supposes_a_loss(text, known):
        return _passed_on(text, known)
    if found.question is None and (found.asks or (is_last and is_free)):
        perhaps = office_perhaps(text, known, languages)
        if perhaps:
            return offer_which(text, found.perhaps, known, perhaps)
    return _ours(text, found, known) if _may_ask(text, found, known, is_last) else None


def _asks_plainly(text: str, known: Known) -> bool:
    """Whether rules and table hear the same question of price or of keeping animals off, which
    weighs as a cry or a refusal; not one that counts a loss."""
    if asks_plainly_who(text, known, only_price=True):
        return True
    weights = understand(text, known.ears, known.catalogue.language).weights
    counts = any(sign.isdigit() for sign in text)
    tells = counts or weights[Act.TROUBLE] >= _MORE_THAN_HALF
    if tells or known.in_storm or not asks_to_keep_off(text, known):
        return False
    return weights[Act.HARM] < _HALF or asks_of_seed(text, known)


def _supposes_a_loss(text: str, known: Known) -> bool:
    """ "If flood covers it, how many days can it stand": no alarm, and a person's to answer."""
    if known.farmer is None or known.farmer.consent_at is None or not supposes(text, known):
        return False
    heard = understand(text, known.ears, known.catalogue.language)
    return heard.kind(Act.DANGER) is Kind.DANGER and known.session is None


def _ours(text: str, found: Match, known: Known) -> Turn | None:
    """The answer to one of our own questions."""
    wished = _is_wish(text, known)
    unsure = None if found.question else _unsure(text, found, known, wished)
    if unsure is not None:
        return unsure
    question = found.question
    if question is None or not _is_asked(text, question, known, wished):
        return None
    if question.topic is Topic.NO_WATER and _plants_today(known):
        return None  # why it is not planted, which was asked
    if not question.asks and tells_a_deed(text, known):
        return None
    turn = _turn(question.topic, text, known)
    return _in_their_words(turn, text, known) if turn else None


def _is_for_others(text: str, known: Known) -> bool:
    """Whether a text is words that were asked for, an answer, or a word to send."""
    if takes_words(known) or _answers_what_is_open(text, known):
        return True
    return _is_word_to_send(text, known) or _is_of_the_menu(text, known)


def _asks_of_lost(text: str, topic: Topic, known: Known) -> bool:
    told = known.session is not None and known.session.conversation == talks.LOST_FILL.name
    return told and topic in _MAKES and any(sign.isdigit() for sign in text)


def _unsure(text: str, found: Match, known: Known, wished: bool) -> Turn | None:
    """Where no question is sure: those that it may be are offered, but a wish goes first where
    it is the whole of the text; what is like none of ours is a person's."""
    sized = {_sized(topic, text, known) for topic in found.perhaps[:_LIKELIEST]}
    if sized == {Topic.SUM_ASIDE} and known.session is None:
        return _turn(Topic.SUM_ASIDE, text, known)  # one answer, whichever it is
    more = wished and is_more_than_a_wish(text, found, known)
    if (more or not wished) and _may_be_offered(text, found, known):
        return offer_which(text, with_wish(found.perhaps, text, known), known)
    return _passed_on(text, known) if more and is_for_a_person(found, known) else None


def _answers_what_is_open(text: str, known: Known) -> bool:
    """Whether a text is words that answers are made of, where one is waited for; with a mark of
    asking they ask: "are they ready for the field?"."""
    if tells_a_value(text, known) and "?" not in text:
        return True
    if not is_answer(text, known) or _surely_asks(text, known):
        return False
    has_words = any(sign.isalpha() for sign in text)
    is_open = known.session is not None or bool(known.items)
    return not has_words or (is_open and "?" not in text)


def _surely_asks(text: str, known: Known) -> bool:
    """ "Can I plant today": its words are those of answers, and all its weight asks."""
    weights = understand(text, known.ears, known.catalogue.language).weights
    reading = read_told(text, known.lexicon, digits=False)
    told = reading.value == "done" or reading.outcome is Outcome.UNDERSTOOD
    return weights[Act.QUESTION] >= _SURELY and not told


def _plants_today(known: Known) -> bool:
    return any(TASKS[item.task].delay is Delay.PLANTING for item in known.items)


def _may_be_offered(text: str, found: Match, known: Known) -> bool:
    """Whether several questions are offered: to who agreed, where a question was asked, and
    nothing else is open but a task."""
    farmer = known.farmer
    if farmer is None or farmer.consent_at is None or farmer.stopped_at is not None:
        return False
    if not found.perhaps or len(text.split()) < _FEWEST_WORDS:
        return False
    weights = understand(text, known.ears, known.catalogue.language).weights
    grave = sum(weights[act] for act in _GRAVE) >= _LIKELY_GRAVE
    likeliest = max(weights, key=lambda act: weights[act])
    by_words = found.asks and likeliest in (Act.QUESTION, Act.TALK)
    waits = known.warning is not None and known.warning.answer is None
    is_free = known.session is None and not known.items and not waits
    # "It holds ten litres" answers what is open.
    may_ask = found.asks or is_free or weights[Act.QUESTION] >= _SURELY
    return not grave and (
        (may_ask and weights[Act.QUESTION] >= _HALF) or by_words or (found.likely and is_free)
    )


def asked(session: Session, known: Known) -> Turn:
    """The question that was chosen is answered; something else goes to a person."""
    words, topic = str(session.answers["words"]), str(session.answers["topic"])
    known = replace(known, session=session.held)
    if topic.startswith(OFFICE):
        theirs = office_answer(topic, known)
        return theirs or _passed_on(words, known)
    if topic != SOMETHING_ELSE:
        turn = _turn(Topic(topic), words, known)
        if turn is not None:
            return turn
    return _passed_on(words, known)


def _passed_on(words: str, known: Known) -> Turn:
    """To a person, and what was open stands again."""
    passing = begin(talks.MENU, held=known.session)
    noted = e.said(aid.PASSED_ON(person=person(known)))
    return e.ended(passing, known, noted, changes=(e.call("question", words, passing, known),))


def _is_word_to_send(text: str, known: Known) -> bool:
    """A wish of a word or two, such as our texts tell people to send, also of one nursery:
    "next B", "close B"."""
    text, _ = split_label(text, known)
    if is_word(text, m.WORD_CLOSE, known):
        return True
    reading = read_wish(text, known.lexicons, known.catalogue.language)
    if len(text.split()) > _WORDS_TO_SEND or reading.outcome is not Outcome.UNDERSTOOD:
        return False
    # "When weed", "birds how" are no words to send, though "when" and "birds" are.
    return not asks_beside_a_wish(text, reading.value, known)


def _is_of_the_menu(text: str, known: Known) -> bool:
    """One of the choices of the second menu, in its words: "site, making the bed"."""
    question = talks.MORE.questions[talks.MORE.first]
    names = (choice_names(each.code, each.label, known) for each in question.choices)
    return is_name(text.strip(" .!"), [name for own in names for name in own])


def _is_wish(text: str, known: Known) -> bool:
    reading = read_wish(text, known.lexicons, known.catalogue.language)
    return reading.outcome is Outcome.UNDERSTOOD


def _languages(text: str, known: Known) -> tuple[str, ...]:
    """Their own, what it seems to be, and English, which is mixed in everywhere."""
    own, guess = known.catalogue.language, guess_language(text, known.lexicons)
    first = (guess, own) if guess and _is_new(known) else (own, guess)
    return tuple(dict.fromkeys(code for code in (*first, "en") if code))


_OF_SIZE = frozenset({Topic.SEED_MUCH, Topic.MIX_MUCH, Topic.MATS_MANY})


def _sized(topic: Topic, text: str, known: Known) -> Topic:
    """How much seed or soil, where a size of land is named, is a sum for that size."""
    return Topic.SUM_ASIDE if topic in _OF_SIZE and plan.names_land(text, known) else topic


def _is_asked(text: str, question: Question, known: Known, wished: bool) -> bool:
    """Whether a question that is sure enough is answered now: with a wish in it, or beside an
    open question, only where it asks in so many words; what is to be done for mats that are
    gone is the open question itself."""
    if _asks_of_lost(text, question.topic, known):
        return False
    if question.asks or (not wished and known.session is None):
        return True
    return not wished and question.topic in _SAID


def _turn(topic: Topic, text: str, known: Known) -> Turn | None:
    topic = _sized(topic, text, known)
    turn = _answer(topic, text, known)
    return replace(turn, inquiries=(Inquiry(topic),)) if turn else None


def _answer(topic: Topic, text: str, known: Known) -> Turn | None:
    if topic in _OPENS:
        return None if _is_new(known) else _OPENS[topic](text, known)
    if topic in _MAKES and known.nurseries:
        return WISHES[Wish.MAKING](text, known)
    held = e.lasting(known.session)
    passing = begin(talks.MENU, held=held) if held else None
    if topic in _SHOWN and not _by_the_text(topic, text, known):
        ready = known.nurseries or topic not in _WITH_PLAN
        return _SHOWN[topic](passing, known) if ready else None
    says = _by_the_text(topic, text, known) or ANSWERS[topic](text, known)
    if says is None:
        return None
    if known.farmer is None or known.farmer.consent_at is None:
        return _before_consent(says, known)
    # A bed without water is in danger: somebody should know, as of any trouble. And what is
    # said to the officer by name reaches the officer, answered or not.
    told = known.farmer is not None and (
        topic in _TOLD_TOO
        or _is_to_officer(text, topic, known)
        or (topic in KEEPS_OFF and _tells_of_damage(text, known))
    )
    changes = (e.call("question", text, begin(talks.MENU), known),) if told else ()
    return _offered(e.ended(passing, known, *map(e.said, says), changes=changes), known)


_OF_AGE = frozenset({Topic.TOO_LATE, Topic.PLANT_WHEN, Topic.AGE})


def _by_the_text(topic: Topic, text: str, known: Known) -> tuple[Say, ...] | None:
    """What the text itself tells goes before the plan: an age, that the bed is drained."""
    if topic in _OF_AGE:
        return plan.of_told_age(text, known)
    ideas = known.ears.questions.ideas(text, (known.catalogue.language, "en"))
    if topic is Topic.WATER_RAIN and "drain" in ideas:
        return (care.RAIN_DRAINED(),)
    return None


def _tells_of_damage(text: str, known: Known) -> bool:
    heard = understand(text, known.ears, known.catalogue.language)
    return heard.certainty(Act.DANGER) is not None


def _is_to_officer(text: str, topic: Topic, known: Known) -> bool:
    """Whether a text begins by calling the officer: "officer, may I add manure?"."""
    if topic is Topic.OFFICER_WHEN:
        return False
    first = text.split()[0].strip(",.:;!?")
    reading = read_wish(first, known.lexicons, known.catalogue.language)
    return reading.outcome is Outcome.UNDERSTOOD and reading.value is Wish.OFFICER


def _before_consent(says: tuple[Say, ...], known: Known) -> Turn:
    """With the question that is open under it, or the first one: nobody is kept waiting for
    it, and whoever said no is not asked again."""
    if known.session is not None and find(known.session, talks.TABLES) is not None:
        return Turn(known.session, (ask(known.session, known, talks.TABLES, *says),))
    if known.invited is None:
        return e.opened(begin(talks.SIGNUP), known, *says)
    if known.invited.refused:
        return Turn(None, (e.said(*says),))
    return e.opened(asking(known.invited, known), known, *says)


def _is_new(known: Known) -> bool:
    """Whether nobody has said who this is, or in which language."""
    return known.farmer is None and known.session is None and known.invited is None


def _offered(turn: Turn, known: Known) -> Turn:
    """On a screen, which has no text to go back to, what is asked today stands under it."""
    item = known.items[0] if len(known.items) == 1 else None
    bed = known.nursery(item.nursery_id) if item else None
    if known.channel is not Channel.USSD or turn.session or item is None or bed is None:
        return turn
    last = turn.texts[-1]
    shown = replace(
        last,
        says=(*last.says, *offer([(bed, item.task)], known.today)),
        focus=Focus(items=(item,)),
    )
    return replace(turn, texts=(*turn.texts[:-1], shown))


def _in_their_words(turn: Turn, text: str, known: Known) -> Turn:
    guess = guess_language(text, known.lexicons) if _is_new(known) else None
    return replace(turn, language=guess) if guess in known.languages else turn
