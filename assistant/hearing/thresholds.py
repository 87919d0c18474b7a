"""From which weight an act is heard. Chosen for few missed cries at a stated rate of false
alarms, on the sentences that the table was trained on, each weighed by a table that had not
seen it (`nursery acts train` prints the curve; assistant/acts/sentences/README.md has it).
"""

from collections.abc import Mapping
from types import MappingProxyType

from assistant.acts import Act

SURE: Mapping[Act, float] = MappingProxyType(
    {Act.HARM: 0.6, Act.DANGER: 0.7, Act.PERSON: 0.7, Act.TROUBLE: 0.5, Act.QUESTION: 0.5}
)
"""Acted on, with the neutral text of the act. Wanting to die, and a refusal, never by weight
alone: a fixed list hears the one, the other is asked about."""

HALF: Mapping[Act, float] = MappingProxyType(
    {Act.DIE: 0.42, Act.HARM: 0.35, Act.DANGER: 0.45, Act.REFUSE: 0.38}
)
"""Asked about."""

ON_ALERT: Mapping[Act, float] = MappingProxyType({**HALF, Act.HARM: 0.25, Act.DANGER: 0.25})
"""The same while a warning stands: a cry is likelier then, and dearer to miss."""
