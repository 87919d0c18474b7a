"""What could not be read: kept with who wrote it, and handed to a person when it matters."""

from assistant.acts import Act
from assistant.dialogue import conversations as talks
from assistant.dialogue.aid import person
from assistant.dialogue.values import Known, NoteUnread
from assistant.hearing import understand
from assistant.hearing.asking import ASKING
from assistant.reading import says_not_known
from assistant.wording import messages_aid as aid
from assistant.wording import messages_answers_more as more
from assistant.wording import messages_talk as m
from assistant.wording.message import Say

FEWEST_ASKED, SURELY_ASKS = 4, 0.8  # words of a question, and its weight
MERE_TALK = 0.7  # the weight of a greeting and of what asks for no answer
ASKS = 0.5  # the weight of what is a question rather than not
FEWEST_WORDS = 2  # one word alone is a slip of the thumb, or a choice that is not there
LIKELY_GRAVE = 0.5  # the weight of acts that a person should hear of, together
_GRAVE = (Act.DIE, Act.HARM, Act.DANGER, Act.REFUSE, Act.PERSON, Act.TROUBLE)
_IN_TROUBLE = frozenset({talks.TROUBLE.name, talks.OFFICER.name, talks.EMERGENCE.name})


def unread(asked: str, text: str, known: Known) -> NoteUnread:
    """A text that was not read. It goes to a person the second time, and at once under a
    warning, in a talk of trouble, where it surely asks something, or where it is likelier a
    cry, a refusal or a trouble than not, if no one of them is likely enough by itself; digits
    alone say nothing that a person could answer."""
    agreed = known.farmer is not None and known.farmer.consent_at is not None
    talk = known.session.conversation if known.session else ""
    matters = known.unread > 0 or known.in_storm or talk in _IN_TROUBLE
    words = sum(any(sign.isalpha() for sign in word) for word in text.split())
    weights = understand(text, known.ears, known.catalogue.language).weights
    if words >= FEWEST_ASKED and not asked:
        matters = matters or weights[Act.QUESTION] >= SURELY_ASKS
    grave = sum(weights[act] for act in _GRAVE) >= LIKELY_GRAVE
    matters = matters or (grave and not says_not_known(text, known.lexicon))
    return NoteUnread(asked, text, passed=agreed and matters and words >= FEWEST_WORDS)


def not_understood(note: NoteUnread, known: Known) -> Say:
    """What the writer is told of it: that a person has it; where nothing else is open, how to
    ask if it is a question, and what this line is if it is mere talk; else what can be sent."""
    if note.passed:
        return aid.PASSED_ON(person=person(known))
    if known.session is not None or known.items:
        return m.DID_NOT_UNDERSTAND()
    if _is_talk(note.text, known):
        return more.CHAT()
    return more.ASK_SHORT() if _asks(note.text, known) else m.DID_NOT_UNDERSTAND()


def _is_talk(text: str, known: Known) -> bool:
    weights = understand(text, known.ears, known.catalogue.language).weights
    return weights[Act.GREETING] + weights[Act.TALK] >= MERE_TALK


def _asks(text: str, known: Known) -> bool:
    """Whether a text of several words asks, by a mark, a word of asking, or its weight."""
    if len(text.split()) < FEWEST_WORDS:
        return False
    ideas = known.ears.questions.ideas(text, (known.catalogue.language, "en"))
    weights = understand(text, known.ears, known.catalogue.language).weights
    return "?" in text or bool(ideas & ASKING) or weights[Act.QUESTION] >= ASKS
