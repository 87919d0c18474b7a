"""What a farmer says of the tasks that were asked: done, not yet, green, three leaves.

One open task is answered by a digit or a word; where several are open the farmer is asked
which, or names the nursery ("DONE B").
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from datetime import date, timedelta
from itertools import chain

from assistant.agronomy.calendar import DayChoice, TaskCode
from assistant.agronomy.life.changes import after
from assistant.agronomy.life.events import By, Done, Event, Looked, PutOff
from assistant.agronomy.life.rows import TASKS, Ask, Delay, Doing
from assistant.agronomy.nursery import Nursery
from assistant.dialogue import conversations as talks
from assistant.dialogue.endings import ended, holds, opened, rain, said, sown_weak
from assistant.dialogue.endings_delay import is_put_off, planted_before, planting_waits
from assistant.dialogue.endings_trouble import TROUBLE_ENDINGS
from assistant.dialogue.engine import begin
from assistant.dialogue.in_part import in_part
from assistant.dialogue.items_flood import answer_flood
from assistant.dialogue.items_leaves import leaves
from assistant.dialogue.items_seed import answer_count, answer_held, answer_result, answer_test
from assistant.dialogue.lists import choice_names, item_key
from assistant.dialogue.readers import is_another_kind
from assistant.dialogue.told_colour import green_in_sentence, without_name
from assistant.dialogue.told_in_part import (
    leans_to_done,
    part_that_tells,
    story_tells,
    tells_not_done,
    weighs_rather_done,
)
from assistant.dialogue.told_of_bed import (
    day_gone,
    ideas_in,
    leaves_told,
    without_next_leaf,
)
from assistant.dialogue.under_way import under_way
from assistant.dialogue.values import (
    AnswerItem,
    Change,
    Focus,
    Happened,
    Item,
    Known,
    SaveNursery,
    Session,
    Text,
    Turn,
)
from assistant.dialogue.warned import day_work
from assistant.dialogue.ways import colour_day
from assistant.hearing import Idea
from assistant.hearing.dating import around_day
from assistant.reading import (
    Outcome,
    Reason,
    Wish,
    days_told,
    is_of_other,
    is_of_past,
    is_to_come,
    names_a_thing,
    read_choice,
    read_count,
    read_deeds,
    read_told,
    read_wish,
    says_only_a_count,
    says_only_answers,
)
from assistant.wording import messages_again as again
from assistant.wording import messages_aid as aid
from assistant.wording import messages_planting as g
from assistant.wording import messages_talk as m
from assistant.wording import messages_tasks as t
from assistant.wording.day import TASK_TEXTS, about, offer, what_of, work_says
from assistant.wording.message import Message, Say, Slot
from assistant.wording.messages_answers import SOW_ON

DONE, NOT_YET = "done", "not_yet"
PALE = 2  # its place among the colours
_SAYS = {"done": DONE, "yes": DONE, "not_yet": NOT_YET, "no": NOT_YET}
ONE_DAY = timedelta(days=1)
LATE_D = 3  # as long as shoots may be pale; a day or two is no delay
FEWEST_LEAVES = 1  # less is a part of something else: half is done, the fourth is coming


def ask_of(item: Item) -> Ask:
    """What may be answered to an item."""
    return TASKS[item.task].asks


def split_label(text: str, known: Known) -> tuple[str, tuple[Nursery, ...]]:
    """The reply without the nursery it names, and that one; all of them if none is named."""
    typed = text.strip(" .,:;!")
    for nursery in known.nurseries:
        for name in (nursery.called, nursery.label):
            rest = _without(typed, name)
            if rest:
                return rest, (nursery,)
    inside = [bed for bed in known.nurseries if f" {bed.label} " in typed]
    if len(known.nurseries) > 1 and len(inside) == 1:  # "plant A on Sunday", in capitals
        return typed.replace(f" {inside[0].label} ", " ", 1), (inside[0],)
    return text, known.nurseries


def _without(text: str, name: str) -> str:
    """A text without the name that it ends or begins with; empty where it does neither."""
    folded, name = text.casefold(), name.casefold()
    if folded.endswith(f" {name}"):
        return text[: -len(name)].strip()
    if folded.startswith((f"{name} ", f"{name}:")):
        return text[len(name) :].strip(" :")
    return ""


def _done_when(text: str, known: Known, digits: bool) -> tuple[str | None, date | None, str]:
    """Whether a reply says done or not yet, the day of a tardy answer ("done yesterday", "on
    Monday we sowed"), and the reply without that day; with it where the day alone tells that it
    was done, as in a language without tenses ("kemarin tabur")."""
    for day, rest in days_told(text, known.lexicon, known.today):
        said_so = _done_or_not(rest, known, digits)
        if said_so == DONE and is_of_other(text, known.lexicon):
            continue  # "this Thursday I plant"
        if said_so is not None:
            return said_so, day, rest
        tells = _told_by_day(text, rest, known) if day < known.today else None
        if tells:
            return DONE, day, tells
    return _done_or_not(text, known, digits), None, text


def _told_by_day(text: str, rest: str, known: Known) -> str | None:
    """The words that tell a deed where its day alone says that it is done: "kemarin tabur",
    "gieo thứ sáu"."""
    if _done_or_not(text, known, digits=False) == DONE:
        return text
    if is_of_other(text, known.lexicon):
        return None
    with_word = f"{rest} {known.lexicon.answers[DONE]}"
    names_deed = read_deeds(with_word, known.lexicon) and not read_deeds(rest, known.lexicon)
    told = names_deed and _done_or_not(with_word, known, digits=False) == DONE
    return with_word if told else None


def answer_items(
    text: str, known: Known, items: tuple[Item, ...], digits: bool, held: Session | None
) -> Turn | None:
    """The turn for a reply about open tasks; None where it does not speak of them.

    `digits`: whether bare digits may answer (the text asking for these items came last).
    """
    rest, nurseries = split_label(text, known)
    ids = {nursery.id for nursery in nurseries}
    open_items = tuple(i for i in items if i.nursery_id in ids and not _is_over(i, known))
    crossed = _crossed(open_items, known) if digits and rest.strip() in ("1", "2") else ()
    if crossed:
        return _each_in_words((*open_items, *crossed), known, held)
    both = _both_done(rest, known, held) if len(known.nurseries) > 1 else None
    if both is not None:
        return both
    if len(open_items) == 1:
        return _ANSWERS[ask_of(open_items[0])](rest, known, open_items[0], digits, held)
    return _answer_several(rest, known, open_items, digits, held)


def _is_over(item: Item, known: Known) -> bool:
    """Whether a field is planted by now that a task of before was about: a digit more is no
    "not yet" of it."""
    planted = _nursery(item, known).transplanted_on is not None
    return planted and _is_of_planting(item)


def _crossed(items: tuple[Item, ...], known: Known) -> tuple[Item, ...]:
    """What was asked today by a text that nothing says has come, where a digit would answer one
    of an earlier day: it may be about either."""
    if not items or any(item.day == known.today for item in items):
        return ()
    asked = {item for focus in known.focuses for item in focus.items}
    return tuple(item for item in known.items if item.day == known.today and item in asked)


def _answer_several(
    text: str, known: Known, items: tuple[Item, ...], digits: bool, held: Session | None
) -> Turn | None:
    if digits and len(items) > 1 and text.strip() in ("1", "2"):
        return _each_in_words(items, known, held)
    named = _names_its_task(text, known, items, digits, held)
    if named is not None:
        return named
    said_so, when, rest = _done_when(text, known, digits)
    if said_so is None:
        return None
    doable = tuple(item for item in items if ask_of(item) is Ask.DONE)
    if not doable:
        return ended(_holder(held), known, said(m.NOTHING_OPEN()))
    deeds = read_deeds(rest, known.lexicon)
    doable = tuple(item for item in doable if _fits(item, deeds)) or doable
    if len(doable) == 1 and _fits(doable[0], deeds):
        return settle(doable[0], said_so, when, known, held)
    asked = begin(talks.WHICH, held=holds(held), answer=said_so)
    return opened(asked, known, *((t.WHICH_NOT(),) if said_so == NOT_YET else ()))


def _names_its_task(
    text: str, known: Known, items: tuple[Item, ...], digits: bool, held: Session | None
) -> Turn | None:
    """A count or a colour, which names its task by itself; 1 and 2 could be meant for any."""
    if text.strip() in ("1", "2") or (text.strip().isdigit() and not digits):
        return None
    told = (
        _ANSWERS[ask_of(item)](text, known, item, digits, held)
        for item in items
        if ask_of(item) is not Ask.DONE
    )
    return next((turn for turn in told if turn is not None), None)


def _each_in_words(items: tuple[Item, ...], known: Known, held: Session | None) -> Turn:
    """A bare digit to a text that asked two things could be meant for either."""
    asked = tuple(say for item in items for say in once_more(item, known))
    return Turn(held, (Text((aid.WHICH_OF_TWO(), *asked), Focus(items=items)),))


def _done_or_not(text: str, known: Known, digits: bool) -> str | None:
    """Whether a reply says done or not yet; yes and no say it only to the text that asked."""
    reading = read_told(text, known.lexicon, digits)
    sure = reading.outcome is Outcome.UNDERSTOOD
    if not sure or (reading.value in ("yes", "no") and not digits):
        return None
    return _SAYS.get(reading.value or "")


def perhaps_done(text: str, known: Known) -> Turn | None:
    """What only may be an answer. Today's task is asked once more ("done with the ploughing");
    an ok to what was taken as sown yesterday agrees; any other ok was read, and that is all."""
    rest, nurseries = split_label(text, known)
    reading = read_told(rest, known.lexicon, digits=False)
    if reading.value is None:
        return None
    ids = {nursery.id for nursery in nurseries}
    doable = [i for i in known.items if ask_of(i) is Ask.DONE and i.nursery_id in ids]
    today = [item for item in doable if item.day == known.today]
    if today and reading.outcome is Outcome.CONFIRM:
        return _which_once_more(today, _SAYS[reading.value], known)
    if reading.value != "yes" or reading.reason is Reason.NOT_READ:
        return None
    asked = [i for i in known.items if i.day == known.today and i.nursery_id in ids]
    if asked:
        return Turn(
            known.session, (Text(once_more(asked[-1], known), Focus(items=(asked[-1],))),)
        )
    assumed = [item for item in doable if item.task is TaskCode.SOW]
    if len(assumed) == 1:
        return settle(assumed[0], DONE, None, known, known.session)
    return ended(_holder(known.session), known, said(m.ALL_RIGHT()))


def _which_once_more(items: list[Item], said_so: str, known: Known) -> Turn:
    if len(items) == 1:
        return _is_it_done(items[0], known, known.session)
    return opened(begin(talks.WHICH, held=holds(known.session), answer=said_so), known)


def _fits(item: Item, deeds: frozenset[str]) -> bool:
    """Whether the deeds that a reply names, if any, can be the task."""
    return not deeds or bool(deeds & (TASKS[item.task].deeds or deeds))


def _is_it_done(item: Item, known: Known, held: Session | None) -> Turn:
    """Asks about the task once more: the farmer told of another one."""
    return Turn(held, (Text(once_more(item, known), Focus(items=(item,))),))


def once_more(item: Item, known: Known) -> tuple[Say, ...]:
    """A task of today in few words, a question about the seedlings as it was put, with the
    digits that answer it."""
    nursery, what = _nursery(item, known), TASK_TEXTS[item.task].what()
    asks: tuple[Say, ...] = (t.SECOND_ASKING(label=nursery.called, what=what),)
    if TASKS[item.task].doing is Doing.SOWS and item.day < known.today:
        asks = (m.SOWN_THAT_DAY(date=item.day),)
    if ask_of(item) is not Ask.DONE:
        asks = work_says(day_work(nursery, (item.task,), known))
    return (*asks, *offer([(nursery, item.task)], known.today))


def _holder(held: Session | None) -> Session | None:
    """A passing talk, so that `ended` takes the interrupted one up again."""
    return begin(talks.WHICH, held=held) if held else None


def _answer_done(
    text: str, known: Known, item: Item, digits: bool, held: Session | None
) -> Turn | None:
    said_so, when, rest = _said_of_task(text, item, known, digits)
    part = in_part(text, item, said_so == NOT_YET, known, held, _rest_later)
    if part is not None:
        return part
    if said_so != DONE:
        goes_on = _goes_on(text, item, said_so, known, held)
        if goes_on is not None or said_so is None:
            return goes_on
    told = read_deeds(rest, known.lexicon)
    if item.task is TaskCode.UNCOVER_FLOOD:
        return _answer_uncover(rest, told, said_so, when, known, item, held)
    told = _other_deeds(told, said_so, item, known)
    if said_so == NOT_YET and not (told or digits) and _is_taken_as_sown(item, known):
        return _is_it_done(item, known, held)  # "I forgot", days later, may be of any work
    if not _fits(item, told):
        return _another_deed(item, told, said_so, when, known, held)
    if when is None and _is_just_now(text, item, known):
        when = known.today
    return settle(item, said_so, when, known, held)


def _other_deeds(
    told: frozenset[str], said_so: str, item: Item, known: Known
) -> frozenset[str]:
    """What is told, without that it was forgotten: that says not yet of what was asked, but not
    of a sowing that was taken as done days ago."""
    is_own = said_so == NOT_YET and not _is_taken_as_sown(item, known)
    return told - {"forgot"} if is_own else told


def _said_of_task(
    text: str, item: Item, known: Known, digits: bool
) -> tuple[str | None, date | None, str]:
    """As `_done_when`; done, too, where one part of a text tells the deed of the task."""
    said_so, when, rest = _done_when(text, known, digits)
    if said_so == NOT_YET and weighs_rather_done(text, known):
        said_so = None  # what is denied may be of something else
    part = part_that_tells(text, item, known) if said_so is None else None
    if part is not None:
        return DONE, *_done_when(part, known, digits=False)[1:]
    if said_so is None and story_tells(text, TASKS[item.task].deeds, known):
        return DONE, day_gone(text, known), text
    if said_so is None and tells_not_done(text, item, known):
        return NOT_YET, None, text
    uncovers = item.task is TaskCode.UNCOVER_FLOOD and item.day == known.today
    if said_so is None and uncovers and Idea.BARE in ideas_in(text, known) and "?" not in text:
        return NOT_YET, None, text
    return said_so, when, rest


def _goes_on(
    text: str, item: Item, said_so: str | None, known: Known, held: Session | None
) -> Turn | None:
    """Work that has begun; planting that waits, for what is too small or for anything else."""
    begun = under_way(text, item, known, held) or _too_small(text, item, known, held)
    rain_over = said_so is None and Idea.RAIN_OVER in ideas_in(text, known)
    if begun is None and rain_over and "?" not in text:
        return _is_it_done(item, known, held)  # it says nothing of the work itself
    if begun is None and _planting_waits(item, said_so, text, known):
        return planting_waits(item, _nursery(item, known), known, held, text)
    return begun


def _too_small(text: str, item: Item, known: Known, held: Session | None) -> Turn | None:
    """ "Not yet, too small", of a bed that should be drained or planted: its leaves are
    counted, and the days follow on them."""
    small = Idea.SMALL in ideas_in(text, known)
    if not small or not _is_of_planting(item) or "?" in text:
        return None
    asked = begin(talks.RECOUNT, held=holds(held), nursery=item.nursery_id)
    return opened(asked, known)


def _is_of_planting(item: Item) -> bool:
    return item.task is TaskCode.DRAIN_BED or TASKS[item.task].delay is Delay.PLANTING


def _planting_waits(item: Item, said_so: str | None, text: str, known: Known) -> bool:
    """Whether it is put off, or said why; also where draining for it was asked."""
    if TASKS[item.task].delay is Delay.PLANTING:
        return said_so == NOT_YET or _tells_why_put_off(text, known)
    return item.task is TaskCode.DRAIN_BED and _tells_why_put_off(text, known)


def _tells_why_put_off(text: str, known: Known) -> bool:
    """Not where the work is told as done: "planted all, five hands came"."""
    return is_put_off(text, known) and not leans_to_done(text, known)


def _another_deed(
    item: Item,
    told: frozenset[str],
    said_so: str,
    when: date | None,
    known: Known,
    held: Session | None,
) -> Turn:
    """What was told is not what was asked: it may be what follows on it."""
    since = _done_since(item, told, said_so, when, known)
    if since is not None:
        return settle(since, said_so, when, known, held)
    if said_so == DONE and told <= TASKS[TaskCode.DRAIN_BED].deeds and _is_of_planting(item):
        drained = replace(item, task=TaskCode.DRAIN_BED)
        noted = _what(m.DONE_NOTED, drained, _nursery(item, known))
        return Turn(held, (Text((noted, *once_more(item, known)), Focus(items=(item,))),))
    return _is_it_done(item, known, held)


def _is_taken_as_sown(item: Item, known: Known) -> bool:
    """Whether nobody said that the bed is sown, and the clock has taken it so."""
    return TASKS[item.task].doing is Doing.SOWS and _nursery(item, known).sow_assumed


def _is_just_now(text: str, item: Item, known: Known) -> bool:
    """ "I soaked now", of what was to be done yesterday: all days follow on the real one."""
    if TASKS[item.task].doing is not Doing.SOAKS or item.day >= known.today:
        return False
    around = around_day(text, known.ears.days, (known.catalogue.language, "en"))
    return around is not None and around.now


def _rest_later(item: Item, known: Known, held: Session | None) -> Turn:
    """The rest of what is done in part is asked tomorrow."""
    doing = TASKS[item.task].doing
    if doing is Doing.UNCOVERS:  # its shoots are up: it is not to be kept covered
        return _later(item, known, held)
    noted = again.HALF_SOWN if doing is Doing.SOWS else None
    return settle(item, NOT_YET, None, known, held, noted)


def _both_done(text: str, known: Known, held: Session | None) -> Turn | None:
    """ "Planted both": settled for each bed of which it can be true, if for more than one."""
    if Idea.BOTH not in ideas_in(text, known):
        return None
    said_so, when, rest = _done_when(text, known, digits=False)
    told = read_deeds(rest, known.lexicon)
    if said_so != DONE:
        return None
    if not told:  # "both done": what the last text asked of each bed
        asked_now = known.focuses[0].items if known.focuses else ()
        return _all_done([i for i in asked_now if i in known.items], when, known, held)
    found: list[Item] = []
    for bed in known.nurseries:
        open_one = (
            i
            for i in known.items
            if i.nursery_id == bed.id and told & TASKS[i.task].deeds and ask_of(i) is Ask.DONE
        )
        asked = next(open_one, None)
        other = Item(bed.id, TaskCode.TRANSPLANT, known.today)
        item = asked or _done_since(other, told, DONE, when, known)
        found += [item] if item else []
    return _all_done(found, when, known, held)


def _all_done(
    found: list[Item], when: date | None, known: Known, held: Session | None
) -> Turn | None:
    """Each of several tasks is settled, where they are of more than one bed and only done or
    not was asked of them."""
    beds = {item.nursery_id for item in found}
    if len(beds) < 2 or len(beds) != len(found):
        return None
    if any(ask_of(item) is not Ask.DONE for item in found):
        return None
    *first, last = found
    turns = [settle(each, DONE, when, known, None) for each in first]
    ending = settle(last, DONE, when, known, held)
    return replace(
        ending,
        texts=(*(text for turn in turns for text in turn.texts), *ending.texts),
        changes=(*(change for turn in turns for change in turn.changes), *ending.changes),
    )


def _done_since(
    item: Item, told: frozenset[str], said_so: str, when: date | None, known: Known
) -> Item | None:
    """That the bed is sown or the field planted, told while something before it was asked: it
    ends all that was to come before, so it counts on any day on which it can be true."""
    sows, plants = (TASKS[code].deeds for code in (TaskCode.SOW, TaskCode.TRANSPLANT))
    both = sows | plants  # one word for both, in some languages
    if said_so != DONE or not told <= both | TASKS[TaskCode.SOAK].deeds:
        return None
    nursery, day = _nursery(item, known), when or known.today
    soaks = TASKS[TaskCode.SOAK].deeds
    if when is not None and soaks <= told and not nursery.sown:
        return Item(item.nursery_id, TaskCode.SOAK, when)
    if not nursery.sown and not nursery.held and sows <= told:
        near = abs((day - nursery.sow_date).days) <= _SOON_D and day <= known.today
        return Item(item.nursery_id, TaskCode.SOW, day) if near else None
    if not nursery.sown or nursery.transplanted_on is not None or not plants <= told:
        return None
    if nursery.judge_transplanting(day) is DayChoice.IMPOSSIBLE:
        return None
    return Item(item.nursery_id, TaskCode.TRANSPLANT, known.today)


_SOON_D = 2  # so far a sowing that was put off may lie from the day it was done


def _answer_uncover(
    text: str,
    told: frozenset[str],
    said_so: str,
    when: date | None,
    known: Known,
    item: Item,
    held: Session | None,
) -> Turn | None:
    """The one text that asks a thing (are the shoots up?) and orders another: yes answers what
    was asked, and not yet may be of either."""
    done = told & TASKS[item.task].deeds
    if said_so == NOT_YET and not done and _stands_thin(text, item, known):
        return None  # its shoots are counted
    if said_so == DONE and not done and ("up" in told or _is_yes(text, known)):
        nursery = _nursery(item, known)
        asked = begin(
            talks.UNCOVERED, held=holds(held), task=item_key(item), nursery=nursery.id
        )
        return opened(asked, known)
    if said_so == DONE and not _fits(item, told):
        sows = told and told <= TASKS[TaskCode.SOW].deeds
        return None if sows else _is_it_done(item, known, held)
    if said_so == NOT_YET and ("forgot" in told or _is_put_off(text, known)):
        return _later(item, known, held)
    return settle(item, said_so, when, known, held)


def _stands_thin(text: str, item: Item, known: Known) -> bool:
    """Whether a part came up only, on a day by which all should have: before, more may come."""
    due = _nursery(item, known).anchors.uncover_date
    return known.today > due and Idea.HALF in ideas_in(text, known)


def _is_yes(text: str, known: Known) -> bool:
    reading = read_told(text, known.lexicon, digits=False)
    return reading.value == "yes"


def _is_put_off(text: str, known: Known) -> bool:
    """Whether it will be done later, which says nothing of the shoots."""
    reading = read_told(text, known.lexicon, digits=False)
    return reading.reason is Reason.ROUGH


def _later(item: Item, known: Known, held: Session | None) -> Turn:
    """Asked again tomorrow; the bed is not said to be covered."""
    event = _put_off_event(item, known)
    moved = after(_nursery(item, known), event)
    says = _what(m.NOT_YET_NOTED, item, moved, date=event.until)
    changes = (AnswerItem(item, NOT_YET), Happened(moved.id, event), SaveNursery(moved))
    return ended(_holder(held), known, said(says), changes=changes)


def uncovered(session: Session, known: Known) -> Turn:
    """Whether a bed whose shoots are up has been uncovered and given water."""
    key = str(session.answers["task"])
    item = next((each for each in known.items if item_key(each) == key), None)
    if item is None:
        return ended(session, known, said(m.NOTHING_OPEN()))
    if session.answers["answer"] == DONE:
        return settle(item, DONE, None, known, session.held)
    return _later(item, known, session.held)


def _answer_colour(
    text: str, known: Known, item: Item, digits: bool, held: Session | None
) -> Turn | None:
    if not digits and text.strip().isdigit():
        return None
    if _is_not_of_today(text, known):
        return None  # "green yesterday", "my neighbour's is yellow"
    colours = (("green", t.GREEN), ("yellow", t.YELLOW), ("pale", t.PALE))
    names = [choice_names(code, label, known) for code, label in colours]
    chosen = read_choice(text, names, known.lexicon).value
    nursery = _nursery(item, known)
    if green_in_sentence(text, names, known) or (
        chosen == 0 and _only_green(text, names, known)
    ):
        text_back = said(about(m.GREEN_NOTED, nursery, known.today))
        return ended(_holder(held), known, text_back, changes=_colour(item, "green", known))
    if not chosen:
        return None  # what is taken as yellow is asked about, what is green is not
    asked = begin(talks.TROUBLE, held=holds(held), nursery=nursery.id, problem="yellow")
    if chosen == PALE:
        light = TROUBLE_ENDINGS["!light"](asked, known)
        return replace(light, changes=(*_colour(item, "pale", known), *light.changes))
    return opened(asked, known, changes=_colour(item, "yellow", known))


def _is_not_of_today(text: str, known: Known) -> bool:
    """Whether it is of another day, or of another thing than the bed."""
    # "3.5" is a count here, and no third of May.
    words = " ".join(each for each in text.split() if any(sign.isalpha() for sign in each))
    if day_gone(words, known) is not None or is_to_come(words, known.lexicon):
        return True
    around = around_day(text, known.ears.days, (known.catalogue.language, "en"))
    return around is not None and around.elsewhere


def _only_green(text: str, names: Sequence[Sequence[str]], known: Known) -> bool:
    beside = without_name(text, names[0])
    around = around_day(beside, known.ears.days, (known.catalogue.language, "en"))
    other = (
        "?" in text
        or is_of_other(beside, known.lexicon)
        or (around is not None and around.other)
    )
    if other or is_of_past(text, known.lexicon) or Idea.HALF in ideas_in(text, known):
        return False
    return _says_only(text, known, *chain.from_iterable(names))


def _colour(item: Item, colour: str, known: Known) -> tuple[Change, ...]:
    looked = Looked(on=known.today, by=By.FARMER, colour=colour)
    bed = _nursery(item, known)
    moved = after(bed, looked)
    kept = () if moved is bed else (SaveNursery(moved),)
    return AnswerItem(item, colour), Happened(item.nursery_id, looked), *kept


def _answer_leaves(
    text: str, known: Known, item: Item, digits: bool, held: Session | None
) -> Turn | None:
    counted = without_next_leaf(text, known)
    if counted is not None and _says_only(counted, known):
        text = counted  # "three leaves and the fourth is just peeping"
    reading = read_count(text, known.lexicon)
    if reading.outcome is not Outcome.UNDERSTOOD or not _counts_leaves(text, known):
        told = _leaves_in_sentence(text, known)
        if told is not None:
            return leaves(item, told, known, held)
    if reading.outcome is not Outcome.UNDERSTOOD or reading.value is None:
        return None
    if is_another_kind(text, known) or reading.value < FEWEST_LEAVES:
        return None
    if not digits and text.strip().isdigit():
        return None
    if not _counts_leaves(text, known):
        wish = read_wish(text, known.lexicons, known.catalogue.language)
        return None if wish.value is not None else _is_it_done(item, known, held)
    return leaves(item, float(reading.value), known, held)


def _answer_leaves_of_today(
    text: str, known: Known, item: Item, digits: bool, held: Session | None
) -> Turn | None:
    """But for "4 tomorrow", "weeds have 3 leaves"."""
    of_today = without_next_leaf(text, known) or text
    if "?" in text or _is_not_of_today(of_today, known):
        return None
    return _answer_leaves(text, known, item, digits, held)


def _leaves_in_sentence(text: str, known: Known) -> float | None:
    """ "My grandfather counts three leaves", and neither "three leaves are yellow" nor those of
    another plant or day."""
    told = leaves_told(text, known)
    if told is None or told < FEWEST_LEAVES or day_gone(text, known) is not None:
        return None
    around = around_day(text, known.ears.days, (known.catalogue.language, "en"))
    other = around is not None and around.other
    sick = (*choice_names("yellow", t.YELLOW, known), *choice_names("pale", t.PALE, known))
    folded = text.casefold()
    return None if other or any(name.casefold() in folded for name in sick) else told


def _counts_leaves(text: str, known: Known) -> bool:
    """Whether nothing but leaves may be counted: "3 buckets" are none."""
    if Idea.LEAF in ideas_in(text, known):
        return _says_only(text, known)
    return says_only_a_count(text, known.lexicon) and not names_a_thing(text, known.lexicon)


def _says_only(text: str, known: Known, *names: str) -> bool:
    """Whether every word is one of answers: a green bucket is no colour, goats no leaves."""
    return says_only_answers(text, known.lexicon, names)


_Answer = Callable[[str, Known, Item, bool, Session | None], Turn | None]
_ANSWERS: Mapping[Ask, _Answer] = {
    Ask.DONE: _answer_done,
    Ask.COLOUR: _answer_colour,
    Ask.LEAVES: _answer_leaves_of_today,
    Ask.TEST: answer_test,
    Ask.SEED: answer_held,
    Ask.COUNT: answer_count,
    Ask.RESULT: answer_result,
    Ask.FLOOD: answer_flood,
}


def _nursery(item: Item, known: Known) -> Nursery:
    nursery = known.nursery(item.nursery_id)
    if nursery is None:
        raise LookupError(f"the item {item} is of a nursery that is not open")
    return nursery


def which_done(session: Session, known: Known) -> Turn:
    """The farmer chose one of several open tasks."""
    key = str(session.answers["task"])
    item = next((each for each in known.items if item_key(each) == key), None)
    if item is None:
        return ended(session, known, said(m.NOTHING_OPEN()))
    return settle(item, str(session.answers["answer"]), None, known, session.held)


def settle(
    item: Item,
    answer: str,
    when: date | None,
    known: Known,
    held: Session | None,
    noted: Message | None = None,
) -> Turn:
    """Keeps what was said of a task, moves the plan by it, and says what was understood, or
    what is `noted` instead."""
    nursery, done = _nursery(item, known), answer == DONE
    if done and held is not None and held.conversation == talks.DELAY.name:
        held = held.held  # why it was not done is no question any more
    if TASKS[item.task].delay is Delay.PLANTING:
        if not done:
            return planting_waits(item, nursery, known, held)
        if known.today > nursery.latest:
            return planted_before(item, when, known, held)
    event = _done_event(item, when, known) if done else _put_off_event(item, known)
    moved = after(nursery, event)
    changes: tuple[Change, ...] = (AnswerItem(item, answer), Happened(nursery.id, event))
    if moved is not nursery:
        changes += (SaveNursery(moved),)
    weak = nursery.held and moved.sown
    if weak:
        changes += (sown_weak(nursery),)
    message = _done_noted(item, moved, known) if done else _later_noted(item, moved, known)
    if noted is not None:
        message = about(noted, moved, known.today)
    more: tuple[Say, ...] = (about(m.SOWN_WEAK, moved, known.today),) if weak else ()
    more += _uncovered_late(event, moved, known)
    return ended(_holder(held), known, said(message, *more), changes=changes)


def _uncovered_late(event: Event, moved: Nursery, known: Known) -> tuple[Say, ...]:
    """What moves and what does not, of a bed that was under its cover so much longer."""
    if not isinstance(event, Done) or TASKS[event.task].doing is not Doing.UNCOVERS:
        return ()
    planned = moved.sow_date + timedelta(days=int(moved.paced.days.uncover.value))
    if (event.on - planned).days < LATE_D or moved.transplanted_on is not None:
        return ()
    colour = colour_day(moved)
    if colour < known.today:
        return ()  # nothing of it is to come
    return (about(m.UNCOVERED_LATE, moved, known.today, date=colour),)


def _done_event(item: Item, when: date | None, known: Known) -> Done:
    """On the day that was told, else on the day it was asked for; a field is planted today, and
    seed was soaked on the day of the plan, which may have moved since it was asked."""
    doing, nursery = TASKS[item.task].doing, _nursery(item, known)
    day = when or (known.today if doing is Doing.PLANTS else item.day)
    if when is None and doing is Doing.SOAKS:
        day = nursery.sow_date - timedelta(days=nursery.soak_before_d)
    return Done(on=day, by=By.FARMER, task=item.task)


def _is_moved(item: Item, moved: Nursery, known: Known) -> bool:
    return moved.sow_date != _nursery(item, known).sow_date


def _put_off_event(item: Item, known: Known) -> PutOff:
    until = max(item.day, known.today) + ONE_DAY
    return PutOff(on=known.today, by=By.FARMER, task=item.task, was=item.day, until=until)


# --- what is said of it ----------------------------------------------------------------------


def _done_noted(item: Item, moved: Nursery, known: Known) -> Say:
    part = moved.part_sown_on
    sown = again.ALL_SOWN if part is not None and part < moved.sow_date else m.SOWN_NOTED
    texts = {Doing.SOWS: sown, Doing.PLANTS: m.TRANSPLANTED_NOTED}
    text = texts.get(TASKS[item.task].doing)
    if TASKS[item.task].doing is Doing.SOAKS and _is_moved(item, moved, known):
        text = g.SOAK_SET  # all its days follow on the real one
    return about(text, moved, known.today) if text else _what(m.DONE_NOTED, item, moved)


def _later_noted(item: Item, moved: Nursery, known: Known) -> Say:
    tomorrow = known.today + ONE_DAY
    delay = TASKS[item.task].delay
    if item.task is TaskCode.DRAIN_BED and tomorrow >= moved.anchors.transplant_date:
        return about(TASK_TEXTS[item.task].prompt, moved, known.today)  # not asked any more
    if delay is Delay.SOAKING:  # nothing is soaked that could be kept moist
        return about(SOW_ON, moved, known.today)
    if delay is Delay.SOWING:
        return about(m.SOW_LATER_NOTED, moved, known.today)
    if delay is Delay.UNCOVERING:
        return about(m.NOT_UP_NOTED, moved, known.today, date=tomorrow)
    return _what(m.NOT_YET_NOTED, item, moved, date=tomorrow)


def _what(message: Message, item: Item, nursery: Nursery, **more: Slot) -> Say:
    what = what_of(item.task, nursery.practice)
    return message(label=nursery.called, what=what, **more)


def rained_off(wish: Wish, text: str, known: Known) -> Turn | None:
    """ "Not yet, rain", of what must wait for rain: both are heard, and it is asked again."""
    waiting = [each for each in known.items if TASKS[each.task].waits_for_rain]
    if wish is not Wish.RAIN or len(waiting) != 1:
        return None
    if read_told(text, known.lexicon, digits=False).value not in ("not_yet", "no"):
        return None
    told = rain(known.session, known)
    put_off = settle(waiting[0], NOT_YET, None, known, None)
    changes = (*told.changes, *put_off.changes)
    return replace(told, texts=(*told.texts, *put_off.texts), changes=changes)


def tells_a_deed(text: str, known: Known) -> bool:
    """Whether an open task takes it: "the mats are dry since yesterday", where they drain."""
    turn = answer_items(text, known, known.items, True, None) if known.items else None
    return turn is not None and any(isinstance(each, AnswerItem) for each in turn.changes)
