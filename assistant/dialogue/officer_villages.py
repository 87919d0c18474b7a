"""The village that an officer's text names."""

from assistant.dialogue.endings import said
from assistant.dialogue.values import Known, OfficerScope, Reach, Text
from assistant.people import Village
from assistant.reading import is_name, read_choice
from assistant.wording import messages_officer as o


def reach_of(name: str, known: Known, desk: OfficerScope) -> Reach | None:
    """The village of that name among the officer's, also nearly that; the only one where none
    is named."""
    if not name and len(desk.reaches) == 1:
        return desk.reaches[0]
    reading = read_choice(name, [[each.village.name] for each in desk.reaches], known.lexicon)
    if reading.value is None or name.isdigit():
        return None
    return desk.reaches[reading.value]


def is_named(name: str, village: Village) -> bool:
    """Whether a village was named by its own name, but for case, accents and blanks."""
    return not name or is_name(name, [village.name])


def no_village(verb: str, desk: OfficerScope) -> Text:
    """That no village was found, and which there are."""
    names = ", ".join(each.village.name for each in desk.reaches)
    return said(o.NO_SUCH_VILLAGE(villages=names, example=verb))
