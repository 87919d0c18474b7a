"""Texts of what a farmer answered in a talk about trouble, as officers read them."""

from assistant.wording.message import Message

STAND = Message(
    "{shoots} shoots in a square of 10 x 10 cm. The farmer: {answer}",
    note="{answer} is a choice such as 'Wait' or 'Sow more mats'.",
)
SHOOTS = Message("{shoots} shoots in a square of 10 x 10 cm", note="A count of shoots.")
SPROUTED = Message("{count} of {seeds} sprouted", note="A seed test.")
WHY_UREA = Message("Yellow leaves, urea advised", note="Why a nursery must be seen.")
