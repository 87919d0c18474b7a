"""What the phones wrote and show, held against what the service kept."""

from collections import Counter
from dataclasses import dataclass, field

from assistant.dialogue.values import Kind
from assistant.store import OutboxText, Store, TextState
from gateway_sim import OperatorController
from tests.chaos.country import Country


@dataclass
class Toll:
    """What went wrong, and what was counted."""

    lost: list[str] = field(default_factory=list)
    double: list[str] = field(default_factory=list)
    broken: list[str] = field(default_factory=list)
    counted: Counter[str] = field(default_factory=Counter)

    @property
    def is_whole(self) -> bool:
        """Whether nothing was lost, double or broken."""
        return not (self.lost or self.double or self.broken)


def toll(store: Store, operator: OperatorController, country: Country) -> Toll:
    """Counts everything, once all is quiet."""
    found = Toll()
    with store.look() as work:
        everybody = [*country.farmers, *(each for each in country.wrote)]
        texts = {number: work.outbox.of_phone(number) for number in dict.fromkeys(everybody)}
    for number, kept in texts.items():
        _shown(found, operator, number, kept)
        _answered(found, number, len(country.wrote.get(number, ())), kept)
    for number in country.farmers:
        _prompted(found, number, texts[number], number in country.stopped)
    _plans(found, store, country)
    found.counted["handed in twice under one id"] = operator.repeats
    return found


def _shown(
    found: Toll, operator: OperatorController, number: str, kept: tuple[OutboxText, ...]
) -> None:
    """Each text that was taken stands on the phone once."""
    shown = Counter(each.id for each in operator.phone(number).inbox)
    found.counted["texts on phones"] += sum(shown.values())
    for text in kept:
        times = shown[text.message_id]
        if text.state is TextState.DELIVERED and times == 0:
            found.lost.append(f"{text.kind} to {number}: said to be there")
        elif text.state in (TextState.WAITING, TextState.CLAIMED, TextState.ACCEPTED):
            found.lost.append(f"{text.kind} to {number}: {text.state}")
        if times > 1:
            found.double.append(f"{text.kind} to {number}: {times} times")


def _answered(found: Toll, number: str, wrote: int, kept: tuple[OutboxText, ...]) -> None:
    """Each text of a phone was answered once."""
    answers = sum(each.kind is Kind.REPLY for each in kept)
    found.counted["texts from phones"] += wrote
    if answers < wrote:
        found.lost.append(f"{number}: {answers} answers to {wrote} texts")
    if answers > wrote:
        found.double.append(f"{number}: {answers} answers to {wrote} texts")


def _prompted(found: Toll, number: str, kept: tuple[OutboxText, ...], stopped: bool) -> None:
    """Each farmer was asked once today; who stopped may have been before that."""
    came = [each for each in kept if each.kind is Kind.PROMPT]
    came = [each for each in came if each.state is TextState.DELIVERED]
    found.counted["prompts"] += len(came)
    if not came and not stopped:
        found.lost.append(f"{number}: no prompt")
    if len(came) > 1:
        found.double.append(f"{number}: {len(came)} prompts")


def _plans(found: Toll, store: Store, country: Country) -> None:
    """Every farmer has the bed, and days to come."""
    with store.look() as work:
        for number in country.farmers:
            farmer = work.people.farmer(number)
            beds = work.nurseries.of_farmer(farmer.id) if farmer else ()
            days = [work.reminders.of_nursery(bed.id) for bed in beds]
            if len(beds) != 1 or not days[0]:
                found.broken.append(f"{number}: {len(beds)} beds")
            if farmer and (farmer.stopped_at is not None) != (number in country.stopped):
                found.broken.append(f"{number}: STOP is not kept")
