"""Whether a text that may cry or refuse rather asks, by rules, table and weights together."""

from assistant.acts import Act
from assistant.dialogue.matched import OF_SENDER, match
from assistant.dialogue.values import Known
from assistant.hearing import Topic, understand
from assistant.hearing.asking import ASKING, ASKS, Question

_ASKING_WORDS = ASKING - {"may", "need", "whatif", ASKS}
_PLAINLY, _ASKS_ENOUGH = 0.9, 0.5


def _ideas(text: str, known: Known) -> frozenset[str]:
    """The ideas of questions in a text, in the person's language or English."""
    return known.ears.questions.ideas(text, (known.catalogue.language, "en"))


def _rule(text: str, known: Known) -> Question | None:
    """The question that the exact rules hear, if any."""
    return known.ears.questions.heard(text, (known.catalogue.language, "en"))


def asks_beside(text: str, known: Known) -> bool:
    """Whether a text asks anything, by a word of asking, by its weight, or because rules and
    table hear the same question. Words that are also "not" or "must" count for nothing here."""
    ideas = _ideas(text, known)
    weights = understand(text, known.ears, known.catalogue.language).weights
    if "?" in text or ideas & _ASKING_WORDS or weights[Act.QUESTION] >= _ASKS_ENOUGH:
        return True
    rule = _rule(text, known)
    if known.ears.match is None or rule is None or not rule.asks:
        return False
    first = known.ears.match.likest(text, ideas)[0]
    return first.topic is rule.topic and first.share >= _PLAINLY


def asks_plainly_who(text: str, known: Known, only_price: bool) -> bool:
    """Whether rules and table agree that a short text asks who writes, or what it costs: both
    answers say how the texts are ended, or that nothing is paid."""
    rule = _rule(text, known)
    if known.ears.match is None or rule is None or not rule.asks:
        return False
    if rule.topic not in (_PRICE if only_price else _PRICE | OF_SENDER):
        return False
    ideas = _ideas(text, known)
    first = known.ears.match.likest(text, ideas)[0]
    short = len(text.split()) <= _SHORT_QUESTION
    enough = _PRICE_ENOUGH if rule.topic in _PRICE else _PLAINLY
    return short and first.topic is rule.topic and first.share >= enough


_PRICE = frozenset({Topic.FREE})
_OF_PHONE = frozenset({Topic.FREE, Topic.HOUSEHOLD, Topic.NEIGHBOUR})
_NO_DOUBT = 0.95


def surely_of_phone(text: str, known: Known) -> bool:
    """Whether the table has no doubt that it is of what a text costs or who may have them."""
    if known.ears.match is None:
        return False
    ideas = _ideas(text, known)
    found = known.ears.match.likest(text, ideas)
    short = len(text.split()) <= _MOST_OF_PHONE
    return short and sum(each.share for each in found if each.topic in _OF_PHONE) >= _NO_DOUBT


_MOST_OF_PHONE = 12  # words
_SHORT_QUESTION, _PRICE_ENOUGH = 8, 0.75  # words; a share, since little is at stake
KEEPS_OFF = frozenset({Topic.GUARD, Topic.ANTS, Topic.PESTS, Topic.RATS})
"""Questions of what eats seed and seedlings: how it is kept off."""
_KEEPS_OFF_ENOUGH = 0.6


def asks_to_keep_off(text: str, known: Known) -> bool:
    """Whether rules and table agree that a text asks how animals are kept off the bed."""
    table = known.ears.match
    rule = _rule(text, known)
    ideas = _ideas(text, known)
    topics = KEEPS_OFF | {Topic.MEDICINE} if ideas & _ANIMALS else KEEPS_OFF
    if table is None or rule is None or not rule.asks or rule.topic not in topics:
        return False
    share = sum(each.share for each in table.likest(text, ideas) if each.topic in topics)
    return share >= _KEEPS_OFF_ENOUGH


_PEOPLE = frozenset({"friend", "wife", "people"})
_OF_BED = frozenset({"seed", "bed", "seedling", "straw", "mat"})


def asks_of_seed(text: str, known: Known, or_bed: bool = False) -> bool:
    """Whether it is of seed, `or_bed` of the bed and its seedlings, and names nobody."""
    ideas = _ideas(text, known)
    of_it = bool(ideas & _OF_BED) if or_bed else "seed" in ideas
    return of_it and not ideas & _PEOPLE


_ANIMALS = frozenset({"ant", "rat", "pest", "bird", "fowl"})


def may_be_bitten(text: str, known: Known) -> bool:
    """Whether it names animals and nothing of the bed: "ants bit my child, what do I do"."""
    ideas = _ideas(text, known)
    return bool(ideas & _ANIMALS) and not asks_of_seed(text, known, or_bed=True)


def supposes(text: str, known: Known) -> bool:
    """Whether a text says "if" and asks."""
    ideas = _ideas(text, known)
    return "whatif" in ideas and ("?" in text or bool(ideas & (ASKING - {"whatif"})))


def may_be_asked(text: str, known: Known) -> bool:
    """Whether a text asks, and is worth offering some questions for."""
    languages = (known.catalogue.language, "en")
    rule = _rule(text, known)
    found = match(text, rule, known, languages)
    return found.asks and (found.likely or found.sure)
