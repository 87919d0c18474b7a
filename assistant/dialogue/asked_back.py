"""An answer in words that no rule accounts for: the question is put once more, by its digits.

The weight of a text only chooses between asking again and "I did not understand"; nothing is
written by it.
"""

from assistant.acts import Act
from assistant.agronomy.life.rows import Ask
from assistant.dialogue.items import ask_of, once_more
from assistant.dialogue.values import Focus, Known, Text, Turn
from assistant.hearing import understand

LEAST, MOST_GRAVE = 0.4, 0.3  # of answers; of all that a person should hear of
_OF_WORK, _OF_LOOKS = (Act.DONE, Act.NOTDONE), (Act.VALUE,)
_GRAVE = (Act.DIE, Act.HARM, Act.DANGER, Act.REFUSE, Act.PERSON, Act.TROUBLE)


def asked_back(text: str, known: Known) -> Turn | None:
    """The one thing that was asked today, of a text that weighs as an answer to it rather than
    as anything else."""
    today = [each for each in known.items if each.day == known.today]
    if len(today) != 1 or "?" in text:
        return None
    weights = understand(text, known.ears, known.catalogue.language).weights
    answers = _OF_WORK if ask_of(today[0]) is Ask.DONE else _OF_LOOKS
    if sum(weights[act] for act in answers) < LEAST:
        return None
    if sum(weights[act] for act in _GRAVE) > MOST_GRAVE:
        return None
    return Turn(known.session, (Text(once_more(today[0], known), Focus(items=(today[0],))),))
