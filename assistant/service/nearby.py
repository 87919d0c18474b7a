"""Whom to turn to in need, from each village: what the programme file says, and the officer."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from assistant.dialogue.values import Nearby
from assistant.people import Village

KEYS = ("emergency", "health_post", "vet")


@dataclass(frozen=True)
class Phonebook:
    """The numbers of a programme, and those of villages that have their own, by name in small
    letters. What a village does not say is the programme's."""

    programme: Nearby = Nearby()
    villages: Mapping[str, Nearby] = field(default_factory=dict)

    def of(self, village: Village | None, officer: str = "") -> Nearby:
        """Those of a village, or of the programme where it is not known; `officer` is the name
        and number of the person who is told first."""
        own = self.villages.get(village.name.casefold() if village else "", Nearby())
        first = (village, own, self.programme)  # the page, then the programme file
        given = {
            key: next((said for each in first if (said := getattr(each, key, None))), "")
            for key in KEYS
        }
        return Nearby(**given, officer=officer)
