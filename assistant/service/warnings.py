"""Rain warnings: who is in danger is asked, the answers counted, the all-clear given."""

from datetime import datetime

from assistant.agronomy.nursery import Nursery
from assistant.dialogue.officer import span_slots
from assistant.dialogue.values import Focus, Kind, Standing
from assistant.people import Farmer, Village
from assistant.service.house import House
from assistant.service.known import in_danger
from assistant.service.recall import PROMPTS, recall_prompts
from assistant.service.texts import REPLY_LASTS, Letter, after_quiet, post_all
from assistant.store import Draft, Work
from assistant.wording import messages_talk as m


def warn(
    work: Work, house: House, draft: Draft, village: Village, officer_id: int, now: datetime
) -> Standing:
    """Puts a warning on the phones in danger, once each, in their languages.

    Args:
        officer_id: who answers for it.
    """
    standing = work.warnings.add(village.id, officer_id, draft.starts_at, draft.ends_at, now)
    due = now if house.urgent_breaks_quiet else after_quiet(house, village.zone, now)
    # A prompt that waits to be sent may still say "uncover" or "sow": it is written again.
    recall_prompts(work, work.outbox.waiting(PROMPTS, village_id=village.id), now)
    by_phone: dict[str, list[tuple[Farmer, Nursery, bool]]] = {}
    for found in in_danger(work, village, now):
        by_phone.setdefault(found[0].phone, []).append(found)
    work.warnings.ask(standing.id, by_phone)
    letters = (_letter(standing, village, found, due) for found in by_phone.values())
    post_all(work, house, letters, now)
    return standing


def _letter(
    standing: Standing,
    village: Village,
    found: list[tuple[Farmer, Nursery, bool]],
    due: datetime,
) -> Letter:
    farmer = found[0][0]
    young = [nursery.called for _, nursery, is_young in found if is_young]
    waiting = [nursery.called for _, nursery, is_young in found if not is_young]
    message = m.WARNING if young else m.WARNING_WAIT
    says = message(
        village=village.name,
        labels=", ".join(young or waiting),
        **span_slots(standing.starts_at, standing.ends_at, village),
    )
    return Letter(
        phone=farmer.phone,
        language=farmer.language,
        says=(says,),
        kind=Kind.WARNING,
        due_at=due,
        not_after=max(standing.ends_at, due),
        focus=Focus(warning_id=standing.id),
        warning_id=standing.id,
        urgent=True,
    )


def give_all_clear(work: Work, house: House, warning_id: int, now: datetime) -> None:
    """Ends all warnings of a village: what was not sent is taken back, who was asked is told.

    A second warning is given where the first was too short; one all-clear is for both.
    """
    standing = work.warnings.get(warning_id)
    village = work.people.village(standing.village_id) if standing else None
    if standing is None or village is None:
        return
    due = after_quiet(house, village.zone, now)
    beds: dict[Farmer, dict[str, None]] = {}
    for each in work.warnings.standing(village.id, now):
        work.warnings.clear(each.id, now)
        work.outbox.withdraw(now, warning_id=each.id, kinds=(Kind.WARNING,))
        for farmer, nursery in work.nurseries.warned(each.id):
            beds.setdefault(farmer, {}).update({nursery.called: None} if nursery else {})
    letters = (
        Letter(
            phone=farmer.phone,
            language=farmer.language,
            says=(m.ALL_CLEAR(village=village.name, labels=", ".join(called)),),
            kind=Kind.ALL_CLEAR,
            due_at=due,
            not_after=due + REPLY_LASTS,
            warning_id=warning_id,
        )
        for farmer, called in beds.items()
        if called  # a bed that was closed meanwhile needs no look
    )
    post_all(work, house, letters, now)


def raining(work: Work, village: Village | None, now: datetime) -> bool:
    """Whether a warning stands for a village."""
    return village is not None and bool(work.warnings.standing(village.id, now))
