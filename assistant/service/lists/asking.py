"""What it takes to ask those of a list who have not agreed yet."""

from collections import Counter
from dataclasses import dataclass
from decimal import Decimal

from assistant.dialogue.invited import invitation
from assistant.service.house import House
from assistant.service.office.judging import Outlook
from assistant.service.sight import Sight
from assistant.service.texts import priced


@dataclass(frozen=True)
class Asking:
    """Segments of the texts that ask for agreement, and their cost where a price is set."""

    segments: int
    cost: Decimal | None


def asking(house: House, sight: Sight, seen: Outlook) -> Asking:
    """The first asking of a list; who does not answer is asked once more."""
    says = invitation(sight.officer.name, house.replies_free).says
    spoken = Counter(
        deed.kept.farmer.language if deed.kept and not deed.is_new else deed.entry.language
        for deed in seen.deeds
        if deed.asks
    )
    segments = sum(n * priced(house, says, code).segments for code, n in spoken.items())
    return Asking(segments, house.tariff.cost(segments) if house.tariff else None)
