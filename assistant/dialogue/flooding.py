"""A flood or storm that a farmer tells of: asked about on the morning after."""

from assistant.agronomy.life.changes import after
from assistant.agronomy.life.events import By, Flooded
from assistant.dialogue.values import Change, Happened, Known, SaveNursery


def flooded(known: Known) -> tuple[Change, ...]:
    """That water or a storm went over the beds of who cries: asked about in the morning."""
    event = Flooded(on=known.today, by=By.FARMER)
    changes: list[Change] = []
    for bed in known.nurseries:
        moved = after(bed, event)
        if moved is not bed:
            changes += (Happened(bed.id, event), SaveNursery(moved))
    return tuple(changes)
