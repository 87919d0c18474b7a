"""Several beds answered in one text, each by its letter: "A 3 B 1", "A green, B done"."""

from collections.abc import Iterator
from dataclasses import replace

from assistant.agronomy.nursery import Nursery
from assistant.dialogue.endings import lasting
from assistant.dialogue.items import answer_items
from assistant.dialogue.values import AnswerItem, Known, Turn
from assistant.reading import read_told

_SIGNS = ".,:;!"


def labelled(text: str, known: Known) -> Turn | None:
    """The turn for answers to several beds; None where a part is none of an open task, or two
    of them ask back: then the whole is read as any text."""
    parts = tuple(_parts(text, known))
    if len(parts) < 2 or len({bed.id for bed, _ in parts}) < len(parts):
        return None
    parts = tuple(part for part in parts if not _waits_anyway(*part, known))
    if not parts:
        return None
    turns = [_answer(bed, said, known) for bed, said in parts]
    found = [turn for turn in turns if turn is not None]
    asking = [turn for turn in found if turn.session != known.session]
    if len(found) < len(parts) or len(asking) > 1:
        return None
    found.sort(key=lambda turn: turn in asking)  # what asks stands last, and is answered next
    texts = tuple(text for turn in found for text in turn.texts)
    changes = tuple(change for turn in found for change in turn.changes)
    return replace(found[-1], texts=texts, changes=changes)


def _waits_anyway(bed: Nursery, said: str, known: Known) -> bool:
    """ "B not yet", of a bed of which nothing is asked."""
    asked = any(item.nursery_id == bed.id for item in known.items)
    return not asked and read_told(said, known.lexicon, digits=False).value == "not_yet"


def _parts(text: str, known: Known) -> Iterator[tuple[Nursery, str]]:
    """Each bed that is named by its letter, and the words up to the next."""
    beds = {bed.label.casefold(): bed for bed in known.nurseries}
    words = text.split()
    marks = [at for at, word in enumerate(words) if word.strip(_SIGNS).casefold() in beds]
    if not marks or marks[0] != 0:
        return
    for start, end in zip(marks, [*marks[1:], len(words)], strict=True):
        said = " ".join(words[start + 1 : end]).strip(" " + _SIGNS)
        yield beds[words[start].strip(_SIGNS).casefold()], said


def _answer(bed: Nursery, said: str, known: Known) -> Turn | None:
    items = tuple(item for item in known.items if item.nursery_id == bed.id)
    if not items or not said:
        return None
    turn = answer_items(said, replace(known, items=items), items, True, lasting(known.session))
    took = turn is not None and any(isinstance(each, AnswerItem) for each in turn.changes)
    return turn if took else None
