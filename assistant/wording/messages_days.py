"""Texts for a day that was named in a sentence: read back before it changes anything.

"1 Yes 2 No" follows each of them.
"""

from assistant.wording.message import Message

SOW_THEN = Message(
    "{label}: sow on {date}, not {sow}?",
    note="A farmer wrote of another day of sowing, such as 'we sow on Friday'. Yes or no follows.",
)
PLANT_THEN = Message(
    "{label}: transplant on {chosen}, not {transplant}?",
    note="A farmer wrote of another day of transplanting. Yes or no follows.",
)
UNCOVERED_THEN = Message(
    "{label}: was the cover taken off on {done_on}?",
    note="A farmer wrote so, unasked. Yes or no follows.",
)
PLANTED_THEN = Message(
    "{label}: was the field planted on {done_on}?",
    note="A farmer wrote so, unasked. Yes or no follows.",
)
