"""Warnings: given, asked about again, called back, and ended by the all-clear."""

from collections.abc import Iterator
from datetime import datetime, timedelta

from assistant.agronomy.dangers.rows import DANGERS
from assistant.dialogue.values import Focus, Kind, Standing
from assistant.people import Farmer, Village
from assistant.service.audit import Subject, TrailAct, note
from assistant.service.house import House
from assistant.service.recall import PROMPTS, recall_prompts
from assistant.service.storms.danger import InDanger, in_danger, people_in, texted
from assistant.service.storms.danger_words import asked_again, cleared, recalled, words_of
from assistant.service.storms.headline import headline
from assistant.service.storms.rain_words import Says
from assistant.service.texts import REPLY_LASTS, Letter, post_all
from assistant.store import Draft, TextState, Work

# A text that a dispatcher has may still be on its way to the operator: its correction comes
# after it.
ON_ITS_WAY = timedelta(minutes=1)


def warn(
    work: Work, house: House, draft: Draft, village: Village, officer_id: int, now: datetime
) -> Standing:
    """Puts a warning on the phones in danger, once each, in their languages.

    Args:
        officer_id: who answers for it.
    """
    hours = draft.starts_at, draft.ends_at
    standing = work.warnings.add(village.id, officer_id, *hours, now, draft.danger)
    # A prompt that waits to be sent may still say "uncover" or "sow": it is written again.
    recall_prompts(work, work.outbox.waiting(PROMPTS, village_id=village.id), now)
    found = tuple(texted(in_danger(work, village, now, draft.danger)))
    work.warnings.ask(standing.id, (each.phone for each in found))
    stay_in = people_in(work, village, now)
    words = words_of(draft, village, headline(work, draft), now, people_in=stay_in)
    letters = (_letter(standing, each, words.says(each), now) for each in found)
    post_all(work, house, letters, now)
    return standing


def _letter(standing: Standing, phone: InDanger, says: Says, due: datetime) -> Letter:
    return Letter(
        phone=phone.phone,
        language=phone.language,
        says=says,
        kind=Kind.WARNING,
        due_at=due,
        not_after=max(_worth_until(standing, due), due),
        focus=Focus(warning_id=standing.id),
        warning_id=standing.id,
        urgent=True,
    )


def _worth_until(standing: Standing, due: datetime) -> datetime:
    """Until when a text may arrive. One that sends people out to the bed before hail, wind or a
    flood comes has lost its sense once it is there."""
    before = DANGERS[standing.danger].indoors and due < standing.starts_at
    return standing.starts_at if before else standing.ends_at


def ask_silent(
    work: Work, house: House, warning_id: int, now: datetime, officer_id: int
) -> int:
    """Sends a second text to those who have not answered, once each; how many those are.

    Who has not been sent the first one yet is not asked again.
    """
    standing, village = _standing(work, warning_id)
    if standing is None or village is None or standing.ends_at <= now:
        return 0
    again = set(work.warnings.ask_again(warning_id, now))
    found = [
        each
        for each in texted(in_danger(work, village, now, standing.danger))
        if each.phone in again
    ]
    letters = (
        _letter(standing, each, asked_again(village, standing, each), now) for each in found
    )
    post_all(work, house, letters, now)
    if found:
        note(work, officer_id, TrailAct.ASKED_AGAIN, now, Subject(village_id=village.id))
    return len(found)


def call_back(
    work: Work, house: House, warning_id: int, now: datetime, officer_id: int
) -> tuple[int, int] | None:
    """Takes a warning back that was a mistake: texts that have not left stay here, and phones
    that have it get a correction.

    Where another warning of the danger stands for the village, none is to be corrected.

    Returns:
        How many texts were taken back and how many are corrected; None for a warning that does
        not stand any more.
    """
    standing, village = _standing(work, warning_id)
    if standing is None or village is None or standing.ends_at <= now:
        return None
    if not work.warnings.clear(warning_id, now, recalled=True):
        return None
    withdrawn = work.sending.take_back(warning_id, now)
    still = work.warnings.standing(village.id, now, standing.danger)
    told = {} if still else work.sending.told(warning_id)
    letters = tuple(_corrections(work, house, standing, village, told, now))
    post_all(work, house, letters, now)
    note(work, officer_id, TrailAct.WARNING_RECALLED, now, Subject(village_id=village.id))
    return withdrawn, len(letters)


def _corrections(
    work: Work,
    house: House,
    standing: Standing,
    village: Village,
    told: dict[str, TextState | None],
    now: datetime,
) -> Iterator[Letter]:
    says = recalled(village, standing)
    for farmer in work.warnings.farmers_asked(standing.id):
        if farmer.phone not in told:
            continue
        leaving = told[farmer.phone] is TextState.CLAIMED
        leaves = now + ON_ITS_WAY if leaving else now
        yield Letter(
            phone=farmer.phone,
            language=farmer.language,
            says=says,
            kind=Kind.ALL_CLEAR,
            due_at=leaves,
            not_after=leaves + REPLY_LASTS,
            warning_id=standing.id,
            urgent=True,
        )


def give_all_clear(
    work: Work, house: House, warning_id: int, now: datetime, officer_id: int | None = None
) -> None:
    """Ends all warnings of its danger in a village: what was not sent is taken back, who was
    told hears it.

    A second warning is given where the first was too short; one all-clear is for both. It
    leaves at once, at night too: who watches over a bed in the dark may go home.
    """
    standing, village = _standing(work, warning_id)
    if standing is None or village is None:
        return
    beds: dict[Farmer, dict[str, bool]] = {}
    for each in work.warnings.standing(village.id, now, standing.danger):
        work.warnings.clear(each.id, now)
        work.sending.take_back(each.id, now)
        told = work.sending.told(each.id)
        for farmer, nursery in work.nurseries.warned(each.id):
            if farmer.phone in told:
                beds.setdefault(farmer, {}).update(
                    {nursery.called: nursery.sown} if nursery else {}
                )
    letters = (
        Letter(
            phone=farmer.phone,
            language=farmer.language,
            says=cleared(village, standing, called),
            kind=Kind.ALL_CLEAR,
            due_at=now,
            not_after=now + REPLY_LASTS,
            warning_id=warning_id,
            urgent=True,
        )
        for farmer, called in beds.items()
        if called  # a bed that was closed meanwhile needs no look
    )
    post_all(work, house, letters, now)
    note(work, officer_id, TrailAct.WARNING_CLEARED, now, Subject(village_id=village.id))


def _standing(work: Work, warning_id: int) -> tuple[Standing | None, Village | None]:
    standing = work.warnings.get(warning_id)
    return standing, work.people.village(standing.village_id) if standing else None


def warned_of(work: Work, village: Village | None, now: datetime) -> frozenset[str]:
    """The dangers of which warnings stand for a village, by code."""
    standing = work.warnings.standing(village.id, now) if village else ()
    return frozenset(each.danger for each in standing)


def latest_of_each(work: Work, village_id: int, now: datetime) -> tuple[Standing, ...]:
    """The latest warning of each danger that stands for a village, by when they were given."""
    found = reversed(work.warnings.standing(village_id, now))
    return tuple({each.danger: each for each in found}.values())


def in_storm(work: Work, village_id: int | None, now: datetime) -> bool:
    """Whether a warning stands of something that may harm people out of doors: then nobody
    waits for the morning."""
    standing = work.warnings.standing(village_id, now) if village_id is not None else ()
    return any(DANGERS[each.danger].storm for each in standing)
