"""Work told in words that no rule accounts for: the question is put once more, by its digits.

The weight of a text only chooses between asking again and "I did not understand"; nothing is
written by it.
"""

from assistant.acts import Act
from assistant.agronomy.life.rows import Ask
from assistant.dialogue.items import ask_of, once_more
from assistant.dialogue.values import Focus, Known, Text, Turn
from assistant.hearing import understand

LEAST, MOST_GRAVE = 0.5, 0.25  # of work done or not; of all that a person should hear of
_GRAVE = (Act.DIE, Act.HARM, Act.DANGER, Act.REFUSE, Act.PERSON, Act.TROUBLE)


def asked_back(text: str, known: Known) -> Turn | None:
    """Whether the one piece of work that was asked today is done, of a text that tells of work
    rather than of anything else."""
    today = [
        each for each in known.items if each.day == known.today and ask_of(each) is Ask.DONE
    ]
    if len(today) != 1 or "?" in text:
        return None
    weights = understand(text, known.ears, known.catalogue.language).weights
    if weights[Act.DONE] + weights[Act.NOTDONE] < LEAST:
        return None
    if sum(weights[act] for act in _GRAVE) > MOST_GRAVE:
        return None
    return Turn(known.session, (Text(once_more(today[0], known), Focus(items=(today[0],))),))
