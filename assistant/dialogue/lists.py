"""The numbered choices of a question: fixed ones from its row, others from what is known."""

from dataclasses import dataclass

from assistant.agronomy.life.rows import TASKS, Ask
from assistant.agronomy.nursery import Nursery
from assistant.dialogue.facts import chosen_nursery
from assistant.dialogue.questions import Question, Reads
from assistant.dialogue.values import Item, Known, Session
from assistant.people import LANGUAGES
from assistant.wording import messages_talk as m
from assistant.wording import messages_tasks as t
from assistant.wording.day import TASK_TEXTS, about, what_of
from assistant.wording.day_practice import fitting
from assistant.wording.message import Message, Named, Say, Slot
from assistant.wording.render import render, slot_text

OTHER = "other"
MOST_VARIETIES = 8
PAILS_L = (10.0, 15.0, 20.0)
CANS_L = (5.0, 10.0, 16.0)  # watering cans, and the usual sprayer carried on the back


@dataclass(frozen=True)
class ListChoice:
    """One choice: what is kept when it is taken, and what is shown for it."""

    value: str | int | float
    label: Slot
    names: tuple[str, ...] = ()  # what else it may be called in an answer

    def shown(self, known: Known) -> str:
        """The label in the person's language."""
        return slot_text(self.label, known.catalogue)


def entries(question: Question, session: Session, known: Known) -> tuple[ListChoice, ...]:
    """The choices in the order of their digits, from 1."""
    match question.reads:
        case Reads.LANGUAGE:
            return tuple(ListChoice(code, LANGUAGES[code]) for code in known.languages)
        case Reads.VILLAGE | Reads.OWN_VILLAGE:
            return _villages(question.reads, known)
        case Reads.NURSERY:
            return tuple(_nursery(known, index) for index in range(len(known.nurseries)))
        case Reads.PRACTICE:
            return _practices(known)
        case Reads.TASK:
            doable = tuple(i for i in known.items if TASKS[i.task].asks is Ask.DONE)
            return tuple(_task(item, doable, known) for item in doable)
        case Reads.LITRES | Reads.CAN | Reads.RIPENS:
            return _usual(question.reads, known)
        case Reads.YES_NO | Reads.DEED:
            return (ListChoice("yes", m.YES()), ListChoice("no", m.NO()))
        case _:
            return _fixed(question, session, known)


def _usual(reads: Reads, known: Known) -> tuple[ListChoice, ...]:
    """Usual sizes of pails and cans; the varieties that are grown here, as many as leave a text
    short, for the days that they take."""
    if reads is Reads.RIPENS:
        grown = known.varieties[:MOST_VARIETIES]
        return tuple(ListChoice(each.days, each.name, (each.code,)) for each in grown)
    sizes = PAILS_L if reads is Reads.LITRES else CANS_L
    return tuple(ListChoice(litres, m.LITRES(litres=litres)) for litres in sizes)


def _fixed(question: Question, session: Session, known: Known) -> tuple[ListChoice, ...]:
    """The choices that stand in the question's row, in words that fit the kind of bed."""
    chosen = chosen_nursery(session, known)
    nursery = chosen or _only_kind(known)
    return tuple(
        ListChoice(
            each.code,
            (fitting(each.label, nursery) if nursery else each.label)(),
            also_called(each.code, known),
        )
        for each in question.choices
        if each.code != "practice" or _may_change_practice(chosen, known)
    )


def _only_kind(known: Known) -> Nursery | None:
    """One of the farmer's nurseries, where all are raised in the same way."""
    kinds = {each.practice.code for each in known.nurseries}
    return known.nurseries[0] if len(kinds) == 1 else None


def also_called(code: str, known: Known) -> tuple[str, ...]:
    """What people call a choice besides its label: other words, other letters."""
    return known.lexicon.choices.get(code, ())


def names_pest(text: str, known: Known) -> bool:
    """Whether a text names what eats seed or seedlings, whatever else it says of them."""
    said = f" {text.casefold().strip(' .!')} "
    return any(f" {name.casefold()} " in said for name in also_called("animals", known))


def choice_names(code: str, label: Message, known: Known) -> list[str]:
    """Every name of a choice of a prompt: its label first."""
    return [render(label(), known.catalogue), *also_called(code, known)]


def _practices(known: Known) -> tuple[ListChoice, ...]:
    return tuple(
        ListChoice(each.code, Named(each.names, each.code)) for each in known.practices
    )


def _may_change_practice(nursery: Nursery | None, known: Known) -> bool:
    """Whether there is another kind of bed to choose, and no seed in this one yet."""
    return len(known.practices) > 1 and not (nursery and nursery.sown)


def _villages(reads: Reads, known: Known) -> tuple[ListChoice, ...]:
    """A farmer's villages are the programme's; an officer's, those they serve."""
    if reads is Reads.OWN_VILLAGE:
        mine = known.desk.reaches if known.desk else ()
        return tuple(ListChoice(each.village.name, each.village.name) for each in mine)
    named = tuple(ListChoice(village.id, village.name) for village in known.villages)
    return (*named, ListChoice(OTHER, m.OTHER_VILLAGE()))


def _nursery(known: Known, index: int) -> ListChoice:
    nursery = known.nurseries[index]
    line = m.NURSERY_LINE if nursery.sown else m.NURSERY_LINE_PLANNED
    shown = about(line, nursery, known.today, date=nursery.sow_date)
    return ListChoice(nursery.id, shown, names=(nursery.called, nursery.label))


def _task(item: Item, listed: tuple[Item, ...], known: Known) -> ListChoice:
    """A task; the name of its nursery is enough where no other of that nursery is listed."""
    nursery = known.nursery(item.nursery_id)
    alone = sum(each.nursery_id == item.nursery_id for each in listed) == 1
    names = (nursery.called, nursery.label) if nursery and alone else ()
    return ListChoice(item_key(item), item_line(item, known), names)


def item_key(item: Item) -> str:
    """Names an item in a session, so that it is found again whatever came between."""
    return f"{item.nursery_id}/{item.task}/{item.day.isoformat()}"


def item_line(item: Item, known: Known) -> Say:
    """One task of one nursery, as a line of a list."""
    nursery = known.nursery(item.nursery_id)
    if nursery is None:
        return t.ITEM_LINE(label="?", what=TASK_TEXTS[item.task].what())
    return t.ITEM_LINE(label=nursery.called, what=what_of(item.task, nursery.practice))


def numbered(choices: tuple[ListChoice, ...]) -> tuple[Say, ...]:
    """The choices as lines with their digits."""
    return tuple(
        m.NUMBERED(digit=place, label=choice.label)
        for place, choice in enumerate(choices, start=1)
    )
