"""The answering desk for an office: questions it answers itself, each read by a second person
before a farmer is answered with it, and which questions come most."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date, datetime, time
from zoneinfo import ZoneInfo

from assistant.acts import Act as Heard
from assistant.alphabet import Encoding, cost, plain
from assistant.dialogue.by_office import OFFICE, office_says
from assistant.dialogue.values import OfficeDesk
from assistant.hearing import understand
from assistant.hearing.office import NO_WORDS, Unfit, dose_in, has_number, refused_in, ways_fit
from assistant.people import Officer, Village
from assistant.reading import Outcome, read_wish
from assistant.service.audit import Subject, TrailAct, note
from assistant.service.days import local_date
from assistant.service.house import House
from assistant.service.sight import Sight
from assistant.store import AskedCount, KeptQuestion, MonthAsked, Work
from assistant.wording.checks import UCS2_LANGUAGES, allowed
from assistant.wording.render import render

_CRIES = (Heard.DIE, Heard.HARM, Heard.DANGER, Heard.REFUSE, Heard.PERSON)
_HALF = 0.5  # the weight of those together, from which on a way is not taken
_WORDS_TO_SEND = 2


@dataclass(frozen=True)
class Draft:
    """A question as it was typed. `village`: the name of one, empty everywhere."""

    language: str
    ways: tuple[str, ...]
    answer: str
    village: str = ""


@dataclass(frozen=True)
class Refusal:
    """Why a question was not kept, and the words that stand in the way."""

    why: Unfit
    words: str = ""


@dataclass(frozen=True)
class QuestionLine:
    """A question with its answer as a farmer gets it, in how many segments; who added and who
    read it, and whether it holds a figure; `mine`: whoever looks has added it."""

    kept: KeptQuestion
    village: Village | None
    says: str
    segments: int
    added_by: Officer | None
    read_by: Officer | None
    has_number: bool
    mine: bool


@dataclass(frozen=True)
class AskedLine:
    """How often a question came; `words` a way of asking it, in the language of the page."""

    count: AskedCount
    words: str
    by_office: bool


@dataclass(frozen=True)
class QuestionsPage:
    """The page: what waits for a second reader, what is in use, what is asked."""

    waiting: tuple[QuestionLine, ...]
    used: tuple[QuestionLine, ...]
    months: tuple[date, ...]
    asked: MonthAsked
    lines: tuple[AskedLine, ...]
    villages: tuple[Village, ...]
    village: Village | None


def questions_page(
    house: House, sight: Sight, month: str, village_id: int | None, now: datetime
) -> QuestionsPage:
    """What an officer may see: of their villages, and of all.

    Args:
        month: "2026-12"; the present one where it is none
    """
    first = local_date(now, house.zone).replace(day=1)
    with house.store.look() as work:
        kept = [each for each in work.questions.all() if _sees(sight, each)]
        officers = {each.id: each for each in work.people.officers()}
        months = tuple(sorted({first, *work.questions.months()}, reverse=True))
        chosen = next((each for each in months if f"{each:%Y-%m}" == month), months[0])
        asked = _asked(work, house, sight.scope(village_id), chosen)
    lines = tuple(_line(house, sight, each, officers) for each in kept)
    ways = {f"{OFFICE}{each.id}": each.ways[0] for each in kept}
    return QuestionsPage(
        waiting=tuple(each for each in lines if not each.kept.in_use),
        used=tuple(each for each in lines if each.kept.in_use),
        months=months,
        asked=asked,
        lines=tuple(_asked_line(house, sight, each, ways) for each in asked.counts),
        villages=sight.villages,
        village=sight.village(village_id),
    )


def _sees(sight: Sight, question: KeptQuestion) -> bool:
    return question.village_id is None or sight.sees(question.village_id)


def _asked(work: Work, house: House, scope: tuple[int, ...] | None, month: date) -> MonthAsked:
    zone = ZoneInfo(house.zone)
    after = date(month.year + month.month // 12, month.month % 12 + 1, 1)
    start, end = (datetime.combine(each, time(), zone) for each in (month, after))
    questions = work.questions
    return MonthAsked(
        month,
        questions.asked(month, scope),
        questions.unread(start, end, scope),
        questions.passed_on(start, end, scope),
    )


def _line(
    house: House, sight: Sight, kept: KeptQuestion, officers: Mapping[int, Officer]
) -> QuestionLine:
    says = said(house, kept.language, kept.answer)
    return QuestionLine(
        kept=kept,
        village=sight.village(kept.village_id),
        says=says,
        segments=cost(says).segments,
        added_by=officers.get(kept.added_by or 0),
        read_by=officers.get(kept.read_by or 0),
        has_number=has_number(kept.answer),
        mine=kept.added_by == sight.officer.id,
    )


def _asked_line(
    house: House, sight: Sight, count: AskedCount, ways: Mapping[str, str]
) -> AskedLine:
    by_office = count.code.startswith(OFFICE)
    ours = house.ears.labels.get(sight.officer.language, {}).get(count.code, count.code)
    return AskedLine(count, ways.get(count.code, "-") if by_office else ours, by_office)


def said(house: House, language: str, answer: str) -> str:
    """An answer as a farmer gets it."""
    office = OfficeDesk(house.programme)
    return plain(render(office_says(answer, office), house.catalogue(language)))


# --- added, read, withdrawn ------------------------------------------------------------------


def refusal_of(house: House, draft: Draft) -> Refusal | None:
    """Why a question cannot be kept; None where it can be."""
    words = house.ears.office.get(draft.language, NO_WORDS)
    if draft.language not in house.languages:
        return Refusal(Unfit.PLACE, draft.language)
    if not draft.answer:
        return Refusal(Unfit.EMPTY)
    if not ways_fit(draft.ways, words):
        return Refusal(Unfit.WAYS)
    spoken = [words, house.ears.office.get("en", NO_WORDS)]
    if refused := refused_in(draft.answer, spoken):
        return Refusal(Unfit.REFUSED, refused)
    if dose := dose_in(draft.answer, spoken):
        return Refusal(Unfit.DOSE, dose)
    if not _has_room(house, draft):
        return Refusal(Unfit.LENGTH)
    cry = next((way for way in draft.ways if _is_heard(house, draft.language, way)), None)
    return Refusal(Unfit.HEARD, cry) if cry else None


def _has_room(house: House, draft: Draft) -> bool:
    """Whether the answer is as long as any of our own may be: a segment, or in letters beyond
    GSM 7-bit as many characters as one."""
    price = cost(said(house, draft.language, draft.answer))
    wide = draft.language in UCS2_LANGUAGES and price.encoding is Encoding.UCS2
    return price.segments <= (allowed(1, Encoding.UCS2) if wide else 1)


def _is_heard(house: House, language: str, way: str) -> bool:
    """Whether a way of asking is heard as somebody in danger, a refusal or a wish for a person,
    or is a word to send: those go before any question."""
    heard = understand(way, house.ears, language)
    cries = any(heard.is_by_rule(act) for act in _CRIES)
    weighs = sum(heard.weights[act] for act in _CRIES) >= _HALF
    wish = read_wish(way, house.lexicons, language)
    to_send = len(way.split()) <= _WORDS_TO_SEND and wish.outcome is Outcome.UNDERSTOOD
    return cries or weighs or to_send


def add_question(
    house: House, sight: Sight | None, draft: Draft, now: datetime
) -> KeptQuestion | Refusal | None:
    """Keeps a question that is used once somebody else has read it; None for an officer who is
    no lead. Without a sight it is added at the command line."""
    if sight is not None and not sight.officer.is_lead:
        return None
    draft = Draft(draft.language, tidy(draft.ways), plain(draft.answer), draft.village)
    found = refusal_of(house, draft)
    if found is not None:
        return found
    officer_id = sight.officer.id if sight else None
    with house.store.work() as work:
        village = work.people.village_named(draft.village) if draft.village else None
        if draft.village and village is None:
            return Refusal(Unfit.PLACE, draft.village)
        village_id = village.id if village else None
        kept = work.questions.add(
            draft.language, village_id, draft.ways, draft.answer, officer_id, now
        )
        _note(work, officer_id, TrailAct.QUESTION_ADDED, kept, now)
        return kept


def tidy(ways: Sequence[str]) -> tuple[str, ...]:
    """Ways of asking without blanks to spare, each once."""
    return tuple(dict.fromkeys(way for each in ways if (way := " ".join(each.split()))))


def use_question(
    house: House, sight: Sight, question_id: int, now: datetime
) -> KeptQuestion | None:
    """A second person has read a question: farmers are answered with it from now on. None where
    it is not in sight, is withdrawn, or was added by whoever reads it."""
    with house.store.work() as work:
        kept = work.questions.get(question_id)
        if kept is None or not _sees(sight, kept) or kept.withdrawn_at is not None:
            return None
        if kept.added_by == sight.officer.id:
            return None
        if kept.read_at is None:
            work.questions.read(kept.id, sight.officer.id, now)
            _note(work, sight.officer.id, TrailAct.QUESTION_READ, kept, now)
        return kept


def withdraw_question(
    house: House, sight: Sight | None, question_id: int, now: datetime
) -> KeptQuestion | None:
    """A question is used no more: by a lead, at the command line, or by who should read it and
    does not agree. None where it is not in sight or is used and no lead asks."""
    with house.store.work() as work:
        kept = work.questions.get(question_id)
        if kept is None or kept.withdrawn_at is not None:
            return None
        if sight is not None and not (
            sight.officer.is_lead or (_sees(sight, kept) and not kept.in_use)
        ):
            return None
        work.questions.withdraw(kept.id, now)
        officer_id = sight.officer.id if sight else None
        _note(work, officer_id, TrailAct.QUESTION_WITHDRAWN, kept, now)
        return kept


def _note(
    work: Work, officer_id: int | None, act: TrailAct, kept: KeptQuestion, now: datetime
) -> None:
    about = Subject(village_id=kept.village_id)
    note(work, officer_id, act, now, about, f"{kept.id}: {kept.ways[0]}")


# --- to begin with ---------------------------------------------------------------------------


def draft_of(
    house: House, sight: Sight, *, unread_id: int | None = None, like: int | None = None
) -> Draft:
    """A form to begin with: from a reply that nobody could read, or from a question that is
    there; empty where neither is in sight."""
    with house.store.look() as work:
        if unread_id is not None:
            found = work.questions.unread_words(unread_id, sight.scope())
            return Draft(found[0], (found[1],), "") if found else _empty(sight)
        kept = work.questions.get(like) if like is not None else None
        if kept is None or not _sees(sight, kept):
            return _empty(sight)
        village = sight.village(kept.village_id)
    return Draft(kept.language, kept.ways, kept.answer, village.name if village else "")


def _empty(sight: Sight) -> Draft:
    return Draft(sight.officer.language, (), "")


def kept_questions(house: House) -> tuple[tuple[KeptQuestion, str], ...]:
    """All questions with the names of their villages, for the command line."""
    with house.store.look() as work:
        found = work.questions.all()
        names = {each.id: each.name for each in work.people.villages()}
    return tuple((each, names.get(each.village_id or 0, "")) for each in found)
