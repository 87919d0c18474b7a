"""What a farmer tells of the bed without being asked: leaves, mats that are gone or to spare, a
second sowing, a bed that stays bare. It changes the plan as an answer would, and is said back.
"""

import re
from collections.abc import Callable
from dataclasses import replace
from itertools import chain

from assistant.agronomy.calendar import TaskCode
from assistant.agronomy.life.changes import after
from assistant.agronomy.life.events import By, Done, Looked
from assistant.agronomy.nursery import Nursery
from assistant.dialogue import conversations as talks
from assistant.dialogue.accounted import takes_words
from assistant.dialogue.aid import person
from assistant.dialogue.corrections import DATES, NUMBERS
from assistant.dialogue.endings import call, ended, lasting, opened, said
from assistant.dialogue.endings_again import sow_again
from assistant.dialogue.endings_delay import ONE_DAY
from assistant.dialogue.endings_lost import ANIMALS, lost, may_lose
from assistant.dialogue.endings_seed import new_seed
from assistant.dialogue.endings_trouble import TROUBLE_ENDINGS
from assistant.dialogue.engine import begin, find
from assistant.dialogue.items import settle, split_label, tells_a_deed
from assistant.dialogue.items_leaves import MOST_LEAVES, recounted
from assistant.dialogue.lists import choice_names
from assistant.dialogue.reports_plan import (
    PLAN_REPORTS,
    goes_on,
    planted_short,
    standing_told_done,
    waits,
)
from assistant.dialogue.told_of_bed import ideas_in
from assistant.dialogue.values import (
    AnswerItem,
    Change,
    Happened,
    Item,
    Known,
    SaveNursery,
    Session,
    Turn,
)
from assistant.dialogue.variety import variety_told
from assistant.dialogue.ways import colour_day
from assistant.hearing import Idea
from assistant.reading import (
    Outcome,
    is_accounted_for,
    read_choice,
    read_count,
    read_deeds,
    read_told,
    says_only_answers,
)
from assistant.wording import messages_again as again
from assistant.wording import messages_delay as d
from assistant.wording import messages_talk as m
from assistant.wording import messages_tasks as t
from assistant.wording.day import about
from assistant.wording.message import Say

_GONE = {
    Idea.EATEN: ANIMALS,
    Idea.WASHED: "washed",
    Idea.DRIED: "dried",
    Idea.GONE: ANIMALS,
}
_SURELY_GONE = frozenset({Idea.EATEN, Idea.WASHED})
_BUSY = frozenset({talks.PLAN.name, talks.SIGNUP.name, talks.RESULT.name, talks.AGAIN.name})


def reported(text: str, known: Known) -> Turn | None:
    """The turn for what is told of a bed; None where nothing is, or a question is asked that
    such words answer."""
    if not _listens(text, known):
        return None
    ideas = ideas_in(text, known)
    _, beds = split_label(text, known)
    first = waits(text, known) or planted_short(text, known)
    first = first or goes_on(text, ideas, beds, known)
    if first is not None or tells_a_deed(text, known):
        return first
    found = (report(text, ideas, beds, known) for report in _REPORTS)
    return next((turn for turn in found if turn is not None), None)


def of_variety(text: str, known: Known) -> Turn | None:
    """The turn for a variety that is named, before its name or its days are taken for a
    question about varieties."""
    return variety_told(text, known) if _listens(text, known) else None


def bereaved(text: str, known: Known) -> Turn | None:
    """Who did the work has died: kind words, who answers now may, and a person knows."""
    farmer = known.farmer
    if farmer is None or farmer.consent_at is None or farmer.stopped_at is not None:
        return None
    if takes_words(known) or Idea.DEATH not in ideas_in(text, known):
        return None
    passing = begin(talks.MENU, held=lasting(known.session))
    change = call("question", text, passing, known)
    return ended(passing, known, said(again.BEREAVED(person=person(known))), changes=(change,))


def _listens(text: str, known: Known) -> bool:
    farmer = known.farmer
    if farmer is None or farmer.consent_at is None or farmer.stopped_at is not None:
        return False
    if not known.nurseries or takes_words(known) or "?" in text:
        return False
    session = known.session
    question = find(session, talks.TABLES) if session else None
    if session is None or question is None:
        return True
    asks_number = question.reads in NUMBERS and question.reads not in DATES
    if asks_number and session.conversation == talks.LOST.name:
        return not any(sign.isdigit() for sign in text) and _sows_again(text, known)
    return session.conversation not in _BUSY and not asks_number


def _sows_again(text: str, known: Known) -> bool:
    return {Idea.SOW, Idea.AGAIN} <= ideas_in(text, known)


def mats_lost(
    text: str, known: Known, *before: Say, changes: tuple[Change, ...] = ()
) -> Turn | None:
    """The turn for so many mats that are gone, as told; how many is asked of "hens ate the
    mats"; None where a text does not say of which bed."""
    ideas = ideas_in(text, known)
    by = next((cause for idea, cause in _GONE.items() if idea in ideas), None)
    mats = _count(text, known)
    if not ideas & {Idea.MAT, Idea.BED} or by is None:
        return None
    if Idea.MAT not in ideas:
        mats = None  # a number is of something else: "2 goats ate half of the bed"
    sown = _sown_before(text, ideas, known)
    if sown is not None:
        known = sown[0]
        before = (*before, about(m.SOWN_NOTED, sown[1], known.today))
        changes = (*changes, *sown[2])
    beds = [bed for bed in split_label(text, known)[1] if may_lose(bed)]
    if mats is None and len(beds) == 1 and ideas & _SURELY_GONE:
        asked = begin(talks.LOST, held=lasting(known.session), nursery=beds[0].id, by=by)
        return opened(asked, known, *before, changes=changes)
    if mats is None or len(beds) != 1 or not 0 < mats <= beds[0].mats_left:
        return None
    return lost(beds[0], int(mats), by, lasting(known.session), known, *before, changes=changes)


def _sown_before(
    text: str, ideas: frozenset[Idea], known: Known
) -> tuple[Known, Nursery, tuple[Change, ...]] | None:
    """What is known once the bed whose sowing was asked is sown, that bed, and what changes:
    animals that ate the seed in its mats found it sown. None where nothing tells that."""
    seed = known.ears.questions.ideas(text, (known.catalogue.language, "en"))
    beds = split_label(text, known)[1]
    asked = [i for i in known.items if i.task is TaskCode.SOW and i.nursery_id == beds[0].id]
    if Idea.EATEN not in ideas or "seed" not in seed or len(beds) != 1 or not asked:
        return None
    if beds[0].sown:
        return None
    event = Done(on=asked[0].day, by=By.FARMER, task=TaskCode.SOW)
    sown = after(beds[0], event)
    nurseries = tuple(sown if bed.id == sown.id else bed for bed in known.nurseries)
    changes = (AnswerItem(asked[0], "done"), Happened(sown.id, event), SaveNursery(sown))
    return replace(known, nurseries=nurseries), sown, changes


def _lost(
    text: str, ideas: frozenset[Idea], beds: tuple[Nursery, ...], known: Known
) -> Turn | None:
    asked = begin(talks.LOST)
    change = call("animals", text, asked, known)
    return mats_lost(text, known, changes=(change,))


def _count(text: str, known: Known) -> float | None:
    """The one whole number of a text, in digits or words."""
    value = read_count(text, known.lexicon).value
    return value if value is not None and value == int(value) else None


def _spare(
    text: str, ideas: frozenset[Idea], beds: tuple[Nursery, ...], known: Known
) -> Turn | None:
    mats = _count(text, known)
    if not {Idea.MAT, Idea.SPARE} <= ideas or mats is None or mats <= 0:
        return None
    planted = [bed for bed in beds if bed.sown]
    if (
        not planted
        or known.items
        and any(i.task is TaskCode.SEASON_RESULT for i in known.items)
    ):
        return None
    passing = begin(talks.MENU, held=lasting(known.session))
    change = call("spare", text, passing, known)
    return ended(passing, known, said(again.SPARE_NOTED(mats=int(mats))), changes=(change,))


def _sown_again(
    text: str, ideas: frozenset[Idea], beds: tuple[Nursery, ...], known: Known
) -> Turn | None:
    """That it was sown again, or is to be."""
    if not {Idea.SOW, Idea.AGAIN} <= ideas:
        return None
    able = [bed for bed in beds if bed.sown and bed.transplanted_on is None]
    if len(able) != 1:
        return None
    held = lasting(known.session)
    is_done = read_told(text, known.lexicon, digits=False).value == "done"
    if is_done and "sow" in read_deeds(text, known.lexicon):
        return opened(begin(talks.SOWN_AGAIN, held=held, nursery=able[0].id), known)
    return sow_again(able[0], held, known)


def _bare(
    text: str, ideas: frozenset[Idea], beds: tuple[Nursery, ...], known: Known
) -> Turn | None:
    """Nothing comes up, once it should: the shoots are counted, of seed in a cloth its roots
    are waited for."""
    soaked = [bed for bed in beds if _waits_for_roots(bed, known)]
    if Idea.BARE in ideas and len(soaked) == 1:
        asked = begin(talks.TROUBLE, held=lasting(known.session), nursery=soaked[0].id)
        return TROUBLE_ENDINGS["!seed"](asked, known)
    able = [bed for bed in beds if bed.sown and bed.transplanted_on is None]
    early = [bed for bed in able if known.today < bed.anchors.uncover_date]
    if Idea.BARE in ideas and len(early) == len(able) == 1:
        asked = begin(talks.TROUBLE, held=lasting(known.session), nursery=early[0].id)
        return TROUBLE_ENDINGS["!not_up"](asked, known)
    late = [bed for bed in able if known.today > bed.anchors.uncover_date]
    if Idea.BARE not in ideas or len(late) != 1:
        return None
    asked = begin(talks.EMERGENCE, held=lasting(known.session), nursery=late[0].id)
    return opened(asked, known)


def _waits_for_roots(bed: Nursery, known: Known) -> bool:
    soaked = bed.sow_date - bed.soak_before_d * ONE_DAY
    return not (bed.sown or bed.held) and soaked <= known.today


def _leaves(
    text: str, ideas: frozenset[Idea], beds: tuple[Nursery, ...], known: Known
) -> Turn | None:
    """Leaves that were counted, in a text that says nothing else."""
    reading = read_count(text, known.lexicon)
    bare = not ideas and _is_bare_count(text, known)
    if not (bare or ideas == {Idea.LEAF}) or reading.outcome is not Outcome.UNDERSTOOD:
        return None
    if reading.value is None or not 1 <= reading.value <= MOST_LEAVES:
        return None
    able = [bed for bed in beds if bed.sown and bed.transplanted_on is None]
    if not able or not is_accounted_for(text, known.lexicon):
        return None
    if len(able) > 1:
        return opened(begin(talks.RECOUNT, held=lasting(known.session)), known)
    count, held = float(reading.value), lasting(known.session)
    return recounted(begin(talks.RECOUNT, held=held, nursery=able[0].id, leaves=count), known)


def _is_bare_count(text: str, known: Known) -> bool:
    """A number that no choice of planting has, where planting is all that is asked: leaves; and
    so is one with a half in it, of a bed whose leaves are all that can be counted."""
    asked = {item.task for item in known.items}
    number = text.strip().replace(",", ".")
    plain = number not in ("1", "2") and number.replace(".", "", 1).isdigit()
    may_count = bool(asked) or "." in number
    return plain and known.session is None and may_count and asked <= _PLANTING


_PLANTING = frozenset({TaskCode.TRANSPLANT, TaskCode.OVERDUE, TaskCode.DRAIN_BED})


def _coloured(
    text: str, ideas: frozenset[Idea], beds: tuple[Nursery, ...], known: Known
) -> Turn | None:
    """ "The leaves are pale": what else is seen is asked at once; green needs nothing."""
    able = [bed for bed in beds if bed.sown and bed.transplanted_on is None]
    names = [choice_names(code, label, known) for code, label in _COLOURS]
    said_only = says_only_answers(text, known.lexicon, tuple(chain(*names)))
    if len(able) != 1 or not said_only or any(sign.isdigit() for sign in text):
        return None
    chosen = read_choice(text, names, known.lexicon).value
    still_covered = not able[0].uncovered and known.today < able[0].anchors.uncover_date
    if chosen == _GREEN and still_covered and able[0].may_uncover_on(known.today):
        held = lasting(known.session)  # leaves are seen where the cover is off
        return opened(begin(talks.UNCOVERED_EARLY, held=held, nursery=able[0].id), known)
    if chosen == _GREEN:
        looked = Looked(on=known.today, by=By.FARMER, colour="green")
        noted = said(about(m.GREEN_NOTED, able[0], known.today))
        passing = begin(talks.MENU, held=lasting(known.session))
        return ended(passing, known, noted, changes=(Happened(able[0].id, looked),))
    if chosen not in _POOR:
        return None
    asked = begin(talks.TROUBLE, held=lasting(known.session), nursery=able[0].id)
    if known.today < colour_day(able[0]):
        return TROUBLE_ENDINGS["!too_early"](asked, known)
    return opened(replace(asked, answers={**asked.answers, "problem": "yellow"}), known)


_COLOURS = (("green", t.GREEN), ("yellow", t.YELLOW), ("pale", t.PALE))
_GREEN, _POOR = 0, (1, 2)  # their places among the colours


def _seed_counted_late(
    text: str, ideas: frozenset[Idea], beds: tuple[Nursery, ...], known: Known
) -> Turn | None:
    """A count of seed that is in the ground already changes nothing any more."""
    able = [bed for bed in beds if bed.sown and bed.transplanted_on is None]
    counted = Idea.SPROUT in ideas and Idea.BARE not in ideas and len(_SHARE.findall(text)) == 1
    if not counted or len(able) != 1 or len(able) != len(beds):
        return None
    passing = begin(talks.MENU, held=lasting(known.session))
    return ended(passing, known, said(about(again.LATE_COUNT, able[0], known.today)))


_SHARE = re.compile(r"\d+\D{1,12}\d+")  # "50 of 100", in any script's digits


def _deeds(
    text: str, ideas: frozenset[Idea], beds: tuple[Nursery, ...], known: Known
) -> Turn | None:
    """Uncovered or drained before anybody asked: too early is said, or whether it is asked."""
    bed = standing_told_done(text, beds, known)
    if bed is None:
        return None
    deeds, today = read_deeds(text, known.lexicon), known.today
    held = lasting(known.session)
    if deeds in (_SOWS, _SOAKS) and bed.day(today) >= _SOWN_ANEW_D:
        return _anew(deeds, bed, held, known)
    if "uncover" in deeds and not bed.uncovered and today >= bed.anchors.uncover_date:
        asked = Item(bed.id, TaskCode.UNCOVER_FLOOD, bed.anchors.uncover_date)
        return settle(asked, "done", None, known, held)
    early = not bed.uncovered and today < bed.anchors.uncover_date
    if "uncover" in deeds and early and bed.may_uncover_on(today):
        return opened(begin(talks.UNCOVERED_EARLY, held=held, nursery=bed.id), known)
    if deeds == {"drain"} and bed.uncovered and bed.is_drained:
        if bed.anchors.drain_date == today + ONE_DAY:  # its water need not come back for a day
            asked = Item(bed.id, TaskCode.DRAIN_BED, bed.anchors.drain_date)
            return settle(asked, "done", None, known, held)
        if today < bed.anchors.drain_date:
            passing = begin(talks.MENU, held=held)
            return ended(passing, known, said(about(d.WATER_BACK, bed, today)))
    return None


def _anew(deeds: frozenset[str], bed: Nursery, held: Session | None, known: Known) -> Turn:
    """Seed is soaked or sown where a bed stands: it is sown again, all or some of it."""
    if deeds == _SOWS:
        return opened(begin(talks.SOWN_AGAIN, held=held, nursery=bed.id), known)
    return sow_again(bed, held, known)


_SOWS, _SOAKS = frozenset({"sow"}), frozenset({"soak"})
_SOWN_ANEW_D = 2  # told sooner it is the sowing that was told before


def _sown_unasked(
    text: str, ideas: frozenset[Idea], beds: tuple[Nursery, ...], known: Known
) -> Turn | None:
    """That the seed is sown, on a day for which nobody had planned it, or though it should
    not be: then its shoots are counted like any."""
    able = [bed for bed in beds if not bed.sown]
    told = read_told(text, known.lexicon, digits=False)
    sure = told.value == "done" and told.outcome is Outcome.UNDERSTOOD
    if not sure or len(able) != 1 or len(able) != len(beds):
        return None
    away = abs(able[0].day(known.today))
    if read_deeds(text, known.lexicon) != _SOWS or away > _FAR_SOWING_D:
        return None
    if away > _NEAR_SOWING_D:
        day, held = known.today.isoformat(), lasting(known.session)
        then = begin(talks.SOW_THEN, held=held, nursery=able[0].id, sowing=day)
        return opened(replace(then, step="sown", path=("sowing",)), known)
    asked = Item(able[0].id, TaskCode.SOW, known.today)
    return settle(asked, "done", known.today, known, lasting(known.session))


_NEAR_SOWING_D = 4  # farther off another seed may be meant; it is asked
_FAR_SOWING_D = 30


def filled(text: str, known: Known) -> Turn | None:
    """ "Filled the gaps", before anybody asked: it is not asked any more."""
    told = read_told(text, known.lexicon, digits=False)
    sure = told.value == "done" and told.outcome is Outcome.UNDERSTOOD and "?" not in text
    if not sure or read_deeds(text, known.lexicon) != _FILLS or known.items:
        return None
    able = [bed for bed in known.nurseries if bed.transplanted_on is not None]
    days = [task.date for bed in able for task in bed.tasks if task.code is TaskCode.FILL_GAPS]
    if len(able) != 1 or not days or known.today > days[0]:
        return None
    asked = Item(able[0].id, TaskCode.FILL_GAPS, days[0])
    return settle(asked, "done", None, known, lasting(known.session))


_FILLS = frozenset({"fill"})


def sown_again_told(
    text: str, known: Known, *before: Say, changes: tuple[Change, ...] = ()
) -> Turn | None:
    """Whether all of the bed was sown again is asked, beside what is said of its loss: "sown
    again today, birds ate the first seed"."""
    ideas = ideas_in(text, known)
    able = [bed for bed in known.nurseries if bed.sown and bed.transplanted_on is None]
    told = read_deeds(text, known.lexicon) & _SOWS
    if not {Idea.SOW, Idea.AGAIN} <= ideas or len(able) != 1 or not told:
        return None
    asked = begin(talks.SOWN_AGAIN, held=lasting(known.session), nursery=able[0].id)
    return opened(asked, known, *before, changes=changes)


def _not_sown(
    text: str, ideas: frozenset[Idea], beds: tuple[Nursery, ...], known: Known
) -> Turn | None:
    """That nothing is sown, of a bed that was only taken as sown."""
    able = [bed for bed in beds if bed.sow_assumed and bed.transplanted_on is None]
    told = read_told(text, known.lexicon, digits=False)
    said_so = told.value == "not_yet" and told.outcome is Outcome.UNDERSTOOD
    if Idea.SOW not in ideas or not said_so or len(able) != 1 or len(able) != len(beds):
        return None
    asked = Item(able[0].id, TaskCode.SOW, able[0].sow_date)
    return settle(asked, "not_yet", None, known, lasting(known.session))


def _no_seed(
    text: str, ideas: frozenset[Idea], beds: tuple[Nursery, ...], known: Known
) -> Turn | None:
    """The seed is thrown away, or there is none: which seed will be sown is asked."""
    able = [bed for bed in beds if not (bed.sown or bed.held)]
    if Idea.NO_SEED not in ideas or ideas & {Idea.BARE, Idea.SPROUT, Idea.SPARE}:
        return None
    if not able:
        return None
    which = {"nursery": able[0].id} if len(able) == 1 else {}
    asked = begin(talks.NO_SEED, held=lasting(known.session), **which)
    return opened(asked, known, changes=(call("seed", text, asked, known),))


def _new_seed(
    text: str, ideas: frozenset[Idea], beds: tuple[Nursery, ...], known: Known
) -> Turn | None:
    """Other seed is there for a plan that is held."""
    able = [bed for bed in beds if bed.held]
    if Idea.NEW_SEED not in ideas or len(able) != 1:
        return None
    changes, texts = new_seed(able[0], known)
    passing = begin(talks.MENU, held=lasting(known.session))
    return ended(passing, known, *texts, changes=changes)


def _dry(
    text: str, ideas: frozenset[Idea], beds: tuple[Nursery, ...], known: Known
) -> Turn | None:
    """Mats that dry out, none lost yet: water now."""
    able = [bed for bed in beds if bed.sown and bed.transplanted_on is None]
    if not {Idea.MAT, Idea.DRY} <= ideas or len(able) != 1 or _count(text, known) is not None:
        return None
    passing = begin(talks.MENU, held=lasting(known.session), nursery=able[0].id)
    return TROUBLE_ENDINGS["!dry"](passing, known)


_Report = Callable[[str, frozenset[Idea], tuple[Nursery, ...], Known], Turn | None]
_REPORTS: tuple[_Report, ...] = (
    _lost,
    _spare,
    _not_sown,
    _no_seed,
    _new_seed,
    _sown_again,
    _bare,
    _leaves,
    _coloured,
    _seed_counted_late,
    _deeds,
    _sown_unasked,
    *PLAN_REPORTS,
    _dry,
)
"""In this order: what is lost goes before what only looks like it."""
