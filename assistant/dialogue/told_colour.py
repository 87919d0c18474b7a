"""The colour of seedlings told in a sentence: "my wife went to look, green she says"."""

from collections.abc import Sequence

from assistant.acts import Act
from assistant.dialogue.told_of_bed import day_gone, ideas_in
from assistant.dialogue.values import Known
from assistant.hearing import Idea, understand
from assistant.hearing.dating import around_day
from assistant.reading import denies_or_turns, has_name, is_of_past

LEAST_CALM, MOST_GRAVE = 0.65, 0.2
_CALM = (Act.VALUE, Act.TALK, Act.GREETING)
_GRAVE = (Act.DIE, Act.HARM, Act.DANGER, Act.REFUSE, Act.PERSON, Act.TROUBLE)
_NOT_ALL = frozenset({Idea.HALF, Idea.REST, Idea.BARE, Idea.DRIED, Idea.EATEN})


def green_in_sentence(text: str, names: Sequence[Sequence[str]], known: Known) -> bool:
    """Whether words that are not all known say green, and none of those that are takes it
    back: another colour, "but", a part, another day or crop; and nothing in it weighs as a cry.

    Args:
        names: how green, yellow and pale are called
    """
    green, *others = names
    if "?" in text or not has_name(text, green):
        return False
    if any(has_name(text, other) for other in others) or denies_or_turns(text, known.lexicon):
        return False
    if is_of_past(text, known.lexicon) or day_gone(text, known) not in (None, known.today):
        return False
    around = around_day(text, known.ears.days, (known.catalogue.language, "en"))
    elsewhere = around is not None and (around.other or around.says_past)
    if elsewhere or ideas_in(text, known) & _NOT_ALL:
        return False
    weights = understand(text, known.ears, known.catalogue.language).weights
    grave = sum(weights[act] for act in _GRAVE)
    return sum(weights[act] for act in _CALM) >= LEAST_CALM and grave <= MOST_GRAVE


def without_name(text: str, names: Sequence[str]) -> str:
    """A text without the longest of these names: "green like okra" is of no other crop."""
    found = [name for name in names if name.casefold() in text.casefold()]
    return text.casefold().replace(max(found, key=len).casefold(), " ") if found else text
