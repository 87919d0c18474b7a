"""Whoever asks about treated seed is told that it is poison, whatever else is asked."""

import pytest

from assistant.dialogue.turns import turn
from assistant.wording.messages_answers_more import DIRTY_PAIL
from assistant.wording.messages_steps import TREATED
from tests.corpus.talk.moments import MOMENTS


@pytest.mark.parametrize(
    ("language", "text"),
    [
        ("fr", 'le sac de semence dit "traité". faut tremper quand même?'),
        ("fr", "semence traité on trempe comment"),
        ("sw", "mfuko umeandikwa mbegu zimetiwa dawa, niloweke?"),
        ("en", "the seed bag says treated, do i still soak it"),
    ],
)
def test_treated_seed_is_told_to_be_poison(language: str, text: str) -> None:
    says = turn(text, MOMENTS["nothing"](language)).texts[0].says
    assert [each.message for each in says] == [TREATED]


def test_a_weed_killer_is_no_dirty_pail() -> None:
    text = "ông nhà em muốn phun thuốc cỏ lên mạ, cản được không"
    says = turn(text, MOMENTS["nothing"]("vi")).texts[0].says
    assert DIRTY_PAIL not in [each.message for each in says]
